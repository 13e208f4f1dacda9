"""Pieces set in rows: as large as the place allows, and where they stand while a slider moves."""

from __future__ import annotations

import pytest

from drafting.costume.file import read_costume
from drafting.ground.shipped import demo_costume
from drafting.notebook.bench import state as st
from drafting.notebook.picture.rows import WORSE, rows_for
from drafting.notebook.picture.view import FOOT
from drafting.sheet.overview import overview

COSTUME = read_costume(demo_costume())
SHIRT = st.begin_standing(COSTUME, "shirt")
PATTERN = SHIRT.made.garments[0].pattern


def pixel(rows: object, place: tuple[float, float]) -> float:
    """Return how many mm a pixel has to show, from the page that is drawn."""
    page = overview([PATTERN], bar=False, rows=rows)  # type: ignore[arg-type]
    return max(page.width / place[0], page.height / (place[1] - FOOT))


@pytest.mark.parametrize("place", [(1100.0, 760.0), (420.0, 520.0), (900.0, 240.0)])
def test_no_other_width_of_the_rows_shows_the_pieces_a_fifth_larger(place: tuple[float, float]) -> None:
    rows = rows_for(PATTERN, place)
    others = [type(rows)(wide, rows.size) for wide in range(600, 5000, 100)]
    assert pixel(rows, place) <= WORSE * min(pixel(other, place) for other in others)


def test_rows_are_kept_while_they_do_nearly_as_well_so_that_no_piece_jumps() -> None:
    place = (1100.0, 760.0)
    rows = rows_for(PATTERN, place)
    wider = st.asked_for(SHIRT, "shirt", "bust_ease", 130.0).made.garments[0].pattern
    assert rows_for(wider, place, rows) is rows
    assert rows_for(wider, (240.0, 1200.0), rows) is not rows
