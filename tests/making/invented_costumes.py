"""Costumes that nobody shipped: invented cloths and garments, as a maker writes them, made with their lays."""

from __future__ import annotations

import tempfile
from functools import cache
from pathlib import Path

from drafting.costume.file import read_costume
from drafting.costume.lays import laid_out
from drafting.costume.make import Made, make
from tests.making.figures import ROOT

OWN = ROOT / "measurements"

CLOTHS = {
    "velvet": 'width = 138\nselvedge = 1\nfibre = "cotton"\nsort = "pile"\nmass = 340\nthickness = "1.3 mm"\n'
    'stretch_across = "2 %"\none_way = true\niron_dots = 2\ncare = "dry clean"',
    "felt": 'width = 150\nselvedge = 0\nfibre = "wool"\nsort = "felted"\nmass = 450\nthickness = "2.5 mm"\n'
    'stretch_across = "3 %"\niron_dots = 2\ncare = "dry clean"',
    "oilskin": 'width = 142\nselvedge = 1\nfibre = "cotton, coated"\nsort = "coated"\nmass = 310\n'
    'thickness = "0.5 mm"\nstretch_across = "1 %"\ntakes_fusible = false\ncare = "wipe clean, do not iron"',
    "sequins": 'width = 130\nselvedge = 2\nfibre = "polyester"\nsort = "sequinned"\nmass = 420\n'
    'thickness = "1.4 mm"\nstretch_across = "4 %"\none_way = true\ntakes_fusible = false\n'
    'care = "dry clean, do not iron"',
    "chiffon": 'width = 138\nselvedge = 1\nfibre = "silk"\nsort = "sheer"\nmass = 40\nthickness = "0.15 mm"\n'
    'stretch_across = "3 %"\niron_dots = 1\ntakes_fusible = false\ncare = "hand wash"',
}

COSTUMES = {
    "impresario": """
wearer = "{own}/bodies/lamplighter.toml"
[garments.coat]
block = "coat"
fabric = "velvet"
[garments.coat.choices]
breasted = "double"
lapel_style = "shawl"
vent = "centre"
[[garments.coat.trims]]
kind = "braid"
edge = "front.lapel"
width = "1 cm"
""",
    "toymaker": """
wearer = "{own}/bodies/toll-keeper.toml"
workroom = "{own}/workrooms/theatre-store.toml"
[garments.spats]
block = "spats"
fabric = "felt"
[garments.breeches]
block = "knee-breeches"
fabric = "sailcloth"
[garments.breeches.choices]
fall_front = true
""",
    "mirror dancer": """
wearer = "{own}/bodies/ferrywoman.toml"
[garments.skirt]
block = "skirt"
fabric = "sequins"
[garments.skirt.choices]
skirt_cut = "gored"
lining = "whole"
""",
    "river mist": """
wearer = "{own}/bodies/bell-ringer.toml"
[garments.over]
block = "overskirt"
fabric = "chiffon"
[garments.over.choices]
lining = "whole"
""",
    "ferry pilot": """
wearer = "{own}/bodies/bell-ringer.toml"
workroom = "{own}/workrooms/attic-room.toml"
[garments.cape]
block = "cape"
fabric = "oilskin"
[garments.cape.choices]
cape_neck = "hood"
[garments.trousers]
block = "trousers"
fabric = "sailcloth"
[[garments.trousers.pockets]]
piece = "front"
kind = "slant"
edge = "side"
width = 4.5
height = 16
""",
}


@cache
def invented(name: str) -> Made:
    """Return one of the costumes above, drafted, checked and laid."""
    shipped = {role: OWN / "fabrics" / f"{role}.toml" for role in ("lining", "sailcloth")}
    shipped["interfacing"] = OWN / "fabrics" / "fusible-interfacing.toml"
    with tempfile.TemporaryDirectory() as folder:
        for role, facts in CLOTHS.items():
            head = f'title = "{role.title()}, invented"\nunit = "cm"\nweave = "woven"\nstretch_along = "1 %"\n'
            Path(folder, f"{role}.toml").write_text(head + facts, "utf-8")
        own = {role: Path(folder, f"{role}.toml") for role in CLOTHS if f'"{role}"' in COSTUMES[name]}
        used = {role: path for role, path in shipped.items() if role != "sailcloth" or role in COSTUMES[name]}
        fabrics = "\n".join(f'{role} = "{path.as_posix()}"' for role, path in {**used, **own}.items())
        text = COSTUMES[name].format(own=OWN.as_posix()).split("[garments", 1)
        head = f'title = "The {name}, invented"\nunit = "cm"\n{text[0]}\n[fabrics]\n{fabrics}\n\n[garments'
        file = Path(folder, "costume.toml")
        file.write_text(head + text[1], "utf-8")
        return laid_out(make(read_costume(file)), count=20, table=False)
