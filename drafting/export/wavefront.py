"""A worn garment as a mesh file that other programs read: Wavefront OBJ, mm, one group a piece.

`v` are places in space (x to the wearer's left, y to the back, z up), `vt` places on the flat pieces, both mm.
Each piece is a group `g`; each drafted girth a group of one line `l`, so that a tape can be laid along it.
Of a garment that is worked out in half, both halves are written.
"""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from drafting.draft.frame import Limb
from drafting.worn.nouns import AtRest, MeshLevel, Reals, SewnMesh, Whole


def wavefront(worn: AtRest) -> str:
    """Return the mesh file's text.

    Numbers count from 1, as the format wants it; a half that is mirrored has "right_" before its groups' names.
    """
    mesh, count = worn.mesh, worn.mesh.count
    head = [f"# {mesh.garment}, worn; mm; x to the wearer's left, y to the back, z up", f"o {_word(mesh.garment)}"]
    points = [worn.points] + ([worn.points * [-1.0, 1.0, 1.0]] if mesh.halved else [])
    lines = [*head, *(_row("v", place) for half in points for place in half)]
    lines += [_row("vt", place) for place in mesh.flat]
    lines += _pieces(mesh, "", mesh.sewn, turned=False)
    if mesh.halved:
        other = np.where(mesh.on_middle, np.arange(count), np.arange(count) + count)
        lines += _pieces(mesh, "right_", other[mesh.sewn], turned=True)
    after = len(points) * count
    for level in mesh.levels:
        run = _level_points(mesh, level, worn.points)
        lines += [_row("v", place) for place in run]
        numbers = " ".join(str(after + i + 1) for i in range(len(run)))
        lines += [f"g level_{_word(level.name)}", f"l {numbers}{_home(mesh, level, after)}"]
        after += len(run)
    return "\n".join(lines) + "\n"


def _pieces(mesh: SewnMesh, before: str, triangles: Whole, turned: bool) -> Iterator[str]:
    """Yield each piece's group and faces, as place/place on the flat; a mirrored half is turned round."""
    for index, piece in enumerate(mesh.pieces):
        yield f"g {before}{_word(piece.name)}"
        own = mesh.piece == index
        for face, flat in zip(triangles[own] + 1, mesh.triangles[own] + 1, strict=True):
            corners = [f"{a}/{b}" for a, b in zip(face.tolist(), flat.tolist(), strict=True)]
            yield "f " + " ".join(corners[::-1] if turned else corners)


def _level_points(mesh: SewnMesh, level: MeshLevel, points: Reals) -> Reals:
    """Return the places of a girth in order, all the way round where the garment is halved."""
    run: Reals = np.einsum("ij,ijk->ik", level.weights, points[mesh.sewn[level.triangles]])
    if mesh.halved and level.limb is Limb.TRUNK:
        return np.vstack([run, run[::-1] * [-1.0, 1.0, 1.0]])
    return run


def _home(mesh: SewnMesh, level: MeshLevel, after: int) -> str:
    """Return the number that closes a girth that goes round something."""
    open_half = (
        level.limb is Limb.TRUNK and mesh.halved and not mesh.on_middle[mesh.sewn[level.triangles[0]]].any()
    )
    return "" if open_half else f" {after + 1}"


def _row(kind: str, place: Reals) -> str:
    return kind + "".join(f" {value:.3f}" for value in place)


def _word(name: str) -> str:
    return name.replace(" ", "_")
