#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""How long `drawl-cli check` takes on a plan of 10,000 shots, start to end, and how much memory; beside the same list as a
spreadsheet that LibreOffice recomputes headless, where there is one.

check-10000.py DRAWL-CLI PLAN
"""
import json
import os
import pathlib
import shutil
import statistics
import subprocess
import sys
import tempfile
import time

import sheet

TIMES = 9
TARGET_S, TARGET_MIB, TARGET_RATIO = 0.12, 64, 15


def run(command, **options):
    """Seconds, seconds of the processor, MiB at the peak (of the largest process) and exit code of one run."""
    start = time.monotonic()
    process = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, **options)
    _, status, usage = os.wait4(process.pid, 0)
    wall = time.monotonic() - start
    return wall, usage.ru_utime + usage.ru_stime, usage.ru_maxrss / 1024, os.waitstatus_to_exitcode(status)


def summary(runs):
    """Median time, median processor time, highest peak."""
    return statistics.median(r[0] for r in runs), statistics.median(r[1] for r in runs), max(r[2] for r in runs)


def measure_check(program, plan, options):
    runs = [run([program, "check", *options, plan]) for _ in range(TIMES)]
    if any(code not in (0, 1) for *_, code in runs):
        sys.exit(f"{program} check failed")
    seconds, processor, mib = summary(runs)
    met = "met" if seconds <= TARGET_S and mib <= TARGET_MIB else "missed"
    print(f"check-10000: {' '.join(['check', *options]):12} {seconds:.3f} s (median of {TIMES}; processor {processor:.3f} s), "
          f"{mib:.0f} MiB; target {TARGET_S} s, {TARGET_MIB} MiB: {met}")
    return seconds, processor


def measure_sheet(plan, folder):
    """The spreadsheet's time, after its sums were compared with ours; None without LibreOffice."""
    office = shutil.which("soffice") or shutil.which("libreoffice")
    if office is None:
        return None
    book = pathlib.Path(folder) / "list.fods"
    expected = sheet.write(plan, book)
    command = [office, f"-env:UserInstallation=file://{folder}/profile", "--headless", "--convert-to", "csv", "--outdir", folder, str(book)]
    run(command)  # the first run makes the profile
    runs = []
    for _ in range(3):
        (pathlib.Path(folder) / "list.csv").unlink(missing_ok=True)
        runs.append(run(command))
    found = sheet.read_sums(pathlib.Path(folder) / "list.csv")
    if found != expected:
        sys.exit(f"the spreadsheet sums up to {found}, not to {expected}")
    return summary(runs)


def main(program, plan_path):
    plan = json.loads(pathlib.Path(plan_path).read_text(encoding="utf-8"))
    seconds, processor = measure_check(program, plan_path, ["--json"])
    measure_check(program, plan_path, [])
    with tempfile.TemporaryDirectory() as folder:
        measured = measure_sheet(plan, folder)
    if measured is None:
        print("check-10000: spreadsheet  not measured: no LibreOffice here")
        return
    ratio = measured[0] / seconds
    print(f"check-10000: spreadsheet  {measured[0]:.3f} s (median of 3; processor {measured[1]:.3f} s), {measured[2]:.0f} MiB; "
          f"{ratio:.1f} times as long ({measured[1] / processor:.1f} times the processor time), target {TARGET_RATIO} times: {'met' if ratio >= TARGET_RATIO else 'missed'}")


main(*sys.argv[1:])
