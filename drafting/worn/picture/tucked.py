"""Garments over one another: what lies beneath is pressed inside what is worn over it. A picture, not numbers.

Each inner point is taken to the nearest place of the outer cloth and, where it lies outside, moved to its
inside; never into the form. What moved draws its neighbours along, so that no point stands out alone.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from scipy.sparse import csr_matrix
from scipy.spatial import cKDTree

from drafting.worn.contact import DistanceField
from drafting.worn.nouns import AtRest, Limb, Reals, Truth, Whole
from drafting.worn.picture.dressed import WholeCloth, whole_cloth
from drafting.worn.picture.scene import smooth_normals
from drafting.worn.picture.spots import NEAREST, shares

ROUNDS = 6
"""How often it is pressed and evened out (ours: then nothing moves on)."""

GAP = 3.0
"""mm that the inner cloth is kept inside the outer (ours: flat triangles of 20 mm on a round body)."""

REACH, OUT = 140.0, 70.0
"""mm: farther inside, or farther outside, a point does not lie beneath the outer cloth (by eye)."""

OUT_BELOW = 250.0
"""mm: the same outside of what hangs from the waist, in which all that reaches below its top is tucked: what falls
straight from a great belly hangs so far before the legs (by eye)."""

FAR_ABOVE = 150.0
"""mm that a garment goes up above another in which it is tucked at the waist (by eye)."""

SIDEWAYS = 12.0
"""mm past the edge of the outer cloth at which a point is no more beneath it."""

PAST = 30.0
"""mm past the middle of an arm that cloth over it lies at least (ours: a child's arm is 25 thick in the half)."""

WAISTBAND = 30.0
"""mm below the top of trousers from which on what is tucked into them is in them all round (ours)."""

FORM_KEPT = 0.5
"""mm kept off the form."""


@dataclass(frozen=True, eq=False)
class Beneath:
    """For each point (N,): whether it lies under the cloth, how far outside it, and the cloth's way out (N, 3)."""

    under: Truth
    outside: Reals
    way: Reals


class OuterCloth:
    """The cloth of a garment, ready to be asked where points lie beside it: the triangles `kept` (T,) of its mesh,
    or those that face outwards, which leaves out lapels. What goes up to `over` (mm over the floor) beneath it is
    tucked in where the cloth ends far below that, as trousers and skirts do."""

    def __init__(
        self, rest: AtRest, field: DistanceField, kept: Truth | None = None, over: float = -np.inf
    ) -> None:
        whole = whole_cloth(rest)
        self.points = whole.points
        self.triangles = whole.triangles[faces_out(whole, field) if kept is None else kept[whole.own]]
        self.normals = smooth_normals(self.points, self.triangles)
        top = float(self.points[:, 2].max())
        self.out, self.top = (OUT_BELOW, top) if over > top + FAR_ABOVE else (OUT, np.inf)
        self.at_end = _at_end(self.triangles, len(self.points))
        self.tree = cKDTree(self.points[self.triangles].mean(axis=1))

    def beneath(self, points: Reals) -> Beneath:
        """Return where `points` lie to the cloth, by the nearest place on it."""
        _, near = self.tree.query(points, k=NEAREST)
        part = shares(self.points[self.triangles[near]], points)
        places = np.einsum("nkb,nkbc->nkc", part, self.points[self.triangles[near]])
        best = np.linalg.norm(points[:, None] - places, axis=2).argmin(axis=1)
        row = np.arange(len(points))
        face = self.triangles[near[row, best]]
        way = np.einsum("nb,nbc->nc", part[row, best], self.normals[face])
        way /= np.maximum(np.linalg.norm(way, axis=1, keepdims=True), 1e-9)
        off = points - places[row, best]
        outside = np.einsum("nc,nc->n", off, way)
        aside = np.linalg.norm(off - outside[:, None] * way, axis=1)
        under = (
            (outside > -REACH)
            & (outside < self.out)
            & (points[:, 2] < self.top)
            & ((aside < SIDEWAYS + 0.3 * np.abs(outside)) | ~self.at_end[near[row, best]])
        )
        return Beneath(under, outside, way)


def faces_out(whole: WholeCloth, field: DistanceField) -> Truth:
    """Return (T,): which triangles have their right side away from the form; a lapel has not."""
    corners = whole.points[whole.triangles]
    faces = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    beyond = corners.mean(axis=1) + faces / np.maximum(np.linalg.norm(faces, axis=1, keepdims=True), 1e-9)
    return np.asarray(field.distance(beyond) > field.distance(corners.mean(axis=1)))


def _at_end(triangles: Whole, count: int) -> Truth:
    """Return (T,): which triangles touch an end of the cloth; beside any other, cloth beneath is beneath."""
    pairs = np.sort(np.concatenate([triangles[:, [i, j]] for i, j in ((0, 1), (1, 2), (2, 0))]), axis=1)
    sides, times = np.unique(pairs, axis=0, return_counts=True)
    end = np.zeros(count, bool)
    end[sides[times == 1].ravel()] = True
    return np.asarray(end[triangles].any(axis=1))


def tucked(inner: AtRest, outer: AtRest, field: DistanceField) -> AtRest:
    """Return the inner garment pressed inside the outer one, and off the form."""
    cloth, even, free = _over(inner, outer, field), evened(inner), _sleeves_over_none(inner, outer)
    points = inner.points
    for _ in range(ROUNDS):
        found = cloth.beneath(points)
        depth = np.where(found.under & ~free, np.maximum(found.outside + GAP, 0), 0)
        move = -depth[:, None] * found.way
        spread = even @ (even @ move)
        pressed = np.where(depth[:, None] > 0, move, spread)
        points = kept_off(points + pressed, field)
        points = _on_middle(inner, points)
    return replace(inner, points=points)


def _over(inner: AtRest, outer: AtRest, field: DistanceField) -> OuterCloth:
    return OuterCloth(outer, field, over=float(inner.points[:, 2].max()))


@dataclass(frozen=True, eq=False)
class Covered:
    """Of a garment beneath another: the `points` (count,) that lie under its cloth, and the `triangles` (T,) that
    it hides though they are not drawn inside it."""

    points: Truth
    triangles: Truth


def covered(inner: AtRest, outer: AtRest, field: DistanceField) -> Covered:
    """Return what of a garment that was pressed inside another is hidden by it.

    Where its cloth goes from the body to the arm lower than that of the other, its corners lie inside and its
    middle in the open between the two: such cloth lies in folds in the other's armhole.
    """
    cloth, free = _over(inner, outer, field), _sleeves_over_none(inner, outer)
    corners = inner.points[inner.mesh.sewn]
    within = cloth.beneath(inner.points)
    points = within.under & (within.outside < 0.0) & ~free
    middle = cloth.beneath(corners.mean(axis=1))
    hidden = points[inner.mesh.sewn].all(axis=1) & (middle.outside > 0.0)
    in_legs = _in_legs(inner, outer, cloth.top)
    return Covered(points | in_legs, hidden | in_legs[inner.mesh.sewn].all(axis=1))


def _in_legs(inner: AtRest, outer: AtRest, top: float) -> Truth:
    """Return (count,): points of what is tucked into trousers, where it hangs below their waist.

    It is drawn between the legs, where its tail hung before they were put on, and is in them.
    """
    legs = any(piece.limb is Limb.LEG for piece in outer.mesh.pieces)
    sleeves = np.array([piece.limb is Limb.ARM for piece in inner.mesh.pieces], bool)[inner.mesh.piece]
    tucked_in: Truth = np.full(inner.mesh.count, legs and np.isfinite(top))
    tucked_in[np.unique(inner.mesh.sewn[sleeves])] = False
    return tucked_in & (inner.points[:, 2] < top - WAISTBAND)


def _sleeves_over_none(inner: AtRest, outer: AtRest) -> Truth:
    """Return (count,): points of sleeves, where what is worn over them has none and goes over no arm."""
    free = np.zeros(inner.mesh.count, bool)
    arms = np.array([piece.limb is Limb.ARM for piece in inner.mesh.pieces], bool)[inner.mesh.piece]
    if arms.any() and not any(piece.limb is Limb.ARM for piece in outer.mesh.pieces):
        sleeves = np.unique(inner.mesh.sewn[arms])
        free[sleeves] = not _over_arms(inner.points[sleeves], outer.points)
    return free


def _over_arms(sleeves: Reals, outer: Reals) -> bool:
    """Return whether cloth without sleeves reaches out over the upper arm, as a cape does and a waistcoat not."""
    high = np.quantile(sleeves[:, 2], 0.6)
    arm = np.abs(sleeves[sleeves[:, 2] > high, 0]).mean()
    beside = np.abs(outer[outer[:, 2] > high, 0])
    return bool(len(beside)) and float(beside.max()) > arm + PAST


def kept_off(points: Reals, field: DistanceField) -> Reals:
    """Return points, those within the form brought out to its skin."""
    near = field.near(points, FORM_KEPT, curved=False)
    length = np.maximum(np.linalg.norm(near.gradient, axis=1, keepdims=True), 0.2)
    out = points.copy()
    out[near.places] += (FORM_KEPT - near.distance)[:, None] * near.gradient / length
    return out


def _on_middle(rest: AtRest, points: Reals) -> Reals:
    """Return points, those on the middle of a halved garment still there."""
    if not rest.mesh.halved:
        return points
    kept: Reals = np.where(rest.mesh.on_middle[:, None] & (np.arange(3) == 0), 0.0, points)
    return kept


def evened(rest: AtRest) -> csr_matrix:
    """Return the matrix that gives each sewn point the mean of its neighbours."""
    pairs: Whole = np.concatenate([rest.mesh.sewn[:, [i, j]] for i, j in ((0, 1), (1, 2), (2, 0))])
    one, two = np.concatenate((pairs, pairs[:, ::-1])).T
    count = rest.mesh.count
    joined = csr_matrix((np.ones(len(one)), (one, two)), shape=(count, count))
    joined.data[:] = 1.0
    degree = np.maximum(np.asarray(joined.sum(axis=1)).ravel(), 1.0)
    return csr_matrix(joined.multiply(1 / degree[:, None]))
