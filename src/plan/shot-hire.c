/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Bodies that shots bring along. Invariant: ids are unique over the plan and the hires; an id that
 * a row names means its own profile if the row says which, so that shots of another plan's body "A"
 * never come to stand under this plan's "A". */

#include "plan/shot-hire.h"

#include "core/error.h"
#include "core/text.h"
#include "plan/body-file.h"
#include "plan/error.h"

void
drawl_shot_hires_init (DrawlShotHires *hires, DrawlPlan *plan)
{
  *hires = (DrawlShotHires){
      .plan = plan,
      .hires = g_ptr_array_new_with_free_func ((GDestroyNotify)drawl_hired_fields_free),
  };
}

void
drawl_shot_hires_clear (DrawlShotHires *hires)
{
  g_clear_pointer (&hires->hires, g_ptr_array_unref);
  g_clear_pointer (&hires->shipped, g_ptr_array_unref);
}

/* ---- Bodies that are there, or going to be ---- */

/* The fields of the body number @i: those of the plan, then those to be hired; NULL at the end. */
static const DrawlHiredFields *
hired_at (const DrawlShotHires *hires, guint i)
{
  GListModel *bodies = drawl_plan_get_bodies (hires->plan);
  guint n_bodies = g_list_model_get_n_items (bodies);

  if (i < n_bodies) {
    g_autoptr (DrawlHiredBody) hired = g_list_model_get_item (bodies, i);
    return drawl_hired_body_get_fields (hired);
  }
  return i - n_bodies < hires->hires->len ? hires->hires->pdata[i - n_bodies] : NULL;
}

static const DrawlHiredFields *
find_id (const DrawlShotHires *hires, const char *id)
{
  const DrawlHiredFields *fields;

  for (guint i = 0; (fields = hired_at (hires, i)) != NULL; i++)
    if (g_str_equal (fields->id, id))
      return fields;
  return NULL;
}

static const DrawlHiredFields *
find_hired_profile (const DrawlShotHires *hires, const char *profile)
{
  const DrawlHiredFields *fields;

  for (guint i = 0; (fields = hired_at (hires, i)) != NULL; i++)
    if (g_str_equal (fields->body->id, profile))
      return fields;
  return NULL;
}

static DrawlBody *
find_profile (DrawlShotHires *hires, const char *profile)
{
  const DrawlHiredFields *hired = find_hired_profile (hires, profile);

  if (hired != NULL)
    return hired->body;
  if (hires->shipped == NULL)
    hires->shipped = drawl_body_load_shipped (NULL);
  for (guint i = 0; i < hires->shipped->len; i++) {
    DrawlBody *body = hires->shipped->pdata[i];
    if (g_str_equal (body->id, profile))
      return body;
  }
  return NULL;
}

/* ---- Hiring ---- */

/* An id that neither the plan nor the hires have. */
static char *
free_id (const DrawlShotHires *hires)
{
  for (guint n = 0;; n++) {
    char *id = n < 26 ? g_strdup_printf ("%c", 'A' + (int)n) : g_strdup_printf ("A%u", n - 25);
    if (find_id (hires, id) == NULL)
      return id;
    g_free (id);
  }
}

static gboolean
refuse_id (const DrawlShotHires *hires, const char *id, GError **error)
{
  g_autofree char *quote = drawl_core_quote (id);
  g_autoptr (GString) known = g_string_new (NULL);
  const DrawlHiredFields *fields;

  for (guint i = 0; (fields = hired_at (hires, i)) != NULL; i++)
    g_string_append_printf (known, "%s, ", fields->id);
  if (known->len == 0)
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_UNKNOWN,
                 _ ("there is no body “%s” on the plan; the id of a profile in the column "
                    "“profile” is expected"),
                 quote);
  else
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_UNKNOWN,
                 /* Translators: id; ids with a comma behind each. */
                 _ ("there is no body “%s” on the plan; %sor the id of a profile in the column "
                    "“profile”, is expected"),
                 quote, known->str);
  return FALSE;
}

static gboolean
refuse_profile (const char *profile, GError **error)
{
  g_autofree char *quote = drawl_core_quote (profile);
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_UNKNOWN,
               _ ("there is no profile “%s”; the id of a body on the plan, of a shipped one or of "
                  "one of your own is expected"),
               quote);
  return FALSE;
}

/* Hires @profile as @id, or as another id where that is empty or taken. */
static gboolean
hire (DrawlShotHires *hires, DrawlShotFields *fields, const char *profile, GError **error)
{
  DrawlBody *body = find_profile (hires, profile);
  gboolean id_is_free = fields->body[0] != '\0' && find_id (hires, fields->body) == NULL;

  if (body == NULL)
    return refuse_profile (profile, error);
  if (!id_is_free) {
    g_free (fields->body);
    fields->body = free_id (hires);
  }
  g_ptr_array_add (hires->hires, drawl_hired_fields_new (fields->body, body));
  return TRUE;
}

gboolean
drawl_shot_hires_settle (DrawlShotHires *hires, DrawlShotFields *fields, const char *profile,
                         GError **error)
{
  const DrawlHiredFields *named = fields->body[0] != '\0' ? find_id (hires, fields->body) : NULL;
  const DrawlHiredFields *same;

  if (profile[0] == '\0')
    return fields->body[0] == '\0' || named != NULL || refuse_id (hires, fields->body, error);
  if (named != NULL && g_str_equal (named->body->id, profile))
    return TRUE;
  if (named == NULL && fields->body[0] != '\0')
    return hire (hires, fields, profile, error);

  same = find_hired_profile (hires, profile);
  if (same == NULL)
    return hire (hires, fields, profile, error);
  drawl_shot_fields_set (&fields->body, same->id);
  return TRUE;
}
