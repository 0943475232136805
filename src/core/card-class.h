/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Guaranteed sustained write speeds of card classes, one row each: SD speed, UHS speed, video speed
 * and SD Express speed classes (SD Association), VPG classes (CompactFlash Association). */

#include <glib.h>

typedef struct {
  const char *id; /* "V60", "U3", "C10", "E300", "VPG-130" */
  gint64 bytes_s; /* guaranteed sustained write speed, bytes a second (decimal megabytes · 10⁶) */
  const char *source;
  gboolean sd; /* a class of SD cards */
} DrawlCardClass;

const DrawlCardClass *drawl_card_classes (guint *n_classes);
const DrawlCardClass *drawl_card_class_find (const char *id); /* NULL when there is none */

/* What an SD card of @bytes is called: "SD", "SDHC", "SDXC", "SDUC"; NULL beyond 128 TB, the most
 * that one can hold. */
const char *drawl_sd_kind (gint64 bytes);
