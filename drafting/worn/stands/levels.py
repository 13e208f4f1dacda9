"""Along each drafted level of a garment at rest: its girth, how far it stands off, how it is stretched."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

import numpy as np

from drafting.fabric import Fabric
from drafting.worn.contact import DistanceField
from drafting.worn.form.tape import girth
from drafting.worn.nouns import AtRest, Limb, MeshLevel, Reals, Truth, Whole
from drafting.worn.stands.comfort import CRIMP, gives_at
from drafting.worn.stands.model import WHERE, LevelWorn, StandsOff, Strain, Where

FACING = 0.7
"""Share of the form's slope that must point to front or back for a place to be called so (45 degrees)."""

SHORTEST = 0.5
"""mm: shorter parts of a level say nothing about its stretch."""

SPREAD = 400.0
"""mm: cloth that stands off farther is not near the body at all."""


@dataclass(frozen=True, eq=False)
class LevelParts:
    """The parts between two neighbouring points of a level that lie on one piece.

    `worn` and `flat` (S,) mm; `angle` (S,) degrees between the level and the warp; `piece` (S,) of the mesh.
    """

    worn: Reals
    flat: Reals
    angle: Reals
    piece: Whole


def levels_worn(
    rest: AtRest, field: DistanceField, armhole: float, fabrics: Mapping[str, Fabric]
) -> tuple[LevelWorn, ...]:
    """Return every drafted level as worn; strain above the height of the `armhole` is not trusted.

    `fabrics` are the cloths of the pieces' materials; where one is not known nothing is said to give.
    """
    return tuple(_level_worn(rest, level, field, armhole, fabrics) for level in rest.mesh.levels)


def _level_worn(
    rest: AtRest, level: MeshLevel, field: DistanceField, armhole: float, fabrics: Mapping[str, Fabric]
) -> LevelWorn:
    points = level_points(rest, level)
    lengths = np.linalg.norm(np.diff(points, axis=0), axis=1)
    twice = 2.0 if rest.mesh.halved and level.limb in (Limb.TRUNK, Limb.HANGS) else 1.0
    height = float(points[:, 2].mean())
    stands_off = tuple(_stands_off(points, lengths, field))
    strain = _strain(rest, level_parts(rest, level, points), fabrics, height <= armhole)
    worn = twice * float(lengths[~_along_seams(rest, level, lengths)].sum())
    return LevelWorn(
        name=level.name,
        limb=level.limb,
        height=height,
        drafted=level.drafted,
        worn=worn,
        stands_off=stands_off,
        strain=strain,
        slack=max(0.0, worn - _taut_beneath(points, field, mirrored=twice > 1.0)),
    )


def _along_seams(rest: AtRest, level: MeshLevel, lengths: Reals) -> Truth:
    """Return (S - 1,): which steps run along a seam, from where one piece's line meets it to where the next does.

    They belong to no girth as it was drafted.
    """
    piece = rest.mesh.piece[level.triangles]
    return np.asarray((piece[1:] != piece[:-1]) & (lengths > SAME_PLACE))


SAME_PLACE = 3.0
"""mm: lines that meet a seam no farther apart meet in it (ours)."""


def level_points(rest: AtRest, level: MeshLevel) -> Reals:
    """Return (S, 3): the points of a level where they came to rest."""
    corners = rest.points[rest.mesh.sewn[level.triangles]]
    found: Reals = np.einsum("sk,skc->sc", level.weights, corners)
    return found


def _stands_off(points: Reals, lengths: Reals, field: DistanceField) -> Iterator[StandsOff]:
    """Yield how far a level stands off in front, at the sides, behind, each by its share of the length."""
    near = field.near(points, SPREAD, curved=False)
    share = np.convolve(lengths, [0.5, 0.5], mode="full")[near.places]
    slope = near.gradient[:, 1] / np.maximum(np.linalg.norm(near.gradient, axis=1), 1e-9)
    on: dict[Where, Reals] = {"front": slope < -FACING, "side": np.abs(slope) <= FACING, "back": slope > FACING}
    for where in WHERE:
        weight = share * on[where]
        if weight.sum() > 0:
            yield StandsOff(where, max(0.0, float(near.distance @ weight / weight.sum())))


def _taut_beneath(points: Reals, field: DistanceField, mirrored: bool) -> float:
    """Return how long a tape is that is drawn tight round the body beneath the `points` (S, 3) of a level, mm."""
    near = field.near(points, SPREAD, curved=False)
    slope = near.gradient / np.maximum(np.einsum("ij,ij->i", near.gradient, near.gradient), 1e-9)[:, None]
    skin = points[near.places] - near.distance[:, None] * slope
    if mirrored:
        skin = np.concatenate([skin, skin * [-1.0, 1.0, 1.0]])
    if len(skin) < 3:
        return float("inf")
    across = np.linalg.svd(skin - skin.mean(axis=0), full_matrices=False)[2][:2]
    return girth(skin @ across.T)


def level_parts(rest: AtRest, level: MeshLevel, points: Reals) -> LevelParts:
    """Return the parts of a level that lie on one piece: what crosses a seam or a dart is left out."""
    mesh = rest.mesh
    flat = np.einsum("sk,skc->sc", level.weights, mesh.flat[mesh.triangles[level.triangles]])
    step, piece = np.diff(flat, axis=0), mesh.piece[level.triangles]
    drawn, worn = np.linalg.norm(step, axis=1), np.linalg.norm(np.diff(points, axis=0), axis=1)
    kept = (piece[1:] == piece[:-1]) & (drawn > SHORTEST) & (worn > 0.5 * drawn)
    grain = np.array([p.grain for p in mesh.pieces])[piece[:-1]]
    turned = np.abs(np.degrees(np.arctan2(step[:, 1], step[:, 0])) - grain) % 180
    angle = np.minimum(turned, 180 - turned)
    return LevelParts(worn[kept], drawn[kept], angle[kept], piece[:-1][kept])


def _strain(rest: AtRest, parts: LevelParts, fabrics: Mapping[str, Fabric], trusted: bool) -> Strain:
    if not len(parts.flat):
        return Strain(0.0, 0.0, CRIMP, trusted)
    stretch = np.maximum(parts.worn / parts.flat - 1, 0)
    order = np.argsort(stretch)
    passed = np.cumsum(parts.flat[order]) / parts.flat.sum()
    p95 = float(stretch[order][int(np.searchsorted(passed[:-1], 0.95))])
    mean = float(stretch @ parts.flat / parts.flat.sum())
    materials = [p.material for p in rest.mesh.pieces]
    gives = [
        gives_at(fabrics.get(materials[i]), parts.angle[parts.piece == i]).mean() for i in np.unique(parts.piece)
    ]
    return Strain(mean, p95, float(min(gives)), trusted)
