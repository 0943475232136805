#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Counts the tests of a JUnit log, each row of a table for itself, and closes with "N passed, N failed".

count.py LOG RC: RC is the exit code of the test runner; a failure that the log does not show counts as one.
"""
import sys
import xml.etree.ElementTree as tree


def main(log, runner_rc):
    passed = failed = skipped = 0
    for case in tree.parse(log).iter("testcase"):
        if case.find("failure") is not None or case.find("error") is not None:
            failed += 1
            print(f"failed: {case.get('classname')}: {case.get('name')}")
        elif case.find("skipped") is not None:
            skipped += 1
            print(f"skipped: {case.get('classname')}: {case.get('name')}")
        else:
            passed += 1
    if runner_rc != 0 and failed == 0:
        failed = 1
    print(f"{passed} passed, {failed} failed" + (f", {skipped} skipped" if skipped else ""))
    return 1 if failed or not passed else 0


sys.exit(main(sys.argv[1], int(sys.argv[2])))
