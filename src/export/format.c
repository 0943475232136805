/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The table of files for other programs. */

#include "export/format.h"

#include <string.h>

#include "core/text.h"
#include "export/edl.h"
#include "export/otio.h"
#include "plan/shot-table.h"

static char *
csv_text (DrawlPlan *plan, GPtrArray *warnings, GError **error)
{
  return drawl_shot_table_text (plan, NULL, 0, ',');
}

static const DrawlExport exports[] = {
    {"otio", ".otio", N_ ("OpenTimelineIO timeline"), drawl_otio_text},
    {"edl", ".edl", N_ ("Edit decision list"), drawl_edl_text},
    {"csv", ".csv", N_ ("Shot table"), csv_text},
};

const DrawlExport *
drawl_exports (guint *n_exports)
{
  *n_exports = G_N_ELEMENTS (exports);
  return exports;
}

const DrawlExport *
drawl_export_find (const char *id)
{
  for (gsize i = 0; i < G_N_ELEMENTS (exports); i++)
    if (g_str_equal (exports[i].id, id))
      return &exports[i];
  return NULL;
}

const DrawlExport *
drawl_export_find_ending (const char *file_name)
{
  const char *ending = strrchr (file_name, '.');

  for (gsize i = 0; i < G_N_ELEMENTS (exports) && ending != NULL; i++)
    if (g_ascii_strcasecmp (exports[i].ending, ending) == 0)
      return &exports[i];
  return NULL;
}
