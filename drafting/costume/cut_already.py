"""Once the cloth is cut: does the allowance that is left reach, or which pieces are to be cut again?

A piece reaches where its new stitching line, laid on what was cut, has 6 mm of cloth beyond it all round.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from drafting.costume.file import CostumeFile
from drafting.costume.garment import MadeGarment
from drafting.costume.refitted import refitted
from drafting.draft.landmark import landmarks
from drafting.draft.pattern import CutPiece
from drafting.draft.piece import EdgeKind
from drafting.geometry.area import room_ahead
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.names import name_in_words

STAYS = 6.0
"""mm of allowance that have to stay beyond a seam (common practice)."""

STEP = 12.0
"""mm between the places at which a seam is looked at (ours)."""

FARTHEST = 100.0
"""mm: no allowance is wider (ours)."""

SLACK = 0.1
"""mm that a line may lie nearer: less than a pencil is wide."""


@dataclass(frozen=True, slots=True)
class Reach:
    """What is left beyond the new line of one piece that was cut, where it is least: mm, and at which edge.

    `needed` is what has to be left there. A piece that was not cut before has None left.
    """

    garment: str
    piece: str
    edge: str
    left: float | None
    needed: float

    @property
    def holds(self) -> bool:
        """Whether the piece can be let out as it lies."""
        return self.left is not None and self.left >= self.needed - SLACK


def as_cut(costume: CostumeFile) -> CostumeFile | None:
    """Return the costume as its cloth was cut: without the fittings held since; None where none says so.

    What was cut for the wearer whom it was fitted on is not another's.
    """
    fittings = costume.fittings
    first = next((number for number, one in enumerate(fittings.held) if one.cut), None)
    if first is None or fittings.taped is None or not fittings.fitted_on_her:
        return None
    return refitted(costume, fittings.held[:first])


def reaches(before: MadeGarment, after: MadeGarment) -> Iterator[Reach]:
    """Yield for each piece of a garment how far what was cut reaches.

    A hand that was cut as one of a pair is compared with it; a half on the fold that is now opened out, as
    its sides differ, is passed over: it has to be laid on what was cut.
    """
    cut = {piece.piece.name: piece for piece in before.as_sewn.pieces}
    for new in after.as_sewn.pieces:
        pair = cut.get(new.piece.base)
        if pair is not None:
            pair = pair.mirrored() if new.piece.hand == "right" else pair
        old = cut.get(new.piece.name, pair)
        if old is not None and old.piece.fold_edge and not new.piece.fold_edge:
            continue
        yield Reach(after.name, new.piece.name, "", None, STAYS) if old is None else _reach(after.name, old, new)


def _reach(garment: str, old: CutPiece, new: CutPiece) -> Reach:
    """Return how far a piece reaches where it lies best: on the landmark, or on any corner of the same name."""
    ways = [_laid(garment, old, new, by) for by in _ways(old, new)]
    return max(ways, key=lambda one: (one.left or 0.0) - one.needed)


def _ways(old: CutPiece, new: CutPiece) -> Iterator[complex]:
    here, there = landmarks(old.piece, new.piece)
    yield here - there
    ends = {edge.name: edge.path.end for edge in old.piece.edges}
    yield from (ends[edge.name] - edge.path.end for edge in new.piece.edges if edge.name in ends)


def _laid(garment: str, old: CutPiece, new: CutPiece, by: complex) -> Reach:
    found = []
    for edge in new.piece.edges:
        if edge.kind in (EdgeKind.FOLD, EdgeKind.DART):
            continue
        needed = min(STAYS, old.allowances.get(edge.name, 0.0))
        count = max(2, int(edge.length / STEP))
        at = [edge.length * n / count for n in range(1, count)]
        places, outward = [edge.path.at(mm) + by for mm in at], [-1j * edge.path.tangent(mm) for mm in at]
        left = min(room_ahead(old.cut, places, outward, FARTHEST))
        found.append(Reach(garment, new.piece.name, edge.name, left, needed))
    return min(found, key=lambda one: (one.left or 0.0) - one.needed)


def said_of(found: tuple[Reach, ...]) -> Iterator[Finding]:
    """Yield what is to be said of a garment that was cut: each piece to cut again, and what reaches."""
    for one in found:
        if not one.holds:
            left = "it was not cut yet" if one.left is None else _left(one)
            said = f"{one.piece.replace('-', ' ')}: {left}. Cut this piece again"
            yield Finding("cut already", "warning", one.piece, one.left, one.needed, said)
    holding = [one for one in found if one.holds and one.left is not None]
    if holding:
        least = min(holding, key=lambda one: (not one.needed, (one.left or 0.0) - one.needed))
        names = ", ".join(name_in_words(one.piece) for one in holding)
        at = name_in_words(f"{least.piece}.{least.edge}")
        stays = f"; least at the {at}, where {told(least.left or 0.0, 'fine')} stays" if least.needed else ""
        said = f"the allowance of what was cut reaches for {names}{stays}"
        yield Finding("cut already", "note", least.piece, least.left, least.needed, said)


def _left(one: Reach) -> str:
    left = one.left or 0.0
    where = f"beyond its new {one.edge.replace('-', ' ').replace('_', ' ')} seam"
    if left < 0:
        return f"{where} {told(-left, 'fine')} of cloth is missing"
    return f"{told(left, 'fine')} is left {where}, and {told(one.needed, 'fine')} has to stay"
