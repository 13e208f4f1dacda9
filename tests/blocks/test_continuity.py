"""One millimetre more of any measure moves no sewn seam by more than 6 mm (block demands, rule 7).

Edges that appear or vanish with a dart are exempt: only seams whose chains hold the same edges at
both steps are compared. The bodies are invented; `-m population` sweeps a hundred surveyed ones.
"""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from drafting.body import Body, wearer
from drafting.draft import Draft
from drafting.walk import walk
from tests.blocks.figures import FULL, full_bust, pair
from tests.bodies import ansur

MOST = 6.0
"""mm a sewn seam may move for 1 mm more of one measure (block demands, rule 7)."""

SWEPT = (
    "height", "bust_girth", "high_bust_girth", "waist_girth", "neck_base_girth", "shoulder_length",
    "shoulder_drop", "across_back_width", "across_front_width", "axilla_depth",
    "back_waist_length", "upper_arm_girth",
)  # fmt: skip

LEAST_TAKEN = {
    "height": 1655.0, "bust_girth": 905.0, "waist_girth": 750.0, "hip_girth": 985.0,
}  # fmt: skip
"""A body of which only the four needed measures were taken."""

BODIES = {
    "full bust": lambda: full_bust(1050.0),
    "flat chest": lambda: full_bust(982.0, upper_arm_girth=330.0),
    "only the four least measures": lambda: wearer(LEAST_TAKEN),
    "a waist that is the largest girth": lambda: wearer(
        {**FULL, "bust_girth": 1040.0, "waist_girth": 1100.0, "hip_girth": 1060.0}
    ),
    "long flat shoulders": lambda: wearer(
        {"height": 1720.0, "bust_girth": 880.0, "waist_girth": 720.0, "hip_girth": 930.0,
         "shoulder_length": 150.0, "shoulder_drop": 28.0, "across_back_width": 350.0}
    ),
}  # fmt: skip


def lengths(draft: Draft) -> dict[tuple[object, ...], float]:
    """Return every sewn chain's length by the names of its edges (darts legs left out)."""
    found: dict[tuple[object, ...], float] = {}
    for seam in draft.seams:
        if "dart" not in seam.name:
            walked = walk(draft, seam)
            found[seam.a, seam.b] = walked.a_sewn
            found[seam.b, seam.a] = walked.b_sewn
    return found


def jumps(body: Body, name: str, reach: int) -> Iterator[str]:
    """Yield what moves by more than `MOST` while `name` goes from -reach to +reach mm."""
    own = body[name]
    before: dict[tuple[object, ...], float] = {}
    for step in range(-reach, reach + 1):
        after = lengths(pair(body.changed(**{name: own + step})))
        for chain in before.keys() & after.keys():
            if abs(after[chain] - before[chain]) > MOST:
                yield (
                    f"{name} {own + step - 1:.0f} to {own + step:.0f}: {chain[0]} goes from "
                    f"{before[chain]:.1f} to {after[chain]:.1f} mm"
                )
        before = after


@pytest.mark.parametrize("title", list(BODIES))
def test_no_sewn_seam_jumps_while_any_measure_moves_by_20_mm_either_way(title: str) -> None:
    body = BODIES[title]()
    found = [jump for name in SWEPT for jump in jumps(body, name, 20)]
    assert found == []


@pytest.mark.population
def test_no_sewn_seam_jumps_on_a_hundred_surveyed_bodies() -> None:
    found = [
        f"{body.title}: {jump}" for body in ansur(100) for name in SWEPT for jump in jumps(body, name, 20)
    ]
    assert found == []
