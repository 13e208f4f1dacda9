"""Files that nobody means to write, for the readers: each kind of file may be any of these."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from drafting.ground.shipped import shipped

FILES = {
    "costume": "costumes/kite.toml",
    "wearer": "bodies/kite.toml",
    "cloth": "fabrics/stretch-jersey.toml",
    "workroom": "workrooms/theatre-store.toml",
    "fitting": "fittings/kite-first.toml",
}
"""The shipped files that the kite's costume stands on."""


def costume_in(folder: Path) -> dict[str, Path]:
    """Copy the kite and her files into `folder`; return the path of each kind."""
    home = shipped("measurements")
    for path in home.glob("*/*.toml"):
        copy = folder / path.relative_to(home)
        copy.parent.mkdir(parents=True, exist_ok=True)
        copy.write_bytes(path.read_bytes())
    return {kind: folder / name for kind, name in FILES.items()}


def instead(raw: bytes) -> Callable[[bytes], bytes]:
    """Return what puts these bytes in place of the file's own."""
    return lambda _: raw


def after(text: str) -> Callable[[bytes], bytes]:
    """Return what writes a text below the file's own."""
    return lambda own: own + text.encode("utf-8", "surrogatepass")


def above(text: str) -> Callable[[bytes], bytes]:
    """Return what writes a text above the file's own."""
    return lambda own: text.encode("utf-8", "surrogatepass") + own


HOSTILE: dict[str, Callable[[bytes], bytes]] = {
    "empty": instead(b""),
    "blanks before a quote": above("title = x" + " " * 60_000 + '"y\n'),
    "blanks before quotes": above(("strange = x" + " " * 4_900 + '"y\n') * 30),
    "blanks within keys": above(("a" + " " * 2_400 + "." + " " * 2_400 + "b\n") * 30),
    "60,000 keys": above("".join(f"key_{n} = {n}\n" for n in range(60_000))),
    "20,000 deep keys": above(".".join("a" * 20_000) + " = 1\n"),
    "blank": instead(b"\n \n\t\n"),
    "latin": lambda own: own + "# Å\n".encode("latin-1") + b'more = "\xe9"\n',
    "zeros": lambda own: own + b"\x00" * 40,
    "picture": instead(b"\x89PNG\r\n\x1a\n\x00\x00\xff\xfe"),
    "half a mark": instead(b"\xff\xfea"),
    "five megabytes": lambda own: own + b"# \n" * 1_700_000,
    "long row": above("x" * 150_000 + "\n"),
    "long spaces": above("title = x" + " " * 150_000 + "y\n"),
    "long key": above("x" * 5000 + " = 1\n"),
    "many keys": above("".join(f"key_{n} = {n}\n" for n in range(9000))),
    "the same key often": above("strange = 1\n" * 9000),
    "deep list": above("strange = " + "[" * 60_000 + "]" * 60_000 + "\n"),
    "deep list on many lines": above("strange = " + "[\n" * 30_000 + "]\n" * 30_000),
    "deep list that is read": above("strange = " + "[" * 90 + "]" * 90 + "\n"),
    "deep keys": above(".".join("a" * 70_000) + " = 1\n"),
    "deep keys on many lines": above((".".join("a" * 2_000) + " = 1\n") * 40),
    "deep keys within": above("strange = {" + ".".join("a" * 70_000) + " = 1}\n"),
    "deep keys within on many lines": above(
        "".join(f"s{n} = {{{'.'.join('a' * 2_000)} = 1}}\n" for n in range(40))
    ),
    "deep table": after("\n[" + ".".join("a" * 70_000) + "]\n"),
    "huge number": above("strange = 1e400\n"),
    "endless number": above("strange = 1" + "0" * 10_000 + "\n"),
    "long number": above("strange = 1" + "0" * 4_000 + "\n"),
    "hexadecimal": above("strange = 0x1" + "0" * 10_000 + "\n"),
    "open text": after('\nstrange = "\n'),
    "open long text": after('\nstrange = """\nmore\n'),
    "open list": after("\nstrange = [\n1,\n"),
    "wrong date": above("strange = 2026-13-45\n"),
    "control characters": above('"\\u001b[31mred\\u0007" = 1\n'),
    "control characters without quotes": above("strange = a\u001b\u0007b\n"),
    "markup": above('"<script>alert(1)</script>" = "</td>"\n'),
    "right to left": above('"\\u202e\\u2066abc" = 1\n'),
    "no value": above("strange =\n"),
    "no key": above("= 3\n"),
    "only a word": above("strange\n"),
    "table and value": after("\n[strange]\na = 1\n[strange.a]\nb = 1\n"),
    "table for a list": after("\n[[strange]]\na = 1\n[strange]\nb = 2\n"),
    "a key named twice": lambda own: own + own.split(b"\n")[2] + b"\n",
    "title is a table": above("title = {a = 1}\n"),
    "unit is a list": above('unit = ["cm"]\n'),
    "prose": instead(b"Dear kit,\nplease draft me a coat.\n"),
    "another format": instead(b'{"height": 168, "bust": [92]}\n'),
}
"""A name, and what is made of a sound file; every one of them has to be refused."""

HOSTILE_TABLES: dict[str, bytes] = {
    "empty": b"",
    "20,000 unknown rows": b"height,168,cm\n" + b"".join(b"strange%d,1,cm\n" % n for n in range(20_000)),
    "100,000 columns": b"wearer," + b",".join(b"c%d" % n for n in range(100_000)) + b"\nAnna" + b",1" * 100_000,
    "a town of wearers": b"wearer,unit,height,bust_girth,waist_girth,hip_girth\n"
    + b"Anna,cm,168,92,74,98\n" * 60_000,
    "commas": b"," * 1_000_000,
    "the same column often": b"wearer," + b"a," * 200_000 + b"\nx," + b"1," * 200_000,
    "many columns": b"wearer," + b",".join(b"c%d" % n for n in range(20_000)) + b"\nx" + b",1" * 20_000,
    "many wearers": b"wearer,unit,hite\n" + b"x,cm,1\n" * 100_000,
    "many measures": b"".join(b"c%d,1,cm\n" % n for n in range(50_000)),
    "a long cell": b"height," + b"9" * 200_000,
    "open quotes": b'height,"168\nbust,92\n' + b"x,1\n" * 9000,
    "zeros": b"height,168\x00,cm\n",
    "five megabytes": b"height,168,cm\n" * 400_000,
    "control characters": b"\x1b[31mred,168,cm\nheight,\x07,cm\n",
    "markup": b"<b>height</b>,<script>,cm\n",
    "huge numbers": b"height,1e400,cm\nbust,nan,cm\nwaist,-inf,cm\nhip," + b"9" * 50 + b",cm\n",
    "wrong hands": b"shoulder_length.left,1\nshoulder_length.left,2\nheight.right,1\n",
}
"""Tables of measures that have to be refused."""
