/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* A question to the check as a row of a table, in words. */

#include "bodies.h"
#include "plan/check.h"
#include "rows.h"

typedef struct {
  const char *tier; /* ids between commas */
  const char *card; /* id, or NULL */
  const char *size, *codec;
  const char *rate, *take_s;
} Asked;

static inline DrawlCheckQuestion
ask (const DrawlBody *body, const Asked *asked)
{
  g_auto (GStrv) ids = g_strsplit (asked->tier, ",", -1);
  DrawlCheckQuestion question = {
      .body = body,
      .card = asked->card == NULL ? -1 : drawl_body_card_index (body, asked->card),
      .size = drawl_body_size_index (body, asked->size),
      .codec = drawl_body_codec_index (body, asked->codec),
      .take_s = exact (asked->take_s),
      .reserve_percent = {0, 1},
  };
  g_autoptr (GError) error = NULL;

  g_assert_true (drawl_rate_parse (asked->rate, &question.rate, &error));
  g_assert_true (drawl_body_tier_from_ids (body, (const char *const *)ids, &question.tier, &error));
  question.take_frames = take_frames (question.take_s, question.rate);
  return question;
}

/* The small body that a row's name begins with. */
static inline DrawlBody *
body_of (const char *name)
{
  return sound_body (g_str_has_prefix (name, "digital")  ? DIGITAL_BODY
                     : g_str_has_prefix (name, "buffer") ? BUFFER_BODY
                                                         : FILM_BODY);
}
