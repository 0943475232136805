/* SPDX-License-Identifier: GPL-3.0-or-later */

/* `drawl-cli check`: the verdict on every shot of a plan, with its reasons, the licences that would
 * open it, and what it falls back to without. Words only; verdicts.c prints them. */

#include "cli/call.h"
#include "cli/error.h"
#include "cli/file-argument.h"
#include "cli/plan-argument.h"
#include "cli/verdicts.h"
#include "core/error.h"
#include "core/text.h"
#include "plan/body-file.h"

enum { BODY, TIER, N_OPTIONS };

static const DrawlOption options[N_OPTIONS] = {
    [BODY] = {"body", 0, "FILE", N_ ("Check against this body profile in place of the plan's")},
    [TIER] = {"tier", 0, "ID,ID", N_ ("Check with these licences; empty: as hired without any")},
};

/* ---- --body ---- */

static void
replace_body (DrawlHiredFields *fields, DrawlBody *body)
{
  g_auto (GStrv) held = drawl_body_tier_ids (fields->body, fields->tier);

  fields->tier = 0;
  for (guint i = 0; held[i] != NULL; i++) {
    int licence = drawl_body_licence_index (body, held[i]);
    if (licence >= 0)
      fields->tier |= DRAWL_TIER_BIT (licence);
  }
  if (fields->card >= 0)
    fields->card = drawl_body_card_index (body, fields->body->cards[fields->card].id);
  drawl_body_unref (fields->body);
  fields->body = drawl_body_ref (body);
}

/* ---- --tier ---- */

/* The ids between commas, without spaces and empty ones. */
static GStrv
split_ids (const char *list)
{
  GStrv ids = g_strsplit (list, ",", -1);
  guint n_ids = 0;

  for (guint i = 0; ids[i] != NULL; i++) {
    char *id = ids[i];
    ids[i] = NULL;
    if (*g_strstrip (id) != '\0')
      ids[n_ids++] = id;
    else
      g_free (id);
  }
  return ids;
}

/* Holds those of @ids that the body has; marks them in @known. */
static void
set_tier (DrawlHiredFields *fields, const char *const *ids, gboolean *known)
{
  fields->tier = 0;
  for (guint i = 0; ids[i] != NULL; i++) {
    int licence = drawl_body_licence_index (fields->body, ids[i]);
    if (licence < 0)
      continue;
    fields->tier |= DRAWL_TIER_BIT (licence);
    known[i] = TRUE;
  }
}

static gboolean
refuse_licence (const DrawlCall *call, DrawlPlan *plan, const char *id, GError **error)
{
  g_autofree char *quoted = drawl_core_quote (id);
  g_autoptr (GString) ids = g_string_new (NULL);
  g_autofree char *message = NULL;
  GListModel *bodies = drawl_plan_get_bodies (plan);

  for (guint i = 0; i < g_list_model_get_n_items (bodies); i++) {
    g_autoptr (DrawlHiredBody) hired = g_list_model_get_item (bodies, i);
    const DrawlBody *body = drawl_hired_body_get_body (hired);
    for (guint j = 0; j < body->n_licences; j++)
      g_string_append_printf (ids, "%s%s", ids->len > 0 ? ", " : "", body->licences[j].id);
  }
  message =
      ids->len > 0
          ? g_strdup_printf (_ ("no body has a licence “%s”; some of %s are expected"), quoted,
                             ids->str)
          : g_strdup_printf (_ ("no body has a licence “%s”, or any; none is expected"), quoted);
  return drawl_call_refuse (call, TIER, message, error);
}

/* ---- Both, for each hired body ---- */

static gboolean
hire (DrawlPlan *plan, DrawlHiredBody *hired, DrawlBody *body, const char *const *ids,
      gboolean *known, GError **error)
{
  g_autoptr (DrawlHiredFields) fields =
      drawl_hired_fields_copy (drawl_hired_body_get_fields (hired));

  if (body != NULL)
    replace_body (fields, body);
  if (ids != NULL)
    set_tier (fields, ids, known);
  return drawl_plan_set_body (plan, hired, fields, "", error);
}

static gboolean
hire_all (const DrawlCall *call, DrawlPlan *plan, DrawlBody *body, GError **error)
{
  const char *tier = call->values[TIER];
  g_auto (GStrv) ids = tier != NULL ? split_ids (tier) : NULL;
  guint n_ids = ids != NULL ? g_strv_length (ids) : 0;
  g_autofree gboolean *known = g_new0 (gboolean, n_ids + 1);
  GListModel *bodies = drawl_plan_get_bodies (plan);

  for (guint i = 0; i < g_list_model_get_n_items (bodies); i++) {
    g_autoptr (DrawlHiredBody) hired = g_list_model_get_item (bodies, i);
    if (!hire (plan, hired, body, (const char *const *)ids, known, error))
      return FALSE;
  }
  for (guint i = 0; i < n_ids; i++)
    if (!known[i])
      return refuse_licence (call, plan, ids[i], error);
  return TRUE;
}

static DrawlBody *
load_body (const DrawlCall *call, GError **error)
{
  const char *path;

  if (!drawl_file_argument_input (call, BODY, &path, error))
    return NULL;
  g_autoptr (GFile) file = drawl_file_argument (path);
  GError *reason = NULL;
  DrawlBody *body = drawl_body_load (file, &reason);

  if (body == NULL)
    drawl_cli_refuse_file (error, reason);
  return body;
}

static gboolean
run_check (const DrawlCall *call, DrawlOutput *output, GError **error)
{
  g_autoptr (DrawlPlan) plan = drawl_plan_argument_load (call, error);
  g_autoptr (DrawlBody) body = NULL;

  if (plan == NULL)
    return FALSE;
  if (call->values[BODY] != NULL && (body = load_body (call, error)) == NULL)
    return FALSE;
  if ((body != NULL || call->values[TIER] != NULL) && !hire_all (call, plan, body, error))
    return FALSE;

  drawl_verdicts_print (plan, output);
  return TRUE;
}

const DrawlCommand drawl_command_check = {
    .name = "check",
    .summary = N_ ("Which shots can be done as hired, and what the others need"),
    .help = N_ (
        "Reads a plan and says for each shot: as hired, needs a licence, or not on this body;\n"
        "every reason; the cheapest set of licences that would open it, price a day; and what\n"
        "it falls back to without. The exit status is 1 when some shot is not as hired.\n"
        "\n"
        "--body and --tier ask the same of another profile or of other licences: sizes, codecs,\n"
        "cards and licences are matched by their ids. They change nothing in the file.\n"
        "\n"
        "Example: the same list with two licences more\n"
        "  drawl-cli check glass.drawl --tier rate,size"),
    .file = "PLAN",
    .options = options,
    .n_options = N_OPTIONS,
    .run = run_check,
};
