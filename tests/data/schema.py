#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The JSON Schemas: sound in themselves, true of everything that is shipped or written, and strict.

schema.py DATA REWRITE: DATA is the data folder; REWRITE is a program that reads a plan and prints what Drawl would save.
"""
import copy
import json
import pathlib
import subprocess
import sys

import jsonschema

from tap import Rows

DATA = pathlib.Path(sys.argv[1]).resolve()
REWRITE = sys.argv[2]
SCHEMAS = {name: json.loads((DATA / "schema" / f"drawl-{name}.schema.json").read_text("utf-8")) for name in ("body", "plan")}


def validator(name):
    base = (DATA / "schema" / f"drawl-{name}.schema.json").as_uri()
    return jsonschema.Draft202012Validator(SCHEMAS[name], resolver=jsonschema.RefResolver(base, SCHEMAS[name]))


VALIDATORS = {name: validator(name) for name in SCHEMAS}


def accept(name, document):
    VALIDATORS[name].validate(document)


def refuse(name, document):
    assert not VALIDATORS[name].is_valid(document), "the schema lets it pass"


def check_described(schema, path=""):
    """Every key that a schema knows says what it is."""
    if isinstance(schema, list):
        for index, item in enumerate(schema):
            check_described(item, f"{path}/{index}")
    if not isinstance(schema, dict):
        return
    for key, value in schema.items():
        if key == "properties" and not any(part in path.split("/") for part in ("if", "then", "else")):
            for name, about in value.items():
                assert len(about.get("description", "")) > 10, f"{path}/{name} has no description"
        check_described(value, f"{path}/{key}")


def body(name):
    return json.loads((DATA / "bodies" / f"{name}.json").read_text("utf-8"))


def plan():
    return json.loads((DATA / "demo" / "glass.drawl").read_text("utf-8"))


def changed(document, path, value):
    """A copy of @document with @value at @path; `...` takes the member away."""
    document = copy.deepcopy(document)
    place = document
    for step in path[:-1]:
        place = place[step]
    if value is ...:
        del place[path[-1]]
    else:
        place[path[-1]] = value
    return document


# Name, schema, document, where in it, what stands there instead.
BROKEN = [
    ("body of another format", "body", body("treadle-4"), ["format"], "drawl-plan"),
    ("body of a newer version", "body", body("treadle-4"), ["version"], 2),
    ("version as text", "body", body("treadle-4"), ["version"], "1"),
    ("no id", "body", body("treadle-4"), ["id"], ...),
    ("empty name", "body", body("treadle-4"), ["name"], ""),
    ("no kind", "body", body("treadle-4"), ["kind"], ...),
    ("unknown kind", "body", body("treadle-4"), ["kind"], "tape"),
    ("source as text", "body", body("treadle-4"), ["source"], "a table"),
    ("source date of another form", "body", body("treadle-4"), ["source", "date"], "25.11.2026"),
    ("price with three decimals", "body", body("treadle-4"), ["price_day"], "180.005"),
    ("price below zero", "body", body("treadle-4"), ["price_day"], -1),
    ("price with its currency", "body", body("treadle-4"), ["price_day"], "180 EUR"),
    ("rates as a list", "body", body("treadle-4"), ["rates"], ["24"]),
    ("rate step below zero", "body", body("treadle-4"), ["rates", "step"], "-1"),
    ("listed rate of zero", "body", body("treadle-4"), ["rates", "also", 0], "0"),
    ("listed rate over zero", "body", body("treadle-4"), ["rates", "also", 0], "24/0"),
    ("listed rate with a unit", "body", body("treadle-4"), ["rates", "also", 0], "24 fps"),
    ("no sizes", "body", body("treadle-4"), ["sizes"], []),
    ("size without an id", "body", body("treadle-4"), ["sizes", 0, "id"], ...),
    ("size without a width", "body", body("treadle-4"), ["sizes", 0, "width"], ...),
    ("size of half a pixel", "body", body("treadle-4"), ["sizes", 0, "width"], 0.5),
    ("window below zero", "body", body("treadle-4"), ["sizes", 0, "window_width_mm"], -1),
    ("no codecs", "body", body("treadle-4"), ["codecs"], ...),
    ("codec without a law", "body", body("treadle-4"), ["codecs", 2, "law"], ...),
    ("codec with two laws", "body", body("treadle-4"), ["codecs", 2, "payload"], {"kind": "constant", "mbps": "50"}),
    ("level of an open law", "body", body("treadle-4"), ["codecs", 2, "level"], "h265-5.1"),
    ("level as a number", "body", body("treadle-4"), ["codecs", 0, "level"], 6.1),
    ("unknown kind of payload", "body", body("treadle-4"), ["codecs", 0, "payload", "kind"], "some"),
    ("scaling law without its rate", "body", body("treadle-4"), ["codecs", 0, "payload", "at"], ...),
    ("scaling law without its data rate", "body", body("treadle-4"), ["codecs", 0, "payload", "mbps"], ...),
    ("uncompressed law without sampling", "body", body("treadle-4"), ["codecs", 1, "payload", "sampling"], ...),
    ("unknown sampling", "body", body("treadle-4"), ["codecs", 1, "payload", "sampling"], "411"),
    ("sample of no bits", "body", body("treadle-4"), ["codecs", 1, "payload", "stored_bits"], 0),
    ("constant law without its data rate", "body", body("cruet-2"), ["codecs", 0, "payload", "mbps"], ...),
    ("fixed law without its bytes", "body", body("cruet-2"), ["codecs", 0, "payload"], {"kind": "fixed"}),
    ("fixed law with a width alone", "body", body("cruet-2"), ["codecs", 0, "payload"], {"kind": "fixed", "frame_bytes": 9, "width": 9}),
    ("licence without a name", "body", body("treadle-4"), ["licences", 0, "name"], ...),
    ("licence that requires a number", "body", body("treadle-4"), ["licences", 3, "requires"], [1]),
    ("no limits", "body", body("treadle-4"), ["limits"], []),
    ("limits missing", "body", body("treadle-4"), ["limits"], ...),
    ("limit without a size", "body", body("treadle-4"), ["limits", 0, "sizes"], []),
    ("limit without a codec", "body", body("treadle-4"), ["limits", 0, "codecs"], ...),
    ("limit without a lowest rate", "body", body("treadle-4"), ["limits", 0, "lowest_rate"], ...),
    ("limit without a highest rate", "body", body("treadle-4"), ["limits", 0, "highest_rate"], ...),
    ("highest rate as a list", "body", body("treadle-4"), ["limits", 0, "highest_rate"], ["60"]),
    ("card without a speed", "body", body("treadle-4"), ["cards", 0, "class"], ...),
    ("card of no bytes", "body", body("treadle-4"), ["cards", 0, "bytes"], 0),
    ("SD card larger than there are", "body", body("cruet-2"), ["cards", 0, "bytes"], 128000000000001),
    ("card bytes as text", "body", body("treadle-4"), ["cards", 0, "bytes"], "512 GB"),
    ("more sound than any body has", "body", body("treadle-4"), ["audio_tracks"], 65),
    ("sound as text", "body", body("treadle-4"), ["audio_tracks"], "4"),
    ("power as a number", "body", body("treadle-4"), ["power"], 58),
    ("part without a name", "body", body("treadle-4"), ["fit", 0, "what"], ...),
    ("parts as text", "body", body("treadle-4"), ["fit"], "a mount"),
    ("magazines on a digital body", "body", body("treadle-4"), ["magazines"], body("skein-16")["magazines"]),
    ("buffer without bytes", "body", body("ferrule"), ["buffer", "bytes"], ...),
    ("more than all before the trigger", "body", body("ferrule"), ["buffer", "pre_percent"], 101),
    ("buffer that is never written out", "body", body("ferrule"), ["buffer", "write_mb_s"], 0),
    ("gate without a gauge", "body", body("skein-16"), ["sizes", 0, "gauge"], ...),
    ("codecs on a film body", "body", body("skein-16"), ["codecs"], body("cruet-2")["codecs"]),
    ("cards on a film body", "body", body("skein-16"), ["cards"], body("cruet-2")["cards"]),
    ("buffer on a film body", "body", body("skein-16"), ["buffer"], body("ferrule")["buffer"]),
    ("limit of a codec on a film body", "body", body("skein-16"), ["limits", 0, "codecs"], ["raw"]),
    ("magazine of no length", "body", body("skein-16"), ["magazines", 0, "feet"], 0),
    ("plan of another format", "plan", plan(), ["format"], "drawl-body"),
    ("plan of a newer version", "plan", plan(), ["version"], 2),
    ("no version", "plan", plan(), ["version"], ...),
    ("title as a number", "plan", plan(), ["title"], 5),
    ("day of another form", "plan", plan(), ["day"], "9 March"),
    ("mains of 55 Hz", "plan", plan(), ["mains_hz"], 55),
    ("mains as text", "plan", plan(), ["mains_hz"], "50"),
    ("whole card in reserve", "plan", plan(), ["reserve_percent"], 100),
    ("reserve of three digits", "plan", plan(), ["reserve_percent"], "100"),
    ("takes that span as text", "plan", plan(), ["takes_span"], "no"),
    ("playback of zero", "plan", plan(), ["playback_rate"], 0),
    ("body without an id", "plan", plan(), ["bodies", 0, "id"], ...),
    ("body without a profile", "plan", plan(), ["bodies", 0, "profile"], ...),
    ("tier as text", "plan", plan(), ["bodies", 0, "tier"], "rate"),
    ("half a card", "plan", plan(), ["bodies", 0, "cards"], 0.5),
    ("days below zero", "plan", plan(), ["bodies", 0, "days"], -1),
    ("profile that is broken", "plan", plan(), ["bodies", 0, "profile", "sizes"], []),
    ("shots as an object", "plan", plan(), ["shots"], {}),
    ("shot without a slate", "plan", plan(), ["shots", 0, "slate"], ...),
    ("shot with an empty slate", "plan", plan(), ["shots", 0, "slate"], ""),
    ("slate with a space before it", "plan", plan(), ["shots", 0, "slate"], " 1A"),
    ("slate with a space behind it", "plan", plan(), ["shots", 0, "slate"], "1A "),
    ("slate of two lines", "plan", plan(), ["shots", 0, "slate"], "1\nA"),
    ("slate with a line end", "plan", plan(), ["shots", 0, "slate"], "1A\n"),
    ("slate with an escape", "plan", plan(), ["shots", 0, "slate"], "1\x1bA"),
    ("version as text", "plan", plan(), ["version"], "1"),
    ("takes as text", "plan", plan(), ["shots", 0, "takes"], "2"),
    ("action with a unit", "plan", plan(), ["shots", 0, "action_s"], "5 s"),
    ("action with spaces", "plan", plan(), ["shots", 0, "action_s"], " 0.5 "),
    ("capture of zero", "plan", plan(), ["shots", 0, "capture_rate"], "0"),
    ("capture below zero", "plan", plan(), ["shots", 0, "capture_rate"], "-240"),
    ("capture with letters behind", "plan", plan(), ["shots", 0, "capture_rate"], "24/1001x"),
    ("action of no time", "plan", plan(), ["shots", 0, "action_s"], "0"),
    ("action with a decimal comma", "plan", plan(), ["shots", 0, "action_s"], "0,45"),
    ("unknown term given", "plan", plan(), ["shots", 0, "given"], ["speed"]),
    ("term held twice", "plan", plan(), ["shots", 0, "held"], ["screen_s", "screen_s"]),
    ("order of five terms", "plan", plan(), ["shots", 0, "order"], ["capture_rate", "playback_rate", "action_s", "screen_s", "slow_factor"]),
    ("drop as a number", "plan", plan(), ["shots", 0, "drop"], 1),
    ("no take", "plan", plan(), ["shots", 0, "takes"], 0),
    ("handle below zero", "plan", plan(), ["shots", 0, "handle_before_s"], "-1"),
    ("sound as a fraction", "plan", plan(), ["shots", 0, "audio_tracks"], 1.5),
    ("must as text", "plan", plan(), ["shots", 0, "must"], "yes"),
]

# The same, but to be accepted.
SOUND = [
    ("body with a key of tomorrow", "body", body("treadle-4"), ["weight_kg"], {"with_grip": 3.2}),
    ("size with a key of tomorrow", "body", body("treadle-4"), ["sizes", 0, "crop"], "1.4"),
    ("rate as a number", "body", body("treadle-4"), ["limits", 0, "highest_rate"], 59.94),
    ("rate as a decimal", "body", body("treadle-4"), ["limits", 0, "highest_rate"], "59.94"),
    ("rate below one", "body", body("treadle-4"), ["limits", 0, "lowest_rate"], "0.5"),
    ("rate as a fraction", "body", body("treadle-4"), ["limits", 0, "lowest_rate"], "1/3"),
    ("one size in place of a list", "body", body("treadle-4"), ["limits", 0, "sizes"], "hd"),
    ("price as a number", "body", body("treadle-4"), ["price_day"], 180),
    ("card with a class and a speed", "body", body("treadle-4"), ["cards", 0, "write_mb_s"], 480),
    ("law of one size", "body", body("cruet-2"), ["codecs", 0, "payload"], {"kind": "fixed", "frame_bytes": 917504, "width": 1920, "height": 1080}),
    ("plan with a key of tomorrow", "plan", plan(), ["lamps"], []),
    ("shot with a key of tomorrow", "plan", plan(), ["shots", 0, "ramp"], {"points": []}),
    ("plan without shots", "plan", plan(), ["shots"], ...),
    ("plan without a day", "plan", plan(), ["day"], ""),
    ("capture as a number", "plan", plan(), ["shots", 0, "capture_rate"], 240),
    ("action as a fraction", "plan", plan(), ["shots", 0, "action_s"], "1001/240"),
    ("reserve as a decimal", "plan", plan(), ["reserve_percent"], "2.5"),
    ("order of all six terms", "plan", plan(), ["shots", 0, "order"], ["capture_rate", "playback_rate", "action_s", "screen_s", "slow_factor", "post_speed_percent"]),
]


def rewritten():
    text = subprocess.run([REWRITE, DATA / "demo" / "glass.drawl"], check=True, stdout=subprocess.PIPE).stdout
    return json.loads(text)


def check_rewritten():
    """What Drawl saves holds to the schema, and says what was read."""
    saved, shipped = rewritten(), plan()
    accept("plan", saved)
    assert saved["bodies"] == shipped["bodies"], "the bodies have changed"
    for before, after in zip(shipped["shots"], saved["shots"], strict=True):
        for shot in (before, after):
            shot["held"] = sorted(shot.get("held", []))
        assert before == after, f"shot {before['slate']} is saved in other words"


def main():
    rows = Rows()
    for name, schema in SCHEMAS.items():
        rows.run(f"{name} schema is sound", jsonschema.Draft202012Validator.check_schema, schema)
        rows.run(f"{name} schema describes every key", check_described, schema)
    for path in sorted(DATA.glob("bodies/*.json")):
        rows.run(f"shipped {path.name}", lambda path=path: accept("body", json.loads(path.read_text("utf-8"))))
    for path in sorted(DATA.glob("demo/*.drawl")):
        rows.run(f"shipped {path.name}", lambda path=path: accept("plan", json.loads(path.read_text("utf-8"))))
    rows.run("what is saved", check_rewritten)
    for name, schema, document, path, value in BROKEN:
        rows.run(f"refused {name}", lambda: refuse(schema, changed(document, path, value)))
    for name, schema, document, path, value in SOUND:
        rows.run(f"accepted {name}", lambda: accept(schema, changed(document, path, value)))
    rows.close()


main()
