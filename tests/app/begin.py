#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The first minutes with the keyboard alone: a plan from nothing, its body and its first shot.

begin.py DRAWL DEMO: as drive.py, whose ways it goes; the demo is not opened.
"""
import subprocess
import sys

import drive


def begin(drive_):
    drive_.program = subprocess.Popen([drive_.command[0]])
    drive_.until("the welcome offers a new plan", lambda: drive_.focus("New Plan"))
    drive_.press("Return")
    drive_.until("a plan without bodies asks for one", lambda: drive_.focus("Choose a Body"))
    drive_.press("Return")
    drive_.until("the first body has the focus", lambda: drive_.focus("Cruet 2"))
    drive_.press("Down")
    drive_.until("Down goes to the next", lambda: drive_.focus("Ferrule"))
    drive_.press("Return")
    drive_.until("the first shot comes next", lambda: drive_.focus("Add the First Shot"))
    drive_.press("Return")
    drive_.until("it begins with what happens", lambda: drive_.focus("What happens"))
    drive_.write("A drop falls")
    for name, text in (("action time", "0.2"), ("capture rate", "1000"), ("playback rate", "25")):
        drive_.press("Tab")
        drive_.until(f"Tab goes on to the {name}", lambda name=name: drive_.focus(name))
        drive_.write(text)
    drive_.press("Return")
    drive_.until("the sentence is complete", lambda: any(
        node["role"] == "list item" and all(part in node["name"] for part in ("A drop falls", "0.2", "1000", "40"))
        for node in drive_.see()))
    drive_.press("ctrl+q")
    drive_.until("unsaved work is asked about", lambda: drive_.focus("Save"))
    drive_.press("alt+d")
    drive_.until("given up, the program ends", lambda: drive_.program.poll() == 0)


if __name__ == "__main__":
    drive.run(*sys.argv[1:], begin)
