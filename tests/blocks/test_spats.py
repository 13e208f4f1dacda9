"""Spats: girths at ankle, top and over the heel by shapely and a ruler; seams, buttons, strap; many builds.

That a spat is buttoned down its outer side, front over back, 25 to 35 mm apart, turned in about 12 mm, and held by
a strap before the heel is common practice.
"""

from __future__ import annotations

from functools import cache
from itertools import pairwise

import pytest
from shapely.geometry import LineString, Point

from drafting.body import Body
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.costume.stand_in import stand_ins
from drafting.draft.draft import Draft
from drafting.draft.piece import Piece
from drafting.draft.walk import walk
from drafting.ground.errors import DraftError
from drafting.ground.scale import allowance_scale
from drafting.making.rules import unsound
from tests.alter.styles import ring
from tests.blocks.figures import chart_woman, errors
from tests.bodies import ansur
from tests.drawn_bodies import drawn, far
from tests.making.orders import KNIT, WOVEN, costume_of, order_of
from tests.worn.unusual import child


@cache
def sample() -> tuple[Body, ...]:
    return (chart_woman(), *drawn(6), *far()[::5], child(1160.0), stand_ins()[0])


def spats(body: Body, **choices: object) -> MadeGarment:
    return draft_garment(body, WOVEN, "spats", choices)


def across(piece: Piece, y: float) -> float:
    """Return how wide a piece is at a height, by shapely."""
    x0, _, x1, _ = piece.outline.bounds
    return float(ring(piece).intersection(LineString([(x0 - 9, y), (x1 + 9, y)])).length)


def test_the_pieces_go_round_ankle_and_top_with_the_ease_that_was_asked() -> None:
    for body in sample():
        made = spats(body)
        assert errors(made) == [], body.title
        draft, level = made.draft, made.draft["spat-inner"].levels[0]
        y = level.paths[0].start.imag
        parts = [across(draft[name], y) for name in ("spat-inner", "spat-front", "spat-back")]
        assert sum(parts) - 22.0 * _scale(body) == pytest.approx(
            body["ankle_girth"] + 26.0 * _scale(body), abs=0.2
        )


@pytest.mark.parametrize("who", ["ANSUR 1560", "ANSUR 2240", "ANSUR 4536"])
def test_the_front_turns_at_the_ankle_no_sharper_than_its_allowance_goes_round(who: str) -> None:
    """It turned on 0.1 to 5 mm, and the cut line missed its 10 mm by 1; by shapely: a hollow of 10 mm keeps it."""
    made = spats(next(body for body in ansur() if body.title == who))
    assert errors(made) == []
    inner = made.draft["spat-inner"]
    filled = ring(inner).buffer(10.0).buffer(-10.0).exterior  # what is hollower than 10 mm is filled
    assert max(filled.distance(Point(p.real, p.imag)) for p in inner["front"].path.flattened(0.01)) < 0.05


def _scale(body: Body) -> float:
    """Return how far adult lengths shrink: not from a bust of 700 mm up, with it below 600 (ground/scale)."""
    bust = body["bust_girth"]
    return 1.0 if bust >= 700 else 2 / 3 + (bust - 600) / 300 if bust > 600 else bust / 900


def test_from_the_heel_to_the_laces_it_goes_round_foot_and_shoe() -> None:
    """The tape over heel and instep, halved, meets the front's seam where the laces lie: 0.038 of the height up
    (from memory: 60 to 70 mm); nowhere above the tongue is the seam much nearer to the heel."""
    for body in sample():
        inner = spats(body).draft["spat-inner"]
        heel, front = inner["back"].path, inner["front"].path
        low = min((heel.start, heel.end), key=lambda p: p.imag)
        points = [complex(p) for p in front.points(0.1)]
        laces = min(points, key=lambda p: abs(p.imag - 0.038 * body["height"]))
        shoe = body["heel_girth"] + 36.0 * _scale(body)
        assert 2 * abs(laces - low) == pytest.approx(shoe, rel=0.01)
        assert 2 * min(abs(p - low) for p in points) >= 0.9 * shoe


def test_both_sides_of_every_seam_are_as_long_and_the_hem_stays_off_the_ground() -> None:
    for body in sample():
        draft = spats(body).draft
        for seam in draft.seams:
            assert abs(walk(draft, seam).difference) < 0.01
        for name in ("spat-inner", "spat-front", "spat-back"):
            assert draft[name].outline.bounds[1] >= -6.0  # a shoe's sole lifts it by more


def test_every_hole_lies_over_its_button_and_they_are_no_farther_apart_than_asked() -> None:
    for body in sample():
        draft = spats(body).draft
        holes = [m.path for m in draft["spat-front"].placements if m.what == "buttonhole"]
        buttons = [_middle(m.path.bounds) for m in draft["spat-back"].placements if m.what == "button"]
        assert len(holes) == len(buttons) >= 2
        gaps = [abs(a - b) for a, b in pairwise(buttons)]
        assert max(gaps) <= 30.0 * allowance_scale(_scale(body)) + 0.01
        assert min(gaps) >= 2 * 11.0 * allowance_scale(_scale(body)), (
            body.title
        )  # a hand opens them: spacing stays
        for hole, button in zip(holes, buttons, strict=True):
            assert abs(hole.start - button) <= 4.0
            for end in (hole.start, hole.end):
                assert ring(draft["spat-front"]).contains(Point(end.real, end.imag))
            assert ring(draft["spat-back"]).contains(Point(button.real, button.imag))
        assert _bought(draft) == {"button": 2 * len(buttons), "buckle": 2}


def _middle(bounds: tuple[float, float, float, float]) -> complex:
    return complex(bounds[0] + bounds[2], bounds[1] + bounds[3]) / 2


def _bought(draft: Draft) -> dict[str, int]:
    return {n.what: n.count for n in draft.notions if n.what in ("button", "buckle")}


def test_the_order_is_sound_and_warns_of_a_strap_that_trips() -> None:
    garment = spats(chart_woman())
    assert any("trips" in finding.message for finding in garment.findings)
    for fabric in (WOVEN, KNIT):
        costume = costume_of(garment, fabric)
        steps = order_of(costume)
        assert unsound(costume, steps) == ()
        keys = [said.key.partition(".")[2] for step in steps for said in step.say]
        assert {"strap_under", "fit_spats"} <= set(keys)
        assert keys.index("hem") < keys.index("strap_under")  # sewn onto the hem, so once that is turned up


@pytest.mark.parametrize(("high", "words"), [(80.0, "below the ankle"), (440.0, "reach the knee")])
def test_spats_that_do_not_stand_over_the_ankle_are_refused(high: float, words: str) -> None:
    with pytest.raises(DraftError, match=words):
        spats(chart_woman(), spat_height=high)
