/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A page of a sheet on screen. Invariant: the page that is shown is one of the sheet's; its words
 * are the widget's name for those who cannot see it. */

#include "app/sheet-view.h"

#define MARGIN 12.0 /* pixels around the page */
#define LEAST 160   /* pixels, either way */

struct _DrawlSheetView {
  GtkWidget parent_instance;
  DrawlSheet *sheet;
  guint page;
};

enum { PROP_PAGE = 1, N_PROPS };

static GParamSpec *props[N_PROPS];

G_DEFINE_FINAL_TYPE (DrawlSheetView, drawl_sheet_view, GTK_TYPE_WIDGET)

static void
draw_page (DrawlSheetView *self, GtkSnapshot *snapshot, const graphene_rect_t *at, double scale)
{
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, at);

  cairo_translate (cr, (double)at->origin.x, (double)at->origin.y);
  cairo_scale (cr, scale, scale);
  drawl_sheet_draw_page (self->sheet, cr, self->page);
  cairo_destroy (cr);
}

static void
drawl_sheet_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  static const GdkRGBA paper = {1, 1, 1, 1}, edge = {0, 0, 0, 0.35f};
  static const float thin[4] = {1, 1, 1, 1};
  DrawlSheetView *self = DRAWL_SHEET_VIEW (widget);
  double width, height;

  if (self->sheet == NULL)
    return;
  drawl_sheet_page_size (self->sheet, &width, &height);
  double room_x = gtk_widget_get_width (widget) - 2 * MARGIN;
  double room_y = gtk_widget_get_height (widget) - 2 * MARGIN;
  double scale = MIN (room_x / width, room_y / height);
  graphene_rect_t at;
  graphene_rect_init (&at, (float)(MARGIN + (room_x - width * scale) / 2),
                      (float)(MARGIN + (room_y - height * scale) / 2), (float)(width * scale),
                      (float)(height * scale));
  GskRoundedRect outline;
  gsk_rounded_rect_init_from_rect (&outline, &at, 0);
  gtk_snapshot_append_outset_shadow (snapshot, &outline, &edge, 0, 1, 0, 4);
  gtk_snapshot_append_color (snapshot, &paper, &at);
  draw_page (self, snapshot, &at, scale);
  gtk_snapshot_append_border (snapshot, &outline, thin, (GdkRGBA[4]){edge, edge, edge, edge});
}

static void
drawl_sheet_view_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                          int *natural, int *minimum_baseline, int *natural_baseline)
{
  *minimum = LEAST;
  *natural = 2 * LEAST;
}

static void
show (DrawlSheetView *self)
{
  g_autofree char *words =
      self->sheet != NULL ? drawl_sheet_page_words (self->sheet, self->page) : g_strdup ("");

  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_PAGE]);
}

void
drawl_sheet_view_set_sheet (DrawlSheetView *view, DrawlSheet *sheet)
{
  g_clear_pointer (&view->sheet, drawl_sheet_free);
  view->sheet = sheet;
  view->page = MIN (view->page, drawl_sheet_n_pages (sheet) - 1);
  show (view);
}

DrawlSheet *
drawl_sheet_view_get_sheet (DrawlSheetView *view)
{
  return view->sheet;
}

void
drawl_sheet_view_set_page (DrawlSheetView *view, int page)
{
  if (view->sheet == NULL)
    return;
  guint wanted = (guint)CLAMP (page, 0, (int)drawl_sheet_n_pages (view->sheet) - 1);
  if (wanted == view->page)
    return;
  view->page = wanted;
  show (view);
}

guint
drawl_sheet_view_get_page (DrawlSheetView *view)
{
  return view->page;
}

static void
drawl_sheet_view_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  g_value_set_uint (value, DRAWL_SHEET_VIEW (object)->page);
}

static void
drawl_sheet_view_finalize (GObject *object)
{
  g_clear_pointer (&DRAWL_SHEET_VIEW (object)->sheet, drawl_sheet_free);
  G_OBJECT_CLASS (drawl_sheet_view_parent_class)->finalize (object);
}

static void
drawl_sheet_view_class_init (DrawlSheetViewClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = drawl_sheet_view_get_property;
  object_class->finalize = drawl_sheet_view_finalize;
  widget_class->snapshot = drawl_sheet_view_snapshot;
  widget_class->measure = drawl_sheet_view_measure;
  props[PROP_PAGE] =
      g_param_spec_uint ("page", NULL, NULL, 0, G_MAXUINT, 0,
                         G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  g_object_class_install_properties (object_class, N_PROPS, props);
  gtk_widget_class_set_css_name (widget_class, "sheetview");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
drawl_sheet_view_init (DrawlSheetView *self)
{
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
}

GtkWidget *
drawl_sheet_view_new (void)
{
  return g_object_new (DRAWL_TYPE_SHEET_VIEW, NULL);
}
