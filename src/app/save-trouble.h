/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* What a person can do about a save that failed. */

#include <adwaita.h>

#include "app/document.h"

#define DRAWL_SAVE_TROUBLE_CANCEL "cancel"

/* A dialog over @parent that says what happened to @file and that nothing is lost. Its responses,
 * each only where it helps: "again", "make-folder" (then again), "overwrite", "reload", "save-as";
 * and "cancel". */
AdwMessageDialog *drawl_save_trouble_new (GtkWindow *parent, DrawlDocument *document, GFile *file,
                                          const GError *error);
