#!/usr/bin/python3
"""Links that are not whole, not ours, or not what they seem: what stands behind '#', and what the page has to say of it.
Made from the committed codes of tests/fixtures/codes; the envelope (CRC-32C of RFC 3720 B.4, base64url of RFC 4648) and
CBOR (RFC 8949) are written here anew, so that what is broken behind a right check value is broken on purpose.

  make.py            writes malformed.json beside this file: [{why, fragment, says}]
  make.py --check    makes it again and compares

says: the path of the title the page has to show (assets/text/en.json), or "" where the page has to take no notice.
"""
import base64
import json
import os
import sys

HERE = os.path.dirname(os.path.abspath(__file__))
CODES = os.path.join(HERE, "../../fixtures/codes")
TORN, NEWER, OTHER, SEALED = "trouble/link", "trouble/link-newer", "trouble/link-other", "asked/sealed-link"
NOTHING = ""


def committed(letter):
    lines = [line.split("\t")[0] for name in ("version1.txt", "version2.txt") for line in open(os.path.join(CODES, name))]
    return [line for line in lines if line.startswith(letter)]


def crc32c(data):
    crc = 0xFFFFFFFF
    for byte in data:
        crc ^= byte
        for _ in range(8):
            crc = crc >> 1 ^ (0x82F63B78 if crc & 1 else 0)
    return crc ^ 0xFFFFFFFF


def code(head, payload):
    """head: letter and version, "R1"."""
    whole = payload + crc32c(head.encode() + payload).to_bytes(4, "big")
    return head + base64.urlsafe_b64encode(whole).decode().rstrip("=")


def payload_of(whole):
    return base64.urlsafe_b64decode(whole[2:] + "=" * (-len(whole[2:]) % 4))[:-4]


def again(whole, head):
    """The same content under another letter or version, with the check value that belongs to it."""
    return code(head, payload_of(whole))


CODE = {kind: committed(kind.upper())[0] for kind in "racs"}
# The maker's codec is ours only if it writes the committed codes.
for each in CODE.values():
    assert again(each, each[:2]) == each, each


def cut_off():
    for kind, whole in CODE.items():
        for letters in (0, 1, 2, 11, len(whole) // 2, len(whole) - 1) if kind == "r" else (0, len(whole) - 1):
            yield f"cut off after {letters} letters", f"#{kind}={whole[:letters]}", TORN


def one_bit():
    for kind, whole in CODE.items():
        data = base64.urlsafe_b64decode(whole[2:] + "=" * (-len(whole[2:]) % 4))
        for share in (0.3, 1) if kind in "ra" else (0.6,):
            at = int(share * (len(data) * 8 - 1))
            flipped = bytearray(data)
            flipped[at // 8] ^= 1 << at % 8
            letters = base64.urlsafe_b64encode(flipped).decode().rstrip("=")
            yield f"bit {at} flipped", f"#{kind}={whole[:2]}{letters}", TORN


def too_long():
    for kind, letters in (("r", 4097), ("a", 5000), ("c", 5001), ("s", 9000)):
        yield f"{letters} letters", f"#{kind}={CODE[kind][:2]}{'A' * (letters - 2)}", TORN


def other_letters():
    r = CODE["r"]
    for why, changed in (("a plus", r[:20] + "+" + r[21:]), ("padding", r + "=="),
                         ("a line break as mail programs send it", r[:60] + "%0D%0A" + r[60:]),
                         ("a full stop behind it", r + "."), ("brackets around it", f"<{r}>"), ("small letters only", r.lower())):
        yield why, f"#r={changed}", TORN


def odd_cbor():
    for n, (why, payload) in enumerate((
        ("5 lists in lists", b"\x81" * 5 + b"\x00"), ("1000 lists in lists", b"\x81" * 1000 + b"\x00"),
        ("maps in maps", b"\xa1\x00" * 300 + b"\x00"), ("tags on tags", b"\xc1" * 300 + b"\x00"),
        ("a list without an end", b"\x9f" * 40), ("a list of 2^64 - 1", b"\x9b" + b"\xff" * 8),
        ("nothing inside", b""), ("not a number", b"\xf9\x7e\x00"), ("a text that is no UTF-8", b"\x81\x62\xc3\x28"),
        ("3000 numbers", b"\x99\x0b\xb8" + b"\x00" * 2800), ("a list, and more behind it", b"\x80\x80"), ("undefined", b"\x8a" + b"\xf7" * 10),
    )):
        kind = "racs"[n % 4]
        yield why, f"#{kind}={code(kind.upper() + '1', payload)}", TORN


def versions():
    for kind, head, says in (("r", "R0", TORN), ("r", "Rx", TORN), ("r", "R3", NEWER), ("a", "A2", NEWER), ("s", "S2", NEWER), ("s", "S!", TORN)):
        yield f"version {head[1]}", f"#{kind}={again(CODE[kind], head)}", says


def mixed_up():
    for wanted, given in ("ra", "ar", "cs", "sc"):
        yield f"{given} where {wanted} is meant", f"#{wanted}={CODE[given]}", TORN
    yield "under another letter, with its check value", f"#a={again(CODE['r'], 'A1')}", TORN
    yield "a whole link in the link", f"#r=https://page.invalid/#r={CODE['r']}", TORN
    yield "two at once", f"#r={CODE['r']}&a={CODE['a']}", TORN
    yield "JSON", '#r={"kind":"rehale-run","events":[]}', TORN
    yield "of an inhaler that is not here", f"#r={CODE['r']}", OTHER
    yield "a practice for an inhaler that is not here", f"#a={CODE['a']}", "asked/other"
    yield "a sealed one, which only its owner can open", f"#s={CODE['s']}", SEALED


def percent_signs():
    r = CODE["r"]
    for why, fragment, says in (("a lone percent sign", "#r=%", TORN), ("no hexadecimal", "#c=%ZZ", TORN), ("a zero byte", f"#r={r}%00", TORN),
                                ("broken UTF-8", "#a=%E0%A4%A", TORN), ("doubly written", f"#r=%2552{r[1:]}", TORN),
                                ("the letter in percent signs", f"#%72={r}", NOTHING), ("the equals sign, too", f"#r%3D{r}", NOTHING),
                                ("nothing but", "#%", NOTHING), ("of a shared device", "#%6Biosk", NOTHING)):
        yield f"percent: {why}", fragment, says


def looks_alike():
    for name in ("__proto__", "constructor", "toString=1", "hasOwnProperty", "prototype[x]=1", "R=R1", "Desk", "KIOSK", "kiosk=1", "kiosk/",
                 "kiosk?", "kiosk&r=R1", "set=1", "settings=1 ground=dark", "desk#kiosk", "address=https://page.invalid", "build=0", "offline=yes",
                 "touched=1", "counted=1 20782 spray 99", "kiosk-settings=1 text=200", "problem", "stage", "mirror"):
        yield "looks like a name of ours", f"#{name}", NOTHING
    yield "looks like a code", "#r=__proto__", TORN
    yield "looks like a code", "#a=constructor", TORN


def scripts():
    for kind, text in (("r=", "<script>window.hit=1</script>"), ("c=", '"><img src=x onerror=window.hit=1>'), ("a=", "javascript:window.hit=1"),
                       ("s=", "{{7*7}}${window.hit=1}")):
        yield "script", f"#{kind}{text}", TORN
        yield "script", f"#{text}", NOTHING


def other_scripts():
    for why, text in (("full-width letters", "Ｒ１ａｂｃｄｅｆｇｈｉｊ"), ("from right to left", "\u202eR1abcdefghijk"), ("pictures", "R1\U0001f32c" * 9),
                      ("marks on marks", "R1a" + "\u0301" * 500), ("widths of nothing", "\u200bR1abc\ufeffdefghijk")):
        if text.startswith("R"):
            yield why, f"#r={text}", TORN
        yield why, f"#{text}", NOTHING


def empty():
    for fragment, says in (("#", NOTHING), ("##", NOTHING), ("#=", NOTHING), ("#r", NOTHING), ("#&r=", NOTHING), ("#r==", TORN), ("#a=%20", TORN), ("#c=&", TORN)):
        yield "next to nothing", fragment, says


def make():
    groups = (cut_off, one_bit, too_long, other_letters, odd_cbor, versions, mixed_up, percent_signs, looks_alike, scripts, other_scripts, empty)
    entries = [{"why": f"{group.__name__}: {why}", "fragment": fragment, "says": says} for group in groups for why, fragment, says in group()]
    return "[\n" + ",\n".join(json.dumps(entry) for entry in entries) + "\n]\n"


path = os.path.join(HERE, "malformed.json")
if sys.argv[1:] == ["--check"]:
    same = open(path).read() == make()
    print("as it should be" if same else "malformed.json is not what make.py makes")
    sys.exit(0 if same else 1)
with open(path, "w") as file:
    file.write(make())
