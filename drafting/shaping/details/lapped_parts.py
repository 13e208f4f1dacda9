"""A wide interfacing in parts that lie edge over edge, with no seam, so that each fits a narrow fusible. mm.

  part 1      part 2
.---------:---------.
|        : :        |     both reach half the lap beyond the line between them
'---------:---------'
"""

from __future__ import annotations

import cmath
import itertools
import math
from collections.abc import Iterable, Iterator
from dataclasses import replace

from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole
from drafting.geometry import line
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.names import name_in_words

WIDE = 400.0
"""mm across the grain that a part takes at most: fusibles are sold from 90 cm and lie folded (common practice)."""

LAP = 10.0
"""mm by which one part lies over the next (common practice: 6 to 12)."""

MOST = 24
"""Parts at most (ours): a ring of the widest skirt has 20."""


def lapped_parts(piece: Piece, along: str) -> tuple[Piece, ...]:
    """Return an interfacing in as few parts, alike along its edge `along`, as are no wider than `WIDE` each.

    The ring has four edges: `along`, an end, the inner edge, the other end. An end on the fold keeps to its part;
    any other part of a half piece is cut twice, a left and a right. With `MOST` parts they may be wider still.
    """
    if len(piece.edges) != 4:
        return (piece,)
    for count in range(1, MOST + 1):
        parts = _parted(piece, along, count)
        if max(map(_across, parts)) <= WIDE:
            break
    return parts if len(parts) > 1 else (piece,)


def wide_parts_said(parts: Iterable[Piece]) -> Iterator[Finding]:
    """Yield a note for each part of an interfacing that is wider than half a narrow fusible all the same."""
    for part in parts:
        if (wide := _across(part)) > WIDE:
            yield Finding(
                "interfacing",
                "note",
                part.name,
                wide,
                WIDE,
                f"{name_in_words(part.name)} lies {told(wide)} across the grain: a fusible folded in two has "
                f"about {told(WIDE)}. Lay it on the fusible opened out, or cut it in parts that lap {told(LAP)}.",
            )


def _across(piece: Piece) -> float:
    """Return how wide a piece lies across its grain."""
    upright = cmath.rect(1.0, math.radians(90 - piece.grain))
    low, _, high, _ = piece.outline.mapped(lambda p: p * upright).bounds
    return high - low


def _parted(piece: Piece, along: str, count: int) -> tuple[Piece, ...]:
    at = piece.index(along)
    edge, last, inner, first = (piece.edges[(at + i) % 4] for i in range(4))
    shares = [number / count for number in range(count + 1)]
    parts = []
    for number, (low, high) in enumerate(itertools.pairwise(shares), 1):
        outer = edge.path.part(low * edge.length, high * edge.length) if count > 1 else edge.path
        back = inner.path.part((1 - high) * inner.length, (1 - low) * inner.length) if count > 1 else inner.path
        end = last if number == count else _lap("lap", outer.end, back.start)
        start = first if number == 1 else _lap("lap_2", back.end, outer.start)
        folded = EdgeKind.FOLD in (end.kind, start.kind)
        parts.append(
            replace(
                piece,
                name=f"{piece.name}-{number}",
                title=f"{piece.title} {number}",
                edges=(replace(edge, path=outer, notches=()), end, replace(inner, path=back), start),
                pair=not folded and not piece.hand,
            )
        )
    return tuple(parts)


def _lap(name: str, start: complex, end: complex) -> Edge:
    return Edge(name, line(start, end), EdgeKind.FREE, allowance=LAP / 2, role=EdgeRole.LAP)
