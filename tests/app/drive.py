#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The main job with the keyboard alone, from outside: real key presses in, the accessibility tree and the saved file out.

drive.py DRAWL DEMO: opens a copy of the demo, takes a shot past its licence, hires the licence, takes that back, saves,
quits and opens it again. Every step waits until its effect is seen; the limit only bounds a failure.
drive.py --look NAME: prints what the program of that name shows now, as JSON (each look is a process of its own, because the
accessibility library keeps what it has seen before).
"""
import json
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile
import time

HERE = os.path.abspath(__file__)
LIMIT_S = 30
SLATE = "4A"
WORDS = "wheel bites"


def look(name):
    import gi
    gi.require_version("Atspi", "2.0")
    from gi.repository import Atspi

    def walk(node):
        for i in range(node.get_child_count()):
            child = node.get_child_at_index(i)
            if child is None:
                continue
            states = child.get_state_set()
            if not states.contains(Atspi.StateType.VISIBLE):
                continue
            yield {"role": child.get_role_name(), "name": child.get_name() or "",
                   "focused": states.contains(Atspi.StateType.FOCUSED)}
            yield from walk(child)

    desktop = Atspi.get_desktop(0)
    programs = [desktop.get_child_at_index(i) for i in range(desktop.get_child_count())]
    seen = []
    for program in programs:
        if program is not None and program.get_name() == name:
            seen += list(walk(program))
    print(json.dumps(seen))


class Drive:
    def __init__(self, drawl, plan):
        self.command = [drawl, str(plan)]
        self.name = os.path.basename(drawl)
        self.plan = plan
        self.program = None
        self.done = 0

    def start(self, *arguments):
        self.program = subprocess.Popen([self.command[0], *arguments] if arguments else self.command)

    def see(self):
        quiet = {k: v for k, v in os.environ.items() if k != "G_DEBUG"}
        answer = subprocess.run([sys.executable, HERE, "--look", self.name], env=quiet, stdout=subprocess.PIPE,
                                stderr=subprocess.DEVNULL, timeout=LIMIT_S, check=False)
        return json.loads(answer.stdout) if answer.returncode == 0 and answer.stdout else []

    def until(self, what, holds):
        """Waits until holds() answers something, and counts that as a step passed."""
        end = time.monotonic() + LIMIT_S
        while time.monotonic() < end:
            found = holds()
            if found:
                self.done += 1
                print(f"ok {self.done} - {what}", flush=True)
                return found
            if self.program.poll() not in (None, 0):
                raise SystemExit(f"Bail out! the program ended with {self.program.returncode} before: {what}")
            time.sleep(0.05)
        for node in self.see():
            print("#", node)
        print(f"not ok {self.done + 1} - {what}")
        raise SystemExit(1)

    def press(self, *keys):
        subprocess.run(["xdotool", "key", "--clearmodifiers", "--delay", "30", *keys], check=True)

    def write(self, text):
        subprocess.run(["xdotool", "type", "--delay", "30", text], check=True)

    def row(self, *parts):
        """The row of the shot, if its name has all the parts."""
        return next((node for node in self.see() if node["role"] == "list item" and
                     node["name"].startswith(SLATE + ",") and all(part in node["name"] for part in parts)), None)

    def focus(self, *parts):
        return next((node for node in self.see() if node["focused"] and
                     all(part.lower() in node["name"].lower() for part in parts)), None)

    def saved(self):
        plan = json.loads(self.plan.read_text(encoding="utf-8"))
        shot = next(shot for shot in plan["shots"] if shot["slate"] == SLATE)
        body = next(body for body in plan["bodies"] if body["id"] == shot["body"])
        return str(shot["capture_rate"]), body.get("tier", [])

    def tab_to(self, *parts):
        """Goes on with Tab until the focus is on what has that name."""
        for _ in range(20):
            if self.focus(*parts):
                break
            before = self.focus()
            self.press("Tab")
            end = time.monotonic() + 2
            while self.focus() == before and time.monotonic() < end:
                time.sleep(0.05)
        self.until(f"Tab comes to “{' '.join(parts)}”", lambda: self.focus(*parts))


def enter_rate(drive_, rate):
    """The shot's capture rate, from the list on."""
    drive_.until("the plan is shown, the shot is as hired", lambda: drive_.row("59.94", "as hired"))
    drive_.until("the list has the focus", lambda: drive_.focus("1A,"))
    drive_.press("ctrl+f")
    drive_.until("Ctrl+F goes to the search", lambda: any(
        node["focused"] and node["role"] in ("text", "entry") for node in drive_.see()))
    drive_.write(WORDS)
    drive_.until("the search leaves one shot", lambda: sum(
        node["role"] == "list item" and "," in node["name"] for node in drive_.see()) == 1 and drive_.row())
    drive_.press("Return")
    drive_.until("Enter goes to its row", lambda: drive_.focus(SLATE + ","))
    drive_.press("Return")
    drive_.tab_to("capture rate")
    drive_.press("ctrl+a")
    drive_.write(rate)
    drive_.press("Return")


def drive(drive_):
    drive_.start()
    enter_rate(drive_, "240")
    drive_.until("past the limit it needs a licence", lambda: drive_.row("240", "needs a licence"))
    drive_.press("alt+2")
    drive_.until("Alt+2 goes to the bodies", lambda: drive_.focus("Treadle 4"))
    drive_.press("Return")
    drive_.tab_to("Rate upgrade")
    drive_.press("space")
    drive_.until("the body's page counts anew", lambda: any(
        node["name"].startswith("6 of 9 shots as hired") for node in drive_.see()))
    drive_.press("alt+1")
    drive_.until("with the licence it is as hired", lambda: drive_.row("240", "as hired"))
    drive_.press("ctrl+z")
    drive_.until("undo gives the licence back", lambda: drive_.row("240", "needs a licence"))
    before = drive_.saved()
    assert before == ("60000/1001", []), f"the file changed before it was saved: {before}"
    drive_.press("ctrl+s")
    drive_.until("the file has the rate and no licence", lambda: drive_.saved() == ("240", []))
    drive_.press("ctrl+q")
    drive_.until("the program ends", lambda: drive_.program.poll() == 0)
    drive_.start()
    drive_.until("opened again, the shot needs its licence", lambda: drive_.row("240", "needs a licence"))
    drive_.press("ctrl+q")
    drive_.until("the program ends again", lambda: drive_.program.poll() == 0)


def run(drawl, demo, steps):
    folder = pathlib.Path(tempfile.mkdtemp(prefix="drawl-drive-"))
    manager = subprocess.Popen(["openbox", "--sm-disable"], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    driven = Drive(drawl, folder / "glass.drawl")
    try:
        shutil.copy(demo, driven.plan)
        steps(driven)
        print(f"1..{driven.done}")
    finally:
        for process in (driven.program, manager):
            if process is not None and process.poll() is None:
                process.terminate()
                process.wait()
        shutil.rmtree(folder)


if __name__ == "__main__":
    if sys.argv[1] == "--look":
        look(sys.argv[2])
    else:
        run(*sys.argv[1:], drive)
