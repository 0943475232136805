/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The picture of a body's limits in the window. Its height follows from its width: a row a size,
 * and as many rows of names as there are tiers. */

#include "app/limits-view.h"

#include <math.h>

#include "app/theme.h"
#include "core/text.h"
#include "draw/limits-picture.h"
#include "draw/text.h"

#define MIN_WIDTH 240

struct _DrawlLimitsView {
  GtkWidget parent_instance;
  DrawlLimitsData data;
};

G_DEFINE_FINAL_TYPE (DrawlLimitsView, drawl_limits_view, GTK_TYPE_WIDGET)

void
drawl_limits_view_set_body (DrawlLimitsView *view, DrawlBody *body)
{
  drawl_limits_data_clear (&view->data);
  gtk_widget_set_visible (GTK_WIDGET (view), body != NULL);
  if (body == NULL)
    return;
  drawl_limits_data_from_body (&view->data, body);
  g_autofree char *words = drawl_limits_text (&view->data);
  gtk_accessible_update_property (GTK_ACCESSIBLE (view), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words,
                                  -1);
  gtk_widget_queue_resize (GTK_WIDGET (view));
}

static void
drawl_limits_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  DrawlLimitsView *self = DRAWL_LIMITS_VIEW (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  DrawlStyle style;

  cairo_t *cr =
      gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height));
  drawl_theme_style (widget, &style);
  drawl_limits_draw (cr, &self->data, &style, width, height);
  cairo_destroy (cr);
}

static double
label_height (GtkWidget *widget)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A8, 1, 1);
  cairo_t *cr = cairo_create (surface);
  DrawlStyle style;

  drawl_theme_style (widget, &style);
  double height = drawl_text_height (cr, &style);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return height;
}

static GtkSizeRequestMode
drawl_limits_view_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
drawl_limits_view_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                           int *minimum, int *natural, int *minimum_baseline, int *natural_baseline)
{
  DrawlLimitsView *self = DRAWL_LIMITS_VIEW (widget);
  int width = for_size > 0 ? for_size : MIN_WIDTH;

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    *minimum = *natural = MIN_WIDTH;
  else
    *minimum = *natural =
        (int)ceil (drawl_limits_height (&self->data, width, label_height (widget)));
}

static void
drawl_limits_view_finalize (GObject *object)
{
  drawl_limits_data_clear (&DRAWL_LIMITS_VIEW (object)->data);
  G_OBJECT_CLASS (drawl_limits_view_parent_class)->finalize (object);
}

static void
drawl_limits_view_class_init (DrawlLimitsViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = drawl_limits_view_finalize;
  widget_class->snapshot = drawl_limits_view_snapshot;
  widget_class->measure = drawl_limits_view_measure;
  widget_class->get_request_mode = drawl_limits_view_get_request_mode;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
drawl_limits_view_init (DrawlLimitsView *self)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Rates at each size"), -1);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}
