/* SPDX-License-Identifier: GPL-3.0-or-later */

/* `drawl-cli draw`: writes one picture of one shot to a file. */

#include "cli/call.h"
#include "cli/error.h"
#include "cli/file-argument.h"
#include "cli/plan-argument.h"
#include "core/error.h"
#include "core/text.h"
#include "draw/picture.h"

enum { SHOT, OUTPUT, PICTURE, DARK, N_OPTIONS };

static const DrawlOption options[N_OPTIONS] = {
    [SHOT] = {"shot", 0, "SLATE", N_ ("The shot, by its slate")},
    [OUTPUT] = {"output", 'o', "FILE", N_ ("Where to: a name that ends in .png, .svg or .pdf")},
    [PICTURE] = {"picture", 0, "P", N_ ("timeline (unless given) or cards")},
    [DARK] = {"dark", 0, NULL, N_ ("Light on dark")},
};

static const DrawlPicture *
read_picture (const DrawlCall *call, GError **error)
{
  const char *id = drawl_call_has (call, PICTURE) ? call->values[PICTURE] : "timeline";
  const DrawlPicture *picture = drawl_picture_find (id);

  if (picture != NULL)
    return picture;

  g_autofree char *quoted = drawl_core_quote (id);
  g_autoptr (GString) ids = g_string_new (NULL);
  guint n_pictures;
  const DrawlPicture *pictures = drawl_pictures (&n_pictures);
  for (guint i = 0; i < n_pictures; i++)
    g_string_append_printf (ids, "%s%s", i > 0 ? ", " : "", pictures[i].id);
  g_autofree char *message =
      g_strdup_printf (_ ("“%s” is no picture; one of %s is expected"), quoted, ids->str);
  drawl_call_refuse (call, PICTURE, message, error);
  return NULL;
}

static gboolean
save (const DrawlCall *call, const DrawlPicture *picture, DrawlPlan *plan, DrawlShot *shot,
      const char *path, GError **error)
{
  const DrawlStyle *style = drawl_call_has (call, DARK) ? &drawl_style_dark : &drawl_style_light;
  GError *reason = NULL;

  if (drawl_picture_save (picture, plan, shot, style, path, &reason))
    return TRUE;
  if (g_error_matches (reason, DRAWL_PICTURE_ERROR, DRAWL_PICTURE_ERROR_TYPE))
    return drawl_call_refuse_for (call, OUTPUT, reason, error);
  return drawl_cli_refuse_file (error, reason);
}

static gboolean
run_draw (const DrawlCall *call, DrawlOutput *output, GError **error)
{
  const char *path, *slate;
  const DrawlPicture *picture = read_picture (call, error);

  if (picture == NULL || !drawl_call_text (call, SHOT, &slate, error) ||
      !drawl_file_argument_output (call, OUTPUT, &path, error))
    return FALSE;

  g_autoptr (DrawlPlan) plan = drawl_plan_argument_load (call, error);
  if (plan == NULL)
    return FALSE;
  DrawlShot *shot = drawl_plan_argument_shot (call, plan, SHOT, error);
  if (shot == NULL || !save (call, picture, plan, shot, path, error))
    return FALSE;

  g_autofree char *shown = g_filename_display_name (path);
  g_autofree char *words = drawl_output_plain (picture->text (plan, shot));
  drawl_output_text (output, "file", _ ("file"), shown);
  drawl_output_text (output, "picture", _ ("picture"), picture->id);
  drawl_output_text (output, "slate", _ ("slate"), drawl_shot_get_slate (shot));
  drawl_output_text (output, "text", _ ("it shows"), words);
  return TRUE;
}

const DrawlCommand drawl_command_draw = {
    .name = "draw",
    .summary = N_ ("A picture of a shot, as PNG, SVG or PDF"),
    .help = N_ (
        "timeline draws real time above screen time, both on one scale of seconds, and the\n"
        "stretch between them. cards draws the cards (or magazines) of the shot's body, filled\n"
        "in the order of the list, with the shot marked. PNG is written at two pixels a point.\n"
        "\n"
        "Example:\n"
        "  drawl-cli draw glass.drawl --shot 1A --picture timeline -o 1A.svg"),
    .file = "PLAN",
    .options = options,
    .n_options = N_OPTIONS,
    .run = run_draw,
};
