"""An overskirt looped up: where tapes hang, how long they are, what is bought; plain geometry on cuts of any kind.

Geometry: cloth that lies `away` below the waist, hooked to a tape `long`, hangs `away - long` higher.
"""

from __future__ import annotations

import pytest
from shapely.geometry import LineString, Point

from drafting.body import Body
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.draft.by_role import edges_as
from drafting.draft.roles import EdgeRole
from drafting.ground.errors import DraftError
from drafting.making.rules import unsound
from drafting.making.stages.drawn import sewn_on_paper
from drafting.making.stages.picture import InkLine
from drafting.making.words import plan_sentence
from tests.alter.styles import ring
from tests.blocks.figures import chart_woman, errors
from tests.drawn_bodies import drawn, far
from tests.making.orders import KNIT, WOVEN, costume_of, order_of

CUTS: dict[str, dict[str, object]] = {
    "overskirt": {},
    "skirt": {"loop_places": "all round", "skirt_ends": "ankle", "hem_more": 200.0},
    "gored": {"loop_places": "sides", "skirt_ends": "ankle", "skirt_cut": "gored"},
    "circle": {"loop_places": "back", "skirt_ends": "mid-calf", "skirt_cut": "full circle"},
}


def looped(body: Body, cut: str, **more: object) -> MadeGarment:
    return draft_garment(body, WOVEN, "overskirt" if cut == "overskirt" else "skirt", {**CUTS[cut], **more})


@pytest.mark.parametrize("cut", CUTS)
def test_every_tape_draws_the_hem_up_by_what_was_asked(cut: str) -> None:
    for body in (chart_woman(), *drawn(3), *far()[::12]):
        made = looped(body, cut, loop_up=180.0)
        assert errors(made) == [], body.title
        tapes = [n for n in made.draft.notions if n.what == "tape"]
        found = {}
        for piece in made.draft.pieces:
            for mark in piece.placements:
                if mark.name.startswith(("tape ", "loop ")):
                    found[mark.name] = (piece, mark.path.start if mark.name[0] == "t" else mark.path.at(4.0))
        assert len(found) == 2 * len(tapes) > 0
        for number, tape in enumerate(tapes, 1):
            (piece, top), (same, loop) = found[f"tape {number}"], found[f"loop {number}"]
            assert piece.name == same.name == tape.piece
            free = (tape.cut_length or 0.0) - 2 * 25.0
            assert abs(loop - top) - free == pytest.approx(180.0, abs=0.5)
            assert ring(piece).contains(Point(loop.real, loop.imag))
            waist = [e.path.points(0.05) for e in edges_as(piece, EdgeRole.WAIST)]
            lines = [LineString([(p.real, p.imag) for p in points]) for points in waist]
            assert min(one.distance(Point(top.real, top.imag)) for one in lines) < 0.1
        hooks = sum(n.count for n in made.draft.notions if n.kind == "large hook with a thread loop")
        assert hooks == sum(tape.count for tape in tapes) == 2 * len(tapes)  # one on each hand


def test_a_tape_and_a_loop_are_drawn_alone_where_they_are_sewn_on() -> None:
    garment = looped(chart_woman(), "overskirt")
    costume = costume_of(garment, WOVEN)
    steps = [s for s in order_of(costume) if any(": waist seam" in n or ": free end" in n for n in s.notions)]
    shown = {
        ink.of.rsplit(" ", 1)[0]: step.notions
        for step, _, drawing in sewn_on_paper(costume, steps)
        for panel in (drawing.panels if drawing else ())
        for ink in panel.inks
        if isinstance(ink, InkLine) and ink.stroke == "sewing"
    }
    assert len(steps) == len(shown) == 4
    assert shown["tape 1"][0].endswith("mark tape 1")
    assert shown["loop 2"][0].startswith("hook and eye: free end of tape 2")


def test_the_tapes_are_sewn_in_order_and_a_loose_one_is_warned_of() -> None:
    """A tape is caught in the waist seam, so it is on before the band closes that, and before a lining is felled
    over it; so is its loop, whose mark the lining hides, and which is drawn out through it (plain: what is
    enclosed is put in first)."""
    garment = looped(chart_woman(), "overskirt", lining="whole")
    assert any("catches a foot" in finding.message for finding in garment.findings)
    for fabric in (WOVEN, KNIT):
        costume = costume_of(garment, fabric)
        steps = order_of(costume)
        assert unsound(costume, steps) == ()
        tape = next(i for i, s in enumerate(steps) if any(n.startswith("tape: ") for n in s.notions))
        band = next(i for i, s in enumerate(steps) if "waistband" in s.seams)
        felled = next(i for i, s in enumerate(steps) if s.verb == "fell")
        loop = next(
            i for i, s in enumerate(steps) if any(n.startswith("hook and eye: free end") for n in s.notions)
        )
        assert tape < band < loop < felled
        assert "draw the loop out through it" in " ".join(map(plan_sentence, steps[felled].say))


def test_what_cannot_be_looped_up_is_refused_in_words() -> None:
    with pytest.raises(DraftError, match="too short to be looped up"):
        looped(chart_woman(), "overskirt", loop_up=600.0)
    with pytest.raises(DraftError, match="in one from waist to hem"):
        looped(chart_woman(), "skirt", skirt_cut="tiered")
