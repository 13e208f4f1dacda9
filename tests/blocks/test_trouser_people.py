"""People in trousers: nobody refused, no error found, no jump, and a draft in no time.

Bodies: 507 measured ones of bdims (Heinz et al. 2003), 260 drawn from the spread of ANSUR II and 40
from its ends (tests/drawn_bodies.py), every run, each in one of two styles; all 3,541 measured ones in every
style by `-m population`. One body in forty is finished too, cut lines and all.
"""

from __future__ import annotations

import contextlib
from collections.abc import Sequence
from dataclasses import replace
from functools import partial

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from drafting.blocks.trouser import Choices, trouser
from drafting.body import Body, wearer
from drafting.checks import check_draft, check_pattern
from drafting.draft.draft import Draft
from drafting.finish import finish
from drafting.ground.errors import DraftError
from drafting.ground.scale import body_scale
from tests.blocks.trousers import LEGS, STYLES, draft, errors, legs
from tests.bodies import ansur, bdims
from tests.drawn_bodies import drawn, far
from tests.pace import paced

JUMP = 6.0
"""mm that a sewn length may move for 1 mm more of a measure (our own bound)."""

MEASURES = (
    "waist_girth",
    "hip_girth",
    "body_rise",
    "waist_to_hip",
    "inside_leg_length",
    "thigh_girth",
    "knee_girth",
    "calf_girth",
    "ankle_girth",
    "heel_girth",
    "knee_height",
    "total_crotch_length",
    "back_crotch_length",
)


def troubles(bodies: Sequence[Body], style: str, finished: int = 40) -> list[str]:
    """Return what went wrong with these bodies: refusals and error findings."""
    choices, fabric = STYLES[style]
    found = []
    for i, body in enumerate(bodies):
        try:
            made = draft(body, fabric, **choices)
        except DraftError as error:
            found.append(f"{body.title}: refused: {error}")
            continue
        said = [f.message for f in check_draft(made, body) if f.level == "error"]
        if i % finished == 0:
            pattern = finish(made, "trouser", "shell")
            said += [f.message for f in check_pattern(pattern) if f.level == "error"]
        found += [f"{body.title}: {message}" for message in said]
    return found


@pytest.mark.parametrize(("style", "first"), [("woven straight", 0), ("stretch tapered", 1)])
@pytest.mark.parametrize("source", ["bdims", "drawn"])
def test_nobody_is_refused_and_no_trouser_has_an_error(source: str, style: str, first: int) -> None:
    people = bdims() if source == "bdims" else (*drawn(260), *far())
    assert troubles(people[first::2], style) == []


@pytest.mark.parametrize("style", [name for name in STYLES if name != "woven straight"])
def test_the_other_styles_fit_a_few_of_them_too(style: str) -> None:
    assert troubles([*drawn(16), *far()[::3]], style) == []


def test_seated_wearers_are_drafted_too() -> None:
    # No figures of seated people are known to us: standing ones are drafted for sitting.
    seated = [replace(body, posture="seated") for body in (*drawn(35), *far())]
    assert troubles(seated, "woven straight") == []


@pytest.mark.population
@pytest.mark.timeout(0)
@pytest.mark.parametrize("style", list(STYLES))
def test_every_measured_adult_has_a_trouser_in_every_style(style: str) -> None:
    assert troubles([*ansur(), *bdims()], style, 200) == []


def test_a_trouser_takes_little_more_than_a_fixed_piece_of_work() -> None:
    # 15 ms where that takes 10.5.
    assert paced(*(partial(trouser, body, None, Choices()) for body in drawn(50))) < 1.43


def lengths(made: Draft) -> dict[tuple[str, str], float]:
    """Return what is sewn, by piece and first word of the edge: darts and slits are left out."""
    found: dict[tuple[str, str], float] = {}
    for piece in made.pieces:
        for edge in piece.edges:
            if edge.kind.value != "dart":
                word = edge.name.split("_")[0]
                key = piece.name, {"fly": "crotch", "slit": "side"}.get(word, word)
                found[key] = found.get(key, 0.0) + edge.length
    return found


@pytest.mark.parametrize("style", ["woven straight", "stretch tapered"])
@pytest.mark.parametrize("seated", [False, True])
def test_a_millimetre_more_of_any_measure_moves_no_seam_by_much(style: str, seated: bool) -> None:
    assert jumps_of((*drawn(1), *far()[::20]), (0.88, 1.0, 1.119), style, seated) == []


@pytest.mark.population
@pytest.mark.parametrize("style", ["woven straight", "stretch tapered"])
@pytest.mark.parametrize("seated", [False, True])
def test_nor_does_it_on_more_bodies_at_more_places(style: str, seated: bool) -> None:
    assert jumps_of((*drawn(2), *far()[::15]), (0.88, 0.95, 1.0, 1.06, 1.119), style, seated) == []


def jumps_of(bodies: Sequence[Body], shares: Sequence[float], style: str, seated: bool) -> list[str]:
    """Return what moves by more than `JUMP` at these shares of each measure."""
    choices, fabric = STYLES[style]
    jumps = []
    for one in bodies:
        body = one.changed(**{name: one[name] for name in MEASURES})
        body = replace(body, posture="seated") if seated else body
        for name in MEASURES:
            for share in shares:
                value = share * body[name]
                before = lengths(draft(body.changed(**{name: value}), fabric, **choices))
                after = lengths(draft(body.changed(**{name: value + 1}), fabric, **choices))
                moved = max(abs(after[key] - before[key]) for key in before)
                if moved > JUMP:
                    jumps.append(f"{body.title} {name} {value:.0f}: {moved:.1f} mm")
    return jumps


def shares(spread: float) -> st.SearchStrategy[dict[str, float]]:
    """The worked body's measures, each by itself up to `spread` larger or smaller."""
    return st.fixed_dictionaries({name: st.floats(1 - spread, 1 + spread) for name in (*LEGS, *MEASURES)})


def figure(factors: dict[str, float], size: float) -> Body:
    body = legs()
    return wearer({name: body[name] * factor * size for name, factor in factors.items()})


SLOW = [HealthCheck.too_slow]


@given(shares(0.04), st.floats(0.25, 1.4), st.sampled_from(list(STYLES)))
@settings(max_examples=60, deadline=None, derandomize=True, suppress_health_check=SLOW)
def test_figures_of_any_size_near_the_worked_one_are_drafted_without_an_error(
    factors: dict[str, float], size: float, style: str
) -> None:
    body = figure(factors, size)
    choices, fabric = STYLES[style]
    scale = body_scale(body)
    eases = {
        name: getattr(Choices(), name) * scale
        for name in ("waist_ease", "hip_ease", "thigh_ease", "knee_ease", "crotch_ease")
    }
    hem = {"hem_width": choices["hem_width"] * size} if "hem_width" in choices else {}
    assert errors(body, draft(body, fabric, **{**eases, **choices, **hem})) == []


@given(shares(0.35), st.floats(0.15, 2.0), st.sampled_from(list(STYLES)), st.booleans())
@settings(max_examples=150, deadline=None, derandomize=True, suppress_health_check=SLOW)
def test_hostile_figures_are_drafted_or_refused_in_words(
    factors: dict[str, float], size: float, style: str, seated: bool
) -> None:
    choices, fabric = STYLES[style]
    with contextlib.suppress(DraftError):  # any other exception fails the test
        body = figure(factors, size)
        made = draft(replace(body, posture="seated") if seated else body, fabric, **choices)
        check_draft(made, body)
