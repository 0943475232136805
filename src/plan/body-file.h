/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Reads a body profile ("format": "drawl-body", "version": 1). Schema:
 * data/schema/drawl-body.schema.json, manual: drawl-body(5). A profile is read whole or not at all.
 */

#include <gio/gio.h>

#include "plan/body.h"

/* From the JSON object of a profile. @where names it in messages (file name, or the plan's body).
 * Errors: DRAWL_PLAN_ERROR_FORMAT, _VERSION, _VALUE, _DUPLICATE, _UNKNOWN, _TOO_LARGE,
 * _CONTRADICTION (limits that cannot hold together: lowest above highest; no offered rate between
 * them; two rows of one size, codec, licence set and card class with different limits; a card class
 * that no card of the body reaches; a law of one size at another; a size or a rate beyond the
 * codec's level; a card below its class; an SD card larger than there are; a licence that requires
 * or replaces itself in a circle). A data rate above the fastest card is no error:
 * makers' tables have such rows, and the check says so. */
DrawlBody *drawl_body_from_json (JsonObject *object, const char *where, GError **error);

/* The same, leaving "limits" aside: the body has none. For those who read limits against it. */
DrawlBody *drawl_body_from_json_but_limits (JsonObject *object, const char *where, GError **error);

/* "2026-11-25", a day that exists. */
gboolean drawl_body_is_day (const char *text);

/* From a file. Errors: as above, and DRAWL_PLAN_ERROR_READ, _SYNTAX, _TOO_LARGE. */
DrawlBody *drawl_body_load (GFile *file, GError **error);

/* All profiles (*.json) in the data folder and then in the user's, sorted by name; a file that
 * cannot be read is left out and its error put into @problems (char*, may be NULL). Returns an
 * array of DrawlBody. */
GPtrArray *drawl_body_load_shipped (GPtrArray *problems);
