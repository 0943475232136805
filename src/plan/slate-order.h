/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The order in which people count slates and scenes: numbers by their worth, so that 2 stands
 * before 10 and 12A before 12B; capitals and small letters together. */

#include <glib.h>

/* Below, at or above 0; 0 only for the same text. */
int drawl_slate_compare (const char *a, const char *b);
