#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""An independent reader of edit decision lists, and what it finds in those that the program writes (TAP).

read-edl.py DRAWL_CLI DATA: reads the lists of DATA/demo/glass.drawl and of plans made at random. Record codes are turned
into frames by `drawl-cli code`, all other figures are worked out here.
"""
import dataclasses
import functools
import pathlib
import re
import sys
import tempfile

import plans

EVENT = re.compile(r"(\d{3,})  ([A-Z0-9_]{1,8}) +V +C +(\S+) (\S+) (\S+) (\S+)")
SPEED = re.compile(r"M2   ([A-Z0-9_]{1,8}) +(-?\d{3,}\.\d+) +(\S+)")


@dataclasses.dataclass
class Event:
    number: int
    reel: str
    codes: list  # source in and out, record in and out
    speed: plans.EXACT = None  # frames of the source a second; None: real time
    speed_text: str = ""
    speed_in: str = ""
    clip: str = None
    comments: list = dataclasses.field(default_factory=list)


def read(path):
    """Title, whether it counts drop-frame, events."""
    text = path.read_bytes().decode("utf-8")
    assert text.count("\n") == text.count("\r\n"), "lines end in CR LF"
    title, fcm, *lines = text.split("\r\n")
    counting = {"FCM: DROP FRAME": True, "FCM: NON-DROP FRAME": False}[fcm]
    events = []
    for line in filter(None, lines):
        if match := EVENT.fullmatch(line):
            events.append(Event(int(match[1]), match[2], list(match.groups()[2:])))
        elif match := SPEED.fullmatch(line):
            plans.same(match[1], events[-1].reel)
            events[-1].speed, events[-1].speed_text, events[-1].speed_in = plans.EXACT(match[2]), match[2], match[3]
        elif line.startswith("* FROM CLIP NAME: "):
            events[-1].clip = line.removeprefix("* FROM CLIP NAME: ")
        else:
            assert line.startswith("* COMMENT: "), line
            events[-1].comments.append(line.removeprefix("* COMMENT: "))
    return title.removeprefix("TITLE: "), counting, events


def check(program, plan, path):
    title, drop, events = read(path)
    frame = functools.partial(program.frame, plan.rate, drop)
    start = frame("01:00:00" + (";" if drop else ":") + "00")
    plans.same(title, plan.title)
    plans.same(drop, plan.drop)
    plans.same([event.number for event in events], list(range(1, len(plan.shots) + 1)))
    plans.same(len({event.reel for event in events}), len(events))
    for shot, event in zip(plan.shots, events):
        source_in, source_out, record_in, record_out = map(frame, event.codes)
        assert all((";" in code) == drop for code in event.codes), event.codes
        plans.same(event.clip, shot.slate)
        plans.same(event.comments, [line for line in shot.notes.split("\n") if line])
        # the record: end to end, each as long as its screen time
        plans.same((record_in - start, record_out - record_in), (shot.record_in, shot.record_frames))
        # the source: real time, behind the handle
        plans.same(source_in, int(shot.before * plan.rate))
        plans.near(source_out - source_in, max(1, shot.record_frames * shot.speed), plans.EXACT(1, 2))
        # the speed
        if shot.speed == 1:
            plans.same(event.speed, None)
            continue
        exact = plan.rate * shot.speed
        plans.same(event.speed_in, event.codes[0])
        assert event.speed > 0, "no still frame"
        plans.near(event.speed, exact, max(exact / 200, plans.EXACT(1, 2000000)))
        assert re.fullmatch(r"\d{3,}\.\d", event.speed_text) or abs(exact - round(exact, 1)) > exact / 200, event.speed_text


def main(cli, data):
    program = plans.Program(cli)
    with tempfile.TemporaryDirectory() as folder:
        scratch = pathlib.Path(folder)

        def test(plan):
            check(program, plan, program.export(plan, "edl", scratch / "x.edl"))

        demo = plans.Plan(pathlib.Path(data, "demo/glass.drawl"))
        tests = [("edl/demo", functools.partial(test, demo))]
        for seed in range(24):
            plan = plans.random_plan(scratch / f"{seed}.drawl", seed)
            tests.append((f"edl/random-{seed}", functools.partial(test, plan)))
        return plans.report(tests)


sys.exit(main(*sys.argv[1:]))
