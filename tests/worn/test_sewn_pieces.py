"""A draft becomes one mesh: nothing lost, nothing upside down, seams one line."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from drafting.draft.draft import Seam
from drafting.worn.nouns import SewnMesh
from drafting.worn.sewn import sewn_mesh
from drafting.worn.sewn.joined import steps_of
from tests.worn.garments import PLIES, SHIPPED, drafted, least_angle, signed


@pytest.fixture(scope="module", params=SHIPPED)
def sewn(request: pytest.FixtureRequest) -> SewnMesh:
    return sewn_mesh(drafted(request.param), request.param, PLIES)


def test_every_triangle_lies_as_drafted_and_none_is_sharp(sewn: SewnMesh) -> None:
    assert signed(sewn).min() > 0.0
    assert least_angle(sewn) >= 20.0


def test_bodice_without_folds_keeps_the_area_of_its_outline() -> None:
    draft = drafted("bodice")
    mesh = sewn_mesh(draft, "bodice", PLIES, mesh=6.0)
    for index, piece in enumerate(mesh.pieces):
        area = signed(mesh)[mesh.piece == index].sum()
        assert area == pytest.approx(draft[piece.name].area, rel=1e-3)


def shirt_seams() -> list[Seam]:
    return [s for s in drafted("shirt").seams if s.name in ("side", "shoulder", "front armhole", "back armhole")]


@pytest.mark.parametrize("seam", shirt_seams(), ids=lambda seam: seam.name)
def test_both_sides_of_a_seam_are_the_same_vertices(seam: Seam) -> None:
    mesh = sewn_mesh(drafted("shirt"), "shirt", PLIES)
    a, b = ({int(v) for ref in refs for v in mesh.edges[ref]} for refs in (seam.a, seam.b))
    assert a == b
    assert len(a) > 5


def test_a_dart_is_closed_and_the_middle_of_the_back_stays_in_the_middle() -> None:
    mesh = sewn_mesh(drafted("bodice"), "bodice", PLIES)
    one, two = (mesh.edges[("back", f"waist_dart_{way}")] for way in ("in", "out"))
    assert np.array_equal(one, two[::-1])
    assert mesh.on_middle[mesh.edges[("back", "centre")]].all()
    assert not mesh.on_middle[mesh.edges[("back", "side")]].any()


@given(st.floats(0.3, 9.0))
def test_a_stretch_goes_in_as_many_steps_as_are_nearest_to_a_mesh(ratio: float) -> None:
    """Counted out: no other number of steps lies nearer, as a ratio. 1.45 meshes in one left a sharp triangle."""
    off = {count: abs(np.log(ratio / count)) for count in range(1, 12)}
    assert off[steps_of(ratio)] == pytest.approx(min(off.values()), abs=1e-9)
