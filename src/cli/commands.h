/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The table of commands, and what the program says about itself. */

#include "cli/command.h"

const DrawlCommand *drawl_command_find (const char *name); /* NULL when there is none */

/* The help of the program: all commands, a line each. New string. */
char *drawl_commands_help (void);

/* Refuses @name, which is no command (NULL: none was given), and says which one is nearest. */
gboolean drawl_commands_refuse (const char *name, GError **error);
