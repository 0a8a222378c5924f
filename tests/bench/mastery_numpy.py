#!/usr/bin/python3
"""The same work in numpy's matrix form: a posterior update and the information of 100 four-option items
over 4,096 states. Medians, one JSON line a task, as mastery_bench.cpp prints them."""
import json
import statistics
import time

import numpy as np


def median_us(task, rounds=101):
    times = []
    for _ in range(rounds):
        start = time.perf_counter()
        task()
        times.append((time.perf_counter() - start) * 1e6)
    return statistics.median(times)


rng = np.random.default_rng(5)
STATES, ITEMS, OPTIONS = 4096, 100, 4
posterior = rng.random(STATES)
posterior /= posterior.sum()

# P(option | state) of every item, states by (items x options): groups spread out over the states.
tables = np.empty((STATES, ITEMS, OPTIONS))
for item in range(ITEMS):
    bits = rng.choice(12, 1 if item < 55 else 2 if item < 88 else 3, replace=False)
    rows = rng.uniform(.02, 1, (1 << len(bits), OPTIONS))
    rows /= rows.sum(1, keepdims=True)
    group = sum((np.arange(STATES) >> bit & 1) << place for place, bit in enumerate(bits))
    tables[:, item] = rows[group]
flat = np.ascontiguousarray(tables.reshape(STATES, -1))
given = (tables * np.log(tables)).sum(2)  # cached, as the product caches row entropies


def update():
    after = posterior * tables[:, 7, 2]
    return after / after.sum()


def choose():
    chance = (posterior @ flat).reshape(ITEMS, OPTIONS)
    return int((posterior @ given - (chance * np.log(chance)).sum(1)).argmax())


def choose_by_decision():
    """With the information about five techniques, as the product weighs it."""
    weighed = np.stack([posterior * (np.arange(STATES) >> k & 1) for k in range(5)] + [posterior])
    joint = (weighed @ flat).reshape(6, ITEMS, OPTIONS)
    chance, told = joint[5], 0
    for on in joint[:5]:
        off = np.maximum(chance - on, 1e-300)
        told = told + (on * np.log(np.maximum(on, 1e-300)) + off * np.log(off)).sum(1)
    whole = posterior @ given - (chance * np.log(chance)).sum(1)
    return int((told + .05 * whole).argmax())


for name, task in (("numpy: update 4096 states", update),
                   ("numpy: select 100 items, matrix form", choose),
                   ("numpy: select 100 items, decision index", choose_by_decision)):
    print(json.dumps({"task": name, "median_us": round(median_us(task), 3)}))
