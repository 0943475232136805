/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlJsonWriter: writes JSON straight into a GString, members in the order of the calls. The
 * outer two levels take a line each member, what lies deeper stays on its line, so that a list of
 * shots has a line a shot. Doubles are written in the fewest digits that read back unchanged,
 * always with a decimal point. */

#include <glib.h>

typedef struct {
  GString *out; /* not owned */
  guint depth;
  gboolean empty; /* nothing in the innermost object or array yet */
} DrawlJsonWriter;

void drawl_json_writer_init (DrawlJsonWriter *writer, GString *out);

/* @key is NULL within an array, and for the outermost object. */
void drawl_json_writer_begin_object (DrawlJsonWriter *writer, const char *key);
void drawl_json_writer_end_object (DrawlJsonWriter *writer);
void drawl_json_writer_begin_array (DrawlJsonWriter *writer, const char *key);
void drawl_json_writer_end_array (DrawlJsonWriter *writer);
void drawl_json_writer_string (DrawlJsonWriter *writer, const char *key, const char *value);
void drawl_json_writer_int (DrawlJsonWriter *writer, const char *key, gint64 value);
void drawl_json_writer_double (DrawlJsonWriter *writer, const char *key, double value);
void drawl_json_writer_null (DrawlJsonWriter *writer, const char *key);
