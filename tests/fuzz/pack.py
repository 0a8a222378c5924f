#!/usr/bin/python3
"""Inputs of a fuzz target as files and as lines of hex, as tests/fuzz/seeds and tests/fuzz/found hold them.

  pack.py unpack FILE.txt FOLDER     writes one file a line
  pack.py pack FOLDER FILE.txt       adds the files of FOLDER as lines that are not there yet
"""
import hashlib
import os
import sys

action, source, target = sys.argv[1:]
if action == "unpack":
    os.makedirs(target, exist_ok=True)
    for line in open(source) if os.path.exists(source) else []:
        data = bytes.fromhex(line.strip())
        with open(os.path.join(target, hashlib.sha1(data).hexdigest()), "wb") as file:
            file.write(data)
elif action == "pack":
    known = set(open(target).read().split("\n")) if os.path.exists(target) else set()
    for name in sorted(os.listdir(source)):
        line = open(os.path.join(source, name), "rb").read().hex()
        if line not in known:
            known.add(line)
            with open(target, "a") as file:
                file.write(line + "\n")
else:
    sys.exit(__doc__)
