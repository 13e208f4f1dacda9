"""Finish a draft for cutting: allowances, corners, notches, grain, label. `Draft -> Pattern`."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Any

from drafting.draft.draft import Draft
from drafting.draft.pattern import CutPiece, Pattern
from drafting.draft.piece import Piece
from drafting.draft.walk import notched
from drafting.finish.choices import FinishChoices, proposed
from drafting.finish.cut_line import CutLine, allowances_of, cut_lines
from drafting.finish.marks import grainline, label_room, stretch_arrow
from drafting.finish.notches import notch_marks
from drafting.ground.remembered import remembered_each

__all__ = ["CutLine", "FinishChoices", "allowances_of", "finish", "label_room", "proposed"]


NOTHING: Mapping[str, float] = MappingProxyType({})


def finish(
    draft: Draft,
    garment: str,
    fabric: str,
    choices: FinishChoices | None = None,
    stretches: Mapping[str, float] = NOTHING,
) -> Pattern:
    """Return the draft's pieces ready for cutting, numbered in the draft's order from 1.

    `stretches` says of each material ("" the garment's own cloth) that stretches how many degrees its
    greatest stretch lies off the warp: pieces of it carry an arrow. Notches are taken from the seams,
    on both sides at once. Never raises for a shape that leaves no room: what had to be given up is said
    in the pattern's findings.

    >>> from drafting.geometry import line
    >>> from drafting.draft.piece import Edge, EdgeKind
    >>> corners = (0j, 100 + 0j, 100 + 100j, 100j, 0j)
    >>> edges = [Edge(n, line(a, b), EdgeKind.HEM) for n, a, b in zip("abcd", corners, corners[1:])]
    >>> (cut,) = finish(Draft((Piece("patch", tuple(edges)),)), "bag", "shell").pieces
    >>> round(cut.cut.area)  # 100 x 100 mm and a hem of 20 mm on every side
    19600
    """
    choices = choices or FinishChoices()
    done = _finished(
        [_Asked.of(p, n, choices, stretches.get(p.cut_from)) for n, p in enumerate(notched(draft).pieces, 1)]
    )
    findings = tuple(finding for _, line in done for finding in line.findings)
    return Pattern(garment, fabric, tuple(cut for cut, _ in done), draft.findings + findings)


@dataclass(frozen=True)
class _Asked:
    """One piece to finish, as the key under which the answer is kept.

    Choices with other defaults are of another class: they are told apart by their `values` alone.
    """

    piece: Piece
    number: int
    values: tuple[tuple[str, Any], ...]
    stretch: float | None
    choices: FinishChoices = field(compare=False)

    @staticmethod
    def of(piece: Piece, number: int, choices: FinishChoices, stretch: float | None) -> _Asked:
        return _Asked(piece, number, tuple(vars(choices).items()), stretch, choices)

    def __hash__(self) -> int:
        return hash((self.piece.name, self.number, self.piece.edges[0].path))


@remembered_each(64)
def _finished(asked: list[_Asked]) -> list[tuple[CutPiece, CutLine]]:
    lines = cut_lines([(one.piece, one.choices) for one in asked])
    return [(_marked(one, line), line) for one, line in zip(asked, lines, strict=True)]


def _marked(asked: _Asked, line: CutLine) -> CutPiece:
    piece = asked.piece
    grain = grainline(piece)
    arrow = None if asked.stretch is None else stretch_arrow(piece, grain, asked.stretch)
    return CutPiece(
        piece=piece,
        number=asked.number,
        cut=line.path,
        allowances=line.allowances,
        notches=notch_marks(piece, line),
        grainline=grain,
        stretch_arrow=arrow,
        caps=line.caps,
    )
