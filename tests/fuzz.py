"""The fuzzer: readers, numbers and files, broken anyhow; `python -m tests.fuzz 100000` runs it by hand.

Each input ends in a value or in a refusal in words within `LONGEST` seconds of CPU. Anything else is
a find, and is told with the seed that makes it again.
"""

from __future__ import annotations

import math
import random
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Callable
from pathlib import Path

from drafting.body import read_bodies
from drafting.costume.cast import read_cast
from drafting.costume.file import read_costume
from drafting.costume.whole import read_whole_costume
from drafting.costume.workroom import read_workroom
from drafting.fabric import read_fabric
from drafting.ground import units
from drafting.ground.errors import InputError
from drafting.ground.prices import parse_price
from drafting.ground.shipped import shipped
from drafting.ground.units import BadValue
from tests.hostile import costume_in

LONGEST = 5.0

MARKS = "0123456789.,'\"/½¾ -+eE%°cmkginlbftyd\t\n\x00\x1b\u202e\ufeffÅ∞=[]{}#_٣１"
"""What numbers, keys and tables are made of, and what has no place in them."""

WORDS = ("nan", "inf", "1e400", "0x" + "f" * 300, "true", "[]", "{}", '""', "1/0", "36 1/2 in", "92,5", "5' 3\"")

NUMBERS: tuple[Callable[[object], object], ...] = (
    lambda value: units.parse_length(value, "cm"),
    lambda value: units.parse_length(value, None),
    units.parse_weight,
    units.parse_angle,
    units.parse_percent,
    units.parse_number,
    units.parse_ratio,
    parse_price,
)

READERS: dict[str, Callable[[Path], object]] = {
    "costume": read_costume,
    "wearer": read_bodies,
    "cloth": read_fabric,
    "workroom": read_workroom,
    "table": read_bodies,
    "styled": read_whole_costume,
    "cast": read_cast,
    "heads": read_bodies,
}

TABLE = 'wearer,unit,height,bust_girth,waist_girth,hip_girth\nAnna,cm,168,92,74,98\nBo,in,"68 1/2",40,34,41\n'

STYLED = """title = "A yoked top, invented"
wearer = "../bodies/kite.toml"

[fabrics]
shell = "../fabrics/striped-shirting.toml"

[garments.top]
block = "fitted-top"
fabric = "shell"

[garments.top.choices]
bust_ease = {share = 0.09, of = "bust_girth"}

[[garments.top.style]]
do = "cut"
piece = "front"
from = {edge = "armhole", share = 0.5}
to = {edge = "centre", distance = "11 cm", beside = "neck"}
name = "front-yoke"
holds = "neck"
bow = "-4 mm"

[[garments.top.style]]
do = "pleat"
piece = "front"
kind = "box"
from = {edge = "style_line", distance = "4.5 cm", beside = "centre"}
to = {edge = "hem", distance = "4.5 cm", beside = "centre"}
depth = "15 mm"

[[garments.top.pockets]]
piece = "back"
kind = "patch"
edge = "shoulder"
along = 0.5
inside = "18 cm"
width = "11 cm"
height = "13 cm"
"""


def text_of(luck: random.Random) -> str:
    """Return a text that may be a number."""
    if luck.random() < 0.2:
        return luck.choice(WORDS)
    return "".join(luck.choice(MARKS) for _ in range(luck.randrange(12)))


def broken(text: str, luck: random.Random) -> str:
    """Return a text with a few places cut, doubled, moved, or written over."""
    for _ in range(luck.randrange(1, 6)):
        at, to = sorted(luck.randrange(len(text) + 1) for _ in range(2))
        short = text[at : min(to, at + 60)]
        text = luck.choice(
            (
                text[:at] + text[at + len(short) :],
                text[:at] + text_of(luck) + text[at:],
                text[:at] + short * luck.choice((2, 2, 40)) + text[at:],
                text[:at] + text_of(luck) + text[at + len(short) :],
            )
        )
    return text


def raw_of(text: str, luck: random.Random) -> bytes:
    """Return a text as some editor writes it, or a byte of it spoilt."""
    raw = text.encode("utf-8", "replace")
    how = luck.random()
    if how < 0.05:
        return text.encode("utf-16", "replace")
    if how < 0.1 and raw:
        at = luck.randrange(len(raw))
        return raw[:at] + bytes([luck.randrange(256)]) + raw[at + 1 :]
    return raw.replace(b"\n", b"\r\n") if how < 0.15 else raw


def said_well(sentences: list[str]) -> None:
    """Hold that something is said, and that a terminal can show it."""
    assert sentences
    assert all(sentence.isprintable() for sentence in sentences), ascii(sentences)


def one_number(luck: random.Random) -> str:
    """Try one number; return how it ended."""
    text = text_of(luck)
    value: object = luck.choice((text, luck.uniform(-1e9, 1e9), luck.getrandbits(luck.choice((8, 70, 9000)))))
    try:
        found = luck.choice(NUMBERS)(value)
    except BadValue as bad:
        said_well([bad.what])
        return "number refused"
    assert isinstance(found, float)
    assert math.isfinite(found), f"{found} out of {value!r}"
    return "number read"


def one_file(luck: random.Random, files: dict[str, Path], sound: dict[str, str]) -> str:
    """Break one file, read it, and put it back; return how it ended."""
    kind = luck.choice(tuple(READERS))
    path = files[kind]
    before = sorted(path.parent.iterdir())
    path.write_bytes(raw_of(broken(sound[kind], luck), luck))
    try:
        READERS[kind](path)
    except InputError as refused:
        said_well([str(fault) for fault in refused.faults if Path(fault.file).is_absolute()])
        return f"{kind} refused"
    finally:
        assert sorted(path.parent.iterdir()) == before, "a file that nobody asked for"
        path.write_text(sound[kind], "utf-8")
    return f"{kind} read"


def run(count: int, first: int = 0) -> tuple[Counter[str], list[str]]:
    """Return how `count` inputs from a seed on ended, and what was found."""
    ended: Counter[str] = Counter()
    found: list[str] = []
    with tempfile.TemporaryDirectory() as folder:
        files = costume_in(Path(folder))
        files["table"] = Path(folder) / "bodies" / "cast.csv"
        files["table"].write_text(TABLE, "utf-8")
        files["styled"] = Path(folder) / "costumes" / "styled.toml"
        files["styled"].write_text(STYLED, "utf-8")
        files["heads"] = Path(folder) / "casts" / "lanterns.csv"
        files["heads"].write_bytes(shipped("measurements").joinpath("casts", "lanterns.csv").read_bytes())
        files["cast"] = Path(folder) / "casts" / "lanterns.toml"
        sound = {kind: path.read_text("utf-8") for kind, path in files.items()}
        for seed in range(first, first + count):
            luck = random.Random(seed)
            began = time.process_time()
            try:
                ended[one_number(luck) if luck.random() < 0.5 else one_file(luck, files, sound)] += 1
            except Exception as trouble:  # whatever else comes out is a find
                found.append(f"seed {seed}: {type(trouble).__name__}: {ascii(str(trouble))[:300]}")
            if time.process_time() - began > LONGEST:
                found.append(f"seed {seed}: took {time.process_time() - began:.1f} s")
    return ended, found


if __name__ == "__main__":
    began = time.process_time()
    ended, found = run(int(sys.argv[1]), int(sys.argv[2]) if len(sys.argv) > 2 else 0)
    print(*found, f"{len(found)} finds, {time.process_time() - began:.0f} s", *sorted(ended.items()), sep="\n")
    sys.exit(bool(found))
