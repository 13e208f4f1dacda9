"""The small texts that stand at lines of a piece: levels, folds, the stretch arrow."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from drafting.draft.pattern import CutPiece
from drafting.draft.piece import NAMED_MARK, EdgeKind
from drafting.finish.label import spoken
from drafting.geometry import Path
from drafting.sheet import Anchor, Layer, Text, text_width
from drafting.sheet.marks import fold_mark
from drafting.sheet.room import Room

SMALL = 3.2
"""mm: captions of levels and arrows (ours: 9 points)."""

STEP = 10.0
"""mm between two places that are tried along a line."""


def piece_captions(cut_piece: CutPiece, room: Room) -> tuple[Text, ...]:
    """Return the captions of a piece, each where `room` is free of lines and of other captions.

    `place on fold` is never left out: without room inside it stands outside, beside the fold.
    """
    piece = cut_piece.piece
    off_levels = room.without(path for level in piece.levels for path in level.paths)
    captions: list[Text] = []
    for edge in piece.edges:
        if edge.kind is EdgeKind.FOLD:
            *inside, outside = _fold_captions(*fold_mark(edge)[1:], edge.path)
            captions += _first_free(inside, off_levels) or [outside]
    if arrow := cut_piece.stretch_arrow:
        room = room.without(boxes=[text.bounds for text in captions])
        captions += _first_free(_arrow_captions(arrow), room)
    for level in piece.levels:
        room = room.without(boxes=[text.bounds for text in captions])
        captions += _first_free(_level_captions(spoken(level.name), level.paths), room)
    for mark in piece.placements:
        if mark.what == NAMED_MARK:
            room = room.without(boxes=[text.bounds for text in captions])
            captions += _first_free(_mark_captions(spoken(mark.name), mark.path), room)
    return tuple(captions)


def _mark_captions(name: str, path: Path) -> Iterator[Text]:
    """Yield a mark's name beside its middle, then above and below, then farther along it."""
    for share in (0.5, 0.35, 0.65, 0.2, 0.8):
        at = path.at(share * path.length)
        for beside in (2.5, 12.0):
            yield Text(at + complex(beside, 2.0), SMALL, (name,), layer=Layer.PLACEMENT)
            yield Text(at + complex(-beside, 2.0), SMALL, (name,), "end", layer=Layer.PLACEMENT)


def _fold_captions(middle: complex, inward: complex, fold: Path) -> Iterator[Text]:
    """Yield `place on fold` at places along the bracket, large before small, at last outside."""
    sideways = abs(inward.real) > 0.5
    inner: Anchor = "start" if inward.real > 0 else "end"
    outer: Anchor = "end" if inward.real > 0 else "start"
    for size in (4.2, 3.4):
        for shift in (0, 30, -30, 60, -60, 100, -100):
            at = middle + inward * -1j * shift + inward * (3.0 if sideways else 2.5 * size)
            anchor: Anchor = inner if sideways else "middle"
            yield Text(at + 2j, size, ("place", "on fold"), anchor, layer=Layer.FOLD)
    beyond = fold.at(fold.length / 2) - inward * (3.0 if sideways else 10.0)
    anchor = outer if sideways else "middle"
    yield Text(beyond + 2j, 4.2, ("place", "on fold"), anchor, layer=Layer.FOLD)


def _arrow_captions(arrow: Path) -> Iterator[Text]:
    for share in (0.5, 0.3, 0.7):
        for shift in (5.5j, -8j, 5 + 0j, 5 + 9j):
            anchor: Anchor = "middle" if abs(arrow.leave.real) > 0.9 else "start"
            at = arrow.at(share * arrow.length) + shift
            yield Text(at, SMALL, ("stretch",), anchor, layer=Layer.STRETCH)


def _level_captions(name: str, paths: tuple[Path, ...]) -> Iterator[Text]:
    """Yield a level's name just above its line, on the long level stretches before the others."""
    legs = [sorted((s.start, s.end), key=lambda p: p.real) for path in paths for s in path]
    legs.sort(key=lambda leg: (abs((leg[1] - leg[0]).imag) > 2, -abs(leg[1] - leg[0])))
    for left, right in legs:
        run = abs(right - left)
        text = Text(left + 1.2j, SMALL, (name,), layer=Layer.LEVEL)
        for step in range(int((run - text_width(text)) / STEP)):
            yield text.moved((right - left) / run * (step + 0.6) * STEP)


def _first_free(texts: Iterable[Text], room: Room) -> list[Text]:
    return [text for text in texts if room.holds(text.bounds)][:1]
