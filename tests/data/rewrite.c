/* SPDX-License-Identifier: GPL-3.0-or-later */

/* rewrite PLAN: prints what Drawl would save after it has read PLAN. For schema.py, which holds it
 * against the schema. */

#include <stdio.h>

#include "plan/plan-file.h"

int
main (int argc, char **argv)
{
  g_autoptr (GError) error = NULL;

  if (argc != 2)
    return 2;
  g_autoptr (GFile) file = g_file_new_for_commandline_arg (argv[1]);
  g_autoptr (DrawlPlan) plan = drawl_plan_load (file, NULL, &error);
  if (plan == NULL) {
    g_printerr ("%s\n", error->message);
    return 1;
  }
  g_autofree char *text = drawl_plan_to_data (plan, NULL);
  fputs (text, stdout);
  return 0;
}
