"""What is sewn onto a piece or along its edge: trims, tape, appliqué, buttons and their holes, bones, zips."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence

import numpy as np

from drafting.draft.draft import EdgeRef
from drafting.draft.piece import NAMED_MARK, Placement
from drafting.geometry.curve import Points
from drafting.geometry.moves import STAY, TURNED_OVER, Motion, mirrored_in
from drafting.geometry.polylines import evenly_spaced, left_of
from drafting.making.stages.laid import cloth, each_hand, flat, name_on, names_of, turned_back
from drafting.making.stages.picture import Face, Ink, InkLine, InkMark, StageDrawing, closer, drawn_panel
from drafting.making.stages.rows import in_rows
from drafting.making.stages.shapes import CHORD, Goods, Shape
from drafting.making.stages.so_far import SoFar

TRIM, BONE, ZIP = 12.0, 10.0, 11.0
"""mm of cloth: half the width of a trim as drawn, of a bone's channel, and of a zip's tape (ours)."""

STRIP, APART = 14.0, 1.0
"""mm of cloth: half the width of what is sewn along a line, as drawn; and from which a line is no ring (ours)."""

LEFT, RIGHT = "left", "right"


def trimmed(goods: Goods, refs: Sequence[EdgeRef]) -> StageDrawing:
    """Return pieces right side up with a trim along these edges."""
    blocks = []
    for name in dict.fromkeys(piece for piece, _ in refs):
        shape = goods.shapes[name]
        inks: list[Ink] = [cloth(shape, STAY)]
        for _, edge in (ref for ref in refs if ref[0] == name):
            for half in _halves(shape):
                line = half(shape.edges[edge])
                band = np.concatenate([line, left_of(line, TRIM * (1 if half is STAY else -1))[::-1]])
                inks += [Face("notion", band), InkLine("sewing", line, f"{name}.{edge}")]
        blocks.append([*inks, name_on(shape, shape.outline)])
    return StageDrawing("trimmed", (drawn_panel(in_rows(blocks)),))


def applied(goods: Goods, name: str, marks: Iterable[Placement]) -> StageDrawing:
    """Return a piece right side up with the shapes that are sewn onto it where they lie."""
    shape, marks = goods.shapes[name], tuple(marks)
    move = Motion(over=True) if any(mark.hand == RIGHT for mark in marks) and shape.piece.pair else STAY
    inks: list[Ink] = [cloth(shape, move, over=False)]
    for mark in marks:
        ring = move(mark.path.points(CHORD))
        if abs(ring[0] - ring[-1]) > APART:
            inks += _along(ring, mark)
        else:
            inks += [Face("notion", ring, mark.piece), InkLine("sewing", np.append(ring, ring[:1]), mark.name)]
    lines = all(abs(mark.path.end - mark.path.start) > APART for mark in marks)
    shown = drawn_panel([*inks, name_on(shape, move(shape.outline))])
    return StageDrawing("applied", (closer(shown) if lines else shown,))


def _along(line: Points, mark: Placement) -> Iterator[Ink]:
    """Yield what is sewn along a line that is no ring, as a slit's strip: its cloth and the row on it."""
    yield Face("notion", np.concatenate([left_of(line, STRIP), left_of(line, -STRIP)[::-1]]), mark.piece)
    yield InkLine("sewing", line, mark.name)


def _halves(shape: Shape) -> list[Motion]:
    return [STAY, mirrored_in(*shape.axis)] if shape.axis else [STAY]


# --------------------------------------------------------------------------------- what is marked


def marked_work(
    goods: Goods, pieces: Sequence[str], whats: Sequence[str], named: Collection[str] | None = None
) -> StageDrawing | None:
    """Return the hands of these pieces with their marks of certain kinds; None where none is drawn.

    Where names are given, those of other names are left out.
    """
    blocks = []
    for name in dict.fromkeys(pieces):
        shape = goods.shapes[name]
        marks = [
            mark for mark in shape.piece.placements if mark.what in whats and (named is None or mark.name in named)
        ]
        blocks += [block for hand in (LEFT, RIGHT) if (block := _hand(shape, marks, hand))]
    if not blocks:
        return None
    return StageDrawing("marked", (drawn_panel(in_rows(blocks)),))


def _hand(shape: Shape, marks: Sequence[Placement], hand: str) -> list[Ink]:
    """Return one hand of a piece with its marks; nothing where it has none of its own."""
    mine = [mark for mark in marks if mark.hand in ("", hand)]
    own = shape.piece.hand
    if (own and own != hand) or (hand == RIGHT and not shape.piece.pair) or not mine:
        return []
    move = Motion(over=True) if hand == RIGHT else STAY
    inks: list[Ink] = [cloth(shape, move, over=False)]
    for mark in mine:
        inks += _sign(mark, move, f"{mark.name} {hand}")
    return [*inks, name_on(shape, move(shape.outline))]


def _sign(mark: Placement, move: Motion, of: str) -> Iterator[Ink]:
    line = move(mark.path.points(CHORD))
    middle = complex(line.mean())
    match mark.what:
        case "button":
            yield InkMark("button", middle, size=11.0)
        case "buttonhole":
            way = complex(line[-1] - line[0])
            way = way / (abs(way) or 1.0)
            corners = np.array([-13 - 5j, 13 - 5j, 13 + 5j, -13 + 5j])
            yield Face("notion", middle + corners * way)
            yield InkLine("firm", middle + np.array([-11, 11]) * way, of)
        case _ if mark.what == NAMED_MARK:
            yield InkLine("sewing", line, of)
            yield InkMark("button", middle, size=13.0)
        case "eyelet":
            yield InkMark("button", middle, size=7.0)
        case _:
            yield InkLine("sewing", line, of)


def _channel(line: Points, of: str) -> Iterator[Ink]:
    """Yield a bone in its channel, sliding in from its first end."""
    even = evenly_spaced(line, 12.0)
    sides = [left_of(even, by) for by in (BONE, -BONE)]
    yield Face("wrong", np.concatenate([sides[0], sides[1][::-1]]))
    yield from (InkLine("sewing", side, of) for side in sides)
    way = complex(even[0] - even[1]) / abs(even[0] - even[1])
    bone = np.concatenate([[even[0] + way * 70.0], even[: max(2, int(len(even) * 0.7))]])
    yield Face("solid", np.concatenate([left_of(bone, 3.0), left_of(bone, -3.0)[::-1]]))
    yield InkMark("move", even[0] + way * 25.0 + 30j * way, -way, 60.0)


def bones_drawn_in(so_far: SoFar, pieces: Sequence[str]) -> StageDrawing | None:
    """Return the work wrong side up with the channels of its bones, a bone on its way in."""
    blocks, shapes = [], so_far.goods.shapes
    for part in so_far.parts([(name, "") for name in pieces]):
        inks = list(flat(so_far, part, over=True))
        for move, name in each_hand(so_far, part, TURNED_OVER):
            for mark in (m for m in shapes[name].piece.placements if m.what == "bone"):
                inks += _channel(move(mark.path.points(CHORD)), mark.name)
        if len(inks) > len(part):
            blocks.append([*inks, *names_of(so_far.goods, part, TURNED_OVER)])
    found = drawn_panel(in_rows(blocks)) if blocks else None
    return StageDrawing("boned", (closer(found),)) if found and any(found.in_work()) else None


# ------------------------------------------------------------------------------------------- zips


def zipped_in(goods: Goods, refs: Sequence[EdgeRef]) -> StageDrawing:
    """Return pieces wrong side up, the opening's allowances folded back, the zip along the edge."""
    blocks = []
    for name in dict.fromkeys(piece for piece, _ in refs):
        shape = goods.shapes[name]
        inks: list[Ink] = [cloth(shape, TURNED_OVER)]
        for _, edge in (ref for ref in refs if ref[0] == name):
            inks.append(turned_back(shape, edge, TURNED_OVER, look="right"))
            inks += _zip_along(shape.edges[edge], f"{name}.{edge}")
        blocks.append([*inks, name_on(shape, TURNED_OVER(shape.outline))])
    return StageDrawing("zip", (closer(drawn_panel(in_rows(blocks))),))


def _zip_along(line: Points, of: str) -> Iterator[Ink]:
    even = evenly_spaced(line, 9.0)
    tape = np.concatenate([even, left_of(even, ZIP)[::-1]])
    yield Face("notion", TURNED_OVER(tape))
    inner = left_of(even, 4.0)
    for one, two in zip(even[::2].tolist(), inner[::2].tolist(), strict=False):
        yield InkLine("fine", TURNED_OVER(np.array([one, two])))
    yield InkLine("sewing", TURNED_OVER(left_of(even, ZIP * 0.7)), of)
