#!/usr/bin/env bash
# translations.sh TOP: each language of po/LINGUAS has a catalogue without an error, and nothing in it is only a guess.
# How much of it is translated is said, and not required: a new text must not wait for its translators.
set -euo pipefail
cd "$1/po"
failed=0
while read -r lang; do
  { printf '%s: ' "$lang"
    msgfmt --check --check-accelerators=_ --statistics -o /dev/null "$lang.po"; } 2>&1 || failed=1
  guesses=$(msgattrib --only-fuzzy --no-obsolete "$lang.po" | grep -c '^msgid' || true)
  [ "$guesses" = 0 ] || { echo "$lang.po has fuzzy messages"; failed=1; }
done < <(sed 's/#.*//' LINGUAS | tr -s '[:space:]' '\n' | sed '/^$/d')
extra=$(diff <(ls -- *.po | sed 's/\.po$//') <(sed 's/#.*//' LINGUAS | tr -s '[:space:]' '\n' | sed '/^$/d' | sort) || true)
[ -z "$extra" ] || { printf 'po/LINGUAS (< has no line, > has no catalogue):\n%s\n' "$extra"; failed=1; }
exit "$failed"
