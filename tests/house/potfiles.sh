#!/usr/bin/env bash
# potfiles.sh TOP: every source with words for people is listed in po/POTFILES.in, and every file listed is there.
set -euo pipefail
cd "$1"
with_words=$({ grep -lE '(^|[^A-Za-z_])(_|N_|C_|ngettext_) \(' src/*/*.c src/*/*.h | grep -v '^src/core/text\.h$'
               grep -l 'translatable="yes"' ui/*.ui
               find data -name '*.desktop.in' -o -name '*.metainfo.xml.in' -o -name '*.gschema.xml'; } | sort)
listed=$(sed 's/#.*//' po/POTFILES.in | tr -s '[:space:]' '\n' | sed '/^$/d' | sort)
difference=$(diff <(echo "$with_words") <(echo "$listed") || true)
[ -z "$difference" ] || { printf 'po/POTFILES.in (< is missing, > has no words or is not there):\n%s\n' "$difference"; exit 1; }
