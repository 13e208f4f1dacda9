"""A worn garment as a mesh that any program reads: the text form of an open exchange format (Wavefront OBJ).

Vertices in mm, z up from the floor; one group a piece; each drafted level as lines in a group of its own, so
that who adds up their lengths has the worn girth.
"""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from drafting.ground.names import safe_id
from drafting.worn.nouns import AtRest, Limb, Reals
from drafting.worn.picture.dressed import whole_cloth
from drafting.worn.stands.levels import level_points


def mesh_text(rest: AtRest) -> str:
    """Return the text of the file."""
    return "\n".join(_lines(rest)) + "\n"


def _lines(rest: AtRest) -> Iterator[str]:
    mesh, whole = rest.mesh, whole_cloth(rest)
    yield f"# {safe_id(mesh.garment)}: a form, not a fitting; mm, x to the wearer's left, y to the back, z up"
    yield from map(_vertex, whole.points)
    pieces = mesh.piece[whole.own]
    for number, piece in enumerate(mesh.pieces):
        yield f"g piece.{safe_id(piece.name)}"
        yield from (f"f {a} {b} {c}" for a, b, c in whole.triangles[pieces == number] + 1)
    count = len(whole.points)
    for name, points in level_lines(rest):
        yield from map(_vertex, points)
        yield f"g level.{safe_id(name)}"
        yield "l " + " ".join(str(count + n) for n in range(1, len(points) + 1))
        count += len(points)


def _vertex(point: Reals) -> str:
    return "v " + " ".join(f"{value:.3f}" for value in point)


def level_lines(rest: AtRest) -> Iterator[tuple[str, Reals]]:
    """Yield each level with its name, as a line: of the whole trunk, and of each arm and leg."""
    for level in rest.mesh.levels:
        points = level_points(rest, level)
        if not rest.mesh.halved:
            yield level.name, points
        elif level.limb in (Limb.ARM, Limb.LEG):
            yield f"{level.name}.left", points
            yield f"{level.name}.right", points * (-1, 1, 1)
        else:
            yield level.name, np.concatenate((points, points[::-1] * (-1, 1, 1)))
