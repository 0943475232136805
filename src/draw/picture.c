/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Pictures as files: the table of them, and the page that each is set on: slate and action above,
 * the picture, and below it the same in words. A file is made in memory, written aside and renamed.
 * Lengths in points. */

#include "draw/picture.h"

#include "core/text.h"
#include "draw/cardstrip.h"
#include "draw/picture-file.h"
#include "draw/text.h"
#include "draw/timeline.h"
#include "plan/json-file.h"

G_DEFINE_QUARK (drawl - picture - error - quark, drawl_picture_error)

#define TITLE_SIZE 15.0
#define TITLE_LINES 2
#define WORDS_LINES 5

/* ---- The table ---- */

static void
draw_timeline (cairo_t *cr, DrawlPlan *plan, DrawlShot *shot, const DrawlStyle *style, double width,
               double height)
{
  DrawlTimelineData data;

  drawl_timeline_data_from_shot (&data, shot);
  drawl_timeline_draw (cr, &data, style, width, height, DRAWL_TIMELINE_NOTHING, -1, NULL);
  drawl_timeline_data_clear (&data);
}

static char *
text_timeline (DrawlPlan *plan, DrawlShot *shot)
{
  DrawlTimelineData data;

  drawl_timeline_data_from_shot (&data, shot);
  char *text = drawl_timeline_text (&data);
  drawl_timeline_data_clear (&data);
  return text;
}

static void
draw_cards (cairo_t *cr, DrawlPlan *plan, DrawlShot *shot, const DrawlStyle *style, double width,
            double height)
{
  DrawlCardStripData data;

  drawl_cardstrip_data_from_plan (&data, plan, shot);
  drawl_cardstrip_draw (cr, &data, style, width, height);
  drawl_cardstrip_data_clear (&data);
}

static char *
text_cards (DrawlPlan *plan, DrawlShot *shot)
{
  DrawlCardStripData data;

  drawl_cardstrip_data_from_plan (&data, plan, shot);
  char *text = drawl_cardstrip_text (&data);
  drawl_cardstrip_data_clear (&data);
  return text;
}

static const DrawlPicture pictures[] = {
    {"timeline", N_ ("Real time and screen time"), 720, 380, draw_timeline, text_timeline},
    {"cards", N_ ("Cards filling"), 720, 340, draw_cards, text_cards},
};

const DrawlPicture *
drawl_pictures (guint *n_pictures)
{
  *n_pictures = G_N_ELEMENTS (pictures);
  return pictures;
}

const DrawlPicture *
drawl_picture_find (const char *id)
{
  for (guint i = 0; i < G_N_ELEMENTS (pictures); i++)
    if (g_str_equal (pictures[i].id, id))
      return &pictures[i];
  return NULL;
}

/* ---- The page ---- */

/* The shot, or where there is none, the plan. */
static char *
title_of (DrawlPlan *plan, DrawlShot *shot)
{
  if (shot == NULL)
    return g_strdup (drawl_plan_get_settings (plan)->title);
  const DrawlShotFields *fields = drawl_shot_get_fields (shot);
  if (*fields->action == '\0')
    return g_strdup (fields->slate);
  /* Translators: slate, action. */
  return g_strdup_printf (_ ("%s · %s"), fields->slate, fields->action);
}

/* What a page is made of. */
typedef struct {
  const DrawlPicture *picture;
  DrawlPlan *plan;
  DrawlShot *shot;
  const DrawlStyle *style;
  const char *title, *words;
} Page;

static void
draw_page (cairo_t *cr, gconstpointer data)
{
  const Page *page = data;
  const DrawlStyle *style = page->style;
  double width = page->picture->width, margin = drawl_style_margin (width);
  double start = style->rtl ? width - margin : margin;
  DrawlTextStyle title = {.size = TITLE_SIZE, .bold = TRUE, .max_width = width - 2 * margin};
  DrawlTextStyle words = {.max_width = width - 2 * margin};
  DrawlStyle bare = *style;

  drawl_style_set_colour (cr, style->ground);
  cairo_paint (cr);
  drawl_style_set_colour (cr, style->ink);
  double top = margin + drawl_text_paragraph_draw (cr, style, &title, TITLE_LINES, start, margin,
                                                   page->title);
  double bottom = page->picture->height - margin -
                  drawl_text_paragraph_height (cr, style, &words, WORDS_LINES, page->words);
  drawl_style_set_colour (cr, style->dim);
  drawl_text_paragraph_draw (cr, style, &words, WORDS_LINES, start, bottom, page->words);

  bare.ground.alpha = 0;
  cairo_translate (cr, 0, top);
  if (page->shot != NULL)
    page->picture->draw (cr, page->plan, page->shot, &bare, width, bottom - top);
}

/* ---- The file ---- */

static gboolean
write_page (const DrawlPictureType *type, const Page *page, const char *path, GError **error)
{
  DrawlPicturePage on_file = {
      .width = page->picture->width,
      .height = page->picture->height,
      .title = page->title,
      .words = page->words,
      .draw = draw_page,
      .picture = page,
  };
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) reason = NULL;

  drawl_json_file_set_given (file, path);
  /* The way to write durably is the plan's: it takes any bytes. */
  if (type->make (&on_file, bytes, &reason) &&
      drawl_json_save (file, (const char *)bytes->data, bytes->len, FALSE, NULL, &reason))
    return TRUE;
  g_set_error_literal (error, DRAWL_PICTURE_ERROR, DRAWL_PICTURE_ERROR_WRITE, reason->message);
  return FALSE;
}

gboolean
drawl_picture_save (const DrawlPicture *picture, DrawlPlan *plan, DrawlShot *shot,
                    const DrawlStyle *style, const char *path, GError **error)
{
  const DrawlPictureType *type = drawl_picture_type_find (path);

  if (type == NULL) {
    g_autofree char *name = g_filename_display_basename (path);
    g_set_error (error, DRAWL_PICTURE_ERROR, DRAWL_PICTURE_ERROR_TYPE,
                 _ ("no picture can be written as “%s”; a name that ends in .png, .svg or .pdf is "
                    "expected"),
                 name);
    return FALSE;
  }
  g_autofree char *title = title_of (plan, shot);
  g_autofree char *words =
      shot != NULL ? picture->text (plan, shot) : g_strdup (_ ("This plan has no shots yet."));
  Page page = {picture, plan, shot, style, title, words};
  return write_page (type, &page, path, error);
}
