/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlFileWatch: tells when a file is no longer as it was last read or written here. It compares
 * entity tags only, asks the disk without waiting for it, and writes nothing. A file that has gone
 * is not told of: nothing of anybody's stands there. */

#include <gio/gio.h>

#define DRAWL_TYPE_FILE_WATCH (drawl_file_watch_get_type ())
G_DECLARE_FINAL_TYPE (DrawlFileWatch, drawl_file_watch, DRAWL, FILE_WATCH, GObject)

/* Signal "changed": the file has another entity tag than the known one; once for each. */

/* @etag: what is known of @file, or NULL, and then nothing is told. */
DrawlFileWatch *drawl_file_watch_new (GFile *file, const char *etag);
/* Looks now, for what the system does not tell of by itself; answers later with the signal. */
void drawl_file_watch_look (DrawlFileWatch *watch);
/* No answer comes after this. */
void drawl_file_watch_stop (DrawlFileWatch *watch);
