#!/usr/bin/python3
"""ln and exp of doubles, rounded from 60 digits of Python's decimal, held against numpy's.

  make.py            writes values.txt beside this file: "x ln(x)" and "x exp(x)" lines, hex floats
  make.py --check    makes it again and compares
"""
import decimal
import os
import random
import sys

import numpy as np

HERE = os.path.dirname(os.path.abspath(__file__))
decimal.getcontext().prec = 60
decimal.getcontext().Emin, decimal.getcontext().Emax = -5000, 5000


def arguments():
    rng = random.Random(20261125)
    logs = [2.0 ** -1074, 2.0 ** -1022, 1e-300, .5, 1 - 2.0 ** -53, 1.0, 1 + 2.0 ** -52, 2.0, 10.0, 1e300,
            sys.float_info.max, .7071067811865475, .7071067811865477, 1.4142135623730951]
    logs += [rng.uniform(.9, 1.1) for _ in range(60)]
    logs += [rng.uniform(0, 1) for _ in range(60)]
    logs += [2.0 ** rng.uniform(-1000, 1000) for _ in range(60)]
    exps = [0.0, 1.0, -1.0, 1e-300, -708.0, 709.7, .34657359027997264, -.34657359027997264]
    exps += [rng.uniform(-1, 1) for _ in range(60)] + [rng.uniform(-700, 700) for _ in range(60)]
    return logs, exps


def make():
    logs, exps = arguments()
    lines = []
    for name, values, right, numpy_says in (("ln", logs, decimal.Decimal.ln, np.log),
                                            ("exp", exps, decimal.Decimal.exp, np.exp)):
        for x in values:
            value = float(right(decimal.Decimal(x)))
            assert abs(numpy_says(x) - value) <= 4e-16 * abs(value), (name, x)
            lines.append(f"{name} {x.hex()} {value.hex()}\n")
    return "".join(lines)


path = os.path.join(HERE, "values.txt")
if sys.argv[1:] == ["--check"]:
    same = open(path).read() == make()
    print("as it should be" if same else "values.txt is not what make.py makes")
    sys.exit(0 if same else 1)
with open(path, "w") as file:
    file.write(make())
