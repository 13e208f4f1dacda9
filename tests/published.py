"""What published works say, for tests that hold the kit against it: `data/published_values.toml`.

Each value stands there with its unit, the tolerance it is given to, and its source; its unit is cm
unless another is named there.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

TABLE = Path(__file__).parent / "data" / "published_values.toml"


@dataclass(frozen=True)
class Published:
    """One published figure, or a few that belong together."""

    what: str
    value: float | list[float] | list[list[float]] | Mapping[str, float]
    unit: str
    source: str
    tolerance: float | None = None


@cache
def _table() -> Mapping[str, Published]:
    rows: dict[str, Any] = tomllib.loads(TABLE.read_text("utf-8"))
    return {name: Published(**row) for name, row in rows.items()}


def published(name: str) -> Published:
    """Return the row of this name."""
    return _table()[name]


def single(name: str) -> float:
    """Return a row that is one number."""
    value = published(name).value
    assert isinstance(value, float), name
    return value


def several(name: str) -> list[float]:
    """Return a row that is a list of numbers."""
    value = published(name).value
    assert isinstance(value, list), name
    return [one for one in value if isinstance(one, float)]


def pairs(name: str) -> list[tuple[float, float]]:
    """Return a row that is a list of pairs."""
    value = published(name).value
    assert isinstance(value, list), name
    return [(one[0], one[1]) for one in value if isinstance(one, list)]


def named(name: str) -> Mapping[str, float]:
    """Return a row of numbers by name."""
    value = published(name).value
    assert isinstance(value, Mapping), name
    return value


def span(name: str) -> tuple[float, float]:
    """Return a row that reaches from low to high."""
    value = named(name)
    return value["low"], value["high"]


def span_mm(name: str) -> tuple[float, float]:
    """Return a row that reaches from low to high, given in cm, in mm."""
    assert published(name).unit == "cm", name
    low, high = span(name)
    return 10 * low, 10 * high


# ------------------------------------------------------- worked drafts, held figure by figure or struck

IN_MM = {"cm": 10.0, "in": 25.4, "graduated in": 25.4, "deg": 1.0}
"""How much one of a worked draft's units is in mm (a graduated inch for a chest of 37.5); degrees stay."""

TOLD = 0.2
"""cm, in, degrees: so near to what is told here our figure must be, where a published one is struck."""


@dataclass(frozen=True)
class Struck:
    """A published figure that does not hold for our construction: why, and what ours is in its unit.

    `ours` None: our construction draws no such line.
    """

    why: str
    ours: float | None = None


Figure = tuple[str, str]
"""A row's name, and the part of it ("" where the row is one number)."""


def figures(*rows: str) -> list[Figure]:
    """Return every figure of these rows."""
    parts = {name: published(name).value for name in rows}
    return [(name, part) for name, value in parts.items() for part in (value if isinstance(value, dict) else [""])]


def figure(one: Figure) -> tuple[float, float]:
    """Return a figure and the tolerance it is given to, in mm or degrees."""
    name, part = one
    row = published(name)
    value = named(name)[part] if part else single(name)
    assert row.tolerance is not None, name
    return value * IN_MM[row.unit], row.tolerance * IN_MM[row.unit]


def holds(one: Figure, ours: float | None, struck: Mapping[Figure, Struck]) -> None:
    """Assert that ours (mm or degrees, None: not drawn) is the published figure, or else is struck truly.

    A struck figure says what ours is, must still be that, and must not hold after all.
    """
    theirs, tolerance = figure(one)
    if one not in struck:
        assert ours is not None, f"{one} is neither measured nor struck"
        assert abs(ours - theirs) <= tolerance, f"{one}: {ours:.2f}, published {theirs:.2f} +- {tolerance:.2f}"
        return
    why = struck[one]
    assert len(why.why) > 20, one
    assert (ours is None) == (why.ours is None), f"{one}: drawn and told, or neither"
    if ours is not None and why.ours is not None:
        unit = IN_MM[published(one[0]).unit]
        assert abs(ours / unit - why.ours) <= TOLD, f"{one}: told as {why.ours}, drawn {ours / unit:.3f}"
        assert abs(ours - theirs) > tolerance, f"{one} holds: {ours:.2f}, published {theirs:.2f}"
