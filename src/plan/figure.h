/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Figures as a person reads them: number, thin details and unit, in the locale's number style (the
 * command line never sets LC_NUMERIC, so there they have a decimal point). Exact values come in,
 * text goes out; nothing is stored. All return new strings. */

#include "core/rate.h"

/* A number with at most @places decimals, trailing zeros dropped; `≈` is not added. */
char *drawl_figure_number (DrawlRational value, int places);
/* "240 fps", "23.976 fps". And only the number, as it stands in a blank. */
char *drawl_figure_rate (DrawlRate rate);
char *drawl_figure_rate_number (DrawlRate rate);
/* "0.45 s", "4.5 s", "2 min 05 s", "1 h 02 min". And only the seconds, as in a blank: "0.45". */
char *drawl_figure_time (DrawlRational seconds);
/* The same of what is left, rounded down: nobody is told of time that is not there. */
char *drawl_figure_time_left (DrawlRational seconds);
char *drawl_figure_seconds_number (DrawlRational seconds);
/* "10×". */
char *drawl_figure_factor (DrawlRational factor);
/* "20 %". */
char *drawl_figure_percent (DrawlRational percent);
/* Whole numbers with the locale's grouping: "12 960". */
char *drawl_figure_count (gint64 n);
/* "1.49 GB/s", "512 GB", decimal units. */
char *drawl_figure_bytes (DrawlRational bytes);
char *drawl_figure_bytes_rate (DrawlRational bytes_s);
/* "60.00 EUR" from hundredths. */
char *drawl_figure_money (gint64 hundredths, const char *currency);
