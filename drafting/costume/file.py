"""The costume file: one wearer, the garments with their choices, and the cloths they take.

Nothing is drafted here. Paths are relative to the costume file.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import date, datetime
from pathlib import Path
from typing import Any, TypeVar

from drafting.body import Body, read_body
from drafting.costume.workroom import Workroom, read_workroom
from drafting.fabric import Fabric, read_fabric
from drafting.ground.errors import InputError
from drafting.ground.frozen import freeze
from drafting.layout.wishes import Wished, read_lays
from drafting.printing.wishes import PrintWishes, read_print
from drafting.reading.fullness import FullnessWish, read_fullness
from drafting.reading.given import Faults, Given, plain_text
from drafting.reading.toml import TomlFile, read_toml
from drafting.reading.trimming import AppliqueWish, TrimWish, read_appliques, read_trims

KEYS = ("title", "wearer", "unit", "fabrics", "garments", "lays", "print", "workroom", "worn_on")
GARMENT_KEYS = ("block", "fabric", "choices", "fullness", "trims", "appliques")
NAME = re.compile(r"[a-z][a-z0-9]*(-[a-z0-9]+)*")

_T = TypeVar("_T")


@dataclass(frozen=True)
class Garment:
    """One garment: the block it is drafted from, the role of its cloth, raw choices, its line, the
    fullness asked of its edges, the trims along them, the shapes sewn on."""

    name: str
    block: str
    fabric: str
    choices: Mapping[str, Given]
    line: int | None = None
    fullness: tuple[FullnessWish, ...] = ()
    trims: tuple[TrimWish, ...] = ()
    appliques: tuple[AppliqueWish, ...] = ()

    def __post_init__(self) -> None:
        freeze(self, "choices")


@dataclass(frozen=True)
class CostumeFile:
    """A costume as its maker wrote it; `unit` is the file's unit of length, for the choices.

    `lays` holds what is asked of the lay of a cloth, by the role that the cloth plays; `prints`
    what is asked of the printed sheets; `workroom` what the maker has; `worn_on` the day the
    costume has to be ready for.
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

    def __post_init__(self) -> None:
        freeze(self, "fabrics", "lays")


def read_costume(path: Path | str, wearer: Path | str | None = None) -> CostumeFile:
    """Return the costume in `path`, on the body file `wearer` if given instead of its own.

    Raises `InputError` with every fault of the costume, the body and the cloths at once. It only
    names blocks, and never loads one.

    >>> from drafting.ground.shipped import demo_costume
    >>> [garment.block for garment in read_costume(demo_costume()).garments]
    ['tailcoat', 'shirt', 'breeches']
    """
    file = read_toml(Path(path))
    faults = Faults(file.path, list(file.faults))
    for key in file.data:
        if key not in KEYS:
            faults.unknown(key, KEYS, key, file.line(key))
    unit = faults.unit(Given(file.data["unit"], file.line("unit")) if "unit" in file.data else None)
    body = _wearer(file, faults, wearer)
    fabrics = _fabrics(file, faults)
    garments = _garments(file, faults)
    lays = read_lays(_table(file, faults, "lays"), file.line, tuple(fabrics), unit, faults)
    names = tuple(garment.name for garment in garments)
    prints = read_print(_table(file, faults, "print"), file.line, names, faults)
    room, day = _workroom(file, faults), _worn_on(file, faults)
    title = Given(file.data.get("title", Path(path).stem), file.line("title"))
    text = faults.value(plain_text, title, "title")
    if faults.found or body is None:
        raise InputError(faults.found)
    cloths = {role: fabric for role, fabric in fabrics.items() if fabric is not None}
    name = text or Path(path).stem
    return CostumeFile(
        title=name,
        wearer=body,
        garments=garments,
        fabrics=cloths,
        path=file.path,
        unit=unit,
        lays=lays,
        prints=prints,
        workroom=room,
        worn_on=day,
    )


def _workroom(file: TomlFile, faults: Faults) -> Workroom:
    """Return the workroom that the file names; without one, a sewing machine and an iron."""
    if "workroom" not in file.data:
        return Workroom()
    line = file.line("workroom")
    path = _path(file, faults, file.data["workroom"], "workroom", line)
    found = _followed(faults, read_workroom, path, "workroom", line) if path else None
    return found or Workroom()


def _worn_on(file: TomlFile, faults: Faults) -> date | None:
    day = file.data.get("worn_on")
    if day is None or (isinstance(day, date) and not isinstance(day, datetime)):
        return day
    faults.add("is no day", "write it like worn_on = 2027-01-05", "worn_on", file.line("worn_on"))
    return None


def _wearer(file: TomlFile, faults: Faults, other: Path | str | None) -> Body | None:
    if other is not None:
        return _followed(faults, read_body, Path(other), "wearer", None)
    if "wearer" not in file.data:
        faults.add("is missing", 'name the body file: wearer = "../bodies/name.toml"', "wearer")
        return None
    line = file.line("wearer")
    path = _path(file, faults, file.data["wearer"], "wearer", line)
    return _followed(faults, read_body, path, "wearer", line) if path else None


def _fabrics(file: TomlFile, faults: Faults) -> dict[str, Fabric | None]:
    """Return the cloth of each role (None where its file is at fault)."""
    found: dict[str, Fabric | None] = {}
    for role, value in _table(file, faults, "fabrics").items():
        field, line = f"fabrics.{role}", file.line("fabrics", role)
        _name(faults, role, field, line)
        path = _path(file, faults, value, field, line)
        found[role] = _followed(faults, read_fabric, path, field, line) if path else None
    return found


def _garments(file: TomlFile, faults: Faults) -> tuple[Garment, ...]:
    table = _table(file, faults, "garments")
    if not table:
        faults.add("has no garment", 'write [garments.shirt] and block = "shirt"', "garments")
    roles = tuple(_table(file, faults, "fabrics", quiet=True))
    read = (_garment(file, faults, name, value, roles) for name, value in table.items())
    return tuple(garment for garment in read if garment is not None)


def _garment(file: TomlFile, faults: Faults, name: str, value: Any, roles: tuple[str, ...]) -> Garment | None:
    field, line = f"garments.{name}", file.line("garments", name)
    _name(faults, name, field, line)
    if not isinstance(value, dict):
        faults.add("must be a table", f"begin it with a line [{field}]", field, line)
        return None
    for key in value:
        if key not in GARMENT_KEYS:
            where = file.line("garments", name, key)
            faults.unknown(key, GARMENT_KEYS, f"{field}.{key}", where)
    block = value.get("block")
    if not isinstance(block, str) or not block.strip():
        right = 'name what it is drafted from, as in block = "shirt"'
        faults.add("needs a block", right, field, file.line("garments", name, "block"))
        block = ""
    role = _role(file, faults, name, value, roles)
    unit = file.data.get("unit")
    wishes = read_fullness(value.get("fullness", []), f"{field}.fullness", line, unit, faults)
    trims = read_trims(value.get("trims", []), f"{field}.trims", line, unit, faults)
    shapes = read_appliques(value.get("appliques", []), f"{field}.appliques", line, unit, faults)
    choices = _choices(file, faults, name, value)
    return Garment(
        name=name,
        block=block.strip(),
        fabric=role,
        choices=choices,
        line=line,
        fullness=wishes,
        trims=trims,
        appliques=shapes,
    )


def _role(file: TomlFile, faults: Faults, name: str, value: Mapping[str, Any], roles: tuple[str, ...]) -> str:
    """Return the role of the garment's cloth; the only one there is need not be named."""
    field, line = f"garments.{name}.fabric", file.line("garments", name, "fabric")
    if "fabric" not in value and len(roles) == 1:
        return roles[0]
    if "fabric" not in value:
        faults.add("is missing", f"name one of the roles under [fabrics]: {_list(roles)}", field, line)
        return ""
    if value["fabric"] not in roles:
        what = f"'{str(value['fabric'])[:40]}' is no role under [fabrics]"
        faults.add(what, f"roles are {_list(roles)}", field, line)
    return str(value["fabric"])


def _choices(file: TomlFile, faults: Faults, name: str, value: Mapping[str, Any]) -> dict[str, Given]:
    table = value.get("choices", {})
    if isinstance(table, dict):
        return {k: Given(v, file.line("garments", name, "choices", k)) for k, v in table.items()}
    field, line = f"garments.{name}.choices", file.line("garments", name, "choices")
    faults.add("must be a table", f"begin it with a line [{field}]", field, line)
    return {}


def _table(file: TomlFile, faults: Faults, key: str, quiet: bool = False) -> dict[str, Any]:
    table = file.data.get(key, {})
    if isinstance(table, dict):
        return table
    if not quiet:
        faults.add("must be a table", f"begin it with a line [{key}]", key, file.line(key))
    return {}


def _name(faults: Faults, name: str, field: str, line: int | None) -> None:
    if not NAME.fullmatch(name):
        right = "use lower-case words joined by -, as in riding-coat"
        faults.add("is no name for files", right, field, line)


def _path(file: TomlFile, faults: Faults, value: object, field: str, line: int | None) -> Path | None:
    if isinstance(value, str) and value.strip():
        return Path(file.path).parent / value
    faults.add("must name a file", 'as in "../bodies/name.toml"', field, line)
    return None


def _followed(faults: Faults, read: Callable[[Path], _T], path: Path, field: str, line: int | None) -> _T | None:
    """Return what `read` makes of `path`; its faults join ours, one of a lost file at our line."""
    try:
        return read(path)
    except InputError as refused:
        if line is not None and not _is_file(path):
            what = f"{path}: {refused.faults[0].what}"
            faults.add(what, refused.faults[0].right, field, line)
        else:
            faults.found.extend(refused.faults)
        return None


def _is_file(path: Path) -> bool:
    try:
        return path.is_file()
    except (OSError, ValueError):
        return False


def _list(names: tuple[str, ...]) -> str:
    return ", ".join(names) or "none yet"


__all__ = ["CostumeFile", "Garment", "Given", "read_costume"]
