"""Peplums: a part of a circle on the exact length of a bodice's waist, its sides under the bodice's.

Bodies as in the tests of skirts; lengths are measured by shapely on fine polylines.
"""

from __future__ import annotations

import math

import pytest

from drafting.costume.file import read_costume
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.costume.lays import laid_out
from drafting.costume.make import make
from drafting.draft.piece import EdgeKind
from drafting.draft.roles import EdgeRole
from drafting.ground.errors import DraftError
from drafting.making import planned
from drafting.making.rules import unsound
from tests.blocks.figures import chart_woman, errors
from tests.blocks.small_pieces import ruled
from tests.blocks.test_skirt import sample
from tests.bodies import ansur, bdims
from tests.making.figures import ROOT
from tests.making.orders import WOVEN, costume_of, order_of

CHOICES: tuple[dict[str, object], ...] = (
    {},
    {"peplum_angle": 360.0},
    {"opening": "front", "fastening": "buttons"},
    {"bust_dart": "shoulder-princess"},
)


def top(body: object, **choices: object) -> MadeGarment:
    return draft_garment(body, WOVEN, "peplum-top", choices)  # type: ignore[arg-type]


@pytest.mark.parametrize("choices", CHOICES)
def test_the_sample_has_peplums_without_an_error_and_an_order_that_is_sound(choices: dict[str, object]) -> None:
    for body in sample():
        assert errors(top(body, **choices)) == [], body.title
    costume = costume_of(top(chart_woman(), **choices), WOVEN)
    assert unsound(costume, order_of(costume)) == ()


@pytest.mark.population
@pytest.mark.timeout(0)
def test_three_hundred_people_of_the_survey_have_a_peplum_without_an_error() -> None:
    found = [f"{body.title}: {said}" for body in (*ansur(300), *bdims(100)) for said in errors(top(body))]
    assert found == []


@pytest.mark.parametrize("angle", [90.0, 180.0, 360.0])
def test_waist_and_hem_are_arcs_of_the_exact_lengths(angle: float) -> None:
    # Exact plane geometry: the hem is longer than the waist by the angle times the length.
    draft = top(chart_woman(), peplum_angle=angle).draft
    panels = [draft["peplum-front"], draft["peplum-back"]]
    waist, hem = (2 * sum(ruled(p[name].path) for p in panels) for name in ("waist", "hem"))
    bodice = [e for p in (draft["front"], draft["back"]) for e in p.edges if e.role is EdgeRole.WAIST]
    assert waist == pytest.approx(2 * sum(ruled(e.path) for e in bodice), abs=0.1)
    assert hem - waist == pytest.approx(math.radians(angle) * 140, abs=0.1)


def test_front_and_back_are_as_wide_as_the_bodice_is_there_and_open_where_it_does() -> None:
    draft = top(chart_woman()).draft
    for name, kind in (("front", EdgeKind.FOLD), ("back", EdgeKind.OPENING)):
        waist = sum(ruled(e.path) for e in draft[name].edges if e.role is EdgeRole.WAIST)
        assert ruled(draft[f"peplum-{name}"]["waist"].path) == pytest.approx(waist, abs=0.05)
        assert draft[f"peplum-{name}"]["centre"].kind is kind


def test_a_peplum_that_would_catch_on_the_hip_is_opened_wider_or_refused() -> None:
    body = chart_woman(waist_girth=600.0, hip_girth=1000.0)
    made = top(body, peplum_angle=60.0)
    assert any("opened to" in f.message for f in made.findings)
    hem = 2 * sum(ruled(made.draft[f"peplum-{name}"]["hem"].path) for name in ("front", "back"))
    deep = 140 / body["waist_to_hip"]
    assert hem >= 600 + 400 * min(deep, 1.0) + 20 - 0.1
    with pytest.raises(DraftError, match="more than a circle"):
        top(chart_woman(waist_girth=500.0, hip_girth=1750.0), peplum_length=30.0, waist_ease=0.0)


def test_the_ferrywoman_is_made_without_an_error() -> None:
    costume = make(read_costume(ROOT / "measurements" / "costumes" / "ferrywoman.toml"))
    for garment in costume.garments:
        assert errors(garment) == []
    plan = planned(laid_out(costume, count=50, table=False))
    assert unsound(costume, plan.steps) == ()
    assert all(not lay.left_out for lay in laid_out(costume, count=50, table=False).lays)
