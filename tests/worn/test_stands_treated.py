"""Treatments of what hangs: where the mesh is stiffened, where a bone runs, and what is told of the hems."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from scipy.special import ellipe

from drafting.costume.garment import draft_garment
from drafting.costume.wearing import treated as hems_treated
from drafting.costume.wearing.sewn import COARSE
from drafting.costume.wearing.worn import worn
from drafting.draft.frame import BodyFrame, BodyHeight
from drafting.fabric import Fabric
from drafting.worn.cloth import Treatment, stiffened
from drafting.worn.cloth.rods import bone_bends
from drafting.worn.nouns import AtRest, Limb, Rod, SewnPiece
from drafting.worn.stands.hems import hem_lines, hem_worn
from drafting.worn.stands.hoops import goes_round, hoop_along
from drafting.worn.stands.model import HemWorn
from drafting.worn.stands.told import sits_on, told_once, told_treated
from drafting.worn.stands.treated import (
    TreatedHem,
    chained,
    hanging_points,
    hangs_free,
    swung,
    treated_mesh,
    treatments_of,
)
from drafting.worn.stands.words import remark, worded
from tests.making.orders import WOVEN, costume_of
from tests.worn.dressed import trial_wearer
from tests.worn.made_up import tube

CLOTH = Fabric("velveteen", mass=290.0, bending_length_along=31.0, bending_length_across=27.0)
HEM = (("body", "hem"),)


def skirt() -> AtRest:
    """Return a tube that hangs, from 1200 mm down to 700."""
    rest = tube(200, 700, 1200)
    return replace(rest, mesh=replace(rest.mesh, pieces=(SewnPiece("body", Limb.HANGS, 90.0),)))


def test_a_fused_piece_is_stiff_all_over_and_a_band_only_at_the_hem() -> None:
    rest = skirt()
    plain, fused, band = (
        treated_mesh(rest.mesh, HEM, stiffened(CLOTH, way))
        for way in (Treatment.PLAIN, Treatment.FUSED_MEDIUM, Treatment.BAND)
    )

    def bends(mesh: object) -> np.ndarray:
        return np.array([ply.bends_along for ply in mesh.plies])[mesh.ply]  # type: ignore[attr-defined]

    assert len(set(bends(plain))) == 1
    assert bends(fused).min() > 5 * bends(plain).max()
    stiff = bends(band) > 5 * bends(plain).max()
    heights = rest.points[rest.mesh.sewn][:, :, 2].mean(axis=1)
    assert heights[stiff].max() < 700 + 60 + 10  # the band reaches 60 mm up
    assert heights[~stiff].min() > 700 + 60 - 10
    assert not plain.rods


def test_a_bone_runs_through_all_pieces_of_a_hem_as_one() -> None:
    rest = skirt()
    hem = rest.mesh.edges[HEM[0]]
    two = {("body", "one"): hem[:6], ("body", "two"): hem[5:][::-1]}
    mesh = replace(rest.mesh, edges=two)
    boned = treated_mesh(mesh, tuple(two), stiffened(CLOTH, Treatment.BONED))
    (rod,) = boned.rods
    assert list(rod.vertices) in (list(hem), list(hem)[::-1])
    ring, ended = bone_bends("round", 6.0), bone_bends("spiral", 6.0)
    assert rod.stiffness == (ring if goes_round(mesh, rod.vertices) else ended)


def test_a_hem_is_tried_with_a_round_rod_where_it_goes_all_round_and_else_with_a_spiral_bone() -> None:
    """What the draft takes where nothing else is asked for: a soft bone holds no ring (see test_hem_bone)."""
    rest = skirt()
    hem = rest.mesh.edges[HEM[0]]
    for line, kind in ((hem, "round"), (hem[2:-2], "spiral")):
        mesh = replace(rest.mesh, edges={HEM[0]: line})
        (rod,) = treated_mesh(mesh, HEM, stiffened(CLOTH, Treatment.BONED)).rods
        assert rod.stiffness == pytest.approx(bone_bends(kind, 6.0))
        assert rod.along > 0


def test_a_hoop_encloses_of_its_rings_area_what_a_general_library_finds() -> None:
    """Perimeters and areas of an ellipse tilted in space, by scipy's elliptic integral."""
    turn, tilt = np.linspace(0.0, 2 * math.pi, 4001), math.radians(35.0)
    flat = np.column_stack([500.0 * np.cos(turn), 200.0 * np.sin(turn)])
    line = np.column_stack([flat[:, 0], flat[:, 1] * math.cos(tilt), flat[:, 1] * math.sin(tilt)])
    long = 4 * 500.0 * ellipe(1 - (200.0 / 500.0) ** 2)
    hoop = hoop_along(line)
    assert hoop.across == pytest.approx(long / math.pi, rel=1e-5)
    assert hoop.share == pytest.approx(4 * math.pi * (math.pi * 500.0 * 200.0) / long**2, rel=1e-4)


def cut_in_one() -> AtRest:
    """Return the skirt with its back half a piece of the trunk that goes on below a waist at 1100 mm."""
    rest = skirt()
    behind = rest.points[rest.mesh.sewn][:, :, 1].mean(axis=1) > 0
    waist = BodyFrame(heights=((BodyHeight.WAIST, complex(0.0, 400.0)),))
    pieces = (*rest.mesh.pieces, SewnPiece("back", Limb.TRUNK, 90.0, frame=waist))
    return replace(rest, mesh=replace(rest.mesh, pieces=pieces, piece=np.where(behind, 1, 0)))


def test_a_back_cut_in_one_with_its_skirt_hangs_below_the_waist_and_is_stiffened_there() -> None:
    rest = cut_in_one()
    free, behind = hanging_points(rest.mesh), rest.points[:, 1] > 20
    assert free[behind & (rest.points[:, 2] < 1090)].all()
    assert not free[behind & (rest.points[:, 2] > 1110)].any()
    fused = treated_mesh(rest.mesh, HEM, stiffened(CLOTH, Treatment.FUSED_MEDIUM))
    lowest = rest.points[rest.mesh.sewn][:, :, 2].max(axis=1) < 1090
    assert len(set(fused.ply[lowest])) == 1
    assert set(fused.ply[lowest]).isdisjoint(rest.mesh.ply)


def test_a_bone_drafted_in_the_skirt_is_taken_out_even_where_it_ends_on_the_bodice() -> None:
    rest = cut_in_one()
    column = np.flatnonzero((rest.points[:, 0] == 0.0) & (rest.points[:, 1] > 0))
    rising = column[np.argsort(rest.points[column, 2])]
    to_waist, above = (rising[rest.points[rising, 2] <= 1100], rising[rest.points[rising, 2] >= 1100])
    mesh = replace(rest.mesh, rods=(Rod(to_waist, 1e-4), Rod(above, 2e-4)))
    plain = treated_mesh(mesh, HEM, stiffened(CLOTH, Treatment.PLAIN))
    assert [rod.stiffness for rod in plain.rods] == [2e-4]


def test_a_bone_ends_where_the_pieces_that_hang_end() -> None:
    rest = cut_in_one()
    hem = rest.mesh.edges[HEM[0]]
    behind = rest.points[hem, 1] >= 0
    lines = {("body", "hem"): hem[~behind], ("back", "hem"): hem[behind]}
    boned = treated_mesh(replace(rest.mesh, edges=lines), tuple(lines), stiffened(CLOTH, Treatment.BONED))
    (rod,) = boned.rods
    assert set(rod.vertices) == set(hem[~behind])


@pytest.mark.parametrize("order", [(0, 1, 2), (2, 0, 1), (1, 2, 0)])
def test_lines_that_meet_are_one_in_whatever_order_they_come(order: tuple[int, ...]) -> None:
    lines = [np.array([1, 2, 3]), np.array([5, 4, 3]), np.array([5, 6])]
    (found,) = chained([lines[i] for i in order])
    assert list(found) in ([1, 2, 3, 4, 5, 6], [6, 5, 4, 3, 2, 1])
    assert len(chained([*lines, np.array([8, 9])])) == 2


def test_what_hangs_is_swung_out_at_its_hem_and_held_at_its_top() -> None:
    rest = skirt()
    out = swung(rest, 30.0) - rest.points
    low = rest.points[:, 2] == 700
    assert np.linalg.norm(out[low], axis=1) == pytest.approx(np.full(low.sum(), 30.0))
    assert np.abs(out[rest.points[:, 2] == 1200]).max() == 0
    assert (swung(rest, -30.0)[rest.mesh.on_middle, 0] == 0).all()
    assert hanging_points(rest.mesh).all()
    assert not hanging_points(tube(200, 700, 1200).mesh).any()


def test_only_what_the_cloth_takes_is_tried() -> None:
    assert [name for name, _ in treatments_of(CLOTH)] == ["plain", "fused", "band", "boned"]
    no = replace(CLOTH, takes_fusible=False, takes_starch=True)
    assert [name for name, _ in treatments_of(no)] == ["plain", "starched", "boned"]


def hem(width: float, reach: float, low: float, high: float) -> HemWorn:
    return HemWorn(width=width, back_reach=reach, lowest=450.0, highest=452.0, range=(low, high))


def test_each_treatment_is_told_with_its_range_and_which_reaches_farthest() -> None:
    hems = (
        TreatedHem("plain", hem(475, 55, 463, 489), ()),
        TreatedHem("band", hem(508, 60, 507, 509), ()),
        TreatedHem("boned", hem(484, 119, 483, 484), ()),
        TreatedHem("fused", None, ()),
    )
    words = [worded(said, "cm") for said in told_treated(hems)]
    assert words[0] == (
        "Untreated, the hem is 46.3 cm to 48.9 cm wide, as it happens to fall, and reaches 5.5 cm behind the seat."
    )
    assert words[1] == "With a fused band, the hem is 50.8 cm wide and reaches 6 cm behind the seat."
    assert words[3] == "Fused all over, it did not come to rest: no number is given."
    assert words[4] == "It stands out farthest behind with a boned hem."


def test_what_is_wider_than_a_door_or_a_chair_is_told_by_its_treatments() -> None:
    """Widths of 800 and 450 mm are common practice; a hem higher than one sits on is not told of a chair."""
    hems = (
        TreatedHem("drafted", hem(440, 60, 430, 445), ()),
        TreatedHem("fused", hem(790, 60, 780, 810), ()),
        TreatedHem("boned", hem(640, 60, 640, 640), ()),
    )
    words = [worded(said, "cm") for said in told_treated(hems, knee=480.0)][-2:]
    assert words[0] == (
        "The hem is wider than a doorway (80 cm) fused all over: "
        "it has to give, or the wearer goes through sideways."
    )
    assert words[1].startswith(
        "The hem is wider than a chair's seat (45 cm) fused all over and with a boned hem: "
    )
    assert not [said for said in told_treated(hems, knee=150.0) if said.key.startswith("treated.chair")]
    assert [said.key for said in told_treated(hems[1:2] * 2)][-1] == "treated.doorway_all"


def test_however_it_is_treated_is_said_only_where_every_treatment_does_so() -> None:
    """One treatment lifts the hem over the chair, as it is wider than it: it lies beside it as drafted alone."""
    low, lifted = hem(900, 60, 900, 905), replace(hem(430, 60, 430, 440), lowest=800.0)
    hems = (TreatedHem("drafted", low, ()), TreatedHem("boned", lifted, ()))
    chair = [said for said in told_treated(hems, knee=480.0) if said.key.startswith("treated.chair")]
    assert [said.key for said in chair] == ["treated.chair"]
    assert "(45 cm) as drafted: part" in worded(chair[0], "cm")
    both = (hems[0], TreatedHem("boned", low, ()))
    assert [said.key for said in told_treated(both, knee=480.0)][-1] == "treated.chair_all"


def test_a_tie_has_no_farthest_within_what_an_eighth_of_an_inch_shows() -> None:
    for second, said in ((60.0, False), (57.0, False), (56.0, True)):
        hems = [
            TreatedHem(name, hem(400, reach, 400, 402), ()) for name, reach in (("plain", 60.0), ("band", second))
        ]
        assert ("treated.farthest" in [one.key for one in told_treated(hems)]) is said


def test_doorway_and_chair_are_told_once() -> None:
    wide = hem(900, 60, 900, 905)
    own = (remark("hem.doorway"), *sits_on(wide, 480.0), remark("hem.even"))
    again = tuple(told_treated([TreatedHem(name, wide, ()) for name in ("drafted", "boned")], 480.0))
    kept = [said.key for said in told_once((*own, *again)) if not said.key.startswith("treated.")]
    assert kept == ["hem.even"]
    assert [said.key for said in told_once(own)] == ["hem.doorway", "hem.seat", "hem.even"]


def test_how_far_a_hem_reaches_behind_is_told_by_one_number() -> None:
    """As drafted it fell from several starts: the reach of the first alone, beside it, reads as another."""
    own = (remark("hem.even"), remark("hem.behind", reach=66.0))
    for first, kept in (("drafted", ["hem.even"]), ("plain", ["hem.even", "hem.behind"])):
        rows = told_treated([TreatedHem(name, hem(300, 73, 300, 301), ()) for name in (first, "boned")])
        assert [one.key for one in told_once((*own, *rows)) if one.key.startswith("hem.")] == kept


def round_the_trunk() -> AtRest:
    """Return the skirt as a piece of the trunk, as a straight skirt is: waist at its top, hip 200 mm lower."""
    rest, top = skirt(), 500.0
    places = ((BodyHeight.WAIST, complex(0.0, top)), (BodyHeight.HIP, complex(0.0, top - 200.0)))
    piece = SewnPiece("body", Limb.TRUNK, 90.0, frame=BodyFrame(heights=places))
    return replace(rest, mesh=replace(rest.mesh, pieces=(piece,)))


def test_a_skirt_hangs_free_from_its_hip_and_what_hangs_from_the_shoulders_does_not() -> None:
    rest = round_the_trunk()
    free = hanging_points(rest.mesh)
    assert free[rest.points[:, 2] < 990].all()
    assert not free[rest.points[:, 2] > 1010].any()
    (piece,) = rest.mesh.pieces
    bust = BodyFrame(heights=(*piece.frame.heights, (BodyHeight.BUST, complex(0.0, 700.0))))
    shirt = replace(rest.mesh, pieces=(replace(piece, frame=bust),))
    assert not hanging_points(shirt).any()
    assert [hangs_free(mesh, 0) for mesh in (rest.mesh, shirt, skirt().mesh)] == [True, False, True]


def test_a_hip_at_the_origin_of_its_piece_is_a_hip() -> None:
    rest = round_the_trunk()
    (piece,) = rest.mesh.pieces
    heights = tuple((height, at - 300j) for height, at in piece.frame.heights)
    assert (BodyHeight.HIP, 0j) in heights
    lower = replace(piece, frame=BodyFrame(heights=heights))
    mesh = replace(rest.mesh, pieces=(lower,), flat=rest.mesh.flat - (0.0, 300.0))
    assert (hanging_points(mesh) == hanging_points(rest.mesh)).all()


def test_a_straight_skirt_gets_each_treatment_and_a_bone_rounds_its_hem(monkeypatch: pytest.MonkeyPatch) -> None:
    """A bone is straight at rest: bent to a ring it presses its hem towards a circle."""
    monkeypatch.setattr(hems_treated, "STARTS", (0.0,))  # one fall each is enough here
    body = trial_wearer()
    made = costume_of(draft_garment(body, WOVEN, "skirt", {}), WOVEN)
    made = replace(made, costume=replace(made.costume, wearer=body))
    (found,) = worn(made, mesh=COARSE).garments
    hems = {one.name: one.hem for one in found.treated}
    assert list(hems) == ["drafted", "starched", "fused", "band", "boned"]
    assert all(hems.values())
    deep = {one.name: np.ptp(np.concatenate(one.lines)[:, 1]) for one in found.treated}
    assert deep["boned"] > deep["fused"] > deep["drafted"]


def test_a_wide_hem_below_the_seat_is_told_for_sitting_down() -> None:
    assert [said.key for said in sits_on(hem(520, 60, 520, 520), knee=480)] == ["hem.seat"]
    (round_it,) = sits_on(hem(520, 60, 520, 520), knee=480, parts=False)
    assert "gathered in or lifted" in worded(round_it, "cm")
    assert not list(sits_on(hem(400, 60, 400, 400), knee=480))


def test_the_hem_of_the_skirt_is_as_wide_as_the_tube() -> None:
    found = hem_worn(hem_lines(skirt(), HEM), 0.0, (420.0, 380.0))
    assert found is not None
    assert found.width == pytest.approx(400, abs=1)
    assert found.range == (380.0, 420.0)
    assert math.isclose(found.lowest, 700)
