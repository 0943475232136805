#!/usr/bin/env bash
# format.sh TOP: clang-format would change nothing, and every source says its licence.
set -euo pipefail
cd "$1"
mapfile -t sources < <(find src tests -name '*.[ch]' | sort)
clang-format --dry-run -Werror "${sources[@]}"
mapfile -t scripts < <(find tests -name '*.py' | sort)
unmarked=$(grep -L 'SPDX-License-Identifier: GPL-3.0-or-later' "${sources[@]}" "${scripts[@]}" || true)
[ -z "$unmarked" ] || { printf 'no licence line: %s\n' $unmarked; exit 1; }
