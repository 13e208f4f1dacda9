"""What hangs from waist or neck, stiffened in one way after another: the same mesh, other plies, another rod."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np
from scipy.spatial import cKDTree

from drafting.draft.draft import EdgeRef
from drafting.draft.frame import BodyHeight
from drafting.fabric import Fabric
from drafting.worn.cloth import Stiffened, Treatment
from drafting.worn.cloth.rods import ALONG, OPEN, RING
from drafting.worn.nouns import AtRest, Limb, Reals, Rod, SewnMesh, Truth, Whole
from drafting.worn.placed.braces import HIGHER
from drafting.worn.stands.hoops import goes_round
from drafting.worn.stands.model import HemWorn

SWING = 30.0
"""mm by which a hem is swung out and in before it is let fall again (ours: about a step's)."""


@dataclass(frozen=True, eq=False)
class TreatedHem:
    """A hem under one treatment: `name` is its key in the words; `hem` is None where it did not come to rest.

    `lines` (N, 3) mm are the hem as it fell.
    """

    name: str
    hem: HemWorn | None
    lines: tuple[Reals, ...]


def treatments_of(fabric: Fabric) -> Iterator[tuple[str, Treatment]]:
    """Yield the treatments that a cloth takes, each with its key in the words."""
    yield "plain", Treatment.PLAIN
    if fabric.takes_starch:
        yield "starched", Treatment.STARCHED_HEAVY
    if fabric.takes_fusible:
        yield "fused", Treatment.FUSED_MEDIUM
        yield "band", Treatment.BAND
    yield "boned", Treatment.BONED


def hangs_free(mesh: SewnMesh, index: int) -> bool:
    """Return whether a piece's hem hangs free: declared to hang, or round the trunk from the waist down."""
    piece = mesh.pieces[index]
    waist = piece.frame.at(BodyHeight.WAIST)
    if piece.limb is not Limb.TRUNK or waist is None:
        return piece.limb is Limb.HANGS
    top = mesh.flat[mesh.triangles[mesh.piece == index]][:, :, 1].max()
    return bool(top < waist.imag + HIGH_WAIST) and all(piece.frame.at(high) is None for high in HIGHER)


HIGH_WAIST = 80.0
"""mm: what goes up farther over its waist is no skirt (ours)."""


def hanging(mesh: SewnMesh) -> Truth:
    """Return (T,): which triangles hang from the waist, or from the neck.

    Of a piece that goes on below its waist in one, between pieces that hang, the part below; of one that goes
    round the trunk from the waist down, what lies below the hip.
    """
    hangs = np.array([piece.limb is Limb.HANGS for piece in mesh.pieces], bool)[mesh.piece]
    beside = np.isin(mesh.sewn, mesh.sewn[hangs]).any(axis=1) & ~hangs
    for number in np.unique(mesh.piece[beside]):
        waist = mesh.pieces[number].frame.at(BodyHeight.WAIST)
        if waist is not None:
            own = mesh.piece == number
            hangs |= own & _lower(mesh, waist)
    for number, piece in enumerate(mesh.pieces):
        place = piece.frame.at(BodyHeight.HIP)
        if place is None:
            place = piece.frame.at(BodyHeight.WAIST)
        if piece.limb is Limb.TRUNK and place is not None and hangs_free(mesh, number):
            hangs |= (mesh.piece == number) & _lower(mesh, place)
    return hangs


def _lower(mesh: SewnMesh, place: complex) -> Truth:
    """Return (T,): which flat triangles lie lower than a place."""
    lower: Truth = mesh.flat[mesh.triangles][:, :, 1].mean(axis=1) < place.imag
    return lower


def hanging_points(mesh: SewnMesh) -> Truth:
    """Return (count,): which sewn points belong to nothing but what hangs from the waist."""
    hangs = hanging(mesh)
    free = np.zeros(mesh.count, bool)
    free[mesh.sewn[hangs].ravel()] = True
    free[mesh.sewn[~hangs].ravel()] = False
    return free


def treated_mesh(mesh: SewnMesh, hems: Iterable[EdgeRef], stiff: Stiffened) -> SewnMesh:
    """Return the mesh with what hangs stiffened so, and in no other way; its own bones are taken out.

    A bone runs along the hem of pieces that hang free, not round a pleat into the piece behind: a round rod where
    it goes all round, else a spiral one, as the draft would take.
    """
    hangs, lines = hanging(mesh), {ref: mesh.edges[ref] for ref in hems if ref in mesh.edges}
    low = hangs & _near_hem(mesh, np.concatenate(list(lines.values())), stiff.hem_depth)
    first = len(mesh.plies)
    ply = np.where(low, first + 1, np.where(hangs, first, mesh.ply))
    free = hanging_points(mesh)
    kept = tuple(rod for rod in mesh.rods if not free[rod.vertices[1:-1]].all())
    hung = {piece.name for index, piece in enumerate(mesh.pieces) if hangs_free(mesh, index)}
    boned = chained([line for ref, line in lines.items() if ref[0] in hung]) if stiff.boned else ()
    rods = tuple(Rod(line, RING if goes_round(mesh, line) else OPEN, ALONG) for line in boned)
    return replace(mesh, plies=(*mesh.plies, stiff.whole, stiff.hem), ply=ply, rods=(*kept, *rods))


def treated_alike(one: SewnMesh, other: SewnMesh) -> bool:
    """Return whether two treatments of one mesh are the same: ply for ply, without a bone more or less."""
    pairs = set(zip(one.ply.tolist(), other.ply.tolist(), strict=True))
    bones = [[rod.stiffness for rod in mesh.rods] for mesh in (one, other)]
    return bones[0] == bones[1] and all(one.plies[a] == other.plies[b] for a, b in pairs)


def chained(lines: Sequence[Whole]) -> tuple[Whole, ...]:
    """Return lines of points with those that meet end to end made one, as one bone goes through them all."""
    waiting, found = [list(line) for line in lines], []
    while waiting:
        chain = waiting.pop(0)
        while nearest := next((one for one in waiting if {one[0], one[-1]} & {chain[0], chain[-1]}), None):
            waiting.remove(nearest)
            if chain[-1] not in (nearest[0], nearest[-1]):
                chain.reverse()
            chain += nearest[1:] if nearest[0] == chain[-1] else nearest[-2::-1]
        found.append(np.array(chain))
    return tuple(found)


def _near_hem(mesh: SewnMesh, hem: Reals, depth: float) -> Truth:
    """Return (T,): which triangles have their middle within `depth` mm of the hem, on the flat piece."""
    if not depth:
        return np.zeros(len(mesh.triangles), bool)
    near = np.zeros(len(mesh.triangles), bool)
    for number in range(len(mesh.pieces)):
        own = np.flatnonzero(mesh.piece == number)
        flat = np.unique(mesh.triangles[own])
        edge = flat[np.isin(mesh.merged[flat], hem)]
        if len(edge):
            middles = mesh.flat[mesh.triangles[own]].mean(axis=1)
            near[own] = cKDTree(mesh.flat[edge]).query(middles)[0] <= depth
    return near


def swung(rest: AtRest, by: float) -> Reals:
    """Return the points with what hangs swung `by` mm outwards at its lowest, nothing at its top."""
    free, points = hanging_points(rest.mesh), rest.points.copy()
    heights = points[free, 2]
    share = (heights.max() - heights) / max(float(np.ptp(heights)), 1.0)
    out = points[free, :2]
    out = out / np.maximum(np.linalg.norm(out, axis=1, keepdims=True), 1e-6)
    points[free, :2] += by * share[:, None] * out
    if rest.mesh.halved:
        points[rest.mesh.on_middle, 0] = 0.0
    return points
