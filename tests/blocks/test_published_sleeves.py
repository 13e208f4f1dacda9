"""Published sleeve drafts, figure by figure: what holds for our construction, what is struck and why.

As in `test_published_bodices`. BUNKA: Bunka-type sleeves, older and newer, from memory.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from functools import cache

import pytest

from drafting.blocks.sleeve import Choices, sleeve
from drafting.body import wearer
from drafting.draft.draft import Draft
from drafting.draft.roles import EdgeRole
from tests.blocks.coats import coat, lamplighter
from tests.blocks.figures import FULL, chart_man, chart_woman, full_bust, girth, level, pair
from tests.blocks.sleeves import draft_of
from tests.blocks.test_sleeve import fixed_armholes
from tests.population import KNIT
from tests.published import Figure, Struck, figure, figures, holds, span_mm


@cache
def set_in(armhole: float) -> Draft:
    """Return a sleeve set into an armhole of this length, as long as BUNKA's of 52 cm."""
    front, back = fixed_armholes(armhole)
    given = {name: mm for name, mm in FULL.items() if name != "upper_arm_length"}
    arm = wearer({**given, "high_bust_girth": 980.0, "bust_girth": 1000.0, "arm_length": 520.0})
    return sleeve(arm, None, Choices(), front_armhole=front, back_armhole=back)


def shoulder_tips_over_the_underarm() -> float:
    draft = pair(full_bust(1000))
    tips = draft["front"]["shoulder"].path.start.imag, draft["back"]["shoulder"].path.end.imag
    return sum(tips) / 2 - draft["back"].points["underarm"].imag


def chord(draft: Draft, half: str) -> float:
    path = draft["sleeve"][half].path
    return abs(path.end - path.start)


def elbow_below_crown(draft: Draft) -> float:
    (crown,) = draft["sleeve"].points.values()
    elbow = next(v for v in draft["sleeve"].levels if v.name == "elbow")
    return crown.imag - elbow.paths[0].start.imag


ROWS = ("old-bunka-sleeve", "old-bunka-sleeve-width", "bunka-cap-height", "cap-heights")

MEASURED: dict[Figure, Callable[[], float]] = {
    ("old-bunka-sleeve", "cap"): lambda: set_in(420.0).facts["cap_height"],
    ("old-bunka-sleeve", "front"): lambda: chord(set_in(420.0), "cap_front"),
    ("old-bunka-sleeve", "back"): lambda: chord(set_in(420.0), "cap_back"),
    ("old-bunka-sleeve", "elbow"): lambda: elbow_below_crown(set_in(420.0)),
    ("old-bunka-sleeve-width", ""): lambda: level(set_in(420.0), "sleeve", "upper_arm"),
    # BUNKA's cap over its own mean of the shoulder points' heights, 18.6 cm: ours at the same mean.
    ("bunka-cap-height", ""): lambda: (
        186.0 * pair(full_bust(1000)).facts["cap_height"] / shoulder_tips_over_the_underarm()
    ),
    ("cap-heights", "fitted"): lambda: set_in(440.0).facts["cap_height"],
}

_CAP = "the cap is solved for the arm, the armhole and the cap ease; no share of the armhole is asked for"

STRUCK: dict[Figure, Struck] = {
    ("old-bunka-sleeve", "cap"): Struck(_CAP, 12.31),
    ("old-bunka-sleeve", "front"): Struck(_CAP, 21.0),
    ("old-bunka-sleeve", "back"): Struck(_CAP, 21.8),
    ("old-bunka-sleeve", "elbow"): Struck(
        "the elbow lies at the measured or estimated upper arm length, not at half the sleeve and 2.5 cm", 31.16
    ),
    ("old-bunka-sleeve-width", ""): Struck(
        "ours is the arm, 30, and its ease, 5 cm; its width by Pythagoras is asserted", 35.0
    ),
    ("bunka-cap-height", ""): Struck(_CAP, 14.89),
    ("cap-heights", "fitted"): Struck(_CAP, 13.55),
    ("cap-heights", "shirt_max"): Struck("no sleeve of ours is a flat one of so low a cap: the shirt's is set in"),
    ("cap-heights", "shirt_min"): Struck("no sleeve of ours is a flat one of so low a cap: the shirt's is set in"),
}
"""Figures that do not hold here, why they need not, and what ours are, in the unit of their row."""


@pytest.mark.parametrize("one", figures(*ROWS), ids="-".join)
def test_a_published_figure_holds_on_our_outline_or_is_struck_with_ours(one: Figure) -> None:
    holds(one, MEASURED[one]() if one in MEASURED else None, STRUCK)


def test_a_sleeve_is_as_wide_as_pythagoras_says_of_its_slopes_and_its_cap() -> None:
    # BUNKA's sleeve: sqrt(21.5^2 - 13^2) + sqrt(22^2 - 13^2) = 34.87; ours by its own slopes, to 0.1 mm.
    cap, width = figure(("old-bunka-sleeve", "cap"))[0], figure(("old-bunka-sleeve-width", ""))
    slopes = [figure(("old-bunka-sleeve", part))[0] for part in ("front", "back")]
    assert sum(math.sqrt(s**2 - cap**2) for s in slopes) == pytest.approx(width[0], abs=width[1])
    for armhole in (420.0, 440.0):
        draft = set_in(armhole)
        cap_front = draft["sleeve"]["cap_front"].path
        height = abs(cap_front.end.imag - cap_front.start.imag)
        ours = sum(math.sqrt(chord(draft, half) ** 2 - height**2) for half in ("cap_front", "cap_back"))
        assert level(draft, "sleeve", "upper_arm") == pytest.approx(ours, abs=width[1])


# --------------------------------------------------------------- eases that nobody asked for, as drafted


def knit_top() -> Draft:
    return draft_of(chart_woman(), "close-top", KNIT)


@pytest.mark.parametrize(
    ("row", "of"),
    [
        ("cap-ease-jacket", lambda: coat(lamplighter())),
        ("cap-ease-shirt", lambda: draft_of(chart_man(), "shirt")),
        ("cap-ease-shirt", lambda: draft_of(chart_woman(), "shirt")),
        ("cap-ease-knit", knit_top),
    ],
)
def test_the_cap_is_longer_than_its_armhole_by_the_published_ease(row: str, of: Callable[[], Draft]) -> None:
    # Tailored wool jacket 3.0 to 5.0 cm; shirt 0 to 1.5 (from memory); knit 0 to 1.0: along the outlines.
    shell = [edge for piece in of().pieces if not piece.material for edge in piece.edges]
    cap = math.fsum(e.length for e in shell if e.role in {EdgeRole.CAP, EdgeRole.CAP_PART})
    armhole = math.fsum(e.length for e in shell if e.role is EdgeRole.ARMHOLE)
    low, high = span_mm(row)
    assert low - 0.1 <= cap - armhole <= high + 0.1


def test_a_shirt_has_the_ease_of_a_fitted_one_at_least_and_a_classic_ones_is_struck() -> None:
    # University text, "Ease in clothing": fitted from 3.8, classic up to 7.6 cm.
    body = chart_man()
    ease = girth(draft_of(body, "shirt"), "bust") - body["bust_girth"]
    assert ease >= span_mm("ease-fitted-shirt")[0]
    struck = Struck("a costume shirt is worked in, so fuller; 76 mm can be asked for", 10.0)
    holds(("ease-classic-shirt", ""), ease, {("ease-classic-shirt", ""): struck})
