#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The manual pages: each is formatted without a warning, names every key of its schema or window, and its example is sound.

manual.py TOP
"""
import json
import pathlib
import re
import subprocess
import sys

import jsonschema

from tap import Rows

TOP = pathlib.Path(sys.argv[1]).resolve()
DATA = TOP / "data"
SPECIAL = {r"\-": "-", r"\(dq": '"', r"\[mu]": "×", r"\(di": "÷", r"\&": "", "\\ ": " "}


def plain(path):
    """The words of a page, without its marks."""
    text = path.read_text("utf-8")
    for mark, sign in SPECIAL.items():
        text = text.replace(mark, sign)
    return text


def check_format(path):
    command = ["man", "--warnings=w", "-E", "UTF-8", "-Tutf8", "-Z", "-l", str(path)]
    run = subprocess.run(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, check=True, text=True)
    assert not run.stderr, run.stderr
    assert len(run.stdout) > 1000, "the page is empty"


def keys(schema):
    """Every key that a schema describes."""
    if isinstance(schema, list):
        for item in schema:
            yield from keys(item)
    if isinstance(schema, dict):
        for name, value in schema.items():
            if name == "properties":
                yield from (key for key, about in value.items() if "description" in about)
            yield from keys(value)


def check_keys(page, schema):
    known = sorted(set(keys(schema)))
    missing = [key for key in known if not re.search(rf"^\.BR? .*\b{key}\b", page, re.M)]
    assert len(known) > 20, "the schema has no keys"
    assert not missing, f"not in the manual: {missing}"


def check_example(page, path):
    schema = json.loads(path.read_text("utf-8"))
    example = json.loads(re.search(r"^\.SH EXAMPLE\n.*?^\.nf\n(.*?)^\.fi", page, re.M | re.S).group(1))
    jsonschema.Draft202012Validator(schema, resolver=jsonschema.RefResolver(path.as_uri(), schema)).validate(example)


def check_accelerators(page):
    """drawl(1) lists the keys of the table in src/app/application.c."""
    source = (TOP / "src" / "app" / "application.c").read_text("utf-8")
    table = re.search(r"Keys keys\[\] = \{(.*?)\n\};", source, re.S).group(1)
    spelled = [keys for row in re.findall(r'\{"[^"]+", \{(.*?)\}\}', table) for keys in re.findall(r'"([^"]+)"', row)]
    pressed = [re.sub(r"<(\w+)>", r"\1+", keys).replace("Control", "Ctrl") for keys in spelled if "KP_" not in keys]
    pressed = [re.sub(r"\w+$", lambda key: key[0][0].upper() + key[0][1:], keys) for keys in pressed]
    missing = [keys for keys in pressed if not re.search(rf"(^|, ){re.escape(keys)}($|[,\t])", page, re.M)]
    assert len(pressed) >= 10, "the table was not found"
    assert not missing, f"not in the manual: {missing}"


def main():
    rows = Rows()
    for path in sorted(DATA.glob("man/*")):
        rows.run(f"{path.name} is formatted", check_format, path)
    for name in ("body", "plan"):
        page = plain(DATA / "man" / f"drawl-{name}.5")
        schema = DATA / "schema" / f"drawl-{name}.schema.json"
        rows.run(f"drawl-{name}.5 has every key", check_keys, page, json.loads(schema.read_text("utf-8")))
        rows.run(f"drawl-{name}.5 has a sound example", check_example, page, schema)
    rows.run("drawl.1 has every key of the window", check_accelerators, plain(DATA / "man" / "drawl.1"))
    rows.close()


main()
