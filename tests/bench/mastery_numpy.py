"""The same problem as mastery_bench.cpp in numpy's matrix form: 4,096 states, 100 four-option items.

Two forms of choosing: what an item tells about the whole state (one matrix-vector product), and the
decision index of ours (what it tells about each technique too: one matrix-matrix product).
Prints medians, one JSON line a task. Run with Debian's python3 and numpy.
"""
import json
import time

import numpy as np

STATES, ITEMS, OPTIONS, TECHNIQUES = 4096, 100, 4, 12


def median_us(task, rounds=51):
    times = []
    for _ in range(rounds):
        start = time.perf_counter()
        task()
        times.append(time.perf_counter() - start)
    return float(np.median(times) * 1e6)


def main():
    rng = np.random.default_rng(5)
    states = np.arange(STATES)
    bits = ((states[:, None] >> np.arange(TECHNIQUES)) & 1).astype(float)
    tables = np.empty((ITEMS, OPTIONS, STATES))
    for i in range(ITEMS):
        wanted = 1 if i < 55 else 2 if i < 88 else 3
        touched = rng.choice(TECHNIQUES, wanted, replace=False)
        group = ((states[:, None] >> touched) & 1) @ (1 << np.arange(wanted))
        rows = rng.uniform(0.02, 1, (1 << wanted, OPTIONS))
        tables[i] = (rows / rows.sum(1, keepdims=True))[group].T
    flat = tables.reshape(ITEMS * OPTIONS, STATES)
    row_entropy = -(tables * np.log(tables)).sum(1)
    weighted = np.ascontiguousarray(np.hstack([np.ones((STATES, 1)), bits]))
    p = rng.dirichlet(np.ones(STATES))

    def whole():
        answer = (flat @ p).reshape(ITEMS, OPTIONS)
        return -(answer * np.log(answer)).sum(1) - row_entropy @ p

    def decision():
        joint = flat @ (p[:, None] * weighted)
        total, has = joint[:, :1], joint[:, 1:]
        lacks = total - has
        odds = p @ bits
        told = (has * np.log(has / (total * odds)) + lacks * np.log(lacks / (total * (1 - odds)))).sum(1)
        return told.reshape(ITEMS, OPTIONS).sum(1)

    def update():
        q = p * flat[7]
        return q / q.sum()

    for name, task in (("update 4096 states", update), ("select 100 items, state only", whole),
                       ("select 100 items, decision index", decision)):
        print(json.dumps({"task": name, "median_us": round(median_us(task), 3)}))


if __name__ == "__main__":
    main()
