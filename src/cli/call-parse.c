/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Words to options. A word that starts with a dash is an option, save a dash alone and what stands
 * where a value is due: a value may begin with a minus, but may not be one of the command's own
 * options, since then the value was forgotten. */

#include "cli/call-parse.h"

#include <string.h>

#include "cli/error.h"
#include "cli/nearest.h"
#include "core/error.h"
#include "core/text.h"

#define END_OF_OPTIONS "--"

/* One of the command's options, or of those that each command has. */
typedef struct {
  const char *name;
  char letter;
  char **value;     /* where its value goes; NULL: a switch */
  gboolean *is_set; /* of a switch */
} Slot;

/* What a word was found to be. */
typedef struct {
  Slot slot;
  const char *shown; /* as it was typed, up to its value */
  const char *value; /* in the same word, or NULL */
} Option;

#define N_COMMON 2

static Slot
slot_at (DrawlCall *call, guint i)
{
  const Slot common[N_COMMON] = {{"json", 0, NULL, &call->json}, {"help", 'h', NULL, &call->help}};

  if (i >= call->command->n_options)
    return common[i - call->command->n_options];
  const DrawlOption *option = &call->command->options[i];
  gboolean takes = option->argument != NULL;
  return (Slot){option->name, option->letter, takes ? &call->values[i] : NULL,
                takes ? NULL : &call->switches[i]};
}

/* The value in @word behind an option's name, "" where it ends; NULL when it is not that name. */
static const char *
behind_name (const Slot *slot, const char *word)
{
  if (g_str_has_prefix (word, "--") && g_str_has_prefix (word + 2, slot->name)) {
    const char *rest = word + 2 + strlen (slot->name);
    return *rest == '\0' || *rest == '=' ? rest : NULL;
  }
  gboolean is_letter = slot->letter != 0 && word[0] == '-' && word[1] == slot->letter;
  /* A switch has nothing behind its letter. */
  return is_letter && (word[2] == '\0' || slot->value != NULL) ? word + 2 : NULL;
}

static gboolean
find_option (DrawlCall *call, const char *word, Option *found)
{
  for (guint i = 0; i < call->command->n_options + N_COMMON; i++) {
    Slot slot = slot_at (call, i);
    const char *rest = behind_name (&slot, word);
    if (rest == NULL)
      continue;
    gboolean sign = *rest == '=' && word[1] == '-';
    *found = (Option){slot, word, sign ? rest + 1 : *rest != '\0' ? rest : NULL};
    return TRUE;
  }
  return FALSE;
}

/* ---- Refusals ---- */

static gboolean
refuse_unknown (DrawlCall *call, const char *typed, GError **error)
{
  g_autofree char *quoted = drawl_core_quote (typed);
  g_autofree char *names = drawl_call_option_names (call, G_MAXUINT);
  const char *dashless = typed + strspn (typed, "-");
  g_autofree char *word = g_strndup (dashless, strcspn (dashless, "="));
  g_autofree char *message = NULL;
  DrawlNearest nearest;

  drawl_nearest_init (&nearest, word);
  for (guint i = 0; i < call->command->n_options + N_COMMON; i++)
    drawl_nearest_offer (&nearest, slot_at (call, i).name);
  if (nearest.name != NULL)
    message = g_strdup_printf (_ ("no such option, the nearest is --%s; one of %s, --json, --help "
                                  "is expected"),
                               nearest.name, names);
  else
    message = g_strdup_printf (_ ("no such option; one of %s, --json, --help is expected"), names);
  return drawl_cli_refuse (error, DRAWL_CLI_ERROR_QUESTION, quoted, message);
}

static gboolean
refuse_option (const Option *option, const char *message, GError **error)
{
  g_autofree char *name = g_strconcat ("--", option->slot.name, NULL);
  return drawl_cli_refuse (error, DRAWL_CLI_ERROR_QUESTION, name, message);
}

/* @next: what stands where the value is due, or NULL. */
static gboolean
refuse_no_value (const Option *option, const char *next, GError **error)
{
  g_autofree char *typed = drawl_core_quote (option->shown);
  g_autofree char *quoted = drawl_core_quote (next != NULL ? next : "");
  g_autofree char *message =
      next == NULL
          ? g_strdup (_ ("nothing stands after it; its value is expected"))
          : g_strdup_printf (_ ("its value is missing: the option %s stands after it"), quoted);
  return drawl_cli_refuse (error, DRAWL_CLI_ERROR_QUESTION, typed, message);
}

/* ---- Words ---- */

/* Sets the option that stands at **@at, and steps to its last word. */
static gboolean
take_option (DrawlCall *call, const Option *option, const char *const **at, GError **error)
{
  const Slot *slot = &option->slot;
  const char *value = option->value;
  Option other;

  if (slot->value == NULL && value != NULL)
    return refuse_option (option, _ ("takes no value; the option alone is expected"), error);
  if (slot->value != NULL ? *slot->value != NULL : *slot->is_set)
    return refuse_option (option, _ ("is given twice; once is expected"), error);
  if (slot->value == NULL) {
    *slot->is_set = TRUE;
    return TRUE;
  }
  if (value == NULL) {
    value = (*at)[1];
    if (value == NULL || g_str_equal (value, END_OF_OPTIONS) || find_option (call, value, &other))
      return refuse_no_value (option, value, error);
    (*at)++;
  }
  *slot->value = g_strdup (value);
  return TRUE;
}

gboolean
drawl_call_parse (DrawlCall *call, const char *const *args, GError **error)
{
  g_autoptr (GStrvBuilder) files = g_strv_builder_new ();
  gboolean options = TRUE;
  Option option;

  for (const char *const *at = args; *at != NULL; at++) {
    const char *word = *at;
    if (options && g_str_equal (word, END_OF_OPTIONS)) {
      options = FALSE;
    } else if (!options || word[0] != '-' || word[1] == '\0') {
      g_strv_builder_add (files, word);
    } else if (!find_option (call, word, &option)) {
      return refuse_unknown (call, word, error);
    } else if (!take_option (call, &option, &at, error)) {
      return FALSE;
    }
  }
  call->files = g_strv_builder_end (files);
  return TRUE;
}
