/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The reader of journals: a journal that was cut at any byte, or altered at any byte, gives the
 * state of the last record before that place; records that no Drawl wrote are refused and harm
 * nothing. */

#include "plan/journal-state.h"

#include "plan/journal-frame.h"
#include "state-folder.h"

/* ---- A journal, and the states it went through ---- */

typedef struct {
  char *data;
  gsize length;
  GArray *ends;      /* of gsize: how long it was after each record of the plan */
  GPtrArray *states; /* of char: what the plan was then */
} Story;

static void
story_clear (Story *story)
{
  g_free (story->data);
  g_array_unref (story->ends);
  g_ptr_array_unref (story->states);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Story, story_clear)

static void
tell (Story *story, DrawlJournal *journal, DrawlPlan *plan)
{
  g_assert_true (drawl_journal_flush (journal));
  g_autofree char *path = only_file_in_state ();
  g_free (story->data);
  g_assert_true (g_file_get_contents (path, &story->data, &story->length, NULL));
  g_array_append_val (story->ends, story->length);
  g_ptr_array_add (story->states, drawl_plan_to_data (plan, NULL));
}

/* A few edits of a plan without bodies, which keeps the journal short. */
static void
tell_story (Story *story)
{
  g_autoptr (DrawlPlan) plan =
      plan_of (PLAN_HEAD "\"title\":\"Glass\",\"shots\":[{\"slate\":\"1\"},{\"slate\":\"2\","
                         "\"notes\":\"Steam\"},{\"slate\":\"3\",\"mine\":[1,{\"a\":null}]}]}");
  g_autoptr (DrawlJournal) journal = drawl_journal_open (plan, NULL, NULL, NULL);

  story->ends = g_array_new (FALSE, FALSE, sizeof (gsize));
  story->states = g_ptr_array_new_with_free_func (g_free);
  edit_shot (plan, drawl_plan_get_shot (plan, 1), "Edit", fields->takes = 4);
  tell (story, journal, plan);
  edit_shot (plan, drawl_plan_get_shot (plan, 2), "Edit", fields->takes = 7);
  tell (story, journal, plan);
  drawl_plan_move_shot (plan, 2, 0, "Move");
  tell (story, journal, plan);
  drawl_plan_remove_shot (plan, 1, "Remove");
  tell (story, journal, plan);
  drawl_journal_close (journal);
}

/* How many records of the plan are whole in the first @length bytes. */
static guint
n_whole (const Story *story, gsize length)
{
  guint n = 0;

  while (n < story->ends->len && g_array_index (story->ends, gsize, n) <= length)
    n++;
  return n;
}

static char *
plan_text (const DrawlJournalState *state)
{
  g_autoptr (GError) error = NULL;
  gsize length;
  g_autofree char *text = drawl_journal_state_text (state, &length, &error);

  g_assert_no_error (error);
  g_autoptr (DrawlPlan) plan = drawl_plan_from_data (text, length, "journal", &error);
  g_assert_no_error (error);
  return drawl_plan_to_data (plan, NULL);
}

/* @data is read from memory of exactly its size, so that reading past it is found. */
static DrawlJournalState *
read_copy (const char *data, gsize length)
{
  g_autofree char *copy = g_memdup2 (data, length);
  return drawl_journal_state_read (copy != NULL ? copy : "", length);
}

static void
assert_state (const Story *story, const DrawlJournalState *state, guint n)
{
  if (n == 0) {
    g_assert_null (state->head);
    g_assert_nonnull (state->problem);
    return;
  }
  g_autofree char *text = plan_text (state);
  g_assert_cmpstr (text, ==, story->states->pdata[n - 1]);
  g_assert_cmpint (state->edits, ==, n);
}

static void
test_torn_anywhere (void)
{
  g_auto (Story) story = {0};

  tell_story (&story);
  for (gsize length = 0; length <= story.length; length++) {
    g_autoptr (DrawlJournalState) state = read_copy (story.data, length);
    guint n = n_whole (&story, length);
    assert_state (&story, state, n);
    g_assert_true (n == 0 || state->problem == NULL);
  }
}

/* A disk may have made a file longer and not have filled it. */
static void
test_blank_tail (void)
{
  g_auto (Story) story = {0};

  tell_story (&story);
  for (guint n = 1; n <= story.ends->len; n++) {
    gsize end = g_array_index (story.ends, gsize, n - 1);
    g_autofree char *longer = g_malloc0 (end + 5000);
    memcpy (longer, story.data, end);
    g_autoptr (DrawlJournalState) state = read_copy (longer, end + 5000);
    assert_state (&story, state, n);
    g_assert_null (state->problem);
  }
}

/* Any bit: what stands before the altered record is still given. */
static void
test_altered_anywhere (void)
{
  g_auto (Story) story = {0};
  guint told = 0;

  tell_story (&story);
  for (gsize at = 0; at < story.length; at++) {
    g_autofree char *altered = g_memdup2 (story.data, story.length);
    altered[at] = (char)(altered[at] ^ (1 << (at % 8)));
    g_autoptr (DrawlJournalState) state = read_copy (altered, story.length);
    assert_state (&story, state, n_whole (&story, at));
    told += state->problem != NULL;
  }
  /* Only an altered last record looks like one that was never finished, and so does an altered
   * length that leads past the end. */
  gsize last = g_array_index (story.ends, gsize, story.ends->len - 2);
  g_assert_cmpuint (told + 8 * story.ends->len, >, last);
}

/* Whole records, but not where they were written. */
static void
test_misplaced (void)
{
  g_auto (Story) story = {0};

  tell_story (&story);
  gsize first = g_array_index (story.ends, gsize, 0), second = g_array_index (story.ends, gsize, 1);
  g_autoptr (GString) without = g_string_new_len (story.data, (gssize)first);
  g_string_append_len (without, story.data + second, (gssize)(story.length - second));
  g_autoptr (DrawlJournalState) state = read_copy (without->str, without->len);
  assert_state (&story, state, 1);
  g_assert_cmpstr (state->problem, ==, "the journal is damaged; the last edits may be missing");

  g_autoptr (GString) twice = g_string_new_len (story.data, (gssize)second);
  g_string_append_len (twice, story.data + first, (gssize)(second - first));
  g_string_append_len (twice, story.data + second, (gssize)(story.length - second));
  g_autoptr (DrawlJournalState) again = read_copy (twice->str, twice->len);
  assert_state (&story, again, 2);
  g_assert_nonnull (again->problem);
}

/* ---- Records ---- */

#define HEAD_TEXT "\"plan\":\"{\\\"format\\\":\\\"drawl-plan\\\",\\\"version\\\":1}\""
#define WHOLE                                                                                      \
  "{\"time_us\":5,\"edits\":1," HEAD_TEXT ",\"shots\":[{\"slate\":\"1\"},{\"slate\":\"2\"}]}"

static char *
journal_of (const char *const *records, gsize *length)
{
  GString *text = g_string_new (DRAWL_JOURNAL_MAGIC);
  DrawlJournalSeal seal = {{0}};

  for (guint i = 0; records[i] != NULL; i++)
    drawl_journal_frame_append (text, &seal, records[i], strlen (records[i]));
  *length = text->len;
  return g_string_free (text, FALSE);
}

typedef struct {
  const char *name;
  const char *record; /* behind a whole plan of the shots 1 and 2 */
  const char *slates; /* of the plan then, NULL: the record is refused */
} Added;

static const Added added[] = {
    {"nothing-new", "{}", "1,2"},
    {"same-list", "{\"shots\":[[0,2]]}", "1,2"},
    {"turned-round", "{\"shots\":[[1,1],[0,1]]}", "2,1"},
    {"one-new", "{\"shots\":[[0,1],{\"slate\":\"9\"},[1,1]]}", "1,9,2"},
    {"all-gone", "{\"shots\":[]}", ""},
    {"empty-stretch", "{\"shots\":[[2,0]]}", ""},
    {"unknown-key", "{\"shots\":[[0,2]],\"later\":[{}]}", "1,2"},
    {"no-json", "shots", NULL},
    {"a-list", "[]", NULL},
    {"cut-short", "{\"shots\":[[0,2]", NULL},
    {"no-list", "{\"shots\":{}}", NULL},
    {"null-list", "{\"shots\":null}", NULL},
    {"neither-stretch-nor-shot", "{\"shots\":[3]}", NULL},
    {"beyond-the-end", "{\"shots\":[[0,3]]}", NULL},
    {"from-beyond-the-end", "{\"shots\":[[3,0]]}", NULL},
    {"wraps-around", "{\"shots\":[[1,4294967295]]}", NULL},
    {"negative", "{\"shots\":[[-1,1]]}", NULL},
    {"broken-number", "{\"shots\":[[0.0,1]]}", NULL},
    {"text-for-number", "{\"shots\":[[\"0\",1]]}", NULL},
    {"half-a-stretch", "{\"shots\":[[0]]}", NULL},
    {"empty-list-for-stretch", "{\"shots\":[[]]}", NULL},
    {"three-numbers", "{\"shots\":[[0,1,1]]}", NULL},
    {"long-number", "{\"shots\":[[0,00000000000000000001]]}", NULL},
    {"bodies-beyond-the-end", "{\"bodies\":[[0,1]]}", NULL},
};

static char *
slates_of (const DrawlJournalState *state)
{
  g_autofree char *text = plan_text (state);
  g_autoptr (DrawlPlan) plan = plan_of (text);
  GString *slates = g_string_new (NULL);

  for (guint i = 0; i < drawl_plan_n_shots (plan); i++)
    g_string_append_printf (slates, "%s%s", i > 0 ? "," : "",
                            drawl_shot_get_slate (drawl_plan_get_shot (plan, i)));
  return g_string_free (slates, FALSE);
}

static void
test_added (gconstpointer data)
{
  const Added *row = data;
  const char *const records[] = {"{\"file\":\"file:///a.drawl\"}", WHOLE, row->record, NULL};
  gsize length;
  g_autofree char *journal = journal_of (records, &length);
  g_autoptr (DrawlJournalState) state = read_copy (journal, length);
  g_autofree char *slates = slates_of (state);

  g_assert_cmpstr (state->uri, ==, "file:///a.drawl");
  g_assert_cmpstr (slates, ==, row->slates != NULL ? row->slates : "1,2");
  g_assert_cmpint (state->problem != NULL, ==, row->slates == NULL);
}

/* ---- No plan at the end ---- */

typedef struct {
  const char *name;
  const char *records[4];
  int code;
  const char *says;
} Hopeless;

static const Hopeless hopeless[] = {
    {"no-records", {NULL}, DRAWL_PLAN_ERROR_FORMAT, "ends before the first edit"},
    {"only-whose", {"{}", NULL}, DRAWL_PLAN_ERROR_FORMAT, "ends before the first edit"},
    {"whose-is-broken", {"{", WHOLE, NULL}, DRAWL_PLAN_ERROR_FORMAT, "nothing of the plan"},
    {"begins-with-a-change", {"{}", "{\"shots\":[]}", NULL}, DRAWL_PLAN_ERROR_FORMAT, "nothing of"},
    {"only-a-save",
     {"{}", "{\"saving\":\"ab\"}", NULL},
     DRAWL_PLAN_ERROR_FORMAT,
     "before the first"},
    {"plan-is-no-object", {"{}", "{\"plan\":\"[]\"}", NULL}, DRAWL_PLAN_ERROR_FORMAT, "no plan"},
    {"plan-is-broken", {"{}", "{\"plan\":\"{,}\"}", NULL}, DRAWL_PLAN_ERROR_SYNTAX, "line 1"},
    {"plan-is-empty", {"{}", "{\"plan\":\"{}\"}", NULL}, DRAWL_PLAN_ERROR_SYNTAX, "line 1"},
    {"two-of-one-slate",
     {"{}", WHOLE, "{\"shots\":[[0,2],[0,1]]}", NULL},
     DRAWL_PLAN_ERROR_DUPLICATE,
     "slate"},
    {"newer-plan",
     {"{}", "{\"plan\":\"{\\\"format\\\":\\\"drawl-plan\\\",\\\"version\\\":2}\"}", NULL},
     DRAWL_PLAN_ERROR_VERSION,
     "newer"},
};

static void
test_hopeless (gconstpointer data)
{
  const Hopeless *row = data;
  gsize length, text_length = 0;
  g_autofree char *journal = journal_of (row->records, &length);
  g_autoptr (DrawlJournalState) state = read_copy (journal, length);
  g_autoptr (GError) error = NULL;
  g_autofree char *text = drawl_journal_state_text (state, &text_length, &error);
  g_autoptr (DrawlPlan) plan =
      text != NULL ? drawl_plan_from_data (text, text_length, "journal", &error) : NULL;

  g_assert_null (plan);
  assert_refused (error, row->code, row->says);
}

/* A few hundred bytes that stand for 30 GB. */
static void
test_grows_without_end (void)
{
  g_autoptr (GString) whole =
      g_string_new ("{" HEAD_TEXT ",\"shots\":[{\"slate\":\"1\",\"notes\":\"");
  const char *records[40] = {"{}"};
  guint n = 2;

  g_string_append (whole, "0123456789012345678901234567890123456789");
  while (whole->len < 200000)
    g_string_append (whole, whole->str + whole->len - 40);
  g_string_append (whole, "\"}]}");
  records[1] = whole->str;
  for (guint shots = 1; shots * 2 < DRAWL_PLAN_SHOTS_MAX; shots *= 2) {
    char *doubled = g_strdup_printf ("{\"shots\":[[0,%u],[0,%u]]}", shots, shots);
    records[n++] = doubled;
  }
  gsize length;
  g_autofree char *journal = journal_of (records, &length);
  g_autoptr (DrawlJournalState) state = read_copy (journal, length);
  g_autoptr (GError) error = NULL;
  g_assert_null (state->problem);
  g_assert_null (drawl_journal_state_text (state, &length, &error));
  g_assert_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_TOO_LARGE);
  while (n > 2)
    g_free ((char *)records[--n]);
}

static void
test_too_many_shots (void)
{
  const char *records[4] = {"{}", WHOLE};
  g_autoptr (GString) many = g_string_new ("{\"shots\":[");
  gsize length;

  for (guint i = 0; i <= DRAWL_PLAN_SHOTS_MAX / 2; i++)
    g_string_append_printf (many, "%s[0,2]", i > 0 ? "," : "");
  g_string_append (many, "]}");
  records[2] = many->str;
  g_autofree char *journal = journal_of (records, &length);
  g_autoptr (DrawlJournalState) state = read_copy (journal, length);
  g_assert_nonnull (state->problem);
  g_assert_cmpuint (state->shots->len, ==, 2);
}

/* ---- Files ---- */

typedef struct {
  const char *name;
  const char *text;
  const char *says;
} Foreign;

static const Foreign foreign[] = {
    {"empty", "", "this is not a journal"},
    {"prose", "Dear crew,", "this is not a journal"},
    {"a-plan", "{\"format\":\"drawl-plan\"}", "this is not a journal"},
    {"other-version", "drawl-journal 2\n", "another version of Drawl"},
    {"half-a-name", "drawl-jour", "this is not a journal"},
    {"no-frames",
     "drawl-journal 1\nno frame, but longer than the head of one would be: "
     "0123456789012345678901234567890123456789",
     "damaged"},
    {"endless-length",
     "drawl-journal 1\nffffffff 0123456789012345678901234567890123456789012345678"
     "901234567890123\n{}\n",
     "damaged"},
    {"no-length",
     "drawl-journal 1\n00000000 0123456789012345678901234567890123456789012345678"
     "901234567890123\n{}\n",
     "damaged"},
};

static void
test_foreign (gconstpointer data)
{
  const Foreign *row = data;
  g_autoptr (DrawlJournalState) state = read_copy (row->text, strlen (row->text));

  g_assert_null (state->head);
  g_assert_nonnull (strstr (state->problem, row->says));
}

static void
test_title (void)
{
  const char *const records[] = {"{}", "{\"plan\":\"{\\\"title\\\":\\\"Glass\\\"}\"}", NULL};
  const char *const untold[] = {"{}", "{\"plan\":\"{\\\"title\\\":3}\"}", NULL};
  gsize length;
  g_autofree char *journal = journal_of (records, &length);
  g_autoptr (DrawlJournalState) state = read_copy (journal, length);
  g_autofree char *title = drawl_journal_state_title (state);
  g_autofree char *other = journal_of (untold, &length);
  g_autoptr (DrawlJournalState) other_state = read_copy (other, length);
  g_autofree char *no_title = drawl_journal_state_title (other_state);

  g_assert_cmpstr (title, ==, "Glass");
  g_assert_cmpstr (no_title, ==, "");
}

int
main (int argc, char **argv)
{
  char *state = begin_state ();

  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/journal-state/torn-anywhere", test_torn_anywhere);
  g_test_add_func ("/journal-state/blank-tail", test_blank_tail);
  g_test_add_func ("/journal-state/altered-anywhere", test_altered_anywhere);
  g_test_add_func ("/journal-state/misplaced", test_misplaced);
  add_rows ("/journal-state/added", added, test_added);
  add_rows ("/journal-state/hopeless", hopeless, test_hopeless);
  g_test_add_func ("/journal-state/grows-without-end", test_grows_without_end);
  g_test_add_func ("/journal-state/too-many-shots", test_too_many_shots);
  add_rows ("/journal-state/foreign", foreign, test_foreign);
  g_test_add_func ("/journal-state/title", test_title);
  int rc = g_test_run ();
  end_state (state);
  return rc;
}
