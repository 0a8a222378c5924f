"""What a plain script needs for the last step alone: rows of results as CSV (the verdicts are there already) to one
table with Wilson intervals, a sort and a filter. Standard library only. usage: cohort_plain.py FILE"""
import csv
import json
import math
import sys
import time


def wilson(k, n, z=1.959963984540054):
    p, d = k / n, 1 + z * z / n
    middle, half = (p + z * z / (2 * n)) / d, z * math.sqrt(p * (1 - p) / n + z * z / (4 * n * n)) / d
    return middle - half, middle + half


def table(rows, names):
    found = []
    for at, name in enumerate(names, 8):
        told = [row[at] for row in rows if row[at] != ""]
        lacking = told.count("0")
        found.append((name, lacking, len(told), *(wilson(lacking, len(told)) if len(told) >= 5 else (0, 1))))
    return sorted(found, key=lambda row: -row[1] / max(1, row[2]))


def told(task, since):
    print(json.dumps({"task": task, "median_us": round((time.perf_counter() - since) * 1e6)}))


start = time.perf_counter()
families, head = {}, None
with open(sys.argv[1], encoding="utf-8", newline="") as file:
    for row in csv.reader(file):
        if row[0] == "x":
            head = row[8:]
        else:
            families.setdefault(row[1], (head, []))[1].append(row)
for names, rows in families.values():
    table(rows, names)
told("rows to tables", start)
every = [row for _, rows in families.values() for row in rows]
start = time.perf_counter()
every.sort(key=lambda row: row[0], reverse=True)
told("sort the list", start)
start = time.perf_counter()
names, rows = next(iter(families.values()))
table([row for row in rows if row[3] == "0" and row[2] == "pt"], names)
[row for row in every if row[3] == "0" and row[2] == "pt"]
told("filter the list and the table", start)
