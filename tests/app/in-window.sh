#!/usr/bin/env bash
# in-window.sh PROGRAM [ARGUMENT...]: runs a test that opens windows: on a screen, a session bus, and in a home of its own.
# What screen and bus have to say goes to the error output, so that the output stays TAP.
set -euo pipefail

home=$(mktemp -d)
trap 'rm -rf "$home"' EXIT
mkdir -p "$home/config/gtk-4.0" "$home/run"
chmod 700 "$home/run"
printf '[Settings]\ngtk-font-name=Cantarell 11\ngtk-enable-animations=false\n' >"$home/config/gtk-4.0/settings.ini"

export HOME=$home XDG_CONFIG_HOME=$home/config XDG_DATA_HOME=$home/data XDG_CACHE_HOME=$home/cache \
  XDG_STATE_HOME=$home/state XDG_RUNTIME_DIR=$home/run
export GSETTINGS_BACKEND=memory GDK_BACKEND=x11 GSK_RENDERER=cairo G_DEBUG=fatal-warnings LC_ALL=C.UTF-8
export ASAN_OPTIONS="detect_leaks=0:${ASAN_OPTIONS:-}" # GTK, fontconfig and the theme keep what they have to the end
unset WAYLAND_DISPLAY DISPLAY DBUS_SESSION_BUS_ADDRESS LANGUAGE

exec 3>&1 4>&2
xvfb-run -a -s "-screen 0 1280x900x24" dbus-run-session -- bash -c 'exec "$@" 1>&3 2>&4' in-window "$@" >&2
