/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The payload laws that open standards define, one row each, which body profiles refer to by name.
 * To add a law, add a row in codec-law.c with its source, and a row in tests/published. */

#include "core/payload.h"

typedef struct {
  const char *id;   /* "packed-422-10", "dpx-444-10", "vc3-1235" */
  const char *name; /* marked for translation */
  DrawlPayload law;
  const char *source; /* standard and table, and how the figure was read */
} DrawlCodecLaw;

const DrawlCodecLaw *drawl_codec_laws (guint *n_laws);
const DrawlCodecLaw *drawl_codec_law_find (const char *id); /* NULL when there is none */
