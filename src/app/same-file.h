/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Whether two names are those of one file. */

#include <gio/gio.h>

/* By whatever way each is spelled: links, dots and all. */
gboolean drawl_same_file (GFile *a, GFile *b);
