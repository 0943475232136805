/* SPDX-License-Identifier: GPL-3.0-or-later */

/* make-plan SHOTS BODY.json… FILE.drawl: writes a plan of that many shots over those bodies, always
 * the same for the same bodies: sizes, codecs, rates, times and takes run through what there is at
 * strides that share no factor, so that all verdicts and reasons come up. */

#include "plan/body-file.h"
#include "plan/plan-file.h"

#include <stdlib.h>

static const char *const rates[] = {"24",   "25",  "48",  "60000/1001", "96",
                                    "120",  "200", "240", "480",        "960",
                                    "1000", "12",  "6",   "2000",       "24000/1001"};
static const char *const actions[] = {
    "The glass leaves the bench and breaks", "Steam leaps from the wet paper",
    "The bowl spins open into a plate", "Sparks climb out of the furnace", "Drops leave the wheel"};
static const char *const times[] = {"0.45", "1.5", "3", "0.025", "8", "45", "12.5"};

static DrawlRational
exact (const char *text)
{
  DrawlRational value;

  if (!drawl_rate_parse (text, &value, NULL))
    g_error ("%s is no number", text);
  return value;
}

static void
choose (DrawlShotFields *fields, const DrawlBody *body, guint n)
{
  drawl_shot_fields_set (&fields->size, body->sizes[n / 3 % body->n_sizes].id);
  if (body->n_codecs > 0)
    drawl_shot_fields_set (&fields->codec, body->codecs[n / 7 % body->n_codecs].id);
  fields->takes = 1 + n % 5;
  fields->handle_before_s = exact ("2");
  fields->handle_after_s = exact ("1.5");
  fields->audio_tracks = n % 3;
  fields->must = n % 4 != 0;
}

static DrawlShotFields *
shot_new (guint n, DrawlHiredFields *hired)
{
  g_autofree char *slate = g_strdup_printf ("%u", n + 1);
  g_autofree char *scene = g_strdup_printf ("Scene %u", n / 16 + 1);
  DrawlShotFields *fields = drawl_shot_fields_new (slate, exact (n % 11 == 0 ? "25" : "24"));

  drawl_shot_fields_set (&fields->scene, scene);
  drawl_shot_fields_set (&fields->action, actions[n % G_N_ELEMENTS (actions)]);
  drawl_shot_fields_set (&fields->body, hired->id);
  choose (fields, hired->body, n);
  drawl_blanks_edit (&fields->blanks, DRAWL_TIMING_ACTION, exact (times[n % G_N_ELEMENTS (times)]),
                     NULL);
  drawl_blanks_edit (&fields->blanks, DRAWL_TIMING_CAPTURE, exact (rates[n % G_N_ELEMENTS (rates)]),
                     NULL);
  return fields;
}

static DrawlHiredFields *
hired_new (const char *path, guint n)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  g_autoptr (DrawlBody) body = drawl_body_load (file, &error);
  char id[] = {(char)('A' + n % 26), '\0'};

  if (body == NULL)
    g_error ("%s", error->message);
  return drawl_hired_fields_new (id, body);
}

int
main (int argc, char **argv)
{
  g_autoptr (DrawlPlan) plan = drawl_plan_new ();
  g_autoptr (GPtrArray) hired =
      g_ptr_array_new_with_free_func ((GDestroyNotify)drawl_hired_fields_free);
  g_autoptr (GPtrArray) shots =
      g_ptr_array_new_with_free_func ((GDestroyNotify)drawl_shot_fields_free);
  g_autoptr (GError) error = NULL;

  if (argc < 4) {
    g_printerr ("make-plan SHOTS BODY.json… FILE.drawl\n");
    return 2;
  }
  for (int i = 2; i < argc - 1; i++)
    g_ptr_array_add (hired, hired_new (argv[i], hired->len));
  for (guint n = 0; n < (guint)atoi (argv[1]); n++)
    g_ptr_array_add (shots, shot_new (n, hired->pdata[n / 2 % hired->len]));

  g_autoptr (GFile) file = g_file_new_for_path (argv[argc - 1]);
  if (!drawl_plan_fill (plan, drawl_plan_get_settings (plan), hired, shots, &error) ||
      !drawl_plan_save (plan, file, FALSE, NULL, &error)) {
    g_printerr ("%s\n", error->message);
    return 1;
  }
  return 0;
}
