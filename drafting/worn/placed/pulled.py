"""A garment drafted smaller than its wearer is shorter too: it is pulled down until each level lies on the body's.

Left where its own lengths put it, a close top would start, and by friction stay, with its hip line above the hip.
"""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from drafting.draft.frame import BodyHeight, Limb
from drafting.worn.form import tape
from drafting.worn.form.form import Form
from drafting.worn.nouns import MeshLevel, Reals, SewnMesh

CLOSE = 0.97
"""Drafted girth / the body's from which down a level is pulled to its place (ours: below, it holds by itself)."""

NEAR = 12.0
"""mm: how far from a level's own height the run of a drafted girth lies at most (ours)."""


def pulled_down(mesh: SewnMesh, form: Form, upright: list[int], z: Reals) -> Reals:
    """Return the heights `z` (count,) mm with each close level lowered to the body's, what lies between in
    proportion; a height that is not known (NaN) stays so."""
    lowered = list(_lowered(mesh, form, upright, z))
    if not lowered:
        return z
    fixed = form.levels["nape"]
    lies, belongs = (np.array(found) for found in zip(*sorted([*lowered, (fixed, fixed)]), strict=True))
    found: Reals = np.interp(z, lies, belongs) + np.minimum(z - lies[0], 0.0) + np.maximum(z - fixed, 0.0)
    return found


def _lowered(mesh: SewnMesh, form: Form, upright: list[int], z: Reals) -> Iterator[tuple[float, float]]:
    """Yield for each close level how high it lies and where it belongs."""
    lines = [(float(_run(mesh, line, z).mean()), line) for line in mesh.levels if line.limb is Limb.TRUNK]
    for kind in (BodyHeight.BUST, BodyHeight.WAIST, BodyHeight.HIP):
        own = [_height(mesh, piece, place, z) for piece in upright if (place := mesh.pieces[piece].frame.at(kind))]
        belongs = form.levels[kind.value]
        here = [(lies, line) for lies, line in lines if own and abs(lies - float(np.mean(own))) < NEAR]
        if here and here[0][0] > belongs and here[0][1].drafted < CLOSE * tape.girth(form.contour(belongs)):
            yield here[0][0], belongs


def _run(mesh: SewnMesh, line: MeshLevel, z: Reals) -> Reals:
    found: Reals = (z[mesh.sewn[line.triangles]] * line.weights).sum(axis=1)
    return found


def _height(mesh: SewnMesh, piece: int, place: complex, z: Reals) -> float:
    """Return the height of the vertex of a piece that lies nearest to a place on it in height."""
    flat = np.unique(mesh.triangles[mesh.piece == piece])
    nearest = flat[np.abs(mesh.flat[flat, 1] - place.imag).argmin()]
    return float(z[mesh.merged[nearest]])
