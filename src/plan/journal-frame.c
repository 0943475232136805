/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Frames: length, seal, record. Only one record is ever under way, so whatever a kill or a dying
 * disk leaves unfinished is the last frame: it ends with the file, or is blank to its end. */

#include "plan/journal-frame.h"

#include <string.h>

#define LENGTH_DIGITS 8
#define SEAL_DIGITS (DRAWL_JOURNAL_SEAL_SIZE - 1)
#define HEAD_BYTES (LENGTH_DIGITS + 1 + SEAL_DIGITS + 1) /* with a space and a line's end */
#define FRAME_BYTES(length) (HEAD_BYTES + (length) + 1)

static void
make_seal (const DrawlJournalSeal *before, const char *digits, const char *record, gsize length,
           DrawlJournalSeal *seal)
{
  g_autoptr (GChecksum) sum = g_checksum_new (G_CHECKSUM_SHA256);

  g_checksum_update (sum, (const guchar *)before->text, SEAL_DIGITS);
  g_checksum_update (sum, (const guchar *)digits, LENGTH_DIGITS);
  g_checksum_update (sum, (const guchar *)record, (gssize)length);
  memcpy (seal->text, g_checksum_get_string (sum), DRAWL_JOURNAL_SEAL_SIZE);
}

void
drawl_journal_frame_append (GString *out, DrawlJournalSeal *seal, const char *record, gsize length)
{
  char digits[LENGTH_DIGITS + 1];
  DrawlJournalSeal before = *seal;

  g_snprintf (digits, sizeof digits, "%08x", (guint)length);
  make_seal (&before, digits, record, length, seal);
  g_string_append_printf (out, "%s %s\n", digits, seal->text);
  g_string_append_len (out, record, (gssize)length);
  g_string_append_c (out, '\n');
}

static gboolean
read_length (const char *digits, gsize *length)
{
  *length = 0;
  for (guint i = 0; i < LENGTH_DIGITS; i++) {
    if (!g_ascii_isxdigit (digits[i]))
      return FALSE;
    *length = *length * 16 + (gsize)g_ascii_xdigit_value (digits[i]);
  }
  return *length > 0 && *length <= DRAWL_JOURNAL_RECORD_BYTES_MAX;
}

/* Room that a disk gave and never filled. */
static gboolean
is_blank (const char *at, const char *end)
{
  while (at < end && *at == '\0')
    at++;
  return at == end;
}

DrawlJournalFrame
drawl_journal_frame_next (const char **at, const char *end, DrawlJournalSeal *seal,
                          const char **record, gsize *length)
{
  const char *frame = *at;
  gsize left = (gsize)(end - frame);
  DrawlJournalSeal found;

  if (left == 0)
    return DRAWL_JOURNAL_FRAME_END;
  if (left <= HEAD_BYTES || is_blank (frame, end))
    return DRAWL_JOURNAL_FRAME_TORN;
  if (!read_length (frame, length))
    return DRAWL_JOURNAL_FRAME_DAMAGED;
  if (left < FRAME_BYTES (*length))
    return DRAWL_JOURNAL_FRAME_TORN;

  const char *seal_at = frame + LENGTH_DIGITS + 1;
  *record = frame + HEAD_BYTES;
  make_seal (seal, frame, *record, *length, &found);
  if (memcmp (seal_at, found.text, SEAL_DIGITS) != 0 || seal_at[-1] != ' ' ||
      (*record)[-1] != '\n' || (*record)[*length] != '\n')
    return left == FRAME_BYTES (*length) ? DRAWL_JOURNAL_FRAME_TORN : DRAWL_JOURNAL_FRAME_DAMAGED;
  *seal = found;
  *at = frame + FRAME_BYTES (*length);
  return DRAWL_JOURNAL_FRAME_WHOLE;
}
