#!/usr/bin/python3
"""Days since 1970-01-01 of dates, and of the same day some months later, by Python's datetime and calendar.

  make.py            writes days.txt beside this file: "date day months-later day-then" lines
  make.py --check    makes it again and compares
"""
import calendar
import datetime
import os
import random
import sys

HERE = os.path.dirname(os.path.abspath(__file__))
START = datetime.date(1970, 1, 1)


def later(date, months):
    year, month = divmod(date.year * 12 + date.month - 1 + months, 12)
    month += 1
    return datetime.date(year, month, min(date.day, calendar.monthrange(year, month)[1]))


def make():
    rng = random.Random(20261125)
    dates = [datetime.date(y, m, d) for y in (1970, 1999, 2000, 2023, 2024, 2026, 2100, 2400)
             for m, d in ((1, 1), (1, 31), (2, 28), (3, 1), (3, 31), (8, 31), (12, 31))]
    dates += [datetime.date(y, 2, 29) for y in (1972, 2000, 2024, 2096, 2400)]
    dates += [START + datetime.timedelta(rng.randrange(2_900_000)) for _ in range(300)]
    lines = []
    for date in dates:
        months = rng.randrange(14)
        lines.append(f"{date.isoformat()} {(date - START).days} {months} {(later(date, months) - START).days}\n")
    return "".join(lines)


path = os.path.join(HERE, "days.txt")
if sys.argv[1:] == ["--check"]:
    same = open(path).read() == make()
    print("as it should be" if same else "days.txt is not what make.py makes")
    sys.exit(0 if same else 1)
with open(path, "w") as file:
    file.write(make())
