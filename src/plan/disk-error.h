/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* What a disk refuses, in words that say what to do about it. */

#include "plan/error.h"

/* The words for an errno of a write; @error takes the code of our own domain. */
const char *drawl_disk_error_words (int code, DrawlPlanError *error);
