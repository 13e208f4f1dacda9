"""Published bodice drafts, figure by figure: what holds for our construction, what is struck and why.

Each figure is measured on our drafted outlines and must hold to the tolerance it was published to, or is
struck here with the reason and with what ours is (`tests.published.holds`). BUNKA: Bunka-type blocks for
adult women, newer and older, from memory. GERMAN: proportions of German blocks, from memory.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from functools import cache

import pytest

from drafting.body import Body, wearer
from drafting.draft.draft import Draft
from drafting.draft.roles import EdgeRole
from tests.blocks.figures import chart_man, chart_woman, dart_mouth, girth, level, pair
from tests.published import Figure, Struck, figure, figures, holds


def bunka(bust: float = 830.0, waist: float = 640.0, back: float = 380.0, **more: float) -> Body:
    """Return a body of BUNKA: bust, waist and back length are the block's; the rest is invented."""
    invented = {"height": 1580.0, "high_bust_girth": bust - 40, "hip_girth": bust + 80}
    given = {"bust_girth": bust, "waist_girth": waist, "back_waist_length": back}
    return wearer({**invented, **given, **more}, figure="womens")


@cache
def newer() -> Draft:
    """Return our draft of bodice A with that block's eases."""
    return pair(bunka(), bust_ease=120.0, waist_ease=60.0)


@cache
def older() -> Draft:
    return pair(bunka(), bust_ease=100.0)


@cache
def at_96() -> Draft:
    return pair(bunka(960.0, 780.0, 390.0), bust_ease=120.0, waist_ease=60.0)


@cache
def bare(of: Callable[[], Body]) -> Draft:
    """Return a draft without ease at bust and across widths, as GERMAN counts."""
    return pair(of(), bust_ease=0.0, across_ease=0.0)


# ----------------------------------------------------------------------- measured on the outlines


def underarm(draft: Draft) -> float:
    return draft["back"].points["underarm"].imag


def front_neck(draft: Draft) -> complex:
    """Return how wide (real) and how deep (imaginary) the front neckline is."""
    neck = draft["front"]["neck"].path
    across = neck.start - neck.end
    return complex(abs(across.real), abs(across.imag))


def slope(draft: Draft, piece: str) -> float:
    run = draft[piece]["shoulder"].path
    return math.degrees(math.atan2(abs((run.end - run.start).imag), abs((run.end - run.start).real)))


def waist_total(draft: Draft) -> float:
    return (girth(draft, "bust") - girth(draft, "waist")) / 2


def side_shaping(draft: Draft) -> float:
    taken = 0.0
    for piece in ("front", "back"):
        sides = [e.path for e in draft[piece].edges if e.role is EdgeRole.SIDE]
        low = min((p for path in sides for p in (path.start, path.end)), key=lambda p: p.imag)
        taken += level(draft, piece, "bust") - abs(low.real)
    return taken


def arm_panel(draft: Draft) -> float:
    """Return what lies between the across lines at the bust line, front and back."""
    across = level(draft, "back", "across_back") + level(draft, "front", "across_front")
    return girth(draft, "bust") / 2 - across


ROWS = (
    "bunka-half-width",
    "bunka-bust-line",
    "bunka-back-width",
    "bunka-chest-width",
    "bunka-front-rise",
    "bunka-front-neck",
    "bunka-front-neck-depth",
    "bunka-back-neck",
    "bunka-shoulder-slopes",
    "bunka-dart",
    "bunka-front-shoulder",
    "bunka-back-dart",
    "bunka-back-shoulder",
    "bunka-suppression",
    "bunka-waist-darts",
    "bunka-96",
    "bunka-dart-96",
    "old-bunka-block",
    "old-bunka-widths",
    "german-three-panels",
    "german-three-panels-men",
    "aldrich-half-width",
)

MEASURED: dict[Figure, Callable[[], float]] = {
    ("bunka-half-width", ""): lambda: girth(newer(), "bust") / 2,
    ("bunka-bust-line", ""): lambda: -underarm(newer()),
    ("bunka-back-width", ""): lambda: level(newer(), "back", "across_back"),
    ("bunka-chest-width", ""): lambda: level(newer(), "front", "across_front"),
    ("bunka-front-rise", ""): lambda: newer()["front"]["neck"].path.start.imag - underarm(newer()),
    ("bunka-front-neck", ""): lambda: front_neck(newer()).real,
    ("bunka-front-neck-depth", ""): lambda: front_neck(newer()).imag,
    ("bunka-back-neck", "width"): lambda: abs(newer()["back"]["neck"].path.end.real),
    ("bunka-back-neck", "rise"): lambda: newer()["back"]["neck"].path.end.imag,
    ("bunka-shoulder-slopes", "front"): lambda: slope(newer(), "front"),
    ("bunka-shoulder-slopes", "back"): lambda: slope(newer(), "back"),
    ("bunka-dart", ""): lambda: newer().facts["bust_dart_degrees"],
    ("bunka-front-shoulder", ""): lambda: newer()["front"]["shoulder"].length,
    ("bunka-back-dart", ""): lambda: dart_mouth(newer(), "back", "shoulder_dart"),
    ("bunka-back-shoulder", ""): lambda: newer()["back"]["shoulder"].length,
    ("bunka-suppression", ""): lambda: waist_total(newer()),
    ("bunka-waist-darts", "a"): lambda: dart_mouth(newer(), "front", "waist_dart"),
    ("bunka-waist-darts", "c"): lambda: side_shaping(newer()),
    ("bunka-waist-darts", "e"): lambda: dart_mouth(newer(), "back", "waist_dart"),
    ("bunka-96", "width"): lambda: girth(at_96(), "bust") / 2,
    ("bunka-96", "bust_line"): lambda: -underarm(at_96()),
    ("bunka-96", "back_width"): lambda: level(at_96(), "back", "across_back"),
    ("bunka-96", "chest_width"): lambda: level(at_96(), "front", "across_front"),
    ("bunka-96", "neck"): lambda: front_neck(at_96()).real,
    ("bunka-96", "waist_total"): lambda: waist_total(at_96()),
    ("bunka-dart-96", ""): lambda: at_96().facts["bust_dart_degrees"],
    ("old-bunka-block", "width"): lambda: girth(older(), "bust") / 2,
    ("old-bunka-block", "bust_line"): lambda: -underarm(older()),
    ("old-bunka-widths", "back"): lambda: level(older(), "back", "across_back"),
    ("old-bunka-widths", "chest"): lambda: level(older(), "front", "across_front"),
    ("old-bunka-widths", "neck_back"): lambda: abs(older()["back"]["neck"].path.end.real),
    ("old-bunka-widths", "neck_front"): lambda: front_neck(older()).real,
    ("old-bunka-widths", "depth"): lambda: front_neck(older()).imag,
    ("german-three-panels", "back"): lambda: level(bare(chart_woman), "back", "across_back"),
    ("german-three-panels", "arm"): lambda: arm_panel(bare(chart_woman)),
    ("german-three-panels", "front"): lambda: level(bare(chart_woman), "front", "across_front"),
    ("german-three-panels", "sum"): lambda: girth(bare(chart_woman), "bust") / 2,
    ("german-three-panels-men", "back"): lambda: level(bare(chart_man), "back", "across_back"),
    ("german-three-panels-men", "arm"): lambda: arm_panel(bare(chart_man)),
    ("german-three-panels-men", "front"): lambda: level(bare(chart_man), "front", "across_front"),
    ("german-three-panels-men", "sum"): lambda: girth(bare(chart_man), "bust") / 2,
    ("aldrich-half-width", ""): lambda: girth(pair(chart_woman(), bust_ease=100.0), "bust") / 2,
}

_LEVEL = "ours lies 40 mm below the armpit that shoulder drop, back and arm lead one to expect, whatever the bust"
_WIDTH = "ours is the measured or estimated width of the body and an ease, not a share of the bust"
_NECK = "the neckline is solved for the neck base girth, here estimated; none enters the published rule"
_SLOPE = "ours follows the measured or estimated shoulder drop; the 4 degrees between the seams are asserted"
_DART = "ours follows bust less high bust, here 40 mm (invented); the published one the bust alone"
_ONE_DART = "ours is one dart below the bust point, one below the blade, and the side seam; the sum is asserted"
_PANEL = "the chart's own across width is measured, and drawn as measured; the sum is asserted"

STRUCK: dict[Figure, Struck] = {
    ("bunka-bust-line", ""): Struck(_LEVEL, 19.1),
    ("bunka-back-width", ""): Struck(_WIDTH, 18.03),
    ("bunka-chest-width", ""): Struck(f"{_WIDTH}; its share of the back's width is asserted", 16.49),
    ("bunka-front-rise", ""): Struck(
        "its bust line lies 15 mm lower (struck); how far the side neck lies over the nape is asserted", 23.32
    ),
    ("bunka-front-neck", ""): Struck(_NECK, 6.51),
    ("bunka-front-neck-depth", ""): Struck(f"{_NECK}; by how much it is deeper than wide is asserted", 7.52),
    ("bunka-back-neck", "width"): Struck(_NECK, 6.72),
    ("bunka-back-neck", "rise"): Struck("ours rises 0.32 of its width, the published one a third", 2.15),
    ("bunka-shoulder-slopes", "front"): Struck(_SLOPE, 22.73),
    ("bunka-shoulder-slopes", "back"): Struck(_SLOPE, 18.73),
    ("bunka-dart", ""): Struck(_DART, 13.84),
    ("bunka-front-shoulder", ""): Struck(
        "the shoulder is as long as the body's, here estimated from height", 13.35
    ),
    ("bunka-back-dart", ""): Struck("only a back longer than its front is given a dart; this one is not", 0.0),
    ("bunka-back-shoulder", ""): Struck(
        "the front's (struck above) and 4 mm of ease; front + dart = back is asserted on a rounded back", 13.75
    ),
    ("bunka-waist-darts", "a"): Struck(_ONE_DART, 3.43),
    ("bunka-waist-darts", "b"): Struck(_ONE_DART),
    ("bunka-waist-darts", "c"): Struck(_ONE_DART, 5.15),
    ("bunka-waist-darts", "d"): Struck(_ONE_DART),
    ("bunka-waist-darts", "e"): Struck(_ONE_DART, 4.0),
    ("bunka-waist-darts", "f"): Struck(_ONE_DART),
    ("bunka-96", "bust_line"): Struck(_LEVEL, 19.47),
    ("bunka-96", "back_width"): Struck(_WIDTH, 19.7),
    ("bunka-96", "chest_width"): Struck(_WIDTH, 18.12),
    ("bunka-96", "neck"): Struck(_NECK, 6.9),
    ("bunka-dart-96", ""): Struck(_DART, 11.96),
    ("old-bunka-block", "bust_line"): Struck(_LEVEL, 19.1),
    ("old-bunka-widths", "back"): Struck(_WIDTH, 18.03),
    ("old-bunka-widths", "chest"): Struck(_WIDTH, 16.6),
    ("old-bunka-widths", "neck_back"): Struck(_NECK, 6.72),
    ("old-bunka-widths", "neck_front"): Struck(_NECK, 6.51),
    ("old-bunka-widths", "depth"): Struck(_NECK, 7.52),
    ("german-three-panels", "back"): Struck(_PANEL, 17.2),
    ("german-three-panels", "arm"): Struck(f"what {_PANEL}", 10.6),
    ("german-three-panels", "front"): Struck(
        f"its front goes over the bust, ours between the arm folds; {_PANEL}", 16.2
    ),
    ("german-three-panels-men", "back"): Struck(_PANEL, 20.0),
    ("german-three-panels-men", "arm"): Struck(f"what {_PANEL}", 11.2),
    ("german-three-panels-men", "front"): Struck("ours is 0.94 of the measured back width (estimated)", 18.8),
}
"""Figures that do not hold here, why they need not, and what ours are, in the unit of their row."""


@pytest.mark.parametrize("one", figures(*ROWS), ids="-".join)
def test_a_published_figure_holds_on_our_outline_or_is_struck_with_ours(one: Figure) -> None:
    holds(one, MEASURED[one]() if one in MEASURED else None, STRUCK)


# ----------------------------------------------- what of a struck figure holds for any construction


def test_the_front_side_neck_lies_over_the_nape_as_in_the_published_block() -> None:
    # BUNKA: bust line to front neck level (24.9) less bust line to nape (20.617): 4.28 cm, each to 0.05.
    rise, down = figure(("bunka-front-rise", "")), figure(("bunka-bust-line", ""))
    drawn = newer()["front"]["neck"].path.start.imag - newer()["back"]["centre"].path.end.imag
    assert drawn == pytest.approx(rise[0] - down[0], abs=rise[1] + down[1])


def test_the_front_neckline_is_deeper_than_wide_by_what_two_blocks_span() -> None:
    # BUNKA, newer: 0.5 cm; older: 8.05 less 6.85, 1.2 cm.
    least = figure(("bunka-front-neck-depth", ""))[0] - figure(("bunka-front-neck", ""))[0]
    most = figure(("old-bunka-widths", "depth"))[0] - figure(("old-bunka-widths", "neck_front"))[0]
    for draft in (newer(), at_96(), pair(chart_woman())):
        neck = front_neck(draft)
        assert least <= neck.imag - neck.real <= most


def test_the_back_is_as_wide_as_in_one_of_two_blocks_or_between_and_so_is_the_fronts_share_of_it() -> None:
    # BUNKA, backs: 17.775 and 18.333; fronts of them: 16.575 (0.932) and 16.833 (0.918).
    back, front = level(newer(), "back", "across_back"), level(newer(), "front", "across_front")
    new, new_front = figure(("bunka-back-width", ""))[0], figure(("bunka-chest-width", ""))[0]
    old, old_front = figure(("old-bunka-widths", "back"))[0], figure(("old-bunka-widths", "chest"))[0]
    assert new <= back <= old
    assert old_front / old <= front / back <= new_front / new


def test_the_front_shoulder_is_steeper_by_as_much_as_in_the_published_block() -> None:
    # BUNKA: 22 and 18 degrees, each to 0.05.
    front, back = figure(("bunka-shoulder-slopes", "front")), figure(("bunka-shoulder-slopes", "back"))
    drawn = slope(newer(), "front") - slope(newer(), "back")
    assert drawn == pytest.approx(front[0] - back[0], abs=front[1] + back[1])


def test_a_back_shoulder_with_a_dart_is_the_front_shoulder_and_the_dart() -> None:
    # BUNKA: 14.0735 = 12.2798 + 1.79375; on a rounded back of that shoulder, without ease.
    rounded = bunka(front_waist_length=370.0, shoulder_length=figure(("bunka-front-shoulder", ""))[0])
    draft = pair(rounded, back_shaping="shoulder dart", shoulder_ease=0.0)
    inner, outer = draft["back"]["shoulder_inner"], draft["back"]["shoulder_outer"]
    mouth = abs(outer.path.start - inner.path.end)
    front = draft["front"]["shoulder"]
    assert mouth > 10
    whole = inner.length + mouth + outer.length
    assert whole == pytest.approx(front.length + mouth, abs=figure(("bunka-back-shoulder", ""))[1])
    assert front.length == pytest.approx(figure(("bunka-front-shoulder", ""))[0], abs=0.1)


def test_darts_and_side_seam_add_up_to_the_published_total() -> None:
    # BUNKA: 1.75 + 1.875 + 1.375 + 4.375 + 2.25 + 0.875 = 12.5 cm. Ours meets the side squarely, and so
    # follows a curve that is some 1 mm longer than its chord.
    theirs = sum(figure(one)[0] for one in figures("bunka-waist-darts"))
    assert theirs == pytest.approx(figure(("bunka-suppression", ""))[0], abs=0.01)
    darts = dart_mouth(newer(), "front", "waist_dart") + dart_mouth(newer(), "back", "waist_dart")
    assert darts + side_shaping(newer()) == pytest.approx(theirs, abs=1.5)
