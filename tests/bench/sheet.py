# SPDX-License-Identifier: GPL-3.0-or-later
"""A plan as a spreadsheet: a row a shot with the formulas that a person would enter for slow factor, screen time, frames,
bytes, cards and whether the rate is within the limit, over a table of limits; and a row of sums."""
import csv
from fractions import Fraction
from math import ceil
from xml.sax.saxutils import quoteattr

HEAD = """<?xml version="1.0" encoding="UTF-8"?>
<office:document xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0"
 xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0"
 xmlns:of="urn:oasis:names:tc:opendocument:xmlns:of:1.2" office:version="1.2"
 office:mimetype="application/vnd.oasis.opendocument.spreadsheet"><office:body><office:spreadsheet>
"""
TAIL = "</office:spreadsheet></office:body></office:document>\n"
MBPS, CARD_BYTES = 240, 460_800_000_000  # one law and one card for all: the sheet is no harder than it must be


def number(value):
    return f'<table:table-cell office:value-type="float" office:value="{float(value)!r}"/>'


def text(value):
    return f'<table:table-cell office:value-type="string" office:string-value={quoteattr(value)}><text:p>{value}</text:p></table:table-cell>'


def formula(value):
    return f"<table:table-cell table:formula={quoteattr('of:=' + value)}/>"


def limits(plan):
    """Highest rate as hired, and with every licence, of each body, size and codec."""
    found = {}
    for hired in plan["bodies"]:
        for row in hired["profile"]["limits"]:
            for size in row["sizes"]:
                for codec in row.get("codecs", [""]):
                    key = f"{hired['id']}/{size}/{codec}"
                    base, most = found.get(key, (0, 0))
                    rate = Fraction(row["highest_rate"])
                    found[key] = (base if row.get("licences") else max(base, rate), max(most, rate))
    return found


def shot_cells(shot, row, last):
    key = f"{shot.get('body', '')}/{shot.get('size', '')}/{shot.get('codec', '')}"
    capture, playback = Fraction(shot["capture_rate"]), Fraction(shot["playback_rate"])
    r = f"[.%s{row}]"
    cell = {name: r % column for column, name in zip("ABCDEFGHIJKLMNOPQ", (
        "slate", "key", "capture", "playback", "action", "before", "after", "takes",
        "factor", "screen", "frames", "take_s", "take_frames", "take_bytes", "cards", "limit", "verdict"))}
    table = f"[$Limits.$A$1:.$C${last}]"
    return [
        text(shot["slate"]), text(key), number(capture), number(playback), number(Fraction(shot["action_s"])),
        number(Fraction(shot.get("handle_before_s", "0"))), number(Fraction(shot.get("handle_after_s", "0"))), number(shot.get("takes", 1)),
        formula("{capture}/{playback}".format(**cell)),
        formula("{action}*{factor}".format(**cell)),
        formula("ROUNDUP(ROUND({action}*{capture};6);0)".format(**cell)),
        formula("{before}+{action}+{after}".format(**cell)),
        formula("ROUNDUP(ROUND({take_s}*{capture};6);0)".format(**cell)),
        formula(f"{{take_frames}}*{MBPS}*1000000/8/24".format(**cell)),
        formula(f"ROUNDUP({{takes}}/MAX(1;INT({CARD_BYTES}/{{take_bytes}}));0)".format(**cell)),
        formula(f"IFERROR(VLOOKUP({{key}};{table};2;0);0)".format(**cell)),
        formula(f'IF({{capture}}<={{limit}};"as hired";IF({{capture}}<=IFERROR(VLOOKUP({{key}};{table};3;0);0);"needs a licence";"not on this body"))'
                .format(**cell)),
    ]


def row_xml(cells):
    return "<table:table-row>" + "".join(cells) + "</table:table-row>\n"


def sums(plan):
    """Frames of all actions, frames of all takes: exactly, as the sheet must find them."""
    frames = take_frames = 0
    for shot in plan["shots"]:
        rate, action = Fraction(shot["capture_rate"]), Fraction(shot["action_s"])
        take = action + Fraction(shot.get("handle_before_s", "0")) + Fraction(shot.get("handle_after_s", "0"))
        frames += ceil(rate * action)
        take_frames += ceil(rate * take) * shot.get("takes", 1)
    return frames, take_frames


def write(plan, path):
    """Writes the sheet, and returns the sums that it must come to."""
    table, shots = limits(plan), plan["shots"]
    n = len(shots)
    with open(path, "w", encoding="utf-8") as out:
        out.write(HEAD + '<table:table table:name="List">\n')
        for i, shot in enumerate(shots):
            out.write(row_xml(shot_cells(shot, i + 1, len(table))))
        out.write(row_xml([text("sums"), formula(f"SUM([.K1:.K{n}])"), formula(f"SUMPRODUCT([.M1:.M{n}];[.H1:.H{n}])"),
                           formula(f"SUM([.O1:.O{n}])"), formula(f'COUNTIF([.Q1:.Q{n}];"as hired")')]))
        out.write('</table:table>\n<table:table table:name="Limits">\n')
        for key, (base, most) in table.items():
            out.write(row_xml([text(key), number(base), number(most)]))
        out.write("</table:table>\n" + TAIL)
    return sums(plan)


def read_sums(path):
    with open(path, encoding="utf-8", newline="") as file:
        *_, last = csv.reader(file)
    return int(float(last[1])), int(float(last[2]))
