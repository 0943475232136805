/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The table of limits. Invariant: `sizes` and `lines` are the rows of the group, made anew for
 * another body only; a tier changes marks and words. */

#include "app/body-limits.h"

#include <adwaita.h>

#include "app/verdict-mark.h"
#include "core/text.h"
#include "plan/figure.h"

/* A row of the table, or the heading row of a size. */
typedef struct {
  GtkWidget *row;
  GtkWidget *mark;
  guint index; /* of the limit, or of the size */
} Line;

struct _DrawlBodyLimits {
  GtkWidget parent_instance;
  DrawlBody *body;
  DrawlTier tier;
  GArray *sizes; /* of Line */
  GArray *lines; /* of Line */
  GtkWidget *group;
};

G_DEFINE_FINAL_TYPE (DrawlBodyLimits, drawl_body_limits, GTK_TYPE_WIDGET)

static gboolean
is_open (DrawlBodyLimits *self, const DrawlBodyLimit *limit)
{
  DrawlTier held = drawl_tier_effective (self->body->licences, self->body->n_licences, self->tier);

  return (limit->licences & ~held) == 0;
}

/* The highest rates of a size: as hired, and whatever is licensed. A rate of 0/1: none. */
static void
highest_of (DrawlBodyLimits *self, guint size, DrawlRate *hired, DrawlRate *any)
{
  *hired = *any = drawl_rational_whole (0);
  for (guint i = 0; i < self->body->n_limits; i++) {
    const DrawlBodyLimit *limit = &self->body->limits[i];
    if (limit->size != size)
      continue;
    if (drawl_rational_compare (limit->highest, *any) > 0)
      *any = limit->highest;
    if (is_open (self, limit) && drawl_rational_compare (limit->highest, *hired) > 0)
      *hired = limit->highest;
  }
}

static char *
size_text (DrawlRate hired, DrawlRate any)
{
  g_autofree char *hired_text = drawl_figure_rate (hired);
  g_autofree char *any_text = drawl_figure_rate (any);

  if (hired.num == 0)
    return g_strdup_printf (_ ("Up to %s with a licence"), any_text);
  if (drawl_rational_compare (hired, any) < 0)
    return g_strdup_printf (_ ("Up to %s as hired, %s with a licence"), hired_text, any_text);
  return g_strdup_printf (_ ("Up to %s as hired"), hired_text);
}

static void
set_mark (GtkWidget *mark, gboolean open)
{
  drawl_verdict_mark_set_verdict (DRAWL_VERDICT_MARK (mark),
                                  open ? DRAWL_VERDICT_AS_HIRED : DRAWL_VERDICT_NEEDS_LICENCE);
}

static void
refresh (DrawlBodyLimits *self)
{
  for (guint i = 0; i < self->sizes->len; i++) {
    const Line *line = &g_array_index (self->sizes, Line, i);
    DrawlRate hired, any;
    highest_of (self, line->index, &hired, &any);
    g_autofree char *text = size_text (hired, any);
    adw_expander_row_set_subtitle (ADW_EXPANDER_ROW (line->row), text);
    set_mark (line->mark, hired.num != 0);
  }
  for (guint i = 0; i < self->lines->len; i++) {
    const Line *line = &g_array_index (self->lines, Line, i);
    set_mark (line->mark, is_open (self, &self->body->limits[line->index]));
  }
}

static char *
limit_title (const DrawlBody *body, const DrawlBodyLimit *limit)
{
  g_autofree char *lowest = drawl_figure_rate_number (limit->lowest);
  g_autofree char *highest = drawl_figure_rate (limit->highest);
  /* Translators: a span of rates, "1–120 fps". */
  g_autofree char *rates = g_strdup_printf (_ ("%s–%s"), lowest, highest);

  if (limit->codec == DRAWL_BODY_NO_CODEC)
    return g_steal_pointer (&rates);
  return g_strdup_printf (_ ("%s, %s"), body->codecs[limit->codec].name, rates);
}

/* Licences and cards; nothing when neither is asked for. */
static char *
limit_subtitle (const DrawlBody *body, const DrawlBodyLimit *limit)
{
  g_autofree char *licences =
      limit->licences != 0 ? drawl_body_tier_names (body, limit->licences) : NULL;
  g_autofree char *card = NULL;

  if (limit->card_class != NULL)
    card = g_strdup_printf (_ ("Cards of class %s or faster"), limit->card_class->id);
  else if (limit->card_bytes_s > 0) {
    g_autofree char *speed = drawl_figure_bytes_rate (drawl_rational_whole (limit->card_bytes_s));
    card = g_strdup_printf (_ ("Cards of %s or faster"), speed);
  }
  if (licences != NULL && card != NULL)
    return g_strdup_printf ("%s\n%s", licences, card);
  return g_strdup (licences != NULL ? licences : card != NULL ? card : "");
}

static GtkWidget *
new_mark (void)
{
  return g_object_new (DRAWL_TYPE_VERDICT_MARK, "valign", GTK_ALIGN_CENTER, NULL);
}

static void
add_limit (DrawlBodyLimits *self, GtkWidget *size_row, guint index)
{
  const DrawlBodyLimit *limit = &self->body->limits[index];
  g_autofree char *title = limit_title (self->body, limit);
  g_autofree char *subtitle = limit_subtitle (self->body, limit);
  Line line = {adw_action_row_new (), new_mark (), index};

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (line.row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (line.row), title);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (line.row), subtitle);
  adw_action_row_set_title_lines (ADW_ACTION_ROW (line.row), 0);
  adw_action_row_set_subtitle_lines (ADW_ACTION_ROW (line.row), 0);
  adw_action_row_add_suffix (ADW_ACTION_ROW (line.row), line.mark);
  gtk_widget_add_css_class (line.row, "figure");
  adw_expander_row_add_row (ADW_EXPANDER_ROW (size_row), line.row);
  g_array_append_val (self->lines, line);
}

static void
add_size (DrawlBodyLimits *self, guint size)
{
  Line line = {adw_expander_row_new (), new_mark (), size};
  gboolean any = FALSE;

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (line.row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (line.row), self->body->sizes[size].name);
  adw_expander_row_add_action (ADW_EXPANDER_ROW (line.row), line.mark);
  gtk_widget_add_css_class (line.row, "figure");
  for (guint i = 0; i < self->body->n_limits; i++)
    if (self->body->limits[i].size == size) {
      add_limit (self, line.row, i);
      any = TRUE;
    }
  gtk_widget_set_visible (line.row, any);
  adw_preferences_group_add (ADW_PREFERENCES_GROUP (self->group), line.row);
  g_array_append_val (self->sizes, line);
}

void
drawl_body_limits_set_body (DrawlBodyLimits *limits, DrawlBody *body)
{
  if (body == limits->body)
    return;
  for (guint i = 0; i < limits->sizes->len; i++)
    adw_preferences_group_remove (ADW_PREFERENCES_GROUP (limits->group),
                                  g_array_index (limits->sizes, Line, i).row);
  g_array_set_size (limits->sizes, 0);
  g_array_set_size (limits->lines, 0);
  g_clear_pointer (&limits->body, drawl_body_unref);
  limits->tier = 0;
  if (body == NULL)
    return;
  limits->body = drawl_body_ref (body);
  for (guint i = 0; i < body->n_sizes; i++)
    add_size (limits, i);
  refresh (limits);
}

void
drawl_body_limits_set_tier (DrawlBodyLimits *limits, DrawlTier tier)
{
  if (tier == limits->tier)
    return;
  limits->tier = tier;
  refresh (limits);
}

static void
drawl_body_limits_dispose (GObject *object)
{
  DrawlBodyLimits *self = DRAWL_BODY_LIMITS (object);

  g_array_set_size (self->sizes, 0);
  g_array_set_size (self->lines, 0);
  gtk_widget_dispose_template (GTK_WIDGET (self), DRAWL_TYPE_BODY_LIMITS);
  G_OBJECT_CLASS (drawl_body_limits_parent_class)->dispose (object);
}

static void
drawl_body_limits_finalize (GObject *object)
{
  DrawlBodyLimits *self = DRAWL_BODY_LIMITS (object);

  g_array_unref (self->sizes);
  g_array_unref (self->lines);
  g_clear_pointer (&self->body, drawl_body_unref);
  G_OBJECT_CLASS (drawl_body_limits_parent_class)->finalize (object);
}

static void
drawl_body_limits_class_init (DrawlBodyLimitsClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = drawl_body_limits_dispose;
  object_class->finalize = drawl_body_limits_finalize;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/drawl/Drawl/ui/body-limits.ui");
  gtk_widget_class_bind_template_child (widget_class, DrawlBodyLimits, group);
}

static void
drawl_body_limits_init (DrawlBodyLimits *self)
{
  self->sizes = g_array_new (FALSE, FALSE, sizeof (Line));
  self->lines = g_array_new (FALSE, FALSE, sizeof (Line));
  gtk_widget_init_template (GTK_WIDGET (self));
}
