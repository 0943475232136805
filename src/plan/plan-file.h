/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Plan files: JSON, "format": "drawl-plan", "version": 1. Schema:
 * data/schema/drawl-plan.schema.json, manual: drawl-plan(5). Unknown keys are kept, a newer version
 * is refused, a file is read whole or not at all. */

#include <gio/gio.h>

#include "plan/plan.h"

#define DRAWL_PLAN_VERSION 1
#define DRAWL_PLAN_SUFFIX ".drawl"
#define DRAWL_PLAN_MIME_TYPE "application/vnd.drawl.plan+json"

/* Errors: DRAWL_PLAN_ERROR_*: SYNTAX, FORMAT, VERSION, TOO_LARGE, VALUE, DUPLICATE (slates),
 * UNKNOWN (a shot of a body that the plan does not have), CONTRADICTION (in a body), READ. @etag,
 * if not NULL, takes the file's entity tag. */
DrawlPlan *drawl_plan_load (GFile *file, char **etag, GError **error);
DrawlPlan *drawl_plan_from_data (const char *data, gsize length, const char *where, GError **error);

/* The text of the file. */
char *drawl_plan_to_data (DrawlPlan *plan, gsize *length);

/* Saves durably and marks the plan saved. Errors: those of drawl_json_save(). A window saves
 * through drawl_journal_save(), which also never overwrites what someone else wrote. */
gboolean drawl_plan_save (DrawlPlan *plan, GFile *file, gboolean backup, char **etag,
                          GError **error);
