/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A body as hired: profile, tier, card, days. The tier and the card are within the profile; the
 * profile itself is shared and never changes. */

#include "plan/hired-body.h"

#include "core/error.h"
#include "core/text.h"
#include "plan/body-file.h"
#include "plan/error.h"
#include "plan/extra.h"
#include "plan/json-file.h"

#define HIRED_CARDS_MAX 100000
#define HIRED_DAYS_MAX 10000

/* ---- Fields ---- */

DrawlHiredFields *
drawl_hired_fields_new (const char *id, DrawlBody *body)
{
  DrawlHiredFields *fields = g_new0 (DrawlHiredFields, 1);

  fields->id = g_strdup (id);
  fields->body = drawl_body_ref (body);
  fields->card = -1;
  return fields;
}

DrawlHiredFields *
drawl_hired_fields_copy (const DrawlHiredFields *fields)
{
  DrawlHiredFields *copy = g_memdup2 (fields, sizeof *fields);

  copy->id = g_strdup (fields->id);
  drawl_body_ref (copy->body);
  copy->extra = drawl_extra_ref (fields->extra);
  return copy;
}

void
drawl_hired_fields_free (DrawlHiredFields *fields)
{
  if (fields == NULL)
    return;
  g_free (fields->id);
  g_clear_pointer (&fields->body, drawl_body_unref);
  g_clear_pointer (&fields->extra, json_object_unref);
  g_free (fields);
}

static gboolean
bodies_equal (const DrawlBody *a, const DrawlBody *b)
{
  return a == b || (a->json != NULL && b->json != NULL && json_object_equal (a->json, b->json));
}

gboolean
drawl_hired_fields_equal (const DrawlHiredFields *a, const DrawlHiredFields *b)
{
  return g_str_equal (a->id, b->id) && a->tier == b->tier && a->card == b->card &&
         a->cards == b->cards && a->days == b->days && drawl_extra_equal (a->extra, b->extra) &&
         bodies_equal (a->body, b->body);
}

static gboolean
refuse (const DrawlHiredFields *fields, const char *key, const char *message, GError **error)
{
  g_autofree char *id = drawl_core_quote (fields->id);
  /* Translators: id of a hired body, key, what is wrong. */
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_VALUE, _ ("body %s: “%s”: %s"), id, key,
               message);
  return FALSE;
}

gboolean
drawl_hired_fields_check (const DrawlHiredFields *fields, GError **error)
{
  const DrawlBody *body = fields->body;
  DrawlTier known =
      body->n_licences < DRAWL_LICENCES_MAX ? DRAWL_TIER_BIT (body->n_licences) - 1 : G_MAXUINT64;

  if (fields->id[0] == '\0')
    return refuse (fields, "id", _ ("a body must have an id"), error);
  if ((fields->tier & ~known) != 0)
    return refuse (fields, "tier", _ ("licences of this body are expected"), error);
  if (fields->card < -1 || fields->card >= (int)body->n_cards)
    return refuse (fields, "card", _ ("a card of this body is expected"), error);
  if (fields->cards > HIRED_CARDS_MAX || fields->days > HIRED_DAYS_MAX)
    return refuse (fields, fields->days > HIRED_DAYS_MAX ? "days" : "cards",
                   _ ("a smaller number is expected"), error);
  return TRUE;
}

/* ---- In a plan file ---- */

static const char *const known_keys[] = {"id", "tier", "card", "cards", "days", "profile", NULL};

static gboolean
read_tier (JsonObject *object, const char *where, DrawlHiredFields *fields, GError **error)
{
  g_autoptr (GPtrArray) ids = g_ptr_array_new ();
  JsonArray *array = NULL;

  if (!drawl_json_get_array (object, "tier", where, DRAWL_LICENCES_MAX, &array, error))
    return FALSE;
  for (guint i = 0; array != NULL && i < json_array_get_length (array); i++) {
    JsonNode *node = json_array_get_element (array, i);
    if (!JSON_NODE_HOLDS_VALUE (node) || json_node_get_value_type (node) != G_TYPE_STRING) {
      g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_VALUE,
                   _ ("%s: “tier”: ids of licences are expected"), where);
      return FALSE;
    }
    g_ptr_array_add (ids, (gpointer)json_node_get_string (node));
  }
  g_ptr_array_add (ids, NULL);
  if (drawl_body_tier_from_ids (fields->body, (const char *const *)ids->pdata, &fields->tier,
                                error))
    return TRUE;
  g_prefix_error (error, "%s: ", where);
  return FALSE;
}

static gboolean
read_card (JsonObject *object, const char *where, DrawlHiredFields *fields, GError **error)
{
  const char *id = NULL;

  if (!drawl_json_get_string (object, "card", where, &id, error))
    return FALSE;
  if (id == NULL)
    return TRUE;
  fields->card = drawl_body_card_index (fields->body, id);
  if (fields->card >= 0)
    return TRUE;
  g_autofree char *name = drawl_core_quote (fields->body->name), *card = drawl_core_quote (id);
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_UNKNOWN,
               _ ("%s: “card”: the body “%s” has no card “%s”"), where, name, card);
  return FALSE;
}

static gboolean
read_count (JsonObject *object, const char *key, const char *where, gint64 most, guint *count,
            GError **error)
{
  gint64 value = 0;

  if (!drawl_json_get_int (object, key, where, 0, most, &value, error))
    return FALSE;
  *count = (guint)value;
  return TRUE;
}

static DrawlBody *
read_profile (JsonObject *object, const char *where, GError **error)
{
  g_autofree char *place = g_strdup_printf (_ ("%s, profile"), where);
  JsonObject *profile = NULL;

  if (!drawl_json_get_object (object, "profile", where, &profile, error))
    return NULL;
  if (profile == NULL) {
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_VALUE,
                 _ ("%s: “profile”: a body profile is expected, but there is none"), where);
    return NULL;
  }
  return drawl_body_from_json (profile, place, error);
}

static void
keep_extra (JsonObject *object, DrawlHiredFields *fields)
{
  JsonObjectIter iter;
  const char *key;
  JsonNode *node;

  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &key, &node))
    if (!g_strv_contains (known_keys, key))
      drawl_extra_keep (&fields->extra, key, node);
}

DrawlHiredFields *
drawl_hired_fields_from_json (JsonObject *object, const char *where, GError **error)
{
  const char *id = "";

  if (!drawl_json_get_string (object, "id", where, &id, error))
    return NULL;
  if (id[0] == '\0') {
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_VALUE,
                 _ ("%s: “id”: a body must have an id"), where);
    return NULL;
  }

  g_autofree char *quote = drawl_core_quote (id);
  g_autofree char *place = g_strdup_printf (_ ("%s, body %s"), where, quote);
  g_autoptr (DrawlBody) body = read_profile (object, place, error);
  if (body == NULL)
    return NULL;
  g_autoptr (DrawlHiredFields) fields = drawl_hired_fields_new (id, body);
  if (!read_tier (object, place, fields, error) || !read_card (object, place, fields, error) ||
      !read_count (object, "cards", place, HIRED_CARDS_MAX, &fields->cards, error) ||
      !read_count (object, "days", place, HIRED_DAYS_MAX, &fields->days, error))
    return NULL;
  keep_extra (object, fields);
  return g_steal_pointer (&fields);
}

JsonObject *
drawl_hired_fields_to_json (const DrawlHiredFields *fields)
{
  JsonObject *object = json_object_new ();
  JsonArray *tier = json_array_new ();
  g_auto (GStrv) ids = drawl_body_tier_ids (fields->body, fields->tier);

  for (char **id = ids; *id != NULL; id++)
    json_array_add_string_element (tier, *id);
  json_object_set_string_member (object, "id", fields->id);
  json_object_set_array_member (object, "tier", tier);
  if (fields->card >= 0)
    json_object_set_string_member (object, "card", fields->body->cards[fields->card].id);
  if (fields->cards > 0)
    json_object_set_int_member (object, "cards", fields->cards);
  if (fields->days > 0)
    json_object_set_int_member (object, "days", fields->days);
  if (fields->body->json != NULL)
    json_object_set_object_member (object, "profile", json_object_ref (fields->body->json));
  drawl_extra_restore (fields->extra, object);
  return object;
}

/* ---- The object ---- */

struct _DrawlHiredBody {
  GObject parent_instance;
  DrawlHiredFields *fields;
};

G_DEFINE_FINAL_TYPE (DrawlHiredBody, drawl_hired_body, G_TYPE_OBJECT)

enum { PROP_ID = 1, PROP_NAME, PROP_TIER, PROP_CARD, N_PROPS };

static GParamSpec *props[N_PROPS];

static void
drawl_hired_body_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  DrawlHiredBody *self = DRAWL_HIRED_BODY (object);

  switch (prop_id) {
  case PROP_ID:
    g_value_set_string (value, self->fields->id);
    break;
  case PROP_NAME:
    g_value_take_string (value, drawl_hired_body_dup_name (self));
    break;
  case PROP_TIER:
    g_value_set_uint64 (value, self->fields->tier);
    break;
  case PROP_CARD:
    g_value_set_int (value, self->fields->card);
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
  }
}

static void
drawl_hired_body_finalize (GObject *object)
{
  DrawlHiredBody *self = DRAWL_HIRED_BODY (object);

  drawl_hired_fields_free (self->fields);
  G_OBJECT_CLASS (drawl_hired_body_parent_class)->finalize (object);
}

static void
drawl_hired_body_class_init (DrawlHiredBodyClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GParamFlags flags = G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;

  object_class->get_property = drawl_hired_body_get_property;
  object_class->finalize = drawl_hired_body_finalize;

  props[PROP_ID] = g_param_spec_string ("id", NULL, NULL, NULL, flags);
  props[PROP_NAME] = g_param_spec_string ("name", NULL, NULL, NULL, flags);
  props[PROP_TIER] = g_param_spec_uint64 ("tier", NULL, NULL, 0, G_MAXUINT64, 0, flags);
  props[PROP_CARD] = g_param_spec_int ("card", NULL, NULL, -1, G_MAXINT, -1, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
drawl_hired_body_init (DrawlHiredBody *self)
{
}

DrawlHiredBody *
drawl_hired_body_new (const DrawlHiredFields *fields)
{
  DrawlHiredBody *self = g_object_new (DRAWL_TYPE_HIRED_BODY, NULL);

  self->fields = drawl_hired_fields_copy (fields);
  return self;
}

const DrawlHiredFields *
drawl_hired_body_get_fields (DrawlHiredBody *hired)
{
  return hired->fields;
}

const char *
drawl_hired_body_get_id (DrawlHiredBody *hired)
{
  return hired->fields->id;
}

DrawlBody *
drawl_hired_body_get_body (DrawlHiredBody *hired)
{
  return hired->fields->body;
}

DrawlTier
drawl_hired_body_get_tier (DrawlHiredBody *hired)
{
  return hired->fields->tier;
}

char *
drawl_hired_body_dup_name (DrawlHiredBody *hired)
{
  /* Translators: id of a hired body, name of its profile: "A · Treadle 4". */
  return g_strdup_printf (_ ("%s · %s"), hired->fields->id, hired->fields->body->name);
}

void
drawl_hired_body_take_fields (DrawlHiredBody *hired, const DrawlHiredFields *fields)
{
  g_autoptr (DrawlHiredFields) old = g_steal_pointer (&hired->fields);
  gboolean other_id, other_body;

  hired->fields = drawl_hired_fields_copy (fields);
  other_id = !g_str_equal (old->id, fields->id);
  other_body = old->body != fields->body;

  g_object_freeze_notify (G_OBJECT (hired));
  if (other_id)
    g_object_notify_by_pspec (G_OBJECT (hired), props[PROP_ID]);
  if (other_id || other_body)
    g_object_notify_by_pspec (G_OBJECT (hired), props[PROP_NAME]);
  if (old->tier != fields->tier)
    g_object_notify_by_pspec (G_OBJECT (hired), props[PROP_TIER]);
  if (old->card != fields->card)
    g_object_notify_by_pspec (G_OBJECT (hired), props[PROP_CARD]);
  g_object_thaw_notify (G_OBJECT (hired));
}
