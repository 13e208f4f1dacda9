"""The costume file: one wearer, the garments with their choices, and the cloths they take.

Nothing is drafted here. Paths are relative to the costume file.
"""

from __future__ import annotations

import os
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from functools import partial
from pathlib import Path
from typing import TypeVar

from drafting.body import Body, read_body
from drafting.costume.asked import Garment, for_another
from drafting.costume.fittings import Fittings, fitted_body
from drafting.costume.workroom import Workroom, read_workroom
from drafting.fabric import Fabric, read_fabric
from drafting.ground.errors import Fault, InputError
from drafting.ground.frozen import freeze
from drafting.ground.names import clean_text, safe_name
from drafting.ground.nearest import meant
from drafting.ground.units import BadValue, ShownUnit, as_written, shown_unit
from drafting.layout.wishes import Wished, read_lays
from drafting.printing.paper import Paper
from drafting.printing.wishes import PrintWishes, read_print
from drafting.reading.cursor import TableReader, opened
from drafting.reading.fullness import read_fullness
from drafting.reading.given import Given
from drafting.reading.kinds import FileKind
from drafting.reading.pockets import read_pockets
from drafting.reading.style import read_style
from drafting.reading.trimming import read_appliques, read_trims

NAME = re.compile(r"[a-z][a-z0-9]*(-[a-z0-9]+)*")
LONGEST_NAME = 40
"""Letters of a garment's or a cloth's name (ours: file names are made of it)."""

MOST_CLOTHS, MOST_GARMENTS = 40, 20
"""Of one costume (ours: who wears more wears two costumes)."""

T = TypeVar("T")


@dataclass(frozen=True)
class CostumeFile:
    """A costume as its maker wrote it; `unit` is the file's unit of length, for the choices.

    `lays` holds what is asked of the lay of a cloth, by the role that the cloth plays; `prints`
    what is asked of the printed sheets; `workroom` what the maker has; `worn_on` the day the
    costume has to be ready for; `fittings` what was noted, those about the body in the wearer already.
    """

    title: str
    wearer: Body
    garments: tuple[Garment, ...]
    fabrics: Mapping[str, Fabric]
    path: str
    unit: str | None
    lays: Mapping[str, Wished] = field(default_factory=dict)
    prints: PrintWishes = field(default_factory=PrintWishes)
    workroom: Workroom = field(default_factory=Workroom)
    worn_on: date | None = None
    fittings: Fittings = field(default_factory=Fittings)

    def __post_init__(self) -> None:
        freeze(self, "fabrics", "lays")

    @property
    def told_in(self) -> ShownUnit:
        """The unit that its maker reads: the file's own, else her body file's."""
        return shown_unit(self.unit or self.wearer.unit)


def on_papers(costume: CostumeFile, papers: tuple[Paper, ...]) -> CostumeFile:
    """Return the costume printed on these papers; on those of its file where there are none."""
    return replace(costume, prints=replace(costume.prints, papers=papers)) if papers else costume


@dataclass(frozen=True)
class Reading:
    """What could be read of a costume, though `faults` may hold what is wrong with its files.

    `wearer` and the cloth of a role are None where their files are at fault; the other parts are
    those of a `CostumeFile`.
    """

    title: str
    wearer: Body | None
    garments: tuple[Garment, ...]
    fabrics: Mapping[str, Fabric | None]
    path: str
    unit: str | None
    lays: Mapping[str, Wished]
    prints: PrintWishes
    workroom: Workroom
    worn_on: date | None
    fittings: Fittings
    faults: tuple[Fault, ...]

    def __post_init__(self) -> None:
        freeze(self, "fabrics", "lays")

    def costume(self) -> CostumeFile:
        """Return the costume; raises `InputError` where anything is wrong."""
        if self.faults or self.wearer is None:
            raise InputError(self.faults)
        return self.on(self.wearer)

    def on(self, wearer: Body) -> CostumeFile:
        """Return as much of the costume as can be read, on a body."""
        cloths = {role: cloth for role, cloth in self.fabrics.items() if cloth is not None}
        return CostumeFile(
            title=self.title,
            wearer=wearer,
            garments=self.garments,
            fabrics=cloths,
            path=self.path,
            unit=self.unit,
            lays=self.lays,
            prints=self.prints,
            workroom=self.workroom,
            worn_on=self.worn_on,
            fittings=self.fittings,
        )


def read_costume(path: Path | str, wearer: Path | str | None = None) -> CostumeFile:
    """Return the costume in `path`, on the body file `wearer` if given instead of its own.

    Raises `InputError` with every fault of the costume, the body, the cloths and the workroom at
    once. It only names blocks, and never loads one.

    >>> from drafting.ground.shipped import demo_costume
    >>> [garment.block for garment in read_costume(demo_costume()).garments]
    ['tailcoat', 'shirt', 'breeches']
    """
    return what_is_read(path, wearer).costume()


def what_is_read(path: Path | str, wearer: Path | str | None = None, body: Body | None = None) -> Reading:
    """Return what can be read of a costume and its files, and all that is wrong; `body`: `wearer`, read already.

    Raises `InputError` only where the costume file is no TOML.
    """
    table = opened(Path(path), FileKind.COSTUME)
    title = clean_text(table.text("title") or Path(path).stem)
    table.given("wearer")
    own = body is None and wearer is None
    body = body or _wearer(table, wearer)
    cloths = table.table("fabrics")
    fabrics = {role: _cloth(cloths, role) for role in cloths.data} if cloths.at_most(MOST_CLOTHS, "cloths") else {}
    garments = _garments(table, tuple(fabrics))
    garments = garments if own else tuple(map(for_another, garments))
    lays = read_lays(table.table("lays"), tuple(fabrics))
    prints = read_print(table.table("print"), tuple(table.table("garments").data))
    room = _followed(table, "workroom", read_workroom) or Workroom()
    day = table.day("worn_on")
    body, fittings = fitted_body(table, body, [garment.name for garment in garments], other=wearer)
    table.close()
    return Reading(
        title=title,
        wearer=body,
        garments=garments,
        fabrics=fabrics,
        path=table.file.path,
        unit=table.unit,
        lays=lays,
        prints=prints,
        workroom=room,
        worn_on=day,
        fittings=fittings,
        faults=tuple(table.faults.found),
    )


def _wearer(table: TableReader, other: Path | str | None) -> Body | None:
    if other is not None:
        try:
            return read_body(other)
        except InputError as refused:
            table.faults.found.extend(refused.faults)
            return None
    if "wearer" not in table:
        table.add("is missing", 'name the body file: wearer = "../bodies/name.toml"', "wearer")
    return _followed(table, "wearer", read_body)


def _cloth(table: TableReader, role: str) -> Fabric | None:
    _check_name(table, role)
    return _followed(table, role, read_fabric)


def _garments(table: TableReader, roles: tuple[str, ...]) -> tuple[Garment, ...]:
    garments = table.table("garments")
    if not garments.data:
        right = 'write [garments.shirt] and block = "shirt"'
        table.add("has no garment", right, "garments")
    few = garments.at_most(MOST_GARMENTS, "garments")
    return tuple(_garment(garments, name, roles) for name in garments.data if few)


def _garment(garments: TableReader, name: str, roles: tuple[str, ...]) -> Garment:
    _check_name(garments, name)
    table = garments.table(name)
    right = 'name what it is drafted from, as in block = "shirt"; `drafting blocks` lists them all'
    block = table.needed("block", partial(_block, right), right) or ""
    role = _role(table, roles)
    style, wishes = read_style(table), read_fullness(table)
    trims, shapes = read_trims(table), read_appliques(table)
    pockets = read_pockets(table, roles)
    choices = dict(table.table("choices").every())
    table.close()
    block_line = table.spot("block").line
    return Garment(
        name=name,
        block=block,
        fabric=role,
        choices=choices,
        line=table.spot().line,
        fullness=wishes,
        trims=trims,
        appliques=shapes,
        style=style,
        pockets=pockets,
        block_line=block_line,
    )


def _block(right: str, value: object) -> str:
    if isinstance(value, str) and value.strip():
        return value.strip()
    raise BadValue(f"{as_written(value)} is no block", right)


def _role(table: TableReader, roles: tuple[str, ...]) -> str:
    """Return the role of the garment's cloth; the only one there is need not be named."""
    if "fabric" not in table:
        table.given("fabric")
        if len(roles) != 1:
            right = f"name one of the roles under [fabrics]: {meant('', roles) or 'none yet'}"
            table.add("is missing", right, "fabric")
        return roles[0] if len(roles) == 1 else ""

    def parse(value: object) -> str:
        if isinstance(value, str) and value in roles:
            return value
        right = meant(str(value)[:40], roles) if isinstance(value, str) else meant("", roles)
        raise BadValue(f"{as_written(value)} is no role under [fabrics]", right)

    return table.read("fabric", parse) or ""


def _check_name(table: TableReader, name: str) -> None:
    if not NAME.fullmatch(name) or len(name) > LONGEST_NAME or safe_name(name) != name:
        right = f"use lower-case words joined by -, at most {LONGEST_NAME} letters, as in riding-coat"
        table.add("is no name for files", right, name)


def _followed(table: TableReader, key: str, read: Callable[[Path], T]) -> T | None:
    """Return what `read` makes of the file that a key names.

    Its faults join ours; one that has no line in it (a lost file) stands at our line.
    """
    path = table.read(key, partial(_path, table.file.path))
    if path is None:
        return None
    try:
        return read(path)
    except InputError as refused:
        for fault in refused.faults:
            if fault.line is None:
                table.add(f"{clean_text(str(path))}: {fault.what}", fault.right, key)
            else:
                table.faults.found.append(fault)
        return None


def _path(costume: str, value: object) -> Path:
    """Return the path that a value names, from the costume's folder."""
    if not isinstance(value, str) or not value.strip():
        raise BadValue(f"{as_written(value)} names no file", 'as in "../bodies/name.toml"')
    path = Path(costume).parent / value
    if os.path.abspath(path) == os.path.abspath(costume):
        raise BadValue(f"{as_written(value)} is this costume itself", "name the file that is meant")
    return path


__all__ = ["CostumeFile", "Garment", "Given", "Reading", "read_costume", "what_is_read"]
