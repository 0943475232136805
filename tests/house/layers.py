#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Checks that no layer includes what lies above it: core <- plan <- draw <- export <- cli, and app on top.

layers.py SRC: reads every .c and .h below SRC. Each layer has one row: the layers and the libraries it may include.
"""
import pathlib
import re
import sys

GLIB = r"glib\.h|glib-object\.h|glib/.*|gio/.*|gobject/.*|json-glib/.*"
STANDARD = r"[a-z0-9_]+\.h|sys/.*"
ROWS = {
    "core": ({"core"}, r"glib\.h|string\.h|math\.h|errno\.h|stdlib\.h"),
    "plan": ({"core", "plan"}, f"{GLIB}|{STANDARD}"),
    "draw": ({"core", "plan", "draw"}, rf"{GLIB}|cairo.*\.h|pango/.*|{STANDARD}"),
    "export": ({"core", "plan", "draw", "export"}, rf"{GLIB}|cairo.*\.h|pango/.*|{STANDARD}"),
    "cli": ({"core", "plan", "draw", "export", "cli"}, f"{GLIB}|{STANDARD}"),
    "app": ({"core", "plan", "draw", "export", "app"}, r"glib-unix\.h|gtk/.*|gdk/.*|adwaita\.h|cairo.*\.h|pango/.*|" + f"{GLIB}|{STANDARD}"),
}
INCLUDE = re.compile(r'^\s*#\s*include\s*([<"])([^>"]+)[>"]', re.M)


def faults(source):
    for path in sorted(source.glob("*/*.[ch]")):
        layer = path.parent.name
        if layer not in ROWS:
            yield f"{path}: no layer is called {layer}"
            continue
        own, libraries = ROWS[layer]
        for bracket, name in INCLUDE.findall(path.read_text(encoding="utf-8")):
            if bracket == '"' and name.split("/")[0] in own:
                continue
            if bracket == "<" and re.fullmatch(libraries, name) and not (layer != "app" and re.match(r"gtk|gdk|adwaita", name)):
                continue
            yield f"{path}: {layer} may not include {name}"


found = list(faults(pathlib.Path(sys.argv[1])))
print("\n".join(found) if found else "every include runs down the house")
sys.exit(1 if found else 0)
