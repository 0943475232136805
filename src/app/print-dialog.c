/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The sheet before it is printed. Invariant: what the view shows is what is printed; it is laid out
 * anew when another sheet or paper is chosen, and only the page in sight is drawn. */

#include "app/print-dialog.h"

#include "app/focus.h"
#include "app/message.h"
#include "app/sheet-choice.h"
#include "app/sheet-view.h"
#include "core/text.h"

struct _DrawlPrintDialog {
  AdwWindow parent_instance;
  DrawlPlan *plan;
  GtkWidget *kind_list, *paper_list, *view, *page_label, *previous_button, *next_button;
};

G_DEFINE_FINAL_TYPE (DrawlPrintDialog, drawl_print_dialog, ADW_TYPE_WINDOW)

/* ---- Pages ---- */

static guint
n_pages (DrawlPrintDialog *self)
{
  DrawlSheet *sheet = drawl_sheet_view_get_sheet (DRAWL_SHEET_VIEW (self->view));

  return sheet != NULL ? drawl_sheet_n_pages (sheet) : 0;
}

static int
page_of (DrawlPrintDialog *self)
{
  return (int)drawl_sheet_view_get_page (DRAWL_SHEET_VIEW (self->view));
}

static void
go_to (DrawlPrintDialog *self, int page)
{
  drawl_sheet_view_set_page (DRAWL_SHEET_VIEW (self->view), page);
}

static void
on_previous (DrawlPrintDialog *self)
{
  go_to (self, page_of (self) - 1);
}

static void
on_next (DrawlPrintDialog *self)
{
  go_to (self, page_of (self) + 1);
}

static void
refresh_page (DrawlPrintDialog *self)
{
  int page = page_of (self), all = (int)n_pages (self);
  g_autofree char *text = g_strdup_printf (_ ("Page %d of %d"), page + 1, all);

  gtk_label_set_text (GTK_LABEL (self->page_label), text);
  gtk_widget_set_sensitive (self->previous_button, page > 0);
  gtk_widget_set_sensitive (self->next_button, page + 1 < all);
}

static void
lay_out (DrawlPrintDialog *self)
{
  if (self->plan == NULL)
    return;
  drawl_sheet_view_set_sheet (
      DRAWL_SHEET_VIEW (self->view),
      drawl_sheet_choice_make (self->plan,
                               gtk_drop_down_get_selected (GTK_DROP_DOWN (self->kind_list)),
                               gtk_drop_down_get_selected (GTK_DROP_DOWN (self->paper_list))));
}

static gboolean
turn_page (GtkWidget *widget, GVariant *args, gpointer data)
{
  DrawlPrintDialog *self = DRAWL_PRINT_DIALOG (widget);
  int step = g_variant_get_int32 (args);

  /* As far as it goes, either way. */
  go_to (self, ABS (step) > 1 ? (step < 0 ? 0 : (int)n_pages (self) - 1) : page_of (self) + step);
  return TRUE;
}

/* ---- Printing ---- */

const DrawlSheet *
drawl_print_dialog_get_sheet (DrawlPrintDialog *dialog)
{
  return drawl_sheet_view_get_sheet (DRAWL_SHEET_VIEW (dialog->view));
}

/* On another paper than it was made for the page is made smaller or larger as a whole. */
static void
on_draw_page (GtkPrintOperation *operation, GtkPrintContext *context, int page,
              DrawlPrintDialog *self)
{
  const DrawlSheet *sheet = drawl_print_dialog_get_sheet (self);
  cairo_t *cr = gtk_print_context_get_cairo_context (context);
  double width, height;

  drawl_sheet_page_size (sheet, &width, &height);
  double scale = MIN (gtk_print_context_get_width (context) / width,
                      gtk_print_context_get_height (context) / height);
  if (ABS (scale - 1) > 0.01)
    cairo_scale (cr, scale, scale);
  drawl_sheet_draw_page (sheet, cr, (guint)page);
}

GtkPrintOperation *
drawl_print_dialog_operation (DrawlPrintDialog *dialog)
{
  const DrawlSheet *sheet = drawl_print_dialog_get_sheet (dialog);
  GtkPrintOperation *operation = gtk_print_operation_new ();
  g_autoptr (GtkPageSetup) setup = drawl_sheet_choice_page_setup (
      gtk_drop_down_get_selected (GTK_DROP_DOWN (dialog->paper_list)), sheet);

  gtk_print_operation_set_job_name (operation, drawl_sheet_get_title (sheet));
  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_n_pages (operation, (int)drawl_sheet_n_pages (sheet));
  g_signal_connect_object (operation, "draw-page", G_CALLBACK (on_draw_page), dialog, 0);
  return operation;
}

static void
on_print (DrawlPrintDialog *self)
{
  g_autoptr (GtkPrintOperation) operation = drawl_print_dialog_operation (self);
  g_autoptr (GError) error = NULL;
  GtkPrintOperationResult result = gtk_print_operation_run (
      operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG, GTK_WINDOW (self), &error);

  if (result == GTK_PRINT_OPERATION_RESULT_ERROR)
    drawl_message_show (GTK_WINDOW (self), _ ("The Sheet Could Not Be Printed"), error);
  else if (result == GTK_PRINT_OPERATION_RESULT_APPLY)
    gtk_window_close (GTK_WINDOW (self));
}

/* ---- The type ---- */

static void
drawl_print_dialog_dispose (GObject *object)
{
  DrawlPrintDialog *self = DRAWL_PRINT_DIALOG (object);

  g_clear_object (&self->plan);
  gtk_widget_dispose_template (GTK_WIDGET (self), DRAWL_TYPE_PRINT_DIALOG);
  G_OBJECT_CLASS (drawl_print_dialog_parent_class)->dispose (object);
}

static void
add_keys (GtkWidgetClass *widget_class)
{
  static const struct {
    guint key;
    int step;
  } keys[] = {
      {GDK_KEY_Page_Up, -1},
      {GDK_KEY_Page_Down, 1},
      {GDK_KEY_Home, -2},
      {GDK_KEY_End, 2},
  };

  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    gtk_widget_class_add_binding (widget_class, keys[i].key, 0, turn_page, "i", keys[i].step);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
drawl_print_dialog_class_init (DrawlPrintDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = drawl_print_dialog_dispose;
  g_type_ensure (DRAWL_TYPE_SHEET_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/drawl/Drawl/ui/print-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, DrawlPrintDialog, kind_list);
  gtk_widget_class_bind_template_child (widget_class, DrawlPrintDialog, paper_list);
  gtk_widget_class_bind_template_child (widget_class, DrawlPrintDialog, view);
  gtk_widget_class_bind_template_child (widget_class, DrawlPrintDialog, page_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlPrintDialog, previous_button);
  gtk_widget_class_bind_template_child (widget_class, DrawlPrintDialog, next_button);
  gtk_widget_class_bind_template_callback (widget_class, lay_out);
  gtk_widget_class_bind_template_callback (widget_class, refresh_page);
  gtk_widget_class_bind_template_callback (widget_class, on_previous);
  gtk_widget_class_bind_template_callback (widget_class, on_next);
  gtk_widget_class_bind_template_callback (widget_class, on_print);
  add_keys (widget_class);
}

static void
drawl_print_dialog_init (DrawlPrintDialog *self)
{
  g_autoptr (GListModel) kinds = drawl_sheet_choice_kinds ();
  g_autoptr (GListModel) papers = drawl_sheet_choice_papers ();

  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_swapped (self, "map", G_CALLBACK (drawl_focus_when_ready), self->kind_list);
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->kind_list), kinds);
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->paper_list), papers);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->paper_list), drawl_sheet_choice_usual_paper ());
}

DrawlPrintDialog *
drawl_print_dialog_new (GtkWindow *parent, DrawlPlan *plan)
{
  DrawlPrintDialog *self = g_object_new (DRAWL_TYPE_PRINT_DIALOG, "transient-for", parent, NULL);

  self->plan = g_object_ref (plan);
  lay_out (self);
  return self;
}
