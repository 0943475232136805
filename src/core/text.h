/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Marks the words of the program for translation, with glib.h alone.
 * `_()` translates now; `N_()` only marks a string in a table, for `_()` at the place of use. */

#include <glib.h>

#define DRAWL_TEXT_DOMAIN "drawl"

#define _(text) g_dgettext (DRAWL_TEXT_DOMAIN, (text))
#define C_(context, text) g_dpgettext (DRAWL_TEXT_DOMAIN, context "\004" text, sizeof (context))
#define N_(text) (text)
#define ngettext_(one, many, n) g_dngettext (DRAWL_TEXT_DOMAIN, (one), (many), (n))
