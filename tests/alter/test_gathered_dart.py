"""A dart left open and gathered: the notches beside it stay true, and the gathers are told where they lie."""

from __future__ import annotations

import pytest

from drafting.costume.choices import block_named, choose
from drafting.costume.garment import MadeGarment, make_garment
from drafting.draft.gathers import gathers_along
from drafting.draft.walk import walk
from drafting.ground.scale import body_scale
from drafting.making.words import plan_sentence
from drafting.reading.given import Given, Origin
from drafting.reading.style import DartWish
from tests.bodies import bdims
from tests.making.orders import WOVEN, costume_of, order_of
from tests.making.test_plans_read import keys

FULL = 2.5
"""Drawn over held at most: gathers of 2 are full and lie well, over 3 no cotton takes (common practice)."""


def gathered(place: str, n: int) -> MadeGarment:
    """Return a fitted top whose bust dart is left open at a place of its front."""
    body, kind = bdims()[260 + 40 * n], block_named("fitted-top")
    chosen = choose(kind, {"bust_dart": Given(place)}, body_scale(body), Origin())
    wish = DartWish("front", "bust_dart", None)
    return make_garment(body, WOVEN, kind, chosen, name="top", role="shell", style=(wish,))


@pytest.mark.parametrize("n", range(5))
@pytest.mark.parametrize("place", ["side", "shoulder", "armhole", "neck"])
def test_a_dart_gathered_anywhere_leaves_no_fault(place: str, n: int) -> None:
    """Side, armhole and neck were refused by the checks on every body: quarters stood in place of the sleeve's
    notch, and the open mouth was judged as a seam that bends the wrong way."""
    garment = gathered(place, n)
    assert [f.message for f in garment.findings if f.level == "error"] == []
    (pulled,) = [e for e in garment.draft["front"].edges if e.sewn is not None]
    seam = next(s for s in garment.draft.seams if ("front", pulled.name) in (*s.a, *s.b))
    run = gathers_along([walk(garment.draft, seam)])
    assert run is not None
    assert run.drawn - run.held == pytest.approx(pulled.length - pulled.sewn_length, abs=0.5 + abs(seam.ease))
    assert run.ratio < FULL
    ends = {notch.name for notch in seam.notches if notch.name.startswith("gathers")}
    assert run.between == bool(ends)


def test_the_sleeves_notch_stays_where_it_was_beside_a_gathered_dart() -> None:
    """The mouth lies between it and the shoulder, and on the cap nothing has moved."""
    kind, body = block_named("fitted-top"), bdims()[260]
    chosen = choose(kind, {"bust_dart": Given("armhole")}, body_scale(body), Origin())
    plain = make_garment(body, WOVEN, kind, chosen, name="top", role="shell")
    seams = [
        (one.draft, next(s for s in one.draft.seams if s.name == "front armhole"))
        for one in (plain, gathered("armhole", 0))
    ]
    before, after = ({n.name: n for n in seam.notches}["front"] for _, seam in seams)
    below = [walk(draft, seam).b_length - n.b for (draft, seam), n in zip(seams, (before, after), strict=True)]
    assert after.a == pytest.approx(before.a)
    assert below[1] == pytest.approx(below[0])


@pytest.mark.parametrize(("place", "edge"), [("neck", "neck"), ("armhole", "armhole")])
def test_the_plan_says_which_edge_is_gathered_and_still_eases_the_cap(place: str, edge: str) -> None:
    """A neck gathered to its facing was in the table, and in no step; an armhole's gathers were told as the cap's,
    whose own ease then was in none."""
    garment = gathered(place, 0)
    steps = order_of(costume_of(garment, WOVEN))
    said = [plan_sentence(one) for step in steps for one in step.say if one.key == "do.gather_on"]
    assert said == [f"It is the {edge} of the front that is drawn up here:"]
    assert "cap_ease" in keys(*steps)
