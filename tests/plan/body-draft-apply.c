/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What becomes of a draft: what refers to a row follows it, and a plan takes the whole in one
 * step. */

#include "plan/body-draft-apply.h"

#include <glib/gstdio.h>

#include "drafts.h"
#include "plan/plan-file.h"
#include "tree.h"

/* ---- Ids that change ---- */

static void
test_rename (void)
{
  g_autoptr (DrawlBody) body = load ("mullion-8.json");
  g_autoptr (DrawlBodyDraft) draft = drawl_body_draft_new_from_body (body);

  /* By way of an empty id, as it is typed. */
  type (draft, DRAWL_DRAFT_SIZES, 0, "id", "");
  type (draft, DRAWL_DRAFT_SIZES, 0, "id", "gate");
  type (draft, DRAWL_DRAFT_LICENCES, 0, "id", "gate-licence");
  g_assert_cmpstr (text (draft, DRAWL_DRAFT_LIMITS, 0, "sizes"), ==, "gate");
  DrawlBody *after = drawl_body_draft_get_body (draft);
  g_assert_nonnull (after);
  g_assert_cmpuint (after->n_limits, ==, body->n_limits);
  g_assert_cmpint (drawl_body_size_index (after, "gate"), ==, 0);
  g_assert_cmphex (after->limits[0].licences, ==, body->limits[0].licences);
}

static void
test_remove (void)
{
  g_autoptr (DrawlBody) body = load ("mullion-8.json");
  g_autoptr (DrawlBodyDraft) draft = drawl_body_draft_new_from_body (body);

  drawl_body_draft_remove_row (draft, row_at (draft, DRAWL_DRAFT_SIZES, 0));
  g_assert_nonnull (mistake (draft, DRAWL_DRAFT_LIMITS, 0, "sizes"));
  g_assert_nonnull (mistake (draft, DRAWL_DRAFT_LIMITS, 1, "sizes"));
  g_assert_null (mistake (draft, DRAWL_DRAFT_LIMITS, 2, "sizes"));
}

static DrawlPlan *
demo (void)
{
  g_autofree char *path = drawl_data_file ("demo", "glass.drawl", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  DrawlPlan *plan = drawl_plan_load (file, NULL, &error);

  g_assert_no_error (error);
  return plan;
}

static void
apply (DrawlBodyDraft *draft, DrawlPlan *plan, DrawlHiredBody *hired)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (drawl_body_draft_apply (draft, plan, hired, &error));
  g_assert_no_error (error);
}

/* Sizes, codecs, the tier and the card go along; verdicts are the same; one step. */
static void
test_apply_renamed (void)
{
  g_autoptr (DrawlPlan) plan = demo ();
  DrawlHiredBody *hired = drawl_plan_find_body (plan, "A");
  g_autoptr (DrawlHiredFields) before =
      drawl_hired_fields_copy (drawl_hired_body_get_fields (hired));
  g_autoptr (DrawlBodyDraft) draft = drawl_body_draft_new_from_body (before->body);
  DrawlShot *shot = drawl_plan_get_shot (plan, 0);
  DrawlVerdict verdict = drawl_shot_get_verdict (shot);
  g_autofree char *size = g_strdup (drawl_shot_get_fields (shot)->size);
  guint index = (guint)drawl_body_size_index (before->body, size);

  g_assert_cmpstr (drawl_shot_get_fields (shot)->body, ==, "A");
  type (draft, DRAWL_DRAFT_SIZES, index, "id", "renamed");
  type (draft, DRAWL_DRAFT_CARDS, (guint)before->card, "id", "renamed-card");
  apply (draft, plan, hired);
  g_assert_cmpstr (drawl_shot_get_fields (shot)->size, ==, "renamed");
  g_assert_cmpint ((int)drawl_shot_get_verdict (shot), ==, (int)verdict);
  g_assert_cmpint (drawl_hired_body_get_fields (hired)->card, ==, before->card);
  drawl_plan_undo (plan);
  g_assert_cmpstr (drawl_shot_get_fields (shot)->size, ==, size);
  g_assert_true (drawl_hired_fields_equal (drawl_hired_body_get_fields (hired), before));
  g_assert_false (drawl_plan_can_undo (plan));
}

static void
test_apply_without_a_licence (void)
{
  g_autoptr (DrawlPlan) plan = demo ();
  DrawlHiredBody *hired = drawl_plan_find_body (plan, "A");
  g_autoptr (DrawlHiredFields) fields =
      drawl_hired_fields_copy (drawl_hired_body_get_fields (hired));
  guint n = fields->body->n_licences;

  fields->tier = DRAWL_TIER_BIT (0) | DRAWL_TIER_BIT (n - 1);
  g_assert_true (drawl_plan_set_body (plan, hired, fields, "Tier", NULL));
  g_autoptr (DrawlBodyDraft) draft = drawl_body_draft_new_from_body (fields->body);
  drawl_body_draft_clear_rows (draft, DRAWL_DRAFT_LIMITS);
  drawl_body_draft_add_row (draft, DRAWL_DRAFT_LIMITS);
  DrawlDraftRow *limit = row_at (draft, DRAWL_DRAFT_LIMITS, 0);
  drawl_body_draft_refer (draft, limit, 0, row_at (draft, DRAWL_DRAFT_SIZES, 0), TRUE);
  drawl_body_draft_refer (draft, limit, 1, row_at (draft, DRAWL_DRAFT_CODECS, 0), TRUE);
  type (draft, DRAWL_DRAFT_LIMITS, 0, "lowest_rate", "1");
  type (draft, DRAWL_DRAFT_LIMITS, 0, "highest_rate", "50");
  drawl_body_draft_remove_row (draft, row_at (draft, DRAWL_DRAFT_LICENCES, 0));
  apply (draft, plan, hired);
  g_assert_cmphex (drawl_hired_body_get_tier (hired), ==, DRAWL_TIER_BIT (n - 2));
}

static void
test_apply_with_mistakes (void)
{
  g_autoptr (DrawlPlan) plan = demo ();
  DrawlHiredBody *hired = drawl_plan_find_body (plan, "A");
  DrawlBody *before = drawl_hired_body_get_body (hired);
  g_autoptr (DrawlBodyDraft) draft = drawl_body_draft_new ();
  g_autoptr (GError) error = NULL;

  g_assert_false (drawl_body_draft_apply (draft, plan, hired, &error));
  g_assert_nonnull (error);
  g_assert_true (drawl_hired_body_get_body (hired) == before);
  g_assert_false (drawl_plan_can_undo (plan));
}

static void
test_save_own (void)
{
  g_autoptr (DrawlBodyDraft) draft = drawl_body_draft_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *path =
      g_build_filename (g_get_user_data_dir (), "drawl", "bodies", "--up.json", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);

  fill (draft);
  type (draft, DRAWL_DRAFT_ABOUT, 0, "id", "./up");
  g_assert_true (drawl_body_save_own (drawl_body_draft_get_body (draft), &error));
  g_assert_no_error (error);
  g_autoptr (DrawlBody) again = drawl_body_load (file, &error);
  g_assert_no_error (error);
  g_assert_true (json_object_equal (again->json, drawl_body_draft_get_body (draft)->json));
  g_unlink (path);
}

/* A home for the one test that saves; nothing may have asked for the folder before. */
static char *data_folder;

static void
own_data_folder (void)
{
  data_folder = g_dir_make_tmp ("drawl-data-XXXXXX", NULL);
  g_assert_nonnull (data_folder);
  g_setenv ("XDG_DATA_HOME", data_folder, TRUE);
}

static void
remove_data_folder (void)
{
  remove_tree (data_folder);
  g_free (data_folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  own_data_folder ();
  g_test_add_func ("/body-draft-apply/rename", test_rename);
  g_test_add_func ("/body-draft-apply/remove", test_remove);
  g_test_add_func ("/body-draft-apply/apply-renamed", test_apply_renamed);
  g_test_add_func ("/body-draft-apply/apply-without-a-licence", test_apply_without_a_licence);
  g_test_add_func ("/body-draft-apply/apply-with-mistakes", test_apply_with_mistakes);
  g_test_add_func ("/body-draft-apply/save-own", test_save_own);
  int result = g_test_run ();
  remove_data_folder ();
  return result;
}
