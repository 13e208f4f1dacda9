"""Lines and regions inside a piece: at a depth above its hem, cut off where they meet its sides. mm.

A `HemWithSides` is the lower part of a piece as it lies in the draft: its hem, front and back side.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from drafting.draft.by_role import edges_as, the_edge
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.geometry import Cubic, Path, line, smooth
from drafting.geometry.crossing import Crossing, crossings, ends_moved, extended, part_between
from drafting.geometry.heights import t_at
from drafting.geometry.offset import offsets
from drafting.ground import tolerances as tol
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.ground.names import name_in_words


@dataclass(frozen=True)
class HemWithSides:
    """The hem of a `piece` from left to right, and the sides that stand on its ends, both upwards."""

    hem: Path
    left: Path
    right: Path
    piece: str


@dataclass(frozen=True)
class InnerHem:
    """A line beside the hem, from side to side, and where it meets them: the parts below it."""

    line: Path
    left: Path
    right: Path


def skirted(piece: Piece) -> HemWithSides:
    """Return the lower part of a tail panel, its pleat left out: there the side is the fold."""
    first, hem, last = _about_hem(piece)
    before, after = first.path.reversed(), last.path
    if last.role is not EdgeRole.PLEAT:
        return HemWithSides(hem.path, before, after, piece.name)
    fold = next(mark.path for mark in piece.placements if mark.what == "fold")
    return HemWithSides(Path(hem.path.segments[:-1]), before, fold.reversed(), piece.name)


def beside_hems(parts: Sequence[HemWithSides], depth: float, choice: str) -> list[InnerHem]:
    """Return the line `depth` mm above each hem, square to it, from side to side.

    Raises `DraftError` where a piece is not so high; `choice` is the name of what asked for the depth.
    """
    lines = offsets([(part.hem, -depth) for part in parts])
    return [_inner(part, drawn, depth, choice) for part, drawn in zip(parts, lines, strict=True)]


def _inner(part: HemWithSides, above: Path, depth: float, choice: str) -> InnerHem:
    """Return the line `above` the hem cut off where it meets the sides."""
    drawn = _run_on(part, above, min(part.left.length, part.right.length))
    at_left, at_right = _met(drawn, part.left), _met(drawn, part.right)
    if not at_left or not at_right:
        raise DraftError(
            f"a line inside the {name_in_words(part.piece)} does not meet its sides",
            value=f"{told(depth)} above the hem",
            reach=f"less than {told(min(part.left.length, part.right.length))}",
            turn=f"choose a lesser {choice}",
        )
    first, last = at_left[-1], at_right[0]
    found = part_between(drawn, first.on_a, last.on_a)
    assert found is not None
    left = part_between(part.left, 0.0, first.on_b) or line(part.left.start, first.point)
    right = part_between(part.right, 0.0, last.on_b) or line(part.right.start, last.point)
    return InnerHem(
        ends_moved(found, first.point, last.point),
        ends_moved(left, end=first.point),
        ends_moved(right, end=last.point),
    )


def _met(drawn: Path, side: Path) -> list[Crossing]:
    """Return where a line meets a side, in its order; a straight side needs no chords for that."""
    if len(side.segments) > 1 or isinstance(side.segments[0], Cubic):
        return crossings(drawn, side)
    found, way, length = [], side.leave.conjugate(), side.length
    for i, segment in enumerate(drawn.segments):
        beside = Cubic(*[(p - side.start) * way for p in segment.as_cubic()])
        off = [p.imag for p in beside]
        if min(off) > 0 or max(off) < 0:
            continue
        if sorted(off) not in (off, off[::-1]):
            return crossings(drawn, side)
        t = t_at(beside, 0.0)
        along = beside.point(t).real / length
        if 0 <= along <= 1:
            found.append(Crossing(segment.point(t), i + t, along, i + t, along))
    return found


def _run_on(part: HemWithSides, above: Path, far: float) -> Path:
    """Return the line above the hem, run on straight by `far` mm at both ends.

    Where the hem's end bends on a lesser radius than the depth the line turns back there; what turns
    back is left out.
    """
    segments = list(above.segments)
    while len(segments) > 1 and _against(segments[0].tangent(0.0), part.hem.leave):
        segments.pop(0)
    while len(segments) > 1 and _against(segments[-1].tangent(1.0), part.hem.arrive):
        segments.pop()
    return extended(Path(tuple(segments)), far, far)


def _against(one: complex, other: complex) -> bool:
    return (one * other.conjugate()).real < 0.7


def hem_bands(parts: Sequence[HemWithSides], depth: float, margin: float, choice: str) -> list[tuple[Edge, ...]]:
    """Return the edges of bands of a depth along each hem, `margin` mm past the seams beside it."""
    inner = beside_hems(parts, depth, choice)
    return [_band(part, found, margin) for part, found in zip(parts, inner, strict=True)]


def _band(part: HemWithSides, inner: InnerHem, margin: float) -> tuple[Edge, ...]:
    return (
        Edge("hem", part.hem, EdgeKind.FREE, allowance=margin, role=EdgeRole.HEM),
        Edge("right", inner.right, EdgeKind.FREE, allowance=margin),
        Edge("inner", inner.line.reversed(), EdgeKind.FREE, allowance=0.0, role=EdgeRole.INNER),
        Edge("left", inner.left.reversed(), EdgeKind.FREE, allowance=margin),
    )


def stand_band(front: Piece, depth: float) -> HemWithSides:
    """Return the button stand of a coat front as a band's ground: its edge from the break down."""
    edge = the_edge(front, EdgeRole.FRONT_EDGE).path
    top = line(edge.start, edge.start + 1j * edge.leave * 2 * depth)
    return HemWithSides(edge, top, the_edge(front, EdgeRole.BOTTOM).path, front.name)


def shorter_panels(pieces: Sequence[Piece], depth: float, choice: str) -> list[tuple[Edge, ...]]:
    """Return the edges of each piece with its hem `depth` mm higher (its lining), as the maker's `choice` asks."""
    parts = [
        HemWithSides(hem.path, a.path.reversed(), b.path, piece.name)
        for piece, (a, hem, b) in zip(pieces, map(_about_hem, pieces), strict=True)
    ]
    inner = beside_hems(parts, depth, choice)
    return [_shorter(piece, found) for piece, found in zip(pieces, inner, strict=True)]


def _about_hem(piece: Piece) -> tuple[Edge, Edge, Edge]:
    """Return the edge before the hem, the hem, and the edge after it."""
    at = next(i for i, edge in enumerate(piece.edges) if edge.role is EdgeRole.HEM)
    return piece.edges[at - 1], piece.edges[at], piece.edges[(at + 1) % len(piece.edges)]


def _shorter(piece: Piece, inner: InnerHem) -> tuple[Edge, ...]:
    before, hem, after = _about_hem(piece)
    left = before.path.reversed().split(inner.left.length)[1].reversed()
    right = after.path.split(inner.right.length)[1]
    new = {
        before.name: replace(before, path=ends_moved(left, end=inner.line.start)),
        hem.name: replace(hem, path=inner.line),
        after.name: replace(after, path=ends_moved(right, start=inner.line.end)),
    }
    return tuple(new.get(edge.name, edge) for edge in piece.edges)


def slit_passed(piece: Piece, higher: float, least: float) -> Piece:
    """Return the piece with a seam run on to the hem where what ends `higher` mm over it ends above the slit.

    A slit that reaches no more than `least` mm beyond is none (ours).
    """
    edges = list(piece.edges)
    for slit in edges_as(piece, EdgeRole.SLIT):
        at = edges.index(slit)
        before, after = edges[at - 1], edges[(at + 1) % len(edges)]
        if slit.length - higher > least or EdgeRole.HEM not in (before.role, after.role):
            continue
        seam, parts = (after, (slit, after)) if before.role is EdgeRole.HEM else (before, (before, slit))
        edges[edges.index(seam)] = replace(seam, path=Path.joined([one.path for one in parts]), notches=())
        edges.remove(slit)
    return replace(piece, edges=tuple(edges))


def loose_edges(edges: tuple[Edge, ...], allowance: float) -> tuple[Edge, ...]:
    """Return edges that are sewn to nothing, with this allowance; folds stay folds, darts darts."""
    return tuple(
        replace(e, notches=())
        if e.kind in (EdgeKind.FOLD, EdgeKind.DART)
        else Edge(e.name, e.path, EdgeKind.FREE, allowance=allowance, role=e.role, half=e.half)
        for e in edges
    )


def with_ease_pleat(edges: tuple[Edge, ...], at: int, pleat: float) -> tuple[Edge, ...]:
    """Return a back's edges with a pleat for ease, half of it beyond the centre seam at place `at`: it runs out at
    the waist. Too narrow a pleat is left out."""
    if pleat / 2 < tol.LEAST_EDGE:
        return edges
    low, nape = edges[at].path.start, edges[at].path.end
    out = nape + pleat / 2
    run = Path((smooth(low, out, 1j, 1j),))
    laid = (
        replace(edges[at], path=run, kind=EdgeKind.FREE),
        Edge("ease_pleat", line(out, nape), EdgeKind.FREE, role=EdgeRole.EASE_PLEAT),
    )
    return (*edges[:at], *laid, *edges[at + 1 :])


def second_layer(piece: Piece, material: str, edges: tuple[Edge, ...], title: str) -> Piece:
    """Return a piece of another cloth behind `piece`: its role, grain and hand, own edges, no marks."""
    return replace(
        piece,
        name=f"{piece.name}-{title}",
        title=f"{piece.title} {title}".replace("-", " "),
        edges=edges,
        levels=(),
        darts=(),
        placements=(),
        points={},
        material=material,
        stiffens=(),
        lines=(piece.name,),
    )


def stiff_layer(piece: Piece, edges: tuple[Edge, ...], title: str, role: PieceRole | None = None) -> Piece:
    """Return the interfacing of a piece; `role` says which part of it is stiffened (None: all)."""
    layer = second_layer(piece, "interfacing", edges, title)
    return replace(layer, stiffens=(piece.name,), lines=(), role=role or piece.role)
