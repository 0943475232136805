/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Title and switcher of the header bar. It asks for all the width there is, so that the title
 * stands next to the buttons before it, and shows the switcher when both fit, in the middle if that
 * leaves the title whole. Pixels. */

#include "app/header-title.h"

#include "app/tooltip.h"

#define GAP 18      /* between title and switcher */
#define ALL 4096    /* wider than any header bar leaves room for */
#define TITLE_MAX 3 /* the title has at most one part in so many while there is a switcher */

enum { PROP_NARROW = 1, N_PROPS };

static GParamSpec *props[N_PROPS];

struct _DrawlHeaderTitle {
  GtkWidget parent_instance;
  gboolean narrow;
  GtkWidget *title_box, *title_label, *subtitle_label, *switcher;
};

G_DEFINE_FINAL_TYPE (DrawlHeaderTitle, drawl_header_title, GTK_TYPE_WIDGET)

static GtkSizeRequestMode
drawl_header_title_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_CONSTANT_SIZE;
}

static void
drawl_header_title_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                            int *minimum, int *natural, int *minimum_baseline,
                            int *natural_baseline)
{
  DrawlHeaderTitle *self = DRAWL_HEADER_TITLE (widget);
  int title_min, title_nat, switcher_min = 0, switcher_nat = 0;

  gtk_widget_measure (self->title_box, orientation, -1, &title_min, &title_nat, NULL, NULL);
  if (gtk_widget_get_visible (self->switcher))
    gtk_widget_measure (self->switcher, orientation, -1, &switcher_min, &switcher_nat, NULL, NULL);
  if (orientation == GTK_ORIENTATION_HORIZONTAL) {
    *minimum = title_min;
    *natural = ALL;
  } else {
    *minimum = MAX (title_min, switcher_min);
    *natural = MAX (title_nat, switcher_nat);
  }
}

static void
place (DrawlHeaderTitle *self, GtkWidget *child, int x, int child_width, int width, int height)
{
  gboolean mirrored = gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL;
  GtkAllocation at = {mirrored ? width - x - child_width : x, 0, child_width, height};

  gtk_widget_size_allocate (child, &at, -1);
}

static void
set_narrow (DrawlHeaderTitle *self, gboolean narrow)
{
  gtk_widget_set_child_visible (self->switcher, !narrow);
  if (narrow == self->narrow)
    return;
  self->narrow = narrow;
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_NARROW]);
}

static void
drawl_header_title_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  DrawlHeaderTitle *self = DRAWL_HEADER_TITLE (widget);
  int title_min, title_nat, switcher = 0;
  gboolean wanted = gtk_widget_get_visible (self->switcher);

  gtk_widget_measure (self->title_box, GTK_ORIENTATION_HORIZONTAL, -1, &title_min, &title_nat, NULL,
                      NULL);
  if (wanted)
    gtk_widget_measure (self->switcher, GTK_ORIENTATION_HORIZONTAL, -1, NULL, &switcher, NULL,
                        NULL);
  int room = MAX (title_min, MIN (title_nat, width / TITLE_MAX));
  gboolean narrow = wanted && room + GAP + switcher > width;
  set_narrow (self, narrow);
  if (!wanted || narrow) {
    place (self, self->title_box, 0, CLAMP (title_nat, title_min, MAX (width, title_min)), width,
           height);
    return;
  }
  place (self, self->title_box, 0, room, width, height);
  place (self, self->switcher, MAX (room + GAP, (width - switcher) / 2), switcher, width, height);
}

static void
drawl_header_title_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  if (prop_id == PROP_NARROW)
    g_value_set_boolean (value, DRAWL_HEADER_TITLE (object)->narrow);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
}

static void
drawl_header_title_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), DRAWL_TYPE_HEADER_TITLE);
  G_OBJECT_CLASS (drawl_header_title_parent_class)->dispose (object);
}

static void
drawl_header_title_class_init (DrawlHeaderTitleClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = drawl_header_title_get_property;
  object_class->dispose = drawl_header_title_dispose;
  widget_class->get_request_mode = drawl_header_title_get_request_mode;
  widget_class->measure = drawl_header_title_measure;
  widget_class->size_allocate = drawl_header_title_size_allocate;

  props[PROP_NARROW] =
      g_param_spec_boolean ("narrow", NULL, NULL, FALSE, G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);

  gtk_widget_class_set_template_from_resource (widget_class, "/org/drawl/Drawl/ui/header-title.ui");
  gtk_widget_class_bind_template_child (widget_class, DrawlHeaderTitle, title_box);
  gtk_widget_class_bind_template_child (widget_class, DrawlHeaderTitle, title_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlHeaderTitle, subtitle_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlHeaderTitle, switcher);
}

static void
drawl_header_title_init (DrawlHeaderTitle *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
drawl_header_title_set (DrawlHeaderTitle *title, const char *text, const char *subtitle,
                        const char *tooltip)
{
  gtk_label_set_text (GTK_LABEL (title->title_label), text);
  gtk_label_set_text (GTK_LABEL (title->subtitle_label), subtitle);
  gtk_widget_set_visible (title->subtitle_label, *subtitle != '\0');
  drawl_tooltip_set (title->title_label, tooltip);
}

void
drawl_header_title_set_stack (DrawlHeaderTitle *title, AdwViewStack *stack)
{
  adw_view_switcher_set_stack (ADW_VIEW_SWITCHER (title->switcher), stack);
  gtk_widget_set_visible (title->switcher, stack != NULL);
}

gboolean
drawl_header_title_get_narrow (DrawlHeaderTitle *title)
{
  return title->narrow;
}
