"""What a maker has: stitches her machines sew, feet, blade, iron, needles, prices.

[prices] are numbers in her own currency: `thread` for 100 m, `elastic`, `boning`, `interfacing` for a
metre, `button` for one, `needle` for a packet.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from drafting.ground.errors import InputError
from drafting.ground.frozen import freeze
from drafting.ground.units import parse_number
from drafting.reading.given import Faults, Given, plain_text, truth
from drafting.reading.toml import TomlFile, read_toml

THREE_STEP = "three-step zigzag"

STITCHES = {
    "101": "single-thread chain",
    "301": "plain lockstitch",
    "304": "zigzag lockstitch",
    THREE_STEP: "zigzag of three short stitches a side",
    "401": "two-thread chain",
    "406": "cover stitch",
    "504": "three-thread overedge",
    "514": "four-thread overedge",
}
"""Numbers of `Source.ISO_4915` (406 from memory); the three-step zigzag goes by its name."""

FEET = ("all-purpose", "walking", "buttonhole", "zip", "straight-stitch", "roller", "overedge")
BLADES = ("shears", "rotary")
PRESSING = ("steam", "press cloth", "needle board", "sleeve board", "ham", "clapper")
POINTS = ("universal", "sharp", "microtex", "ball point", "stretch", "jeans", "leather")
PRICES = ("thread", "elastic", "boning", "bone tip", "interfacing", "button", "needle", "zip", "hook")
LISTS = {"stitches": tuple(STITCHES), "feet": FEET, "pressing": PRESSING, "needles": POINTS}
KEYS = ("title", *LISTS, "foot_pressure", "blade", "iron_dots", "prices")


@dataclass(frozen=True)
class Workroom:
    """One maker's machines, feet and tools.

    `stitches` are ISO 4915 numbers; `foot_pressure` says that the presser foot can be set lighter;
    `needles` are the points at hand (empty: whatever the plan asks for is bought).
    """

    title: str = "a sewing machine with straight stitch and zigzag, shears, a household iron"
    stitches: tuple[str, ...] = ("301", "304")
    feet: tuple[str, ...] = ("all-purpose", "buttonhole", "zip")
    foot_pressure: bool = False
    blade: str = "shears"
    iron_dots: int = 3
    pressing: tuple[str, ...] = ("steam", "press cloth")
    needles: tuple[str, ...] = ()
    prices: Mapping[str, float] = field(default_factory=dict)

    def __post_init__(self) -> None:
        freeze(self, "prices")

    def has(self, *stitches: str) -> str:
        """Return the first of these stitches that some machine here sews ("" for none)."""
        return next((stitch for stitch in stitches if stitch in self.stitches), "")


def read_workroom(path: Path | str) -> Workroom:
    """Return the workroom of a TOML file; raises `InputError` with every fault of it."""
    file = read_toml(Path(path))
    faults = Faults(file.path, list(file.faults))
    values: dict[str, Any] = {}
    for key, raw in file.data.items():
        given = Given(raw, file.line(key))
        if key in LISTS:
            values[key] = _listed(faults, given, key)
        elif key == "prices":
            values[key] = _prices(faults, file, raw)
        elif key == "blade":
            values[key] = faults.word(given, BLADES, key)
        elif key == "iron_dots":
            values[key] = _dots(faults, given)
        elif key == "foot_pressure":
            values[key] = faults.value(truth, given, key)
        elif key == "title":
            values[key] = faults.value(plain_text, given, key)
        else:
            faults.unknown(key, KEYS, key, given.line)
    if faults.found:
        raise InputError(faults.found)
    values.setdefault("title", Path(path).stem.replace("-", " "))
    return Workroom(**values)


def _listed(faults: Faults, given: Given, key: str) -> tuple[str, ...]:
    """Return a list of known words; a number is taken for a stitch."""
    known = LISTS[key]
    if not isinstance(given.value, list):
        right = f'write a list, as in {key} = ["{known[0]}", "{known[1]}"]'
        faults.add("is not a list", right, key, given.line)
        return ()
    words = (faults.word(Given(str(value), given.line), known, key) for value in given.value)
    return tuple(word for word in words if word)


def _dots(faults: Faults, given: Given) -> int | None:
    if given.value in (1, 2, 3) and not isinstance(given.value, bool):
        return int(str(given.value))
    right = "write 1, 2 or 3, the hottest setting of the iron"
    faults.add(f"'{str(given.value)[:20]}' is no iron setting", right, "iron_dots", given.line)
    return None


def _prices(faults: Faults, file: TomlFile, table: object) -> dict[str, float]:
    if not isinstance(table, dict):
        faults.add("must be a table", "begin it with a line [prices]", "prices", file.line("prices"))
        return {}
    found: dict[str, float] = {}
    for key, raw in table.items():
        line = file.line("prices", key)
        if key not in PRICES:
            faults.unknown(key, PRICES, f"prices.{key}", line)
            continue
        price = faults.value(lambda v: parse_number(v, sign="not negative"), Given(raw, line), f"prices.{key}")
        if price is not None:
            found[key] = price
    return found
