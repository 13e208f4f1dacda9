"""A body whose tape slipped, corrected by notes of the line: what they name comes out as on the true body.

The slips are those of `test_corrected_bodies`; each note names a girth or a length, which has to come out within
1 mm of the true body's own draft. A shoulder's drop is held against the tape itself: on a body with a long or a
flat shoulder its block shares the drop with the shoulder's length, and drafts up to 4 mm otherwise.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

import pytest

from drafting.body import Body
from drafting.checks.girths import finished_girth
from drafting.draft.draft import Draft
from drafting.draft.roles import EdgeRole, LevelKind
from drafting.fitting.applied import fitted
from drafting.fitting.lines.places import body_pieces, height
from drafting.fitting.lines.shoulder import shoulder_ends
from drafting.ground.errors import DraftError
from tests.drawn_bodies import drawn
from tests.fitting.lines import drafted_upto
from tests.fitting.test_followers import note

FEW, ALL = 2, 100

NEAR = 1.0
"""mm: how near what a note names has to come to the true body's own."""


@dataclass(frozen=True)
class Slip:
    """What the tape said too much, mm, of which measure; on which draft it is corrected; by which note."""

    measure: str
    more: float
    on: tuple[str, str]
    where: str
    verb: str
    named: Callable[[Draft], float]


def girth(level: str) -> Callable[[Draft], float]:
    return lambda draft: finished_girth(draft, level) or math.nan


def waist_depth(draft: Draft) -> float:
    return -(height(body_pieces(draft), LevelKind.WAIST) or math.nan)


def tip_drop(draft: Draft) -> float:
    """Return how far the tip lies below the neck, mean of back and front: so the tape has it."""
    drops = []
    for name in ("back", "front"):
        ends = shoulder_ends([draft[name]])
        assert ends is not None
        drops.append((ends[0] - ends[1]).imag)
    return math.fsum(drops) / 2


def crotch(draft: Draft) -> float:
    on = {EdgeRole.CROTCH, EdgeRole.FLY}
    return math.fsum(e.length for p in draft.pieces if not p.material for e in p.edges if e.role in on)


SLIPS = {
    "waist": Slip("waist_girth", -30.0, ("bodice", "bodice"), "waist", "let out", girth("waist")),
    "waist of trousers": Slip("waist_girth", -30.0, ("trousers", "trouser"), "waist", "let out", girth("waist")),
    "back": Slip("back_waist_length", 20.0, ("shirt", "bodice"), "waist", "raise", waist_depth),
    "shoulder": Slip("shoulder_drop", -15.0, ("shirt", "bodice"), "back.shoulder", "lower", tip_drop),
    "upper arm": Slip(
        "upper_arm_girth", -20.0, ("fitted-top", "sleeve"), "upper arm", "let out", girth("upper_arm")
    ),
    "crotch": Slip("total_crotch_length", -20.0, ("trousers", "trouser"), "front.crotch", "lengthen", crotch),
}


def out(slip: Slip, body: Body) -> float | None:
    """Return by how much the corrected draft misses what was named, mm; None where it cannot be had."""
    measures = {name: body[name] for name in (slip.measure, "back_crotch_length")}
    true = body.changed(**measures)
    wrong = body.changed(**{**measures, slip.measure: measures[slip.measure] + slip.more})
    try:
        wanted, before = (drafted_upto(*slip.on, who) for who in (true, wrong))
    except DraftError:
        return None
    found = fitted(before, [note(slip.where, slip.verb, abs(slip.more))])
    if not found.done:
        return None
    right = slip.named(before) - slip.more if slip.measure == "shoulder_drop" else slip.named(wanted)
    return slip.named(found.draft) - right


@pytest.mark.parametrize("name", SLIPS)
def test_what_a_note_of_the_line_names_comes_out_as_on_the_true_body(name: str) -> None:
    missed = [out(SLIPS[name], body) for body in (drawn(ALL)[n * 33] for n in range(FEW))]
    assert any(one is not None for one in missed)
    assert max(abs(one) for one in missed if one is not None) <= NEAR


@pytest.mark.population
@pytest.mark.parametrize("name", SLIPS)
def test_it_does_so_on_a_hundred_bodies(name: str) -> None:
    missed = [out(SLIPS[name], body) for body in drawn(ALL)]
    had = [abs(one) for one in missed if one is not None]
    assert len(had) >= 0.9 * ALL
    assert max(had) <= NEAR
