"""A lining's dart has its cloth: it is folded and sewn like the shell's, never cut out along its legs; by shapely.

That a dart is sewn by its legs, its mouth cut by the neighbouring edges' allowance, folded, is common practice.
"""

from __future__ import annotations

import pytest
from shapely.geometry import LineString, Point, Polygon

from drafting.body import Body
from drafting.costume.garment import draft_garment
from drafting.draft.by_role import dart_legs
from drafting.geometry import Path
from tests.blocks.figures import chart_woman, errors
from tests.making.orders import WOVEN
from tests.worn.unusual import child, made_up

LINED = {
    "cape": {"lining": "whole", "shoulder_fit": "dart"},
    "skirt": {"lining": "whole", "skirt_cut": "straight"},
    "waistcoat": {"back_shaping": "shoulder dart"},
}


def points(path: Path) -> list[tuple[float, float]]:
    return [(p.real, p.imag) for p in path.points(0.05)]


@pytest.mark.parametrize(
    ("block", "body"),
    [
        ("cape", child(1280.0)),  # whose half cape the cloth takes in one, with a dart
        ("skirt", chart_woman()),
        ("waistcoat", chart_woman()),
        ("waistcoat", next(body for body in made_up() if "back" in body.title)),
    ],
)
def test_the_cut_line_of_a_lining_goes_round_its_darts(block: str, body: Body) -> None:
    made = draft_garment(body, WOVEN, block, LINED[block])
    assert errors(made) == []
    seen = 0
    for cut in made.pattern.pieces:
        if cut.piece.material != "lining":
            continue
        cloth, (shell,) = Polygon(points(cut.cut)), cut.piece.lines
        darts = list(dart_legs(cut.piece))
        if block != "waistcoat":  # whose facing takes the front's share
            assert len(darts) == len(list(dart_legs(made.draft[shell])))
        for into, out in darts:
            legs = LineString([*points(into.path), *points(out.path)])
            assert cloth.contains(legs), (cut.piece.name, into.name)
            mouth = (into.path.start + out.path.end) / 2
            assert cloth.contains(Polygon([*points(into.path), *points(out.path)]))
            assert Point(mouth.real, mouth.imag).distance(cloth.exterior) > 5
            seen += 1
    assert seen
