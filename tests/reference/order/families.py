#!/usr/bin/python3
"""Marks every order question of the shipped families with python3-networkx and compares with ours.

  families.py BINARY ASSETS_DIR       BINARY: rehale_order_dump

Reads the rules from assets/families/*/procedure.json by itself. Every topological order of the cards must
be right and every other permutation not; broken pairs (transitive closure) and fewest moves (bipartite
matching) must be the same number for each permutation.
"""
import itertools
import json
import os
import subprocess
import sys

import networkx as nx

sys.dont_write_bytecode = True
from make import moves_by_matching  # noqa: E402 (after the line that keeps the folder clean)


def expected_lines(assets):
    with open(os.path.join(assets, "library.json"), encoding="utf-8") as file:
        families = json.load(file)["families"]
    for family in families:
        base = os.path.join(assets, "families", family)
        with open(os.path.join(base, "procedure.json"), encoding="utf-8") as file:
            procedure = json.load(file)
        with open(os.path.join(base, "questions.json"), encoding="utf-8") as file:
            questions = json.load(file)["questions"]
        graph = nx.DiGraph()
        graph.add_nodes_from(action["id"] for action in procedure["actions"])
        graph.add_edges_from((rule["before"], rule["after"]) for rule in procedure["rules"])
        closure = nx.transitive_closure(graph)
        for question in questions:
            if question["kind"] == "order":
                yield from lines_of(family, question, closure.subgraph(question["actions"]))


def lines_of(family, question, order):
    right = {tuple(cards) for cards in nx.all_topological_sorts(order)}
    for cards in itertools.permutations(sorted(question["actions"])):
        place = {card: i for i, card in enumerate(cards)}
        broken = [(a, b) for a, b in order.edges() if place[b] < place[a]]
        word = "right" if cards in right else "broken"
        yield f"{family} {question['id']} {','.join(cards)} {word} {moves_by_matching(broken)} {len(broken)}"


def main():
    ours = subprocess.run(sys.argv[1:3], check=True, capture_output=True, text=True).stdout.splitlines()
    theirs = list(expected_lines(sys.argv[2]))
    different = [pair for pair in itertools.zip_longest(ours, theirs) if pair[0] != pair[1]]
    questions = {tuple(line.split()[:2]) for line in theirs}
    print(f"order questions: {len(questions)} in {len({q[0] for q in questions})} families, {len(theirs)} orders, "
          f"{sum(' right ' in line for line in theirs)} right, {len(different)} marked differently")
    for our, their in different[:5]:
        print(f"  ours    {our}\n  theirs  {their}")
    return 1 if different or not theirs else 0


sys.exit(main())
