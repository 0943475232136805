/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Runs a fuzz target without a fuzzer, as an ordinary test: first every seed of a folder, then some
 * thousands of inputs made of the seeds by a few random changes. The same --seed gives the same
 * inputs again. */

#include "fuzz.h"

#define N_RANDOM 5000
#define CHANGES_MAX 6
#define SIZE_MAX_BYTES (64 * 1024)

static GPtrArray *seeds; /* of GBytes */

static GBytes *
pick_seed (void)
{
  return g_ptr_array_index (seeds, g_test_rand_int_range (0, (gint32)seeds->len));
}

static guint
pick_place (const GByteArray *input)
{
  return (guint)g_test_rand_int_range (0, (gint32)input->len + 1);
}

static void
insert (GByteArray *input, guint at, const guint8 *data, guint size)
{
  guint tail = input->len - at;

  g_byte_array_set_size (input, input->len + size);
  memmove (input->data + at + size, input->data + at, tail);
  memcpy (input->data + at, data, size);
}

static void
flip_bit (GByteArray *input)
{
  guint at = pick_place (input);
  if (at < input->len)
    input->data[at] ^= (guint8)(1u << g_test_rand_int_range (0, 8));
}

static void
insert_byte (GByteArray *input)
{
  static const char telling[] = "0123456789/.,:;-+eEx× \t\n\"'{}[]\\%";
  gboolean any = g_test_rand_bit ();
  guint8 byte = any ? (guint8)g_test_rand_int_range (0, 256)
                    : (guint8)telling[g_test_rand_int_range (0, sizeof telling)];

  insert (input, pick_place (input), &byte, 1);
}

static void
remove_part (GByteArray *input)
{
  guint from = pick_place (input), to = pick_place (input);
  if (from < to)
    g_byte_array_remove_range (input, from, to - from);
}

static void
repeat_part (GByteArray *input)
{
  guint from = pick_place (input), to = pick_place (input);
  if (from >= to || to - from > SIZE_MAX_BYTES)
    return;

  guint size = to - from;
  g_autofree guint8 *part = g_memdup2 (input->data + from, size);
  for (int times = g_test_rand_int_range (1, 20); times > 0 && input->len < SIZE_MAX_BYTES; times--)
    insert (input, to, part, size);
}

static void
splice_seed (GByteArray *input)
{
  gsize size;
  const guint8 *data = g_bytes_get_data (pick_seed (), &size);
  guint from = (guint)g_test_rand_int_range (0, (gint32)size + 1);

  if (input->len < SIZE_MAX_BYTES && from < size)
    insert (input, pick_place (input), data + from, (guint)size - from);
}

static void (*const changes[]) (GByteArray *input) = {
    flip_bit, insert_byte, insert_byte, remove_part, repeat_part, splice_seed,
};

/* The target gets memory of exactly the size it is told, so that reading past it is found. */
static void
run_target (const guint8 *data, gsize size)
{
  g_autofree guint8 *copy = g_memdup2 (data, size);
  LLVMFuzzerTestOneInput (copy, size);
}

static void
test_seed (gconstpointer data)
{
  gsize size;
  const guint8 *bytes = g_bytes_get_data ((GBytes *)data, &size);
  run_target (bytes, size);
}

static void
test_changed (void)
{
  for (guint i = 0; i < N_RANDOM; i++) {
    g_autoptr (GByteArray) input = g_byte_array_new ();
    gsize size;
    const guint8 *data = g_bytes_get_data (pick_seed (), &size);

    g_byte_array_append (input, data, (guint)size);
    for (int n = g_test_rand_int_range (1, CHANGES_MAX + 1); n > 0; n--)
      changes[g_test_rand_int_range (0, G_N_ELEMENTS (changes))](input);
    run_target (input->data, input->len);
  }
}

static void
add_seed (const char *folder, const char *name)
{
  g_autofree char *file = g_build_filename (folder, name, NULL);
  g_autofree char *path = g_strconcat ("/fuzz/seed/", name, NULL);
  g_autoptr (GError) error = NULL;
  char *text;
  gsize size;

  if (!g_file_get_contents (file, &text, &size, &error))
    g_error ("%s", error->message);
  g_ptr_array_add (seeds, g_bytes_new_take (text, size));
  g_test_add_data_func (path, g_ptr_array_index (seeds, seeds->len - 1), test_seed);
}

static int
compare_names (gconstpointer a, gconstpointer b)
{
  return strcmp (*(const char *const *)a, *(const char *const *)b);
}

/* In the order of their names, so that a --seed means the same on every file system. */
static GPtrArray *
list_names (const char *folder)
{
  GPtrArray *names = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GError) error = NULL;
  GDir *dir = g_dir_open (folder, 0, &error);
  const char *name;

  if (dir == NULL)
    g_error ("%s", error->message);
  while ((name = g_dir_read_name (dir)) != NULL)
    g_ptr_array_add (names, g_strdup (name));
  g_dir_close (dir);
  g_ptr_array_sort (names, compare_names);
  return names;
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_assert_cmpint (argc, ==, 2); /* the folder of seeds */

  g_autoptr (GPtrArray) names = list_names (argv[1]);
  g_assert_cmpuint (names->len, >, 0);
  seeds = g_ptr_array_new_with_free_func ((GDestroyNotify)g_bytes_unref);
  for (guint i = 0; i < names->len; i++)
    add_seed (argv[1], g_ptr_array_index (names, i));
  g_test_add_func ("/fuzz/changed", test_changed);
  int rc = g_test_run ();
  g_ptr_array_unref (seeds);
  return rc;
}
