"""A cast of one quick garment, in a folder of its own, and how two output folders are compared."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

from drafting.ground.shipped import shipped

COSTUME = """
title = "A close top"
wearer = "lamplighter.toml"
[fabrics]
jersey = "stretch-jersey.toml"
[garments.top]
block = "close-top"
fabric = "jersey"
[print]
papers = ["a4"]
pieces = ["top.sleeve"]
"""

TABLE = """Name;Role;Height (cm);Bust;Waist (in);Hips;Weight (kg)
;;;cm;;cm;
Ada;First;168;93,5;30;99;64
Bo;Second;181;102;34;103,5;
Ida;;170;96;30 1/2;100,5;
"""

HOPELESS = """
unit = "cm"
[measures]
height = 170
bust_girth = 92
hip_girth = 98
"""
"""No waist: nothing can be drafted."""

CAST = """
title = "The close tops"
costume = "top.toml"
wearers = ["table.csv", "cy.toml"]
unit = "cm"
lay_together = ["jersey"]

[wearer.Ida]
understudies = "Ada"
[wearer.Ida.measures]
hip_girth = 101.5
[wearer.Bo]
let_out = "2 cm"
"""


def troupe_in(folder: Path, *, hopeless: bool = True) -> Path:
    """Write a cast file and all it names; return its path."""
    for name in ("bodies/lamplighter.toml", "fabrics/stretch-jersey.toml"):
        shutil.copy(shipped("measurements") / name, folder)
    (folder / "top.toml").write_text(COSTUME, "utf-8")
    (folder / "table.csv").write_text(TABLE, "utf-8")
    (folder / "cy.toml").write_text(HOPELESS, "utf-8")
    cast = folder / "cast.toml"
    cast.write_text(CAST if hopeless else CAST.replace('["table.csv", "cy.toml"]', '"table.csv"'), "utf-8")
    return cast


def contents(folder: Path) -> dict[str, bytes]:
    """Return every file of a folder by its path, without the seconds that the work took."""
    found = {}
    for path in sorted(one for one in folder.rglob("*") if one.is_file()):
        raw = path.read_bytes()
        if path.name == "report.json":
            raw = json.dumps({k: v for k, v in json.loads(raw).items() if k != "timings"}).encode()
        found[path.relative_to(folder).as_posix()] = raw
    return found


def is_whole(folder: Path) -> bool:
    """Return whether a wearer's folder holds just what its record lists."""
    listed = json.loads((folder / "report.json").read_bytes())["files"]
    return sorted(listed) == sorted(contents(folder))
