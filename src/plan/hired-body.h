/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlHiredBody: a body on the plan, as hired: which profile, with which tier, which card in it,
 * for how many days. Only the plan changes it. Properties, read-only, notified: "id", "name",
 * "tier" (guint64), "card" (int). */

#include "plan/body.h"

typedef struct {
  char *id; /* "A", "B": unique within the plan; shots refer to it */
  DrawlBody *body;
  DrawlTier tier;
  int card;          /* index into body->cards, or -1: not chosen yet, the fastest is assumed */
  guint cards;       /* how many of them are hired; 0: not said */
  guint days;        /* of hire, 0: not said */
  JsonObject *extra; /* unknown keys, or NULL */
} DrawlHiredFields;

DrawlHiredFields *drawl_hired_fields_new (const char *id, DrawlBody *body);
DrawlHiredFields *drawl_hired_fields_copy (const DrawlHiredFields *fields);
void drawl_hired_fields_free (DrawlHiredFields *fields);
gboolean drawl_hired_fields_equal (const DrawlHiredFields *a, const DrawlHiredFields *b);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (DrawlHiredFields, drawl_hired_fields_free)

/* FALSE with DRAWL_PLAN_ERROR_VALUE, naming the body and key, when a plan cannot hold such a body:
 * no id, a tier or a card beyond its profile. */
gboolean drawl_hired_fields_check (const DrawlHiredFields *fields, GError **error);

DrawlHiredFields *drawl_hired_fields_from_json (JsonObject *object, const char *where,
                                                GError **error);
JsonObject *drawl_hired_fields_to_json (const DrawlHiredFields *fields);

#define DRAWL_TYPE_HIRED_BODY (drawl_hired_body_get_type ())
G_DECLARE_FINAL_TYPE (DrawlHiredBody, drawl_hired_body, DRAWL, HIRED_BODY, GObject)

DrawlHiredBody *drawl_hired_body_new (const DrawlHiredFields *fields);
const DrawlHiredFields *drawl_hired_body_get_fields (DrawlHiredBody *hired);
const char *drawl_hired_body_get_id (DrawlHiredBody *hired);
DrawlBody *drawl_hired_body_get_body (DrawlHiredBody *hired);
DrawlTier drawl_hired_body_get_tier (DrawlHiredBody *hired);
/* New string: "A · Treadle 4". */
char *drawl_hired_body_dup_name (DrawlHiredBody *hired);

/* For plan.c alone. */
void drawl_hired_body_take_fields (DrawlHiredBody *hired, const DrawlHiredFields *fields);
