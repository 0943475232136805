/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlPayload: the law by which a codec makes bytes of a frame. Bytes are exact; megabits are 10⁶
 * bits. */

#include "core/rate.h"

typedef enum {
  DRAWL_SAMPLING_420,   /* 3/2 samples a pixel */
  DRAWL_SAMPLING_422,   /* 2 */
  DRAWL_SAMPLING_444,   /* 3 */
  DRAWL_SAMPLING_MOSAIC /* 1: one colour a photosite */
} DrawlSampling;

typedef enum {
  DRAWL_PAYLOAD_UNCOMPRESSED, /* from pixels and bits */
  DRAWL_PAYLOAD_FIXED,        /* the same bytes every frame */
  DRAWL_PAYLOAD_SCALING,      /* a data rate stated at a reference rate; grows with the rate */
  DRAWL_PAYLOAD_CONSTANT      /* a data rate that stays the same at every rate */
} DrawlPayloadKind;

typedef struct {
  DrawlPayloadKind kind;
  DrawlSampling sampling;    /* uncompressed */
  DrawlRational stored_bits; /* uncompressed: bits a sample takes on the card: 10, or 32/3 where
                                three share 32 */
  guint row_align;      /* uncompressed: each row is filled to a multiple of so many bytes; 0: frame
                           packed */
  gint64 frame_bytes;   /* fixed */
  guint width, height;  /* fixed: the only size that the law knows; 0 for any */
  DrawlRational mbps;   /* scaling, constant: 10⁶ bit/s */
  DrawlRate at;         /* scaling: the rate at which mbps is stated */
  guint overhead_bytes; /* all: header bytes a frame */
} DrawlPayload;

/* One audio track: 48 kHz × 24 bit, in real time. */
#define DRAWL_AUDIO_BYTES_S G_GINT64_CONSTANT (144000)

/* "420" … "mosaic"; FALSE when it is none of them. */
gboolean drawl_sampling_parse (const char *text, DrawlSampling *out);
const char *drawl_sampling_id (DrawlSampling sampling);
/* Samples a pixel: 3/2, 2, 3, 1. */
DrawlRational drawl_sampling_samples (DrawlSampling sampling);

/* FALSE with an error when the law itself makes no sense (0 bits, negative rate …). */
gboolean drawl_payload_check (const DrawlPayload *payload, GError **error);

/* Bytes of one frame, exact: not always a whole number for scaling and constant laws.
 * Errors: DRAWL_CORE_ERROR_UNFIT (a law that knows one size, asked for another), _RANGE (no
 * pixels), _OVERFLOW. */
gboolean drawl_payload_frame_bytes (const DrawlPayload *payload, guint width, guint height,
                                    DrawlRate rate, DrawlRational *bytes, GError **error);

/* Bytes a second of real time: picture at @rate and @audio_tracks of sound. Errors as above. */
gboolean drawl_payload_data_rate (const DrawlPayload *payload, guint width, guint height,
                                  DrawlRate rate, guint audio_tracks, DrawlRational *bytes_s,
                                  GError **error);
