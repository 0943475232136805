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

# mounted NAME KIND SAYS: a disk of 256 KiB with a plan on it, then the attempt.
mounted() {
  mkdir "$work/$1"
  unshare -rm sh -ec '
    mount -t tmpfs -o size=256k none "$1"
    echo "{\"old\":1}" >"$1/glass.drawl"
    echo "{\"older\":1}" >"$1/glass.drawl~"
    if [ "$3" = read-only ]; then mount -o remount,bind,ro "$1"; fi
    exec "$2" "$1" "$3" "$4"' sh "$work/$1" "$program" "$2" "$3"
  report "$1" $?
}

mkdir "$work/grow"
echo '{"old":1}' >"$work/grow/glass.drawl"
LIMIT_BYTES=65536 "$program" "$work/grow" no-space 'larger than this disk or session allows'
report file-may-not-grow $?

if unshare -rm mount -t tmpfs none "$work/grow" 2>/dev/null; then
  mounted disk-full no-space 'the disk is full'
  mounted disk-read-only read-only 'the disk can only be read'
else
  skip disk-full 'no mount namespace here'
  skip disk-read-only 'no mount namespace here'
fi

# locked NAME FOLDER-MODE FILE-MODE: root may write everywhere, so root tries it as nobody.
nobody=65534
as=
if [ "$(id -u)" -eq 0 ]; then as="setpriv --reuid=$nobody --regid=$nobody --clear-groups"; fi
locked() {
  mkdir "$work/$1"
  echo '{"old":1}' >"$work/$1/glass.drawl"
  if [ -n "$as" ]; then chmod 755 "$work" && chown -R $nobody:$nobody "$work/$1"; fi
  chmod "$3" "$work/$1/glass.drawl"
  chmod "$2" "$work/$1"
  $as "$program" "$work/$1" no-permission 'you are not allowed to write there'
  report "$1" $?
  chmod 755 "$work/$1"
}

if $as test -x "$program" 2>/dev/null; then
  locked folder-without-right 555 644
  locked file-without-right 755 444
else
  skip folder-without-right 'nobody cannot run the program here'
  skip file-without-right 'nobody cannot run the program here'
fi
echo "1..$row"
