/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Messages of the program as a dialog shows them. */

#include <gtk/gtk.h>

/* The error's message as a sentence of its own: capital letter, full stop. New string. */
char *drawl_message_sentence (const GError *error);

/* Tells of something that went wrong. */
void drawl_message_show (GtkWindow *parent, const char *heading, const GError *error);
