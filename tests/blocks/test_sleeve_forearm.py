"""A sleeve below its cap goes over the forearm: measured on the drawn piece with a geometry library (shapely)."""

from __future__ import annotations

from dataclasses import replace

import pytest
from shapely.geometry import LineString, Polygon

from drafting.body import Body, wearer
from drafting.costume.garment import draft_garment
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole
from drafting.geometry import Path
from tests.blocks.figures import chart_woman
from tests.blocks.sleeves import bow, draft_of
from tests.bodies import ansur, bdims
from tests.making.orders import KNIT

LEAST = 20.0
"""mm of ease round the forearm of an adult's woven sleeve (ours)."""


def width_at(sleeve: Piece, down: float) -> float:
    """Return how wide the piece is so many mm below its crown."""
    points = [e.path.at(e.path.length * i / 60) for e in sleeve.edges for i in range(60)]
    y = sleeve.points["crown"].imag - down
    return float(
        Polygon([(p.real, p.imag) for p in points]).intersection(LineString([(-2e3, y), (2e3, y)])).length
    )


def eases(body: Body, block: str, **choices: float) -> tuple[float, float]:
    """Return the ease (mm) at the elbow and where the forearm is fullest, 26 % of the way to the wrist."""
    sleeve = draft_of(body, block, **choices)["sleeve"]
    elbow, wrist = body["upper_arm_length"], body["arm_length"]
    full = elbow + 0.26 * (wrist - elbow)
    return width_at(sleeve, elbow) - body["elbow_girth"], width_at(sleeve, full) - body["forearm_girth"]


@pytest.mark.parametrize("block", ["shirt", "fitted-top"])
def test_no_sleeve_of_measured_people_is_narrower_than_their_forearm(block: str) -> None:
    # The shirt's sleeve was 243 mm wide where the chart woman's forearm is 267 round.
    people = (chart_woman(), *ansur(24), *bdims(8))
    found = {body.title: eases(body, block) for body in people}
    assert {title: ease for title, (_, ease) in found.items() if ease < LEAST - 0.5} == {}
    assert {title: ease for title, (ease, _) in found.items() if ease < LEAST / 2} == {}


@pytest.mark.parametrize("bend", [0.0, 7.0, 12.0])
def test_a_sleeve_bowed_out_for_the_forearm_has_equal_seams_and_a_true_hem(bend: float) -> None:
    draft = draft_of(chart_woman(), "shirt", elbow_bend=bend)
    sleeve, cuff = draft["sleeve"], draft["cuff"]
    assert sleeve["hem"].path.length == pytest.approx(cuff["sleeve"].path.length, abs=0.1)
    assert bow(sleeve["hem"].path) < 0.01
    lengths = {
        half: sum(e.length for e in sleeve.edges if str(e.half) == half and e.name[:3] in ("und", "sli"))
        for half in ("front", "back")
    }
    assert lengths["front"] == pytest.approx(lengths["back"], abs=1e-3)
    for edge in sleeve.edges:
        for one, two in zip(edge.path.segments, edge.path.segments[1:], strict=False):
            assert abs(Path((one,)).arrive / Path((two,)).leave - 1) < 1e-6, f"{edge.name} has a corner"


def test_an_uncuffed_sleeve_bowed_out_is_square_at_its_hem_and_as_wide_there_as_asked() -> None:
    body = chart_woman()
    sleeve = draft_of(body, "fitted-top", wrist_ease=20.0)["sleeve"]
    at = sleeve.index("hem")
    assert [sleeve.corner(i % len(sleeve.edges)) for i in (at, at + 1)] == pytest.approx([90.0, 90.0], abs=1.0)
    assert sleeve["hem"].length == pytest.approx(body["wrist_girth"] + 20.0, abs=0.5)


def test_a_sleeve_as_close_as_asked_is_told_where_the_forearm_is_thicker() -> None:
    measured = {"height": 1700.0, "bust_girth": 900.0, "waist_girth": 720.0, "hip_girth": 970.0}
    body = wearer({**measured, "upper_arm_girth": 262.0, "forearm_girth": 290.0})
    (said,) = [f for f in draft_of(body, "shirt", arm_ease=20.0).findings if f.check == "forearm"]
    assert said.level == "warning"
    assert "more arm_ease" in said.message
    assert [f for f in draft_of(body, "shirt", arm_ease=50.0).findings if f.check == "forearm"] == []


@pytest.mark.parametrize(("gives", "slit"), [(0.6, False), (0.5, False), (0.1, True)])
def test_a_close_sleeve_lets_the_hand_through_by_its_stretch_where_it_can(gives: float, slit: bool) -> None:
    """A hem some mm too narrow for the hand was slit 90 mm up a dancer's arm (common practice: none is slit)."""
    body = chart_woman(hand_girth=190.0, wrist_girth=155.0)
    jersey = replace(KNIT, stretch_along=0.2, stretch_across=gives)
    sleeve = draft_garment(body, jersey, "close-top", {}).draft["sleeve"]
    hem = next(edge for edge in sleeve.edges if edge.role is EdgeRole.HEM)
    assert any(edge.role is EdgeRole.SLIT for edge in sleeve.edges) is slit
    assert hem.length <= 155.0 + 0.5  # never looser than the wrist
    if not slit:
        assert hem.length * (1 + 0.6 * gives) >= 190.0  # `stretch.PULL`: what is used for the moment


def test_a_close_sleeve_of_stretch_cloth_goes_over_a_forearm_thicker_than_the_upper_arm() -> None:
    """A child's close sleeve in a jersey that gives 60 % was said not to go over a forearm 4 mm thicker."""
    measured = {"height": 1160.0, "bust_girth": 595.0, "waist_girth": 550.0, "hip_girth": 620.0}
    for forearm, warned in ((184.0, False), (300.0, True)):
        body = wearer({**measured, "upper_arm_girth": 180.0, "forearm_girth": forearm})
        draft = draft_garment(body, KNIT, "close-top").draft
        said = [f for f in draft.findings if f.check == "forearm"]
        # Common practice: what is pulled on in passing may use 60 % of the cloth's stretch.
        assert bool(said) is warned
        assert said == [] or 0 < said[0].value * (1 + 0.6 * KNIT.greatest_stretch) < forearm
        assert said == [] or f"forearm {forearm:.0f} mm round" in said[0].said(
            "mm"
        )  # as the tape has it, not reduced
