/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlCheck: can this body, with this tier and these cards, do this shot? One verdict of three,
 * every reason, all minimal sets of licences that would allow it, and what the shot falls back to
 * without them. Pure: depends on nothing but its question. */

#include "plan/body.h"

typedef enum {
  DRAWL_VERDICT_AS_HIRED,
  DRAWL_VERDICT_NEEDS_LICENCE,
  DRAWL_VERDICT_NOT_ON_THIS_BODY,
  DRAWL_N_VERDICTS
} DrawlVerdict;

#define DRAWL_TYPE_VERDICT (drawl_verdict_get_type ())
GType drawl_verdict_get_type (void);

/* "as-hired", "needs-licence", "not-on-this-body"; and the translated words for the screen. */
const char *drawl_verdict_id (DrawlVerdict verdict);
const char *drawl_verdict_name (DrawlVerdict verdict);

typedef enum {
  DRAWL_REASON_NO_BODY,            /* the shot names no body of the plan */
  DRAWL_REASON_NO_SIZE,            /* the body has no such size */
  DRAWL_REASON_NO_CODEC,           /* the body has no such codec */
  DRAWL_REASON_NO_PAIR,            /* it has both, but never together */
  DRAWL_REASON_SIZE_NOT_LICENSED,  /* no codec at this size is open to the tier */
  DRAWL_REASON_CODEC_NOT_LICENSED, /* the codec is not open to the tier at this size */
  DRAWL_REASON_RATE_NOT_LICENSED,  /* over the limit as hired, within it with a licence */
  DRAWL_REASON_RATE_TAKES_MORE,  /* over what opening the size and codec alone allows: a licence for
                                    the rate comes on top */
  DRAWL_REASON_RATE_OVER,        /* over every limit at this size and codec */
  DRAWL_REASON_RATE_BELOW,       /* below the lowest rate */
  DRAWL_REASON_RATE_NOT_OFFERED, /* within the limits, but not a rate the body can be set to */
  DRAWL_REASON_CARD_TOO_SLOW,    /* the data rate, or the maker's class, is above what the card
                                    guarantees */
  DRAWL_REASON_BUFFER_TOO_SHORT, /* the take is longer than the ring buffer holds */
  DRAWL_REASON_CARD_TOO_SMALL,   /* one take does not fit on the card */
  DRAWL_REASON_MAGAZINE_TOO_SHORT, /* one take does not fit in the longest magazine */
  DRAWL_N_REASONS
} DrawlReasonKind;

typedef struct {
  DrawlReasonKind kind;
  DrawlRational
      limit; /* what would have been allowed: rate (RATE_*), bytes a second (CARD_TOO_SLOW), seconds
                of real time (BUFFER_, CARD_TOO_SMALL, MAGAZINE_); 0/1 where there is none */
  DrawlRational wanted; /* what the shot asks for, in the same unit */
} DrawlReason;

/* "rate-over", …: the word of the command line. */
const char *drawl_reason_id (DrawlReasonKind kind);

/* A way to shoot it without more licences. */
typedef struct {
  gboolean found;
  guint size;
  guint codec; /* DRAWL_BODY_NO_CODEC on film */
  DrawlRate rate;
} DrawlFallback;

/* What a fallback keeps; each in the wanted codec if it can be. */
typedef enum {
  DRAWL_KEEP_SIZE,    /* nearest rate at the wanted size */
  DRAWL_KEEP_RATE,    /* largest other size that keeps the rate */
  DRAWL_KEEP_BOTH,    /* wanted size and rate in another codec */
  DRAWL_KEEP_NEITHER, /* where there is none of those: nearest rate, at the largest other size */
  DRAWL_N_KEEPS
} DrawlKeep;

/* "keep_size": the word of the command line. */
const char *drawl_keep_id (DrawlKeep keep);

typedef struct {
  const DrawlBody *body; /* NULL: the plan has none of that name */
  DrawlTier tier;
  int card;       /* index of the hired card, or -1: the fastest that the body takes is assumed */
  int size;       /* index, or -1 when the body has none of that name */
  int codec;      /* index, or -1; ignored on film */
  DrawlRate rate; /* capture rate */
  DrawlRational take_s; /* real time of one take, handles included */
  gint64 take_frames;
  guint audio_tracks;
  DrawlRational reserve_percent;
} DrawlCheckQuestion;

typedef struct {
  DrawlVerdict verdict;
  DrawlReason reasons[DRAWL_N_REASONS];
  guint n_reasons;
  GArray
      *sets; /* of DrawlLicenceSet, cheapest first; NULL when none would help or none is needed */
  int card;  /* the card that was reckoned with, or -1 */
  DrawlFallback fallbacks[DRAWL_N_KEEPS];
} DrawlCheck;

/* @check is cleared first; it must be zeroed or from an earlier call. Never fails. */
void drawl_check_run (const DrawlCheckQuestion *question, DrawlCheck *check);
void drawl_check_clear (DrawlCheck *check);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (DrawlCheck, drawl_check_clear)

/* One translated sentence for a reason, numbers and units in it: "240 fps is over the 120 fps that
 * this size and codec allow as hired". */
char *drawl_reason_text (const DrawlReason *reason, const DrawlCheckQuestion *question);
/* One translated sentence for a fallback: "120 fps at 3840 × 2160 in Intra 10-bit"; NULL when not
 * found. */
char *drawl_fallback_text (const DrawlFallback *fallback, const DrawlBody *body);
/* "Rate upgrade (60.00 EUR a day)". */
char *drawl_licence_set_text (const DrawlLicenceSet *set, const DrawlBody *body);
