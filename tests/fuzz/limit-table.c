/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Any bytes as a table of limits: each row is good or has a reason, and a body takes all good ones.
 */

#include "plan/limit-table.h"

#include "fuzz.h"
#include "plan/body-file.h"
#include "plan/json-file.h"

static const char profile[] =
    "{\"format\":\"drawl-body\",\"version\":1,\"id\":\"tern\",\"name\":\"Tern\",\"kind\":"
    "\"digital\","
    "\"sizes\":[{\"id\":\"hd\",\"name\":\"1920 × 1080\",\"width\":1920,\"height\":1080}],"
    "\"codecs\":[{\"id\":\"long\",\"name\":\"Long\",\"payload\":{\"kind\":\"constant\",\"mbps\":"
    "100}}],"
    "\"licences\":[{\"id\":\"rate\",\"name\":\"Rate upgrade\",\"price_day\":60}],"
    "\"cards\":[{\"id\":\"v60\",\"name\":\"V60\",\"bytes\":128000000000,\"class\":\"V60\"}],"
    "\"limits\":[{\"sizes\":\"hd\",\"codecs\":\"long\",\"lowest_rate\":1,\"highest_rate\":60}]}";

static DrawlBody *
body_with (JsonArray *limits)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonObject) object = drawl_json_parse (profile, strlen (profile), "tern", &error);

  g_assert_no_error (error);
  if (limits != NULL)
    json_object_set_array_member (object, "limits", json_array_ref (limits));
  DrawlBody *body = drawl_body_from_json (object, "tern", &error);
  g_assert_no_error (error);
  return body;
}

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  g_autoptr (DrawlBody) body = body_with (NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (DrawlLimitTable) table =
      drawl_limit_table_read (body, (const char *)data, size, &error);

  fuzz_assert_outcome (table != NULL, error);
  if (table == NULL)
    return 0;
  for (guint i = 0; i < table->rows->len; i++) {
    const DrawlLimitTableRow *row = table->rows->pdata[i];
    g_assert_cmpint (row->limit == NULL, ==, row->reason != NULL);
  }
  g_autoptr (JsonArray) limits = drawl_limit_table_to_json (table);
  g_autoptr (DrawlBody) other = table->n_good > 0 ? body_with (limits) : NULL;
  return 0;
}
