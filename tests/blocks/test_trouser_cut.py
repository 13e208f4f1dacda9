"""Trousers that a cutter would cut, on people: hip, fly, front crotch, notches, outlines, least ease.

Bodies: ANSUR II and `bdims` (tests/bodies.py), and some invented ones of special build. The hip is
measured by shapely on the outline alone. A sample every run, everybody with `-m population`.
"""

from __future__ import annotations

import itertools
import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

import pytest
import shapely

from drafting.body import Body, wearer
from drafting.checks import check_draft
from drafting.checks.girths import finished_girth
from drafting.costume.garment import draft_garment
from drafting.draft.draft import Draft
from drafting.draft.piece import EdgeKind, Piece
from drafting.fabric import Fabric
from drafting.geometry import line
from drafting.geometry.area import difference, outside
from drafting.ground.errors import DraftError
from drafting.ground.lengths import in_unit
from tests.blocks.small_pieces import ruled
from tests.blocks.trousers import KNIT, LEGGINGS, STYLES, draft, errors, legs
from tests.bodies import ansur, bdims

SPECIAL = {
    "child of 116 cm": {"height": 1160, "bust_girth": 600, "waist_girth": 560, "hip_girth": 640},
    "man of 118": {"height": 1780, "bust_girth": 1180, "waist_girth": 1120, "hip_girth": 1180},
    "woman of 130": {"height": 1680, "bust_girth": 1300, "waist_girth": 1140, "hip_girth": 1300},
    "pregnant": {"height": 1680, "bust_girth": 1000, "waist_girth": 1080, "hip_girth": 1020},
    "largest belly": {"height": 1750, "bust_girth": 1200, "waist_girth": 1400, "hip_girth": 1200},
    "tall and thin": {"height": 1980, "bust_girth": 920, "waist_girth": 760, "hip_girth": 920},
    "large hip, small waist": {"height": 1650, "bust_girth": 920, "waist_girth": 680, "hip_girth": 1080},
}
"""Invented figures, mm."""

ALL_STYLES = (*STYLES, "seated woven straight", "seated stretch flared")


def sample() -> list[Body]:
    return [*ansur(90), *bdims(30), *(wearer(mm, title=name) for name, mm in SPECIAL.items())]


def hip_of(made: Draft) -> float:
    """Return the girth of all four pieces at the level of the hip, cut through the cloth."""
    return 2 * sum(_across(made[name]) for name in ("front", "back"))


def _across(piece: Piece) -> float:
    y = piece.points["side_hip"].imag
    cloth = shapely.Polygon([(p.real, p.imag) for p in piece.outline.flattened(0.005)])
    x0, _, x1, _ = cloth.bounds
    return float(cloth.intersection(shapely.LineString([(x0 - 1, y), (x1 + 1, y)])).length)


def faults(bodies: Sequence[Body], style: str) -> list[str]:
    """Return what a cutter would send back."""
    choices, fabric = STYLES[style.removeprefix("seated ")]
    found = []
    for body in bodies:
        wears = replace(body, posture="seated") if style.startswith("seated") else body
        try:
            made = draft(wears, fabric, **choices)
        except DraftError as refusal:
            found.append(f"{body.title}: refused: {refusal}")
            continue
        found += [f"{body.title}: {said}" for said in (*_wrong(wears, made), *errors(wears, made))]
    return found


def _wrong(body: Body, made: Draft) -> Iterator[str]:
    girths = {girth.level: girth for girth in made.girths}
    told = girths["hip"].body + girths["hip"].settled_ease
    if abs(hip_of(made) - told) > 1.0:
        yield f"hip {hip_of(made):.1f} on the outline, {told:.1f} told"
    if abs((finished_girth(made, "hip") or 0.0) - told) > 0.1:
        yield "the check measures another hip than is told"
    fly = made["front"]["fly"].length if "fly" in made["front"] else 175.0
    if body["bust_girth"] >= 700 and not 149.9 <= fly <= 200.1:
        yield f"a fly of {fly:.0f}"
    moved = [
        f.value
        for f in made.findings
        if f.check == "crotch split" and "moved" in f.message and abs(f.value or 0) > 10
    ]
    if body.measured("back_crotch_length") and body.posture != "seated" and moved:
        yield f"a measured front crotch moved by {moved[0]:.0f}"
    for seam in made.seams:
        length = sum(made.edge(ref).length for ref in seam.a)
        if length > 250 and not seam.notches:
            yield f"{seam.name}: {length:.0f} mm without a notch"
    yield from _darts(body, made)


def _darts(body: Body, made: Draft) -> Iterator[str]:
    """Yield darts narrower than 8 mm at adult scale."""
    for piece in made.pieces:
        for into, out in itertools.pairwise(piece.edges):
            if into.kind is EdgeKind.DART and out.kind is EdgeKind.DART:
                width = abs(out.path.end - into.path.start)
                if body["bust_girth"] >= 700 and width < 8.0 and into.path.end == out.path.start:
                    yield f"{piece.name}: a dart of {width:.1f}"


@pytest.mark.parametrize("style", ["woven straight", "stretch tapered"])
def test_a_sample_of_people_gets_trousers_that_a_cutter_would_cut(style: str) -> None:
    assert faults(sample(), style) == []


@pytest.mark.parametrize("style", [s for s in ALL_STYLES if s not in ("woven straight", "stretch tapered")])
def test_so_do_a_few_of_them_in_the_other_styles_and_seated(style: str) -> None:
    bodies = sample()[::6] if style.startswith("seated") else sample()[::4]
    assert faults(bodies, style) == []


@pytest.mark.population
@pytest.mark.timeout(0)
@pytest.mark.parametrize("style", ALL_STYLES)
def test_everybody_gets_trousers_that_a_cutter_would_cut(style: str) -> None:
    assert faults([*ansur(), *bdims(), *sample()[120:]], style) == []


def test_the_ease_asked_at_the_hip_is_the_ease_there_is_but_where_the_legs_part_already() -> None:
    # "Ease in clothing": 51 to 70 mm at the hip; 55 are asked for. Before the outline counted, half of
    # these had over 14 mm more, and the woman of 130 had 151.
    more = sorted(hip_of(draft(body)) - body["hip_girth"] - 55 for body in sample())
    assert more[0] > -0.5
    assert more[len(more) * 9 // 10] < 1.0
    for name, charts in (("man of 118", "mens"), ("woman of 130", "womens")):
        body = wearer(SPECIAL[name], figure=charts)
        assert hip_of(draft(body)) - body["hip_girth"] == pytest.approx(55, abs=6)


def test_a_hip_line_that_stops_at_an_imaginary_centre_line_is_found() -> None:
    # The fault that was open once: the level ran to the centre line continued straight, not to the cloth.
    body = wearer(SPECIAL["woman of 130"])
    made = draft(body)
    piece = made["back"]
    level = next(v for v in piece.levels if v.name == "hip")
    (path,) = level.paths
    short = replace(level, paths=(line(path.start, path.end + 20 * (path.start - path.end) / path.length),))
    wrong = replace(piece, levels=tuple(short if v is level else v for v in piece.levels))
    said = [f for f in check_draft(made.with_pieces([wrong]), body) if f.level == "error"]
    assert {f.check for f in said} == {"level line"}
    assert finished_girth(made.with_pieces([wrong]), "hip") == pytest.approx(hip_of(made), abs=0.1)


def test_a_measured_front_crotch_over_a_belly_is_kept() -> None:
    # Common practice: over a belly the front rises. 67 mm of this one's front went to the back once.
    tape = {"total_crotch_length": 900, "back_crotch_length": 430}
    made = draft(wearer({**SPECIAL["pregnant"], **tape}))
    assert made.facts["crotch_front"] == pytest.approx((900 + 12) * 470 / 900, abs=0.01)
    assert made.facts["front_rise"] > 0.035 * 1020
    assert errors(wearer({**SPECIAL["pregnant"], **tape}), made) == []
    assert any(f.check == "front rise" and "belly" in f.message for f in made.findings)


def test_the_front_rises_the_more_the_larger_the_belly_where_only_the_whole_crotch_was_measured() -> None:
    rises = []  # up to where the front has its share of the length: then it stays
    for waist in (900.0, 1000.0, 1100.0, 1200.0):
        figure = {"height": 1700.0, "bust_girth": 1050.0, "waist_girth": waist, "hip_girth": 1040.0}
        # With the rise: who lacks it is estimated one as long as this crotch asks for, and the front needs less.
        tape = {"body_rise": 250.0, "total_crotch_length": 990.0}
        rises.append(draft(wearer({**figure, **tape})).facts["front_rise"])
    assert all(a <= b + 1.0 for a, b in itertools.pairwise(rises))
    assert rises[-1] > rises[0] + 45


NO_WAIST = {
    "height": 1957,
    "bust_girth": 1201,
    "waist_girth": 555,
    "hip_girth": 1087,
    "body_rise": 290,
    "total_crotch_length": 801,
    "back_crotch_length": 498,
}


LITTLE_STRETCH = Fabric("knit, invented", weave="knit", stretch_across=0.18, stretch_along=0.1)


def seated(mm: dict[str, float]) -> Body:
    return replace(wearer(mm), posture="seated")


@pytest.mark.parametrize("share", [0.0, 0.055, 0.3])
@pytest.mark.parametrize("waist", [555.0, 600.0, 700.0])
def test_a_waist_half_the_hip_is_drafted_without_an_error_or_refused_with_the_reach(
    waist: float, share: float
) -> None:
    for body in (wearer({**NO_WAIST, "waist_girth": waist}), seated({**NO_WAIST, "waist_girth": waist})):
        wrong = []
        try:
            made = draft_garment(body, LITTLE_STRETCH, "trousers", {"stretch_share": share})
        except DraftError as refusal:
            wrong = [] if refusal.reach and refusal.turn else [str(refusal)]
        else:
            wrong = [f.message for f in made.findings if f.level == "error"]
        assert wrong == []


def test_an_outline_that_would_cross_is_refused_with_the_least_waist() -> None:
    # It ended in a traceback once, in the areas of outline and cut line.
    with pytest.raises(DraftError, match="outline would cross itself") as refusal:
        draft_garment(seated(NO_WAIST), LITTLE_STRETCH, "trousers", {"stretch_share": 0.055})
    least = float(re.findall(r"[\d.]+", in_unit(refusal.value.reach, "mm"))[0])
    wider = {"waist_ease": least - 555 + 1}
    made = draft(seated(NO_WAIST), None, **wider, hip_ease=20.0)
    assert 555 < least < 1087
    assert errors(seated(NO_WAIST), made) == []


@pytest.mark.parametrize("stretch", [0.06, 0.12, 0.5])
def test_a_small_share_of_the_stretch_is_drafted_and_checked_on_every_special_body(stretch: float) -> None:
    cloth = Fabric("knit, invented", weave="knit", stretch_across=stretch, stretch_along=0.1)
    for figure in SPECIAL.values():
        garment = draft_garment(wearer(figure), cloth, "trousers", {"stretch_share": 0.055})
        wrong = {f.check for f in garment.findings if f.level == "error"}
        assert wrong <= ({"least ease"} if stretch < 0.10 else set())


def test_the_areas_of_an_outline_that_crosses_itself_are_numbers() -> None:
    eight, square = (line(0, 10 + 10j, 10, 10j, 0), line(0, 10, 10 + 10j, 10j, 0))
    assert outside(eight, square) == pytest.approx(0.0)
    assert outside(square, eight) == pytest.approx(50.0)
    assert difference(square, eight) == pytest.approx(50.0)


def test_notches_stand_at_hip_and_knee_single_in_front_and_double_behind_and_the_band_is_marked() -> None:
    # Common practice: single in front, double behind; a band is marked at side seams and centre.
    for choices in ({}, {"band_cut": "seamed"}, {"waist_finish": "casing"}):
        made = draft_garment(legs(), None, "trousers", choices).draft
        seams = {seam.name: seam for seam in made.seams}
        assert {n.name for n in seams["side"].notches} == {"knee", "hip"}
        (behind,) = seams["back crotch"].notches
        assert (behind.name, behind.count) == ("hip", 2)
        assert all(n.count == 1 for n in seams["front crotch"].notches)
        long = [s.name for s in made.seams if sum(made.edge(r).length for r in s.a) > 250 and not s.notches]
        assert long == []
        if not (band := seams.get("waistband")):  # a casing
            continue
        side = next(n for n in band.notches if n.name == "side")
        front = [ref for ref in band.b if ref[0].startswith("front")]
        assert side.a == pytest.approx(sum(ruled(made.edge(ref).path) for ref in front), abs=0.01)
        assert "centre front" in {n.name for n in band.notches}


def test_a_notch_of_a_seam_with_its_own_twin_is_drawn_once_where_the_hip_crosses_it() -> None:
    made = draft_garment(legs(), None, "trousers").draft
    back = made["back"]
    (notch,) = back["crotch"].notches
    assert back["crotch"].path.at(notch.at).imag == pytest.approx(back.points["side_hip"].imag, abs=0.01)
    for piece in made.pieces:
        for edge in piece.edges:
            places = sorted(n.at for n in edge.notches)
            assert all(b - a > 1.0 for a, b in itertools.pairwise(places))


def test_too_little_ease_in_firm_cloth_is_warned_and_none_at_all_an_error() -> None:
    # "Ease in clothing": at least 13 mm at the waist of trousers and 51 at the hip.
    def said(cloth: Fabric | None, **eases: float) -> dict[str, str]:
        made = draft(legs(), cloth, **eases)
        return {f.where: f.level for f in made.findings if f.check == "least ease"}

    firm = Fabric("drill, invented", stretch_across=0.03)
    soft = Fabric("jersey, invented", weave="knit", stretch_across=0.20)
    assert said(None) == said(firm, waist_ease=13.0, hip_ease=51.0) == {}
    assert said(firm, waist_ease=5.0) == {"waist": "warning"}
    assert said(firm, hip_ease=30.0) == {"hip": "warning"}
    assert said(firm, waist_ease=0.0) == {"waist": "error"}
    assert said(soft, waist_ease=0.0, hip_ease=10.0) == {}


def test_hems_are_turned_up_by_cut_and_cloth_and_a_child_gets_no_less() -> None:
    # Common practice: trousers 30 to 50, flared 10 to 15, the fly 19; a child grows out of its seams.
    child = wearer(SPECIAL["child of 116 cm"])
    adult = draft_garment(legs(), None, "trousers").pattern["front"]
    assert adult.allowances["hem"] <= 50
    assert adult.allowances["side"] == 10
    for body in (legs(), child):
        straight, flared = (
            draft_garment(body, None, "trousers", {"leg": leg}).pattern for leg in ("straight", "flared")
        )
        for name in ("front", "back"):
            assert straight[name].allowances["hem"] >= 30
            assert 10 <= flared[name].allowances["hem"] <= 15
            assert straight[name].allowances["side"] >= 10
        for name in ("front", "fly-facing", "fly-shield"):
            assert straight[name].allowances["fly"] == 19
        wished = draft_garment(body, None, "trousers", {"leg_hem": 60}).pattern
        assert wished["front"].allowances["hem"] == 60
    knit = draft_garment(legs(), KNIT, "trouser", LEGGINGS).pattern["back"]
    assert 20 <= knit.allowances["hem"] <= 30
