"""The cloth of one leg where it meets itself: a wide hem folds flat, and its walls stay on their own sides.

Looked at anew as friction is; between two looks each vertex has the plane of the wall that it faces. What lies
between two walls tells how they meet, whether or not they have slipped through one another: the leg winds round it
once, either way, where their insides meet, and not at all or twice where their outsides do, as in a pleat.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy.spatial import cKDTree

from drafting.worn.contact import DistanceField
from drafting.worn.nouns import Limb, Reals, SewnMesh, Truth, Whole
from drafting.worn.settled.sheet import ClothSheet
from drafting.worn.settled.touch import FIRMNESS, SKIN

# m: so near a wall is reckoned with until the next look.
_RECKONED = 0.012
# m: how far apart walls stay, which is more than any cloth is thick: between their vertices they are straight.
_APART = 3e-3
# m: a vertex this far past a wall's rim does not meet it.
_PAST = 5e-3
# How far towards the middle of a triangle one goes from a spot on it to ask: along a rim a level finds no cloth.
_OFF_THE_RIM = 0.25
# A section that winds round a spot so nearly a whole number of times is closed.
_CLOSED = 0.1
# Cosine between the ways out of two walls that face one another, at most.
_OPPOSED = -0.3
# Triangles that are tried round a vertex: so many, and with their middles within so many m.
_TRIED, _TRIED_WITHIN = 48, 0.04


@dataclass(frozen=True, eq=False)
class LegCloth:
    """Cloth that may meet itself: `places` (P,) vertices, `triangles` (T, 3) of sewn vertices, in `count` of all.

    `out` (T,): 1 where a triangle's corners run anticlockwise seen from outside, else -1; `leg` (count,) and
    `of_leg` (T,): to which leg each belongs.
    """

    count: int
    places: Whole
    triangles: Whole
    out: Reals
    leg: Whole
    of_leg: Whole


@dataclass(frozen=True, eq=False)
class Walls:
    """The k vertices `places` (k,) with what each faces: `corners` (k, 3), `shares` (k, 3) of the spot.

    `way` (k, 3): unit, from the wall to the side where the vertex belongs; `side` (k,): 1 outside it, else -1.
    """

    places: Whole
    corners: Whole
    shares: Reals
    way: Reals
    side: Reals

    @property
    def pairs(self) -> Whole:
        """(6k, 2): every two of the four vertices of each meeting."""
        four = np.column_stack([self.places, self.corners])
        return np.concatenate([four[:, pair] for pair in _TWO_OF_FOUR])


@dataclass(frozen=True, eq=False)
class Fending:
    """What keeps walls apart: `energy` J; of k meetings the `push` (k,) N along their way, its `rate` (k,) N/m."""

    energy: float
    push: Reals
    rate: Reals


_TWO_OF_FOUR = ([0, 1], [0, 2], [0, 3], [1, 2], [1, 3], [2, 3])


def leg_cloth(mesh: SewnMesh, field: DistanceField | None, start: Reals) -> LegCloth | None:
    """Who may meet; `start` (count, 3) m tells the outside from the inside. None where no legs lie on a form."""
    legs = [index for index, piece in enumerate(mesh.pieces) if piece.limb is Limb.LEG]
    if field is None or not legs:
        return None
    chosen = np.isin(mesh.piece, legs)
    triangles, piece = mesh.sewn[chosen], mesh.piece[chosen]
    away = (_normals(start[triangles]) * _slopes(field, start[triangles].mean(axis=1))).sum(axis=1)
    mean = np.bincount(piece, weights=away, minlength=len(mesh.pieces))
    hands = np.array([0 if one.hand != "right" else 1 for one in mesh.pieces])[piece]
    leg = np.zeros(mesh.count, dtype=np.int64)
    leg[triangles.ravel()] = np.repeat(hands, 3)
    return LegCloth(
        count=mesh.count,
        places=np.unique(triangles),
        triangles=triangles,
        out=np.where(mean < 0, -1.0, 1.0)[piece],
        leg=leg,
        of_leg=hands,
    )


def no_walls() -> Walls:
    none = np.zeros(0, dtype=np.int64)
    return Walls(none, none.reshape(0, 3), np.zeros((0, 3)), np.zeros((0, 3)), np.zeros(0))


def walls_faced(cloth: LegCloth, points: Reals, told: Walls | None = None) -> Walls:
    """Who faces which wall at `points` (count, 3) m: the nearest.

    Who met the same wall when it was `told` before keeps that side: where many layers are crumpled together each
    look would else tell another side of them, and push them about without end.
    """
    facets = points[cloth.triangles]
    out = _normals(facets) * cloth.out[:, None]
    vertex, facet = _near(cloth, points, facets, out)
    shares = np.clip(_shares(facets[facet], points[vertex]), 0.0, None)
    shares /= shares.sum(axis=1)[:, None]
    away = points[vertex] - np.einsum("kc,kcx->kx", shares, facets[facet])
    far = np.sqrt((away * away).sum(axis=1))
    order = np.lexsort((far, vertex))
    first = order[np.unique(vertex[order], return_index=True)[1]]
    vertex, facet = vertex[first], facet[first]
    shares, away, far = shares[first], away[first], far[first]
    off = (away * out[facet]).sum(axis=1)
    kept = np.flatnonzero((np.abs(off) < _RECKONED) & (far**2 - off**2 < _PAST**2))
    vertex, facet = vertex[kept], facet[kept]
    inward = _OFF_THE_RIM * np.einsum("kc,kcx->kx", 1.0 / 3.0 - shares[kept], facets[facet])
    spots = points[vertex] - 0.5 * away[kept] + inward
    winds = _windings(cloth, points, spots, cloth.of_leg[facet])
    whole = np.abs(winds - np.rint(winds)) < _CLOSED
    side = np.where(np.rint(winds) % 2 == 1, -1.0, 1.0)
    found = vertex[whole], cloth.triangles[facet][whole]
    side = side[whole] if told is None else _kept_sides(told, *found, side[whole])
    return Walls(*found, shares[kept][whole], side[:, None] * out[facet][whole], side)


def _kept_sides(told: Walls, places: Whole, corners: Whole, side: Reals) -> Reals:
    """The sides (k,), of each vertex that met a wall with a corner in common the one it was told then."""
    order = np.argsort(told.places)
    at = np.searchsorted(told.places, places, sorter=order)
    before = order[np.minimum(at, max(len(order) - 1, 0))] if len(order) else np.zeros(0, dtype=np.int64)
    if not len(before):
        return side
    same = told.places[before] == places
    shared = (told.corners[before][:, :, None] == corners[:, None, :]).any(axis=(1, 2))
    return np.where(same & shared, told.side[before], side)


def _windings(cloth: LegCloth, points: Reals, spots: Reals, leg: Whole) -> Reals:
    """(k,): how often a leg's level section winds round each spot (k, 3); not whole where it is not closed."""
    high = points[cloth.triangles, 2][None] - spots[:, 2, None, None]
    above = high > 0.0
    spot, facet = np.nonzero((above.any(axis=2) != above.all(axis=2)) & (cloth.of_leg == leg[:, None]))
    corners, high, above = points[cloth.triangles[facet], :2], high[spot, facet], above[spot, facet]
    ends = []
    for down in (True, False):
        after = np.roll(above, -1, axis=1)
        edge = (above & ~after if down else ~above & after).argmax(axis=1)
        own, each = np.arange(len(edge)), (edge + 1) % 3
        share = (high[own, edge] / (high[own, edge] - high[own, each]))[:, None]
        at = corners[own, edge] + share * (corners[own, each] - corners[own, edge])
        ends.append(at - spots[spot, :2])
    (ax, ay), (bx, by) = (end.T for end in ends)
    turn = np.arctan2(ax * by - ay * bx, ax * bx + ay * by) * cloth.out[facet]
    return np.bincount(spot, weights=turn, minlength=len(spots)) / (2.0 * np.pi)


def _near(cloth: LegCloth, points: Reals, facets: Reals, out: Reals) -> tuple[Whole, Whole]:
    """Vertices and triangles of others, of one leg, near each other, that look opposite ways."""
    tried = min(_TRIED, len(facets))
    tree = cKDTree(facets.mean(axis=1))
    far, facet = tree.query(points[cloth.places], k=tried, distance_upper_bound=_TRIED_WITHIN)
    vertex = np.repeat(cloth.places, tried)
    found: Truth = np.isfinite(far.reshape(-1))
    vertex, facet = vertex[found], facet.reshape(-1)[found]
    looks = np.zeros_like(points)
    np.add.at(looks, cloth.triangles.ravel(), np.repeat(out, 3, axis=0))
    looks /= np.sqrt((looks * looks).sum(axis=1) + 1e-30)[:, None]
    facing = ((looks[vertex] * out[facet]).sum(axis=1) < _OPPOSED) & (cloth.leg[vertex] == cloth.of_leg[facet])
    vertex, facet = vertex[facing], facet[facing]
    apart = (cloth.triangles[facet] != vertex[:, None]).all(axis=1)
    return vertex[apart], facet[apart]


def fended(walls: Walls, sheet: ClothSheet, points: Reals) -> Fending:
    """A wall presses back what comes nearer than it may, as the form does, without friction."""
    spot = np.einsum("kc,kcx->kx", walls.shares, points[walls.corners])
    depth = np.maximum(_APART - ((points[walls.places] - spot) * walls.way).sum(axis=1), 0.0)
    firm = FIRMNESS * sheet.share[walls.places]
    return Fending(
        energy=float(firm @ depth**3) / (6.0 * SKIN), push=firm * depth**2 / (2.0 * SKIN), rate=firm * depth / SKIN
    )


def fending_forces(walls: Walls, by: Fending, count: int) -> Reals:
    """(count, 3) N: derivative of the energy by the points."""
    found = np.zeros((count, 3))
    push = -by.push[:, None] * walls.way
    np.add.at(found, walls.places, push)
    np.add.at(found, walls.corners.ravel(), (-walls.shares[:, :, None] * push[:, None]).reshape(-1, 3))
    return found


def fending_blocks(walls: Walls, by: Fending) -> Reals:
    """(6k, 3, 3) N/m of `Walls.pairs`: second derivative by one of a pair, as if a spring joined the two.

    The four shares of a meeting add up to nothing, so that it is six such springs, some of them below 0.
    """
    four = np.column_stack([np.ones(len(walls.places)), -walls.shares])
    along = by.rate[:, None, None] * walls.way[:, :, None] * walls.way[:, None, :]
    return np.concatenate([-(four[:, i] * four[:, j])[:, None, None] * along for i, j in _TWO_OF_FOUR])


def _normals(facets: Reals) -> Reals:
    """(T, 3): unit, square to triangles (T, 3, 3)."""
    found = np.cross(facets[:, 1] - facets[:, 0], facets[:, 2] - facets[:, 0])
    return np.asarray(found / np.sqrt((found * found).sum(axis=1) + 1e-30)[:, None])


def _slopes(field: DistanceField, points: Reals) -> Reals:
    """(n, 3): which way the form's distance grows at points m; nowhere beyond its grid."""
    near, found = field.near(points * 1e3, np.inf, curved=False), np.zeros_like(points)
    found[near.places] = near.gradient
    return found


def _shares(facets: Reals, points: Reals) -> Reals:
    """(k, 3): weights of triangles' corners (k, 3, 3) that give the foot of each point (k, 3) on their planes."""
    one, two, away = facets[:, 1] - facets[:, 0], facets[:, 2] - facets[:, 0], points - facets[:, 0]
    a, b, c = (one * one).sum(axis=1), (one * two).sum(axis=1), (two * two).sum(axis=1)
    d, e = (away * one).sum(axis=1), (away * two).sum(axis=1)
    ground = a * c - b * b + 1e-30
    u, v = (c * d - b * e) / ground, (a * e - b * d) / ground
    return np.column_stack([1.0 - u - v, u, v])
