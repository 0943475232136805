#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# save-trouble.sh PROGRAM: saving where nothing can be saved: a full disk, a read-only disk, a folder without the right to
# write, a file that may not grow. Disks are mounted in a namespace of our own; where that is not allowed, those rows say so.
set -u
program=$1
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
row=0

report() { # NAME RESULT
  row=$((row + 1))
  if [ "$2" -eq 0 ]; then echo "ok $row $1"; else echo "not ok $row $1"; fi
}

skip() { # NAME REASON
  row=$((row + 1))
  echo "ok $row $1 # SKIP $2"
}

# mounted NAME OPTIONS SAYS THEN: a disk of 256 KiB with a plan on it, then THEN, then the attempt.
mounted() {
  mkdir "$work/$1"
  unshare -rm sh -ec '
    mount -t tmpfs -o size=256k none "$1"
    echo "{\"old\":1}" >"$1/glass.drawl"
    echo "{\"older\":1}" >"$1/glass.drawl~"
    if [ "$4" = read-only ]; then mount -o remount,bind,ro "$1"; fi
    exec "$2" "$1" "$3"' sh "$work/$1" "$program" "$2" "$3"
  report "$1" $?
}

mkdir "$work/grow"
echo '{"old":1}' >"$work/grow/glass.drawl"
LIMIT_BYTES=65536 "$program" "$work/grow" 'larger than this disk or session allows'
report file-may-not-grow $?

if unshare -rm mount -t tmpfs none "$work/grow" 2>/dev/null; then
  mounted disk-full 'the disk is full' full
  mounted disk-read-only 'the disk can only be read' read-only
else
  skip disk-full 'no mount namespace here'
  skip disk-read-only 'no mount namespace here'
fi

if [ "$(id -u)" -ne 0 ]; then
  mkdir "$work/locked"
  echo '{"old":1}' >"$work/locked/glass.drawl"
  chmod 555 "$work/locked"
  "$program" "$work/locked" 'you are not allowed to write there'
  report folder-without-right $?
  chmod 755 "$work/locked"
  chmod 444 "$work/locked/glass.drawl"
  "$program" "$work/locked" 'you are not allowed to write there'
  report file-without-right $?
else
  skip folder-without-right 'root may write everywhere'
  skip file-without-right 'root may write everywhere'
fi
echo "1..$row"
