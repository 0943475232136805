/* SPDX-License-Identifier: GPL-3.0-or-later */

/* An edited body put to use. What refers to it by id or by place finds the row that it meant. */

#include "plan/body-draft-apply.h"

#include <glib/gstdio.h>

#include "core/text.h"
#include "plan/error.h"
#include "plan/json-file.h"
#include "plan/json-text.h"

#define OWN_FOLDER_MODE 0700

/* ---- Into the plan ---- */

static DrawlTier
follow_tier (DrawlBodyDraft *draft, const DrawlBody *before, const DrawlBody *after, DrawlTier tier)
{
  DrawlTier now = 0;

  for (guint i = 0; i < before->n_licences; i++) {
    if ((tier & DRAWL_TIER_BIT (i)) == 0)
      continue;
    g_autofree char *id =
        drawl_body_draft_follow_id (draft, DRAWL_DRAFT_LICENCES, before->licences[i].id);
    int index = id != NULL ? drawl_body_licence_index (after, id) : -1;
    if (index >= 0)
      now |= DRAWL_TIER_BIT (index);
  }
  return now;
}

/* -1, none in particular, where the card is gone. */
static int
follow_card (DrawlBodyDraft *draft, const DrawlBody *before, const DrawlBody *after, int card)
{
  if (card < 0)
    return -1;
  g_autofree char *id =
      drawl_body_draft_follow_id (draft, DRAWL_DRAFT_CARDS, before->cards[card].id);
  return id != NULL ? drawl_body_card_index (after, id) : -1;
}

/* An id that was never there, or is no longer, stays for the check to name. */
static void
follow_member (DrawlBodyDraft *draft, DrawlDraftTable table, char **member)
{
  g_autofree char *id = drawl_body_draft_follow_id (draft, table, *member);

  if (id != NULL)
    drawl_shot_fields_set (member, id);
}

static gboolean
follow_shots (DrawlBodyDraft *draft, DrawlPlan *plan, const char *body, const char *label,
              GError **error)
{
  for (guint i = 0; i < drawl_plan_n_shots (plan); i++) {
    DrawlShot *shot = drawl_plan_get_shot (plan, i);
    if (!g_str_equal (drawl_shot_get_fields (shot)->body, body))
      continue;
    g_autoptr (DrawlShotFields) fields = drawl_shot_fields_copy (drawl_shot_get_fields (shot));
    follow_member (draft, DRAWL_DRAFT_SIZES, &fields->size);
    follow_member (draft, DRAWL_DRAFT_CODECS, &fields->codec);
    if (!drawl_plan_set_shot (plan, shot, fields, label, error))
      return FALSE;
  }
  return TRUE;
}

gboolean
drawl_body_draft_apply (DrawlBodyDraft *draft, DrawlPlan *plan, DrawlHiredBody *hired,
                        GError **error)
{
  DrawlBody *body = drawl_body_draft_get_body (draft);

  if (body == NULL) {
    g_set_error_literal (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_VALUE,
                         _ ("the body has mistakes, which are marked"));
    return FALSE;
  }

  const DrawlBody *before = drawl_hired_body_get_body (hired);
  const char *label = _ ("Edit Body");
  g_autoptr (DrawlHiredFields) fields =
      drawl_hired_fields_copy (drawl_hired_body_get_fields (hired));
  fields->tier = follow_tier (draft, before, body, fields->tier);
  fields->card = follow_card (draft, before, body, fields->card);
  drawl_body_unref (fields->body);
  fields->body = drawl_body_ref (body);
  drawl_plan_begin_step (plan, label);
  gboolean done = drawl_plan_set_body (plan, hired, fields, label, error) &&
                  follow_shots (draft, plan, drawl_hired_body_get_id (hired), label, error);
  drawl_plan_end_step (plan);
  return done;
}

/* ---- Into the folder ---- */

/* An id as a file name: what could lead out of the folder becomes a dash. */
static char *
file_name (const char *id)
{
  g_autofree char *stem = g_strdup (id);

  g_strdelimit (stem, "/\\.", '-');
  return g_strconcat (stem, ".json", NULL);
}

gboolean
drawl_body_save_own (DrawlBody *body, GError **error)
{
  g_autofree char *folder = g_build_filename (g_get_user_data_dir (), "drawl", "bodies", NULL);
  g_autofree char *name = file_name (body->id);
  g_autoptr (GFile) file = g_file_new_build_filename (folder, name, NULL);
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (JsonNode) node = json_node_init_object (json_node_alloc (), body->json);

  g_mkdir_with_parents (folder, OWN_FOLDER_MODE); /* what fails shows when the file is written */
  drawl_json_append (text, node, 0);
  g_string_append_c (text, '\n');
  return drawl_json_save (file, text->str, text->len, TRUE, NULL, error);
}
