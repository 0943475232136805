/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A save that failed: a row for each kind of trouble, with what is to be done about it. Nothing
 * here is lost by any answer. */

#include "app/save-trouble.h"

#include "app/message.h"
#include "core/text.h"
#include "plan/error.h"

enum {
  AGAIN = 1 << 0,
  MAKE_FOLDER = 1 << 1,
  OVERWRITE = 1 << 2,
  RELOAD = 1 << 3,
  SAVE_AS = 1 << 4,
};

typedef struct {
  int code;
  const char *heading;
  const char *advice;
  guint answers;
  const char *best; /* what Enter does */
} Trouble;

static const Trouble troubles[] = {
    {DRAWL_PLAN_ERROR_NO_SPACE, N_ ("There Is No Room Left"),
     N_ ("Make room and try again, or save to another disk."), AGAIN | SAVE_AS, "again"},
    {DRAWL_PLAN_ERROR_NO_PERMISSION, N_ ("You May Not Write There"),
     N_ ("Save to a folder of your own."), SAVE_AS, "save-as"},
    {DRAWL_PLAN_ERROR_READ_ONLY, N_ ("The Disk Can Only Be Read"),
     N_ ("Save to another disk, or unlock this one and try again."), AGAIN | SAVE_AS, "save-as"},
    {DRAWL_PLAN_ERROR_NO_FOLDER, N_ ("The Folder Is Gone"),
     N_ ("It may have been moved or renamed, or its disk taken out."),
     MAKE_FOLDER | AGAIN | SAVE_AS, "save-as"},
    {DRAWL_PLAN_ERROR_CHANGED, N_ ("Another Program Has Changed the File"),
     N_ ("If you save over it, what they wrote stays beside it as a backup. If you read theirs, "
         "Undo "
         "brings your plan back."),
     SAVE_AS | OVERWRITE | RELOAD, "save-as"},
    /* Whatever else: the last row. */
    {DRAWL_PLAN_ERROR_WRITE, N_ ("The Plan Could Not Be Saved"),
     N_ ("Try again, or save to another place."), AGAIN | SAVE_AS, "save-as"},
};

/* In the order in which they stand, from the side of “Keep Working”. */
static const struct {
  guint answer;
  const char *id;
  const char *label;
  AdwResponseAppearance appearance;
} answers[] = {
    {RELOAD, "reload", N_ ("_Read Theirs"), ADW_RESPONSE_DEFAULT},
    {OVERWRITE, "overwrite", N_ ("Save _Over It"), ADW_RESPONSE_DESTRUCTIVE},
    {MAKE_FOLDER, "make-folder", N_ ("_Make the Folder Again"), ADW_RESPONSE_DEFAULT},
    {AGAIN, "again", N_ ("_Try Again"), ADW_RESPONSE_DEFAULT},
    {SAVE_AS, "save-as", N_ ("Save _As…"), ADW_RESPONSE_DEFAULT},
};

static const Trouble *
find_trouble (const GError *error)
{
  const Trouble *other = &troubles[G_N_ELEMENTS (troubles) - 1];

  for (const Trouble *row = troubles; row < other; row++)
    if (g_error_matches (error, DRAWL_PLAN_ERROR, row->code))
      return row;
  return other;
}

static char *
body_text (const Trouble *trouble, DrawlDocument *document, const GError *error)
{
  g_autofree char *what = drawl_message_sentence (error);
  const char *problem = drawl_document_get_problem (document);
  g_autofree char *kept =
      problem == NULL
          ? g_strdup (
                _ ("Nothing is lost: the plan is still open, and unsaved work is kept aside."))
          : g_strdup_printf (_ ("The plan is still open. Do not close it: %s."), problem);

  return g_strconcat (what, "\n\n", _ (trouble->advice), "\n\n", kept, NULL);
}

AdwMessageDialog *
drawl_save_trouble_new (GtkWindow *parent, DrawlDocument *document, GFile *file,
                        const GError *error)
{
  const Trouble *trouble = find_trouble (error);
  g_autofree char *body = body_text (trouble, document, error);
  AdwMessageDialog *dialog =
      ADW_MESSAGE_DIALOG (adw_message_dialog_new (parent, _ (trouble->heading), body));
  guint offered = trouble->answers;

  if (!g_file_is_native (file))
    offered &= ~(guint)MAKE_FOLDER;
  adw_message_dialog_add_response (dialog, DRAWL_SAVE_TROUBLE_CANCEL, _ ("_Keep Working"));
  for (gsize i = 0; i < G_N_ELEMENTS (answers); i++) {
    if ((offered & answers[i].answer) == 0)
      continue;
    adw_message_dialog_add_response (dialog, answers[i].id, _ (answers[i].label));
    adw_message_dialog_set_response_appearance (dialog, answers[i].id, answers[i].appearance);
  }
  adw_message_dialog_set_response_appearance (dialog, trouble->best, ADW_RESPONSE_SUGGESTED);
  adw_message_dialog_set_default_response (dialog, trouble->best);
  adw_message_dialog_set_close_response (dialog, DRAWL_SAVE_TROUBLE_CANCEL);
  return dialog;
}
