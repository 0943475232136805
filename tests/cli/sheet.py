#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Reads sheets back with poppler's tools: pages, words, sizes, description, equal bytes. Each row is a test path of
its own (TAP).

sheet.py TOP DRAWL_CLI
"""
import collections
import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile
import traceback

TOP = pathlib.Path(sys.argv[1])
CLI = sys.argv[2]
DEMO = TOP / "data/demo/glass.drawl"
EPOCH = "1795600000"  # 2026-11-25 09:46:40 UTC

ENGLISH = {key: value for key, value in os.environ.items() if key not in ("LANGUAGE", "DRAWL_LOCALE_DIR")}
ENGLISH |= {"LC_ALL": "C.UTF-8", "SOURCE_DATE_EPOCH": EPOCH}

tests = []


def row(name, *rows):
    """Makes a function a test for each of @rows, or one test."""
    def add(function):
        for values in rows or [()]:
            values = values if isinstance(values, tuple) else (values,)
            path = "/".join([name, *(str(value) for value in values[:1])])
            tests.append((path, function, values))
        return function
    return add


def same(found, expected):
    assert found == expected, f"\n   found {found!r}\nexpected {expected!r}"


def tool(*args):
    return subprocess.run(args, capture_output=True, check=True).stdout.decode()


class Sheet:
    """A sheet of a plan (a file, or an object), as written and as read back."""

    def __init__(self, plan, *options, env=None):
        with tempfile.TemporaryDirectory() as scratch:
            path = pathlib.Path(scratch, "x.pdf")
            if not isinstance(plan, pathlib.Path):
                text, plan = json.dumps(plan), pathlib.Path(scratch, "x.drawl")
                plan.write_text(text, encoding="utf-8")
            done = subprocess.run([CLI, "sheet", str(plan), "-o", str(path), "--json", *options], capture_output=True,
                                  env=ENGLISH | (env or {}), check=False)
            same((done.returncode, done.stderr.decode()), (0, ""))
            self.answer = json.loads(done.stdout)
            same(self.answer["file"], str(path))
            self.bytes = path.read_bytes()
            self.info = dict(re.findall(r"^(.*?): +(.*)$", tool("pdfinfo", "-isodates", str(path)), flags=re.M))
            self.pages = tool("pdftotext", "-layout", str(path), "-").split("\f")[:-1]
            self.words = re.sub(r"\s+", " ", tool("pdftotext", "-raw", str(path), "-"))

    def count(self, word):
        return len(re.findall(rf"(?<!\w){re.escape(word)}(?!\w)", self.words))


def demo():
    return json.loads(DEMO.read_text(encoding="utf-8"))


def plan_of(n):
    plan = demo()
    more = [shot for shot in plan["shots"] if shot["body"] != "B"]
    plan["shots"] = [more[i % len(more)] | {"slate": f"Q{i:03}", "notes": ""} for i in range(n)]
    return plan


# ---- Pages ----

@row("pages", *((f"{sheet}-{paper}-{n}", sheet, paper, n)
                for sheet in ("set", "hire", "cut") for paper in ("a4", "letter") for n in (0, 1, 300)))
def test_pages(_, sheet, paper, n):
    made = Sheet(plan_of(n), "--for", sheet, "--paper", paper)
    n_pages = len(made.pages)
    same((made.answer["for"], made.answer["paper"], made.answer["pages"]), (sheet, paper, n_pages))
    same(int(made.info["Pages"]), n_pages)
    for number, page in enumerate(made.pages, 1):
        assert f"Page {number} of {n_pages}" in page, page
        assert "Before It Cools" in page and "Shooting day 2027-03-09" in page, page
        assert "Printed 2026-11-25 09:46 " in page and "Figures are plans: test on the day." in page, page
    if n < 2 and sheet != "hire":
        same(n_pages, 1)
    if n == 0 and sheet != "hire":
        assert "This plan has no shots yet." in made.words
    if n == 300 and sheet != "hire":
        assert n_pages > 8


@row("slates", *((f"{sheet}-{paper}", sheet, paper) for sheet in ("set", "cut") for paper in ("a4", "letter")))
def test_slates(_, sheet, paper):
    made = Sheet(plan_of(300), "--for", sheet, "--paper", paper)
    same({slate: made.count(slate) for slate in (f"Q{i:03}" for i in range(300))}, {f"Q{i:03}": 1 for i in range(300)})
    found = re.findall(r"(?<!\w)Q\d{3}(?!\w)", made.words)
    same(found, sorted(found))


@row("size", ("set-a4", "set", "a4", "595.276 x 841.89"), ("set-letter", "set", "letter", "612 x 792"),
     ("cut-a4", "cut", "a4", "841.89 x 595.276"), ("cut-letter", "cut", "letter", "792 x 612"))
def test_size(_, sheet, paper, size):
    assert Sheet(DEMO, "--for", sheet, "--paper", paper).info["Page size"].startswith(size + " pts")


@row("unless-given")
def test_unless_given():
    answer = Sheet(DEMO).answer
    same((answer["for"], answer["paper"]), ("set", "a4"))


# ---- Words ----

SAID = [
    ("sentence", "set", ["The glass leaves the bench and breaks: 0.45 s of action, shot at 240 fps, plays at 24 fps "
                         "for 4.5 s, 10× slower."]),
    ("verdicts", "set", ["as hired: 8", "needs a licence: 5", "not on this body: 3"]),
    ("scenes", "set", ["1 The break", "5 Out of the door"]),
    ("reasons", "set", ["240 fps is over the 60 fps that this size and codec allow as hired.",
                        "Rate upgrade (60.00 EUR a day). Without it: 60 fps at 1920 × 1080"]),
    ("figures", "set", ["4 takes of 3.95 s", "2 s before, 1.5 s after", "A · Treadle 4", "wished for"]),
    ("left", "set", ["Left on card 1", "1 h 01 min", "of 512 GB", "Left on magazine 1", "372 ft"]),
    ("buffer", "set", ["6.02 s of it before the trigger; a full one takes 4 min 00 s to write out."]),
    ("set-cautions", "set", ["Falling, breaking, burning or thrown things", "the people licensed for it decide",
                             "qualified electrician, to local code", "photosensitive epilepsy"]),
    ("sums", "hire", ["180.00 EUR 3 540.00 EUR", "14.00 EUR 3 168.00 EUR", "Sum of what is known so far 1838.00 EUR"]),
    ("lacks", "hire", ["Rate upgrade 1A, 3B A · Treadle 4 60.00 EUR", "Above 1000 fps 1B B · Ferrule 150.00 EUR"]),
    ("not-possible", "hire", ["A take of 6.3 s is longer than the 5.425 s that the ring buffer holds."]),
    ("source", "hire", ["no figure in this file was measured, 2026-11-25"]),
    ("checks", "hire", ["To be fitted before it runs", "Trigger cable or remote", "At pick-up", "At return",
                        "Mount, cap and shims in their box"]),
    ("hire-cautions", "hire", ["Batteries: the rules for carrying them change. Ask the carrier before you travel.",
                               "the hire firm has the last word"]),
    ("row", "cut", ["1A The glass leaves the bench and breaks 108 00:00:04:12 – 10 % – 240 fps 24 fps 4"]),
    ("film-row", "cut", ["3A The first breath opens a bubble in the gather 288 00:00:12:00 7+08 33.33 % – 72 fps"]),
    ("drop-frame", "cut", ["480 00:00:16;00"]),
]


@row("says", *SAID)
def test_says(_, sheet, texts):
    words = Sheet(DEMO, "--for", sheet).words.replace("\u00a0", " ")
    same([text for text in texts if text not in words], [])


@row("post-speed")
def test_post_speed():
    plan = demo()
    plan["shots"][0]["post_speed_percent"] = "50"
    made = Sheet(plan, "--for", "cut")
    assert "00:00:09:00 – 5 % 50 % 240 fps" in made.words.replace("\u00a0", " "), made.words
    assert "the cutting room runs the shot at so much of its speed" in made.words
    assert "the cutting room" not in Sheet(DEMO, "--for", "cut").words


@row("without-film")
def test_without_film():
    plan = demo()
    plan["shots"] = [shot for shot in plan["shots"] if shot["body"] != "C"]
    assert "Feet+frames" not in Sheet(plan, "--for", "cut").words
    assert "Feet+frames" in Sheet(DEMO, "--for", "cut").words


@row("sd-card", ("SDHC", 32), ("SDXC", 33), ("SDUC", 2001))
def test_sd_card(kind, gigabytes):
    plan = demo()
    plan["bodies"][0]["card"] = "sd"
    plan["bodies"][0]["profile"]["cards"].append({"id": "sd", "name": "Small card", "bytes": gigabytes * 10**9, "class": "V90"})
    words = Sheet(plan, "--for", "hire").words
    assert f"Small card ({kind}); the shots fill" in words, words


@row("no-body")
def test_no_body():
    plan = demo()
    plan["bodies"] = []
    plan["shots"] = [{"slate": "1", "action": "Nothing is chosen", "capture_rate": "48", "action_s": "2"}]
    assert "No body is hired yet." in Sheet(plan, "--for", "hire").words
    assert "none is chosen yet" in Sheet(plan).words


# ---- Nothing is cut off ----

LONG = [
    ("five-thousand", "".join(f"word{i:04} " for i in range(556))[:5000].strip()),
    ("forty-thousand", "".join(f"word{i:04} " for i in range(4445))[:40000].strip()),
    ("paragraphs", "\n\n".join(f"paragraph{i}" for i in range(80))),
]


@row("long", *LONG)
def test_long(_, text):
    plan = demo()
    plan["shots"][3]["notes"] = plan["notes"] = text
    wanted = set(text.split())
    found = collections.Counter(word for word in Sheet(plan).words.split() if word in wanted)
    same({word: n for word, n in found.items() if n != 2}, {})
    same(set(found), wanted)


@row("long-word", ("slate", "set", 0), ("action", "set", 1), ("slate-in-a-table", "cut", 0), ("action-in-a-table", "cut", 1))
def test_long_word(_, sheet, which):
    plan = demo()
    words = ["".join(f"{i:02}" for i in range(100)), "x".join(f"{i:03}" for i in range(51))]
    plan["shots"][0]["slate"], plan["shots"][0]["action"] = words
    plan["shots"][0]["notes"] = plan["notes"] = ""
    assert words[which] in re.sub(r"\s", "", Sheet(plan, "--for", sheet).words)


# ---- From right to left ----

HEBREW = """
msgid ""
msgstr "Content-Type: text/plain; charset=UTF-8\\n"
msgid "Set sheet"
msgstr "דף צילום"
msgid "Cut sheet"
msgstr "דף עריכה"
"""


def in_hebrew(sheet, tool_args):
    """What poppler reads of a sheet of the demo whose name, and so whose pages, run from right to left."""
    with tempfile.TemporaryDirectory() as scratch:
        folder = pathlib.Path(scratch, "he/LC_MESSAGES")
        folder.mkdir(parents=True)
        subprocess.run(["msgfmt", "-o", str(folder / "drawl.mo"), "-"], input=HEBREW.encode(), check=True)
        path = pathlib.Path(scratch, "x.pdf")
        subprocess.run([CLI, "sheet", str(DEMO), "--for", sheet, "-o", str(path)], check=True, capture_output=True,
                       env=ENGLISH | {"LANGUAGE": "he", "DRAWL_LOCALE_DIR": scratch})
        return tool("pdftotext", *tool_args, str(path), "-")


def places(sheet, word):
    found = re.findall(r'xMin="([\d.]+)" yMin="([\d.]+)"[^>]*>([^<]*)</word>', in_hebrew(sheet, ["-bbox"]))
    return [(float(x), round(float(y))) for x, y, text in found if text == word]


@row("right-to-left/slates-at-the-right")
def test_rtl_slates():
    assert all(x > 400 for x, _ in places("set", "1A")[:1])
    assert places("cut", "1A")[0][0] > 700


@row("right-to-left/figures-as-they-are")
def test_rtl_figures():
    widths, heights = places("set", "1920"), places("set", "1080")
    pairs = [(x, other) for x, y in widths for other, below in heights if y == below and abs(other - x) < 60]
    assert len(pairs) >= 3, (widths, heights)
    same([pair for pair in pairs if pair[0] >= pair[1]], [])
    assert "00:00:16;00" in in_hebrew("cut", ["-raw"])


# ---- The file ----

@row("description")
def test_description():
    info = Sheet(DEMO).info
    same((info["Title"], info["Creator"], info["CreationDate"]),
         ("Before It Cools · Set sheet", "Drawl", "2026-11-25T09:46:40Z"))


@row("equal-bytes", "set", "hire", "cut")
def test_equal_bytes(sheet):
    first = Sheet(DEMO, "--for", sheet)
    assert first.bytes == Sheet(DEMO, "--for", sheet).bytes
    assert first.bytes != Sheet(DEMO, "--for", sheet, env={"SOURCE_DATE_EPOCH": "1795700000"}).bytes


@row("revision")
def test_revision():
    def revision(plan):
        (found,) = set(re.findall(r"revision ([0-9a-f]{6})", Sheet(plan, "--for", "cut").words))
        return found

    plan = demo()
    before = revision(plan)
    same(revision(DEMO), before)
    plan["shots"][0]["takes"] = 5
    assert revision(plan) != before


@row("kept-when-refused")
def test_kept():
    with tempfile.TemporaryDirectory() as scratch:
        path = pathlib.Path(scratch, "kept.pdf")
        (path / "inside").mkdir(parents=True)
        done = subprocess.run([CLI, "sheet", str(DEMO), "-o", str(path)], capture_output=True, env=ENGLISH, check=False)
        same((done.returncode, done.stdout), (3, b""))
        assert b"kept.pdf" in done.stderr
        assert (path / "inside").is_dir()


print(f"1..{len(tests)}")
failed = 0
for number, (path, function, values) in enumerate(tests, 1):
    try:
        function(*values)
        print(f"ok {number} - {path}")
    except Exception:  # every kind of failure is one failed row
        failed += 1
        print(f"not ok {number} - {path}")
        print("\n".join("# " + line for line in traceback.format_exc().splitlines()))
sys.exit(1 if failed else 0)
