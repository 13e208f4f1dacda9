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
