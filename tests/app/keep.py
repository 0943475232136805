#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Nothing is lost, and one plan has one truth, from outside: real kills, real starts, the keyboard and the accessibility tree.

keep.py DRAWL DEMO: edits a copy of the demo, kills the program, recovers the edit through the dialog, saves, and starts again;
then starts the program with other spellings of the same file, and with another file.
"""
import os
import pathlib
import signal
import subprocess
import sys

import drive

RATE = "233"
OFFER = "Unsaved Work"


def journals():
    folder = pathlib.Path(os.environ["XDG_STATE_HOME"]) / "drawl" / "journal"
    return [path.read_bytes() for path in folder.glob("*.journal")] if folder.is_dir() else []


def named(driven, role, part):
    return [node for node in driven.see() if node["role"] == role and part in node["name"]]


def windows(driven):
    return named(driven, "frame", "Before It Cools")


def lose_and_recover(driven):
    driven.start()
    drive.enter_rate(driven, RATE)
    driven.until("the edit is shown", lambda: driven.row(RATE))
    driven.until("the journal has it", lambda: any(RATE.encode() in journal for journal in journals()))
    driven.program.send_signal(signal.SIGKILL)
    driven.program.wait()
    assert driven.saved()[0] == "60000/1001", "the file was written without a save"
    driven.start("--")
    driven.until("the next start offers it", lambda: driven.focus("Recover “Before It Cools”"))
    driven.press("space")
    driven.until("the edit is back", lambda: driven.row(RATE))
    driven.until("it is marked as unsaved", lambda: any(node["name"].startswith("• ") for node in windows(driven)))
    driven.press("ctrl+s")
    driven.until("the file has it", lambda: driven.saved()[0] == RATE)
    driven.until("the journal has gone", lambda: not journals())
    driven.press("ctrl+q")
    driven.until("the program ends", lambda: driven.program.poll() == 0)


def start_clean(driven):
    driven.start()
    driven.until("the plan is shown", lambda: driven.row(RATE))
    driven.until("the list has the focus", lambda: driven.focus("1A,"))
    driven.press("alt+2")
    driven.until("the window answers", lambda: driven.focus("Treadle 4"))
    assert not named(driven, "frame", OFFER) and not named(driven, "dialog", OFFER), "saved work was offered again"


def second_start(driven, what, path, n_windows):
    """A second process hands the file on and ends."""
    done = subprocess.run([os.path.abspath(driven.command[0]), path], cwd=driven.plan.parent, timeout=drive.LIMIT_S, check=False)
    assert done.returncode == 0, f"{what}: ended with {done.returncode}"
    driven.until(what, lambda: len(windows(driven)) == n_windows)


def one_window(driven):
    folder = driven.plan.parent
    (folder / "link.drawl").symlink_to("glass.drawl")
    (folder / "again").symlink_to(".")
    for path in ("glass.drawl", "link.drawl", "again/glass.drawl", f"../{folder.name}/glass.drawl", str(driven.plan)):
        second_start(driven, f"{path} is the window that is there", path, 1)
    (folder / "other.drawl").write_bytes(driven.plan.read_bytes())
    second_start(driven, "another file has a window of its own", "other.drawl", 2)


def told_to_end(driven):
    """The session ends: no question, and nothing lost."""
    driven.press("ctrl+Return")
    driven.until("there is unsaved work", lambda: any(node["name"].startswith("• ") for node in windows(driven)))
    driven.program.send_signal(signal.SIGTERM)
    driven.until("the program ends when it is told to", lambda: driven.program.poll() == 0)
    driven.until("its unsaved work is kept", journals)


def steps(driven):
    lose_and_recover(driven)
    start_clean(driven)
    one_window(driven)
    told_to_end(driven)


drive.run(*sys.argv[1:], steps)
