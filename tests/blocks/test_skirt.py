"""Skirts: every cut on many bodies, circles on their exact radius, darts, gores and tiers as asked.

Bodies: drawn from the published spread of ANSUR II and from its ends (tests/drawn_bodies.py), the six of the
contact sheet, a child, and 507 of bdims or 300 of the survey by `-m population`. Lengths are measured by
shapely on fine polylines.
"""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache

import pytest
from shapely import Polygon

from drafting.body import Body
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.draft.gathers import gathers_along
from drafting.draft.piece import EdgeKind
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.draft.walk import walk
from drafting.fabric import Fabric
from drafting.ground.errors import DraftError
from drafting.making.rules import unsound
from drafting.making.words import text
from drafting.shaping.skirt.circle import panels_for, waist_ring
from tests.blocks.figures import chart_woman, errors
from tests.blocks.small_pieces import ruled
from tests.blocks.test_contact_sheets_of_settings import six
from tests.bodies import ansur, bdims
from tests.drawn_bodies import drawn, far
from tests.making.orders import WOVEN, costume_of, order_of
from tests.worn.unusual import child

CUTS = ("straight", "gored", "quarter circle", "half circle", "three-quarter circle", "full circle", "tiered")

CLOTH = Fabric("Twill 140 cm wide, invented", usable_width=1400.0)


def skirt(body: Body, cut: str = "straight", **choices: object) -> MadeGarment:
    return draft_garment(body, CLOTH, "skirt", {"skirt_cut": cut, **choices})


@cache
def sample() -> tuple[Body, ...]:
    return (*drawn(4), *far()[::8], *six().values(), child(1160.0))


@pytest.mark.parametrize("opens", ["back", "front"])
@pytest.mark.parametrize("cut", CUTS)
def test_every_cut_on_the_sample_has_no_error_and_every_piece_lies_on_the_cloth(cut: str, opens: str) -> None:
    for body in sample():
        made = skirt(body, cut, skirt_opens=opens)
        assert errors(made) == [], (body.title, errors(made))
        for cut_piece in made.pattern.pieces:
            piece = cut_piece.piece
            turned = [p * 1j ** ((90 - piece.grain) / 90) for p in piece.outline.flattened(1.0)]
            across = max(p.real for p in turned) - min(p.real for p in turned)
            assert across * (2 if piece.fold_edge else 1) <= 1400.0 or piece.grain == 0.0, (body.title, piece.name)


@pytest.mark.parametrize("cut", CUTS)
def test_a_piece_opened_from_its_fold_never_meets_itself_however_small_and_wide_the_cloth(cut: str) -> None:
    """A whole circle has no cloth left to seam its one centre with: it is cut in two."""
    for height in (1040.0, 1160.0):
        made = draft_garment(child(height), replace(CLOTH, usable_width=2800.0), "skirt", {"skirt_cut": cut})
        for piece in made.pattern.pieces:
            half = Polygon([(p.real, p.imag) for p in piece.cut.flattened(0.5)])
            assert half.is_valid, piece.piece.name
            if (fold := piece.piece.fold_edge) is not None:
                a, b = fold.path.start, fold.path.end
                other = Polygon([(p.real, p.imag) for p in (_mirrored(z, a, b) for z in piece.cut.flattened(0.5))])
                assert half.intersection(other).area < 1.0, piece.piece.name


def _mirrored(z: complex, a: complex, b: complex) -> complex:
    along = (b - a) / abs(b - a)
    return a + ((z - a) / along).conjugate() * along


@pytest.mark.population
@pytest.mark.timeout(0)
@pytest.mark.parametrize("cut", CUTS)
def test_three_hundred_people_of_the_survey_have_every_cut_without_an_error(cut: str) -> None:
    found = []
    for body in (*ansur(300), *bdims(100)):
        try:
            found += [f"{body.title}: {said}" for said in errors(skirt(body, cut))]
        except DraftError as error:
            found.append(f"{body.title}: refused: {error}")
    assert found == []


# Exact plane geometry: r = waist / angle, sweep = waist + angle x length; waist 70, length 60 cm. Radius and
# sweep in cm, arithmetic of the circle alone.
CIRCLES = {360: (11.1408, 446.9911), 270: (14.8545, 352.7433), 180: (22.2817, 258.4956), 90: (44.5634, 164.2478)}


@pytest.mark.parametrize("angle", CIRCLES)
def test_a_part_of_a_circle_stands_on_its_exact_radius(angle: int) -> None:
    ring = waist_ring(700.0, 600.0, angle)
    radius, sweep = CIRCLES[angle]
    assert ring.inner == pytest.approx(10 * radius, abs=0.001)
    assert ring.outer * 2 * math.radians(ring.angle) == pytest.approx(10 * sweep, abs=0.001)


def test_the_radii_are_those_that_a_sewing_page_prints() -> None:
    # Published example, waist 26 in: full 4.13, half 8.2, third 12.4, quarter 16.56 in.
    for share, inches in ((1, 4.13), (2, 8.2), (3, 12.4), (4, 16.56)):
        assert waist_ring(26.0, 20.0, 360 / share).inner == pytest.approx(inches, abs=0.1)


@pytest.mark.parametrize(
    ("cut", "angle"), [("half circle", 180), ("three-quarter circle", 270), ("full circle", 360)]
)
def test_the_drafted_waist_and_hem_of_a_circle_are_arcs_of_the_exact_lengths(cut: str, angle: int) -> None:
    made = skirt(chart_woman(), cut, skirt_length=600.0)
    panels = [p for p in made.draft.pieces if "hem" in p and not p.material]
    waist = 2 * sum(ruled(p["waist"].path) for p in panels)
    hem = 2 * sum(ruled(p["hem"].path) for p in panels)
    asked = chart_woman()["waist_girth"] + 16
    assert waist == pytest.approx(asked, abs=0.1)
    assert hem == pytest.approx(asked + math.radians(angle) * 600, abs=0.2)


@pytest.mark.parametrize("opens", ["back", "front"])
@pytest.mark.parametrize("cut", CUTS)
@pytest.mark.parametrize("length", [300.0, 600.0])
def test_what_is_cut_of_all_pieces_goes_once_round_the_waist(cut: str, opens: str, length: float) -> None:
    # A fold doubles an outline, a pair is cut twice: a short half circle is one piece on the fold, cut once.
    draft = skirt(chart_woman(), cut, skirt_length=length, skirt_opens=opens).draft
    round_it = 0.0
    for piece in draft.pieces:
        folded = any(edge.kind is EdgeKind.FOLD for edge in piece.edges)
        assert not (folded and piece.pair), piece.name
        if piece.role is not PieceRole.WAISTBAND and not piece.material:
            tops = sum(edge.sewn_length for edge in piece.edges if edge.role is EdgeRole.WAIST)
            round_it += tops * piece.count * (2 if folded else 1)
    assert round_it == pytest.approx(chart_woman()["waist_girth"] + 16, abs=0.6)


def test_a_quarter_circle_that_would_catch_on_the_hip_is_opened_wider_and_says_so() -> None:
    body = chart_woman(waist_girth=620.0, hip_girth=1080.0)
    made = skirt(body, "quarter circle")
    hip = next(g for g in made.draft.girths if g.level == "hip")
    assert hip.settled_ease >= 20 - 1e-6
    assert any("opened to" in f.message for f in made.findings)


def test_long_or_narrow_cloth_gets_more_panels_and_cloth_too_narrow_for_any_is_refused() -> None:
    ring = waist_ring(700.0, 1000.0, 360)
    counts = [panels_for(ring, width, edge=True).panels for width in (2400.0, 1400.0, 1000.0, 750.0)]
    assert counts == sorted(counts)
    assert counts[-1] > counts[0]
    with pytest.raises(DraftError, match="panels"):
        panels_for(ring, 500.0, edge=True)


@pytest.mark.parametrize("cut", CUTS)
def test_the_band_is_as_long_as_the_waist_and_opens_where_the_skirt_does(cut: str) -> None:
    for opens in ("back", "front"):
        draft = skirt(chart_woman(), cut, skirt_opens=opens).draft
        band = draft["waistband"]
        assert 2 * ruled(band["waist"].path) == pytest.approx(chart_woman()["waist_girth"] + 16, abs=0.6)
        fold, end = band["centre"].path.start.real, band["end"].path.start.real
        assert (fold < end) == (opens == "back")  # the left hand from outside: the front lies to the left
        assert {m.name for m in band.placements} >= {f"centre_{opens}"}


def test_darts_take_in_what_the_sides_do_not_and_none_is_a_sliver_or_too_wide() -> None:
    # Common practice: 8 to 40 mm at a dart, the front's shorter and narrower than the back's.
    for body in sample():
        draft = skirt(body).draft
        for piece in (draft["front"], draft["back"]):
            for edge in piece.edges:
                if edge.dart and edge.dart.inward:
                    other = piece[edge.dart.other]
                    mouth = abs(edge.path.start - other.path.end)
                    assert 5.0 <= mouth <= 45.0, (body.title, mouth)
                    assert ruled(edge.path) == pytest.approx(ruled(other.path), abs=0.01)
                    assert edge.path.end.imag > -body["waist_to_hip"]


def test_the_side_and_the_centre_are_as_long_as_asked_and_the_zip_lets_the_hip_pass() -> None:
    for body in sample():
        made = skirt(body)
        draft, length = made.draft, made.draft.facts["skirt_length"]
        back = draft["back"]
        assert sum(ruled(e.path) for e in back.edges if e.half.value == "back") <= length + 1e-6
        zipped = ruled(back["centre"].path)
        assert body["waist_girth"] + 16 + 2 * zipped >= body["hip_girth"]
        assert back["centre"].kind is EdgeKind.OPENING


def test_a_narrow_skirt_has_a_slit_and_a_flared_one_has_none() -> None:
    assert "slit" in skirt(chart_woman(), skirt_ends="mid-calf").draft["back"]
    assert "slit" not in skirt(chart_woman(), skirt_ends="mid-calf", hem_more=480.0).draft["back"]


def test_tiers_are_gathered_to_one_another_by_the_ratio() -> None:
    draft = skirt(chart_woman(), "tiered", tier_fullness=1.5, tiers=3).draft
    joins = [s for s in draft.seams if s.kind is SeamKind.YOKE]
    assert len(joins) == 2
    for seam in joins:
        wide = sum(ruled(draft.edge(ref).path) for ref in seam.a)
        held = sum(ruled(draft.edge(ref).path) for ref in seam.b)
        assert wide / held == pytest.approx(1.5, abs=1e-6)
        assert len(seam.notches) == 3


def test_a_skirt_that_ends_on_the_hip_is_refused_with_what_would_do() -> None:
    with pytest.raises(DraftError, match="hip"):
        skirt(chart_woman(), skirt_length=150.0)


def test_a_belly_hangs_straight_and_says_so() -> None:
    body = six()["waist-largest"]
    made = skirt(body)
    front, back = made.draft["front"], made.draft["back"]
    level = {p.name: ruled(next(v for v in p.levels if v.name == "hip").paths[0]) for p in (front, back)}
    assert level["front"] > level["back"]
    assert any(f.check == "hip of the skirt" for f in made.findings)


@pytest.mark.parametrize("cut", CUTS)
def test_the_order_of_work_is_sound_for_every_cut(cut: str) -> None:
    costume = costume_of(draft_garment(chart_woman(), WOVEN, "skirt", {"skirt_cut": cut}), WOVEN)
    assert unsound(costume, order_of(costume)) == ()


def test_a_gathered_waist_meets_its_band_at_side_and_centre_and_is_gathered_alike_all_along() -> None:
    made = skirt(chart_woman(), "tiered")
    seam = next(seam for seam in made.draft.seams if seam.name == "waistband")
    walked = walk(made.draft, seam)
    run = gathers_along([walked])
    assert run is not None
    assert (run.ratio, run.between) == (pytest.approx(walked.b_length / walked.a_length), False)
    side = next(notch for notch in seam.notches if notch.name == "side")
    assert side.b == pytest.approx(made.draft.edge(seam.b[0]).length)
    assert side.a == pytest.approx(made.draft.edge(seam.b[0]).sewn_length)


def test_a_tier_is_whole_before_it_is_gathered_and_another_order_is_unsound() -> None:
    costume = costume_of(draft_garment(chart_woman(), WOVEN, "skirt", {"skirt_cut": "tiered"}), WOVEN)
    steps = order_of(costume)
    of_seam = {name: i for i, step in enumerate(steps) for name in step.seams}
    assert of_seam["tier 2 side 1"] < of_seam["tier 1 to tier 2"] < of_seam["tier 2 to tier 3"]
    wrong = list(steps)
    wrong.insert(of_seam["tier 1 to tier 2"] + 1, wrong.pop(of_seam["tier 1 side 1"]))
    assert any("gathered before tier 1 side 1" in said for said in unsound(costume, tuple(wrong)))
    tried = next(step for step in steps if step.verb == "fit")
    assert "shoulder" not in " ".join(text(one) for one in tried.say)


@pytest.mark.parametrize(("asked", "made"), [(5.0, 6), (7.0, 8), (8.0, 8)])
def test_an_odd_number_of_gores_is_made_even_and_told(asked: float, made: int) -> None:
    draft = skirt(chart_woman(), "gored", gores=asked).draft
    said = [finding.message for finding in draft.findings if finding.check == "gores"]
    assert sum(2 if piece.pair else 1 for piece in draft.pieces if piece.name.startswith("gore")) == made
    assert bool(said) == (asked != made)
    assert all(f"{made} gores, not {asked:g}" in one for one in said)
