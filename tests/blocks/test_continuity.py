"""One millimetre more of any measure moves no sewn seam by more than 6 mm (our own bound).

Edges that appear or vanish with a dart are exempt: only seams whose chains hold the same edges at
both steps are compared. The bodies are invented, drawn from the spread of ANSUR II, or lie
at its ends; `-m population` sweeps two hundred surveyed ones.
"""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from drafting.body import Body, wearer
from drafting.draft.draft import Draft
from drafting.draft.walk import walk
from tests.blocks.figures import FULL, full_bust, pair
from tests.bodies import ansur
from tests.drawn_bodies import drawn, far

MOST = 6.0
"""mm a sewn seam may move for 1 mm more of one measure (our own bound)."""

SWEPT = (
    "height",
    "bust_girth",
    "high_bust_girth",
    "waist_girth",
    "neck_base_girth",
    "shoulder_length",
    "shoulder_drop",
    "across_back_width",
    "across_front_width",
    "axilla_depth",
    "back_waist_length",
    "upper_arm_girth",
)

LEAST_TAKEN = {"height": 1655.0, "bust_girth": 905.0, "waist_girth": 750.0, "hip_girth": 985.0}
"""A body of which only the four needed measures were taken."""

BODIES = {
    "full bust": lambda: full_bust(1050.0),
    "flat chest": lambda: full_bust(982.0, upper_arm_girth=330.0),
    "only the four least measures": lambda: wearer(LEAST_TAKEN),
    "a waist that is the largest girth": lambda: wearer(
        {**FULL, "bust_girth": 1040.0, "waist_girth": 1100.0, "hip_girth": 1060.0}
    ),
    "long flat shoulders": lambda: wearer(
        {
            "height": 1720.0,
            "bust_girth": 880.0,
            "waist_girth": 720.0,
            "hip_girth": 930.0,
            "shoulder_length": 150.0,
            "shoulder_drop": 28.0,
            "across_back_width": 350.0,
        }
    ),
}


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
    found = [jump for name in SWEPT for jump in coarse_jumps(body, name)]
    assert found == []


@pytest.mark.population
@pytest.mark.timeout(0)
@pytest.mark.parametrize("title", list(BODIES))
def test_nor_does_any_while_each_of_those_millimetres_is_drafted(title: str) -> None:
    body = BODIES[title]()
    found = [jump for name in SWEPT for jump in jumps(body, name, 20)]
    assert found == []


Lengths = dict[tuple[object, ...], float]


def coarse_jumps(body: Body, name: str, reach: int = 20, step: int = 5) -> Iterator[str]:
    """Yield the jumps of `jumps`, looking at each millimetre only where something seems to jump.

    A seam that jumps moves over one coarse step by much more, or less, than over the steps beside
    it; a chain that comes or goes makes its step be looked at, too. A measure is not swept below
    nothing, as a shoulder may drop by less than `reach`.
    """
    own = body[name]
    stops = [stop for stop in range(-reach, reach + 1, step) if own + stop > 0]
    drafted = [lengths(pair(body.changed(**{name: own + stop}))) for stop in stops]
    for i in range(len(stops) - 1):
        if suspicious(drafted, i):
            middle = body.changed(**{name: own + stops[i]})
            yield from _between(middle, name, drafted[i], step)


def suspicious(drafted: list[Lengths], i: int) -> bool:
    """Return whether any chain moves from stop `i` to the next by 3 mm unlike the steps beside it."""
    now, then = drafted[i], drafted[i + 1]
    if now.keys() != then.keys():
        return True
    beside = [j for j in (i - 1, i + 1) if 0 <= j < len(drafted) - 1]
    for chain in now:
        moves = [
            drafted[j + 1][chain] - drafted[j][chain]
            for j in beside
            if chain in drafted[j] and chain in drafted[j + 1]
        ]
        if not moves or abs(then[chain] - now[chain] - sum(moves) / len(moves)) > MOST / 2:
            return True
    return False


def _between(body: Body, name: str, before: Lengths, step: int) -> Iterator[str]:
    own = body[name]
    for more in range(1, step + 1):
        after = lengths(pair(body.changed(**{name: own + more})))
        for chain in before.keys() & after.keys():
            if abs(after[chain] - before[chain]) > MOST:
                yield (
                    f"{name} {own + more - 1:.0f} to {own + more:.0f}: {chain[0]} goes from "
                    f"{before[chain]:.1f} to {after[chain]:.1f} mm"
                )
        before = after


def test_a_jump_between_two_coarse_stops_is_looked_at() -> None:
    # 2 mm a step, and 7 mm more somewhere in the third: less than that is no jump.
    chain = ("side",)
    steady = [{chain: 400.0 + 2 * i} for i in range(6)]
    broken = [{chain: 400.0 + 2 * i + (7 if i > 2 else 0)} for i in range(6)]
    assert [suspicious(steady, i) for i in range(5)] == [False] * 5
    assert suspicious(broken, 2)
    assert suspicious([*steady[:3], {("other",): 1.0}], 2)


SWEPT_BODIES, BY_HAND = 8, 20
EVERYONE = 200


@pytest.mark.parametrize("which", range(SWEPT_BODIES))
def test_no_sewn_seam_jumps_on_drawn_and_far_bodies(which: int) -> None:
    body = (*drawn(SWEPT_BODIES - 4), *far()[::10])[which]
    found = [f"{body.title}: {jump}" for name in SWEPT for jump in coarse_jumps(body, name)]
    assert found == []


@pytest.mark.population
@pytest.mark.parametrize("which", range(BY_HAND))
def test_nor_does_any_on_twenty_of_them(which: int) -> None:
    body = (*drawn(BY_HAND - 8), *far()[::5])[which]
    found = [f"{body.title}: {jump}" for name in SWEPT for jump in coarse_jumps(body, name)]
    assert found == []


@pytest.mark.population
@pytest.mark.timeout(0)
@pytest.mark.parametrize("first", range(0, EVERYONE, 10))
def test_no_sewn_seam_jumps_on_many_surveyed_bodies(first: int) -> None:
    found = [
        f"{body.title}: {jump}"
        for body in ansur(EVERYONE)[first : first + 10]
        for name in SWEPT
        for jump in coarse_jumps(body, name)
    ]
    assert found == []
