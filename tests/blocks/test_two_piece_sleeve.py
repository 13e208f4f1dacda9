"""The coat sleeve: its length, its straight cuff, its hind-arm seam at the back pitch, its elbow marks."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest

from drafting.body import Body, wearer
from drafting.costume.garment import draft_garment
from drafting.draft.draft import Draft
from drafting.draft.roles import EdgeRole
from drafting.draft.walk import walk
from drafting.geometry.area import is_simple
from tests.blocks.sleeves import bow, draft_of, middle_line, odd_bodies
from tests.bodies import ansur, bdims

PEOPLE = [name for name in odd_bodies() if name != "doll"]


def below_own_seam(draft: Draft) -> float:
    """Return how far (mm, along the armhole) the hind-arm seam begins under the back's own seam."""
    whole = draft["side-body"]["armhole_back"].length + draft["back"]["armhole"].length
    caps = draft["under-sleeve"]["under_cap_back"].length, draft["top-sleeve"]["top_cap_back"].length
    (seam,) = [s for s in draft.seams if s.name == "back armhole"]
    (notch,) = [n for n in seam.notches if n.name == "back"]
    share = (caps[0] - notch.a) / (sum(caps) - notch.a)  # the ease lies evenly above the notch
    at = notch.b + share * (whole - notch.b)
    return draft["side-body"]["armhole_back"].length - at


@pytest.mark.parametrize("who", PEOPLE)
def test_a_coat_sleeve_is_as_long_as_the_arm_straight_down_from_its_crown(who: str) -> None:
    body = odd_bodies()[who]
    for choices in ({}, {"sleeve_length": 12.0, "bent_arm": 15.0}, {"elbow_bend": 0.0}, {"elbow_bend": 12.0}):
        draft = draft_of(body, "tailcoat", **choices)
        asked = body["arm_length"] + choices.get("sleeve_length", 0.0) + choices.get("bent_arm", 0.0)
        assert middle_line(draft["top-sleeve"], "cuff") == pytest.approx(asked, abs=1.0), choices


@pytest.mark.parametrize("who", PEOPLE)
def test_along_the_middle_of_the_bent_arm_it_is_as_long_within_half_a_centimetre(who: str) -> None:
    body = odd_bodies()[who]
    top = draft_of(body, "tailcoat")["top-sleeve"]
    (elbow,) = [level.paths[0] for level in top.levels if level.name == "elbow"]
    cuff = top["cuff"].path
    way = [top.points["crown"], (elbow.start + elbow.end) / 2, (cuff.start + cuff.end) / 2]
    assert sum(abs(b - a) for a, b in pairwise(way)) == pytest.approx(body["arm_length"], abs=5.0)


def test_the_hind_arm_seam_begins_10_to_60_mm_from_the_backs_own_seam_on_every_body() -> None:
    # Our own demand: it wandered from 28 to 73 % of the back armhole.
    bodies = [odd_bodies()[name] for name in PEOPLE] + [*ansur(24), *bdims(10)]
    found = {body.title: below_own_seam(draft_of(body, "tailcoat")) for body in bodies}
    assert {title: by for title, by in found.items() if not 10 <= by <= 60} == {}


@pytest.mark.parametrize("who", PEOPLE)
def test_the_cuffs_are_straight_and_run_on_straight_over_both_seams(who: str) -> None:
    # It was bowed by up to 10 mm; joined corners are 180 within 2 degrees.
    draft = draft_of(odd_bodies()[who], "tailcoat", cuff_vent=False)
    for piece in ("top-sleeve", "under-sleeve"):
        assert bow(draft[piece]["cuff"].path) < 1e-6
    for name in ("forearm", "hind arm"):
        (seam,) = [s for s in draft.seams if s.name == name]
        walked = walk(draft, seam)
        assert walked.difference == pytest.approx(0.0, abs=0.1)
        assert [a for a in walked.angles if a is not None] == pytest.approx([180, 180], abs=2)


@pytest.mark.parametrize("who", PEOPLE)
def test_both_seams_are_notched_where_the_elbow_is(who: str) -> None:
    body = odd_bodies()[who]
    draft = draft_of(body, "tailcoat")
    crown = draft["top-sleeve"].points["crown"].imag
    (level,) = [v for v in draft["top-sleeve"].levels if v.name == "elbow"]
    at_elbow = level.paths[0].start.imag
    depth = crown - at_elbow
    assert depth == pytest.approx(body["upper_arm_length"], abs=0.12 * body["arm_length"])
    for edge in ("fore", "hind"):
        (notch,) = [n for n in draft["top-sleeve"][edge].notches if n.name == "elbow"]
        place = draft["top-sleeve"][edge].path.at(notch.at)
        assert place.imag == pytest.approx(at_elbow, abs=0.5)
        (facing,) = [n for n in draft["under-sleeve"][edge].notches if n.name == "elbow"]
        assert facing.count == notch.count


def test_a_one_piece_sleeve_is_notched_at_the_elbow_and_a_half_sleeve_is_not() -> None:
    for bend in (0.0, 7.0):
        sleeve = draft_of(odd_bodies()["chart woman"], "shirt", elbow_bend=bend)["sleeve"]
        marked = [e.name for e in sleeve.edges for n in e.notches if n.name == "elbow"]
        assert len(marked) == 2, marked
        (level,) = [v for v in sleeve.levels if v.name == "elbow"]
        (notch,) = [n for n in sleeve["underarm_front"].notches if n.name == "elbow"]
        place = sleeve["underarm_front"].path.at(notch.at)
        ends = (level.paths[0].start, level.paths[0].end)
        assert min(abs(place - end) for end in ends) < 1.5
    short = draft_of(odd_bodies()["chart woman"], "shirt", sleeve_share=0.4)["sleeve"]
    assert not [n for e in short.edges for n in e.notches if n.name == "elbow"]


MOST = 2.3
"""mm that 1 mm more of one measure may move a seam of the sleeve (our own demand)."""


def seams_of(body: Body) -> dict[str, float]:
    draft = draft_of(body, "tailcoat")
    pieces = (draft["top-sleeve"], draft["under-sleeve"])
    return {f"{p.name} {e.name}": e.length for p in pieces for e in p.edges}


@pytest.mark.parametrize(
    "measure", ["bust_girth", "upper_arm_girth", "arm_length", "across_back_width", "wrist_girth"]
)
def test_a_millimetre_more_moves_no_seam_of_the_sleeve_far(measure: str) -> None:
    # The second's armpit is given, as nobody took it: with one 2 to 10 mm higher the front cap moves by 2.46.
    for body in (odd_bodies()["chart man"], ansur(24)[7].changed(axilla_depth=199.6)):
        before = seams_of(body)
        for step in range(1, 13):
            after = seams_of(body.changed(**{measure: body[measure] + step}))
            moved = {
                name: after[name] - before[name] for name in before if not math.isclose(after[name], before[name])
            }
            assert {name: by for name, by in moved.items() if abs(by) > MOST} == {}
            before = after


def test_an_under_sleeve_never_lies_over_its_own_cap() -> None:
    # Invented, all at the ends of their ranges: the back cap rose upright below the pitch, and bent back.
    body = wearer(
        {
            "height": 1488.142,
            "neck_girth": 306.854,
            "shoulder_drop": 31.687,
            "bust_girth": 1430.428,
            "waist_girth": 991.190,
            "hip_girth": 1312.762,
            "axilla_depth": 215.644,
            "back_waist_length": 422.495,
            "upper_arm_girth": 326.968,
            "shoulder_length": 125.636,
            "across_back_low_width": 449.961,
            "bust_point_depth": 341.587,
        }
    )
    choices = {"neck_ease": -11.144, "across_ease": 104.373, "armhole_drop": 62.557, "arm_ease": 33.48}
    draft = draft_of(body, "tailcoat", shoulder_ease=5.306, bent_arm=5.85, cutaway=0.224, **choices)
    cap, seam = draft["under-sleeve"]["under_cap_back"].path, draft["under-sleeve"]["hind"].path
    assert min(p.real for p in cap.evenly(200)) >= min(cap.start.real, cap.end.real, seam.start.real) - 0.01
    assert is_simple(draft["under-sleeve"].outline)
    assert "back pitch" in {f.check for f in draft.findings}


@pytest.mark.parametrize("who", PEOPLE)
def test_a_sleeve_that_ends_near_the_elbow_has_no_vent_as_wide_as_it_is_long(who: str) -> None:
    """Shortened by 14 cm, its vent was 2 cm long under a lap of 3.6 cm: no line could be cut round it."""
    body = odd_bodies()[who]
    told = []
    for shorter in (0.0, 0.1, 0.2, 0.25, 0.3):
        made = draft_garment(body, None, "tailcoat", {"sleeve_length": -shorter * body["arm_length"]})
        vents = [edge for edge in made.draft["top-sleeve"].edges if edge.role is EdgeRole.VENT]
        assert all(edge.length > (edge.allowance or 0.0) for edge in vents)
        assert [f.message for f in made.findings if f.level == "error" and "vent" in f.message] == []
        told.append(any(f.check == "cuff vent" for f in made.findings))
        assert told[-1] == (not vents)
    assert not told[0]
    assert told[-1]
