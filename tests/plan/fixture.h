/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Two small bodies and the plans that the tests of src/plan make of them. Digital "A": 64 GB card,
 * 7.2 GB usable with 10 % kept of the "tiny" one; every codec has round figures. Film "F": 16 mm
 * and 35 mm, 3 perforations. */

#include <json-glib/json-glib.h>
#include <string.h>

#include "core/error.h"
#include "plan/error.h"
#include "plan/json-file.h"
#include "plan/plan-file.h"
#include "rows.h"

#define DIGITAL_PROFILE                                                                            \
  "{\"format\":\"drawl-body\",\"version\":1,\"id\":\"lathe\",\"name\":\"Lathe\","                  \
  "\"kind\":\"digital\",\"source\":{\"document\":\"Bench sheet\",\"date\":\"2026-11-25\"},"        \
  "\"currency\":\"EUR\",\"rates\":{\"step\":\"1\",\"also\":[\"24000/1001\",\"30000/1001\"]},"      \
  "\"sizes\":[{\"id\":\"uhd\",\"name\":\"3840 × 2160\",\"width\":3840,\"height\":2160},"          \
  "{\"id\":\"hd\",\"name\":\"1920 × 1080\",\"width\":1920,\"height\":1080}],"                     \
  "\"codecs\":[{\"id\":\"intra\",\"name\":\"Intra\",\"payload\":"                                  \
  "{\"kind\":\"scaling\",\"mbps\":\"192\",\"at\":\"24\"}},"                                        \
  "{\"id\":\"packed\",\"name\":\"Packed\",\"law\":\"packed-422-10\"},"                             \
  "{\"id\":\"rows\",\"name\":\"Rows\",\"payload\":{\"kind\":\"uncompressed\",\"sampling\":"        \
  "\"422\","                                                                                       \
  "\"stored_bits\":\"32/3\",\"row_align\":128}},"                                                  \
  "{\"id\":\"fixed\",\"name\":\"Fixed\",\"payload\":{\"kind\":\"fixed\",\"frame_bytes\":500000}}," \
  "{\"id\":\"even\",\"name\":\"Even\",\"payload\":{\"kind\":\"constant\",\"mbps\":\"100\"}}],"     \
  "\"licences\":[{\"id\":\"rate\",\"name\":\"Rate upgrade\",\"price_day\":\"60.00\"}],"            \
  "\"limits\":[{\"sizes\":[\"uhd\",\"hd\"],\"codecs\":[\"intra\",\"packed\",\"rows\",\"fixed\","   \
  "\"even\"],\"lowest_rate\":\"1\",\"highest_rate\":\"60\"},"                                      \
  "{\"sizes\":[\"uhd\",\"hd\"],\"codecs\":[\"intra\",\"packed\",\"rows\",\"fixed\",\"even\"],"     \
  "\"lowest_rate\":\"1\",\"highest_rate\":\"240\",\"licences\":[\"rate\"]}],"                      \
  "\"cards\":[{\"id\":\"big\",\"name\":\"64 GB\",\"bytes\":64000000000,\"write_mb_s\":9000},"      \
  "{\"id\":\"tiny\",\"name\":\"8 GB\",\"bytes\":8000000000,\"write_mb_s\":400}],"                  \
  "\"buffer\":{\"bytes\":48000000000,\"pre_percent\":\"50\",\"write_mb_s\":200},"                  \
  "\"audio_tracks\":2,\"maker\":\"Nobody\",\"my_own_key\":[1,2.5,null]}"

#define FILM_PROFILE                                                                               \
  "{\"format\":\"drawl-body\",\"version\":1,\"id\":\"pelt\",\"name\":\"Pelt\",\"kind\":\"film\","  \
  "\"source\":{\"document\":\"Bench sheet\",\"date\":\"2026-11-25\"},\"currency\":\"EUR\","        \
  "\"rates\":{\"step\":\"1\"},"                                                                    \
  "\"sizes\":[{\"id\":\"s16\",\"name\":\"Super 16\",\"gauge\":\"16\"},"                            \
  "{\"id\":\"s35\",\"name\":\"35 mm\",\"gauge\":\"35-3\"}],"                                       \
  "\"limits\":[{\"sizes\":[\"s16\",\"s35\"],\"lowest_rate\":\"1\",\"highest_rate\":\"150\"}],"     \
  "\"magazines\":[{\"id\":\"100\",\"name\":\"100 ft\",\"feet\":\"100\"},"                          \
  "{\"id\":\"400\",\"name\":\"400 ft\",\"feet\":\"400\"}]}"

#define BODY_A "{\"id\":\"A\",\"tier\":[],\"card\":\"big\",\"profile\":" DIGITAL_PROFILE "}"
#define BODY_F "{\"id\":\"F\",\"profile\":" FILM_PROFILE "}"
#define PLAN_HEAD "{\"format\":\"drawl-plan\",\"version\":1,"

/* A plan of both bodies with these shots. */
#define PLAN(shots) PLAN_HEAD "\"bodies\":[" BODY_A "," BODY_F "],\"shots\":[" shots "]}"

static inline DrawlPlan *
plan_of (const char *text)
{
  g_autoptr (GError) error = NULL;
  DrawlPlan *plan = drawl_plan_from_data (text, strlen (text), "test", &error);

  g_assert_no_error (error);
  return plan;
}

#define THREE_SHOTS                                                                                \
  "{\"slate\":\"1\",\"body\":\"A\",\"size\":\"uhd\",\"codec\":\"intra\"},"                         \
  "{\"slate\":\"2\",\"body\":\"A\",\"size\":\"hd\",\"codec\":\"packed\",\"capture_rate\":\"120\"," \
  "\"action_s\":\"1\"},"                                                                           \
  "{\"slate\":\"3\",\"body\":\"F\",\"size\":\"s16\"}"

/* A change to one shot, made in its fields. */
#define edit_shot(plan, shot, label, change)                                                       \
  G_STMT_START                                                                                     \
  {                                                                                                \
    g_autoptr (DrawlShotFields) fields = drawl_shot_fields_copy (drawl_shot_get_fields (shot));    \
    g_autoptr (GError) edit_error = NULL;                                                          \
    change;                                                                                        \
    drawl_plan_set_shot ((plan), (shot), fields, (label), &edit_error);                            \
    g_assert_no_error (edit_error);                                                                \
  }                                                                                                \
  G_STMT_END

#define assert_plans_equal(a, b)                                                                   \
  G_STMT_START                                                                                     \
  {                                                                                                \
    g_autofree char *text_a_ = drawl_plan_to_data ((a), NULL);                                     \
    g_autofree char *text_b_ = drawl_plan_to_data ((b), NULL);                                     \
    g_assert_cmpstr (text_a_, ==, text_b_);                                                        \
  }                                                                                                \
  G_STMT_END

#define assert_refused(error, code, part)                                                          \
  G_STMT_START                                                                                     \
  {                                                                                                \
    g_assert_error ((error), DRAWL_PLAN_ERROR, (int)(code));                                       \
    if (strstr ((error)->message, (part)) == NULL)                                                 \
      g_error ("\"%s\" does not say \"%s\"", (error)->message, (part));                            \
  }                                                                                                \
  G_STMT_END

/* What the views see of the verdicts and loads, beside the file. */
static inline char *
figures (DrawlPlan *plan)
{
  GString *all = g_string_new (NULL);

  for (guint i = 0; i < drawl_plan_n_shots (plan); i++) {
    DrawlShot *shot = drawl_plan_get_shot (plan, i);
    const DrawlShotLoad *load = drawl_shot_get_load (shot);
    g_string_append_printf (all, "%s %d %" G_GINT64_FORMAT " %" G_GINT64_FORMAT "\n",
                            drawl_shot_get_slate (shot), drawl_shot_get_verdict (shot),
                            load->card_frames, load->magazines);
    g_assert_true (drawl_plan_find_shot (plan, drawl_shot_get_slate (shot)) == shot);
    g_assert_cmpint (drawl_plan_shot_position (plan, shot), ==, (int)i);
  }
  return g_string_free (all, FALSE);
}

static inline char *
all_of (DrawlPlan *plan)
{
  g_autofree char *text = drawl_plan_to_data (plan, NULL), *worked_out = figures (plan);
  return g_strconcat (text, worked_out, NULL);
}
