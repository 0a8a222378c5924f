#!/usr/bin/python3
"""Stability that fits published decay of technique after teaching, by scipy's least squares.

  make.py            writes evidence.txt beside this file
  make.py --check    makes it again and compares

Curve: R(t) = (1 + 19/81 t/S)^-.5 (core/recheck, habit profile). Two kinds of measure stand in the studies: the
share of people with ALL steps right among those who had them right just after teaching, and the share of STEPS
still right. One habit of one person must lie between the two: all steps are lost sooner than one of them.
Values: facts/technique.md 3d (keys there).
"""
import os
import sys

from scipy.optimize import least_squares

HERE = os.path.dirname(os.path.abspath(__file__))
# days later, share kept of what was there just after teaching, source
ALL_STEPS = [(30, .61 / 1.00, "Ovc11"), (30, .50, "Azz17"), (30, (1 - .54) / (1 - .11), "Pre16"),
             (90, (1 - .48) / (1 - .11), "Pre16"), (365, .28 / .61, "Stu18")]
ONE_STEP = [(90, 8.14 / 9, "Bas18")]


def recall(days, stability):
    return (1 + 19 / 81 * days / stability) ** -.5


def fit(rows):
    found = least_squares(lambda s: [recall(days, s[0]) - kept for days, kept, _ in rows], [10.0], bounds=(.1, 1000),
                          xtol=1e-12, ftol=1e-12, gtol=1e-12)
    return found.x[0]


def make():
    return f"all-steps {fit(ALL_STEPS):.4f}\none-step {fit(ONE_STEP):.4f}\n"


path = os.path.join(HERE, "evidence.txt")
if sys.argv[1:] == ["--check"]:
    same = open(path).read() == make()
    print("as it should be" if same else "evidence.txt is not what make.py makes")
    sys.exit(0 if same else 1)
with open(path, "w") as file:
    file.write(make())
