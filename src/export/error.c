/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The error domain of what is written for other programs. */

#include "export/error.h"

GQuark
drawl_export_error_quark (void)
{
  return g_quark_from_static_string ("drawl-export-error-quark");
}
