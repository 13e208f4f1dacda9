"""Diamond darts of a back to the hip: none wider than one dart can take, what they take in all as before.

Common practice: a dart takes 30 to 40 mm at most, a wider one is parted in two; the darts of one waist stand
apart, and the one nearer the side is the shorter.
"""

from __future__ import annotations

import itertools

import pytest

from drafting.body import Body, wearer
from drafting.costume.garment import draft_garment
from drafting.draft.piece import InnerDart, Piece
from drafting.draft.roles import LevelKind
from tests.bodies import ansur
from tests.making.orders import WOVEN

STRONG = wearer(
    {"height": 1780, "bust_girth": 1320, "waist_girth": 840, "hip_girth": 1040, "across_back_width": 500},
    figure="mens",
)


def mouth(dart: InnerDart) -> tuple[float, float]:
    """Return where both legs cross the waist."""
    ends = sorted(leg.segments[0].end.real for leg in (dart.leg_a, dart.leg_b))
    return ends[0], ends[1]


def from_centre(back: Piece) -> list[tuple[float, float]]:
    """Return every dart's mouth as distances from the centre back, the nearest first."""
    return sorted(tuple(sorted(abs(x) for x in mouth(dart))) for dart in back.darts)  # type: ignore[misc]


@pytest.mark.parametrize("block", ["shirt", "fitted-top", "waistcoat"])
def test_no_back_is_taken_in_by_more_than_one_dart_can_take(block: str) -> None:
    """A fifth of 120 people had one of 48 to 71 mm in the back of a shirt, the strong man one of 94."""
    for body in (*ansur(30), STRONG):
        garment = draft_garment(body, WOVEN, block)
        back, scale = garment.draft["back"], garment.draft.facts["scale"]
        assert [f.sentence for f in garment.findings if f.level == "error"] == [], body.title
        places = from_centre(back)
        assert all(right - left <= 45.1 * scale for left, right in places), body.title
        assert all(two[0] - one[1] >= 10.0 * scale for one, two in itertools.pairwise(places)), body.title
        if places:
            (waist,) = (level for level in back.levels if level.kind is LevelKind.WAIST)
            ends = [abs(p.real) for path in waist.paths for p in (path.start, path.end)]
            assert places[0][0] >= 10.0 * scale
            assert max(ends) - places[-1][1] >= 10.0 * scale, body.title


def test_several_darts_take_what_one_took_and_shorten_towards_the_side() -> None:
    back = draft_garment(STRONG, WOVEN, "shirt").draft["back"]
    places = from_centre(back)
    assert [dart.name for dart in back.darts] == ["waist_dart", "waist_dart_middle", "waist_dart_side"]
    assert sum(right - left for left, right in places) == pytest.approx(94.35, abs=0.01)
    long = [abs(dart.leg_a.start - dart.leg_a.end) for dart in back.darts]
    assert long == sorted(long, reverse=True)


def small() -> Body:
    return wearer({"height": 1700, "bust_girth": 900, "waist_girth": 760, "hip_girth": 960})


def test_a_narrow_dart_stays_one() -> None:
    (dart,) = draft_garment(small(), WOVEN, "shirt").draft["back"].darts
    assert dart.name == "waist_dart"
