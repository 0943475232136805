/* SPDX-License-Identifier: GPL-3.0-or-later */

/* One change to many shots. Invariant: each of the shots is either among those that take it, with
 * fields that a plan can hold, or among the refusals. */

#include "app/bulk-edit.h"

#include "core/text.h"
#include "plan/figure.h"

#define LINES_MAX 8

static void
refusal_free (gpointer data)
{
  DrawlBulkRefusal *refusal = data;

  g_object_unref (refusal->shot);
  g_free (refusal->reason);
  g_free (refusal);
}

static void
try_shot (DrawlBulkEdit *edit, DrawlPlan *plan, DrawlShot *shot, const char *text)
{
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_copy (drawl_shot_get_fields (shot));
  g_autoptr (GError) error = NULL;

  if (drawl_bulk_fields[edit->field].take (fields, plan, text, &error) &&
      drawl_shot_fields_check (fields, &error)) {
    g_ptr_array_add (edit->shots, g_object_ref (shot));
    g_ptr_array_add (edit->fields, g_steal_pointer (&fields));
    return;
  }
  DrawlBulkRefusal *refusal = g_new (DrawlBulkRefusal, 1);
  refusal->shot = g_object_ref (shot);
  refusal->reason = g_strdup (error->message);
  g_ptr_array_add (edit->refusals, refusal);
}

DrawlBulkEdit *
drawl_bulk_edit_new (DrawlPlan *plan, const GPtrArray *shots, DrawlBulkFieldId field,
                     const char *text)
{
  DrawlBulkEdit *edit = g_new0 (DrawlBulkEdit, 1);

  edit->field = field;
  edit->shots = g_ptr_array_new_with_free_func (g_object_unref);
  edit->fields = g_ptr_array_new_with_free_func ((GDestroyNotify)drawl_shot_fields_free);
  edit->refusals = g_ptr_array_new_with_free_func (refusal_free);
  for (guint i = 0; i < shots->len; i++)
    if (drawl_plan_find_shot (plan, drawl_shot_get_slate (shots->pdata[i])) == shots->pdata[i])
      try_shot (edit, plan, shots->pdata[i], text);
  return edit;
}

void
drawl_bulk_edit_free (DrawlBulkEdit *edit)
{
  if (edit == NULL)
    return;
  g_ptr_array_unref (edit->shots);
  g_ptr_array_unref (edit->fields);
  g_ptr_array_unref (edit->refusals);
  g_free (edit);
}

const char *
drawl_bulk_edit_common_reason (const DrawlBulkEdit *edit)
{
  const char *reason = NULL;

  if (edit->shots->len > 0)
    return NULL;
  for (guint i = 0; i < edit->refusals->len; i++) {
    const DrawlBulkRefusal *refusal = edit->refusals->pdata[i];
    if (reason != NULL && !g_str_equal (reason, refusal->reason))
      return NULL;
    reason = refusal->reason;
  }
  return reason;
}

char *
drawl_bulk_edit_refusals_text (const DrawlBulkEdit *edit)
{
  guint shown = MIN (edit->refusals->len, LINES_MAX), more = edit->refusals->len - shown;
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < shown; i++) {
    const DrawlBulkRefusal *refusal = edit->refusals->pdata[i];
    g_string_append_printf (text, "%s%s: %s.", i > 0 ? "\n" : "",
                            drawl_shot_get_slate (refusal->shot), refusal->reason);
  }
  if (more > 0) {
    g_autofree char *count = drawl_figure_count (more);
    /* Translators: at the end of a list of shots. */
    g_autofree char *line =
        g_strdup_printf (ngettext_ ("And %s more.", "And %s more.", more), count);
    g_string_append_printf (text, "\n%s", line);
  }
  return g_string_free (text, FALSE);
}

gboolean
drawl_bulk_edit_apply (const DrawlBulkEdit *edit, DrawlPlan *plan, GError **error)
{
  g_autofree char *count = drawl_figure_count (edit->shots->len);
  g_auto (GStrv) parts =
      g_strsplit (drawl_bulk_fields[edit->field].label (edit->shots->len), "%s", 2);
  g_autofree char *label = g_strjoinv (count, parts);

  return drawl_plan_set_all (plan, edit->shots, edit->fields, label, error);
}
