/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Licences of a body. A set of licences (a tier) is a bit mask over the body's licence table, at
 * most 64. A licence may require others, and may replace others: who holds it holds those, too. */

#include "core/rational.h"

typedef guint64 DrawlTier;

#define DRAWL_LICENCES_MAX 64
#define DRAWL_TIER_BIT(index) (G_GUINT64_CONSTANT (1) << (index))

typedef struct {
  char *id;
  char *name;         /* as on the hire list */
  char *what;         /* one line: what it opens; may be empty */
  gint64 price;       /* a day, in hundredths of the body's currency */
  DrawlTier requires; /* must be held as well */
  DrawlTier replaces; /* count as held */
} DrawlLicence;

void drawl_licence_clear (DrawlLicence *licence);

/* What a tier amounts to: the tier itself and everything that its licences replace, transitively. A
 * licence whose requirements are not met opens nothing and counts as not held. */
DrawlTier drawl_tier_effective (const DrawlLicence *licences, guint n_licences, DrawlTier tier);

/* One way to open what a shot needs. */
typedef struct {
  DrawlTier add; /* licences to hire in addition to the tier */
  gint64 price;  /* of them, a day */
} DrawlLicenceSet;

/* Every minimal set of licences to add to @tier so that one of the @n_needs masks in @needs is
 * effective: no set contains another; cheapest first, then fewest licences, then table order.
 * Requirements are included. Exhaustive and exact, unless a profile made to that end needs more
 * than 4,096 steps of the search: then the cheapest are found and the dearest are missing. Appends
 * to @sets (of DrawlLicenceSet). */
void drawl_licence_minimal_sets (const DrawlLicence *licences, guint n_licences, DrawlTier tier,
                                 const DrawlTier *needs, guint n_needs, GArray *sets);
