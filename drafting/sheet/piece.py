"""One piece on its own true-scale sheet: lines, label, scale squares."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace

from drafting.draft.pattern import CutPiece
from drafting.finish import label_room
from drafting.finish.label import Label, LabelLines, label_lines, piece_title, spoken
from drafting.geometry import Path
from drafting.geometry.path import Box
from drafting.ground.names import as_sentences, clean_text
from drafting.ground.remembered import remembered
from drafting.sheet import LEADING, Layer, Sheet, Stroke, Text, assembled, box_around, text_width, wider_box
from drafting.sheet.captions import piece_captions
from drafting.sheet.marks import piece_strokes
from drafting.sheet.room import Cost, Room, least_page, near
from drafting.sheet.scale import SQUARES, scale_squares

MARGIN = 10.0
"""mm of empty page round everything (ours; `Source.PRINTER_DRIVERS`: 4 to 5 mm stay unprinted)."""

APART = 12.0
"""mm between the cut line and whatever stands beside the piece (ours)."""

CLEAR = 5.0
"""mm between a label and the lines inside a piece (ours)."""

LABEL_TRIES = ((5.0, 40), (5.0, 30), (4.2, 40), (4.2, 28), (3.5, 34), (3.5, 24), (3.0, 20))
"""Text size (mm) and characters a line, tried from the best read to the smallest (ours)."""

FLAT_TRIES = tuple((size, width) for size in (3.5, 3.0, 2.6) for width in (60, 90, 120))
"""The same for a long low piece on paper, tried after the others."""

BESIDE = (4.2, 40)
"""Size and width of a label that found no room in its piece."""

CROWDED = 2.4
"""Size (mm) of such a label where squares and other pieces leave little room; read without a glass (ours)."""

_Tries = tuple[tuple[float, int], ...]

_CostOf = Callable[[float, float], Cost]

_NOT_CROSSED = {Layer.FOLD, Layer.DART, Layer.GRAIN, Layer.STRETCH, Layer.NOTCH, Layer.PLACEMENT}


def piece_sheet(cut_piece: CutPiece, label: Label) -> Sheet:
    """Return the sheet of one piece: margin round the cut line, label inside where it fits.

    A 100 mm square and a 4 in square stand beside the piece, each a closed path of its own.
    """
    strokes, captions, room = _lines_and_room(cut_piece, label.one_way, ())
    inside = label_inside(cut_piece, label, room)
    beside, squares = _beside(cut_piece, label, captions, wanted=not inside)
    words = label_lines(cut_piece, label, 200)
    names = (clean_text(label.costume), spoken(label.garment), piece_title(cut_piece.piece))
    return assembled(
        " - ".join(names),
        (*strokes, *squares),
        (*captions, *inside, *beside),
        MARGIN,
        description=as_sentences(("True scale: one unit is 1 mm", *words.body, *words.foot)),
    )


def piece_drawing(
    cut_piece: CutPiece, label: Label, taken: Sequence[Box] = ()
) -> tuple[tuple[Stroke, ...], tuple[Text, ...]]:
    """Return the lines and words of a piece where it lies, without page and scale squares.

    A small piece does not repeat which measures were estimated. A label that finds no room inside
    the piece stands close beside it. No word stands in a box that is `taken`.
    """
    strokes, captions, free = _lines_and_room(cut_piece, label.one_way, tuple(taken))
    inside = label_inside(cut_piece, label, free)
    if not inside:
        label = replace(label, estimated=(), off=())
        inside = label_inside(cut_piece, label, free, (*LABEL_TRIES, *FLAT_TRIES), 0.5 * CLEAR)
    if inside:
        return strokes, (*captions, *inside)
    block = label_block(label_lines(cut_piece, label, BESIDE[1]), CROWDED if taken else LABEL_TRIES[-1][0])
    page = box_around([cut_piece.cut.bounds, *(text.bounds for text in captions)])
    reach = 2 * APART + max(text_width(text) for text in block)
    room = Room.around(cut_piece.cut, reach).without(boxes=[*taken, *(text.bounds for text in captions)])
    placed = _placed(block, room, CLEAR, lambda w, h: least_page(page, w, h))
    return strokes, (*captions, *placed)


@remembered(128)
def _lines_and_room(
    cut_piece: CutPiece, one_way: bool, taken: tuple[Box, ...]
) -> tuple[tuple[Stroke, ...], tuple[Text, ...], Room]:
    """Return the lines of a piece, the captions at them, and the room that both leave inside for its label."""
    strokes = piece_strokes(cut_piece, one_way)
    room = Room.inside(cut_piece.piece.outline, _paths(strokes, _NOT_CROSSED)).without(boxes=taken)
    captions = piece_captions(cut_piece, room)
    return strokes, captions, room.without(boxes=[wider_box(text.bounds, 2.0) for text in captions])


def label_inside(
    cut_piece: CutPiece, label: Label, room: Room, tries: _Tries = LABEL_TRIES, clear: float = CLEAR
) -> tuple[Text, ...]:
    """Return the label at the first of `tries` that fits in the piece, clear of levels if it can."""
    levels = [path for level in cut_piece.piece.levels for path in level.paths]
    target, _ = label_room(cut_piece)
    blocks: dict[tuple[float, int], tuple[Text, ...]] = {}
    for free in (room.without(levels), room) if levels else (room,):
        for size, width in tries:
            if (size, width) not in blocks:
                blocks[size, width] = label_block(label_lines(cut_piece, label, width), size)
            placed = _placed(blocks[size, width], free, clear, lambda w, h: near(target, w, h))
            if placed:
                return placed
    return ()


def label_block(lines: LabelLines, size: float) -> tuple[Text, ...]:
    """Return the texts of a label under each other, the upper left corner at 0."""
    texts: list[Text] = []
    top = 0.0
    parts = ((lines.head, 1.5, True), (lines.body, 1.0, False), (lines.foot, 1.0, True))
    for rows, scale, bold in parts:
        if rows:
            em = size * scale
            texts.append(Text(complex(0, top - 0.8 * em), em, rows, bold=bold))
            top -= em * LEADING * len(rows) + 0.45 * size
    return tuple(texts)


def _placed(block: tuple[Text, ...], room: Room, clear: float, cost: _CostOf) -> tuple[Text, ...]:
    """Return the block where `room` has the best place for it, or nothing."""
    x0, y0, x1, y1 = wider_box(box_around(text.bounds for text in block), clear)
    corner = room.place(x1 - x0, y1 - y0, cost(x1 - x0, y1 - y0))
    return () if corner is None else tuple(t.moved(corner - complex(x0, y0)) for t in block)


def _paths(strokes: Iterable[Stroke], layers: set[Layer]) -> list[Path]:
    return [path for stroke in strokes if stroke.layer in layers for path in stroke.paths]


def _beside(
    cut_piece: CutPiece, label: Label, captions: tuple[Text, ...], wanted: bool
) -> tuple[tuple[Text, ...], tuple[Stroke, ...]]:
    """Return what stands outside the cut line: the label where `wanted`, and the scale squares."""
    taken = [text.bounds for text in captions]
    page = box_around([cut_piece.cut.bounds, *taken])
    block = label_block(label_lines(cut_piece, label, BESIDE[1]), BESIDE[0]) if wanted else ()
    reach = 4 * APART + max([2 * SQUARES[0][2]] + [text_width(t) for t in block])
    room = Room.around(cut_piece.cut, reach).without(boxes=taken)
    texts: tuple[Text, ...] = ()
    if block:
        around = wider_box(page, APART)
        texts = _placed(block, room, APART, lambda w, h: least_page(around, w, h))
        box = box_around(text.bounds for text in texts)
        page, room = box_around((page, box)), room.without(boxes=[box])
    squares, figures = scale_squares(room, page, APART)
    return (*texts, *figures), squares
