/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The error domain of the document. */

#include "plan/error.h"

G_DEFINE_QUARK (drawl - plan - error - quark, drawl_plan_error)
