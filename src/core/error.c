/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/error.h"

G_DEFINE_QUARK (drawl-core-error-quark, drawl_core_error)
