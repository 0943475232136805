/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Extra keys: those of a file that this version does not know. They are kept with what they stood
 * in and written back behind the known ones. NULL stands for none. */

#include <json-glib/json-glib.h>

/* Adds a member, making @extra when it is NULL. */
void drawl_extra_keep (JsonObject **extra, const char *key, JsonNode *node);
/* Puts all members into @object. */
void drawl_extra_restore (JsonObject *extra, JsonObject *object);
/* Kept keys are never changed, so copies share them. */
JsonObject *drawl_extra_ref (JsonObject *extra);
gboolean drawl_extra_equal (JsonObject *a, JsonObject *b);
