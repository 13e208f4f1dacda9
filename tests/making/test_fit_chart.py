"""The fit chart: ease against the trade's bands, and movement against what the skin and the trade ask."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from drafting.costume.garment import draft_garment
from drafting.costume.make import make
from drafting.fabric import Fabric
from drafting.fitting.bands import sort_of_garment
from drafting.fitting.moving import Demand, Enough, Movement, judged
from drafting.fitting.performer import to_try
from drafting.fitting.words import order_at_the_body
from drafting.ground.lengths import in_unit
from drafting.making.fit.ease import EaseRow, EaseVerdict, ease_rows
from drafting.making.fit.moves import MoveRow, move_rows
from drafting.making.fit.told import ease_of, fit_tables, moves_of
from tests.drawn_bodies import drawn
from tests.making.figures import made
from tests.making.orders import WOVEN


def eases(name: str, garment: str) -> dict[str, EaseRow]:
    return {row.level: row for row in ease_of(made(name), made(name)[garment])}


def moves(name: str, garment: str) -> dict[Movement, MoveRow]:
    return {row.movement: row for row in moves_of(made(name), made(name)[garment])}


def test_ease_is_what_is_drawn_less_body_and_the_layers_beneath() -> None:
    bust = eases("lamplighter", "coat")["bust"]
    layer = made("lamplighter").costume.wearer.layer("bust_girth")
    assert layer > 0
    assert bust.ease == pytest.approx(bust.drawn - bust.body - layer)
    assert bust.ease == pytest.approx(115.0 - layer, abs=0.5)  # what its costume asks for


def test_a_shirt_with_room_is_above_the_trades_band_and_a_close_top_is_worn_by_its_cloth() -> None:
    shirt, top = eases("lamplighter", "shirt"), eases("kite", "top")
    assert shirt["bust"].verdict is EaseVerdict.STYLE
    assert (shirt["bust"].band.low, shirt["bust"].band.high) == (38.0, 76.0)  # a university's text: 1 1/2 to 3 in
    assert top["bust"].verdict is EaseVerdict.WORN
    assert top["bust"].needs == pytest.approx(top["bust"].body / top["bust"].drawn - 1)


def test_each_shoulder_is_told_by_itself_where_they_differ() -> None:
    made_shirt = made("lamplighter")
    rows = [row for row in ease_of(made_shirt, made_shirt["shirt"]) if row.level == "shoulder_length"]
    assert [row.side for row in rows] == ["left", "right"]
    assert rows[0].body != rows[1].body


@pytest.mark.parametrize("name", ["lamplighter", "kite"])
def test_a_chart_in_inches_tells_no_rest_of_a_reckoning_in_mm(name: str) -> None:
    tables = fit_tables(made(name), made(name).garments, named=True)
    cells = [in_unit(str(cell), "in") for table in tables for row in table.rows for cell in row]
    assert [cell for cell in cells if " mm" in cell] == []


def test_a_hug_asks_what_the_skin_of_the_back_does() -> None:
    hug = moves("lamplighter", "shirt")[Movement.HUG]
    across = made("lamplighter").costume.wearer["across_back_width"]
    # The skin of the back across the shoulders lengthens by 13 to 16 % (Kirk and Ibrahim 1966, from memory).
    assert (hug.low, hug.high) == (pytest.approx(0.13 * across), pytest.approx(0.16 * across))


def test_more_stretch_is_never_less_room() -> None:
    body = made("kite").costume.wearer
    rank = [Enough.TOO_LITTLE, Enough.TIGHT, Enough.ENOUGH]
    last: dict[Movement, int] = {}
    for stretch in (0.3, 0.5, 0.9):
        cloth = Fabric("knit", weave="knit", stretch_along=stretch, stretch_across=stretch)
        close = draft_garment(
            body, Fabric("knit", weave="knit", stretch_along=0.3, stretch_across=0.3), "close-top"
        )
        now = {row.movement: rank.index(row.verdict) for row in move_rows(close, body, cloth)}
        assert all(now[move] >= before for move, before in last.items())
        last = now


@pytest.mark.parametrize("ease", [10.0, 60.0, 140.0])
def test_a_deep_breath_wants_two_to_five_centimetres(ease: float) -> None:
    body = made("lamplighter").costume.wearer
    garment = draft_garment(body, None, "bodice", {"bust_ease": ease})
    breath = next(row for row in move_rows(garment, body, None) if row.movement is Movement.BREATH)
    assert breath.have == pytest.approx(ease, abs=1.0)
    assert breath.verdict is (Enough.TOO_LITTLE if ease < 20 else Enough.TIGHT if ease < 50 else Enough.ENOUGH)


def test_a_deeper_armhole_lets_the_hem_rise_farther() -> None:
    body = made("lamplighter").costume.wearer
    rises = []
    for drop in (10.0, 30.0, 50.0):
        shirt = draft_garment(body, None, "shirt", {"armhole_drop": drop})
        rises += [row.have for row in move_rows(shirt, body, None) if row.movement is Movement.ARMS_UP]
    assert rises == sorted(rises)
    assert len(rises) == 3


def test_a_body_whose_sides_differ_is_told_the_same_movements() -> None:
    body = made("kite").costume.wearer
    leaning = body.changed(shoulder_drop=(20.0, 45.0))
    told = [
        {row.movement for row in move_rows(draft_garment(one, None, "shirt"), one, None)}
        for one in (body, leaning)
    ]
    assert told[0] == told[1]
    assert Movement.ARMS_UP in told[1]


def test_a_quick_change_counts_each_closing() -> None:
    bare = made("kite")
    assert moves("kite", "top")[Movement.CHANGE].have == 10.0
    buttons = sum(n.count for n in made("lamplighter")["shirt"].draft.notions if n.what == "button")
    assert moves("lamplighter", "shirt")[Movement.CHANGE].have == 10.0 + 4.0 * buttons
    assert bare["top"].draft.notions is not None


def test_less_is_better_where_the_least_is_the_larger() -> None:
    rise = Demand(60.0, 40.0, made("kite").garments and moves("kite", "top")[Movement.CHANGE].sources[0])
    assert [judged(mm, rise).value for mm in (20.0, 50.0, 80.0)] == ["enough", "tight", "too little"]


@pytest.mark.parametrize("body", drawn(4), ids=lambda body: body.title)
def test_everybody_has_a_chart_without_a_hole(body: Any) -> None:
    real = make(replace(made("lamplighter").costume, wearer=body))
    for garment in real.garments:
        ease, movement = fit_tables(real, (garment,), named=False)
        assert len(ease.rows) >= 5
        assert len(movement.rows) >= 3
        assert all(all(str(cell) for cell in row) for row in (*ease.rows, *movement.rows))


def _rows(block: str, choices: dict[str, Any] | None = None) -> dict[str, EaseRow]:
    body = drawn(1)[0]
    return {row.level: row for row in ease_rows(draft_garment(body, None, block, choices or {}), body, None)}


def test_a_level_is_compared_only_with_the_measure_that_it_lies_on() -> None:
    body = drawn(1)[0]
    # A cape's seam runs on over the arm: no part of it ends on the shoulder, so it is no shoulder length.
    assert "shoulder_length" not in _rows("cape")
    assert "shoulder_length" in _rows("coat")
    # A hem below the knee goes round the leg between knee and calf, never round the ankle.
    for block in ("breeches", "knee-breeches"):
        least = min(body["knee_girth"], body["calf_girth"])
        assert _rows(block)["trouser_hem"].body >= least - 1.0 > body["ankle_girth"]
    assert _rows("trousers")["trouser_hem"].body == pytest.approx(body["ankle_girth"])


def test_an_armhole_that_is_cut_in_is_no_strain_across_the_back() -> None:
    body = drawn(1)[0]
    back = _rows("waistcoat", {"armhole_in": 15.0})["across_back"]
    assert back.inside == 30.0
    assert back.drawn == pytest.approx(body["across_back_width"] - 30.0, abs=0.5)
    assert back.needs < 0.01
    assert back.verdict is EaseVerdict.NO_BAND


def test_what_hangs_from_the_waist_is_held_to_the_band_of_skirts_and_what_is_drawn_up_as_it_is_sewn() -> None:
    # Ease in clothing (a university's text): waist of a skirt or trousers 1.3 to 1.9 cm, of a dress 1.9 to 2.5.
    waist = _rows("skirt")["waist"]
    assert waist.band is not None
    assert (waist.band.low, waist.band.high) == (13.0, 19.0)
    assert waist.verdict is EaseVerdict.WITHIN
    band, elastic = _rows("knee-breeches", {"knee_band_ease": 16.0}), _rows("breeches")
    assert band["trouser_hem"].ease == pytest.approx(16.0, abs=1.0)  # the band's own, not what is gathered onto it
    assert elastic["waist"].verdict is EaseVerdict.ELASTIC is elastic["trouser_hem"].verdict


@pytest.mark.parametrize("garment", ["trousers", "coat"])
def test_nobody_who_is_seated_is_asked_to_climb_kneel_or_rise(garment: str) -> None:
    """A wheelchair user's fitting sheet said to climb steps, lunge and kneel, and judged the thigh on stairs."""
    standing = made("lamplighter").costume.wearer
    seated = replace(standing, posture="seated")
    found = draft_garment(seated, None, {"coat": "tailcoat"}.get(garment, garment))
    assert Movement.STAIRS not in {row.movement for row in move_rows(found, seated, None)}
    never = ("climb", "kneel", "rise", "squat", "lunge", "toes")
    said = " ".join(to_try(sort_of_garment(found.draft), seated=True)).lower()
    assert not [word for word in never if word in said.replace("does the hem rise", "")]
    assert "wheels" in said
    assert any(word in " ".join(to_try(sort_of_garment(found.draft))).lower() for word in never)
    first, *rest = order_at_the_body(found.draft, seated=True)
    assert "own chair" in first
    assert tuple(rest) == order_at_the_body(found.draft)
    if garment == "trousers":
        stood = draft_garment(standing, None, garment)
        assert Movement.STAIRS in {row.movement for row in move_rows(stood, standing, None)}


def test_cloth_that_gives_a_little_is_not_worse_to_sit_in_than_cloth_that_gives_nothing() -> None:
    """With ease round the hip a seat needs no stretch (`Source.EASE_IN_CLOTHING`: the least ease of a hip);
    only what is cut smaller than the body is asked what its cloth still gives."""
    body = made("lamplighter").costume.wearer
    firm = replace(WOVEN, stretch_across=0.0)
    gives = replace(WOVEN, stretch_across=0.14)
    verdicts = []
    for cloth in (firm, gives):
        rows = move_rows(draft_garment(body, cloth, "trousers"), body, cloth)
        verdicts += [row.verdict for row in rows if row.movement is Movement.SIT]
    assert verdicts == [Enough.ENOUGH, Enough.ENOUGH]
