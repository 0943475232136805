/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The table of what is to be hired, as far as the plan says it. Money is reckoned in hundredths. A
 * row whose price, number or days are not said has no sum, and its total says that it is not all.
 * Lengths in points. */

#include "draw/sheet-order.h"

#include "core/text.h"
#include "draw/sheet-columns.h"
#include "draw/sheet-type.h"
#include "plan/figure.h"
#include "plan/shot-load.h"

#define NOTHING "–"
#define BODY_GAP 12.0
#define ROW_GAP 3.0

enum { ITEM, NUMBER, PRICE, DAYS, SUM, N_COLUMNS };

static const DrawlSheetColumn columns_said[N_COLUMNS] = {
    [ITEM] = {N_ ("To be hired"), 0, DRAWL_ALIGN_START},
    [NUMBER] = {N_ ("Number"), 52, DRAWL_ALIGN_END},
    [PRICE] = {N_ ("A day, each"), 76, DRAWL_ALIGN_END},
    [DAYS] = {N_ ("Days"), 36, DRAWL_ALIGN_END},
    [SUM] = {N_ ("Sum"), 84, DRAWL_ALIGN_END},
};

/* ---- Sums ---- */

typedef struct {
  const char *currency; /* a body's own */
  gint64 hundredths;
} Total;

typedef struct {
  DrawlSheetFlow *flow;
  DrawlSheetColumn columns[N_COLUMNS];
  GArray *totals;     /* of Total */
  gboolean lacks_any; /* some row has no sum */
} Table;

/* FALSE when some of it is not said, or too much to be counted. */
static gboolean
sum_of (gint64 price, guint number, guint days, gint64 *sum)
{
  guint64 product;

  if (price <= 0 || number == 0 || days == 0 ||
      !g_uint64_checked_mul (&product, (guint64)price, number) ||
      !g_uint64_checked_mul (&product, product, days) || product > G_MAXINT64)
    return FALSE;
  *sum = (gint64)product;
  return TRUE;
}

static Total *
total_in (Table *table, const char *currency)
{
  for (guint i = 0; i < table->totals->len; i++) {
    Total *total = &g_array_index (table->totals, Total, i);

    if (g_strcmp0 (total->currency, currency) == 0)
      return total;
  }
  Total fresh = {currency, 0};
  g_array_append_val (table->totals, fresh);
  return &g_array_index (table->totals, Total, table->totals->len - 1);
}

static char *
add_to_total (Table *table, const char *currency, gint64 sum)
{
  Total *total = total_in (table, currency);

  if (total->hundredths > G_MAXINT64 - sum)
    table->lacks_any = TRUE;
  else
    total->hundredths += sum;
  return drawl_figure_money (sum, currency);
}

/* ---- Rows ---- */

/* A thing on the list. */
typedef struct {
  const char *name;
  gint64 price; /* a day */
  guint number;
  gboolean strong;
} Item;

static void
add_row (Table *table, const DrawlHiredFields *hired, const Item *item, double gap,
         DrawlSheetRule rule)
{
  const char *currency = hired->body->currency;
  g_autofree char *number = item->number > 0 ? drawl_figure_count (item->number) : NULL;
  g_autofree char *days = hired->days > 0 ? drawl_figure_count (hired->days) : NULL;
  g_autofree char *price = item->price > 0 ? drawl_figure_money (item->price, currency) : NULL;
  gint64 hundredths;
  gboolean known = sum_of (item->price, item->number, hired->days, &hundredths);
  g_autofree char *sum = known ? add_to_total (table, currency, hundredths) : NULL;
  const char *const cells[N_COLUMNS] = {item->name, number, price, days, sum};

  table->lacks_any |= !known;
  drawl_sheet_flow_row (table->flow, gap, rule);
  for (guint i = 0; i < N_COLUMNS; i++)
    drawl_sheet_columns_add_cell (table->flow, &table->columns[i], i == ITEM && item->strong,
                                  cells[i] != NULL ? cells[i] : NOTHING);
}

static void
add_licences (Table *table, const DrawlHiredFields *hired)
{
  for (guint i = 0; i < hired->body->n_licences; i++) {
    Item item = {hired->body->licences[i].name, hired->body->licences[i].price, 1, FALSE};

    if ((hired->tier & DRAWL_TIER_BIT (i)) != 0)
      add_row (table, hired, &item, ROW_GAP, DRAWL_SHEET_NO_RULE);
  }
}

/* "512 GB, VPG-400; the plan fills 2". */
static char *
filled_words (const char *name, gint64 filled)
{
  g_autofree char *count = drawl_figure_count (filled);

  return g_strdup_printf (_ ("%s; the shots fill %s"), name, count);
}

/* "256 GB, V60 (SDXC)": readers and bodies take SD cards by kind. */
static char *
card_words (const DrawlBodyCard *card)
{
  const char *kind =
      card->card_class != NULL && card->card_class->sd ? drawl_sd_kind (card->bytes) : NULL;

  /* Translators: a card, the kind of SD card that it is. */
  return kind == NULL ? g_strdup (card->name) : g_strdup_printf (_ ("%s (%s)"), card->name, kind);
}

static void
add_cards (Table *table, const DrawlHiredFields *hired, const DrawlDayBody *day)
{
  const DrawlBody *body = hired->body;
  const DrawlBodyMagazine *magazine = drawl_body_longest_magazine (body);
  g_autofree char *name = NULL;
  Item item = {.number = hired->cards};

  if (body->kind == DRAWL_BODY_FILM && magazine != NULL) {
    g_autofree char *plain = g_strdup_printf (_ ("Magazine, %s"), magazine->name);
    name = filled_words (plain, day->magazines);
    item.price = magazine->price;
  } else if (hired->card >= 0) {
    g_autofree char *card = card_words (&body->cards[hired->card]);
    name = filled_words (card, day->cards);
    item.price = body->cards[hired->card].price;
  } else {
    name = body->n_cards > 0 ? filled_words (_ ("Cards, not chosen yet"), day->cards) : NULL;
  }
  item.name = name;
  if (name != NULL)
    add_row (table, hired, &item, ROW_GAP, DRAWL_SHEET_NO_RULE);
}

static void
add_body (Table *table, const DrawlDayBody *day)
{
  const DrawlHiredFields *hired = drawl_hired_body_get_fields (day->hired);
  g_autofree char *name = drawl_hired_body_dup_name (day->hired);
  Item item = {name, hired->body->price, 1, TRUE};

  drawl_sheet_flow_block (table->flow, DRAWL_SHEET_BLOCK);
  add_row (table, hired, &item, BODY_GAP, DRAWL_SHEET_RULE);
  add_licences (table, hired);
  add_cards (table, hired, day);
}

static void
add_totals (Table *table)
{
  drawl_sheet_flow_block (table->flow, DRAWL_SHEET_END);
  for (guint i = 0; i < table->totals->len; i++) {
    const Total *total = &g_array_index (table->totals, Total, i);
    g_autofree char *sum = drawl_figure_money (total->hundredths, total->currency);
    const DrawlSheetColumn *item = &table->columns[ITEM], *last = &table->columns[SUM];
    DrawlSheetColumn wide = *item;

    wide.width = last->x - item->x - 9;
    drawl_sheet_flow_row (table->flow, i == 0 ? BODY_GAP : ROW_GAP,
                          i == 0 ? DRAWL_SHEET_STRONG_RULE : DRAWL_SHEET_NO_RULE);
    drawl_sheet_columns_add_cell (table->flow, &wide, TRUE,
                                  table->lacks_any ? _ ("Sum of what is known so far") : _ ("Sum"));
    drawl_sheet_columns_add_cell (table->flow, last, TRUE, sum);
  }
  if (!table->lacks_any)
    return;
  drawl_sheet_flow_row (table->flow, 4, DRAWL_SHEET_NO_RULE);
  drawl_sheet_flow_plain (table->flow, 0, drawl_sheet_flow_width (table->flow), &drawl_sheet_quiet,
                          _ ("A dash stands for what the plan does not say yet."));
}

void
drawl_sheet_add_order (DrawlSheetFlow *flow, const DrawlDay *day)
{
  g_autoptr (GArray) totals = g_array_new (FALSE, FALSE, sizeof (Total));
  Table table = {.flow = flow, .totals = totals};

  for (guint i = 0; i < N_COLUMNS; i++)
    table.columns[i] = columns_said[i];
  drawl_sheet_columns_place (table.columns, N_COLUMNS, drawl_sheet_flow_width (flow));
  drawl_sheet_columns_add_head (flow, table.columns, N_COLUMNS);
  for (guint i = 0; i < day->bodies->len; i++)
    add_body (&table, &g_array_index (day->bodies, DrawlDayBody, i));
  add_totals (&table);
}
