/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Shots on their way: from plan to plan, as text and back, and what the other plan makes of
 * them. */

#include "plan/shot-bundle.h"

#include "fixture.h"

static DrawlShotBundle *
bundle_of (DrawlPlan *plan, const char *slates)
{
  g_auto (GStrv) names = g_strsplit (slates, " ", -1);
  g_autoptr (GPtrArray) shots = g_ptr_array_new ();

  for (char **name = names; *name != NULL; name++)
    g_ptr_array_add (shots, drawl_plan_find_shot (plan, *name));
  return drawl_shot_bundle_new (plan, shots);
}

static char *
slates_of (DrawlPlan *plan)
{
  GString *slates = g_string_new (NULL);

  for (guint i = 0; i < drawl_plan_n_shots (plan); i++)
    g_string_append_printf (slates, "%s%s", i > 0 ? " " : "",
                            drawl_shot_get_slate (drawl_plan_get_shot (plan, i)));
  return g_string_free (slates, FALSE);
}

static char *
body_ids_of (DrawlPlan *plan)
{
  GListModel *bodies = drawl_plan_get_bodies (plan);
  GString *ids = g_string_new (NULL);

  for (guint i = 0; i < g_list_model_get_n_items (bodies); i++) {
    g_autoptr (DrawlHiredBody) hired = g_list_model_get_item (bodies, i);
    g_string_append_printf (ids, "%s%s", i > 0 ? " " : "", drawl_hired_body_get_id (hired));
  }
  return g_string_free (ids, FALSE);
}

/* ---- Into another plan ---- */

/* Another profile under the id that shots of PLAN() name theirs by. */
#define OTHER_A                                                                                    \
  "{\"id\":\"A\",\"profile\":{\"format\":\"drawl-body\",\"version\":1,\"id\":\"awl\","             \
  "\"name\":\"Awl\",\"kind\":\"film\",\"rates\":{\"step\":\"1\"},"                                 \
  "\"sizes\":[{\"id\":\"s16\",\"name\":\"Super 16\",\"gauge\":\"16\"}],"                           \
  "\"limits\":[{\"sizes\":[\"s16\"],\"lowest_rate\":\"1\",\"highest_rate\":\"75\"}],"              \
  "\"magazines\":[{\"id\":\"100\",\"name\":\"100 ft\",\"feet\":\"100\"}]}}"
#define SAME_A_AS_C "{\"id\":\"C\",\"profile\":" DIGITAL_PROFILE "}"

typedef struct {
  const char *name;
  const char *slates; /* taken */
  const char *into;   /* a plan file */
  guint position;
  const char *then_slates, *then_bodies;
  const char *first_body; /* of the first shot that came */
} Way;

static const Way ways[] = {
    {"empty", "1 2", PLAN_HEAD "\"shots\":[]}", 0, "1 2", "A", "A"},
    {"both-bodies", "1 3", PLAN_HEAD "\"shots\":[]}", 0, "1 3", "A F", "A"},
    {"same-body", "2", PLAN_HEAD "\"bodies\":[" BODY_A "],\"shots\":[]}", 0, "2", "A", "A"},
    {"same-profile-other-id", "2", PLAN_HEAD "\"bodies\":[" SAME_A_AS_C "],\"shots\":[]}", 0, "2",
     "C", "C"},
    {"same-profile-twice", "2", PLAN_HEAD "\"bodies\":[" SAME_A_AS_C "," BODY_A "],\"shots\":[]}",
     0, "2", "C A", "A"},
    {"other-profile-same-id", "1", PLAN_HEAD "\"bodies\":[" OTHER_A "],\"shots\":[]}", 0, "1",
     "A B", "B"},
    {"taken-slate", "1", PLAN_HEAD "\"shots\":[{\"slate\":\"1\"},{\"slate\":\"2\"}]}", 1, "1 3 2",
     "A", "A"},
    {"own-slates-first", "1 2", PLAN_HEAD "\"shots\":[{\"slate\":\"1\"}]}", 9, "1 3 2", "A", "A"},
    {"letters", "12A", PLAN_HEAD "\"shots\":[{\"slate\":\"12A\"},{\"slate\":\"12B\"}]}", 0,
     "12C 12A 12B", "A", "A"},
};

static void
test_way (gconstpointer data)
{
  const Way *way = data;
  g_autoptr (DrawlPlan) from = plan_of (PLAN (
      THREE_SHOTS ",{\"slate\":\"12A\",\"body\":\"A\",\"size\":\"uhd\",\"codec\":\"intra\"}"));
  g_autoptr (DrawlPlan) into = plan_of (way->into);
  g_autofree char *before = all_of (into), *source = all_of (from);
  g_autoptr (DrawlShotBundle) bundle = bundle_of (from, way->slates);
  guint position = MIN (way->position, drawl_plan_n_shots (into));
  g_autoptr (GError) error = NULL;

  g_assert_true (drawl_shot_bundle_insert (bundle, into, way->position, "Copy", &error));
  g_assert_no_error (error);
  g_autofree char *slates = slates_of (into), *ids = body_ids_of (into);
  g_assert_cmpstr (slates, ==, way->then_slates);
  g_assert_cmpstr (ids, ==, way->then_bodies);
  DrawlShot *first = drawl_plan_get_shot (into, position);
  g_assert_cmpstr (drawl_shot_get_fields (first)->body, ==, way->first_body);

  g_autofree char *after = all_of (into), *source_after = all_of (from);
  g_assert_cmpstr (source, ==, source_after);
  drawl_plan_undo (into);
  g_autofree char *undone = all_of (into);
  g_assert_cmpstr (before, ==, undone);
  drawl_plan_redo (into);
  g_autofree char *redone = all_of (into);
  g_assert_cmpstr (after, ==, redone);
}

/* What a shot of the other plan could do it can do here. */
static void
test_verdict_comes_along (void)
{
  g_autoptr (DrawlPlan) from = plan_of (PLAN (THREE_SHOTS));
  g_autoptr (DrawlPlan) into = plan_of (PLAN_HEAD "\"bodies\":[" OTHER_A "],\"shots\":[]}");
  g_autoptr (DrawlShotBundle) bundle = bundle_of (from, "2");

  g_assert_true (drawl_shot_bundle_insert (bundle, into, 0, "Copy", NULL));
  g_assert_cmpint (drawl_shot_get_verdict (drawl_plan_find_shot (into, "2")), ==,
                   DRAWL_VERDICT_NEEDS_LICENCE);
}

/* As they were when they were taken, whatever becomes of them. */
static void
test_keeps_what_it_took (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (PLAN (THREE_SHOTS));
  g_autoptr (DrawlShotBundle) bundle = bundle_of (plan, "1 2");
  g_autoptr (DrawlPlan) into = drawl_plan_new ();

  edit_shot (plan, drawl_plan_find_shot (plan, "1"), "Edit", fields->takes = 9);
  drawl_plan_remove_shot (plan, 1, "Remove");
  g_autoptr (GPtrArray) there = drawl_shot_bundle_dup_shots (bundle);
  g_assert_cmpuint (there->len, ==, 1);
  g_assert_true (there->pdata[0] == drawl_plan_find_shot (plan, "1"));
  g_assert_true (drawl_shot_bundle_get_plan (bundle) == plan);
  g_assert_cmpuint (drawl_shot_bundle_n_shots (bundle), ==, 2);
  g_assert_true (drawl_shot_bundle_insert (bundle, into, 0, "Copy", NULL));
  g_assert_cmpuint (drawl_shot_get_fields (drawl_plan_find_shot (into, "1"))->takes, ==, 1);
  g_assert_nonnull (drawl_plan_find_shot (into, "2"));
}

/* A thousand slates that are all taken find a thousand that are free. */
static void
test_many_taken (void)
{
  g_autoptr (DrawlPlan) plan = drawl_plan_new ();
  g_autoptr (GPtrArray) fields =
      g_ptr_array_new_with_free_func ((GDestroyNotify)drawl_shot_fields_free);
  g_autoptr (GPtrArray) none = g_ptr_array_new (), shots = g_ptr_array_new ();

  for (int i = 1; i <= 1000; i++) {
    g_autofree char *slate = g_strdup_printf ("%d", i);
    g_ptr_array_add (fields, drawl_shot_fields_new (slate, exact ("24")));
  }
  g_assert_true (drawl_plan_insert_all (plan, 0, none, fields, "Add", NULL));
  for (guint i = 0; i < 1000; i++)
    g_ptr_array_add (shots, drawl_plan_get_shot (plan, i));
  g_autoptr (DrawlShotBundle) bundle = drawl_shot_bundle_new (plan, shots);
  g_assert_true (drawl_shot_bundle_insert (bundle, plan, 1000, "Copy", NULL));
  for (guint i = 0; i < 2000; i++) {
    g_autofree char *slate = g_strdup_printf ("%u", i + 1);
    g_assert_cmpstr (drawl_shot_get_slate (drawl_plan_get_shot (plan, i)), ==, slate);
  }
}

/* ---- As text ---- */

static void
test_text_and_back (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (PLAN (THREE_SHOTS));
  g_autoptr (DrawlShotBundle) bundle = bundle_of (plan, "3 1");
  g_autoptr (DrawlPlan) into = drawl_plan_new (), into_again = drawl_plan_new ();
  g_autoptr (GError) error = NULL;
  gsize length;
  g_autofree char *text = drawl_shot_bundle_to_text (bundle, &length);
  g_autoptr (DrawlShotBundle) again = drawl_shot_bundle_from_text (text, length, "text", &error);

  g_assert_no_error (error);
  g_assert_cmpuint (strlen (text), ==, length);
  g_assert_null (drawl_shot_bundle_get_plan (again));
  g_assert_cmpuint (drawl_shot_bundle_n_shots (again), ==, 2);
  g_assert_cmpuint (drawl_shot_bundle_get_hired_fields (again)->len, ==, 2);
  g_assert_true (drawl_shot_bundle_insert (bundle, into, 0, "Copy", NULL));
  g_assert_true (drawl_shot_bundle_insert (again, into_again, 0, "Copy", NULL));
  assert_plans_equal (into, into_again);
}

/* Only the bodies that the shots name are in it. */
static void
test_bodies_in_use (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (PLAN (THREE_SHOTS));
  g_autoptr (DrawlShotBundle) bundle = bundle_of (plan, "1 2");
  const GPtrArray *hired = drawl_shot_bundle_get_hired_fields (bundle);

  g_assert_cmpuint (hired->len, ==, 1);
  g_assert_cmpstr (((const DrawlHiredFields *)hired->pdata[0])->id, ==, "A");
}

typedef struct {
  const char *name;
  const char *text;
  DrawlPlanError code;
  const char *part;
} Broken;

static const Broken broken[] = {
    {"empty", "", DRAWL_PLAN_ERROR_SYNTAX, "clipboard"},
    {"no-json", "12A, the glass breaks", DRAWL_PLAN_ERROR_SYNTAX, "clipboard"},
    {"no-plan", "{\"shots\":[]}", DRAWL_PLAN_ERROR_FORMAT, "drawl-plan"},
    {"newer", "{\"format\":\"drawl-plan\",\"version\":2,\"shots\":[]}", DRAWL_PLAN_ERROR_VERSION,
     "2"},
    {"no-shots", PLAN_HEAD "\"shots\":[]}", DRAWL_PLAN_ERROR_VALUE, "no shots"},
    {"no-slate", PLAN_HEAD "\"shots\":[{}]}", DRAWL_PLAN_ERROR_VALUE, "slate"},
    {"no-body", PLAN_HEAD "\"shots\":[{\"slate\":\"1\",\"body\":\"A\"}]}", DRAWL_PLAN_ERROR_UNKNOWN,
     "A"},
    {"twice", PLAN_HEAD "\"shots\":[{\"slate\":\"1\"},{\"slate\":\"1\"}]}",
     DRAWL_PLAN_ERROR_DUPLICATE, "1"},
};

static void
test_broken (gconstpointer data)
{
  const Broken *row = data;
  g_autoptr (GError) error = NULL;

  g_assert_null (
      drawl_shot_bundle_from_text (row->text, strlen (row->text), "the clipboard", &error));
  assert_refused (error, row->code, row->part);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/shot-bundle/into", ways, test_way);
  g_test_add_func ("/shot-bundle/verdict-comes-along", test_verdict_comes_along);
  g_test_add_func ("/shot-bundle/keeps-what-it-took", test_keeps_what_it_took);
  g_test_add_func ("/shot-bundle/many-taken", test_many_taken);
  g_test_add_func ("/shot-bundle/text-and-back", test_text_and_back);
  g_test_add_func ("/shot-bundle/bodies-in-use", test_bodies_in_use);
  add_rows ("/shot-bundle/broken", broken, test_broken);

  return g_test_run ();
}
