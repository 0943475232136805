# SPDX-License-Identifier: GPL-3.0-or-later
"""What the readers of this folder share: plans made at random, and what their shots must come to.

The figures are worked out here, in fractions and from the plan's own file, and not asked of the program: capture rate C,
playback rate P, action time A and post speed r give the slow factor C/P and the screen time A * C/P / r.
"""
import fractions
import json
import math
import random
import subprocess
import traceback

EXACT = fractions.Fraction


class Shot:
    """A shot of a plan file that tells a capture rate, and an action or a screen time."""

    def __init__(self, keys, plan_rate):
        self.slate = keys["slate"]
        self.notes = keys.get("notes", "")
        self.drop = keys.get("drop", False)
        self.capture = EXACT(keys["capture_rate"])
        self.playback = EXACT(keys.get("playback_rate", plan_rate))
        self.before = EXACT(keys.get("handle_before_s", "0"))
        self.after = EXACT(keys.get("handle_after_s", "0"))
        factor = self.capture / self.playback
        post_speed = EXACT(keys.get("post_speed_percent", "100")) / 100
        if "action_s" in keys:
            self.action = EXACT(keys["action_s"])
            self.screen = self.action * factor / post_speed
        else:
            self.screen = EXACT(keys["screen_s"])
            self.action = self.screen * post_speed / factor
        self.speed = self.action / self.screen
        self.take_frames = math.ceil((self.before + self.action + self.after) * self.capture)


class Plan:
    """The shots of a plan file, end to end."""

    def __init__(self, path):
        keys = json.loads(path.read_text(encoding="utf-8"))
        self.path = path
        self.title = keys.get("title", "")
        self.rate = EXACT(keys.get("playback_rate", "24"))
        self.shots = [Shot(shot, self.rate) for shot in keys["shots"]]
        own = [shot.drop for shot in self.shots if shot.playback == self.rate]
        self.drop = bool(own) and all(own)
        at = 0
        for shot in self.shots:
            shot.record_in = at
            shot.record_frames = math.ceil(shot.screen * self.rate)
            at += shot.record_frames


RATES = ["24", "25", "30", "24000/1001", "30000/1001", "60000/1001", "50", "60"]
CAPTURES = ["6", "24", "25", "48", "60000/1001", "96", "120", "240", "1000", "12.5"]
TIMES = ["1", "0.45", "1/3", "12", "0.025", "7/11", "40", "125"]


def random_plan(path, seed):
    """Writes a plan of 12 shots; the same seed gives the same plan."""
    draw = random.Random(seed)
    rate = RATES[seed % len(RATES)]
    drops = rate in ("30000/1001", "60000/1001") and seed % 3 != 0
    shots = []
    for number in range(12):
        playback = draw.choice([rate, rate, rate, draw.choice(RATES)])
        shot = {"slate": f"{number + 1}{draw.choice(['', 'A', ' b', 'é', '/x', 'a long name'])}",
                "capture_rate": draw.choice(CAPTURES + [playback]), "playback_rate": playback,
                draw.choice(["action_s", "screen_s"]): draw.choice(TIMES)}
        if draw.random() < 0.3:
            shot["post_speed_percent"] = draw.choice(["50", "200", "62.5"])
        if draw.random() < 0.5:
            shot["handle_before_s"] = draw.choice(["0.5", "2", "1/3"])
            shot["handle_after_s"] = draw.choice(["1", "1.5"])
        if draw.random() < 0.4:
            shot["notes"] = draw.choice(["Mind the glass", "one\ntwo", "\"said\", and done"])
        if playback in ("30000/1001", "60000/1001") and (drops if playback == rate else draw.random() < 0.5):
            shot["drop"] = True
        shots.append(shot)
    keys = {"format": "drawl-plan", "version": 1, "title": f"Trial {seed}", "playback_rate": rate, "shots": shots}
    path.write_text(json.dumps(keys), encoding="utf-8")
    return Plan(path)


class Program:
    """The built command line."""

    def __init__(self, program):
        self.program = program
        self.codes = {}

    def run(self, *args):
        done = subprocess.run([self.program, *map(str, args)], capture_output=True, check=False)
        assert done.returncode == 0 and done.stderr == b"", (args, done.stderr.decode())
        return done.stdout.decode()

    def export(self, plan, form, path):
        said = json.loads(self.run("export", plan.path, "--as", form, "-o", path, "--json"))
        assert said["shots"] == len(plan.shots) and said["as"] == form, said
        return path

    def frame(self, rate, drop, code):
        """The frame of a code, as `drawl-cli code` counts it."""
        key = (rate, drop, code)
        if key not in self.codes:
            args = ["code", "--rate", rate, "--code", code, "--json"] + (["--drop"] if drop else [])
            self.codes[key] = json.loads(self.run(*args))["frames"]
        return self.codes[key]


def same(found, expected):
    assert found == expected, f"\n   found {found!r}\nexpected {expected!r}"


def near(found, expected, tolerance):
    assert abs(found - expected) <= tolerance, f"\n   found {found!r}\nexpected {float(expected)!r}"


def report(tests):
    """Runs (path, function) pairs as TAP; the exit code."""
    print(f"1..{len(tests)}")
    failed = 0
    for number, (path, function) in enumerate(tests, 1):
        try:
            function()
            print(f"ok {number} - {path}")
        except Exception:  # every kind of failure is one failed row
            failed += 1
            print(f"not ok {number} - {path}")
            print("\n".join("# " + line for line in traceback.format_exc().splitlines()))
    return 1 if failed else 0
