# SPDX-License-Identifier: GPL-3.0-or-later
"""Tables of checks as TAP: each row is a test of its own, named by the row."""
import sys
import traceback


class Rows:
    """Collects rows and reports each as it is run."""

    def __init__(self):
        self.count = 0
        self.failed = 0

    def run(self, name, check, *arguments):
        """Runs a row; it fails by raising."""
        self.count += 1
        try:
            check(*arguments)
        except Exception:  # a row that fails must not stop the others
            self.failed += 1
            print(f"not ok {self.count} {name}")
            for line in traceback.format_exc().splitlines():
                print(f"# {line}")
        else:
            print(f"ok {self.count} {name}")

    def close(self):
        """Prints the plan of the run; no row at all is a failure, too."""
        print(f"1..{self.count}")
        sys.exit(1 if self.failed or not self.count else 0)
