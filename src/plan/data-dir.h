/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Where the shipped data lies: $DRAWL_DATA_DIR when set (a build folder), else the installed
 * folder. */

#include <glib.h>

/* The folder; and a file in it ("demo", "glass.drawl", NULL). New strings. */
const char *drawl_data_dir (void);
char *drawl_data_file (const char *first, ...) G_GNUC_NULL_TERMINATED;
