/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What the list shows. It is made anew as a whole, which takes a few milliseconds for ten thousand
 * shots, and what is told of it is the stretch between the first and the last difference. */

#include "app/shot-view.h"

#include <gio/gio.h>

#include "plan/list-stretch.h"

struct _DrawlShotView {
  GObject parent_instance;
  DrawlPlan *plan;
  DrawlShotFilter *filter;
  DrawlShotOrder order;
  GHashTable *kept;     /* not owned, or NULL */
  GPtrArray *shots;     /* of DrawlShot: as last told */
  GHashTable *by_scene; /* scene → how many of its shots are shown; while grouped */
  gboolean in_plan_order;
};

static guint refreshed_signal;

static GType
drawl_shot_view_get_item_type (GListModel *model)
{
  return DRAWL_TYPE_SHOT;
}

static guint
drawl_shot_view_get_n_items (GListModel *model)
{
  return DRAWL_SHOT_VIEW (model)->shots->len;
}

static gpointer
drawl_shot_view_get_item (GListModel *model, guint position)
{
  DrawlShot *shot = drawl_shot_view_get_shot (DRAWL_SHOT_VIEW (model), position);
  return shot != NULL ? g_object_ref (shot) : NULL;
}

static void
list_model_init (GListModelInterface *iface)
{
  iface->get_item_type = drawl_shot_view_get_item_type;
  iface->get_n_items = drawl_shot_view_get_n_items;
  iface->get_item = drawl_shot_view_get_item;
}

G_DEFINE_FINAL_TYPE_WITH_CODE (DrawlShotView, drawl_shot_view, G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, list_model_init))

/* ---- Making it ---- */

static GPtrArray *
those_that_pass (DrawlShotView *self, GHashTable *kept)
{
  guint n = self->plan != NULL ? drawl_plan_n_shots (self->plan) : 0;
  gboolean all = drawl_shot_filter_is_open (self->filter);
  GPtrArray *shots = g_ptr_array_new_full (n, g_object_unref);

  for (guint i = 0; i < n; i++) {
    DrawlShot *shot = drawl_plan_get_shot (self->plan, i);
    if (all || drawl_shot_filter_matches (self->filter, shot) ||
        (kept != NULL && g_hash_table_contains (kept, shot)))
      g_ptr_array_add (shots, g_object_ref (shot));
  }
  return shots;
}

static void
count_scenes (DrawlShotView *self)
{
  g_hash_table_remove_all (self->by_scene);
  for (guint i = 0; self->order.grouped && i < self->shots->len; i++) {
    const char *scene = drawl_shot_get_fields (self->shots->pdata[i])->scene;
    guint n = GPOINTER_TO_UINT (g_hash_table_lookup (self->by_scene, scene));
    g_hash_table_insert (self->by_scene, g_strdup (scene), GUINT_TO_POINTER (n + 1));
  }
}

static void
make (DrawlShotView *self, GHashTable *kept)
{
  g_autoptr (GPtrArray) before = self->shots;

  self->shots = those_that_pass (self, kept);
  self->in_plan_order = drawl_shot_order_sort (&self->order, self->shots);
  count_scenes (self);
  drawl_list_tell_stretch (G_LIST_MODEL (self), before, self->shots);
  g_signal_emit (self, refreshed_signal, 0);
}

void
drawl_shot_view_refresh (DrawlShotView *view)
{
  make (view, view->kept);
}

void
drawl_shot_view_narrow (DrawlShotView *view)
{
  make (view, NULL);
}

static void
on_items_changed (DrawlShotView *self)
{
  drawl_shot_view_refresh (self);
}

/* ---- What is wanted ---- */

void
drawl_shot_view_set_plan (DrawlShotView *view, DrawlPlan *plan)
{
  if (plan == view->plan)
    return;
  if (view->plan != NULL)
    g_signal_handlers_disconnect_by_data (view->plan, view);
  g_set_object (&view->plan, plan);
  drawl_shot_filter_set_body (view->filter, NULL);
  if (plan != NULL)
    g_signal_connect_swapped (plan, "items-changed", G_CALLBACK (on_items_changed), view);
  drawl_shot_view_narrow (view);
}

DrawlPlan *
drawl_shot_view_get_plan (DrawlShotView *view)
{
  return view->plan;
}

DrawlShotFilter *
drawl_shot_view_get_filter (DrawlShotView *view)
{
  return view->filter;
}

void
drawl_shot_view_set_order (DrawlShotView *view, const DrawlShotOrder *order)
{
  view->order = *order;
  drawl_shot_view_refresh (view);
}

const DrawlShotOrder *
drawl_shot_view_get_order (DrawlShotView *view)
{
  return &view->order;
}

void
drawl_shot_view_set_kept (DrawlShotView *view, GHashTable *kept)
{
  view->kept = kept;
}

/* ---- What is shown ---- */

guint
drawl_shot_view_n_shown (DrawlShotView *view)
{
  return view->shots->len;
}

DrawlShot *
drawl_shot_view_get_shot (DrawlShotView *view, guint position)
{
  return position < view->shots->len ? view->shots->pdata[position] : NULL;
}

guint
drawl_shot_view_find (DrawlShotView *view, DrawlShot *shot)
{
  guint position;

  return g_ptr_array_find (view->shots, shot, &position) ? position : G_MAXUINT;
}

gboolean
drawl_shot_view_in_plan_order (DrawlShotView *view)
{
  return view->in_plan_order;
}

GPtrArray *
drawl_shot_view_dup_order (DrawlShotView *view)
{
  GPtrArray *shots = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; view->plan != NULL && i < drawl_plan_n_shots (view->plan); i++)
    g_ptr_array_add (shots, g_object_ref (drawl_plan_get_shot (view->plan, i)));
  drawl_shot_order_sort (&view->order, shots);
  return shots;
}

const char *
drawl_shot_view_heading (DrawlShotView *view, guint position, guint *n_shots)
{
  DrawlShot *shot = drawl_shot_view_get_shot (view, position);

  if (!view->order.grouped || shot == NULL)
    return NULL;
  const char *scene = drawl_shot_get_fields (shot)->scene;
  if (position > 0 &&
      g_str_equal (drawl_shot_get_fields (view->shots->pdata[position - 1])->scene, scene))
    return NULL;
  *n_shots = GPOINTER_TO_UINT (g_hash_table_lookup (view->by_scene, scene));
  return scene;
}

static void
drawl_shot_view_finalize (GObject *object)
{
  DrawlShotView *self = DRAWL_SHOT_VIEW (object);

  if (self->plan != NULL)
    g_signal_handlers_disconnect_by_data (self->plan, self);
  g_clear_object (&self->plan);
  drawl_shot_filter_free (self->filter);
  g_ptr_array_unref (self->shots);
  g_hash_table_unref (self->by_scene);
  G_OBJECT_CLASS (drawl_shot_view_parent_class)->finalize (object);
}

static void
drawl_shot_view_class_init (DrawlShotViewClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = drawl_shot_view_finalize;
  refreshed_signal = g_signal_new ("refreshed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0,
                                   NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
drawl_shot_view_init (DrawlShotView *self)
{
  self->filter = drawl_shot_filter_new ();
  self->shots = g_ptr_array_new_with_free_func (g_object_unref);
  self->by_scene = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  self->in_plan_order = TRUE;
}

DrawlShotView *
drawl_shot_view_new (void)
{
  return g_object_new (DRAWL_TYPE_SHOT_VIEW, NULL);
}
