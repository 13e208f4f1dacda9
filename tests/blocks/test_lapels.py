"""Lapels: a step, a peak with a gap, a peak that the collar closes; and the coat that ends at the waist.

Checked against plane geometry: the lapel's top lies in line with the gorge, its tip at the asked width from the
roll line; the step opens by an angle of common practice (75 to 90 degrees). Bodies as in the other block tests.
"""

from __future__ import annotations

import cmath
import math
from functools import cache

import pytest

from drafting.body import Body
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.draft.draft import Draft
from drafting.draft.roles import PieceRole
from drafting.making.rules import unsound
from tests.blocks.figures import chart_woman, errors
from tests.blocks.test_contact_sheets_of_settings import six
from tests.drawn_bodies import drawn, far
from tests.making.orders import WOVEN, costume_of, order_of
from tests.worn.unusual import child

LAPELS = ("peaked", "closed", "step")


def coat(body: Body, block: str = "tailcoat", **choices: object) -> MadeGarment:
    return draft_garment(body, WOVEN, block, choices)


@cache
def sample() -> tuple[Body, ...]:
    return (*drawn(2), *far()[::12], *six().values(), child(1160.0))


@pytest.mark.parametrize("lapel", LAPELS)
def test_every_lapel_on_the_sample_has_no_error(lapel: str) -> None:
    for body in sample():
        made = coat(body, "spencer", lapel_style=lapel)
        assert errors(made) == [], (body.title, errors(made))


def _turn(one: complex, other: complex) -> float:
    return math.degrees(cmath.phase(other / one))


def _lapel(draft: Draft) -> dict[str, complex]:
    front = draft["front"]
    return {name: front[name].path.end - front[name].path.start for name in ("gorge", "lapel_top")}


def test_a_step_lapels_top_lies_in_line_with_its_gorge_and_a_peak_turns_up() -> None:
    for body in (chart_woman(), six()["largest"]):
        step, peak = (_lapel(coat(body, lapel_style=style).draft) for style in ("step", "peaked"))
        assert _turn(step["gorge"], step["lapel_top"]) == pytest.approx(0.0, abs=0.01)
        assert abs(_turn(peak["gorge"], peak["lapel_top"])) > 30.0


@pytest.mark.parametrize("width", [70.0, 100.0])
def test_a_step_lapel_is_as_wide_as_asked_square_to_its_roll_line(width: float) -> None:
    front = coat(chart_woman(), lapel_style="step", lapel_width=width).draft["front"]
    roll = next(mark.path for mark in front.placements if mark.what == "roll line")
    way = (roll.end - roll.start) / abs(roll.end - roll.start)
    tip = front["lapel_top"].path.end
    assert abs(((tip - roll.start) / way).imag) == pytest.approx(width, abs=0.01)


def test_a_step_opens_by_the_angle_of_common_practice_and_a_closed_lapel_not_at_all() -> None:
    for style, low, high in (("step", 75.0, 90.0), ("closed", 0.0, 0.5)):
        draft = coat(chart_woman(), lapel_style=style).draft
        lapel = _lapel(draft)
        inside = 180.0 - abs(_turn(lapel["gorge"], lapel["lapel_top"]))
        (under,) = [p for p in draft.pieces if p.role is PieceRole.UNDER_COLLAR and not p.material]
        gorge, front = under["gorge"].path, under["front"].path
        beside = 180.0 - abs(_turn(gorge.end - gorge.start, front.end - front.start))
        opens = abs(inside - beside) if style == "closed" else 360.0 - inside - beside
        assert low <= opens <= high, (style, inside, beside)


def test_a_spencer_ends_at_the_waist_and_its_order_of_work_is_sound() -> None:
    made = coat(chart_woman(), "spencer")
    assert not [p for p in made.draft.pieces if p.role is PieceRole.TAIL]
    costume = costume_of(made, WOVEN)
    assert unsound(costume, order_of(costume)) == ()
