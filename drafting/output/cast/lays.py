"""Lays over all wearers: one marker a cloth where the cast file asks for it, in groups that a table takes."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from drafting.costume.cast import Cast, CastWearer, costume_for
from drafting.costume.lays import materials
from drafting.costume.make import finished
from drafting.costume.telling import Tell
from drafting.export.figure import overview_png
from drafting.export.svg import svg_text
from drafting.layout import Cloth, Part, lay_out
from drafting.layout.cloth import LayName
from drafting.layout.lay import Lay, lay_row
from drafting.output.cast.over_all import Records
from drafting.output.cast.place import LAYOUT, RECORDS, as_json, put_file, read_record
from drafting.output.cast.told import MADE
from drafting.sheet.lay import layout_sheet

MOST_TOGETHER = 8
"""Wearers in one lay (ours: the search grows with the square of the pieces, and a cutting table ends)."""


@dataclass(frozen=True)
class LayGroup:
    """The wearers whose pieces of one cloth are laid together, and the name of their lay's files."""

    role: str
    name: str
    wearers: tuple[CastWearer, ...]


def groups(cast: Cast, records: Records) -> tuple[LayGroup, ...]:
    """Return the lays that are asked for: as few groups as may be, as even as may be, in the cast's order."""
    made = [one for one in cast.wearers if records[one.folder]["status"] == MADE]
    found = []
    for role in cast.together:
        hers = [one for one in made if role in records[one.folder]["lays"]]
        count = -(-len(hers) // MOST_TOGETHER)
        for n in range(count):
            own = tuple(hers[n * len(hers) // count : (n + 1) * len(hers) // count])
            found.append(LayGroup(role, role if count == 1 else f"{role}-{n + 1}", own))
    return tuple(found)


def lays_together(cast: Cast, records: Records, place: Path, tell: Tell) -> tuple[dict[str, Any], ...]:
    """Write the lay of each group, and return their rows; one that stands and is unchanged is left alone."""
    rows = []
    wanted = groups(cast, records)
    for n, group in enumerate(wanted):
        tell(f"Laying out {group.name} for all", n / len(wanted))
        key = _key(group, records)
        held = read_record(place, f"lay {group.name}")
        if held is None or held.get("key") != key or not all((place / file).is_file() for file in files_of(group)):
            held = _laid(cast, group, records, place) | {"key": key}
            put_file(place / RECORDS / f"lay {group.name}.json", as_json(held))
        rows.append(held)
    return tuple(rows)


def files_of(group: LayGroup) -> tuple[str, str]:
    """Return the files of a group's lay, as they stand in the folder of the cast."""
    return f"{LAYOUT}/{group.name}.svg", f"{LAYOUT}/{group.name}.png"


def _key(group: LayGroup, records: Records) -> str:
    parts = [group.role, *(f"{one.name} {records[one.folder]['key']}" for one in group.wearers)]
    return hashlib.sha256("\n".join(parts).encode()).hexdigest()


def _laid(cast: Cast, group: LayGroup, records: Records, place: Path) -> dict[str, Any]:
    """Work out a group's lay, write its drawing and its picture, and return its row."""
    found = [each for wearer in group.wearers for each in _pieces(cast, wearer, group.role)]
    ways = sorted({records[one.folder]["lays"][group.role]["lay"] for one in group.wearers})
    lay = _shortest(tuple(part for _, part in found), found[0][0], ways)
    sheet = layout_sheet(lay, cast.title, [part.garment for _, part in found], cast.told_in)
    svg, png = (place / file for file in files_of(group))
    put_file(svg, svg_text(sheet))
    beside = png.with_name(f".{png.name}.new")
    overview_png(sheet, beside)
    put_file(png, beside.read_bytes())
    beside.unlink()
    alone = sum(records[one.folder]["lays"][group.role]["length"] for one in group.wearers)
    return _row(lay, group, alone)


def _shortest(parts: tuple[Part, ...], cloth: Cloth, ways: Sequence[LayName]) -> Lay:
    """Return the lay on cloth spread as it comes, or as for one of the wearers alone where that takes less."""
    lay = lay_out(parts, cloth, table=False)
    for way in ways:
        if way != lay.lay and cloth.wishes.lay == "auto":
            other = lay_out(parts, replace(cloth, wishes=replace(cloth.wishes, lay=way)), table=False)
            if (len(other.left_out), other.cloth_length) < (len(lay.left_out), lay.cloth_length):
                lay = other
    return lay


def _row(lay: Lay, group: LayGroup, alone: float) -> dict[str, Any]:
    whole = lay_row(lay)
    whole.pop("others")
    about = {"name": group.name, "file": files_of(group)[0], "cloth": lay.cloth.title, "one_by_one": alone}
    return about | {"wearers": [one.folder for one in group.wearers]} | whole


def _pieces(cast: Cast, wearer: CastWearer, role: str) -> Iterator[tuple[Cloth, Part]]:
    """Yield a wearer's pieces of one cloth, each with her name on it, and the cloth."""
    for cloth, parts in materials(finished(costume_for(cast, wearer))):
        if cloth.role == role:
            yield from ((cloth, Part(f"{wearer.folder}-{part.garment}", part.cut, wearer.name)) for part in parts)


def bought_together(rows: Sequence[Mapping[str, Any]]) -> dict[str, float]:
    """Return the length to buy (mm) of each cloth that is laid for all at once."""
    found: dict[str, float] = {}
    for row in rows:
        found[row["fabric"]] = found.get(row["fabric"], 0.0) + row["buy_length"]
    return found
