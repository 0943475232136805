#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Many shots with the keyboard alone: selected, changed at once, taken back, saved.

many.py DRAWL DEMO: as drive.py, whose ways it goes.
"""
import json
import sys

import drive


def said(drive_, text):
    return any(text in node["name"] for node in drive_.see())


def takes(drive_):
    plan = json.loads(drive_.plan.read_text(encoding="utf-8"))
    return [shot.get("takes", 1) for shot in plan["shots"][:4]]


def many(drive_):
    before = takes(drive_)
    assert before[:3] != [7, 7, 7], before
    drive_.start()
    drive_.until("the list has the focus", lambda: drive_.focus("1A,"))
    drive_.press("shift+Down", "shift+Down")
    drive_.until("Shift+Down selects more", lambda: said(drive_, "3 shots selected"))
    drive_.press("Escape")
    drive_.until("Escape selects one again", lambda: not said(drive_, "shots selected"))
    drive_.press("ctrl+a")
    drive_.until("Ctrl+A selects all", lambda: said(drive_, "16 shots selected"))
    drive_.press("Home")
    drive_.until("Home goes to the first", lambda: drive_.focus("1A,") and not said(drive_, "shots selected"))
    drive_.press("shift+Down", "shift+Down")
    drive_.until("three are selected", lambda: said(drive_, "3 shots selected"))
    drive_.press("Return")
    drive_.until("Enter leaves the list", lambda: not drive_.focus("1C,"))
    # Rows of entries do not tell that they have the focus: capture rate, playback rate, then the body.
    drive_.press("Tab", "Tab")
    drive_.until("Tab comes to the body", lambda: drive_.focus("Body"))
    drive_.press("Tab", "Tab")
    drive_.write("7")
    drive_.press("Return")
    drive_.until("the step is named", lambda: said(drive_, "Change Takes of 3 Shots"))
    drive_.press("ctrl+s")
    drive_.until("the file has it in all three", lambda: takes(drive_) == [7, 7, 7, before[3]])
    drive_.press("ctrl+z")
    drive_.press("ctrl+s")
    drive_.until("undo takes it from all three", lambda: takes(drive_) == before)
    drive_.press("ctrl+q")
    drive_.until("the program ends", lambda: drive_.program.poll() == 0)


if __name__ == "__main__":
    drive.run(*sys.argv[1:], many)
