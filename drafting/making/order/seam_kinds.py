"""What each seam of a garment is in the order of work, from what seam and pieces were declared to be.

dart        both edges are legs of one dart, or halves of a pleat laid in an edge
set in      a sleeve's cap meets an armhole
limb        closes a sleeve into a tube
unit        inside a small thing made up flat: cuff, band, collar, stand
attach      joins such a thing to what it belongs to
facing      a facing to its edge
bag         closes the bag of a pocket that is sewn in already
flare       between panels that hang on the bias
body        every other seam
"""

from __future__ import annotations

import itertools
from collections.abc import Iterable
from typing import Literal

from drafting.draft.bias import on_bias
from drafting.draft.by_role import edge_as
from drafting.draft.draft import Draft, Seam
from drafting.draft.piece import EdgeKind, Piece
from drafting.draft.roles import COLLARS, FACINGS, SEWN_ON, SLEEVES, SMALL, EdgeRole, PieceRole, SeamKind

SeamWork = Literal["dart", "fly", "set in", "limb", "unit", "attach", "facing", "bag", "flare", "body"]

WORK: dict[SeamKind, SeamWork] = {
    SeamKind.DART: "dart",
    SeamKind.LAID_PLEAT: "dart",
    SeamKind.FLY: "fly",
    SeamKind.SET_IN: "set in",
    SeamKind.SLEEVE: "limb",
    SeamKind.MADE_UP: "unit",
    SeamKind.ATTACHED: "attach",
    SeamKind.FACING: "facing",
    SeamKind.BAG: "bag",
}
"""Kinds of seams that have their own place in the work; all others belong to the body."""


def is_sleeve(piece: Piece) -> bool:
    """Return whether a piece belongs to a sleeve."""
    return piece.role in SLEEVES


def is_facing(piece: Piece) -> bool:
    return piece.role in FACINGS


def is_unit(piece: Piece) -> bool:
    """Return whether a piece is made up by itself before it is joined on."""
    return piece.role in SMALL


def kind_of(draft: Draft, seam: Seam) -> SeamWork:
    """Return what a seam is; two legs of a dart are one even where nobody says so."""
    if all(draft.edge(ref).kind is EdgeKind.DART for ref in (*seam.a, *seam.b)):
        return "dart"
    return WORK.get(seam.kind) or ("flare" if on_bias(draft, seam) else "body")


def order_of_body(draft: Draft, seams: Iterable[Seam]) -> list[Seam]:
    """Return the seams of a body as they are sewn: what is flat first, and what is gathered once it is whole."""
    left = sorted(seams, key=lambda seam: late(draft, seam))
    found: list[Seam] = []

    def sew(seam: Seam) -> None:
        if seam in left:
            left.remove(seam)
            for other in crossed(draft, seam, tuple(left)):
                sew(other)
            found.append(seam)

    while left:
        sew(left[0])
    return found


def panels_first(draft: Draft, seams: Iterable[Seam]) -> list[Seam]:
    """Return seams as they are named in one step: darts, then panels, which shoulders and sides run across."""

    def rank(seam: Seam) -> int:
        return 0 if kind_of(draft, seam) == "dart" else 1 if seam.kind is SeamKind.PANEL else 2

    return sorted(seams, key=rank)


def crossed(draft: Draft, seam: Seam, seams: Iterable[Seam]) -> list[Seam]:
    """Return those of `seams` that a gathered seam runs across: its threads are drawn up over them.

    Quarter marks are shared out over the whole of a tier, so its strips are one before they are gathered.
    """
    if not any(draft.edge(ref).sewn is not None for ref in (*seam.a, *seam.b)):
        return []
    joints = [{one, other} for chain in (seam.a, seam.b) for (one, _), (other, _) in itertools.pairwise(chain)]
    return [s for s in seams if s != seam and any(_joins(s, joint) for joint in joints if len(joint) == 2)]


def _joins(seam: Seam, two: set[str]) -> bool:
    """Return whether a seam joins these two pieces, one on either side of it."""
    sides = [{piece for piece, _ in chain} for chain in (seam.a, seam.b)]
    return all(side & two for side in sides) and two <= sides[0] | sides[1] and not two <= sides[0] & sides[1]


def late(draft: Draft, seam: Seam) -> int:
    """Return how late a body seam is sewn: fly, panels, yokes, centres, waist, shoulders, sides, crotch.

    What hangs from a waist is joined before it is hung there.
    """
    if below_fly(draft, seam):
        return 0  # a fly is made while the front lies flat
    if all(draft[piece].role in HUNG for piece, _ in (*seam.a, *seam.b)):
        return 1
    return next((i for i, kinds in enumerate(ORDER, 1) if seam.kind in kinds), len(ORDER) + 1)


def below_fly(draft: Draft, seam: Seam) -> bool:
    """Return whether a seam runs on below a fly: left to right, on a piece that has one."""
    flies = any(edge_as(draft[piece], EdgeRole.FLY) for piece, _ in (*seam.a, *seam.b))
    return flies and seam.kind is SeamKind.CROTCH


HUNG = frozenset({PieceRole.TAIL, PieceRole.GODET})
"""Pieces that hang from a body."""

ORDER = (
    (SeamKind.PANEL, SeamKind.PRINCESS),
    (SeamKind.YOKE,),
    (SeamKind.CENTRE, SeamKind.PLEAT),
    (SeamKind.WAIST,),
    (SeamKind.SHOULDER,),
    (SeamKind.SIDE,),
    (SeamKind.INSEAM,),
    (SeamKind.CROTCH,),
)
"""Seams of a body in the order they are sewn; those of one group as they come, any other last."""

CENTRES = 1 + next(i for i, kinds in enumerate(ORDER) if SeamKind.CENTRE in kinds)
"""How late the seams at the centre are sewn; panels and yokes are joined before."""


def sewn_unit_of(draft: Draft, seam: Seam) -> str:
    """Return which small thing a seam belongs to: `collar`, `cuff`, `waistband` ...; else a small part."""
    pieces = [draft[piece] for piece, _ in (*seam.a, *seam.b)]
    units = [piece.role for piece in pieces if is_unit(piece)]
    if any(role in COLLARS for role in units):
        return "collar"
    if not units and all(piece.role in SEWN_ON for piece in pieces):
        return "strap" if pieces[0].role is PieceRole.STRAP else "pocket flap or welt"
    return units[0].value if units else "small part"
