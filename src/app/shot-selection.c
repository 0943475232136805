/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What is chosen. The list view is given places, not shots, as items: it makes a new row for each
 * item that is new to it, which for a screenful takes longer than a frame, while rows of places
 * that stay are only given other shots. Few shots that come or go bring or take their places along,
 * so that the list stands still around them. Invariant: every chosen shot is shown; the one in hand
 * is chosen; there is one unless nothing is shown. `hand_at` is where it stands, and where its
 * successor is looked for. */

#include "app/shot-selection.h"

/* Changes of more than this give places other shots. */
#define MOVED_MAX 24

struct _DrawlShotSelection {
  GObject parent_instance;
  DrawlShotView *view;
  GPtrArray *places;  /* of GObject, as many as shots are shown; NULL until one is asked for */
  GHashTable *chosen; /* of DrawlShot, with references */
  DrawlShot *hand;    /* no reference: it is chosen */
  guint hand_at;
};

static guint changed_signal;

/* ---- List model ---- */

static GType
drawl_shot_selection_get_item_type (GListModel *model)
{
  return G_TYPE_OBJECT;
}

static guint
drawl_shot_selection_get_n_items (GListModel *model)
{
  return DRAWL_SHOT_SELECTION (model)->places->len;
}

static gpointer
drawl_shot_selection_get_item (GListModel *model, guint position)
{
  GPtrArray *places = DRAWL_SHOT_SELECTION (model)->places;

  if (position >= places->len)
    return NULL;
  if (places->pdata[position] == NULL)
    places->pdata[position] = g_object_new (G_TYPE_OBJECT, NULL);
  return g_object_ref (places->pdata[position]);
}

static void
list_model_init (GListModelInterface *iface)
{
  iface->get_item_type = drawl_shot_selection_get_item_type;
  iface->get_n_items = drawl_shot_selection_get_n_items;
  iface->get_item = drawl_shot_selection_get_item;
}

/* ---- Choosing ---- */

static void
add (DrawlShotSelection *self, DrawlShot *shot)
{
  if (!g_hash_table_contains (self->chosen, shot))
    g_hash_table_add (self->chosen, g_object_ref (shot));
}

static void
take_in_hand (DrawlShotSelection *self, guint position)
{
  self->hand = drawl_shot_view_get_shot (self->view, position);
  self->hand_at = position;
  if (self->hand != NULL)
    add (self, self->hand);
}

/* The first one chosen, or the nearest to where the hand was. */
static void
find_hand (DrawlShotSelection *self)
{
  guint n = drawl_shot_view_n_shown (self->view);

  for (guint i = 0; i < n && g_hash_table_size (self->chosen) > 0; i++)
    if (g_hash_table_contains (self->chosen, drawl_shot_view_get_shot (self->view, i))) {
      take_in_hand (self, i);
      return;
    }
  take_in_hand (self, n > 0 ? MIN (self->hand_at, n - 1) : 0);
}

/* After what is chosen has changed. */
static void
tell (DrawlShotSelection *self)
{
  guint n = drawl_shot_view_n_shown (self->view);

  if (self->hand == NULL || !g_hash_table_contains (self->chosen, self->hand))
    find_hand (self);
  if (n > 0)
    gtk_selection_model_selection_changed (GTK_SELECTION_MODEL (self), 0, n);
  g_signal_emit (self, changed_signal, 0);
}

static gboolean
drawl_shot_selection_is_selected (GtkSelectionModel *model, guint position)
{
  DrawlShotSelection *self = DRAWL_SHOT_SELECTION (model);
  DrawlShot *shot = drawl_shot_view_get_shot (self->view, position);

  return shot != NULL && g_hash_table_contains (self->chosen, shot);
}

static GtkBitset *
drawl_shot_selection_get_selection_in_range (GtkSelectionModel *model, guint position,
                                             guint n_items)
{
  GtkBitset *set = gtk_bitset_new_empty ();

  for (guint i = position; i < position + n_items; i++)
    if (drawl_shot_selection_is_selected (model, i))
      gtk_bitset_add (set, i);
  return set;
}

static gboolean
drawl_shot_selection_select_item (GtkSelectionModel *model, guint position, gboolean unselect_rest)
{
  DrawlShotSelection *self = DRAWL_SHOT_SELECTION (model);

  DrawlShot *shot = drawl_shot_view_get_shot (self->view, position);
  if (unselect_rest && shot == self->hand && g_hash_table_size (self->chosen) == 1)
    return TRUE;
  if (unselect_rest)
    g_hash_table_remove_all (self->chosen);
  take_in_hand (self, position);
  tell (self);
  return TRUE;
}

/* The last one stays chosen. */
static gboolean
drawl_shot_selection_unselect_item (GtkSelectionModel *model, guint position)
{
  DrawlShotSelection *self = DRAWL_SHOT_SELECTION (model);
  DrawlShot *shot = drawl_shot_view_get_shot (self->view, position);

  if (g_hash_table_size (self->chosen) > 1 && g_hash_table_contains (self->chosen, shot)) {
    if (shot == self->hand)
      self->hand = NULL;
    g_hash_table_remove (self->chosen, shot);
    tell (self);
  }
  return TRUE;
}

static gboolean
drawl_shot_selection_select_range (GtkSelectionModel *model, guint position, guint n_items,
                                   gboolean unselect_rest)
{
  DrawlShotSelection *self = DRAWL_SHOT_SELECTION (model);
  g_autoptr (DrawlShot) hand = self->hand != NULL ? g_object_ref (self->hand) : NULL;

  if (unselect_rest)
    g_hash_table_remove_all (self->chosen);
  for (guint i = position; i < position + n_items; i++)
    add (self, drawl_shot_view_get_shot (self->view, i));
  self->hand = NULL;
  if (hand != NULL && g_hash_table_contains (self->chosen, hand))
    self->hand = hand;
  tell (self);
  return TRUE;
}

/* After some were let go of: the one that was in hand stays in it as long as it is chosen, and is
 * chosen again where nothing else is. */
static void
keep_hand (DrawlShotSelection *self, DrawlShot *hand)
{
  if (g_hash_table_size (self->chosen) == 0 && hand != NULL)
    add (self, hand);
  if (hand != NULL && g_hash_table_contains (self->chosen, hand))
    self->hand = hand;
}

static gboolean
drawl_shot_selection_unselect_range (GtkSelectionModel *model, guint position, guint n_items)
{
  DrawlShotSelection *self = DRAWL_SHOT_SELECTION (model);
  g_autoptr (DrawlShot) hand = self->hand != NULL ? g_object_ref (self->hand) : NULL;

  self->hand = NULL;
  for (guint i = position; i < position + n_items; i++)
    g_hash_table_remove (self->chosen, drawl_shot_view_get_shot (self->view, i));
  keep_hand (self, hand);
  tell (self);
  return TRUE;
}

static gboolean
drawl_shot_selection_select_all (GtkSelectionModel *model)
{
  return drawl_shot_selection_select_range (
      model, 0, drawl_shot_view_n_shown (DRAWL_SHOT_SELECTION (model)->view), FALSE);
}

/* Back to the one in hand. */
static gboolean
drawl_shot_selection_unselect_all (GtkSelectionModel *model)
{
  DrawlShotSelection *self = DRAWL_SHOT_SELECTION (model);

  if (self->hand != NULL)
    drawl_shot_selection_choose_one (self, self->hand);
  return TRUE;
}

/* What a rubber band asks for. */
static gboolean
drawl_shot_selection_set_selection (GtkSelectionModel *model, GtkBitset *selected, GtkBitset *mask)
{
  DrawlShotSelection *self = DRAWL_SHOT_SELECTION (model);
  g_autoptr (DrawlShot) hand = self->hand != NULL ? g_object_ref (self->hand) : NULL;
  GtkBitsetIter iter;
  guint position;

  self->hand = NULL;
  for (gboolean more = gtk_bitset_iter_init_first (&iter, mask, &position); more;
       more = gtk_bitset_iter_next (&iter, &position)) {
    DrawlShot *shot = drawl_shot_view_get_shot (self->view, position);
    if (shot == NULL)
      continue;
    if (gtk_bitset_contains (selected, position))
      add (self, shot);
    else
      g_hash_table_remove (self->chosen, shot);
  }
  keep_hand (self, hand);
  tell (self);
  return TRUE;
}

static void
selection_model_init (GtkSelectionModelInterface *iface)
{
  iface->is_selected = drawl_shot_selection_is_selected;
  iface->get_selection_in_range = drawl_shot_selection_get_selection_in_range;
  iface->select_item = drawl_shot_selection_select_item;
  iface->unselect_item = drawl_shot_selection_unselect_item;
  iface->select_range = drawl_shot_selection_select_range;
  iface->unselect_range = drawl_shot_selection_unselect_range;
  iface->select_all = drawl_shot_selection_select_all;
  iface->unselect_all = drawl_shot_selection_unselect_all;
  iface->set_selection = drawl_shot_selection_set_selection;
}

G_DEFINE_FINAL_TYPE_WITH_CODE (DrawlShotSelection, drawl_shot_selection, G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, list_model_init)
                                   G_IMPLEMENT_INTERFACE (GTK_TYPE_SELECTION_MODEL,
                                                          selection_model_init))

/* ---- What is shown ---- */

/* Lets go of what is not shown any more; TRUE when that was something. */
static gboolean
prune (DrawlShotSelection *self)
{
  GHashTable *shown = g_hash_table_new_full (NULL, NULL, g_object_unref, NULL);
  guint before = g_hash_table_size (self->chosen), n = drawl_shot_view_n_shown (self->view);

  for (guint i = 0; i < n && g_hash_table_size (shown) < before; i++) {
    DrawlShot *shot = drawl_shot_view_get_shot (self->view, i);
    if (g_hash_table_contains (self->chosen, shot))
      g_hash_table_add (shown, g_object_ref (shot));
  }
  gboolean lost = g_hash_table_size (shown) < before;
  if (lost) {
    GHashTable *old = self->chosen;
    self->chosen = g_steal_pointer (&shown);
    if (self->hand != NULL && !g_hash_table_contains (self->chosen, self->hand))
      self->hand = NULL;
    drawl_shot_view_set_kept (self->view, self->chosen);
    shown = old;
  }
  g_hash_table_unref (shown);
  return lost;
}

/* Makes room for @added places where @removed were; of many, at the end. */
static void
splice_places (DrawlShotSelection *self, guint position, guint removed, guint added)
{
  if (removed + added > MOVED_MAX) {
    guint kept = MIN (self->places->len, self->places->len - removed + added);
    guint more = added > removed ? added - removed : 0,
          fewer = removed > added ? removed - added : 0;
    position = kept;
    removed = fewer;
    added = more;
  }
  if (removed > 0)
    g_ptr_array_remove_range (self->places, position, removed);
  for (guint i = 0; i < added; i++)
    g_ptr_array_insert (self->places, (int)(position + i), NULL);
  if (removed + added > 0)
    g_list_model_items_changed (G_LIST_MODEL (self), position, removed, added);
}

/* Rows that come are marked by what is chosen by then; those that stay hear of it behind. */
static void
on_items_changed (DrawlShotSelection *self, guint position, guint removed, guint added)
{
  gboolean other = prune (self) || self->hand == NULL;

  if (self->hand == NULL)
    find_hand (self);
  else
    self->hand_at = drawl_shot_view_find (self->view, self->hand);
  splice_places (self, position, removed, added);
  if (other)
    tell (self);
  else if (removed + added > 1)
    gtk_selection_model_selection_changed (GTK_SELECTION_MODEL (self), 0, self->places->len);
}

DrawlShot *
drawl_shot_selection_get_hand (DrawlShotSelection *selection)
{
  return selection->hand;
}

guint
drawl_shot_selection_n_chosen (DrawlShotSelection *selection)
{
  return g_hash_table_size (selection->chosen);
}

gboolean
drawl_shot_selection_has (DrawlShotSelection *selection, DrawlShot *shot)
{
  return g_hash_table_contains (selection->chosen, shot);
}

/* Those that the filter hides are kept from now on. */
static void
show_all (DrawlShotSelection *self, GHashTable *wanted)
{
  guint n = drawl_shot_view_n_shown (self->view), n_found = 0;

  for (guint i = 0; i < n && n_found < g_hash_table_size (wanted); i++)
    n_found += g_hash_table_contains (wanted, drawl_shot_view_get_shot (self->view, i));
  if (n_found == g_hash_table_size (wanted))
    return;
  drawl_shot_view_set_kept (self->view, wanted);
  drawl_shot_view_refresh (self->view);
  drawl_shot_view_set_kept (self->view, self->chosen);
}

void
drawl_shot_selection_choose (DrawlShotSelection *selection, const GPtrArray *shots)
{
  g_autoptr (GHashTable) wanted = g_hash_table_new (NULL, NULL);
  guint first = G_MAXUINT;

  for (guint i = 0; i < shots->len; i++)
    g_hash_table_add (wanted, shots->pdata[i]);
  show_all (selection, wanted);
  g_hash_table_remove_all (selection->chosen);
  selection->hand = NULL;
  for (guint i = 0; i < drawl_shot_view_n_shown (selection->view); i++) {
    DrawlShot *shot = drawl_shot_view_get_shot (selection->view, i);
    if (!g_hash_table_contains (wanted, shot))
      continue;
    add (selection, shot);
    first = MIN (first, i);
  }
  if (first != G_MAXUINT)
    take_in_hand (selection, first);
  tell (selection);
}

void
drawl_shot_selection_choose_one (DrawlShotSelection *selection, DrawlShot *shot)
{
  g_autoptr (GPtrArray) one = g_ptr_array_new ();

  g_ptr_array_add (one, shot);
  drawl_shot_selection_choose (selection, one);
}

static void
drawl_shot_selection_finalize (GObject *object)
{
  DrawlShotSelection *self = DRAWL_SHOT_SELECTION (object);

  drawl_shot_view_set_kept (self->view, NULL);
  g_signal_handlers_disconnect_by_data (self->view, self);
  g_object_unref (self->view);
  g_ptr_array_unref (self->places);
  g_hash_table_unref (self->chosen);
  G_OBJECT_CLASS (drawl_shot_selection_parent_class)->finalize (object);
}

static void
drawl_shot_selection_class_init (DrawlShotSelectionClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = drawl_shot_selection_finalize;
  changed_signal = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
}

static void
drop_place (gpointer place)
{
  g_clear_object (&place);
}

static void
drawl_shot_selection_init (DrawlShotSelection *self)
{
  self->chosen = g_hash_table_new_full (NULL, NULL, g_object_unref, NULL);
  self->places = g_ptr_array_new_with_free_func (drop_place);
}

DrawlShotSelection *
drawl_shot_selection_new (DrawlShotView *view)
{
  DrawlShotSelection *self = g_object_new (DRAWL_TYPE_SHOT_SELECTION, NULL);

  self->view = g_object_ref (view);
  g_ptr_array_set_size (self->places, (int)drawl_shot_view_n_shown (view));
  drawl_shot_view_set_kept (view, self->chosen);
  g_signal_connect_swapped (view, "items-changed", G_CALLBACK (on_items_changed), self);
  find_hand (self);
  return self;
}
