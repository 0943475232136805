/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* What has changed of a list as a whole. */

#include <gio/gio.h>

/* Tells of @model, which had the items of @before and has those of @after, in one telling: of the
 * stretch between what both have in common at their ends; of nothing when they are the same. */
void drawl_list_tell_stretch (GListModel *model, const GPtrArray *before, const GPtrArray *after);
