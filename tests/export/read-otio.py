#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""An independent reader of OpenTimelineIO JSON, and what it finds in what the program writes (TAP).

read-otio.py DRAWL_CLI DATA: reads the timelines of DATA/demo/glass.drawl and of plans made at random, with Python's json
and once more with jq. Fields are those of the format's own list of serialized fields.
"""
import functools
import json
import pathlib
import subprocess
import sys
import tempfile

import plans

FIELDS = {
    "RationalTime.1": {"rate", "value"},
    "TimeRange.1": {"duration", "start_time"},
    "LinearTimeWarp.1": {"effect_name", "metadata", "name", "time_scalar"},
    "Clip.2": {"active_media_reference_key", "effects", "enabled", "markers", "media_references", "metadata", "name",
               "source_range"},
    "Timeline.1": {"global_start_time", "metadata", "name", "tracks"},
    "Track.1": {"children", "effects", "enabled", "kind", "markers", "metadata", "name", "source_range"},
    "Stack.1": {"children", "effects", "enabled", "markers", "metadata", "name", "source_range"},
    "MissingReference.1": {"available_image_bounds", "available_range", "metadata", "name"},
    "Marker.2": {"color", "comment", "marked_range", "metadata", "name"},
}
# Length of a clip on the track, in order, as jq reads it.
JQ = '.tracks.children[] | select(.kind == "Video") | [.children[].source_range.duration.value]'


def check_fields(value):
    """Every schema has its fields and no others."""
    for inner in value if isinstance(value, list) else value.values() if isinstance(value, dict) else []:
        check_fields(inner)
    if isinstance(value, dict) and "OTIO_SCHEMA" in value:
        plans.same(set(value) - {"OTIO_SCHEMA"}, FIELDS[value["OTIO_SCHEMA"]])


def seconds(time):
    return time["value"] / time["rate"]


def check_clip(plan, shot, clip):
    source, media = clip["source_range"], clip["media_references"][clip["active_media_reference_key"]]
    available = media["available_range"]
    plans.same((clip["OTIO_SCHEMA"], clip["name"], media["OTIO_SCHEMA"]), ("Clip.2", shot.slate, "MissingReference.1"))
    # on the track: whole frames of the plan's rate
    plans.same(source["duration"], {"OTIO_SCHEMA": "RationalTime.1", "rate": float(plan.rate),
                                    "value": float(shot.record_frames)})
    plans.near(seconds(source["start_time"]), shot.before, 1e-9)
    # the media: one take in real time, in frames of the capture rate
    plans.same((available["start_time"]["value"], available["duration"]["value"]), (0.0, float(shot.take_frames)))
    plans.same(available["duration"]["rate"], float(shot.capture))
    # the warp: as much of the media is shown as the action lasts, but for the last frame
    scalars = [effect["time_scalar"] for effect in clip["effects"]]
    plans.same(scalars, [] if shot.speed == 1 else [float(shot.speed)])
    shown = seconds(source["duration"]) * (scalars[0] if scalars else 1)
    assert -1e-9 <= shown - float(shot.action) <= float(shot.speed / plan.rate) + 1e-9, (shown, shot.action)
    plans.same([marker["comment"] for marker in clip["markers"]], [shot.notes] if shot.notes else [])
    own = clip["metadata"]["drawl"]
    plans.same((plans.EXACT(own["time_scalar"]), own["record_frames"]), (shot.speed, shot.record_frames))


def check(program, plan, path):
    timeline = json.loads(path.read_text(encoding="utf-8"))
    check_fields(timeline)
    (track,) = timeline["tracks"]["children"]
    plans.same((timeline["name"], track["kind"]), (plan.title, "Video"))
    start = program.frame(plan.rate, plan.drop, "01:00:00" + (";" if plan.drop else ":") + "00")
    plans.same(timeline["global_start_time"], {"OTIO_SCHEMA": "RationalTime.1", "rate": float(plan.rate),
                                               "value": float(start)})
    plans.same(len(track["children"]), len(plan.shots))
    at = 0
    for shot, clip in zip(plan.shots, track["children"]):
        check_clip(plan, shot, clip)
        plans.same(at, shot.record_in)
        at += int(clip["source_range"]["duration"]["value"])
    lengths = json.loads(subprocess.run(["jq", JQ, str(path)], capture_output=True, check=True).stdout)
    plans.same(lengths, [shot.record_frames for shot in plan.shots])


def main(cli, data):
    program = plans.Program(cli)
    with tempfile.TemporaryDirectory() as folder:
        scratch = pathlib.Path(folder)

        def test(plan):
            check(program, plan, program.export(plan, "otio", scratch / "x.otio"))

        def test_no_timecode():
            path = scratch / "no-timecode.drawl"
            path.write_text('{"format": "drawl-plan", "version": 1, "playback_rate": "12.5", "shots": []}', encoding="utf-8")
            timeline = json.loads(program.export(plans.Plan(path), "otio", scratch / "x.otio").read_text())
            plans.same(timeline["global_start_time"], None)

        demo = plans.Plan(pathlib.Path(data, "demo/glass.drawl"))
        tests = [("otio/demo", functools.partial(test, demo)), ("otio/no-timecode", test_no_timecode)]
        for seed in range(24):
            plan = plans.random_plan(scratch / f"{seed}.drawl", seed)
            tests.append((f"otio/random-{seed}", functools.partial(test, plan)))
        return plans.report(tests)


sys.exit(main(*sys.argv[1:]))
