"""Diagnosis by plain enumeration: every state looked at, nothing shared with core/mastery.

No superset sums, no Möbius, no bit tricks beyond reading a bit: tables over all states and sums over
them. Rules: facts/diagnosis.md 1.1, 1.5, 1.8.
"""
import itertools
import math

import numpy as np

PLAN = dict(aim="decision", fewest=6, most=12, has_it=.95, not_yet=.90, probe=.05, useful=.02,
            boost=1.3, low=.30, high=.90, most_confirming=4, same_kind=.9, near=.05,
            near_recent=.25, spare=1)


def entropy(p):
    p = np.asarray(p, dtype=float)
    p = p[p > 0]
    return float(-(p * np.log(p)).sum())


class Piece:
    def __init__(self, json, bits):
        self.mask, self.columns = json["mask"], json["columns"]
        places = [k for k in range(bits) if self.mask >> k & 1]
        rows = np.array(json["rows"], dtype=float).reshape(-1, self.columns)
        rows /= rows.sum(axis=1, keepdims=True)
        group = [sum((state >> k & 1) << i for i, k in enumerate(places))
                 for state in range(1 << bits)]
        self.table = rows[group]  # P(column | state)
        self.surprise = np.array([entropy(row) for row in rows])[group]  # H(column | state)


class Bank:
    def __init__(self, json):
        self.K, self.B = json["K"], json["B"]
        self.bits = self.K + self.B
        self.prior = np.array(json["prior"], dtype=float)
        self.critical = [k for k in range(self.K) if json["critical"][k]]
        self.weights = json["weights"]
        self.items = [[Piece(p, self.bits) for p in item["pieces"]] for item in json["items"]]
        self.kinds = [item["kind"] for item in json["items"]]
        states = np.arange(1 << self.bits)
        self.has = [(states >> k & 1).astype(bool) for k in range(self.bits)]
        self.indicator = np.array(self.has, dtype=float)  # bit by state

    def touches(self, item, k):
        return any(piece.mask >> k & 1 for piece in self.items[item])


class Rng:
    """splitmix64."""

    def __init__(self, seed):
        self.state = seed & (1 << 64) - 1

    def next(self):
        cut = (1 << 64) - 1
        self.state = self.state + 0x9E3779B97F4A7C15 & cut
        z = self.state
        z = (z ^ z >> 30) * 0xBF58476D1CE4E5B9 & cut
        z = (z ^ z >> 27) * 0x94D049BB133111EB & cut
        return z ^ z >> 31

    def below(self, count):
        uneven = (1 << 64) % count
        while True:
            draw = self.next()
            if draw >= uneven:
                return draw % count


class Run:
    def __init__(self, bank, plan=None, seed=0):
        self.bank, self.plan, self.seed = bank, {**PLAN, **(plan or {})}, seed
        self.pi = bank.prior / bank.prior.sum()
        self.asked, self.told = [], [0.0] * bank.K
        self.confirming, self.about_bug = [0] * bank.B, [0] * bank.B

    def marginal(self, k):
        return float(self.pi[self.bank.has[k]].sum())

    # -- what a question would tell ------------------------------------------------------------------

    def tells(self, piece):
        """I(column; state), and I(column; bit) for every bit, from the whole joint table."""
        joint = self.pi[:, None] * piece.table
        chance = joint.sum(0)
        with_bit = self.bank.indicator @ joint
        about = [entropy(chance) + entropy([on.sum(), (chance - on).sum()])
                 - entropy(np.concatenate([on, chance - on])) if self.bank.weights[k] > 0 else 0.0
                 for k, on in enumerate(with_bit)]
        return entropy(chance) - float(self.pi @ piece.surprise), about

    def worth(self, item):
        told = [self.tells(piece) for piece in self.bank.items[item]]
        whole = max(w for w, _ in told)
        about = [max(column) for column in zip(*(a for _, a in told))]
        index = sum(w * i for w, i in zip(self.bank.weights, about)) + .05 * whole
        return dict(decision=index, whole=whole, about=about)

    def even_odds(self, piece, k):
        on, off = self.bank.has[k], ~self.bank.has[k]
        if min(self.pi[on].sum(), self.pi[off].sum()) < 1e-12:
            return 0.0
        one = self.pi[on] @ piece.table[on] / self.pi[on].sum()
        two = self.pi[off] @ piece.table[off] / self.pi[off].sum()
        return entropy((one + two) / 2) - (entropy(one) + entropy(two)) / 2

    # -- the run -------------------------------------------------------------------------------------

    def grey(self, k):
        return 1 - self.plan["not_yet"] < self.marginal(k) < self.plan["has_it"]

    def told_now(self, item, k, worth):
        if not self.bank.touches(item, k):
            return 0.0
        if self.grey(k):
            return worth["about"][k]
        return max(self.even_odds(p, k) for p in self.bank.items[item])

    def suspected(self):
        return [b for b in range(self.bank.B)
                if self.confirming[b] < self.plan["most_confirming"]
                and self.plan["low"] < self.marginal(self.bank.K + b) < self.plan["high"]]

    def ask(self, item):
        worth, suspects = self.worth(item), self.suspected()
        for k in self.bank.critical:
            self.told[k] += self.told_now(item, k, worth)
        for b in range(self.bank.B):
            if self.bank.touches(item, self.bank.K + b):
                self.about_bug[b] += 1
                self.confirming[b] += b in suspects
        self.asked.append(item)

    def answer(self, item, columns):
        evidence = 1.0
        for piece, column in zip(self.bank.items[item], columns):
            if column < 0:
                continue
            self.pi = self.pi * piece.table[:, column]
            evidence *= float(self.pi.sum())
            self.pi = self.pi / self.pi.sum()
        return evidence

    def cover(self, missing, offers):
        """Fewest items, and those that shorten the plan; sets tried smallest first."""
        fewest, steps = 0, set()
        sets = {i: frozenset(k for k in missing if adds[k] >= missing[k])
                for i, adds in offers.items()}
        single = frozenset().union(*sets.values()) if sets else frozenset()
        for k in set(missing) - single:
            adds = sorted((adds[k] for adds in offers.values()), reverse=True)
            total = list(itertools.accumulate(adds))
            count = next((n + 1 for n, t in enumerate(total) if t >= missing[k]), 0)
            fewest += count
            if count:
                steps |= {i for i, a in offers.items() if a[k] >= adds[count - 1]}

        def need(wanted):
            kinds = set(sets.values())
            return next(n for n in range(len(wanted) + 1)
                        if any(wanted <= frozenset().union(*pick)
                               for pick in itertools.combinations(kinds, n)))
        all_of_it = need(single)
        steps |= {i for i, s in sets.items() if need(single - s) < all_of_it}
        return fewest + all_of_it, steps

    def next(self, recent=()):
        plan, bank = self.plan, self.bank
        left = [i for i in range(len(bank.items)) if i not in self.asked]
        if len(self.asked) >= plan["most"]:
            return dict(stop="longest", item=-1)
        if not left:
            return dict(stop="no_item_left", item=-1)
        worth = {i: self.worth(i) for i in left}
        aim = "decision" if plan["aim"] == "decision" else "whole"
        missing = {k: plan["probe"] - self.told[k] for k in bank.critical
                   if self.told[k] < plan["probe"]}
        offers = {i: {k: self.told_now(i, k, worth[i]) for k in missing} for i in left}
        needed, steps = self.cover(missing, offers) if missing else (0, set())
        suspects = [bank.K + b for b in self.suspected()]
        confirms = {i: sum(worth[i]["about"][k] for k in suspects if bank.touches(i, k))
                    for i in left}
        if len(self.asked) >= plan["fewest"] and needed == 0 and max(confirms.values()) == 0:
            if not any(self.grey(k) for k in bank.critical):
                return dict(stop="decided", item=-1)
            if max(w[aim] for w in worth.values()) < plan["useful"]:
                return dict(stop="nothing_useful", item=-1)
        return dict(stop="go_on", item=self.pick(left, worth, aim, missing, needed, steps,
                                                 confirms, recent))

    def pick(self, left, worth, aim, missing, needed, steps, confirms, recent):
        plan, bank = self.plan, self.bank
        index = {}
        for i in left:
            index[i] = worth[i][aim]
            if any(bank.touches(i, k) for k in missing):
                index[i] *= plan["boost"]
            for before in self.asked[-2:]:
                if bank.kinds[before] == bank.kinds[i]:
                    index[i] *= plan["same_kind"]
        if needed > 0 and needed + plan["spare"] >= plan["most"] - len(self.asked):
            left = [i for i in left if i in steps] or left
        if any(confirms[i] > 0 for i in left):
            left = [i for i in left if confirms[i] > 0]
            index = confirms
        best = max(index[i] for i in left)
        fresh = [i for i in left if i not in recent]
        best_fresh = max([index[i] for i in fresh], default=-1)
        if best_fresh >= best * (1 - plan["near_recent"]):
            left, best = fresh, best_fresh
        near = [i for i in left if index[i] >= best * (1 - plan["near"])]
        self.slack = min([abs(index[i] - best * (1 - plan["near"])) for i in left])
        draw = Rng(self.seed + 0x9E3779B97F4A7C15 * (len(self.asked) + 1))
        return near[draw.below(len(near))]
