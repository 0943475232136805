/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A body profile from any bytes: refused with a reason, or a body whose tables hold together and
 * that any shot can be checked against. */

#include "fuzz.h"

#include "plan/body-file.h"
#include "plan/check.h"
#include "plan/json-file.h"

static void
assert_limits_hold (const DrawlBody *body)
{
  g_assert_cmpuint (body->n_limits, >, 0);
  for (guint i = 0; i < body->n_limits; i++) {
    const DrawlBodyLimit *row = &body->limits[i];
    g_assert_cmpuint (row->size, <, body->n_sizes);
    g_assert_true (row->codec == DRAWL_BODY_NO_CODEC || row->codec < body->n_codecs);
    g_assert_true (drawl_rate_valid (row->lowest) && drawl_rate_valid (row->highest));
    g_assert_cmpint (drawl_rational_compare (row->lowest, row->highest), <=, 0);
    if (i > 0)
      g_assert_cmpint (drawl_body_limit_compare (row - 1, row->size, row->codec), <=, 0);
  }
}

static void
check_at (const DrawlBody *body, const DrawlBodyLimit *row, DrawlRate rate)
{
  DrawlCheckQuestion question = {
      .body = body,
      .tier = row->licences,
      .card = -1,
      .size = (int)row->size,
      .codec = row->codec == DRAWL_BODY_NO_CODEC ? -1 : (int)row->codec,
      .rate = rate,
      .take_s = {1, 3},
      .take_frames = drawl_rational_ceil (rate) / 3 + 1,
      .audio_tracks = body->audio_tracks,
      .reserve_percent = {5, 1},
  };
  g_auto (DrawlCheck) check = {0};

  drawl_check_run (&question, &check);
  for (guint i = 0; i < check.n_reasons; i++) {
    g_autofree char *text = drawl_reason_text (&check.reasons[i], &question);
    g_assert_true (g_utf8_validate (text, -1, NULL));
  }
}

static void
use (const DrawlBody *body)
{
  DrawlRate next;

  assert_limits_hold (body);
  for (guint i = 0; i < MIN (body->n_limits, 8); i++) {
    const DrawlBodyLimit *row = &body->limits[i];
    check_at (body, row, row->lowest);
    check_at (body, row, row->highest);
    if (drawl_body_step_rate (body, row->size, row->codec, row->highest, 1, &next))
      check_at (body, row, next);
    if (drawl_body_step_rate (body, row->size, row->codec, row->lowest, 1, &next))
      check_at (body, row, next);
  }
}

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  g_autofree char *text = fuzz_text (data, size);
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonObject) object = drawl_json_parse (text, size, "any", &error);
  g_autoptr (DrawlBody) body = object == NULL ? NULL : drawl_body_from_json (object, "any", &error);

  fuzz_assert_outcome (body != NULL, error);
  if (body != NULL)
    use (body);
  return 0;
}
