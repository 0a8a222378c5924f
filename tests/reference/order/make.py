#!/usr/bin/python3
"""Random partial orders and proposed lists, marked by python3-networkx 2.8.8 and by plain enumeration.

  make.py            writes cases.txt beside this file
  make.py --check    makes it again and compares

One case a line:  n pairs list |P| given closure moves swaps orders
  pairs    the pairs the order is made of, "01.12"; items are digits of base 16; "-" when there are none
  list     the proposed order, "3012"
  |P|      pairs of the transitive closure                   networkx.transitive_closure
  given    pairs of the first column that the list breaks
  closure  pairs of the closure that it breaks
  moves    fewest cards to pick up and put elsewhere         networkx hopcroft_karp_matching of those
           (for n <= 6 also: n - longest common subsequence with any valid order, by enumeration)
  swaps    fewest swaps of neighbours to a valid order       networkx all_topological_sorts, enumerated
  orders   number of valid orders                            the same
  "-" where there are more than LIMIT valid orders to go through.
The sources of the measures: facts/diagnosis.md section 2 (Dilworth, König; Brandenburg et al. 2013).
"""
import itertools
import os
import random
import sys

import networkx as nx
from networkx.algorithms import bipartite

SEED = 20261125
LIMIT = 3000
HERE = os.path.dirname(os.path.abspath(__file__))


def random_case(rng, n):
    """Pairs along a hidden random order; the list is that order shaken a little or a lot."""
    hidden = rng.sample(range(n), n)
    density = rng.choice([0.1, 0.2, 0.3, 0.5, 0.8])
    pairs = [(hidden[i], hidden[j]) for i in range(n) for j in range(i + 1, n) if rng.random() < density]
    rng.shuffle(pairs)
    shown = hidden[:]
    for _ in range(rng.choice([0, 1, 2, 3, n, 4 * n])):
        item = shown.pop(rng.randrange(n))
        shown.insert(rng.randrange(n), item)
    return pairs, shown


def common_subsequence(a, b):
    row = [0] * (len(b) + 1)
    for x in a:
        above = row[:]
        for j, y in enumerate(b):
            row[j + 1] = above[j] + 1 if x == y else max(row[j], above[j + 1])
    return row[-1]


def inversions(shown, other):
    place = {item: i for i, item in enumerate(other)}
    return sum(place[a] > place[b] for a, b in itertools.combinations(shown, 2))


def moves_by_matching(broken):
    graph = nx.Graph()
    graph.add_nodes_from((("before", a) for a, _ in broken), bipartite=0)
    graph.add_nodes_from((("after", b) for _, b in broken), bipartite=1)
    graph.add_edges_from((("before", a), ("after", b)) for a, b in broken)
    tops = {node for node in graph if node[0] == "before"}
    return len(bipartite.hopcroft_karp_matching(graph, tops)) // 2


def mark(n, pairs, shown):
    graph = nx.DiGraph()
    graph.add_nodes_from(range(n))
    graph.add_edges_from(pairs)
    closure = list(nx.transitive_closure(graph).edges())
    place = {item: i for i, item in enumerate(shown)}
    broken = [(a, b) for a, b in closure if place[b] < place[a]]
    given = sum(place[b] < place[a] for a, b in pairs)
    moves = moves_by_matching(broken)
    orders = list(itertools.islice(nx.all_topological_sorts(graph), LIMIT + 1))
    swaps = count = "-"
    if len(orders) <= LIMIT:
        count = len(orders)
        swaps = min(inversions(shown, order) for order in orders)
        if n <= 6:
            assert moves == n - max(common_subsequence(shown, order) for order in orders)
    return f"{len(closure)} {given} {len(broken)} {moves} {swaps} {count}"


def line(n, pairs, shown):
    digits = lambda items: "".join(f"{item:x}" for item in items)
    return f"{n} {'.'.join(digits(pair) for pair in pairs) or '-'} {digits(shown)} {mark(n, pairs, shown)}"


def make():
    rng = random.Random(SEED)
    sizes = [1, 2, 3] * 10 + [4, 5, 6] * 220 + [7, 8] * 200 + [9, 10, 11, 12] * 60
    # facts/diagnosis.md section 2, check table; its own figures are in order_test.cpp.
    table = [(0, 1), (1, 2), (2, 4), (3, 4), (4, 5), (5, 6), (5, 7)]
    lists = ["01234567", "30124576", "02134567", "50123467", "76543210"]
    lines = [line(8, table, [int(c) for c in shown]) for shown in lists]
    lines += [line(n, *random_case(rng, n)) for n in sizes]
    return "\n".join(lines) + "\n"


def main():
    path = os.path.join(HERE, "cases.txt")
    made = make()
    if sys.argv[1:] == ["--check"]:
        with open(path, encoding="ascii") as file:
            same = file.read() == made
        print(f"order cases: {made.count(chr(10))} made again, {'the same' if same else 'NOT the same'}")
        return 0 if same else 1
    with open(path, "w", encoding="ascii") as file:
        file.write(made)
    return 0


if __name__ == "__main__":
    sys.exit(main())
