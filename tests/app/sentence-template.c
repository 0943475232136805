/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Templates of sentences taken apart. What comes out is written with a bar where a line may break:
 * "|" with a gap, "'" without one; pieces that stand against each other have neither. */

#include "app/sentence-template.h"

#include "rows.h"

static const char *const places[] = {"what", "capture", "screen"};

#define ALL 7

typedef struct {
  const char *name;
  const char *template;
  guint wanted;
  const char *pieces; /* NULL: refused */
} Row;

static const Row rows[] = {
    {"in-order", "{what}: shot at {capture}, plays for {screen}.", ALL,
     "<0>:|shot|at|<1>,|plays|for|<2>."},
    {"moved", "In {screen} spielt ({capture}) ab: {what}", ALL, "In|<2>|spielt|(<1>)|ab:|<0>"},
    {"right-to-left", "{what}: מצולם ב-{capture}, נמשך {screen}.", ALL,
     "<0>:|מצולם|ב-<1>,|נמשך|<2>."},
    {"without-spaces", "{what}を{capture}\u200bで撮り\u200b{screen}", ALL, "<0>を<1>'で撮り'<2>"},
    {"hard-space", "{what} à\u00a0{capture} et {screen}", ALL, "<0>|à\u00a0<1>|et|<2>"},
    {"places-side-by-side", "{what}{capture} {screen}", ALL, "<0><1>|<2>"},
    {"white-space-around", "  {what}  {capture}\n{screen} ", ALL, "<0>|<1>|<2>"},
    {"fewer-wanted", "{what} only", 1, "<0>|only"},
    {"unknown-braces-are-words", "{what} {capture} {screen} {other}", ALL, "<0>|<1>|<2>|{other}"},
    {"place-lost", "{what}: shot at {capture}.", ALL, NULL},
    {"place-not-wanted", "{what} {capture}", 1, NULL},
    {"place-twice", "{what} {capture} {screen} {capture}", ALL, NULL},
    {"place-misspelt", "{what} {capture} {sreen}", ALL, NULL},
    {"empty", "", ALL, NULL},
    {"not-utf-8", "{what}\xff{capture} {screen}", ALL, NULL},
};

static char *
write_out (GArray *pieces)
{
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < pieces->len; i++) {
    const DrawlSentencePiece *piece = &g_array_index (pieces, DrawlSentencePiece, i);
    if (i > 0 && !piece->joined)
      g_string_append_c (out, piece->spaced ? '|' : '\'');
    if (piece->place == DRAWL_SENTENCE_WORD)
      g_string_append (out, piece->word);
    else
      g_string_append_printf (out, "<%d>", piece->place);
  }
  return g_string_free (out, FALSE);
}

static void
test_split (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (GArray) pieces = NULL;
  gboolean taken =
      drawl_sentence_split (row->template, places, G_N_ELEMENTS (places), row->wanted, &pieces);

  g_assert_cmpint (taken, ==, row->pieces != NULL);
  if (!taken) {
    g_assert_null (pieces);
    return;
  }
  g_autofree char *written = write_out (pieces);
  g_assert_cmpstr (written, ==, row->pieces);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/sentence-template", rows, test_split);
  return g_test_run ();
}
