"""The table of published values: every row has its source and is used, and some it is derived from."""

from __future__ import annotations

import math
import tomllib
from pathlib import Path

import pytest

from tests.published import TABLE, named, pairs, published, several, single

TESTS = Path(__file__).resolve().parent
ROWS = tomllib.loads(TABLE.read_text("utf-8"))


@pytest.mark.parametrize("name", ROWS)
def test_every_row_says_what_it_is_and_where_it_is_from(name: str) -> None:
    row = published(name)
    assert len(row.what) > 10
    assert len(row.source) > 5


def test_no_row_is_there_for_nothing() -> None:
    said = "\n".join(path.read_text("utf-8") for path in TESTS.rglob("*.py"))
    used = {name for name in ROWS if f'"{name}"' in said}
    banded = {name for name in ROWS if name.startswith("band-") and f'"{name[5:]}"' in said}
    assert ROWS.keys() - used - banded == set()


def test_rows_that_follow_from_a_formula_hold_it() -> None:
    # Plane geometry and arithmetic, worked out here anew.
    for name, circle in (
        ("full-circle", 1.0),
        ("three-quarter-circle", 0.75),
        ("half-circle", 0.5),
        ("quarter-circle", 0.25),
    ):
        angle = circle * math.tau
        assert named(name)["radius"] == pytest.approx(70 / angle, abs=1e-4)
        assert named(name)["sweep"] == pytest.approx(70 + 60 * angle, abs=1e-4)
    assert named("cone")["angle_deg"] == pytest.approx(math.degrees(60 / 55), abs=1e-3)
    assert single("godet-hem") == pytest.approx(30 * math.pi / 2, abs=1e-4)
    assert single("bias-box") == pytest.approx(160 / math.sqrt(2), abs=1e-3)
    assert single("scale-of-97") == pytest.approx(100 / 97, abs=1e-5)
    assert several("a4-points") == pytest.approx([210 / 25.4 * 72, 297 / 25.4 * 72], abs=1e-3)
    assert named("test-square")["px"] == pytest.approx(96 / 0.254, abs=1e-3)


def test_each_iso_paper_is_two_of_the_next() -> None:
    # ISO 216: the long side over the short one is the root of 2, to the millimetre.
    for short, long in pairs("iso-papers"):
        assert long == pytest.approx(short * math.sqrt(2), abs=1.0)
