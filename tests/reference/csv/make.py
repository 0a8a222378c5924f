#!/usr/bin/python3
"""What Python's csv module writes and reads of cells that are hard to carry, formulas among them.

  make.py            writes cells.json (rows of cells) and cells.csv (as it must be written) beside this file
  make.py --check    makes both again and compares, and reads cells.csv back

The guard is our rule, written here a second time: a text that starts like a formula gets an apostrophe in front.
Formula corpus: shapes of CSV injection as public security guides list them (from memory).
"""
import csv
import io
import json
import os
import sys

HERE = os.path.dirname(os.path.abspath(__file__))
FORMULAS = ["=1+1", "=cmd|' /C calc'!A0", "+1+1", "-2+3", "@SUM(1+1)*cmd|' /C calc'!A0", "=HYPERLINK(\"x\",\"y\")",
            "\t=1+1", "\r=1+1", "\n=1+1", "  =1+1", "\"=1+1\"", "=", "-", "\uff1d1+1", "\uff0b1", "\uff0d1", "\uff201",
            "=1+1\";=2+2", "@", "+", " \t text", "\u00a0=1"]
PLAIN = ["", "a", "a,b", "say \"so\"", "two\nlines", "cr\rlf\r\n", ";", "'", "'=1", "é水🌬", "1-2", "a=b", " a", "x\ty",
         "\"", "\"\"", ",", "0", "-1 day"]


def guarded(cell):
    bare = cell.lstrip("".join(map(chr, range(0x21))))
    lead = cell[:len(cell) - len(bare)]
    risky = bool(bare) and (bare[0] in "=+-@\uff1d\uff0b\uff0d\uff20" or lead.strip(" ") != "")
    return "'" + cell if risky else cell


def rows():
    cells = FORMULAS + PLAIN
    return [cells[n:n + 4] for n in range(0, len(cells), 4)] + [["last", "row"]]


def make():
    out = io.StringIO(newline="")
    writer = csv.writer(out, quoting=csv.QUOTE_MINIMAL, lineterminator="\r\n")
    for row in rows():
        writer.writerow([guarded(cell) for cell in row])
    return json.dumps(rows()) + "\n", "\ufeff" + out.getvalue()


def read_back(text):
    back = list(csv.reader(io.StringIO(text.removeprefix("\ufeff"), newline=""), strict=True))
    assert back == [[guarded(cell) for cell in row] for row in rows()]
    for row, kept in zip(rows(), back):
        for cell, now in zip(row, kept):
            assert now[:1] not in tuple("=+-@\t\r") and now.lstrip(" ")[:1] not in tuple("=+-@"), now
            assert cell in (now, now[1:])


names = [os.path.join(HERE, name) for name in ("cells.json", "cells.csv")]
if sys.argv[1:] == ["--check"]:
    texts = [open(name, newline="", encoding="utf-8").read() for name in names]
    read_back(texts[1])
    same = tuple(texts) == make()
    print("as it should be" if same else "cells.* are not what make.py makes")
    sys.exit(0 if same else 1)
for name, text in zip(names, make()):
    with open(name, "w", newline="", encoding="utf-8") as file:
        file.write(text)
