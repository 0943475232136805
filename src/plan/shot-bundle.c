/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Shots on their way. Invariant: each body that a shot names is among the bodies of the bundle, and
 * slates and ids are unique, for all of it comes from one plan. */

#include "plan/shot-bundle.h"

#include "core/text.h"
#include "plan/error.h"
#include "plan/extra.h"
#include "plan/plan-file.h"
#include "plan/plan-private.h"

struct _DrawlShotBundle {
  GObject parent_instance;
  DrawlPlan *plan;         /* or NULL */
  GPtrArray *shots;        /* of DrawlShot */
  GPtrArray *shot_fields;  /* of DrawlShotFields */
  GPtrArray *hired_fields; /* of DrawlHiredFields */
};

G_DEFINE_FINAL_TYPE (DrawlShotBundle, drawl_shot_bundle, G_TYPE_OBJECT)

static void
drawl_shot_bundle_finalize (GObject *object)
{
  DrawlShotBundle *self = DRAWL_SHOT_BUNDLE (object);

  g_clear_object (&self->plan);
  g_ptr_array_unref (self->shots);
  g_ptr_array_unref (self->shot_fields);
  g_ptr_array_unref (self->hired_fields);
  G_OBJECT_CLASS (drawl_shot_bundle_parent_class)->finalize (object);
}

static void
drawl_shot_bundle_class_init (DrawlShotBundleClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = drawl_shot_bundle_finalize;
}

static void
drawl_shot_bundle_init (DrawlShotBundle *self)
{
  self->shots = g_ptr_array_new_with_free_func (g_object_unref);
  self->shot_fields = g_ptr_array_new_with_free_func ((GDestroyNotify)drawl_shot_fields_free);
  self->hired_fields = g_ptr_array_new_with_free_func ((GDestroyNotify)drawl_hired_fields_free);
}

/* Takes the shots, and those bodies of @plan that they name. */
static void
take (DrawlShotBundle *self, DrawlPlan *plan, const GPtrArray *shots)
{
  g_autoptr (GHashTable) ids = g_hash_table_new (g_str_hash, g_str_equal);
  DrawlHiredBody *hired;

  for (guint i = 0; i < shots->len; i++) {
    const DrawlShotFields *fields = drawl_shot_get_fields (shots->pdata[i]);
    g_ptr_array_add (self->shot_fields, drawl_shot_fields_copy (fields));
    g_hash_table_add (ids, fields->body);
  }
  for (guint i = 0; (hired = drawl_plan_body_at (plan, i)) != NULL; i++)
    if (g_hash_table_contains (ids, drawl_hired_body_get_id (hired)))
      g_ptr_array_add (self->hired_fields,
                       drawl_hired_fields_copy (drawl_hired_body_get_fields (hired)));
}

DrawlShotBundle *
drawl_shot_bundle_new (DrawlPlan *plan, const GPtrArray *shots)
{
  DrawlShotBundle *self = g_object_new (DRAWL_TYPE_SHOT_BUNDLE, NULL);

  self->plan = g_object_ref (plan);
  for (guint i = 0; i < shots->len; i++)
    g_ptr_array_add (self->shots, g_object_ref (shots->pdata[i]));
  take (self, plan, shots);
  return self;
}

guint
drawl_shot_bundle_n_shots (DrawlShotBundle *bundle)
{
  return bundle->shot_fields->len;
}

DrawlPlan *
drawl_shot_bundle_get_plan (DrawlShotBundle *bundle)
{
  return bundle->plan;
}

GPtrArray *
drawl_shot_bundle_dup_shots (DrawlShotBundle *bundle)
{
  GPtrArray *shots = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; i < bundle->shots->len; i++) {
    DrawlShot *shot = bundle->shots->pdata[i];
    if (drawl_plan_find_shot (bundle->plan, drawl_shot_get_slate (shot)) == shot)
      g_ptr_array_add (shots, g_object_ref (shot));
  }
  return shots;
}

const GPtrArray *
drawl_shot_bundle_get_shot_fields (DrawlShotBundle *bundle)
{
  return bundle->shot_fields;
}

const GPtrArray *
drawl_shot_bundle_get_hired_fields (DrawlShotBundle *bundle)
{
  return bundle->hired_fields;
}

/* ---- As text ---- */

static GPtrArray *
copy_shot_fields (DrawlShotBundle *self)
{
  GPtrArray *copies = g_ptr_array_new_with_free_func ((GDestroyNotify)drawl_shot_fields_free);

  for (guint i = 0; i < self->shot_fields->len; i++)
    g_ptr_array_add (copies, drawl_shot_fields_copy (self->shot_fields->pdata[i]));
  return copies;
}

char *
drawl_shot_bundle_to_text (DrawlShotBundle *bundle, gsize *length)
{
  g_autoptr (DrawlPlan) plan = drawl_plan_new ();
  g_autoptr (GPtrArray) shot_fields = copy_shot_fields (bundle);
  gboolean filled = drawl_plan_fill (plan, drawl_plan_get_settings (plan), bundle->hired_fields,
                                     shot_fields, NULL);

  g_assert (filled); /* they stood on a plan */
  return drawl_plan_to_data (plan, length);
}

DrawlShotBundle *
drawl_shot_bundle_from_text (const char *text, gsize length, const char *where, GError **error)
{
  g_autoptr (DrawlPlan) plan = drawl_plan_from_data (text, length, where, error);

  if (plan == NULL)
    return NULL;
  if (plan->shots->len == 0) {
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_VALUE,
                 _ ("%s: there are no shots in it; at least one is expected"), where);
    return NULL;
  }
  DrawlShotBundle *self = g_object_new (DRAWL_TYPE_SHOT_BUNDLE, NULL);
  take (self, plan, plan->shots);
  return self;
}

/* ---- Into a plan ---- */

static gboolean
same_profile (const DrawlBody *a, const DrawlBody *b)
{
  return a == b || (g_str_equal (a->id, b->id) && drawl_extra_equal (a->json, b->json));
}

/* The body of @plan that has the profile of @fields, one of the same id if there are several; or
 * NULL. */
static DrawlHiredBody *
find_same (DrawlPlan *plan, const DrawlHiredFields *fields)
{
  DrawlHiredBody *hired, *same = NULL;

  for (guint i = 0; (hired = drawl_plan_body_at (plan, i)) != NULL; i++) {
    if (!same_profile (drawl_hired_body_get_body (hired), fields->body))
      continue;
    if (g_str_equal (drawl_hired_body_get_id (hired), fields->id))
      return hired;
    if (same == NULL)
      same = hired;
  }
  return same;
}

/* Fills @hires with the bodies that @plan lacks, under ids that are free; returns what each id of
 * the bundle is called there. */
static GHashTable *
settle_bodies (DrawlShotBundle *self, DrawlPlan *plan, GPtrArray *hires)
{
  GHashTable *ids = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, g_free);
  g_autoptr (GHashTable) given = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < self->hired_fields->len; i++) {
    const DrawlHiredFields *fields = self->hired_fields->pdata[i];
    DrawlHiredBody *same = find_same (plan, fields);
    if (same != NULL) {
      g_hash_table_insert (ids, fields->id, g_strdup (drawl_hired_body_get_id (same)));
      continue;
    }
    DrawlHiredFields *hire = drawl_hired_fields_copy (fields);
    g_free (hire->id);
    hire->id = drawl_plan_free_body_id (plan, fields->id, given);
    g_hash_table_add (given, hire->id);
    g_hash_table_insert (ids, fields->id, g_strdup (hire->id));
    g_ptr_array_add (hires, hire);
  }
  return ids;
}

gboolean
drawl_shot_bundle_insert (DrawlShotBundle *bundle, DrawlPlan *plan, guint position,
                          const char *label, GError **error)
{
  g_autoptr (GPtrArray) hires =
      g_ptr_array_new_with_free_func ((GDestroyNotify)drawl_hired_fields_free);
  g_autoptr (GPtrArray) shot_fields = copy_shot_fields (bundle);
  g_autoptr (GHashTable) ids = settle_bodies (bundle, plan, hires);

  drawl_plan_free_slates (plan, shot_fields);
  for (guint i = 0; i < shot_fields->len; i++) {
    DrawlShotFields *fields = shot_fields->pdata[i];
    if (fields->body[0] != '\0')
      drawl_shot_fields_set (&fields->body, g_hash_table_lookup (ids, fields->body));
  }
  return drawl_plan_insert_all (plan, position, hires, shot_fields, label, error);
}
