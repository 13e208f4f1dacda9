"""Collars and lapels, each against what a draft of the trade gives (`data/published_values.toml` with its source).

Figures of the tailors' drafts are in inches and from memory or common practice, as their rows say; a course's
double-breasted lapel is drawn by its own widths. What is asked here is the outline as drafted by default, measured
by complex numbers, on a man of chest 36 and on the chart woman.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from functools import cache

import pytest

from drafting.body import Body
from drafting.costume.garment import draft_garment
from drafting.draft.by_role import pieces_as
from drafting.draft.draft import Draft
from drafting.draft.piece import Piece
from drafting.draft.roles import PieceRole
from tests.blocks.figures import chart_woman
from tests.blocks.test_published_coats import man_of
from tests.published import IN_MM, figure, named, published, span_mm

INCH = 25.4
PEOPLE: dict[str, Callable[[], Body]] = {"chest 36": lambda: man_of(36.0), "chart woman": chart_woman}


@cache
def of(who: str, block: str, **choices: object) -> Draft:
    return draft_garment(PEOPLE[who](), None, block, choices).draft


def roll(front: Piece) -> tuple[complex, complex]:
    """Return the roll line's top and its direction downwards."""
    path = next(mark.path for mark in front.placements if mark.what == "roll line")
    return path.start, path.leave


def under_collar(draft: Draft) -> Piece:
    return next(p for p in pieces_as(draft, PieceRole.UNDER_COLLAR) if not p.material)


def stand_of(piece: Piece) -> float:
    """Return how high the roll line lies over the neck seam at the centre back."""
    (mark,) = [m.path for m in piece.placements if m.what == "roll line"]
    foot = piece["centre"].path.start
    return min(abs(end - foot) for end in (mark.start, mark.end))


COAT: dict[str, Callable[[Draft], float]] = {
    "stand": lambda d: stand_of(under_collar(d)),
    "fall": lambda d: under_collar(d)["centre"].length - stand_of(under_collar(d)),
    "past_neck": lambda d: abs(roll(d["front"])[0] - d["front"].points["side_neck"]),
    "step_collar": lambda d: under_collar(d)["front"].length,
    "step_lapel": lambda d: d["front"]["lapel_top"].length,
}


def holds(row: str, part: str, ours: float) -> None:
    theirs, tolerance = figure((row, part))
    assert abs(ours - theirs) <= tolerance, f"{part}: {ours:.1f} mm, the drafts' {theirs:.1f} +- {tolerance:.1f}"


@pytest.mark.parametrize("who", PEOPLE)
@pytest.mark.parametrize("part", list(named("coat-collar-figures")))
def test_stand_fall_crease_line_and_step_of_a_coat_are_those_of_the_tailors_drafts(who: str, part: str) -> None:
    holds("coat-collar-figures", part, COAT[part](of(who, "coat", lapel_style="step")))


@pytest.mark.parametrize("who", PEOPLE)
@pytest.mark.parametrize("style", ["step", "peaked", "shawl"])
def test_a_collar_is_swung_by_about_what_swing_and_spring_of_half_an_inch_make(who: str, style: str) -> None:
    """A closed lapel's collar goes on to the lapel's tip, round a longer way: no figure of it was found."""
    theirs, tolerance = figure(("coat-collar-swing", ""))
    ours = math.degrees(of(who, "coat", lapel_style=style).facts["collar_swing"])
    assert abs(ours - theirs) <= tolerance


@pytest.mark.parametrize("who", PEOPLE)
def test_a_deeper_fall_over_the_same_stand_wants_more_spring_and_a_higher_stand_less(who: str) -> None:
    # Plane geometry: the fall's edge lies (fall - stand) outside the neck seam, longer by that times the turn.
    def swing(stand: float, fall: float) -> float:
        return of(who, "coat", collar_stand=stand, collar_fall=fall).facts["collar_swing"]

    assert swing(30.0, 36.0) < swing(30.0, 42.0) < swing(30.0, 60.0)
    assert swing(38.0, 42.0) < swing(30.0, 42.0)


@pytest.mark.parametrize("who", PEOPLE)
@pytest.mark.parametrize("style", ["step", "peaked", "closed", "shawl"])
def test_the_roll_begins_at_the_highest_button_that_closes(who: str, style: str) -> None:
    low, high = span_mm("roll-begins")
    front = of(who, "coat", lapel_style=style)["front"]
    holes = [m.path.start.imag for m in front.placements if m.what == "buttonhole"]
    assert low - 1e-6 <= front.points["break"].imag - max(holes) <= high


@pytest.mark.parametrize("who", PEOPLE)
def test_a_double_breasted_lap_is_drawn_by_the_widths_of_a_courses_lapel(who: str) -> None:
    # LAPEL: graduated inches, an inch for a breast of 37.5; 3 wide at the chest line, 2.25 at the bottom.
    row = named("lapel-widths")
    graduated = IN_MM[published("lapel-widths").unit] * PEOPLE[who]()["bust_girth"] / (37.5 * INCH)
    low, high = row["bottom"] * graduated, row["chest_line"] * graduated
    front = of(who, "coat", breasted="double", front_overlap=low, overlap_above=high / low)["front"]
    assert front.points["break"].real == pytest.approx(-high, abs=0.05)
    assert front["edge"].path.start == pytest.approx(front.points["break"])
    spencer = of(who, "spencer", breasted="double", front_overlap=low, overlap_above=high / low)["front"]
    assert spencer["bottom"].path.start.real == pytest.approx(-low, abs=0.05)


SHIRT: dict[str, Callable[[Draft], float]] = {
    "stand": lambda d: d["collar-stand"]["centre"].length,
    "fall": lambda d: d["collar"]["centre"].length,
    "point": lambda d: d["collar"]["front"].length,
}


@pytest.mark.parametrize("who", PEOPLE)
@pytest.mark.parametrize("part", list(named("shirt-collar-figures")))
def test_a_shirt_collar_is_as_high_deep_and_long_as_shirt_makers_cut_it(who: str, part: str) -> None:
    draft = of(who, "shirt")
    ours = (
        2 * draft["collar-stand"]["top"].length - PEOPLE[who]()["neck_girth"]
        if part == "over_neck"
        else SHIRT[part](draft)
    )
    holds("shirt-collar-figures", part, ours)


@pytest.mark.parametrize("who", PEOPLE)
@pytest.mark.parametrize(
    ("block", "choices"),
    [
        ("shirt", {"collar": "stand"}),
        ("shirt", {"collar": "wing"}),
        ("coat", {"lapel_style": "none", "collar_stand": 42.0}),
    ],
    ids=["band", "wing", "coat stand"],
)
def test_a_stand_leans_to_the_neck_by_a_rise_of_the_trade(
    who: str, block: str, choices: dict[str, object]
) -> None:
    low, high = span_mm("stand-collar-rise")
    stand = of(who, block, **choices)["collar-stand"]
    necks = [edge.path for edge in stand.edges if "neck" in edge.name]
    (middle,) = [m.path.start for m in stand.placements if m.what == "centre"] or [necks[0].start]
    assert low <= middle.imag - necks[-1].end.imag <= high


@pytest.mark.parametrize("who", PEOPLE)
def test_a_flat_collar_is_lapped_by_what_the_trade_laps_and_stands_up_by_it(who: str) -> None:
    low, high = span_mm("flat-collar-lap")
    body = PEOPLE[who]()
    collar, laid = (
        of(who, "shirt", collar="flat", **choices)["collar"] for choices in ({}, {"collar_overlap": 0.0})
    )
    less = laid["outer"].length - collar["outer"].length
    lap = less / laid["centre"].length * body["shoulder_length"]  # the turn taken out, at the shoulder's tip
    assert low <= lap <= high


@pytest.mark.parametrize("who", PEOPLE)
@pytest.mark.parametrize("part", list(named("hood-figures")))
def test_a_hood_is_as_long_at_the_face_and_as_deep_as_hoods_are_cut(who: str, part: str) -> None:
    (hood,) = (p for p in of(who, "cape", cape_neck="hood").pieces if p.role is PieceRole.HOOD and not p.material)
    xs = [p.real for p in hood.outline.flattened(0.1)]
    holds("hood-figures", part, hood["face"].length if part == "face" else max(xs) - min(xs))


@pytest.mark.parametrize("who", PEOPLE)
def test_a_double_breasted_waistcoat_laps_as_the_trade_laps_it(who: str) -> None:
    low, high = span_mm("waistcoat-lap")
    edge = of(who, "waistcoat", breasted="double")["front"]["edge"].path
    above, below = sorted((edge.start, edge.end), key=lambda p: -p.imag)
    assert low <= -below.real <= -above.real <= high
