/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Write speeds that card classes guarantee, one row each, from the slowest to the fastest of a
 * family. Decimal megabytes a second; a card of no class guarantees nothing. And the kinds of SD
 * card, by the bytes that are printed on them. */

#include "core/card-class.h"

#define MB G_GINT64_CONSTANT (1000000)
#define GB G_GINT64_CONSTANT (1000000000)
#define SPEED_CLASS "SD Association, speed class page: read"
#define VIDEO_CLASS "SD Association, Physical Layer, video speed class: read in secondary pages"
#define EXPRESS_CLASS "SD Association, speed class page: name read, figure as the name says"
#define VPG_MEMORY "CompactFlash Association, VPG specification: from memory"

static const DrawlCardClass classes[] = {
    {"C2", 2 * MB, SPEED_CLASS, TRUE},
    {"C4", 4 * MB, SPEED_CLASS, TRUE},
    {"C6", 6 * MB, SPEED_CLASS, TRUE},
    {"C10", 10 * MB, SPEED_CLASS, TRUE},
    {"U1", 10 * MB, SPEED_CLASS, TRUE},
    {"U3", 30 * MB, SPEED_CLASS, TRUE},
    {"V6", 6 * MB, VIDEO_CLASS, TRUE},
    {"V10", 10 * MB, VIDEO_CLASS, TRUE},
    {"V30", 30 * MB, VIDEO_CLASS, TRUE},
    {"V60", 60 * MB, VIDEO_CLASS, TRUE},
    {"V90", 90 * MB, VIDEO_CLASS, TRUE},
    {"E150", 150 * MB, EXPRESS_CLASS, TRUE},
    {"E300", 300 * MB, EXPRESS_CLASS, TRUE},
    {"E450", 450 * MB, EXPRESS_CLASS, TRUE},
    {"E600", 600 * MB, EXPRESS_CLASS, TRUE},
    {"VPG-20", 20 * MB, VPG_MEMORY},
    {"VPG-65", 65 * MB,
     "CompactFlash Association, VPG specification: name read, figure from memory"},
    {"VPG-130", 130 * MB, VPG_MEMORY},
    {"VPG-200", 200 * MB,
     "CompactFlash Association, VPG specification: name read, figure as it says"},
    {"VPG-400", 400 * MB,
     "CompactFlash Association, VPG specification: read in a news page of 2024"},
    {"VPG-800", 800 * MB,
     "CompactFlash Association, VPG specification: read in a news page of 2025"},
    {"VPG-1600", 1600 * MB,
     "CompactFlash Association, VPG specification: read in a news page of 2025"},
};

const DrawlCardClass *
drawl_card_classes (guint *n_classes)
{
  *n_classes = G_N_ELEMENTS (classes);
  return classes;
}

const DrawlCardClass *
drawl_card_class_find (const char *id)
{
  for (gsize i = 0; i < G_N_ELEMENTS (classes); i++)
    if (g_str_equal (classes[i].id, id))
      return &classes[i];
  return NULL;
}

const char *
drawl_sd_kind (gint64 bytes)
{
  static const struct {
    const char *name;
    gint64 most_bytes;
  } kinds[] = {
      /* SD Association, capacities: read in a secondary page */
      {"SD", 2 * GB},
      {"SDHC", 32 * GB},
      {"SDXC", 2000 * GB},
      {"SDUC", 128000 * GB},
  };

  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (bytes <= kinds[i].most_bytes)
      return kinds[i].name;
  return NULL;
}
