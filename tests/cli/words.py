#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Holds help, manual and completion against each other and against the program; and the program in another
language against itself. Each row is a test path of its own (TAP).

words.py TOP DRAWL_CLI
"""
import json
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import traceback

TOP = pathlib.Path(sys.argv[1])
CLI = sys.argv[2]
DATA = TOP / "tests/cli/data"
MANUAL = TOP / "data/man/drawl-cli.1"
COMPLETION = TOP / "data/completion/drawl-cli.bash"
COMMANDS = ["time", "code", "film", "store", "check", "draw", "sheet", "export", "import"]
COMMON = {"--json", "--help"}

ENGLISH = {key: value for key, value in os.environ.items() if key not in ("LANGUAGE", "DRAWL_LOCALE_DIR")}
ENGLISH |= {"LC_ALL": "C.UTF-8"}

# One question a command, with which all of its keys are printed.
QUESTIONS = {
    "time": ["time", "--play", "24", "--capture", "240", "--action", "0.451"],
    "code": ["code", "--rate", "29.97", "--drop", "--frames", "1801"],
    "film": ["film", "--gauge", "35-3", "--rate", "24", "--metres", "12.5"],
    "store": ["store", "--mbps", "100", "--at", "24", "--rate", "59.94", "--audio-tracks", "2",
              "--card-bytes", "64GB", "--reserve", "12.5", "--seconds", "61.5"],
    "check": ["check", str(DATA / "list.drawl")],
    "draw": ["draw", str(DATA / "list.drawl"), "--shot", "2A", "-o", "@"],
    "sheet": ["sheet", str(DATA / "list.drawl"), "-o", "@.pdf"],
    "export": ["export", str(DATA / "list.drawl"), "--as", "edl", "-o", "@"],
    "import": ["import", str(DATA / "shots.csv"), "--into", str(DATA / "list.drawl"), "-o", "@"],
}

GERMAN = """
msgid ""
msgstr "Content-Type: text/plain; charset=UTF-8\\n"
msgid "as hired"
msgstr "wie gemietet"
msgid "Set sheet"
msgstr "Blatt für den Dreh"
msgid "screen time"
msgstr "Zeit im Bild"
msgid "frames"
msgstr "Bilder"
msgid "feet"
msgstr "Fuß"
msgid "data rate"
msgstr "Datenrate"
msgid "it shows"
msgstr "zu sehen"
msgid "format"
msgstr "Bildformat"
msgid "shots taken in"
msgstr "übernommen"
msgid "Frames to timecode and back"
msgstr "Bildzahl und Timecode"
msgid "%s is over the %s that this size and codec allow as hired"
msgstr "%s ist mehr als die %s, die gemietet sind"
msgid "a rate of %s is too low; a rate above 0 is expected"
msgstr "eine Bildrate von %s ist zu klein; mehr als 0 wird erwartet"
"""

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


def run(args, env=ENGLISH):
    with tempfile.TemporaryDirectory() as scratch:
        args = [f"{scratch}/x{arg[1:] or '.png'}" if arg.startswith("@") else arg for arg in args]
        done = subprocess.run([CLI, *args], capture_output=True, env=env, check=False)
        return done.returncode, done.stdout.decode().replace(scratch, ""), done.stderr.decode()


def same(found, expected):
    assert found == expected, f"\n   found {found!r}\nexpected {expected!r}"


# ---- The manual, as far as it is understood here ----

def plain(text):
    for escape, sign in ((r"\-", "-"), (r"\(mu", "×"), (r"\(di", "÷"), (r"\(aq", "'"), (r"\(lq", "“"), (r"\(rq", "”"),
                         (r"\e", "\\")):
        text = text.replace(escape, sign)
    return re.sub(r"\\f[RBI]", "", text)


def sections():
    parts = re.split(r"^\.SH (.*)$", MANUAL.read_text(encoding="utf-8"), flags=re.M)
    return dict(zip(parts[1::2], parts[2::2]))


def manual_options(section):
    heads = re.findall(r"^\.T[PQ]\n(.*)$", section, flags=re.M)
    return set(re.findall(r"--[a-z][a-z-]*", plain("\n".join(heads))))


def help_options(command):
    rc, out, err = run([command, "--help"])
    same((rc, err), (0, ""))
    return set(re.findall(r"^  (?:-., )?(--[a-z][a-z-]*)", out, flags=re.M))


def examples():
    for block in re.findall(r"^\.EX\n(.*?)^\.EE$", MANUAL.read_text(encoding="utf-8"), flags=re.M | re.S):
        question, *answer = plain(block).replace("\\\n", " ").splitlines()
        yield question.removeprefix("$ drawl-cli "), "\n".join(answer) + "\n"


# ---- Help ----

@row("help", *COMMANDS)
def test_help(command):
    rc, out, err = run([command, "--help"])
    same((rc, err), (0, ""))
    assert out.startswith(f"Usage:\n  drawl-cli {command} [OPTION"), out
    assert re.search(rf"Example.*\n +drawl-cli {command} ", out), "no example"
    same(run([command, "-h"])[1], out)
    assert max(map(len, out.splitlines())) <= 100, "a line is too long for a terminal"


@row("help-of-all")
def test_help_of_all():
    rc, out, err = run(["--help"])
    same((rc, err), (0, ""))
    same(re.findall(r"^  ([a-z]+)  +\S", out, flags=re.M), COMMANDS)
    same(run(["-h"])[1], out)


# ---- The manual ----

@row("manual/format")
def test_manual_format():
    if shutil.which("man"):
        call = ["man", "--warnings", "-E", "UTF-8", "-l", str(MANUAL)]
    else:
        call = ["groff", "-ww", "-man", "-Kutf8", "-Tutf8", str(MANUAL)]
    done = subprocess.run(call, capture_output=True, env=ENGLISH | {"MANPAGER": "cat", "MANWIDTH": "100"}, check=False)
    same((done.returncode, done.stderr.decode()), (0, ""))
    assert "needs-licence" in done.stdout.decode()


@row("manual/options", *COMMANDS)
def test_manual_options(command):
    same(manual_options(sections()[command.upper()]), help_options(command) - COMMON)


@row("manual/common-options")
def test_manual_common():
    same(manual_options(sections()["COMMON OPTIONS"]), COMMON | {"--version"})


@row("manual/synopsis", *COMMANDS)
def test_manual_synopsis(command):
    lines = re.split(r"^drawl-cli ", plain(sections()["SYNOPSIS"]), flags=re.M)
    (synopsis,) = [line for line in lines if line.startswith(command + " ")]
    named = set(re.findall(r"--[a-z][a-z-]*", synopsis)) | ({"--output"} if " -o " in synopsis else set())
    own = {"--rate", "--card-bytes", "--reserve", "--audio-tracks", "--seconds"} if command == "store" else None
    same(named, own or help_options(command) - COMMON)


@row("manual/keys", *COMMANDS)
def test_manual_keys(command):
    rc, out, err = run([*QUESTIONS[command], "--json"])
    assert rc in (0, 1) and err == "", err
    listed = plain(sections()[command.upper()]).split("\nKeys:\n")[1]

    def keys(value):
        for key, inner in value.items():
            yield key
            for element in inner if isinstance(inner, list) else [inner]:
                if isinstance(element, dict):
                    yield from keys(element)

    unlisted = [key for key in keys(json.loads(out)) if not re.search(rf"\b{key}\b", listed)]
    same(unlisted, [])


@row("manual/example", *(question for question, _ in examples()))
def test_manual_example(question):
    done = subprocess.run(f'"{CLI}" {question}', shell=True, capture_output=True, env=ENGLISH, check=False)
    same((done.returncode, done.stderr.decode()), (0, ""))
    same(done.stdout.decode(), dict(examples())[question])


@row("manual/reasons")
def test_manual_reasons():
    reasons = re.findall(r'\[DRAWL_REASON_\w+\] = "([a-z-]+)"', (TOP / "src/plan/check.c").read_text(encoding="utf-8"))
    listed = plain(sections()["CHECK"]).split("\nReasons:\n")[1]
    same(re.findall(r"^\.BR ([a-z-]+)", listed, flags=re.M), reasons)


@row("manual/environment")
def test_manual_environment():
    listed = set(re.findall(r"\b[A-Z]+(?:_[A-Z]+)+\b", sections()["ENVIRONMENT"]))
    read = {name for file in (TOP / "src").glob("*/*.c") if file.parent.name != "app"
            for name in re.findall(r'g_getenv \("(\w+)"\)', file.read_text(encoding="utf-8"))}
    same(read - listed, set())
    assert "XDG_DATA_HOME" in listed


@row("help/slates")
def test_help_slates():
    """The examples of help draw shots that the demo has."""
    slates = {shot["slate"] for shot in json.loads((TOP / "data/demo/glass.drawl").read_text(encoding="utf-8"))["shots"]}
    named = re.findall(r"glass\.drawl.* --shot (\w+)", run(["draw", "--help"])[1])
    assert named and slates.issuperset(named), named


@row("manual/exit-codes")
def test_manual_exit_codes():
    same(re.findall(r"^\.TP\n\.B (\d)$", sections()["EXIT STATUS"], flags=re.M), ["0", "1", "2", "3"])


def expected_values(args):
    """The words that a refusal lists."""
    rc, _, err = run(args)
    same(rc, 2)
    return re.search(r"one of (.*) is expected", err).group(1).split(", ")


LISTS = {
    "laws": ["store", "--rate", "24", "--law", "no"],
    "gauges": ["film", "--rate", "24", "--gauge", "no", "--feet", "1"],
    "pictures": ["draw", "x.drawl", "--picture", "no", "--shot", "1", "-o", "x.png"],
    "sheets": ["sheet", "x.drawl", "--for", "no", "-o", "x.pdf"],
    "papers": ["sheet", "x.drawl", "--paper", "no", "-o", "x.pdf"],
    "formats": ["export", "x.drawl", "--as", "no", "-o", "x"],
}


@row("manual/lists", *LISTS)
def test_manual_lists(name):
    page = plain(MANUAL.read_text(encoding="utf-8"))
    same([word for word in expected_values(LISTS[name]) if not re.search(rf"(?<![\w-]){word}(?![\w-])", page)], [])


def blocks(section):
    """The lists of a section: a word, and what stands beside and below it."""
    for block in re.findall(r"^\.nf\n(.*?)^\.fi$", sections()[section], flags=re.M | re.S):
        found = {}
        for line in plain(block).splitlines():
            first, rest = line[:20].strip(), line[20:].strip()
            last = first or last
            found[last] = f"{found.get(last, '')} {rest}".strip()
        yield found


def c_words(text):
    return "".join(re.findall(r'"([^"]*)"', text)).split("|")


SHOT_COLUMNS = (TOP / "src/plan/shot-column.c").read_text(encoding="utf-8")


@row("manual/headings")
def test_manual_headings():
    columns = re.findall(r'\{\{"(\w+)",\s*N_ \(((?:"[^"]*"\s*)+)\)\}', SHOT_COLUMNS)
    assert len(columns) > 20
    known = {name: [word for word in c_words(words) if word.replace(" ", "_") != name] for name, words in columns}
    _, listed = blocks("SHOT TABLE")
    same({name: words.split(", ") for name, words in listed.items()}, {name: words for name, words in known.items() if words})


@row("manual/yes-and-no")
def test_manual_truths():
    no, yes = re.search(r'truths\[\] = \{N_ \(([^)]*)\),\s*N_ \(([^)]*)\)\}', SHOT_COLUMNS).groups()
    page = " ".join(plain(sections()["SHOT TABLE"]).split())
    for name, words in (("Yes", yes), ("no", no)):
        listed = re.search(rf"{name} may be written ([^;.]*)", page).group(1)
        same(re.split(", | or ", listed), c_words(words))


# ---- Completion ----

def complete(*words):
    """What is offered for the last of @words."""
    script = 'source "$1"; shift; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _drawl_cli; printf "%s\\n" "${COMPREPLY[@]}"'
    done = subprocess.run(["bash", "-uc", script, "bash", str(COMPLETION), "drawl-cli", *words], capture_output=True,
                          cwd=DATA, env=ENGLISH, check=False)
    same(done.stderr.decode(), "")
    return done.stdout.decode().split("\n")[:-1]


@row("completion/commands")
def test_complete_commands():
    same(complete(""), [*COMMANDS, "--help", "--version"])
    same(complete("c"), ["code", "check"])


@row("completion/options", *COMMANDS)
def test_complete_options(command):
    same(set(complete(command, "-")), help_options(command))


COMPLETED = [
    ("option", ["time", "--ca"], ["--capture"]),
    ("gauge", ["film", "--gauge", "35"], ["35-4", "35-3", "35-2"]),
    ("gauge-after-sign", ["film", "--gauge", "=", "65-1"], ["65-15"]),
    ("gauge-at-sign", ["film", "--gauge", "="], ["8", "s8", "16", "35-4", "35-3", "35-2", "65-5", "65-8", "65-15"]),
    ("sampling", ["store", "--sampling", ""], ["420", "422", "444", "mosaic"]),
    ("picture", ["draw", "list.drawl", "--picture", "c"], ["cards"]),
    ("sheet", ["sheet", "list.drawl", "--for", "h"], ["hire"]),
    ("paper", ["sheet", "list.drawl", "--paper", ""], ["a4", "letter"]),
    ("slate", ["draw", "list.drawl", "--shot", "2"], ["2A", "2B"]),
    ("plan", ["check", "li"], ["list.drawl"]),
    ("plan-before-options", ["draw", "n"], ["newer.drawl", "not-json.drawl"]),
    ("body", ["check", "list.drawl", "--body", ""], ["other-body.json"]),
    ("format", ["export", "list.drawl", "--as", "e"], ["edl"]),
    ("table", ["import", "sh"], ["shots.csv"]),
    ("plan-to-begin-with", ["import", "shots.csv", "--into", "li"], ["list.drawl"]),
    ("plan-to-write", ["import", "shots.csv", "-o", "al"], ["all-well.drawl"]),
    ("no-plan-for-time", ["time", ""], [""]),
    ("number", ["time", "--capture", ""], [""]),
]


@row("completion/values", *((name, words, offered) for name, words, offered in COMPLETED))
def test_complete_values(_, words, offered):
    same(sorted(complete(*words)), sorted(offered))


@row("completion/lists", ("laws", "store", "--law"), ("gauges", "film", "--gauge"), ("pictures", "draw", "--picture"),
     ("sheets", "sheet", "--for"), ("papers", "sheet", "--paper"), ("formats", "export", "--as"))
def test_complete_lists(name, command, option):
    same(sorted(complete(command, option, "")), sorted(expected_values(LISTS[name])))


# ---- Another language ----

with tempfile.TemporaryDirectory() as LOCALE:
    folder = pathlib.Path(LOCALE, "de/LC_MESSAGES")
    folder.mkdir(parents=True)
    subprocess.run(["msgfmt", "-o", str(folder / "drawl.mo"), "-"], input=GERMAN.encode(), check=True)
    IN_GERMAN = ENGLISH | {"LANGUAGE": "de", "DRAWL_LOCALE_DIR": LOCALE}
    IN_GERMANY = IN_GERMAN | {"LC_ALL": "de_DE.UTF-8", "LC_NUMERIC": "de_DE.UTF-8"}

    @row("language/words", ("time", "Zeit im Bild"), ("code", "Bilder"), ("film", "Fuß"), ("store", "Datenrate"),
         ("check", "wie gemietet"), ("draw", "zu sehen"), ("sheet", "Blatt für den Dreh"),
         ("export", "Bildformat"), ("import", "übernommen"))
    def test_words(command, word):
        rc, out, err = run(QUESTIONS[command], IN_GERMAN)
        assert rc in (0, 1) and err == "", err
        assert word in out, out
        numbers = r"\d+(?:\.\d+)?"
        if command not in ("check", "draw", "sheet", "export", "import"):
            same(re.findall(numbers, out), re.findall(numbers, run(QUESTIONS[command])[1]))

    @row("language/reason")
    def test_reason():
        assert "240 fps ist mehr als die 60 fps, die gemietet sind" in run(QUESTIONS["check"], IN_GERMAN)[1].replace("\u00a0", " ")

    @row("language/help")
    def test_help_in_german():
        assert "Bildzahl und Timecode" in run(["--help"], IN_GERMAN)[1]

    @row("language/refusal")
    def test_refusal():
        rc, out, err = run(["time", "--play", "0"], IN_GERMAN)
        same((rc, out), (2, ""))
        same(err, "drawl-cli time: --play: eine Bildrate von 0 ist zu klein; mehr als 0 wird erwartet\n")

    @row("language/json", *COMMANDS)
    def test_json(command):
        question = [*QUESTIONS[command], "--json"]
        same(run(question, IN_GERMAN), run(question))
        same(run(question, IN_GERMANY), run(question))
        same(run(question, ENGLISH | {"LC_ALL": "C"}), run(question))

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
