"""What a maker has: stitches her machines sew, feet, blade, iron, needles, prices.

[prices] are in her own currency: `thread` for 100 m, `elastic`, `boning`, `interfacing` for a metre (or
"3.20 a yard", thread for 100), `button` for one, `needle` for a packet.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path
from typing import Any

from drafting.ground.frozen import freeze
from drafting.ground.prices import parse_price
from drafting.ground.units import BadValue, as_written
from drafting.reading.cursor import TableReader, opened
from drafting.reading.given import one_of
from drafting.reading.kinds import FileKind

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
    table = opened(Path(path), FileKind.WORKROOM)
    values: dict[str, Any] = {
        "title": table.text("title") or Path(path).stem.replace("-", " "),
        **{key: table.listed(key, words) for key, words in LISTS.items()},
        "foot_pressure": table.truth("foot_pressure"),
        "blade": table.read("blade", partial(one_of, words=BLADES)),
        "iron_dots": table.read("iron_dots", _dots),
        "prices": _prices(table.table("prices")),
    }
    table.close()
    table.refuse()
    return Workroom(**{key: value for key, value in values.items() if value is not None})


def _dots(value: object) -> int:
    if isinstance(value, (int, float)) and not isinstance(value, bool) and value in (1, 2, 3):
        return int(value)
    what = f"{as_written(value)} is no iron setting"
    raise BadValue(what, "write 1, 2 or 3, the hottest setting of the iron")


def _prices(table: TableReader) -> dict[str, float]:
    prices = {key: table.read(key, parse_price) for key in PRICES}
    table.close()
    return {key: price for key, price in prices.items() if price is not None}
