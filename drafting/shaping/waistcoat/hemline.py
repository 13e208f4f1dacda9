"""A torso to the hip cut off above it: side, hem, and the waist darts that end inside. Half frame, mm.

Fronts and backs are cut at one length of their side seams, counted from the waist, so that the seam still
walks; each hem meets its side at a right angle, so that the joined hem runs on.
"""

from __future__ import annotations

from dataclasses import replace

from drafting.draft.by_role import edges_as
from drafting.draft.piece import Edge, InnerDart, Level, Piece
from drafting.draft.roles import EdgeRole, LevelKind
from drafting.geometry import Path, line
from drafting.geometry.brent import brent_zero

MOST_OF_HIP = 0.85
"""Of the side from waist to hip: no hem is cut lower (ours)."""

DART_ABOVE = 12.0
"""mm at adult scale: a waist dart ends so far above the hem (ours: what is turned up stays flat)."""

OUT_AT_SIDE = -1j
"""The turn from the way up a side to the way in which a hem arrives there: square."""


def cut_at_side(back_side: Path, below: float) -> float:
    """Return how much of the lower end of a side seam is cut off, so that it ends `below` mm under the waist.

    `back_side` runs upwards, its first part from hip to waist.
    """
    hip_to_waist = back_side.lengths[0]
    return hip_to_waist - min(below, MOST_OF_HIP * hip_to_waist)


def side_cut(piece: Piece, cut: float) -> tuple[Edge, ...]:
    """Return the edges of a piece (the side at +x) from its side to the neck, `cut` mm of the side left off."""
    first = edges_as(piece, EdgeRole.SIDE)[0]
    at, last = piece.index(first.name), piece.index(edges_as(piece, EdgeRole.NECK)[-1].name)
    shorter = replace(first, path=first.path.split(cut)[1])
    return (shorter, *piece.edges[at + 1 : last + 1])


def y_at(path: Path, x: float) -> float:
    """Return the height of a path that runs steadily to the right where it passes `x`, or of its nearer end."""
    if not path.start.real < x < path.end.real:
        return (path.start if x <= path.start.real else path.end).imag
    at = float(brent_zero(lambda s: path.at(s).real - x, 0.0, path.length, within=1e-9))
    return path.at(at).imag


def shorter_dart(dart: InnerDart, hem: Path, scale: float) -> InnerDart:
    """Return a waist dart whose lower point lies inside, above the `hem`."""
    tip, left = (dart.leg_a.segments[i].start for i in (0, 1))
    foot, right = dart.leg_a.end, dart.leg_b.segments[1].start
    lowest = y_at(hem, foot.real) + DART_ABOVE * scale
    if foot.imag >= lowest:
        return dart
    foot = complex(foot.real, lowest)
    return InnerDart(dart.name, line(tip, left, foot), line(tip, right, foot))


def levels_above(piece: Piece) -> tuple[Level, ...]:
    """Return the levels that are left of a piece cut off above the hip, where its neck is cut away."""
    return tuple(level for level in piece.levels if level.kind in (LevelKind.BUST, LevelKind.WAIST))
