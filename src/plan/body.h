/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlBody: a camera body as its profile describes it: sizes, codecs, limits, licences, cards or
 * magazines. Immutable once made, reference counted, so that plans, undo steps and threads share
 * it. A film body has gauges in place of codecs and magazines in place of cards: each of its sizes
 * names a gauge, and its limits no codec. */

#include <glib-object.h>
#include <json-glib/json-glib.h>

#include "core/card-class.h"
#include "core/codec-law.h"
#include "core/codec-level.h"
#include "core/footage.h"
#include "plan/licence.h"

typedef struct _DrawlBody DrawlBody;

typedef enum { DRAWL_BODY_DIGITAL, DRAWL_BODY_FILM } DrawlBodyKind;

/* A picture size. */
typedef struct {
  char *id;
  char *name;                /* "3840 × 2160" or "Super 16" */
  guint width, height;       /* pixels; 0 on film */
  DrawlRational window_w_mm; /* sensor or gate window; 0 when the profile does not say */
  DrawlRational window_h_mm;
  DrawlRational readout_ms; /* time to read the window from top to bottom; 0 when unknown */
  const DrawlGauge *gauge;  /* film only */
} DrawlBodySize;

typedef struct {
  char *id;
  char *name;
  const DrawlCodecLaw *law; /* the open law it refers to, or NULL when the profile gives its own */
  DrawlPayload payload;
  const DrawlCodecLevel *level; /* that the maker states, or NULL */
} DrawlBodyCodec;

#define DRAWL_BODY_NO_CODEC G_MAXUINT

/* One row of the maker's table: at this size and codec, rates from lowest to highest, if those
 * licences are held. */
typedef struct {
  guint size;  /* index */
  guint codec; /* index; DRAWL_BODY_NO_CODEC on film */
  DrawlRate lowest;
  DrawlRate highest;
  DrawlTier licences;  /* all of them needed */
  gint64 card_bytes_s; /* slowest card class that the maker allows here, bytes a second; 0: none
                          stated */
  const DrawlCardClass *card_class; /* that class, or NULL */
} DrawlBodyLimit;

typedef struct {
  char *id;
  char *name;
  gint64 bytes;
  const DrawlCardClass *card_class; /* or NULL */
  gint64 write_bytes_s;             /* guaranteed: the class's, or the profile's own figure */
  gint64 price;                     /* a day, hundredths */
} DrawlBodyCard;

typedef struct {
  char *id;
  char *name;
  DrawlRational feet;
  gint64 price;
} DrawlBodyMagazine;

/* A line of what must be fitted before it runs, or of what is looked at on pick-up or return. */
typedef struct {
  char *what;
  char *why; /* may be empty */
} DrawlBodyNote;

struct _DrawlBody {
  char *id;
  char *name;
  char *maker;
  char *what; /* one line about it */
  DrawlBodyKind kind;
  char *source_document; /* where the figures come from */
  char *source_date;     /* ISO 8601 day */
  char *currency;        /* "EUR" */
  gint64 price;          /* of the body a day, hundredths */
  DrawlBodySize *sizes;
  guint n_sizes;
  DrawlBodyCodec *codecs;
  guint n_codecs;
  DrawlLicence *licences;
  guint n_licences;
  DrawlBodyLimit *limits; /* one row a size and codec, expanded from the profile's rows, sorted by
                             size, then codec */
  guint n_limits;
  DrawlBodyCard *cards;
  guint n_cards;
  DrawlBodyMagazine *magazines;
  guint n_magazines;
  DrawlRational rate_step; /* every multiple of it is offered; 0: only the listed ones */
  DrawlRate *rates;        /* listed, ascending */
  guint n_rates;           /* with step 0 and none listed, any rate within the limits is offered */
  gint64 buffer_bytes;     /* ring buffer; 0: none */
  DrawlRational buffer_pre_percent;
  gint64 buffer_write_bytes_s; /* speed at which it is written out; 0: the card's */
  guint audio_tracks;          /* recorded with the picture at playback rates; the body's default */
  DrawlRational watts;         /* power draw; 0 when unknown */
  DrawlBodyNote *fits;         /* must be fitted before it runs */
  guint n_fits;
  DrawlBodyNote *pickups;
  guint n_pickups;
  DrawlBodyNote *returns;
  guint n_returns;
  JsonObject *json; /* the profile as read, unknown keys and all: what a plan carries */
};

#define DRAWL_TYPE_BODY (drawl_body_get_type ())
GType drawl_body_get_type (void); /* a boxed type */
DrawlBody *drawl_body_new (void); /* empty, for body-file.c to fill */
DrawlBody *drawl_body_ref (DrawlBody *body);
void drawl_body_unref (DrawlBody *body);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (DrawlBody, drawl_body_unref)

/* Index of an id in its table, or -1. */
int drawl_body_size_index (const DrawlBody *body, const char *id);
int drawl_body_codec_index (const DrawlBody *body, const char *id);
int drawl_body_licence_index (const DrawlBody *body, const char *id);
int drawl_body_card_index (const DrawlBody *body, const char *id);

/* The rows of a size and codec, or of a size in all codecs: @n rows that stand together. */
const DrawlBodyLimit *drawl_body_limits_of (const DrawlBody *body, guint size, guint codec,
                                            guint *n);
const DrawlBodyLimit *drawl_body_limits_of_size (const DrawlBody *body, guint size, guint *n);
/* The order of the rows: by size, then codec; -1, 0 or 1. */
int drawl_body_limit_compare (const DrawlBodyLimit *limit, guint size, guint codec);

/* TRUE when the body can be set to exactly @rate, limits aside. */
gboolean drawl_body_offers_rate (const DrawlBody *body, DrawlRate rate);

/* The offered rate nearest to @rate within lowest … highest, exactly compared (the lower of two
 * equally near); FALSE when there is none. */
gboolean drawl_body_nearest_rate (const DrawlBody *body, DrawlRate rate, DrawlRate lowest,
                                  DrawlRate highest, DrawlRate *nearest);

/* The rate next to @rate that can be set, on the side of @direction (1 or -1), limits aside; @rate
 * itself counts unless @beyond. A body that offers any rate is stepped by whole frames a second. */
gboolean drawl_body_rate_beside (const DrawlBody *body, DrawlRate rate, int direction,
                                 gboolean beyond, DrawlRate *out);

/* The next offered rate above (@direction > 0) or below @rate that some row of @size and @codec
 * allows, whatever licences it takes; FALSE at the end. What the arrow keys step through. */
gboolean drawl_body_step_rate (const DrawlBody *body, guint size, guint codec, DrawlRate rate,
                               int direction, DrawlRate *next);

/* The tier of the ids in @ids (NULL-terminated); an unknown one is DRAWL_PLAN_ERROR_UNKNOWN. And
 * back. */
gboolean drawl_body_tier_from_ids (const DrawlBody *body, const char *const *ids, DrawlTier *tier,
                                   GError **error);
GStrv drawl_body_tier_ids (const DrawlBody *body, DrawlTier tier);
/* The names of a tier's licences, joined for a sentence: "Rate upgrade and Size upgrade". */
char *drawl_body_tier_names (const DrawlBody *body, DrawlTier tier);
