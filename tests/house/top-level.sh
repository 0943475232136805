#!/usr/bin/env bash
# top-level.sh TOP: nothing stands at the top of the project but what DEVELOPERS.md lists.
set -euo pipefail
cd "$1"
stray=$(find . -mindepth 1 -maxdepth 1 ! -name '.*' -printf '%f\n' |
  grep -vxE 'build.*|README\.md|DEVELOPERS\.md|LICENSE|meson\.build|src|ui|tests|data|po' || true)
[ -z "$stray" ] || { echo "at the top level, but not on the list:" $stray; exit 1; }
