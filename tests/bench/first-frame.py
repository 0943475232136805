#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""First frame and memory of the window, beside a bare one of the toolkit; and how much longer it takes on 10,000 shots.

first-frame.py BARE DRAWL PLAN: runs the three in turn, so that what the machine does besides falls on all alike, and prints
medians. To be run on a screen (tests/app/in-window.sh).
"""
import os
import statistics
import subprocess
import sys
import time

WARM_UP = 2
ROUNDS = 11


def run(command):
    env = dict(os.environ, DRAWL_BENCH_T0=str(time.monotonic_ns() // 1000))
    answer = subprocess.run(command, env=env, stdout=subprocess.PIPE, check=True, timeout=60)
    milliseconds, kilobytes = answer.stdout.split()
    return float(milliseconds), int(kilobytes) / 1024


def main(bare, drawl, plan):
    commands = {"bare window": [bare], "welcome": [drawl], "10,000 shots": [drawl, plan]}
    runs = {name: [] for name in commands}
    for turn in range(WARM_UP + ROUNDS):
        for name, command in commands.items():
            result = run(command)
            if turn >= WARM_UP:
                runs[name].append(result)
    medians = {name: [statistics.median(column) for column in zip(*results)] for name, results in runs.items()}
    for name, (milliseconds, megabytes) in medians.items():
        print(f"{name:14}{milliseconds:8.0f} ms{megabytes:8.1f} MiB")
    bare_ms, bare_mib = medians["bare window"]
    own_ms, own_mib = medians["welcome"]
    print(f"first frame: {own_ms / bare_ms:.2f} × the bare window's (at most 1.3)")
    print(f"memory:      {own_mib / bare_mib:.2f} × the bare window's (at most 1.4)")
    print(f"10,000 shots: {medians['10,000 shots'][0] - own_ms:.0f} ms longer than the empty window (under 500)")


main(*sys.argv[1:])
