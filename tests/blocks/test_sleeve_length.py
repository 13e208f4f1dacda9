"""Every sleeve is as long as the arm and what was asked, on its middle line from crown to hem and cuff."""

from __future__ import annotations

from typing import Any

import pytest

from drafting.body import Body
from tests.blocks.figures import errors, full_bust, made
from tests.blocks.sleeves import bow, chosen_value, draft_of, middle_line, odd_bodies
from tests.bodies import ansur, bdims
from tests.population import KNIT

EXACT = 1.0
"""mm: our own demand; a hem square to both seams is an arc, which took 6 to 20 mm."""

WAYS: dict[str, tuple[str, dict[str, Any]]] = {
    "shirt": ("shirt", {}),
    "plain sleeve": ("shirt", {"elbow_bend": 7.0, "hem_fullness": 1.5, "sleeve_length": 10.0}),
    "bent far": ("shirt", {"elbow_bend": 12.0, "bent_arm": 15.0}),
    "half sleeve": ("shirt", {"sleeve_share": 0.6}),
    "close top": ("close-top", {}),
    "puffed top": ("puffed-top", {}),
    "puffed to the wrist": ("puffed-top", {"sleeve_share": 1.0, "puff_width": 200.0}),
}


def too_long(body: Body, way: str) -> float:
    """Return by how much (mm) the sleeve with its cuff is longer than the arm and what was asked."""
    block, choices = WAYS[way]
    draft = draft_of(body, block, KNIT if "top" in block else None, **choices)

    def value(name: str) -> float:
        return chosen_value(body, block, name, **choices)

    asked = value("sleeve_share") * body["arm_length"] + value("sleeve_length") + value("bent_arm")
    asked += value("overhang") + (value("puff_height") if block == "puffed-top" else 0.0)
    below = draft["cuff"]["far"].length if "cuff" in draft else 0.0
    return middle_line(draft["sleeve"], "hem") + below - asked


@pytest.mark.parametrize("way", list(WAYS))
@pytest.mark.parametrize("who", [name for name in odd_bodies() if name != "doll"])
def test_a_sleeve_is_as_long_as_asked_on_its_middle_line(who: str, way: str) -> None:
    body = odd_bodies()[who]
    assert too_long(body, way) == pytest.approx(0.0, abs=EXACT)


@pytest.mark.parametrize("way", ["shirt", "plain sleeve", "puffed top"])
def test_the_sleeves_of_surveyed_people_are_as_long_as_asked(way: str) -> None:
    off = {body.title: too_long(body, way) for body in (*ansur(20), *bdims(10))}
    assert {title: by for title, by in off.items() if abs(by) > EXACT} == {}


@pytest.mark.parametrize("who", list(odd_bodies()))
def test_a_puffed_top_leaves_an_underarm_seam_on_every_body(who: str) -> None:
    # A fixed -400 mm left 23 to 205 mm and refused a child; 25 mm is a narrow hem or casing (common practice).
    body = odd_bodies()[who]
    draft = draft_of(body, "puffed-top", KNIT)
    seam = draft["sleeve"]["underarm_front"].length
    assert 0.06 * body["arm_length"] <= seam <= 0.35 * body["arm_length"]
    if body["height"] > 1000:
        assert seam >= 25


@pytest.mark.parametrize("way", ["shirt", "plain sleeve", "bent far", "half sleeve"])
@pytest.mark.parametrize("who", list(odd_bodies()))
def test_a_hem_is_straight_where_a_straight_cuff_is_sewn_to_it_and_square_where_none_is(
    who: str, way: str
) -> None:
    # Common practice: a curved hem cannot be laid on a straight cuff. It rose up to 22 mm in the middle.
    block, choices = WAYS[way]
    cuffed = draft_of(odd_bodies()[who], block, **choices)
    hem, cuff = cuffed["sleeve"]["hem"].path, cuffed["cuff"]["sleeve"].path
    assert bow(hem) < 0.01 > bow(cuff)
    if choices.get("hem_fullness", 1.0) == 1.0:
        assert hem.length == pytest.approx(cuff.length, abs=0.1)
    plain = draft_of(odd_bodies()[who], "fitted-top")["sleeve"]
    at = plain.index("hem")
    corners = [plain.corner(i % len(plain.edges)) for i in (at, at + 1)]
    assert corners == pytest.approx([90.0, 90.0], abs=1.0)


def test_a_sleeve_too_short_to_be_hemmed_is_drafted_longer_and_says_so() -> None:
    draft = draft_of(odd_bodies()["chart woman"], "puffed-top", KNIT, sleeve_share=0.2, overhang=0.0)
    assert 39.5 < draft["sleeve"]["underarm_front"].length < 50
    (said,) = [f for f in draft.findings if f.check == "sleeve length"]
    assert "instead of" in said.message


def test_a_cap_nearly_as_high_or_not_half_as_high_as_its_armhole_is_a_warning() -> None:
    # A cap of 94 mm in an armhole 96 mm deep let the arm rise by some 12 degrees, and passed as a note.
    thin = odd_bodies()["thin arm"]
    for ease, words in ((50.0, "hardly rise"), (300.0, "hangs in folds")):
        (said,) = [f for f in draft_of(thin, "shirt", arm_ease=ease).findings if f.check == "arm lift"]
        assert said.level == "warning", said.message
        assert words in said.message
    (said,) = [f for f in draft_of(odd_bodies()["chart man"], "shirt").findings if f.check == "arm lift"]
    assert said.level == "note"


@pytest.mark.parametrize(("arm", "share", "cuff"), [(280.0, 0.6, 200.0), (360.0, 0.3, 60.0), (360.0, 0.4, 90.0)])
def test_a_short_sleeve_over_a_cuff_starts_square_to_its_seams_and_keeps_its_slits_allowance(
    arm: float, share: float, cuff: float
) -> None:
    # The first had a peak of 5 degrees at the underarm, as the cap swung about what its seams asked for; the
    # slits of the others, 12 mm long, missed their allowance by 0.3 mm where a straight hem turned aslant.
    assert errors(made(full_bust(1000.0, upper_arm_girth=arm), sleeve_share=share, cuff_depth=cuff)) == []
