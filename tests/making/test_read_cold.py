"""What was wrong in plans of six costumes that a cutter read cold, each thing once.

All that is asked is common practice of the workroom.
"""

from __future__ import annotations

from typing import Any

from drafting.blocks import all_blocks
from drafting.body import Body
from drafting.costume.choices import choose
from drafting.costume.garment import MadeGarment, make_garment
from drafting.fabric import Fabric
from drafting.ground.scale import body_scale
from drafting.making.model import Step
from drafting.making.rules import unsound
from drafting.reading.given import Given, Origin
from drafting.reading.style import CutWish
from drafting.reading.style_places import OutlinePlace
from tests.blocks.figures import chart_woman, errors
from tests.making.orders import WOVEN, costume_of, order_of, uneven

YOKE = CutWish(
    "back",
    OutlinePlace("armhole", share=0.4),
    OutlinePlace("centre_back", distance=140.0, beside="neck"),
    "back-yoke",
    holds="neck",
)


def made(
    body: Body, block: str, cloth: Fabric = WOVEN, asked: dict[str, object] | None = None, **wishes: Any
) -> MadeGarment:
    kind = all_blocks()[block]
    given = {name: Given(value) for name, value in (asked or {}).items()}
    chosen = choose(kind, given, body_scale(body), Origin())
    return make_garment(body, cloth, kind, chosen, name=block, role="shell", **wishes)


def work(garment: MadeGarment, cloth: Fabric = WOVEN) -> tuple[Step, ...]:
    costume = costume_of(garment, cloth)
    steps = order_of(costume)
    assert unsound(costume, steps) == ()
    return steps


def said(steps: tuple[Step, ...], name: str) -> list[dict[str, object]]:
    return [dict(one.facts) for step in steps for one in step.say if one.key.partition(".")[2] == name]


def test_a_coats_back_that_a_line_cuts_in_two_is_lined_whole() -> None:
    """The plan of a lined coat with a yoke of style could not be written; its lining was to be joined at a yoke
    that it does not have."""
    for body in (chart_woman(), uneven(chart_woman())):
        garment = made(body, "coat", style=(YOKE,))
        assert errors(garment) == []
        steps = work(garment)
        names = [one["names"] for one in said(steps, "lining")]
        assert names
        assert not any("yoke" in str(one) for one in names)
        assert any("centre back" in str(one) for one in names)
        assert [step for step in steps if step.verb == "fell"]
