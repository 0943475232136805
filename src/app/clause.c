/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A clause in a sentence. The entry is always there to be clicked, focused and read out; where its
 * text needs more than one line and nobody types, the lines are drawn in its stead. */

#include "app/clause.h"

#include "app/sentence-layout.h"
#include "core/text.h"

struct _DrawlClause {
  GtkWidget parent_instance;
  GtkWidget *entry;
  DrawlEdit *edit;
  gboolean typing; /* the entry has the focus */
};

G_DEFINE_FINAL_TYPE (DrawlClause, drawl_clause, GTK_TYPE_WIDGET)

#define UNDERLINE 1  /* pixels */
#define LONGEST 2000 /* characters that it is as wide as */

static PangoLayout *
lay_out (DrawlClause *self, int width)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->entry));
  PangoLayout *layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), text);

  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_width (layout, width * PANGO_SCALE);
  pango_layout_set_spacing (layout,
                            drawl_sentence_layout_leading (GTK_WIDGET (self)) * PANGO_SCALE);
  return layout;
}

/* Whether the lines of @layout are shown at that width, rather than the entry. */
static gboolean
is_broken (DrawlClause *self, PangoLayout *layout)
{
  return !self->typing && pango_layout_get_line_count (layout) > 1;
}

static int
last_line_end (PangoLayout *layout)
{
  PangoLayoutLine *line =
      pango_layout_get_line_readonly (layout, pango_layout_get_line_count (layout) - 1);
  PangoRectangle extents;

  pango_layout_line_get_pixel_extents (line, NULL, &extents);
  return extents.width;
}

static int
last_baseline (PangoLayout *layout)
{
  PangoLayoutIter *iter = pango_layout_get_iter (layout);
  int baseline;

  do
    baseline = pango_layout_iter_get_baseline (iter);
  while (pango_layout_iter_next_line (iter));
  pango_layout_iter_free (iter);
  return PANGO_PIXELS (baseline);
}

gboolean
drawl_clause_break (DrawlClause *clause, int width, DrawlClauseLines *lines)
{
  g_autoptr (PangoLayout) layout = lay_out (clause, width);
  int height;

  if (!is_broken (clause, layout))
    return FALSE;
  pango_layout_get_pixel_size (layout, NULL, &height);
  lines->ascent = PANGO_PIXELS (pango_layout_get_baseline (layout));
  lines->drop = last_baseline (layout) - lines->ascent;
  lines->descent = height - lines->ascent - lines->drop;
  lines->tail = last_line_end (layout);
  return TRUE;
}

static void
draw_underlines (GtkSnapshot *snapshot, PangoLayout *layout, GdkRGBA colour)
{
  PangoLayoutIter *iter = pango_layout_get_iter (layout);

  colour.alpha *= 0.5f;
  do {
    PangoRectangle line;
    pango_layout_iter_get_line_extents (iter, NULL, &line);
    pango_extents_to_pixels (&line, NULL);
    gtk_snapshot_append_color (snapshot, &colour,
                               &GRAPHENE_RECT_INIT ((float)line.x,
                                                    (float)(line.y + line.height - UNDERLINE),
                                                    (float)line.width, UNDERLINE));
  } while (pango_layout_iter_next_line (iter));
  pango_layout_iter_free (iter);
}

static void
drawl_clause_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  DrawlClause *self = DRAWL_CLAUSE (widget);
  g_autoptr (PangoLayout) layout = lay_out (self, gtk_widget_get_width (widget));
  GtkStyleContext *style = gtk_widget_get_style_context (widget);
  GdkRGBA colour;

  if (!is_broken (self, layout)) {
    gtk_widget_snapshot_child (widget, self->entry, snapshot);
    return;
  }
  gtk_style_context_get_color (style, &colour);
  gtk_snapshot_render_layout (snapshot, style, 0, 0, layout);
  draw_underlines (snapshot, layout, colour);
}

static void
drawl_clause_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                      int *natural, int *minimum_baseline, int *natural_baseline)
{
  DrawlClause *self = DRAWL_CLAUSE (widget);

  gtk_widget_measure (self->entry, orientation, -1, minimum, natural, minimum_baseline,
                      natural_baseline);
}

static void
drawl_clause_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  DrawlClause *self = DRAWL_CLAUSE (widget);

  gtk_widget_allocate (self->entry, width, height, baseline, NULL);
}

static gboolean
drawl_clause_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (DRAWL_CLAUSE (widget)->entry);
}

static void
set_typing (DrawlClause *self, gboolean typing)
{
  self->typing = typing;
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

static void
on_enter (DrawlClause *self)
{
  set_typing (self, TRUE);
}

static void
on_leave (DrawlClause *self)
{
  set_typing (self, FALSE);
}

static void
drawl_clause_dispose (GObject *object)
{
  DrawlClause *self = DRAWL_CLAUSE (object);

  g_clear_pointer (&self->entry, gtk_widget_unparent);
  G_OBJECT_CLASS (drawl_clause_parent_class)->dispose (object);
}

static void
drawl_clause_class_init (DrawlClauseClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = drawl_clause_dispose;
  widget_class->snapshot = drawl_clause_snapshot;
  widget_class->measure = drawl_clause_measure;
  widget_class->size_allocate = drawl_clause_size_allocate;
  widget_class->grab_focus = drawl_clause_grab_focus;
  gtk_widget_class_set_css_name (widget_class, "clause");
}

static void
drawl_clause_init (DrawlClause *self)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();

  self->entry = gtk_entry_new ();
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->entry), _ ("What happens"));
  gtk_text_set_propagate_text_width (
      GTK_TEXT (gtk_editable_get_delegate (GTK_EDITABLE (self->entry))), TRUE);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->entry), LONGEST);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("What happens"), -1);
  gtk_widget_set_parent (self->entry, GTK_WIDGET (self));
  self->edit = drawl_edit_new (GTK_EDITABLE (self->entry));

  g_signal_connect_swapped (focus, "enter", G_CALLBACK (on_enter), self);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (on_leave), self);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
}

GtkWidget *
drawl_clause_new (void)
{
  return g_object_new (DRAWL_TYPE_CLAUSE, NULL);
}

DrawlEdit *
drawl_clause_get_edit (DrawlClause *clause)
{
  return clause->edit;
}
