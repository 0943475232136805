/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What has changed of a list as a whole: the stretch between what is the same at both ends. Items
 * are the same by their address. */

#include "plan/list-stretch.h"

void
drawl_list_tell_stretch (GListModel *model, const GPtrArray *before, const GPtrArray *after)
{
  guint shorter = MIN (before->len, after->len), head = 0, tail = 0;

  while (head < shorter && before->pdata[head] == after->pdata[head])
    head++;
  while (tail < shorter - head &&
         before->pdata[before->len - 1 - tail] == after->pdata[after->len - 1 - tail])
    tail++;
  if (head + tail < before->len || head + tail < after->len)
    g_list_model_items_changed (model, head, before->len - head - tail, after->len - head - tail);
}
