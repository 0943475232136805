/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The shipped bodies: each is read, can record what it promises on a card that it takes, and reads
 * out no slower than its top rate asks. The manual of profiles names every law, class and gauge
 * that the program knows. */

#include <gio/gio.h>
#include <string.h>

#include "core/payload.h"
#include "plan/body-file.h"
#include "plan/data-dir.h"

/* Why each of them ships. */
typedef struct {
  const char *name; /* of the file */
  DrawlBodyKind kind;
  guint least_sizes;
  guint least_licences;
  gboolean buffer;
  int least_highest; /* frames a second */
} Row;

static const Row rows[] = {
    {"treadle-4", DRAWL_BODY_DIGITAL, 4, 4, FALSE, 240},
    {"mullion-8", DRAWL_BODY_DIGITAL, 8, 1, FALSE, 120},
    {"ferrule", DRAWL_BODY_DIGITAL, 6, 1, TRUE, 2000},
    {"cruet-2", DRAWL_BODY_DIGITAL, 2, 0, FALSE, 100},
    {"skein-16", DRAWL_BODY_FILM, 2, 0, FALSE, 150},
    {"quern-35", DRAWL_BODY_FILM, 3, 0, FALSE, 120},
};

static DrawlBody *
load (const char *name)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *base = g_strconcat (name, ".json", NULL);
  g_autofree char *path = drawl_data_file ("bodies", base, NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  DrawlBody *body = drawl_body_load (file, &error);

  g_assert_no_error (error);
  g_assert_cmpstr (body->id, ==, name);
  return body;
}

static void
test_kind (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (DrawlBody) body = load (row->name);
  DrawlRate highest = {0, 1};

  for (guint i = 0; i < body->n_limits; i++)
    if (drawl_rational_compare (body->limits[i].highest, highest) > 0)
      highest = body->limits[i].highest;
  g_assert_cmpint (body->kind, ==, row->kind);
  g_assert_cmpuint (body->n_sizes, >=, row->least_sizes);
  g_assert_cmpuint (body->n_licences, >=, row->least_licences);
  g_assert_true ((body->buffer_bytes > 0) == row->buffer);
  g_assert_cmpint (drawl_rational_compare (highest, drawl_rational_whole (row->least_highest)), >=,
                   0);
  g_assert_cmpuint (body->n_fits, >=, 3);
  g_assert_cmpuint (body->n_pickups, >=, 3);
  g_assert_cmpuint (body->n_returns, >=, 1);
  g_assert_nonnull (strstr (body->source_document, "Invented for Drawl"));
}

/* The fastest card of the body, and of each class that a row allows, takes the row's top rate with
 * all sound tracks. A ring buffer takes what no card does. */
static void
test_card (const DrawlBody *body, const DrawlBodyLimit *limit)
{
  const DrawlBodySize *size = &body->sizes[limit->size];
  g_autoptr (GError) error = NULL;
  DrawlRational bytes_s;
  gint64 fastest = 0;

  drawl_payload_data_rate (&body->codecs[limit->codec].payload, size->width, size->height,
                           limit->highest, body->audio_tracks, &bytes_s, &error);
  g_assert_no_error (error);
  for (guint i = 0; i < body->n_cards; i++)
    fastest = MAX (fastest, body->cards[i].write_bytes_s);
  if (limit->card_bytes_s > 0)
    fastest = limit->card_bytes_s;
  if (body->buffer_bytes == 0 &&
      drawl_rational_compare (bytes_s, drawl_rational_whole (fastest)) > 0)
    g_error ("%s, %s in %s: %.1f MB/s are more than the cards guarantee", body->id, size->id,
             body->codecs[limit->codec].id, drawl_rational_to_double (bytes_s) / 1e6);
}

static void
test_readout (const DrawlBody *body, const DrawlBodyLimit *limit)
{
  const DrawlBodySize *size = &body->sizes[limit->size];
  DrawlRational frame_ms;

  g_assert_true (drawl_rational_div (drawl_rational_whole (1000), limit->highest, &frame_ms));
  if (drawl_rational_compare (size->readout_ms, frame_ms) > 0)
    g_error ("%s, %s: it reads out slower than its top rate asks", body->id, size->id);
}

static void
test_promises (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (DrawlBody) body = load (row->name);

  for (guint i = 0; i < body->n_limits; i++) {
    test_readout (body, &body->limits[i]);
    if (body->kind == DRAWL_BODY_DIGITAL)
      test_card (body, &body->limits[i]);
    g_assert_true (drawl_body_offers_rate (body, body->limits[i].lowest));
    g_assert_true (drawl_body_offers_rate (body, body->limits[i].highest));
  }
}

static void
test_all (void)
{
  g_autoptr (GPtrArray) problems = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) bodies = drawl_body_load_shipped (problems);

  for (guint i = 0; i < problems->len; i++)
    g_test_message ("%s", (char *)problems->pdata[i]);
  g_assert_cmpuint (problems->len, ==, 0);
  g_assert_cmpuint (bodies->len, ==, G_N_ELEMENTS (rows));
}

/* ---- The manual ---- */

static void
assert_in_manual (const char *id)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *path = drawl_data_file ("man", "drawl-body.5", NULL);
  g_autofree char *text = NULL, *pattern = NULL, *quoted = NULL;
  g_autoptr (GString) page = NULL;

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  page = g_string_new (text);
  g_string_replace (page, "\\-", "-", 0);
  quoted = g_regex_escape_string (id, -1);
  pattern = g_strdup_printf ("(^|[ \t])%s($|[ \t])", quoted);
  if (!g_regex_match_simple (pattern, page->str, G_REGEX_MULTILINE, 0))
    g_error ("drawl-body(5) does not name %s", id);
}

static void
test_manual_laws (void)
{
  guint n;
  const DrawlCodecLaw *laws = drawl_codec_laws (&n);

  for (guint i = 0; i < n; i++)
    assert_in_manual (laws[i].id);
}

static void
test_manual_levels (void)
{
  guint n;
  const DrawlCodecLevel *levels = drawl_codec_levels (&n);

  for (guint i = 0; i < n; i++)
    assert_in_manual (levels[i].id);
}

static void
test_manual_classes (void)
{
  guint n;
  const DrawlCardClass *classes = drawl_card_classes (&n);

  for (guint i = 0; i < n; i++)
    assert_in_manual (classes[i].id);
}

static void
test_manual_gauges (void)
{
  guint n;
  const DrawlGauge *gauges = drawl_gauges (&n);

  for (guint i = 0; i < n; i++)
    assert_in_manual (gauges[i].id);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bodies/all", test_all);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autofree char *kind = g_strconcat ("/bodies/kind/", rows[i].name, NULL);
    g_autofree char *promises = g_strconcat ("/bodies/promises/", rows[i].name, NULL);
    g_test_add_data_func (kind, &rows[i], test_kind);
    g_test_add_data_func (promises, &rows[i], test_promises);
  }
  g_test_add_func ("/bodies/manual/laws", test_manual_laws);
  g_test_add_func ("/bodies/manual/levels", test_manual_levels);
  g_test_add_func ("/bodies/manual/classes", test_manual_classes);
  g_test_add_func ("/bodies/manual/gauges", test_manual_gauges);
  return g_test_run ();
}
