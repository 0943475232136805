#!/usr/bin/env bash
# well-formed.sh TOP: every XML file is well-formed: MIME type, settings, metainfo, icons, templates.
set -euo pipefail
cd "$1"
mapfile -t files < <(find data ui \( -name '*.xml' -o -name '*.xml.in' -o -name '*.svg' -o -name '*.ui' \) | sort)
[ "${#files[@]}" -ge 10 ] || { echo "only ${#files[@]} files were found"; exit 1; }
xmllint --noout "${files[@]}"
