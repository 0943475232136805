/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What the check says, in words: one whole sentence a reason, so that each can be translated as it
 * reads. A row of the table is how one kind of reason is put. */

#include "core/text.h"
#include "plan/check-private.h"
#include "plan/figure.h"

static const char *const verdict_names[DRAWL_N_VERDICTS] = {
    [DRAWL_VERDICT_AS_HIRED] = N_ ("as hired"),
    [DRAWL_VERDICT_NEEDS_LICENCE] = N_ ("needs a licence"),
    [DRAWL_VERDICT_NOT_ON_THIS_BODY] = N_ ("not on this body"),
};

const char *
drawl_verdict_name (DrawlVerdict verdict)
{
  return _ (verdict_names[verdict]);
}

/* ---- Names in the question ---- */

static const char *
size_name (const DrawlCheckQuestion *question)
{
  return question->body->sizes[question->size].name;
}

static gboolean
has_codec (const DrawlCheckQuestion *question)
{
  return question->body->kind == DRAWL_BODY_DIGITAL && question->codec >= 0;
}

static const char *
codec_name (const DrawlCheckQuestion *question)
{
  return question->body->codecs[question->codec].name;
}

/* The first card of the body that would take what this one does not; NULL when none would. */
static const char *
find_better_card (const DrawlReason *reason, const DrawlCheckQuestion *question)
{
  const DrawlBody *body = question->body;

  for (guint i = 0; i < body->n_cards; i++) {
    DrawlCheckQuestion with_card = *question;
    DrawlCheckContext context;
    DrawlMedium medium;

    with_card.card = (int)i;
    drawl_check_context_init (&context, &with_card);
    drawl_check_medium (&context, (guint)question->size, (guint)question->codec, question->rate,
                        question->take_frames, &medium);
    if (medium.card_too_slow || medium.card_too_small)
      continue;
    if (reason->kind != DRAWL_REASON_CARD_TOO_SLOW ||
        drawl_rational_compare (reason->wanted,
                                drawl_rational_whole (body->cards[i].write_bytes_s)) <= 0)
      return body->cards[i].name;
  }
  return NULL;
}

/* The card that the check reckoned with. */
static const char *
card_name (const DrawlCheckQuestion *question)
{
  DrawlCheckContext context;

  drawl_check_context_init (&context, question);
  return context.card < 0 ? _ ("none") : question->body->cards[context.card].name;
}

/* ---- Sentences ---- */

typedef char *(*Sentence) (const DrawlReason *reason, const DrawlCheckQuestion *question);

static char *
no_body (const DrawlReason *reason, const DrawlCheckQuestion *question)
{
  return g_strdup (_ ("No body of this plan is chosen for the shot"));
}

static char *
no_size (const DrawlReason *reason, const DrawlCheckQuestion *question)
{
  return g_strdup_printf (_ ("%s does not have the picture size of this shot"),
                          question->body->name);
}

static char *
no_codec (const DrawlReason *reason, const DrawlCheckQuestion *question)
{
  return g_strdup_printf (_ ("%s does not have the codec of this shot"), question->body->name);
}

static char *
no_pair (const DrawlReason *reason, const DrawlCheckQuestion *question)
{
  if (!has_codec (question))
    return g_strdup_printf (_ ("%s does not run with %s"), question->body->name,
                            size_name (question));
  /* Translators: body, picture size, codec. */
  return g_strdup_printf (_ ("%s does not record %s in %s"), question->body->name,
                          size_name (question), codec_name (question));
}

static char *
size_not_licensed (const DrawlReason *reason, const DrawlCheckQuestion *question)
{
  return g_strdup_printf (_ ("%s is not open as hired; it takes a licence"), size_name (question));
}

static char *
codec_not_licensed (const DrawlReason *reason, const DrawlCheckQuestion *question)
{
  /* Translators: codec, picture size. */
  return g_strdup_printf (_ ("%s at %s is not open as hired; it takes a licence"),
                          codec_name (question), size_name (question));
}

static char *
rate_not_licensed (const DrawlReason *reason, const DrawlCheckQuestion *question)
{
  g_autofree char *wanted = drawl_figure_rate (reason->wanted);
  g_autofree char *limit = drawl_figure_rate (reason->limit);

  if (drawl_rational_compare (reason->wanted, reason->limit) < 0)
    return g_strdup_printf (_ ("%s is below the %s at which this picture size starts as hired"),
                            wanted, limit);
  if (!has_codec (question))
    return g_strdup_printf (_ ("%s is over the %s that this size allows as hired"), wanted, limit);
  return g_strdup_printf (_ ("%s is over the %s that this size and codec allow as hired"), wanted,
                          limit);
}

static char *
rate_takes_more (const DrawlReason *reason, const DrawlCheckQuestion *question)
{
  g_autofree char *wanted = drawl_figure_rate (reason->wanted);
  g_autofree char *limit = drawl_figure_rate (reason->limit);

  return g_strdup_printf (
      _ ("%s takes a licence for the rate, too; once open, this goes up to %s without it"), wanted,
      limit);
}

static char *
rate_over (const DrawlReason *reason, const DrawlCheckQuestion *question)
{
  g_autofree char *wanted = drawl_figure_rate (reason->wanted);
  g_autofree char *limit = drawl_figure_rate (reason->limit);

  if (!has_codec (question))
    return g_strdup_printf (_ ("%s is over the %s that this size reaches on this body"), wanted,
                            limit);
  return g_strdup_printf (_ ("%s is over the %s that this size and codec reach with every licence"),
                          wanted, limit);
}

static char *
rate_below (const DrawlReason *reason, const DrawlCheckQuestion *question)
{
  g_autofree char *wanted = drawl_figure_rate (reason->wanted);
  g_autofree char *limit = drawl_figure_rate (reason->limit);

  return g_strdup_printf (_ ("%s is below %s, the lowest rate of this size on this body"), wanted,
                          limit);
}

static char *
rate_not_offered (const DrawlReason *reason, const DrawlCheckQuestion *question)
{
  g_autofree char *wanted = drawl_figure_rate (reason->wanted);
  g_autofree char *limit = drawl_figure_rate (reason->limit);

  return g_strdup_printf (_ ("%s cannot be set to %s; the nearest rate is %s"),
                          question->body->name, wanted, limit);
}

static char *
card_too_slow (const DrawlReason *reason, const DrawlCheckQuestion *question)
{
  g_autofree char *wanted = drawl_figure_bytes_rate (reason->wanted);
  g_autofree char *limit = drawl_figure_bytes_rate (reason->limit);
  const char *better = find_better_card (reason, question);

  if (better == NULL)
    /* Translators: data rate, card, data rate. */
    return g_strdup_printf (_ ("%s must be written, but the card %s guarantees %s, and no card of "
                               "this body would do"),
                            wanted, card_name (question), limit);
  return g_strdup_printf (
      _ ("%s must be written, but the card %s guarantees %s; the card %s would do"), wanted,
      card_name (question), limit, better);
}

static char *
buffer_too_short (const DrawlReason *reason, const DrawlCheckQuestion *question)
{
  g_autofree char *wanted = drawl_figure_time (reason->wanted);
  g_autofree char *limit = drawl_figure_time (reason->limit);

  return g_strdup_printf (_ ("A take of %s is longer than the %s that the ring buffer holds"),
                          wanted, limit);
}

static char *
card_too_small (const DrawlReason *reason, const DrawlCheckQuestion *question)
{
  g_autofree char *wanted = drawl_figure_time (reason->wanted);
  g_autofree char *limit = drawl_figure_time (reason->limit);
  const char *better = find_better_card (reason, question);

  if (better == NULL)
    /* Translators: time, card, time. */
    return g_strdup_printf (_ ("A take of %s does not fit on the card %s, which holds %s, and no "
                               "card of this body would do"),
                            wanted, card_name (question), limit);
  return g_strdup_printf (
      _ ("A take of %s does not fit on the card %s, which holds %s; the card %s would do"), wanted,
      card_name (question), limit, better);
}

static char *
magazine_too_short (const DrawlReason *reason, const DrawlCheckQuestion *question)
{
  g_autofree char *wanted = drawl_figure_time (reason->wanted);
  g_autofree char *limit = drawl_figure_time (reason->limit);

  return g_strdup_printf (_ ("A take of %s is longer than the %s that the longest magazine runs"),
                          wanted, limit);
}

static const Sentence sentences[DRAWL_N_REASONS] = {
    [DRAWL_REASON_NO_BODY] = no_body,
    [DRAWL_REASON_NO_SIZE] = no_size,
    [DRAWL_REASON_NO_CODEC] = no_codec,
    [DRAWL_REASON_NO_PAIR] = no_pair,
    [DRAWL_REASON_SIZE_NOT_LICENSED] = size_not_licensed,
    [DRAWL_REASON_CODEC_NOT_LICENSED] = codec_not_licensed,
    [DRAWL_REASON_RATE_NOT_LICENSED] = rate_not_licensed,
    [DRAWL_REASON_RATE_TAKES_MORE] = rate_takes_more,
    [DRAWL_REASON_RATE_OVER] = rate_over,
    [DRAWL_REASON_RATE_BELOW] = rate_below,
    [DRAWL_REASON_RATE_NOT_OFFERED] = rate_not_offered,
    [DRAWL_REASON_CARD_TOO_SLOW] = card_too_slow,
    [DRAWL_REASON_BUFFER_TOO_SHORT] = buffer_too_short,
    [DRAWL_REASON_CARD_TOO_SMALL] = card_too_small,
    [DRAWL_REASON_MAGAZINE_TOO_SHORT] = magazine_too_short,
};

char *
drawl_reason_text (const DrawlReason *reason, const DrawlCheckQuestion *question)
{
  return sentences[reason->kind](reason, question);
}

const char *
drawl_keep_id (DrawlKeep keep)
{
  static const char *const ids[DRAWL_N_KEEPS] = {"keep_size", "keep_rate", "keep_both",
                                                 "keep_neither"};

  return ids[keep];
}

char *
drawl_fallback_text (const DrawlFallback *fallback, const DrawlBody *body)
{
  if (!fallback->found)
    return NULL;
  g_autofree char *rate = drawl_figure_rate (fallback->rate);
  const char *size = body->sizes[fallback->size].name;
  if (fallback->codec == DRAWL_BODY_NO_CODEC)
    return g_strdup_printf (_ ("%s at %s"), rate, size);
  /* Translators: rate, picture size, codec: "120 fps at 3840 × 2160 in Intra 10-bit". */
  return g_strdup_printf (_ ("%s at %s in %s"), rate, size, body->codecs[fallback->codec].name);
}

char *
drawl_licence_set_text (const DrawlLicenceSet *set, const DrawlBody *body)
{
  g_autofree char *names = drawl_body_tier_names (body, set->add);
  g_autofree char *price = drawl_figure_money (set->price, body->currency);

  /* Translators: names of licences and their price: "Rate upgrade (60.00 EUR a day)". */
  return g_strdup_printf (_ ("%s (%s a day)"), names, price);
}
