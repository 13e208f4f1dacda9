"""Lines and regions inside a piece: at a depth above its hem, cut off where they meet its sides. mm.

A `Skirted` is the lower part of a tail piece as it lies in the draft: its hem, front and back side.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.errors import DraftError
from drafting.geometry import Path, line
from drafting.geometry.crossing import between, crossings, extended, pinned
from drafting.geometry.offset import offset
from drafting.piece import Edge, EdgeKind, Piece


@dataclass(frozen=True)
class Skirted:
    """A hem from left to right, and the sides that stand on its ends, both upwards."""

    hem: Path
    left: Path
    right: Path


@dataclass(frozen=True)
class Inner:
    """A line beside the hem, from side to side, and where it meets them: the parts below it."""

    line: Path
    left: Path
    right: Path


def skirted(piece: Piece) -> Skirted:
    """Return the lower part of a tail panel, its pleat left out: there the side is the fold."""
    at = piece.index("hem")
    hem, before = piece.edges[at].path, piece.edges[at - 1].path.reversed()
    after = piece.edges[(at + 1) % len(piece.edges)].path
    if "pleat" not in piece:
        return Skirted(hem, before, after)
    fold = next(mark.path for mark in piece.placements if mark.name == "pleat_fold")
    return Skirted(Path(hem.segments[:-1]), before, fold.reversed())


def beside_hem(part: Skirted, depth: float) -> Inner:
    """Return the line `depth` mm above the hem, square to it, from side to side.

    Raises `DraftError` where the piece is not so high.
    """
    drawn = _run_on(part, depth, min(part.left.length, part.right.length))
    at_left, at_right = crossings(drawn, part.left), crossings(drawn, part.right)
    if not at_left or not at_right:
        raise DraftError(
            "a line inside the tail does not meet its sides", value=f"{depth:.0f} mm above the hem",
            reach=f"less than {min(part.left.length, part.right.length):.0f} mm",
            turn="choose a lesser depth",
        )  # fmt: skip
    first, last = at_left[-1], at_right[0]
    found = between(drawn, first.on_a, last.on_a)
    assert found is not None
    left = between(part.left, 0.0, first.on_b) or line(part.left.start, first.point)
    right = between(part.right, 0.0, last.on_b) or line(part.right.start, last.point)
    return Inner(
        pinned(found, first.point, last.point), pinned(left, end=first.point), pinned(right, end=last.point)
    )  # fmt: skip


def _run_on(part: Skirted, depth: float, far: float) -> Path:
    """Return the line above the hem, run on straight by `far` mm at both ends.

    Where the hem's end bends on a lesser radius than the depth the line turns back there; what turns
    back is left out.
    """
    segments = list(offset(part.hem, -depth).segments)
    while len(segments) > 1 and _against(segments[0].tangent(0.0), part.hem.leave):
        segments.pop(0)
    while len(segments) > 1 and _against(segments[-1].tangent(1.0), part.hem.arrive):
        segments.pop()
    return extended(Path(tuple(segments)), far, far)


def _against(one: complex, other: complex) -> bool:
    return (one * other.conjugate()).real < 0.7


def band(part: Skirted, depth: float, margin: float) -> tuple[Edge, ...]:
    """Return the edges of a band of a depth along a hem, `margin` mm past the seams beside it."""
    inner = beside_hem(part, depth)
    return (
        Edge("hem", part.hem, EdgeKind.FREE, allowance=margin),
        Edge("right", inner.right, EdgeKind.FREE, allowance=margin),
        Edge("inner", inner.line.reversed(), EdgeKind.FREE, allowance=0.0),
        Edge("left", inner.left.reversed(), EdgeKind.FREE, allowance=margin),
    )


def stand(front: Piece, depth: float) -> Skirted:
    """Return the button stand of a coat front as a band's ground: its edge from the break down."""
    edge = front["edge"].path
    top = line(edge.start, edge.start + 1j * edge.leave * 2 * depth)
    return Skirted(edge, top, front["bottom"].path)


def shorter(piece: Piece, depth: float) -> tuple[Edge, ...]:
    """Return the edges of a tail panel whose hem lies `depth` mm higher (its lining)."""
    at, count = piece.index("hem"), len(piece.edges)
    before, after = piece.edges[at - 1], piece.edges[(at + 1) % count]
    whole = Skirted(piece.edges[at].path, before.path.reversed(), after.path)
    inner = beside_hem(whole, depth)
    left = before.path.reversed().split(inner.left.length)[1].reversed()
    right = after.path.split(inner.right.length)[1]
    new = {
        before.name: replace(before, path=pinned(left, end=inner.line.start)),
        "hem": replace(piece.edges[at], path=inner.line),
        after.name: replace(after, path=pinned(right, start=inner.line.end)),
    }
    return tuple(new.get(edge.name, edge) for edge in piece.edges)


def loose(edges: tuple[Edge, ...], allowance: float) -> tuple[Edge, ...]:
    """Return edges that are sewn to nothing, with this allowance; folds stay folds."""
    return tuple(
        replace(e, notches=()) if e.kind is EdgeKind.FOLD
        else Edge(e.name, e.path, EdgeKind.FREE, allowance=allowance)
        for e in edges
    )  # fmt: skip


def second_layer(piece: Piece, material: str, edges: tuple[Edge, ...], title: str) -> Piece:
    """Return a piece of another cloth for `piece`: its grain and hand, edges of its own, no marks."""
    return replace(
        piece, name=f"{piece.name}-{title}", title=f"{piece.title} {title}".replace("-", " "),
        edges=edges, levels=(), darts=(), placements=(), points={}, material=material,
    )  # fmt: skip
