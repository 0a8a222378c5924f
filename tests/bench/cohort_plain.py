"""The desk's work in a plain Python script, standard library only: codes to answers, runs as JSON to answers, answers to
verdicts, verdicts to tables, a sort, a filter. usage: cohort_plain.py CODES RUNS COLUMNS ROWS, files as
rehale_cohort_bench prints them; COLUMNS may hold fewer results. Prints JSON lines: {task, median_us[, results]}, {size}."""
import base64
import csv
import json
import math
import statistics
import struct
import sys
import time
import zlib


def told(task, since, **more):
    print(json.dumps({"task": task, "median_us": round((time.perf_counter() - since) * 1e6), **more}))


# ---- codes: a letter, a digit, base64url of CBOR and CRC-32C (core/exchange/envelope.h)
def crc_table():
    table = []
    for byte in range(256):
        for _ in range(8):
            byte = byte >> 1 ^ (0x82F63B78 if byte & 1 else 0)
        table.append(byte)
    return table


CRC = crc_table()


def crc32c(data):
    crc = 0xFFFFFFFF
    for byte in data:
        crc = CRC[(crc ^ byte) & 255] ^ crc >> 8
    return crc ^ 0xFFFFFFFF


def cbor(data, at):
    kind, small = data[at] >> 5, data[at] & 31
    at += 1
    if kind == 7:
        sizes = {25: (2, ">e"), 26: (4, ">f"), 27: (8, ">d")}
        if small in sizes:
            size, form = sizes[small]
            return struct.unpack(form, data[at:at + size])[0], at + size
        return {20: False, 21: True}.get(small), at
    if small >= 24:
        size = 1 << small - 24
        small, at = int.from_bytes(data[at:at + size], "big"), at + size
    if kind == 0:
        return small, at
    if kind == 1:
        return -1 - small, at
    if kind in (2, 3):
        part = data[at:at + small]
        return (part if kind == 2 else part.decode()), at + small
    items = []
    for _ in range(small):
        item, at = cbor(data, at)
        items.append(item)
    return items, at


def answers_of(code):
    data = base64.urlsafe_b64decode(code[2:] + "=" * (-len(code[2:]) % 4))
    if crc32c(code[:2].encode() + data[:-4]) != int.from_bytes(data[-4:], "big"):
        raise ValueError("a letter was lost or changed")
    fields, _ = cbor(data, 0)
    entries, given, at = fields[-1], [], 0
    while at < len(entries):
        if entries[at + 2] is None:
            at += 3
            continue
        given.append((entries[at], entries[at + 3]))
        at += 4
    return fields[0], given


def answers_in_json(line):
    run = json.loads(line)
    return [(event["question"], event["answer"]) for event in run["events"] if event["what"] == "answered"]


# ---- answers to a verdict: Bayes' rule over every state that can be
class Bank:
    def __init__(self, bank):
        self.bits = bank["K"] + bank["B"]
        self.states = [state for state, mass in enumerate(bank["prior"]) if mass > 0]
        self.prior = [bank["prior"][state] for state in self.states]
        self.items = [item["pieces"] for item in bank["items"]]
        self.groups = {}

    def group(self, mask):
        if mask not in self.groups:
            places = [bit for bit in range(self.bits) if mask >> bit & 1]
            self.groups[mask] = [sum((state >> bit & 1) << n for n, bit in enumerate(places)) for state in self.states]
        return self.groups[mask]

    def verdict(self, given):
        post = self.prior
        for item, columns in given:
            for piece, column in zip(self.items[item], columns):
                if column < 0:
                    continue
                chance = piece["rows"][column::piece["columns"]]
                post = [mass * chance[group] for mass, group in zip(post, self.group(piece["mask"]))]
            total = sum(post)
            post = [mass / total for mass in post]
        return [sum(mass for mass, state in zip(post, self.states) if state >> bit & 1) for bit in range(self.bits)]


def verdicts(file):
    banks = {family: Bank(bank) for family, bank in json.loads(file.readline()).items()}
    results = [json.loads(line) for line in file]
    for result in results:  # once, so that all tables are there
        banks[result["family"]].verdict(result["given"])
    start = time.perf_counter()
    for result in results:
        banks[result["family"]].verdict(result["given"])
    told("codes to verdicts", start, results=len(results))


# ---- verdicts to tables
def wilson(k, n, z=1.959963984540054):
    p, d = k / n, 1 + z * z / n
    middle, half = (p + z * z / (2 * n)) / d, z * math.sqrt(p * (1 - p) / n + z * z / (4 * n * n)) / d
    return middle - half, middle + half


def table(rows, names):
    found = []
    for at, name in enumerate(names, 8):
        known = [row[at] for row in rows if row[at] != ""]
        lacking = known.count("0")
        found.append((name, lacking, len(known), *(wilson(lacking, len(known)) if len(known) >= 5 else (0, 1))))
    return sorted(found, key=lambda row: -row[1] / max(1, row[2]))


def tables(file):
    start = time.perf_counter()
    families, head = {}, None
    for row in csv.reader(file):
        if row[0] == "x":
            head = row[8:]
        else:
            families.setdefault(row[1], (head, []))[1].append(row)
    for names, rows in families.values():
        table(rows, names)
    told("verdicts to lists and first table", start)
    every = [row for _, rows in families.values() for row in rows]
    start = time.perf_counter()
    every.sort(key=lambda row: row[0], reverse=True)
    told("sort the list", start)
    start = time.perf_counter()
    names, rows = next(iter(families.values()))
    table([row for row in rows if row[3] == "0" and row[2] == "pt"], names)
    [row for row in every if row[3] == "0" and row[2] == "pt"]
    told("filter the list and the table", start)


def sizes(codes, runs):
    packed = [base64.urlsafe_b64encode(zlib.compress(run.encode(), 9)).rstrip(b"=") for run in runs]
    for name, texts in (("code", codes), ("run as JSON", runs), ("run as JSON, deflated, base64url", packed)):
        lengths = [len(text) for text in texts]
        print(json.dumps({"size": name, "median": statistics.median(lengths), "longest": max(lengths)}))


def main():
    codes_file, runs_file, columns_file, rows_file = sys.argv[1:]
    start = time.perf_counter()
    with open(codes_file, encoding="utf-8") as file:
        codes = file.read().split()
    for code in codes:
        answers_of(code)
    told("codes to answers", start)
    start = time.perf_counter()
    with open(runs_file, encoding="utf-8") as file:
        runs = file.read().splitlines()
    for run in runs:
        answers_in_json(run)
    told("runs as JSON to answers", start)
    with open(columns_file, encoding="utf-8") as file:
        verdicts(file)
    with open(rows_file, encoding="utf-8", newline="") as file:
        tables(file)
    sizes(codes[:2000], runs[:2000])


main()
