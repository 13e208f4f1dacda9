"""What lies behind each place, hangs on edges, or runs along lines of the sewn mesh."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest

from drafting.costume.file import read_costume
from drafting.costume.make import make
from drafting.draft.frame import Limb
from drafting.draft.piece import EdgeKind
from drafting.ground.shipped import demo_costume
from drafting.worn.nouns import Ply, SewnMesh
from drafting.worn.sewn import sewn_mesh
from tests.worn.garments import CLOTH, PLIES, SHIPPED, drafted, flat_run, signed, uneven_body

FINE = 8.0
"""mm: a facing's inner strip, where it lies on the front alone, is 17 wide."""


def mesh_of(block: str) -> SewnMesh:
    return sewn_mesh(drafted(block), block, PLIES)


def at(mesh: SewnMesh, piece: str, place: complex) -> Ply:
    """Return the ply of a piece nearest to a place."""
    own = np.flatnonzero(mesh.piece == [p.name for p in mesh.pieces].index(piece))
    middles = mesh.flat[mesh.triangles[own]].mean(axis=1)
    nearest = int(own[np.hypot(*(middles - [place.real, place.imag]).T).argmin()])
    return mesh.plies[int(mesh.ply[nearest])]


def test_a_button_front_lies_in_layers() -> None:
    """Front, facing, its interfacing and the other hand's stand beside the middle; front alone far from it."""
    mesh = sewn_mesh(drafted("shirt"), "shirt", PLIES, FINE)
    assert at(mesh, "front", 150 - 300j) == CLOTH
    near, facing = at(mesh, "front", 5 - 300j), at(mesh, "front", 28 - 300j)
    assert facing.weight == pytest.approx(3 * CLOTH.weight)  # front, facing, interfacing
    assert near.weight >= 5 * CLOTH.weight  # and the other's stand, of two layers
    assert near.thickness == pytest.approx(near.weight / CLOTH.weight * CLOTH.thickness)


def test_a_cuff_folds_to_half_its_depth_and_closes_round_the_wrist() -> None:
    draft = drafted("shirt")
    mesh = sewn_mesh(draft, "shirt", PLIES)
    cuff = [p.name for p in mesh.pieces].index("cuff")
    sleeve, end = draft["cuff"]["sleeve"].length, draft["cuff"]["end"].length
    assert signed(mesh)[mesh.piece == cuff].sum() == pytest.approx(sleeve * end, rel=1e-3)
    assert mesh.edges[("cuff", "sleeve")][0] == mesh.edges[("cuff", "sleeve")][-1]


def test_hems_weigh_as_much_as_the_cloth_turned_up() -> None:
    draft = drafted("bodice", choices={"length": "hip"})
    mesh = sewn_mesh(draft, "bodice", PLIES)
    hems = [e for p in draft.pieces for e in p.edges if e.kind is EdgeKind.HEM and e.allowance]
    wanted = sum(1e-6 * CLOTH.weight * e.length * (e.allowance or 0.0) for e in hems)
    assert hems
    assert mesh.added.sum() == pytest.approx(wanted, rel=1e-3)


def test_a_fused_cloth_takes_the_place_of_cloth_and_interfacing() -> None:
    stiff = replace(CLOTH, bends_along=1e-3)
    mesh = sewn_mesh(drafted("shirt"), "shirt", PLIES, FINE, fused={"interfacing": stiff})
    assert at(mesh, "front", 28 - 300j).bends_along == pytest.approx(1e-3 + CLOTH.bends_along)
    assert at(mesh, "front", 150 - 300j) == CLOTH


def test_elastic_runs_along_waist_and_hem_of_breeches() -> None:
    draft = drafted("breeches")
    mesh = sewn_mesh(draft, "breeches", PLIES)
    loops = {notion.loop for notion in draft.notions if notion.loop}
    found = {thread.rest for thread in mesh.elastics}
    assert {2 * thread for thread in found} & loops  # the waist, of which the half is meshed
    assert found & loops  # a hem, round one leg


def test_a_boned_tail_has_one_bone_from_its_front_to_the_pleat() -> None:
    mesh = mesh_of("tailcoat")
    (rod,) = mesh.rods
    ends = mesh.sewn[:, [0, 1, 1, 2, 2, 0]].reshape(-1, 2)
    edges = {frozenset(pair) for pair in ends.tolist()}
    assert all(frozenset(pair) in edges for pair in pairwise(rod.vertices.tolist()))
    assert len(rod.vertices) == len(set(rod.vertices.tolist())) > 20


def test_roll_lines_and_darts_bend_free() -> None:
    mesh = mesh_of("tailcoat")
    edges = {frozenset(pair) for pair in mesh.sewn[:, [0, 1, 1, 2, 2, 0]].reshape(-1, 2).tolist()}
    held = [frozenset(pair) in edges for pair in mesh.folds.tolist()]
    assert np.mean(held) > 0.9
    bodice = mesh_of("bodice")
    legs = bodice.edges[("front", "waist_dart_in")]
    pairs = {frozenset(pair) for pair in bodice.folds.tolist()}
    assert all(frozenset(pair) in pairs for pair in pairwise(legs.tolist()))


@pytest.mark.parametrize("block", SHIPPED)
def test_every_drafted_girth_lies_on_the_mesh_as_it_was_drafted(block: str) -> None:
    draft = drafted(block)
    mesh = sewn_mesh(draft, block, PLIES)
    assert [level.name for level in mesh.levels] == [g.level for g in draft.girths if not g.width]
    for index, level in enumerate(mesh.levels):
        share = 2.0 if level.limb is Limb.TRUNK else 1.0
        assert share * flat_run(mesh, index) == pytest.approx(level.drafted, abs=2.5), level.name


def test_an_uneven_wearer_has_a_whole_mesh_whose_fronts_are_buttoned() -> None:
    mesh = sewn_mesh(drafted("shirt", uneven_body()), "shirt", PLIES)
    assert not mesh.halved
    assert not mesh.on_middle.any()
    hands = {piece.hand for piece in mesh.pieces}
    assert hands >= {"left", "right"}
    left, right = (np.unique(mesh.sewn[mesh.piece == i]) for i in fronts(mesh))
    assert len(mesh.tied) > 20
    assert np.isin(mesh.tied[:, 0], left).sum() + np.isin(mesh.tied[:, 0], right).sum() > 20
    assert len(mesh.front) > 20
    assert len(mesh.back) > 20


def fronts(mesh: SewnMesh) -> list[int]:
    return [i for i, piece in enumerate(mesh.pieces) if piece.role == "front" and piece.hand]


def test_the_whole_shipped_costume_is_sewn() -> None:
    made = make(read_costume(demo_costume()))
    for garment in made.garments:
        mesh = sewn_mesh(garment.draft, garment.name, PLIES)
        assert signed(mesh).min() > 0.0
        assert mesh.levels


def test_a_front_that_laps_is_held_on_the_middle_at_its_lowest_buttons_and_hangs_free_below() -> None:
    """The coat has three buttons, one of them above the break of its lapel, where the cloth is turned over."""
    draft = drafted("tailcoat")
    mesh, front = sewn_mesh(draft, "tailcoat", PLIES), draft["front"]
    index = [piece.name for piece in mesh.pieces].index("front")
    own = np.unique(mesh.triangles[mesh.piece == index])
    seams = np.concatenate([mesh.edges["back", "centre_back"], mesh.edges["under-collar", "centre"]])
    held = own[mesh.on_middle[mesh.merged[own]] & ~np.isin(mesh.merged[own], seams)]
    buttons = [mark.path.start.imag for mark in front.placements if mark.what == "button"]
    low = [y for y in buttons if y < front.points["break"].imag]
    assert (len(buttons), len(low)) == (3, 2)
    assert np.abs(mesh.flat[held, 0]).max() < 0.01  # the centre front is drawn at x = 0, the edge 26 mm beyond it
    assert sorted(mesh.flat[held, 1]) == pytest.approx(sorted(low), abs=10.0)
    assert mesh.flat[held, 1].min() > front["edge"].path.end.imag + 5.0


def test_the_fronts_of_an_uneven_wearers_coat_are_held_to_each_other() -> None:
    mesh = sewn_mesh(drafted("tailcoat", uneven_body()), "tailcoat", PLIES)
    hands = [[p.name for p in mesh.pieces if p.hand == hand and p.role == "front"] for hand in ("left", "right")]
    own = [set(mesh.sewn[mesh.piece == [p.name for p in mesh.pieces].index(name)].ravel()) for (name,) in hands]
    held = [pair for pair in mesh.tied.tolist() if pair[0] in own[0] and pair[1] in own[1]]
    assert len(held) == 2


def test_a_coat_without_buttons_hangs_open() -> None:
    mesh = sewn_mesh(drafted("tailcoat", None, {"coat_buttons": 0}), "tailcoat", PLIES)
    middle = {ref for ref, chain in mesh.edges.items() if mesh.on_middle[chain].any()}
    assert not {ref for ref in middle if ref[0] == "front"}
    assert not mesh.on_middle[mesh.front].any()
