"""Has each shipped font a glyph for every letter of every shipped text?

Usage: letters.py SET [MORE]   (SET: the folder of a built page that holds content/ and fonts/;
MORE: letters to ask for besides, so that the check itself can be tried)
"""
import json
import pathlib
import sys

from fontTools.ttLib import TTFont

site = pathlib.Path(sys.argv[1])
more = "".join(sys.argv[2:])


def sentences(value):
    if isinstance(value, dict):
        for inner in value.values():
            yield from sentences(inner)
    elif isinstance(value, str):
        yield value


texts = sorted(site.glob("content/text/*.json")) + sorted(site.glob("content/families/*/text.*.json"))
fonts = sorted(site.glob("fonts/*.ttf"))
if not texts or not fonts:
    sys.exit(f"{site} has {len(texts)} texts and {len(fonts)} fonts: nothing to check")
used = {letter: "asked for by hand" for letter in more}
for path in texts:
    for sentence in sentences(json.loads(path.read_text("utf-8"))):
        for letter in sentence:
            used.setdefault(letter, f"{path.relative_to(site)}: {sentence}")
missing = 0
for path in fonts:
    drawn = TTFont(path).getBestCmap()
    for letter in sorted(used):
        if ord(letter) not in drawn:
            missing += 1
            print(f"{path.name} has no U+{ord(letter):04X} {letter}, first seen in {used[letter]}")
print(f"letters: {len(used)} in {len(texts)} texts, {len(fonts)} fonts, {missing} missing")
sys.exit(1 if missing else 0)
