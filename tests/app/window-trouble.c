/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Saves that fail, for real, and what the dialog offers then: each way out leads where it says, and
 * whatever is answered, the work is still there. Disks are mounted in a namespace of the test's
 * own; where that is not allowed, those rows say so. */

#define _GNU_SOURCE

#include "work.h"

#include <fcntl.h>
#include <sched.h>
#include <string.h>
#include <sys/mount.h>
#include <sys/stat.h>
#include <unistd.h>

static gboolean can_mount;

/* ---- Places where nothing can be saved, and how they are put right again ---- */

static void
write_text (const char *path, const char *text)
{
  int fd = open (path, O_WRONLY | O_CLOEXEC);

  if (fd < 0)
    return;
  if (write (fd, text, strlen (text)) < 0)
    g_debug ("%s not written", path);
  close (fd);
}

/* Before there is any other thread: the rights of root in a world of its own, as the same user. */
static gboolean
enter_own_namespace (void)
{
  g_autofree char *users = g_strdup_printf ("%u %u 1", getuid (), getuid ());
  g_autofree char *groups = g_strdup_printf ("%u %u 1", getgid (), getgid ());

  if (unshare (CLONE_NEWUSER | CLONE_NEWNS) != 0)
    return FALSE;
  write_text ("/proc/self/setgroups", "deny");
  write_text ("/proc/self/uid_map", users);
  write_text ("/proc/self/gid_map", groups);
  return mount ("none", "/", NULL, MS_REC | MS_PRIVATE, NULL) == 0;
}

static void
fill_disk (const char *folder)
{
  g_autofree char *path = g_build_filename (folder, "filler", NULL);
  g_autofree char *bytes = g_malloc0 (1024);
  int fd = open (path, O_WRONLY | O_CREAT | O_CLOEXEC, 0600);

  g_assert_cmpint (fd, >=, 0);
  while (write (fd, bytes, 1024) > 0)
    ;
  close (fd);
}

static void
free_disk (const char *folder)
{
  g_autofree char *path = g_build_filename (folder, "filler", NULL);
  g_unlink (path);
}

static void
lock_disk (const char *folder)
{
  g_assert_cmpint (mount (NULL, folder, NULL, MS_REMOUNT | MS_BIND | MS_RDONLY, NULL), ==, 0);
}

static void
unlock_disk (const char *folder)
{
  g_assert_cmpint (mount (NULL, folder, NULL, MS_REMOUNT | MS_BIND, NULL), ==, 0);
}

/* A link to a file of the system that nobody may write, root included. */
static void
take_right (const char *folder)
{
  g_autofree char *path = g_build_filename (folder, "copy.drawl", NULL);

  g_unlink (path);
  g_assert_cmpint (symlink ("/proc/sys/kernel/ostype", path), ==, 0);
}

/* A link to what is no file is nothing to write to, whoever tries. */
static void
link_to_device (const char *folder)
{
  g_autofree char *path = g_build_filename (folder, "copy.drawl", NULL);

  g_unlink (path);
  g_assert_cmpint (symlink ("/dev/full", path), ==, 0);
}

static void
remove_link (const char *folder)
{
  g_autofree char *path = g_build_filename (folder, "copy.drawl", NULL);
  g_unlink (path);
}

static char *
hidden (const char *folder)
{
  return g_strconcat (folder, "-moved", NULL);
}

static void
move_folder (const char *folder)
{
  g_autofree char *elsewhere = hidden (folder);
  g_assert_cmpint (g_rename (folder, elsewhere), ==, 0);
}

static void
bring_folder (const char *folder)
{
  g_autofree char *elsewhere = hidden (folder);
  g_assert_cmpint (g_rename (elsewhere, folder), ==, 0);
}

static void
put_folder_in_the_way (const char *folder)
{
  g_autofree char *path = g_build_filename (folder, "copy.drawl", NULL);

  g_unlink (path);
  g_assert_cmpint (g_mkdir (path, 0700), ==, 0);
}

static void
clear_the_way (const char *folder)
{
  g_autofree char *path = g_build_filename (folder, "copy.drawl", NULL);
  g_rmdir (path);
}

typedef struct {
  const char *name;
  gboolean mounted;
  void (*spoil) (const char *folder);
  void (*mend) (const char *folder);
  const char *heading;
  const char *responses; /* in order */
} Row;

static const Row rows[] = {
    {"no-space", TRUE, fill_disk, free_disk, "There Is No Room Left", "cancel again save-as"},
    {"read-only", TRUE, lock_disk, unlock_disk, "The Disk Can Only Be Read",
     "cancel again save-as"},
    {"no-permission", FALSE, take_right, remove_link, "You May Not Write There", "cancel save-as"},
    {"no-folder", FALSE, move_folder, bring_folder, "The Folder Is Gone",
     "cancel make-folder again save-as"},
    {"device", FALSE, link_to_device, remove_link, "The Plan Could Not Be Saved",
     "cancel again save-as"},
    {"other", FALSE, put_folder_in_the_way, clear_the_way, "The Plan Could Not Be Saved",
     "cancel again save-as"},
};

/* ---- The test ---- */

static char *
folder_of (GFile *file)
{
  g_autoptr (GFile) folder = g_file_get_parent (file);
  return g_file_get_path (folder);
}

/* A copy of the demo, on a small disk of its own if @mounted. */
static GFile *
copy_on_disk (gboolean mounted)
{
  g_autoptr (GFile) demo = demo_file ();
  GFile *copy = demo_copy ();
  g_autofree char *folder = folder_of (copy);

  if (!mounted)
    return copy;
  g_assert_cmpint (mount ("none", folder, "tmpfs", 0, "size=256k"), ==, 0);
  g_assert_true (g_file_copy (demo, copy, G_FILE_COPY_NONE, NULL, NULL, NULL, NULL));
  return copy;
}

static void
remove_from_disk (GFile *copy, gboolean mounted)
{
  g_autofree char *folder = folder_of (copy);

  if (mounted)
    g_assert_cmpint (umount2 (folder, MNT_DETACH), ==, 0);
  remove_copy (copy);
}

static void
assert_offers (AdwMessageDialog *dialog, const Row *row)
{
  g_auto (GStrv) wanted = g_strsplit (row->responses, " ", -1);
  static const char *const all[] = {"again",  "make-folder", "overwrite",
                                    "reload", "save-as",     "cancel"};

  g_assert_cmpstr (adw_message_dialog_get_heading (dialog), ==, row->heading);
  g_assert_nonnull (strstr (adw_message_dialog_get_body (dialog), "Nothing is lost"));
  g_assert_nonnull (strstr (adw_message_dialog_get_body (dialog), "copy.drawl"));
  for (gsize i = 0; i < G_N_ELEMENTS (all); i++)
    g_assert_true (adw_message_dialog_has_response (dialog, all[i]) ==
                   g_strv_contains ((const char *const *)wanted, all[i]));
  g_assert_cmpstr (adw_message_dialog_get_close_response (dialog), ==, "cancel");
}

static void
test_row (gconstpointer data)
{
  const Row *row = data;

  if (row->mounted && !can_mount) {
    g_test_skip ("no mount namespace here");
    return;
  }
  g_autoptr (GFile) file = copy_on_disk (row->mounted);
  g_autofree char *folder = folder_of (file);
  DrawlWindow *window = window_on (file);
  gboolean again = strstr (row->responses, "again") != NULL;

  edit_title (window, "Mine");
  row->spoil (folder);
  act (window, "save");
  assert_offers (message_over (window), row);
  answer_with (window, "save-as");
  g_assert_nonnull (window->chooser);
  g_signal_emit_by_name (window->chooser, "response", GTK_RESPONSE_CANCEL);
  g_assert_null (window->chooser);
  g_assert_true (is_modified (window));

  /* It was to be closed: it stays. */
  gtk_window_close (GTK_WINDOW (window));
  settle ();
  answer_with (window, "save");
  assert_offers (message_over (window), row);
  g_assert_true (window->then == NULL);
  row->mend (folder);
  answer_with (window, again ? "again" : "cancel");
  g_assert_true (gtk_widget_get_mapped (GTK_WIDGET (window)));
  if (!again)
    act (window, "save");
  g_assert_false (is_modified (window));
  assert_title_in (file, "Mine");
  drop_window (window);
  remove_from_disk (file, row->mounted);
}

static void
test_make_folder (void)
{
  g_autoptr (GFile) file = demo_copy ();
  g_autofree char *folder = folder_of (file);
  g_autofree char *elsewhere = hidden (folder);
  g_autoptr (GFile) moved = g_file_new_build_filename (elsewhere, "copy.drawl", NULL);
  DrawlWindow *window = window_on (file);

  edit_title (window, "Mine");
  move_folder (folder);
  act (window, "save");
  answer_with (window, "make-folder");
  g_assert_null (message_over (window));
  g_assert_false (is_modified (window));
  assert_title_in (file, "Mine");
  drop_window (window);
  remove_copy (file);
  remove_copy (moved);
}

/* It cannot be made: that is told the same way, and nothing is lost. */
static void
test_folder_cannot_be_made (void)
{
  g_autoptr (GFile) file = g_file_new_for_path ("/proc/no-such-folder/plan.drawl");
  DrawlWindow *window = window_on_demo ();

  edit_title (window, "Mine");
  g_assert_false (drawl_window_save_to (window, file));
  g_assert_cmpstr (adw_message_dialog_get_heading (message_over (window)), ==,
                   "The Folder Is Gone");
  answer_with (window, "make-folder");
  g_assert_cmpstr (adw_message_dialog_get_heading (message_over (window)), ==,
                   "The Plan Could Not Be Saved");
  answer_with (window, "cancel");
  g_assert_true (is_modified (window));
  g_assert_null (drawl_document_get_file (drawl_window_get_document (window)));
  drop_window (window);
}

/* ---- Through a link ---- */

static void
test_link_stays (void)
{
  g_autoptr (GFile) file = demo_copy ();
  g_autoptr (GFile) folder = g_file_get_parent (file);
  g_autoptr (GFile) link = g_file_get_child (folder, "link.drawl");

  g_assert_true (g_file_make_symbolic_link (link, "copy.drawl", NULL, NULL));
  DrawlWindow *window = window_on (link);
  edit_title (window, "Through the link");
  act (window, "save");
  g_assert_null (message_over (window));
  g_assert_cmpint (g_file_query_file_type (link, G_FILE_QUERY_INFO_NOFOLLOW_SYMLINKS, NULL), ==,
                   G_FILE_TYPE_SYMBOLIC_LINK);
  assert_title_in (file, "Through the link");
  drop_window (window);
  remove_copy (file);
}

int
main (int argc, char **argv)
{
  can_mount = enter_own_namespace ();
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autofree char *path = g_strconcat ("/window-trouble/", rows[i].name, NULL);
    g_test_add_data_func (path, &rows[i], test_row);
  }
  g_test_add_func ("/window-trouble/make-folder", test_make_folder);
  g_test_add_func ("/window-trouble/folder-cannot-be-made", test_folder_cannot_be_made);
  g_test_add_func ("/window-trouble/link-stays", test_link_stays);
  return run_window_tests ();
}
