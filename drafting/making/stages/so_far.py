"""The garment so far, laid flat: pieces grouped by what is sewn, each where it lies among its group.

    goods -> SoFar -> with_seam(so_far, seam) -> SoFar ...

The back is the root of its group. A seam counts as lying flat where its two sides meet on the table; one
that closes a ring or is eased far round a curve only makes its parts one in the hand.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

import numpy as np

from drafting.draft.draft import EdgeRef, Seam
from drafting.draft.roles import PieceRole
from drafting.geometry.area_room import shared_area
from drafting.geometry.curve import Points
from drafting.geometry.moves import STAY, Motion, best_fit, mirrored_in
from drafting.ground.frozen import freeze
from drafting.making.stages.shapes import Goods, LaidPieces, Shape, matching, pieces_along

OVERLAP = 0.12
"""Share of the smaller of two laid pieces that may lie on the other (ours)."""

LIES_FLAT = 25.0
"""mm: root mean square by which a seam's two sides may miss each other and still be laid together (ours)."""


@dataclass(frozen=True, eq=False)
class SoFar:
    """What is sewn by now: `group` and `where` by piece, the seams that are `laid` flat, all that are `sewn`."""

    goods: Goods
    group: Mapping[str, str] = field(default_factory=dict)
    where: Mapping[str, Motion] = field(default_factory=dict)
    laid: tuple[str, ...] = ()
    sewn: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        freeze(self, "group", "where")

    def beside(self, piece: str) -> dict[str, Motion]:
        """Return where every piece of a piece's group lies."""
        own = self.group[piece]
        return {name: self.where[name] for name, group in self.group.items() if group == own}

    def parts(self, chain: Sequence[EdgeRef]) -> list[dict[str, Motion]]:
        """Return the pieces along a chain, those of one group together."""
        found: dict[str, dict[str, Motion]] = {}
        for piece in pieces_along(chain):
            found.setdefault(self.group[piece], {})[piece] = self.where[piece]
        return list(found.values())


def nothing_sewn(goods: Goods) -> SoFar:
    return SoFar(goods, {name: name for name in goods.shapes}, dict.fromkeys(goods.shapes, STAY))


def with_shape(so_far: SoFar, shape: Shape) -> SoFar:
    """Return the garment with a piece that was shaped: a dart sewn."""
    shapes = {**so_far.goods.shapes, shape.name: shape}
    return replace(so_far, goods=replace(so_far.goods, shapes=shapes))


def with_seam(so_far: SoFar, seam: Seam) -> SoFar:
    """Return the garment with one more seam sewn, its parts laid together where they lie flat."""
    so_far = replace(so_far, sewn=(*so_far.sewn, seam.name))
    if seam.a == seam.b:
        return replace(so_far, laid=(*so_far.laid, seam.name))
    a, b = ({so_far.group[piece] for piece in pieces_along(chain)} for chain in (seam.a, seam.b))
    if len(a) != 1 or len(b) != 1 or a == b:
        return so_far
    (root,), (guest,) = a, b
    if _goes_to(so_far, root, guest):
        root, guest = guest, root
    move = _flat(so_far, seam, so_far.beside(root), so_far.beside(guest))
    if move is None:
        return so_far
    moved = {name: move.after(so_far.where[name]) for name in so_far.beside(guest)}
    return replace(
        so_far,
        group={**so_far.group, **dict.fromkeys(moved, root)},
        where={**so_far.where, **moved},
        laid=(*so_far.laid, seam.name),
    )


def _goes_to(so_far: SoFar, one: str, other: str) -> bool:
    """Return whether the first group is laid to the second: to the back, else to the larger."""
    shapes = so_far.goods.shapes

    def rank(group: str) -> tuple[bool, float]:
        pieces = so_far.beside(group)
        backs = any(shapes[p].piece.role is PieceRole.BACK and not shapes[p].piece.material for p in pieces)
        return backs, so_far.goods.size(list(pieces))

    return rank(other) > rank(one)


def _flat(so_far: SoFar, seam: Seam, root: LaidPieces, guest: dict[str, Motion]) -> Motion | None:
    """Return the move that lays one group to another along a seam, None where they do not lie flat."""
    here, there = meeting_points(so_far, seam, root, guest)
    if not len(here):
        return None
    move = best_fit(there, here)
    miss = float(np.sqrt(np.mean(np.abs(there - move(here)) ** 2)))
    return None if miss > LIES_FLAT or _overlaps(so_far, root, guest, move) else move


def meeting_points(so_far: SoFar, seam: Seam, root: LaidPieces, guest: LaidPieces) -> tuple[Points, Points]:
    """Return points of the guest's and the root's side that meet; of both halves, where both are whole."""
    in_root = seam.a[0][0] in root
    a, b = matching(so_far.goods, seam, root if in_root else guest, guest if in_root else root)
    here, there = (b, a) if in_root else (a, b)
    axes = [axis_of(so_far, pieces) for pieces in (guest, root)]
    if axes[0] and axes[1]:
        here = np.concatenate([here, mirrored_in(*axes[0])(here)])
        there = np.concatenate([there, mirrored_in(*axes[1])(there)])
    return here, there


def _overlaps(so_far: SoFar, root: LaidPieces, guest: Mapping[str, Motion], move: Motion) -> bool:
    shapes = so_far.goods.shapes
    for name, own in guest.items():
        ring = move.after(own)(shapes[name].outline)
        for other, where in root.items():
            least = min(shapes[name].area, shapes[other].area)
            if shared_area(ring, where(shapes[other].outline)) > OVERLAP * least:
                return True
    return False


# ---------------------------------------------------------------------------------- the other hand


def axis_of(so_far: SoFar, where: LaidPieces) -> tuple[complex, complex] | None:
    """Return the middle of the body among laid pieces: a fold, or a seam of a pair to itself."""
    shapes = so_far.goods.shapes
    for name, placing in where.items():
        fold = shapes[name].axis
        if fold and isinstance(placing, Motion):
            return placing.point(fold[0]), placing.point(fold[1])
    for seam in (so_far.goods.seams[name] for name in so_far.laid if name in so_far.goods.seams):
        piece, edge = seam.a[0]
        if seam.a == seam.b and piece in where and shapes[piece].piece.pair:
            line = where[piece](shapes[piece].edges[edge])
            if bulge(line) <= STRAIGHT:
                return complex(line[0]), complex(line[-1])
    return None


STRAIGHT = 0.03
"""Bulge of a seam over its length up to which both hands open out flat (ours)."""


def bulge(line: Points) -> float:
    """Return how far an open line leaves the chord of its ends, as a share of the chord."""
    chord = line[-1] - line[0]
    return float(np.abs(((line - line[0]) * np.conj(chord)).imag).max() / max(abs(chord) ** 2, 1e-9))


def hands_of(so_far: SoFar, where: LaidPieces) -> tuple[Motion, ...]:
    """Return how the two hands of laid pieces lie: as drafted, and mirrored where there is a middle."""
    axis = axis_of(so_far, where)
    return (STAY, mirrored_in(*axis)) if axis else (STAY,)
