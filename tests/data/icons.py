#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The icons: each is sound SVG, is drawn at 16 pixels, and differs from every other there in shape, not in colour alone.

icons.py TOP
"""
import functools
import itertools
import pathlib
import re
import subprocess
import sys
import xml.etree.ElementTree as tree

from tap import Rows

TOP = pathlib.Path(sys.argv[1]).resolve()
DATA = TOP / "data"
SIZE = 16
SVG = "{http://www.w3.org/2000/svg}"
NAMES = [
    "apps/org.drawl.Drawl",
    "apps/org.drawl.Drawl-symbolic",
    "actions/drawl-hold-symbolic",
    "actions/drawl-held-symbolic",
    "actions/drawl-as-hired-symbolic",
    "actions/drawl-needs-licence-symbolic",
    "actions/drawl-not-on-this-body-symbolic",
    "actions/drawl-body-symbolic",
    "actions/drawl-filter-symbolic",
    "actions/drawl-order-symbolic",
    "actions/drawl-shots-symbolic",
]


def find(name):
    found = list(DATA.glob(f"icons/hicolor/*/{name}.svg"))
    assert len(found) == 1, f"{name}: {len(found)} files"
    return found[0]


@functools.lru_cache(maxsize=None)
def alpha(path):
    """Opacity of each pixel, 0 to 255, as the icon is drawn at 16 pixels."""
    size = ["-w", str(SIZE), "-h", str(SIZE)]
    png = subprocess.run(["rsvg-convert", *size, str(path)], check=True, stdout=subprocess.PIPE).stdout
    raw = subprocess.run(["ffmpeg", "-v", "error", "-f", "png_pipe", "-i", "-", "-pix_fmt", "rgba", "-f", "rawvideo", "-"],
                         input=png, check=True, stdout=subprocess.PIPE).stdout
    assert len(raw) == SIZE * SIZE * 4
    return raw[3::4]


def check_drawn(path):
    shape = alpha(path)
    assert sum(value > 128 for value in shape) > SIZE, "hardly anything is drawn"
    assert sum(value < 128 for value in shape) > 0, "there is no shape"


def check_symbolic(path):
    """One grey, no strokes: whoever shows it gives it its colour."""
    for element in tree.parse(path).iter():
        assert element.tag in {SVG + tag for tag in ("svg", "g", "path", "rect", "circle")}, element.tag
        assert element.get("fill", "#222222") == "#222222" and element.get("stroke") is None


def check_differ(one, other):
    differ = sum(abs(a - b) > 128 for a, b in zip(alpha(one), alpha(other)))
    assert differ >= 24, f"only {differ} of {SIZE * SIZE} pixels differ"


def check_all(paths):
    stray = set(DATA.glob("icons/**/*.svg")) - set(paths.values())
    assert not stray, f"not tested: {stray}"


def check_named(paths):
    sources = [*TOP.glob("ui/*.ui"), *TOP.glob("src/app/*.c")]
    named = {name for source in sources for name in re.findall(r"drawl-[a-z-]+-symbolic", source.read_text("utf-8"))}
    assert named <= set(paths), f"not shipped: {named - set(paths)}"


def main():
    rows = Rows()
    paths = {name.split("/")[1]: find(name) for name in NAMES}
    for name, path in paths.items():
        rows.run(f"{name} is drawn", check_drawn, path)
        if name.endswith("-symbolic"):
            rows.run(f"{name} takes its colour from outside", check_symbolic, path)
    actions = [name for name in paths if name.startswith("drawl-")]
    for one, other in itertools.combinations(actions, 2):
        rows.run(f"{one} and {other} differ in shape", check_differ, paths[one], paths[other])
    rows.run("no icon goes untested", check_all, paths)
    rows.run("each icon that the window names is there", check_named, paths)
    rows.close()


main()
