#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Tables through the clipboard with the keyboard alone, from outside: what another program has copied is pasted into the list.

drive-tables.py DRAWL DEMO HOLD: opens a copy of the demo; HOLD TYPE FILE is a program that keeps a file on the clipboard.
"""
import pathlib
import shutil
import subprocess
import sys
import tempfile

sys.dont_write_bytecode = True
import drive

GOOD = "Shot\tDescription\tFPS\tAction time\n20A\tThe punty dips\t240\t0.5\n20B\tSparks fall\t1000\t0.02\n"
DOUBTFUL = "Shot\tDescription\tFPS\n30A\tThe pipe turns\t120\n1A\tIs there already\t48\n"


class Tables(drive.Drive):
    def __init__(self, drawl, plan, hold):
        super().__init__(drawl, plan)
        self.hold = hold
        self.holder = None

    def copy(self, text, kind="text/plain;charset=utf-8"):
        """Another program copies a text."""
        self.let_go()
        file = self.plan.with_name("held")
        file.write_text(text, encoding="utf-8")
        self.holder = subprocess.Popen([self.hold, kind, str(file)], stdout=subprocess.PIPE)
        self.holder.stdout.readline()

    def let_go(self):
        if self.holder is not None:
            self.holder.terminate()
            self.holder.wait()
            self.holder.stdout.close()
            self.holder = None

    def names(self):
        return [node["name"] for node in self.see()]

    def shot(self, slate):
        return any(name.startswith(slate + ",") for name in self.names())


def run(it):
    it.start()
    it.until("the list has the focus", lambda: it.focus("1A,"))
    it.copy(GOOD)
    it.press("ctrl+v")
    it.until("a good block comes in at once", lambda: it.shot("20A") and it.shot("20B"))
    it.press("ctrl+z")
    it.until("undo takes all of it back", lambda: not it.shot("20A") and not it.shot("20B") and it.shot("1B"))
    it.copy("Sweep up the shards afterwards")
    it.press("ctrl+v")
    it.until("prose is no table, and that is told", lambda: any("no table of shots" in name for name in it.names()))
    it.copy(DOUBTFUL)
    it.press("ctrl+v")
    it.until("a doubtful block is shown first", lambda: it.focus("Bring in 1 shot"))
    it.until("and told what stays out", lambda: any("1 row cannot." in name for name in it.names()))
    it.press("Return")
    it.until("Enter brings in the good row", lambda: it.shot("30A"))
    it.press("ctrl+f")
    it.until("Ctrl+F goes to the search", lambda: any(
        node["focused"] and node["role"] in ("text", "entry") for node in it.see()))
    it.write("zzz")
    it.until("the search finds nothing", lambda: not it.shot("30A"))
    it.press("ctrl+a", "ctrl+c", "ctrl+v", "ctrl+v")
    it.press("Escape")
    it.until("Ctrl+C and Ctrl+V in an entry are the entry's own: the list is as it was", lambda: it.shot("30A"))
    it.press("ctrl+s")
    it.until("seventeen shots are saved", lambda: it.plan.read_text(encoding="utf-8").count('"slate"') == 17)
    it.press("ctrl+q")
    it.until("the program ends", lambda: it.program.poll() == 0)


def main(drawl, demo, hold):
    folder = pathlib.Path(tempfile.mkdtemp(prefix="drawl-drive-"))
    manager = subprocess.Popen(["openbox", "--sm-disable"], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    driven = Tables(drawl, folder / "glass.drawl", hold)
    try:
        shutil.copy(demo, driven.plan)
        run(driven)
        print(f"1..{driven.done}")
    finally:
        driven.let_go()
        for process in (driven.program, manager):
            if process is not None and process.poll() is None:
                process.terminate()
                process.wait()
        shutil.rmtree(folder)


main(*sys.argv[1:])
