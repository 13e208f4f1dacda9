"""The signs of a fitting that the worn view can compute: strain, cloth that stands off, a tilted hem.

A form neither breathes nor stands as its wearer does: what is not found here may still be seen at the body.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from drafting.costume.wearing.worn import WornGarment
from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.frame import BodyHeight
from drafting.fitting.signs import FitSign, ShownWorn, WornNumber
from drafting.fitting.to_try import signs_of
from drafting.worn.nouns import AtRest, Limb
from drafting.worn.placed.top_edge import top_edges
from drafting.worn.stands.hems import body_hems, hems_of
from drafting.worn.stands.model import LevelWorn

FAR_OFF = 60.0
"""mm off the form from which cloth hangs loose, whatever the style (ours, by eye)."""

MUCH = FAR_OFF * 2 * math.pi
"""mm of a girth that could be pinched, from which on it hangs loose: as far off all round."""

TILT = 25.0
"""mm by which a hem rises in front or behind beyond what was drafted, and what is usual, before it is told: over
twice by how much plain shirts, tops and coats differ in it on 15 measured people (ours, sd 10)."""

HITCHES = 14.0
"""mm by which the front of what hangs from the shoulders usually rises at rest against its back, as cloth goes
over the chest and falls into the hollow of the back: the mean of the same (ours; wherever the seams began)."""


@dataclass(frozen=True, slots=True)
class SignSeen:
    """A sign that the worn view shows, and the number that shows it: a fraction of strain, or mm."""

    sign: FitSign
    value: float


def signs_worn(garment: WornGarment, draft: Draft) -> Iterator[SignSeen]:
    """Yield the signs that a garment at rest shows; none where it did not come to rest.

    One that slid shows by its cloth only where it is cut too narrow: all else comes of that.
    """
    if not garment.found.settled:
        return
    kinds = {level.name: level.kind for piece in draft.pieces for level in piece.levels}
    levels = [(kinds.get(level.name), level) for level in garment.found.levels]
    for sign in signs_of(draft):
        shown = sign.worn
        if shown is None or (garment.found.slid and shown.number is not WornNumber.STRAIN):
            continue
        if shown.number is WornNumber.HEM:
            found = _tilted(shown, _unusual_tilt(garment.rest, draft))
        else:
            here = [level for kind, level in levels if kind is shown.level]
            found = next((value for level in here for value in _at_level(shown, level)), None)
        if found is not None:
            yield SignSeen(sign, found)


def _at_level(shown: ShownWorn, level: LevelWorn) -> Iterator[float]:
    if shown.number is WornNumber.STRAIN and level.strain.trusted and level.strain.pulls:
        yield level.strain.p95
    if shown.number is WornNumber.SLACK and level.slack > MUCH:
        yield level.slack
    if shown.number is WornNumber.STANDS_OFF:
        yield from (off.mm for off in level.stands_off if shown.face in ("", off.where) and off.mm > FAR_OFF)


def _tilted(shown: ShownWorn, tilt: float | None) -> float | None:
    """Return by how much the hem rises on the face that a sign names, mm, or None where it does not."""
    if tilt is None:
        return None
    rises = tilt if shown.face == "front" else -tilt
    return rises if rises > TILT else None


def _unusual_tilt(rest: AtRest, draft: Draft) -> float | None:
    """Return how much higher a hem hangs in front, mm, than it usually does; less than 0: behind."""
    tilt = hem_tilt(rest, draft)
    return tilt if tilt is None or not len(rest.mesh.shoulders) else tilt - HITCHES


def hem_tilt(rest: AtRest, draft: Draft) -> float | None:
    """Return how much higher the middle of a hem hangs in front than behind, mm, beyond what was drafted.

    As drafted a place hangs as far below the waist as on its piece: a waistcoat is shorter behind, a shirt's
    tails are longer there, and neither is a fault. None without a hem all round.
    """
    rows = [row for ref in body_hems(rest.mesh, hems_of(draft)) for row in _hung(rest, ref)]
    if not rows:
        return None
    across, deep, lower = np.array(rows).T
    middle = abs(across) < 0.35 * abs(across).max()
    front = middle & (deep < np.median(deep))
    back = middle & ~front
    return float(lower[back].mean() - lower[front].mean()) if front.any() and back.any() else None


def _hung(rest: AtRest, ref: EdgeRef) -> Iterator[tuple[float, float, float]]:
    """Yield x, y of each place of a hem, and how much lower it hangs than drafted below the waist, mm.

    What hangs from its top edge hangs straight from there, as the panel of a circle does that lies on its side.
    """
    mesh = rest.mesh
    number = next(n for n, piece in enumerate(mesh.pieces) if piece.name == ref[0])
    piece, own = mesh.pieces[number], mesh.piece == number
    corners = mesh.triangles[own].ravel()
    flat = dict(zip(mesh.sewn[own].ravel().tolist(), corners.tolist(), strict=True))
    waist = piece.frame.at(BodyHeight.WAIST)
    tops = mesh.flat[top_edges(mesh, number)] if piece.limb is Limb.HANGS and piece.frame.heights else None
    for vertex in mesh.edges[ref].tolist():
        x, y, z = rest.points[vertex].tolist()
        at = mesh.flat[flat[vertex]]
        if tops is not None:
            drafted = -float(np.linalg.norm(tops - at, axis=1).min())
        else:
            drafted = 0.0 if waist is None else float(at[1]) - waist.imag
        yield x, y, drafted - z
