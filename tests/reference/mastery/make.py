#!/usr/bin/python3
"""Runs of the diagnosis on random models, worked out by plain enumeration (brute.py, numpy).

  make.py                    writes random.json beside this file
  make.py --check            makes it again and compares; then replays, for every family that ships,
                             what the C++ build says of it (.build/tools/tests/rehale_model_dump)
  make.py --model FILE       replays one such dump: {"bank":…, "run":…} of tests/support/run_json.h

random.json: {"cases":[{"bank":…, "seed":…, "plan":…, "steps":[…], "end":…}]}, a step being one question
asked and answered: what every item would have told before it, what was chosen, what then was known.
"""
import glob
import json
import os
import random
import subprocess
import sys

import numpy as np

from brute import Bank, Run, entropy

SEED = 20261125
HERE = os.path.dirname(os.path.abspath(__file__))
ROOT = os.path.join(HERE, "..", "..", "..")
FIXTURE = os.path.join(HERE, "random.json")
DUMP = os.environ.get("REHALE_MODEL_DUMP") or os.path.join(
    ROOT, ".build", "tools", "tests", "rehale_model_dump")

# K, B, items, with several pieces: small enough to enumerate by hand-made loops, odd enough to trip.
SHAPES = [(3, 0, 8, False), (4, 1, 10, False), (5, 0, 14, True), (5, 2, 14, True), (6, 1, 18, False),
          (7, 2, 16, True), (8, 0, 20, False)]


def random_piece(rng, bits, sharp):
    """Chances above the least one (.005), so that nothing is lifted; that has tests of its own."""
    mask = sum(1 << k for k in rng.sample(range(bits), rng.choice([1, 1, 1, 2, 2, 3])))
    columns = rng.randint(2, 5)
    rows = []
    for _ in range(1 << bin(mask).count("1")):
        row = [rng.randint(6, 60) if rng.random() < .7 else rng.randint(60, 120)
               for _ in range(columns)]
        row[rng.randrange(columns)] += 400 if sharp else 0
        rows += row
    return dict(mask=mask, columns=columns, rows=rows)


def random_bank(rng, shape):
    techniques, bugs, count, several = shape
    sharp = rng.random() < .5
    bits = techniques + bugs
    rules_out = [rng.randrange(techniques) for _ in range(bugs)]
    critical = [k < 1 or rng.random() < .5 for k in range(techniques)]
    prior = [rng.randint(1, 1000) for _ in range(1 << bits)]
    for state in range(1 << bits):
        if any(state >> techniques + b & 1 and state >> k & 1 for b, k in enumerate(rules_out)):
            prior[state] = 0
    total = sum(prior)
    weights = [round(rng.uniform(.3, 1), 3) if c else 0 for c in critical]
    weights += [round(2 * rng.uniform(.3, 1), 3) for _ in range(bugs)]
    items = [dict(kind=rng.randrange(4),
                  pieces=[random_piece(rng, bits, sharp)
                          for _ in range(rng.randint(1, 3) if several else 1)])
             for _ in range(count)]
    return dict(K=techniques, B=bugs, critical=critical, weights=weights, rules_out=rules_out,
                prior=[p / total for p in prior], items=items)


def random_answer(rng, bank, truth, item):
    columns = []
    for piece in bank.items[item]:
        if len(bank.items[item]) > 1 and rng.random() < .1:
            columns.append(-1)
            continue
        draw, column = rng.random(), 0
        while column < piece.columns - 1 and draw >= piece.table[truth, column]:
            draw -= piece.table[truth, column]
            column += 1
        columns.append(column)
    return columns


def record(run, item, columns):
    """Asks and answers, and says what that did."""
    before = run.worth(item)
    run.ask(item)
    evidence = run.answer(item, columns)
    return dict(item=item, columns=columns, worth=before, evidence=evidence,
                marginals=[run.marginal(k) for k in range(run.bank.bits)],
                told=[run.told[k] for k in range(run.bank.K)], entropy=entropy(run.pi),
                map=int(np.argmax(run.pi)))


def random_case(rng, shape, number):
    bank_json = random_bank(rng, shape)
    bank = Bank(bank_json)
    plan = dict(fewest=3, most=rng.choice([6, 8]), aim=rng.choice(["decision", "decision", "whole"]))
    if number % 2 == 0:
        plan["near"] = plan["near_recent"] = 0.0  # the best item alone
    recent = rng.sample(range(len(bank.items)), 3)
    run = Run(bank, plan, seed=number)
    truth = rng.choices(range(len(bank.prior)), bank.prior)[0]
    steps = []
    while True:
        chosen = run.next(recent)
        if chosen["stop"] != "go_on":
            break
        if run.slack and run.slack < 1e-9:
            raise SystemExit("two items too alike to tell apart: take another SEED")
        steps.append(record(run, chosen["item"], random_answer(rng, bank, truth, chosen["item"])))
    return dict(bank=bank_json, seed=number, plan=plan, recent=recent, steps=steps,
                end=chosen["stop"])


def make():
    rng = random.Random(SEED)
    cases = [random_case(rng, shape, 2 * i + j) for i, shape in enumerate(SHAPES) for j in (0, 1)]
    return dict(cases=cases)


def differences(one, two, path=""):
    if isinstance(one, dict) and isinstance(two, dict) and one.keys() == two.keys():
        return [d for k in one for d in differences(one[k], two[k], f"{path}/{k}")]
    if isinstance(one, list) and isinstance(two, list) and len(one) == len(two):
        return [d for i, (a, b) in enumerate(zip(one, two)) for d in differences(a, b, f"{path}/{i}")]
    if isinstance(one, float) and isinstance(two, (int, float)):
        return [] if abs(one - two) <= 1e-12 * max(1, abs(one)) else [f"{path}: {one} {two}"]
    return [] if one == two else [f"{path}: {one} {two}"]


def replay(dump):
    """What is said of a run in a dump that enumeration does not find too."""
    bank = Bank(dump["bank"])
    run = Run(bank, seed=dump["run"]["seed"])
    wrong = []
    for number, step in enumerate(dump["run"]["steps"]):
        chosen = run.next()
        if chosen != dict(stop="go_on", item=step["item"]):
            wrong.append(f"step {number}: {step['item']} was chosen, enumeration says {chosen}")
        found = record(run, step["item"], step["columns"])
        for line in differences(found, step):
            wrong.append(f"step {number}{line}")
    if run.next()["stop"] != dump["run"]["end"]:
        wrong.append(f"end: {dump['run']['end']}, enumeration says {run.next()['stop']}")
    return wrong


def check_shipped():
    if not os.path.exists(DUMP):
        raise SystemExit(f"{os.path.relpath(DUMP, ROOT)} is not there: run ci/build tools first")
    wrong = []
    families = sorted(glob.glob(os.path.join(ROOT, "assets", "families", "*", "procedure.json")))
    for family in (os.path.basename(os.path.dirname(path)) for path in families):
        for seed in (1, 2):
            said = subprocess.run([DUMP, family, str(seed)], stdout=subprocess.PIPE, check=True)
            dump = json.loads(said.stdout)
            wrong += [f"{family}, seed {seed}: {line}" for line in replay(dump)]
            print(f"{family}, seed {seed}: {len(dump['run']['steps'])} questions replayed")
    if not families:
        wrong.append("no family ships")
    return wrong


def main(words):
    if words[:1] == ["--model"]:
        wrong = replay(json.load(open(words[1])))
    elif words == ["--check"]:
        wrong = differences(json.load(open(FIXTURE)), json.loads(json.dumps(make())))
        wrong += check_shipped()
    else:
        with open(FIXTURE, "w") as file:
            json.dump(make(), file, separators=(",", ":"))
        wrong = []
    print("\n".join(wrong[:20]) if wrong else "as it should be")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
