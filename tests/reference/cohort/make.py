#!/usr/bin/python3
"""Intervals, paired tests and question quality from SciPy, statsmodels and pandas, for core/cohort.

  make.py            writes cases.json beside this file
  make.py --check    makes it again and compares

Published worked examples it is held against first (facts/diagnosis.md 4.1): Wilson and Clopper-Pearson for 81/263,
15/148, 0/20, 1/29 (Newcombe 1998); McNemar for [[794,86],[150,570]] (Agresti, by R's mcnemar.test help); alpha and
item-rest correlations of the LSAT section 6 data (Bock and Lieberman 1970), as psych::alpha prints them. The 32
pattern counts of LSAT6 are from memory: that they give the published figures proves them.
"""
import json
import os
import random
import sys

import numpy as np
import pandas as pd
import scipy.stats as st
from statsmodels.stats.contingency_tables import mcnemar
from statsmodels.stats.proportion import proportion_confint

HERE = os.path.dirname(os.path.abspath(__file__))
# people by pattern, from 00000 to 11111, the first question first
LSAT6 = [3, 6, 2, 11, 1, 1, 3, 4, 1, 8, 0, 16, 0, 3, 2, 15, 10, 29, 14, 81, 3, 28, 15, 80, 16, 56, 21, 173, 11, 61, 28,
         298]


def close(values, wanted, off):
    assert all(abs(a - b) <= off for a, b in zip(values, wanted)), (values, wanted)


def interval(k, n, method):
    ours = proportion_confint(k, n, .05, {"wilson": "wilson", "exact": "beta"}[method])
    theirs = st.binomtest(k, n).proportion_ci(method=method)
    ours = [0.0 if k == 0 else float(ours[0]), 1.0 if k == n else float(ours[1])]
    close(ours, theirs, 1e-9)
    return ours


def intervals():
    rng = random.Random(20261125)
    pairs = [(81, 263), (15, 148), (0, 20), (1, 29), (0, 1), (1, 1), (5, 5), (0, 5), (3, 5), (50000, 100000)]
    pairs += [(rng.randrange(n + 1), n) for n in (rng.randrange(1, 3000) for _ in range(150))]
    rows = [[k, n, *interval(k, n, "wilson"), *interval(k, n, "exact")] for k, n in pairs]
    published = [(.255289, .366210, .252737, .367622), (.062386, .160487, .057844, .161650), (0, .161125, 0, .168433),
                 (.006113, .171755, .000873, .177644)]
    for row, wanted in zip(rows, published):
        close(row[2:], wanted, 5e-7)
    return rows


def paired():
    rng = random.Random(7)
    pairs = [(86, 150), (150, 86), (6, 16), (0, 0), (4, 4), (0, 1), (0, 30), (700, 812), (30000, 30500)]
    pairs += [(rng.randrange(60), rng.randrange(60)) for _ in range(60)]
    rows = []
    for b, c in pairs:
        p = 1.0 if b + c == 0 else min(1.0, float(mcnemar([[5, b], [c, 7]], exact=True).pvalue))
        if b + c:
            close([p], [min(1.0, st.binomtest(min(b, c), b + c).pvalue)], 1e-9)
        rows.append([b, c, p])
    close([rows[0][2], rows[2][2]], [3.715936139571e-5, .052478790283203125], 1e-14)
    return rows


def quality(matrix):
    """Of a table of 1, 0 and nan: share right, correlation with the share right of the others, pairwise alpha."""
    table = pd.DataFrame(matrix)
    k = table.shape[1]
    rest = []
    for j in range(k):
        with_others = table[table[j].notna() & (table.drop(columns=j).notna().sum(axis=1) > 0)]
        rest.append(float(np.corrcoef(with_others[j], with_others.drop(columns=j).mean(axis=1))[0, 1]))
    covariance = table.cov(min_periods=2).to_numpy()
    alpha = k / (k - 1) * (1 - np.trace(covariance) / covariance.sum())
    lines = ["".join("-" if np.isnan(x) else "01"[int(x)] for x in row) for row in matrix]
    return {"rows": lines, "right": [float(x) for x in table.mean()], "rest": rest, "alpha": float(alpha)}


def questions():
    lsat = quality(np.array([[float(bit) for bit in f"{n:05b}"] for n, people in enumerate(LSAT6)
                             for _ in range(people)]))
    close([lsat["alpha"]], [.29499719], 5e-9)
    close(lsat["right"], [.924, .709, .553, .763, .870], 1e-12)
    close(lsat["rest"], [.11283269, .15317812, .17277894, .14442810, .12159640], 5e-9)
    # KR-20 with population variances in both places is the same alpha
    table = np.array([[int(x) for x in row] for row in lsat["rows"]])
    p = table.mean(axis=0)
    close([5 / 4 * (1 - (p * (1 - p)).sum() / table.sum(axis=1).var())], [lsat["alpha"]], 1e-12)
    lsat["rows"] = [f"{n:05b}" for n in range(32)]
    lsat["people"] = LSAT6
    rng = np.random.default_rng(5)
    ability = rng.normal(size=(300, 1))
    matrix = (ability + rng.normal(size=(300, 9)) > rng.normal(size=9)).astype(float)
    matrix[rng.random((300, 9)) < .3] = np.nan
    return {"lsat6": lsat, "gaps": quality(matrix)}


def make():
    data = {"intervals": intervals(), "paired": paired(), "questions": questions()}
    return json.dumps(data, indent=None, separators=(",", ":")) + "\n"


def same(one, other):
    """Numbers may differ in the last places between versions of the libraries."""
    if isinstance(one, dict):
        return isinstance(other, dict) and one.keys() == other.keys() and all(same(one[k], other[k]) for k in one)
    if isinstance(one, list):
        return isinstance(other, list) and len(one) == len(other) and all(map(same, one, other))
    if isinstance(one, float) and isinstance(other, float):
        return abs(one - other) <= 1e-12 * max(1, abs(one))
    return one == other


path = os.path.join(HERE, "cases.json")
if sys.argv[1:] == ["--check"]:
    matches = same(json.load(open(path)), json.loads(make()))
    print("as it should be" if matches else "cases.json is not what make.py makes")
    sys.exit(0 if matches else 1)
with open(path, "w") as file:
    file.write(make())
