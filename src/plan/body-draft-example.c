/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What a payload law comes to: a frame at one of the body's sizes, and a second at the highest rate
 * that its limits give the codec. It is shown while the law is typed, when the rest of the profile
 * may be wrong still. */

#include "plan/body-draft-private.h"

#include "core/text.h"
#include "plan/body-file.h"
#include "plan/figure.h"

#define USUAL_WIDTH 1920
#define USUAL_HEIGHT 1080
#define USUAL_RATE 24

typedef struct {
  guint width, height;
  DrawlRate rate;
} Example;

static gboolean
read_pixels (DrawlDraftRow *size, const char *key, guint *pixels)
{
  const char *text = size->texts[drawl_draft_column (DRAWL_DRAFT_SIZES, key)];
  guint64 value;

  if (!g_ascii_string_to_unsigned (text, 10, 1, G_MAXUINT16, &value, NULL))
    return FALSE;
  *pixels = (guint)value;
  return TRUE;
}

/* The size and the highest rate of the limit that goes fastest in this codec. */
static void
follow_limits (DrawlBodyDraft *draft, DrawlDraftRow *codec, Example *example)
{
  guint sizes = drawl_draft_column (DRAWL_DRAFT_LIMITS, "sizes");
  guint codecs = drawl_draft_column (DRAWL_DRAFT_LIMITS, "codecs");
  guint highest = drawl_draft_column (DRAWL_DRAFT_LIMITS, "highest_rate");
  gboolean found = FALSE;
  Example at;

  for (guint i = 0; i < draft->tables[DRAWL_DRAFT_LIMITS]->len; i++) {
    DrawlDraftRow *limit = draft->tables[DRAWL_DRAFT_LIMITS]->pdata[i];
    if (!drawl_body_draft_refers (limit, codecs, codec) || limit->links[sizes]->len == 0 ||
        !read_pixels (limit->links[sizes]->pdata[0], "width", &at.width) ||
        !read_pixels (limit->links[sizes]->pdata[0], "height", &at.height) ||
        !drawl_rate_parse (limit->texts[highest], &at.rate, NULL))
      continue;
    if (!found || drawl_rational_compare (at.rate, example->rate) > 0)
      *example = at;
    found = TRUE;
  }
}

char *
drawl_body_draft_codec_example (DrawlBodyDraft *draft, DrawlDraftRow *codec)
{
  Example example = {USUAL_WIDTH, USUAL_HEIGHT, drawl_rational_whole (USUAL_RATE)};
  g_autoptr (JsonObject) profile = drawl_draft_row_alone (draft, codec);
  DrawlRational frame, second;

  /* The name is of no interest here, and may be missing. */
  JsonObject *row =
      json_array_get_object_element (json_object_get_array_member (profile, "codecs"), 0);
  json_object_set_string_member (row, "id", "-");
  json_object_set_string_member (row, "name", "-");
  g_autoptr (DrawlBody) body = drawl_body_from_json_but_limits (profile, "", NULL);
  if (body == NULL)
    return NULL;

  const DrawlPayload *payload = &body->codecs[0].payload;
  follow_limits (draft, codec, &example);
  if (payload->kind == DRAWL_PAYLOAD_FIXED && payload->width > 0) {
    example.width = payload->width;
    example.height = payload->height;
  }
  if (!drawl_payload_frame_bytes (payload, example.width, example.height, example.rate, &frame,
                                  NULL) ||
      !drawl_payload_data_rate (payload, example.width, example.height, example.rate, 0, &second,
                                NULL))
    return NULL;
  g_autofree char *frame_text = drawl_figure_bytes (frame);
  g_autofree char *second_text = drawl_figure_bytes_rate (second);
  g_autofree char *rate_text = drawl_figure_rate (example.rate);
  /* Translators: pixels; bytes; bytes a second; a rate. */
  return g_strdup_printf (_ ("One frame at %u × %u: %s; %s at %s"), example.width, example.height,
                          frame_text, second_text, rate_text);
}
