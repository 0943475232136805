/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* A refusal of the document: which kind, and a part of what it says. */

#include <string.h>

#include "plan/error.h"

#define assert_refused(error, code, part)                                                          \
  G_STMT_START                                                                                     \
  {                                                                                                \
    g_assert_error ((error), DRAWL_PLAN_ERROR, (int)(code));                                       \
    if (strstr ((error)->message, (part)) == NULL)                                                 \
      g_error ("\"%s\" does not say \"%s\"", (error)->message, (part));                            \
  }                                                                                                \
  G_STMT_END
