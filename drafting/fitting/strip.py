"""The strip to paste over a paper pattern: where a piece changed, its new line beside the old one."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from drafting.draft.landmark import landmarks
from drafting.draft.pattern import CutPiece
from drafting.draft.piece import Edge, EdgeKind
from drafting.geometry import Path
from drafting.geometry.area import band_round, clipped_to, distances

SEEN = 0.3
"""mm by which a line has to move to be worth a strip: about a pencil's width (ours)."""

ROUND = 22.0
"""mm of paper round the lines of a strip: room for paste (ours)."""

MOST = 0.75
"""Of a piece's outline so much changed at most; beyond that the piece is printed again (ours)."""


@dataclass(frozen=True)
class PasteOver:
    """One strip, where the new piece was drafted: its paper's `ring`, the `edges` that changed by name.

    `new` and `old` are their stitching lines, `cut` the new cut line, `stays` what did not change within the
    ring, to lay it by. The line moved farthest, by `moved` mm, at `at`, from `came_from`.
    """

    piece: str
    edges: tuple[str, ...]
    ring: Path
    new: tuple[Path, ...]
    old: tuple[Path, ...]
    cut: tuple[Path, ...]
    stays: tuple[Path, ...]
    at: complex
    came_from: complex

    @property
    def moved(self) -> float:
        """How far the line moved where it moved most, mm."""
        return abs(self.at - self.came_from)


def strips_between(before: CutPiece, after: CutPiece) -> tuple[PasteOver, ...]:
    """Return a strip for each run of edges that changed from one draft of a piece to another.

    The two are laid on each other where most of their lines meet. None at all means that nothing moved by as
    much as a pencil is wide, or that so much did that the whole piece is printed again.
    """
    runs, old = _changed(before, after)
    if _too_much(runs, after):
        return ()
    return tuple(_strip(after, run, old) for run in runs)


def is_cut_anew(before: CutPiece, after: CutPiece) -> bool:
    """Return whether a piece changed too much for a strip."""
    return _too_much(_changed(before, after)[0], after)


def has_changed(before: CutPiece, after: CutPiece) -> bool:
    """Return whether any line of a piece moved as far as one sees."""
    return bool(_changed(before, after)[0])


def _changed(before: CutPiece, after: CutPiece) -> tuple[list[list[Edge]], dict[str, Path]]:
    """Return the changed edges in runs, and the old lines by name, laid on the new piece."""
    ways = (_laid(before, after, by) for by in _layings(before, after))
    return min(ways, key=lambda way: math.fsum(edge.length for run in way[0] for edge in run))


def _laid(before: CutPiece, after: CutPiece, by: complex) -> tuple[list[list[Edge]], dict[str, Path]]:
    old = {edge.name: edge.path.moved(by) for edge in before.piece.edges}
    return list(_runs(after.piece.edges, old)), old


def _layings(before: CutPiece, after: CutPiece) -> Iterator[complex]:
    """Yield by how much the old piece is moved onto the new one: on the landmark of both, first, then as both were
    drafted, then on each corner of one name. The landmark itself may be what a note has moved.
    """
    here, there = landmarks(after.piece, before.piece)
    yield here - there
    yield 0j
    ends = {edge.name: edge.path.end for edge in before.piece.edges}
    yield from (edge.path.end - ends[edge.name] for edge in after.piece.edges if edge.name in ends)


def _too_much(runs: list[list[Edge]], after: CutPiece) -> bool:
    return sum(edge.length for run in runs for edge in run) > MOST * after.piece.outline.length


def _runs(edges: tuple[Edge, ...], old: dict[str, Path]) -> Iterator[list[Edge]]:
    """Yield the changed edges in runs that hang together, the ring closed."""
    moved = [_has_moved(edge, old.get(edge.name)) for edge in edges]
    if all(moved):
        yield list(edges)
        return
    first = moved.index(False)
    run: list[Edge] = []
    for place in range(first, first + len(edges)):
        edge = edges[place % len(edges)]
        if moved[place % len(edges)]:
            run.append(edge)
        elif run:
            yield run
            run = []
    if run:
        yield run


def _has_moved(edge: Edge, old: Path | None) -> bool:
    if edge.kind is EdgeKind.FOLD:
        return False
    return old is None or max(distances(edge.path, old).max(), distances(old, edge.path).max()) > SEEN


def _strip(after: CutPiece, run: list[Edge], old: dict[str, Path]) -> PasteOver:
    new = tuple(edge.path for edge in run)
    was = tuple(old[edge.name] for edge in run if edge.name in old)
    others = [edge.path for edge in after.piece.edges if edge not in run]
    widest = max(after.allowances.get(edge.name, 0.0) for edge in run)
    ring = band_round((*new, *was), ROUND + widest)
    at, came_from = _farthest(new, was)
    return PasteOver(
        piece=after.piece.name,
        edges=tuple(edge.name for edge in run),
        ring=ring,
        new=new,
        old=was,
        cut=tuple(clipped_to(after.cut, ring)),
        stays=tuple(part for path in others for part in clipped_to(path, ring)),
        at=at,
        came_from=came_from,
    )


def _farthest(new: tuple[Path, ...], old: tuple[Path, ...]) -> tuple[complex, complex]:
    """Return the point of the new line that lies farthest from the old one, and the nearest point of that."""
    if not old:
        return new[0].start, new[0].start
    points = [point for path in old for point in path.evenly(200)]
    pairs = ((at, min(points, key=lambda p: abs(p - at))) for path in new for at in path.evenly(60))
    return max(pairs, key=lambda pair: abs(pair[0] - pair[1]))
