"""A lay that a hand has made: kept as plain rows, made again of the same pieces, and of no others."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest

from drafting.layout import hand_row, lay_out, moved
from drafting.layout.by_hand import laid_by_hand, with_cloth
from tests.layout.figures import COAT, breaks, cloth

FOLDED = cloth(lay="folded")
LAY = lay_out(COAT, FOLDED, count=40, table=False)
MINE = moved(LAY, "coat.cuff.both.1", LAY.length + 60.0, 40.0)


def places(lay: object) -> dict[str, tuple[float, float]]:
    return {lay.id(s): (s.x, s.y) for s in lay.packing.spots}  # type: ignore[attr-defined]


@pytest.mark.parametrize("lay", [LAY, MINE])
def test_a_lay_written_down_as_text_is_made_again_as_it_was(lay: object) -> None:
    row = json.loads(json.dumps(hand_row(lay)))  # type: ignore[arg-type]
    again = laid_by_hand(COAT, FOLDED, row)
    assert again is not None
    assert places(again) == pytest.approx(places(lay), abs=1e-9)
    assert again.length == pytest.approx(lay.length)  # type: ignore[attr-defined]
    assert breaks(again, COAT) == []


def test_faulty_places_that_were_marked_come_back_with_it() -> None:
    fault = (LAY.length + 500.0, 100.0, LAY.length + 550.0, 150.0)
    marked = with_cloth(MINE, COAT, replace(FOLDED, faults=(fault,)))
    assert marked is not None
    again = laid_by_hand(COAT, FOLDED, hand_row(marked))
    assert again is not None
    assert again.cloth.faults == (fault,)


def test_it_is_not_made_of_other_pieces_or_of_a_row_that_says_nonsense() -> None:
    row = hand_row(MINE)
    assert laid_by_hand(COAT[1:], FOLDED, row) is None
    piled = {**row, "places": [{**place, "x": 0.0, "y": 0.0} for place in row["places"]]}
    assert laid_by_hand(COAT, FOLDED, piled) is None
    for nonsense in ({}, {**row, "spread": "rolled"}, {**row, "places": [{}]}, {**row, "faults": ["a stain"]}):
        assert laid_by_hand(COAT, FOLDED, nonsense) is None


def test_what_lies_clear_of_a_new_faulty_place_stays_and_what_lay_on_it_goes_elsewhere() -> None:
    x, y = places(MINE)["coat.cuff.both.1"]
    across = FOLDED.usable_width / 2 + y  # the upper layer of folded cloth
    marked = with_cloth(MINE, COAT, replace(FOLDED, faults=((x + 10, across + 10, x + 40, across + 40),)))
    assert marked is not None
    moved_away = {name for name, at in places(marked).items() if at != places(MINE)[name]}
    assert moved_away == {"coat.cuff.both.1"}
    assert breaks(marked, COAT) == []
