/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* What the parts of the window share. */

#include "app/bodies-page.h"
#include "app/day-strip.h"
#include "app/header-title.h"
#include "app/shots-page.h"
#include "app/window.h"
#include "plan/shot-table.h"

struct _DrawlWindow {
  AdwApplicationWindow parent_instance;
  DrawlDocument *document;
  GMenu *recent_menu;

  /* What waits for the answer to a question or for a file to be chosen: done once the work is
   * saved or given up, forgotten when the person goes on working. */
  void (*then) (DrawlWindow *window);
  DrawlDocument *then_document;
  GtkFileChooserNative *chooser;
  GFile *save_target; /* of the trouble that is being asked about */
  guint put_away;     /* a bit for each notice that is not to be shown until it happens anew */

  DrawlHeaderTitle *header_title;
  AdwToast *toast; /* the last one, while it is shown */

  GtkWidget *toasts, *back_button, *undo_button, *redo_button, *switcher_bar, *stack, *pages,
      *shots_bin, *bodies_bin, *day_bin, *menu_button, *new_button, *notice_bar, *notice_label,
      *notice_button;
  /* Made when first shown. */
  DrawlDayStrip *day_strip;
  DrawlShotsPage *shots;
  DrawlBodiesPage *bodies;
};

/* window.c */
DrawlPlan *drawl_window_get_plan (DrawlWindow *window); /* or NULL */
void drawl_window_show_page (DrawlWindow *window, const char *name);
/* Puts the keyboard focus into the page that is shown. */
void drawl_window_focus_page (DrawlWindow *window);
DrawlShotList *drawl_window_get_list (DrawlWindow *window); /* or NULL */
DrawlShot *drawl_window_get_shot (DrawlWindow *window);     /* the selected one, or NULL */
/* Takes what is typed in the entry that has the focus, as leaving it would. */
void drawl_window_take_entry (DrawlWindow *window);
/* Tells of something done, with a way to take it back. @text is plain. */
void drawl_window_tell_undoable (DrawlWindow *window, const char *text);
/* Tells of something that needs no answer. @text is plain. */
void drawl_window_tell (DrawlWindow *window, const char *text);

/* Closes without asking. */
void drawl_window_close_now (DrawlWindow *window);

/* window-actions.c */
void drawl_window_add_actions (DrawlWindow *window);
void drawl_window_refresh_actions (DrawlWindow *window);
void drawl_window_enable (DrawlWindow *window, const char *action, gboolean enabled);

/* window-shots.c */
void drawl_window_add_shot_actions (DrawlWindow *window);
void drawl_window_refresh_shot_actions (DrawlWindow *window);
/* What the list has to say is said by the window. */
void drawl_window_listen_to_list (DrawlWindow *window, DrawlShotList *list);

/* window-files.c */
void drawl_window_add_file_actions (DrawlWindow *window);
/* Does @then, which takes the document from the window, after asking about unsaved work where there
 * is some that no other window shows. */
void drawl_window_when_settled (DrawlWindow *window, void (*then) (DrawlWindow *window));
void drawl_window_do_then (DrawlWindow *window);
void drawl_window_clear_then (DrawlWindow *window);
/* The window is about to show another document or none; the last one closes the document. */
void drawl_window_let_document_go (DrawlWindow *window);
void drawl_window_forget_files (DrawlWindow *window);

/* window-transfer.c */
void drawl_window_add_transfer_actions (DrawlWindow *window);
/* Of this file and of the next: which actions can be done now. */
void drawl_window_refresh_transfer (DrawlWindow *window);
/* Shows what of the table in @file can come in. */
void drawl_window_import (DrawlWindow *window, GFile *file);
/* Takes over @table: its shots go behind the selection, after a look at them unless they may come
 * in @at_once and nothing about them is doubtful. @label names the step of undo. */
void drawl_window_take_table (DrawlWindow *window, DrawlShotTable *table, const char *source_name,
                              const char *label, gboolean at_once);
/* Where new shots go: behind the selection, or at the end. */
guint drawl_window_insert_position (DrawlWindow *window);
/* Selects the @n shots that are on the plan now, and offers to take them back. */
void drawl_window_show_brought_in (DrawlWindow *window, guint position, guint n);

/* window-clipboard.c */
void drawl_window_add_clipboard_actions (DrawlWindow *window);

/* window-save.c */
void drawl_window_add_save_actions (DrawlWindow *window);
/* Saves, asking where to and what to do about trouble; then goes on with `then`. */
void drawl_window_save (DrawlWindow *window);
/* Takes the plan from its file again; Undo brings it back as it was. */
void drawl_window_reload (DrawlWindow *window);
/* Asks what to do about a save to @file that failed; `then` is forgotten. */
void drawl_window_tell_trouble (DrawlWindow *window, GFile *file, const GError *error);
/* Shows a chooser of plan files. */
void drawl_window_choose (DrawlWindow *window, GtkFileChooserNative *chooser,
                          GCallback on_response);
void drawl_window_remember (DrawlWindow *window, GFile *file);
/* A name for files of the plan, without an ending. New string. */
char *drawl_window_dup_file_name (DrawlWindow *window);

/* window-notices.c */
/* The window has another document. */
void drawl_window_follow_file (DrawlWindow *window);
void drawl_window_put_notice_away (DrawlWindow *window);
void drawl_window_on_is_active (DrawlWindow *window);

/* window-recent.c */
void drawl_window_fill_recent (DrawlWindow *window);
