/* SPDX-License-Identifier: GPL-3.0-or-later */

/* JSON from any bytes: what the scan lets through, the parser behind it takes. */

#include "fuzz.h"

#include "plan/json-file.h"
#include "plan/json-scan.h"

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  g_autofree char *text = fuzz_text (data, size);
  g_autoptr (GError) error = NULL, scan_error = NULL;
  g_autoptr (JsonObject) object = drawl_json_parse (text, size, "any", &error);
  gboolean scanned = drawl_json_scan (text, size, "any", &scan_error);
  gboolean marked = size > 0 && data[0] == 0xef; /* by a byte order mark, which the scan refuses */

  fuzz_assert_outcome (object != NULL, error);
  fuzz_assert_outcome (scanned, scan_error);
  if (!marked)
    g_assert_cmpint (scanned, ==, object != NULL);
  return 0;
}
