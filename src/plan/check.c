/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The check of one shot. A shot is as hired when the body can be set to its rate, some row of the
 * maker's table allows it, and a take fits on what records it. Only the rows of the shot's size and
 * codec are looked at, and a shot that is as hired costs no allocation. Everything else (reasons,
 * licences, fallbacks) is worked out only for a shot that is not. */

#include "plan/check.h"

#include "plan/check-private.h"

static const struct {
  const char *id;
  const char *type_name;
} verdicts[DRAWL_N_VERDICTS] = {
    [DRAWL_VERDICT_AS_HIRED] = {"as-hired", "DRAWL_VERDICT_AS_HIRED"},
    [DRAWL_VERDICT_NEEDS_LICENCE] = {"needs-licence", "DRAWL_VERDICT_NEEDS_LICENCE"},
    [DRAWL_VERDICT_NOT_ON_THIS_BODY] = {"not-on-this-body", "DRAWL_VERDICT_NOT_ON_THIS_BODY"},
};

static const char *const reason_ids[DRAWL_N_REASONS] = {
    [DRAWL_REASON_NO_BODY] = "no-body",
    [DRAWL_REASON_NO_SIZE] = "no-size",
    [DRAWL_REASON_NO_CODEC] = "no-codec",
    [DRAWL_REASON_NO_PAIR] = "no-pair",
    [DRAWL_REASON_SIZE_NOT_LICENSED] = "size-not-licensed",
    [DRAWL_REASON_CODEC_NOT_LICENSED] = "codec-not-licensed",
    [DRAWL_REASON_RATE_NOT_LICENSED] = "rate-not-licensed",
    [DRAWL_REASON_RATE_TAKES_MORE] = "rate-takes-more",
    [DRAWL_REASON_RATE_OVER] = "rate-over",
    [DRAWL_REASON_RATE_BELOW] = "rate-below",
    [DRAWL_REASON_RATE_NOT_OFFERED] = "rate-not-offered",
    [DRAWL_REASON_CARD_TOO_SLOW] = "card-too-slow",
    [DRAWL_REASON_BUFFER_TOO_SHORT] = "buffer-too-short",
    [DRAWL_REASON_CARD_TOO_SMALL] = "card-too-small",
    [DRAWL_REASON_MAGAZINE_TOO_SHORT] = "magazine-too-short",
};

GType
drawl_verdict_get_type (void)
{
  static gsize type;

  if (g_once_init_enter (&type)) {
    static GEnumValue values[DRAWL_N_VERDICTS + 1];
    for (int i = 0; i < DRAWL_N_VERDICTS; i++)
      values[i] = (GEnumValue){i, verdicts[i].type_name, verdicts[i].id};
    g_once_init_leave (&type, g_enum_register_static ("DrawlVerdict", values));
  }
  return type;
}

const char *
drawl_verdict_id (DrawlVerdict verdict)
{
  return verdicts[verdict].id;
}

const char *
drawl_reason_id (DrawlReasonKind kind)
{
  return reason_ids[kind];
}

/* ---- The question ---- */

/* The fastest card that the body takes, the largest of equally fast ones; -1 without cards. */
static int
find_fastest_card (const DrawlBody *body)
{
  int best = -1;

  for (guint i = 0; i < body->n_cards; i++) {
    const DrawlBodyCard *card = &body->cards[i];
    const DrawlBodyCard *other = best < 0 ? NULL : &body->cards[best];
    if (other == NULL || card->write_bytes_s > other->write_bytes_s ||
        (card->write_bytes_s == other->write_bytes_s && card->bytes > other->bytes))
      best = (int)i;
  }
  return best;
}

void
drawl_check_context_init (DrawlCheckContext *context, const DrawlCheckQuestion *question)
{
  const DrawlBody *body = question->body;
  gboolean hired = question->card >= 0 && (guint)question->card < body->n_cards;

  context->question = question;
  context->body = body;
  context->effective = drawl_tier_effective (body->licences, body->n_licences, question->tier);
  context->card = body->kind == DRAWL_BODY_FILM ? -1
                  : hired                       ? question->card
                                                : find_fastest_card (body);
}

gboolean
drawl_check_row_open (const DrawlCheckContext *context, const DrawlBodyLimit *row)
{
  return (row->licences & ~context->effective) == 0;
}

/* Most rates are whole, and this is asked of every row. */
static int
compare_rates (DrawlRate a, DrawlRate b)
{
  if (a.den == b.den)
    return a.num < b.num ? -1 : a.num > b.num ? 1 : 0;
  return drawl_rational_compare (a, b);
}

gboolean
drawl_check_row_spans (const DrawlBodyLimit *row, DrawlRate rate)
{
  return compare_rates (rate, row->lowest) >= 0 && compare_rates (rate, row->highest) <= 0;
}

/* A ring buffer takes what the card is too slow for. */
gboolean
drawl_check_row_card (const DrawlCheckContext *context, const DrawlBodyLimit *row)
{
  return context->card < 0 || context->body->buffer_bytes > 0 ||
         row->card_bytes_s <= context->body->cards[context->card].write_bytes_s;
}

/* ---- Reasons ---- */

static void
add_reason (DrawlCheck *check, DrawlReasonKind kind, DrawlRational limit, DrawlRational wanted)
{
  check->reasons[check->n_reasons++] = (DrawlReason){kind, limit, wanted};
}

static void
add_plain_reason (DrawlCheck *check, DrawlReasonKind kind)
{
  add_reason (check, kind, drawl_rational_whole (0), drawl_rational_whole (0));
}

/* What the rows of the shot's size and codec say, as far as they span its rate or not. */
typedef struct {
  const DrawlBodyLimit *rows;
  guint n_rows;
  gboolean open;       /* some row is open to the tier */
  gboolean spans;      /* some row spans the rate */
  gboolean open_spans; /* some row does both */
} Pair;

static void
look_at_pair (const DrawlCheckContext *context, guint codec, Pair *pair)
{
  const DrawlCheckQuestion *question = context->question;

  *pair = (Pair){0};
  pair->rows = drawl_body_limits_of (context->body, (guint)question->size, codec, &pair->n_rows);
  for (guint i = 0; i < pair->n_rows; i++) {
    gboolean open = drawl_check_row_open (context, &pair->rows[i]);
    gboolean spans = drawl_check_row_spans (&pair->rows[i], question->rate);
    pair->open |= open;
    pair->spans |= spans;
    pair->open_spans |= open && spans;
  }
}

static gboolean
any_row_open (const DrawlCheckContext *context, const DrawlBodyLimit *rows, guint n_rows)
{
  for (guint i = 0; i < n_rows; i++)
    if (drawl_check_row_open (context, &rows[i]))
      return TRUE;
  return FALSE;
}

static gboolean
codec_open_anywhere (const DrawlCheckContext *context, guint codec)
{
  for (guint i = 0; i < context->body->n_limits; i++)
    if (context->body->limits[i].codec == codec &&
        drawl_check_row_open (context, &context->body->limits[i]))
      return TRUE;
  return FALSE;
}

static void
add_licence_reasons (const DrawlCheckContext *context, const Pair *pair, guint codec,
                     DrawlCheck *check)
{
  guint n_rows;
  const DrawlBodyLimit *rows =
      drawl_body_limits_of_size (context->body, (guint)context->question->size, &n_rows);
  gboolean size_open = any_row_open (context, rows, n_rows);

  if (pair->open)
    return;
  if (!size_open)
    add_plain_reason (check, DRAWL_REASON_SIZE_NOT_LICENSED);
  if (codec != DRAWL_BODY_NO_CODEC && (size_open || !codec_open_anywhere (context, codec)))
    add_plain_reason (check, DRAWL_REASON_CODEC_NOT_LICENSED);
}

/* The end of the pair's rows (of those that are open, or of all) that lies next to the wanted rate:
 * the highest rate below it, or else the lowest above it. */
static DrawlRate
find_nearest_end (const DrawlCheckContext *context, const Pair *pair, gboolean open_only)
{
  DrawlRate wanted = context->question->rate, below = {0, 1}, above = {0, 1};

  for (guint i = 0; i < pair->n_rows; i++) {
    const DrawlBodyLimit *row = &pair->rows[i];
    if (open_only && !drawl_check_row_open (context, row))
      continue;
    if (drawl_rational_compare (row->highest, wanted) < 0) {
      if (drawl_rational_compare (row->highest, below) > 0)
        below = row->highest;
    } else if (above.num == 0 || drawl_rational_compare (row->lowest, above) < 0) {
      above = row->lowest;
    }
  }
  return below.num > 0 ? below : above;
}

/* TRUE when no other row of the pair asks for less than this one on top of the tier. */
static gboolean
row_asks_least (const DrawlCheckContext *context, const Pair *pair, const DrawlBodyLimit *row)
{
  DrawlTier asks = row->licences & ~context->effective;

  for (guint i = 0; i < pair->n_rows; i++) {
    DrawlTier other = pair->rows[i].licences & ~context->effective;
    if (other != asks && (other & ~asks) == 0)
      return FALSE;
  }
  return TRUE;
}

/* Where the pair is closed: a licence that opens it may still not reach the rate. */
static void
add_further_licence (const DrawlCheckContext *context, const Pair *pair, DrawlCheck *check)
{
  DrawlRate wanted = context->question->rate, highest = {0, 1};

  for (guint i = 0; i < pair->n_rows; i++) {
    if (!row_asks_least (context, pair, &pair->rows[i]))
      continue;
    if (drawl_check_row_spans (&pair->rows[i], wanted))
      return;
    if (drawl_rational_compare (pair->rows[i].highest, highest) > 0)
      highest = pair->rows[i].highest;
  }
  if (drawl_rational_compare (wanted, highest) > 0)
    add_reason (check, DRAWL_REASON_RATE_TAKES_MORE, highest, wanted);
}

/* The offered rate nearest to the wanted one, within the rows that span it. */
static DrawlRate
find_nearest_offered (const DrawlCheckContext *context, const Pair *pair)
{
  DrawlRate wanted = context->question->rate, lowest = wanted, highest = wanted, nearest = wanted;

  for (guint i = 0; i < pair->n_rows; i++) {
    if (!drawl_check_row_spans (&pair->rows[i], wanted))
      continue;
    if (drawl_rational_compare (pair->rows[i].lowest, lowest) < 0)
      lowest = pair->rows[i].lowest;
    if (drawl_rational_compare (pair->rows[i].highest, highest) > 0)
      highest = pair->rows[i].highest;
  }
  drawl_body_nearest_rate (context->body, wanted, lowest, highest, &nearest);
  return nearest;
}

static void
add_rate_reasons (const DrawlCheckContext *context, const Pair *pair, DrawlCheck *check)
{
  DrawlRate wanted = context->question->rate;

  if (!pair->spans) {
    DrawlRate end = find_nearest_end (context, pair, FALSE);
    gboolean below = drawl_rational_compare (wanted, end) < 0;
    add_reason (check, below ? DRAWL_REASON_RATE_BELOW : DRAWL_REASON_RATE_OVER, end, wanted);
    return;
  }
  if (pair->open && !pair->open_spans)
    add_reason (check, DRAWL_REASON_RATE_NOT_LICENSED, find_nearest_end (context, pair, TRUE),
                wanted);
  if (!pair->open)
    add_further_licence (context, pair, check);
  if (!drawl_body_offers_rate (context->body, wanted))
    add_reason (check, DRAWL_REASON_RATE_NOT_OFFERED, find_nearest_offered (context, pair), wanted);
}

/* The slowest card class that would do, in bytes a second, where no row that the rate falls into
 * takes the card; 0 when one does. Rows that are closed count only where none is open. */
static gint64
find_missing_class (const DrawlCheckContext *context, const Pair *pair)
{
  gint64 least = 0;

  for (guint i = 0; i < pair->n_rows; i++) {
    const DrawlBodyLimit *row = &pair->rows[i];
    if (!drawl_check_row_spans (row, context->question->rate) ||
        (pair->open_spans && !drawl_check_row_open (context, row)))
      continue;
    if (drawl_check_row_card (context, row))
      return 0;
    least = least == 0 ? row->card_bytes_s : MIN (least, row->card_bytes_s);
  }
  return least;
}

static void
add_medium_reasons (const DrawlCheckContext *context, const Pair *pair, const DrawlMedium *medium,
                    DrawlCheck *check)
{
  DrawlRational class_needed = drawl_rational_whole (find_missing_class (context, pair));
  DrawlRational take_s = context->question->take_s, needed = medium->data_rate;
  gint64 guaranteed = context->card < 0 ? 0 : context->body->cards[context->card].write_bytes_s;

  if (!medium->card_too_slow || drawl_rational_compare (class_needed, needed) > 0)
    needed = class_needed;
  if (medium->card_too_slow || class_needed.num > 0)
    add_reason (check, DRAWL_REASON_CARD_TOO_SLOW, drawl_rational_whole (guaranteed), needed);
  if (medium->buffer_too_short)
    add_reason (check, DRAWL_REASON_BUFFER_TOO_SHORT, medium->buffer_s, take_s);
  if (medium->card_too_small)
    add_reason (check, DRAWL_REASON_CARD_TOO_SMALL, medium->card_s, take_s);
  if (medium->magazine_too_short)
    add_reason (check, DRAWL_REASON_MAGAZINE_TOO_SHORT, medium->magazine_s, take_s);
}

/* ---- The verdict ---- */

/* Looks for licences that open a row in which nothing else stands in the way. */
static void
find_sets (const DrawlCheckContext *context, const Pair *pair, DrawlCheck *check)
{
  const DrawlBody *body = context->body;
  g_autofree DrawlTier *needs = g_new (DrawlTier, pair->n_rows);
  g_autoptr (GArray) sets = g_array_new (FALSE, FALSE, sizeof (DrawlLicenceSet));
  guint n_needs = 0;

  for (guint i = 0; i < pair->n_rows; i++)
    if (drawl_check_row_spans (&pair->rows[i], context->question->rate) &&
        drawl_check_row_card (context, &pair->rows[i]))
      needs[n_needs++] = pair->rows[i].licences;
  drawl_licence_minimal_sets (body->licences, body->n_licences, context->question->tier, needs,
                              n_needs, sets);
  if (sets->len == 0)
    return;
  check->verdict = DRAWL_VERDICT_NEEDS_LICENCE;
  check->sets = g_steal_pointer (&sets);
}

static gboolean
pair_allows (const DrawlCheckContext *context, const Pair *pair)
{
  for (guint i = 0; i < pair->n_rows && pair->open_spans; i++)
    if (drawl_check_row_open (context, &pair->rows[i]) &&
        drawl_check_row_spans (&pair->rows[i], context->question->rate) &&
        drawl_check_row_card (context, &pair->rows[i]))
      return TRUE;
  return FALSE;
}

/* The check of a size and codec that the body has. */
static void
check_pair (const DrawlCheckContext *context, guint codec, DrawlCheck *check)
{
  const DrawlCheckQuestion *question = context->question;
  gboolean offered = drawl_body_offers_rate (context->body, question->rate);
  DrawlMedium medium;
  Pair pair;

  look_at_pair (context, codec, &pair);
  if (pair.n_rows == 0) {
    add_plain_reason (check, DRAWL_REASON_NO_PAIR);
    return;
  }
  gboolean fits = drawl_check_medium (context, (guint)question->size, codec, question->rate,
                                      question->take_frames, &medium);
  if (fits && offered && pair_allows (context, &pair)) {
    check->verdict = DRAWL_VERDICT_AS_HIRED;
    return;
  }
  add_licence_reasons (context, &pair, codec, check);
  add_rate_reasons (context, &pair, check);
  add_medium_reasons (context, &pair, &medium, check);
  if (fits && offered)
    find_sets (context, &pair, check);
}

static void
check_body (const DrawlCheckContext *context, DrawlCheck *check)
{
  const DrawlCheckQuestion *question = context->question;
  gboolean film = context->body->kind == DRAWL_BODY_FILM;

  check->card = context->card;
  if (question->size < 0)
    add_plain_reason (check, DRAWL_REASON_NO_SIZE);
  if (!film && question->codec < 0)
    add_plain_reason (check, DRAWL_REASON_NO_CODEC);
  if (check->n_reasons == 0)
    check_pair (context, film ? DRAWL_BODY_NO_CODEC : (guint)question->codec, check);
  if (check->verdict != DRAWL_VERDICT_AS_HIRED)
    drawl_check_find_fallbacks (context, check);
}

void
drawl_check_clear (DrawlCheck *check)
{
  DrawlFallback none = {FALSE, 0, DRAWL_BODY_NO_CODEC, drawl_rational_whole (0)};

  g_clear_pointer (&check->sets, g_array_unref);
  check->verdict = DRAWL_VERDICT_NOT_ON_THIS_BODY;
  check->n_reasons = 0;
  check->card = -1;
  for (guint i = 0; i < DRAWL_N_KEEPS; i++)
    check->fallbacks[i] = none;
}

void
drawl_check_run (const DrawlCheckQuestion *question, DrawlCheck *check)
{
  DrawlCheckContext context;

  drawl_check_clear (check);
  if (question->body == NULL) {
    add_plain_reason (check, DRAWL_REASON_NO_BODY);
    return;
  }
  drawl_check_context_init (&context, question);
  check_body (&context, check);
}
