#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The demo plan: it carries the shipped bodies unchanged, and shows what Drawl is for.

demo.py DATA DRAWL_CLI
"""
import collections
import json
import pathlib
import subprocess
import sys
from fractions import Fraction

from tap import Rows

DATA = pathlib.Path(sys.argv[1]).resolve()
DRAWL_CLI = sys.argv[2]
DEMO = DATA / "demo" / "glass.drawl"
PLAN = json.loads(DEMO.read_text("utf-8"))
BODIES = {path.stem: json.loads(path.read_text("utf-8")) for path in DATA.glob("bodies/*.json")}


def checked():
    run = subprocess.run([DRAWL_CLI, "check", str(DEMO), "--json"], stdout=subprocess.PIPE, check=False)
    assert run.returncode == 1, f"some shots are not as hired, so it exits 1, not {run.returncode}"
    return json.loads(run.stdout)["shots"]


def check_copy(hired):
    profile = hired["profile"]
    assert profile == BODIES[profile["id"]], "the copy in the plan is not what is shipped"


def check_verdicts(shots):
    verdicts = collections.Counter(shot["verdict"] for shot in shots)
    assert [shot["slate"] for shot in shots] == [shot["slate"] for shot in PLAN["shots"]]
    assert set(verdicts) == {"as-hired", "needs-licence", "not-on-this-body"}
    assert min(verdicts.values()) >= 3, verdicts


def reasons(shot):
    return [reason["reason"] if isinstance(reason, dict) else reason for reason in shot["reasons"]]


def check_pair(shots):
    """Some shot needs two licences together."""
    assert any(len(shot["licences"]) == 2 for shot in shots if shot["verdict"] == "needs-licence")


def check_further_licence(shots):
    """2D: the size takes a licence, and so does the rate; both are said."""
    texts = [reason["text"].replace("\u00a0", " ") for shot in shots if shot["slate"] == "2D" for reason in shot["reasons"]]
    assert "48 fps takes a licence for the rate, too; once open, this goes up to 30 fps without it" in texts, texts


def check_reason(shots, reason):
    assert any(reason in reasons(shot) for shot in shots), f"no shot shows {reason}"


def capture(shot):
    return Fraction(shot["capture_rate"])


def playback(shot):
    return Fraction(shot.get("playback_rate", PLAN["playback_rate"]))


def check_shot(what, test):
    assert any(test(shot) for shot in PLAN["shots"]), f"no shot is {what}"


KINDS = [
    ("under-cranked", lambda shot: capture(shot) < playback(shot)),
    ("in real time with sound", lambda shot: capture(shot) == playback(shot) and shot.get("audio_tracks", 0) > 0),
    ("played at 23.976", lambda shot: playback(shot) == Fraction(24000, 1001)),
    ("played at 29.97 with drop-frame code", lambda shot: playback(shot) == Fraction(30000, 1001) and shot.get("drop")),
    ("shot on film", lambda shot: shot["body"] == "C" and "codec" not in shot),
    ("wished for", lambda shot: shot.get("must") is False),
    ("above 1000 fps", lambda shot: capture(shot) > 1000),
]


def check_long_take():
    """Some take on film is longer than the small magazine and shorter than the large one."""
    feet = sorted(Fraction(magazine["feet"]) for magazine in BODIES["skein-16"]["magazines"])
    for shot in PLAN["shots"]:
        if shot["body"] == "C" and "action_s" in shot:
            rolled = sum(Fraction(shot.get(key, "0")) for key in ("action_s", "handle_before_s", "handle_after_s"))
            if feet[0] < rolled * capture(shot) / 40 < feet[-1]:
                return
    raise AssertionError("none")


def main():
    rows = Rows()
    for hired in PLAN["bodies"]:
        rows.run(f"body {hired['id']} is the shipped one", check_copy, hired)
    for what, test in KINDS:
        rows.run(f"some shot is {what}", check_shot, what, test)
    rows.run("some take is longer than the small magazine", check_long_take)
    shots = checked()
    rows.run("all three verdicts, three times and more", check_verdicts, shots)
    rows.run("two licences together", check_pair, shots)
    rows.run("both licences of 2D are reasons", check_further_licence, shots)
    for reason in ("rate-over", "rate-not-licensed", "size-not-licensed", "codec-not-licensed", "rate-takes-more", "buffer-too-short"):
        rows.run(f"reason {reason}", check_reason, shots, reason)
    rows.close()


main()
