#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""A translation has the places of its text, each {place} as often and no other, and no fewer no-break spaces. Each
text of each catalogue that has some is a test path of its own (TAP).

places.py TOP
"""
import ast
import pathlib
import re
import subprocess
import sys

TOP = pathlib.Path(sys.argv[1])
PLACE = re.compile(r"\{\w+\}")
NO_BREAK = "\u00a0"
LINE = re.compile(r'(?:(msgctxt|msgid_plural|msgid|msgstr)(?:\[\d+\])? )?(".*")')


def messages(catalogue):
    """Of each message: its texts to be translated, and its translations."""
    whole = subprocess.run(["msgcat", "--no-wrap", catalogue], capture_output=True, check=True).stdout.decode()
    for block in whole.split("\n\n"):
        found = {}
        for line in block.splitlines():
            match = LINE.fullmatch(line)
            if match:
                key, text = match.groups()
                if key:
                    texts = found.setdefault(key, [])
                    texts.append("")
                texts[-1] += ast.literal_eval(text)
        if found.get("msgid", [""]) != [""]:
            yield found["msgid"] + found.get("msgid_plural", []), found["msgstr"]


def fits(text, translation):
    return (sorted(PLACE.findall(text)) == sorted(PLACE.findall(translation))
            and translation.count(NO_BREAK) >= text.count(NO_BREAK))


def rows():
    """Path, text, translations; of messages with places or no-break spaces, on one side or the other."""
    for catalogue in sorted(TOP.glob("po/*.po")):
        for texts, translations in messages(catalogue):
            done = [text for text in translations if text]
            if any(PLACE.search(text) or NO_BREAK in text for text in texts[:1] + done):
                yield f"{catalogue.stem}/{texts[0]!a}", texts[0], done


def main():
    failed, number = 0, 0
    for number, (path, text, translations) in enumerate(rows(), 1):
        wrong = [translation for translation in translations if not fits(text, translation)]
        failed += bool(wrong)
        print(f"{'not ok' if wrong else 'ok'} {number} - {path.replace('#', '')}")
        for translation in wrong:
            print(f"# {translation!r}")
    print(f"1..{number}")
    return 1 if failed or number == 0 else 0


sys.exit(main())
