"""The mesh file of a worn garment, read back by a reader of our own making that knows the format alone.

Wavefront OBJ: `v x y z`, `vt u v`, `g name`, `f v/vt ...`, `l v ...`, numbers from 1 (format as published by
Wavefront Technologies, from memory).
"""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np
import pytest

from drafting.export.wavefront import wavefront
from drafting.worn.form import wearers_form
from drafting.worn.nouns import AtRest, Reals
from drafting.worn.placed import placed
from drafting.worn.sewn import sewn_mesh
from tests.worn.garments import PLIES, chart_body, drafted, signed


@dataclass
class MeshRead:
    places: list[list[float]] = field(default_factory=list)
    flat: list[list[float]] = field(default_factory=list)
    faces: dict[str, list[list[tuple[int, int]]]] = field(default_factory=dict)
    lines: dict[str, list[int]] = field(default_factory=dict)


def read(text: str) -> MeshRead:
    found, group = MeshRead(), ""
    for line in text.splitlines():
        word, *rest = line.split()
        if word == "v":
            found.places.append([float(value) for value in rest])
        elif word == "vt":
            found.flat.append([float(value) for value in rest])
        elif word == "g":
            (group,) = rest
        elif word == "f":
            corner = [tuple(int(n) - 1 for n in one.split("/")) for one in rest]
            found.faces.setdefault(group, []).append([(a, b) for a, b in corner])
        elif word == "l":
            found.lines[group] = [int(n) - 1 for n in rest]
    return found


@pytest.fixture(scope="module")
def bodice() -> tuple[AtRest, MeshRead]:
    mesh = sewn_mesh(drafted("bodice"), "bodice", PLIES)
    points = placed(mesh, wearers_form(chart_body()))
    nowhere = np.zeros_like(points)
    worn = AtRest(mesh=mesh, points=points, slip=nowhere, residual=1.0, settled=False, steps=0, seconds=0.0)
    return worn, read(wavefront(worn))


def test_both_halves_of_every_piece_are_there(bodice: tuple[AtRest, MeshRead]) -> None:
    worn, found = bodice
    assert set(found.faces) == {"back", "front", "right_back", "right_front"}
    assert len(found.faces["back"]) == len(found.faces["right_back"]) == int((worn.mesh.piece == 0).sum())


def test_faces_look_outward_on_both_halves(bodice: tuple[AtRest, MeshRead]) -> None:
    _, found = bodice
    places = np.array(found.places)
    for name, faces in found.faces.items():
        corners = places[[[a for a, _ in face] for face in faces]]
        normals = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
        middle = corners.mean(axis=1)
        outward = (normals[:, :2] * middle[:, :2]).sum(axis=1)
        assert (outward > 0).mean() > 0.9, name


def test_flat_places_keep_the_pieces_as_cut(bodice: tuple[AtRest, MeshRead]) -> None:
    worn, found = bodice
    flat = np.array(found.flat)
    total = 0.0
    for name in ("back", "front"):
        a, b, c = (flat[[face[i][1] for face in found.faces[name]]] for i in range(3))
        u, v = b - a, c - a
        total += float((u[:, 0] * v[:, 1] - u[:, 1] * v[:, 0]).sum() / 2)
    assert total == pytest.approx(signed(worn.mesh).sum(), rel=1e-6)


def sliced(found: MeshRead, height: float) -> float:
    """Return the length of the line in which all faces cut a level."""
    places, total = np.array(found.places), 0.0
    for faces in found.faces.values():
        for face in faces:
            corner = places[[a for a, _ in face]]
            cut: list[Reals] = []
            for p, q in zip(corner, np.roll(corner, -1, axis=0), strict=True):
                if (p[2] < height) != (q[2] < height):
                    cut.append(p + (q - p) * (height - p[2]) / (q[2] - p[2]))
            if len(cut) == 2:
                total += float(np.linalg.norm(cut[0] - cut[1]))
    return total


def test_a_girth_in_the_file_is_what_a_level_cut_through_it_measures(bodice: tuple[AtRest, MeshRead]) -> None:
    """Before it is settled the bust line lies level, but where the seams part."""
    _, found = bodice
    run = np.array(found.places)[found.lines["level_bust"]]
    length = float(np.linalg.norm(np.diff(run, axis=0), axis=1).sum())
    assert length == pytest.approx(sliced(found, float(np.median(run[:, 2]))), rel=0.01)
    assert found.lines["level_bust"][0] == found.lines["level_bust"][-1]
