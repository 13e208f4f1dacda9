"""Whatever the pieces and the cloth: what lies there keeps every rule, and nothing is lost."""

from __future__ import annotations

import math

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from drafting.draft.piece import Level
from drafting.geometry import line
from drafting.layout import Cloth, LayWishes, Part, broken_rules, lay_out
from tests.layout.figures import Points, breaks, part

LAYS = ("auto", "folded", "open", "crosswise", "double")


@st.composite
def outline(draw: st.DrawFn) -> Points:
    """Return a star-shaped outline of a hand's breadth to an arm's length."""
    corners = draw(st.integers(3, 9))
    radii = draw(st.lists(st.floats(40, 420), min_size=corners, max_size=corners))
    return [
        (r * math.cos(math.tau * i / corners), r * math.sin(math.tau * i / corners)) for i, r in enumerate(radii)
    ]


@st.composite
def half_outline(draw: st.DrawFn) -> Points:
    """Return an outline with an upright side on the left, for the fold."""
    heights = sorted(draw(st.lists(st.integers(0, 40), min_size=2, max_size=5, unique=True)))
    wide = draw(st.lists(st.floats(30, 420), min_size=len(heights), max_size=len(heights)))
    rows = [(x, 20.0 * y) for x, y in zip(wide, heights, strict=True)]
    return [(0, rows[0][1]), *rows, (0, rows[-1][1])]


def _upright(ring: Points) -> int:
    """Return the number of the side that runs along x = 0."""
    return next(i for i in range(len(ring)) if ring[i][0] == ring[(i + 1) % len(ring)][0] == 0)


@st.composite
def costume(draw: st.DrawFn) -> tuple[Part, ...]:
    parts = []
    for n in range(draw(st.integers(1, 6))):
        kind = draw(st.sampled_from(("fold", "pair", "single", "hand")))
        more = {"garment": draw(st.sampled_from(("coat", "shirt"))), "number": n}
        if kind == "fold":
            points = draw(half_outline())
            side = draw(st.sampled_from((1, -1)))
            ring = points if side > 0 else [(-x, y) for x, y in points][::-1]
            parts.append(part(f"p{n}", ring, fold=_upright(ring), copies=draw(st.integers(1, 2)), **more))
        else:
            hand = draw(st.sampled_from(("left", "right"))) if kind == "hand" else ""
            grain = draw(st.sampled_from((90.0, 0.0, 45.0, 270.0, 100.0)))
            copies = draw(st.integers(1, 3)) if kind != "hand" else 1
            level = Level("bust", (line(-20 + 7j, 20 + 7j),))
            parts.append(
                part(
                    f"p{n}",
                    draw(outline()),
                    pair=kind == "pair",
                    hand=hand,
                    grain=grain,
                    copies=copies,
                    levels=(level,),
                    **more,
                )
            )
    return tuple(parts)


@st.composite
def cloth(draw: st.DrawFn) -> Cloth:
    one_way = draw(st.booleans())
    ways = LAYS[:3] if one_way else LAYS  # one-way cloth is never folded across: see test_answers
    wishes = LayWishes(lay=draw(st.sampled_from(ways)), gap=draw(st.sampled_from((0.0, 5.0, 12.0))))
    faults = draw(st.sampled_from(((), ((300.0, 200.0, 360.0, 260.0),))))
    return Cloth(
        "shell",
        "Velveteen, plum",
        draw(st.floats(500, 1600)),
        10.0,
        one_way,
        draw(st.booleans()),
        repeat_along=draw(st.sampled_from((None, None, 60.0))),
        repeat_across=draw(st.sampled_from((None, None, 40.0))),
        wishes=wishes,
        faults=faults,
    )


@pytest.mark.slow
@settings(max_examples=200, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(costume(), cloth())
def test_every_piece_lies_within_the_rules_or_is_named_as_left_out(parts: tuple[Part, ...], bolt: Cloth) -> None:
    lay = lay_out(parts, bolt, count=40, table=False)
    assert breaks(lay, parts) == []
    assert broken_rules(lay.job, lay.packing) == []
    errors = {f.where for f in lay.findings if f.level == "error"}
    assert errors == {outline.part.name for outline in lay.left_out}
    if lay.packing.spots:
        assert lay.lower_bound <= lay.length + 1e-6
        assert 0 < lay.utilisation <= 1
        assert lay.buy_length >= lay.cloth_length + bolt.wishes.spare - 1e-6
