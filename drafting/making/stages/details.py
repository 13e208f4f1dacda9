"""What a plain view does not show: clips in a curve, bars, rows of pad stitching, tape, pads, a level hem."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

import numpy as np

from drafting.draft.by_role import edges_as
from drafting.draft.draft import EdgeRef
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.geometry.curve import Points
from drafting.geometry.moves import STAY, TURNED_OVER
from drafting.geometry.polylines import left_of, line_crossings, points_along, polyline_length
from drafting.making.stages.laid import cloth, each_hand, flat, name_on, names_of
from drafting.making.stages.picture import Face, Ink, InkLine, InkMark, Panel, StageDrawing, closer, drawn_panel
from drafting.making.stages.rows import in_rows
from drafting.making.stages.shapes import Goods, Shape
from drafting.making.stages.so_far import SoFar

CURVED = 0.997
"""Share of its length that a seam's ends lie apart below which it is clipped (ours)."""

EVERY, FROM, TO, BEYOND = 30.0, 3.0, 13.0, 18.0
"""mm of cloth: from clip to clip, where one starts and ends beside its seam, and how far the raw edge lies at most
(ours)."""

BAR, BAR_WIDE = 26.0, 7.0
"""mm of cloth: a bar is drawn so long and so wide, or it is not seen on paper (ours)."""

ROWS, TAPE = 18.0, (8.0, 18.0)
"""mm of cloth: between two rows of pad stitches, and where the tape lies beside a roll line (common practice)."""

HEAD = 24.0
"""mm of cloth: how wide a sleeve head is drawn (ours)."""


def clipped_curves(drawing: StageDrawing) -> StageDrawing:
    """Return the drawing with clips in the allowance of every curved seam of its first panel."""
    first, *others = drawing.panels
    faces = [ink for ink in first.inks if isinstance(ink, Face) and ink.piece]
    rings = [face.ring for face in faces if face.over] or [face.ring for face in faces]
    ticks = [tick for line in first.in_work() for tick in _clips(line.points, rings)]
    return replace(drawing, panels=(replace(first, inks=(*first.inks, *ticks)), *others)) if ticks else drawing


def _clips(line: Points, rings: Sequence[Points]) -> Iterator[InkLine]:
    length = polyline_length(line)
    if length < 2 * EVERY or abs(line[-1] - line[0]) > CURVED * length:
        return
    outer = 1.0 if not any(_within(_middle(left_of(line, BEYOND)), ring) for ring in rings) else -1.0
    places = np.linspace(0.1, 0.9, max(2, int(length / EVERY)))
    ends = [
        points_along(beside, polyline_length(beside) * places)
        for beside in (left_of(line, outer * by) for by in (FROM, TO))
    ]
    for one, two in zip(*ends, strict=True):
        yield InkLine("firm", np.array([one, two]))


def _middle(line: Points) -> complex:
    return complex(line[len(line) // 2])


def _within(point: complex, ring: Points) -> bool:
    """Return whether a ring winds round a point."""
    turned = np.angle((np.roll(ring, -1) - point) / (ring - point))
    return bool(abs(turned.sum()) > np.pi)


# ------------------------------------------------------------------------------------ on one piece


def barred(goods: Goods, refs: Sequence[EdgeRef]) -> StageDrawing:
    """Return pieces right side up with a bar across the upper end of these edges, of a bearer the lower."""
    blocks = []
    for name in dict.fromkeys(piece for piece, _ in refs):
        shape = goods.shapes[name]
        inks: list[Ink] = [cloth(shape, STAY)]
        for ref in (ref for ref in refs if ref[0] == name):
            inks += _bar(shape.edges[ref[1]], ".".join(ref), at_foot=shape.piece.role is PieceRole.BEARER)
        blocks.append([*inks, name_on(shape, shape.outline)])
    return StageDrawing("barred", (closer(drawn_panel(in_rows(blocks))),))


def _bar(line: Points, of: str, *, at_foot: bool) -> Iterator[Ink]:
    line = line if bool(line[-1].imag >= line[0].imag) != at_foot else line[::-1]
    way = complex(line[-1] - line[-2]) / abs(line[-1] - line[-2])
    across, top = 1j * way, complex(line[-1])
    ends = np.array([top - across * BAR / 2, top + across * BAR / 2])
    corners = [ends[0] - way * BAR_WIDE, ends[1] - way * BAR_WIDE, ends[1], ends[0]]
    yield Face("solid", np.array(corners))
    yield InkLine("sewing", ends, of)


def pad_stitched(shell: Shape, stiff: Shape) -> Panel:
    """Return a piece wrong side up with its canvas and the rows in which both are pad-stitched."""
    ring: Points = TURNED_OVER(stiff.outline)
    inks: list[Ink] = [cloth(shell, TURNED_OVER, cut=True), Face("wrong", ring, stiff.name)]
    low, high = float(ring.imag.min()), float(ring.imag.max())
    for level in np.arange(low + ROWS, high, ROWS):
        found = sorted(line_crossings(ring, 1j * level, 1 + 0j), key=lambda p: p.real)
        for one, two in zip(found[::2], found[1::2], strict=False):
            inks.append(InkLine("hidden", np.array([one + 6.0, two - 6.0])))
    return drawn_panel([*inks, name_on(shell, TURNED_OVER(shell.cut), [ring])])


def taped_roll(goods: Goods, pieces: Sequence[str]) -> StageDrawing | None:
    """Return fronts wrong side up with the tape beside their roll lines, on the side of the armhole."""
    blocks = []
    for shape in (goods.shapes[name] for name in pieces):
        for mark in (m for m in shape.piece.placements if m.what == "roll line"):
            line = mark.path.points(2.0)
            inside = complex(shape.outline.mean())
            side = min((1.0, -1.0), key=lambda s: abs(_middle(left_of(line, s * TAPE[1])) - inside))
            band = np.concatenate([left_of(line, side * TAPE[0]), left_of(line, side * TAPE[1])[::-1]])
            inks: list[Ink] = [cloth(shape, TURNED_OVER), InkLine("fold", TURNED_OVER(line))]
            inks += [Face("elastic", TURNED_OVER(band))]
            inks += [InkLine("sewing", TURNED_OVER(left_of(line, side * TAPE[1])), mark.name)]
            blocks.append([*inks, name_on(shape, TURNED_OVER(shape.outline), [TURNED_OVER(band)])])
    return StageDrawing("taped", (drawn_panel(in_rows(blocks)),)) if blocks else None


# --------------------------------------------------------------------------------- on what stands


def padded(so_far: SoFar, pieces: Sequence[str]) -> StageDrawing:
    """Return the parts wrong side up, a strip of wadding along each crown."""
    blocks = []
    for part in so_far.parts([(name, "") for name in pieces]):
        inks, heads = list(flat(so_far, part, over=True)), list[Points]()
        for move, name in each_hand(so_far, part, TURNED_OVER):
            shape = so_far.goods.shapes[name]
            for edge in edges_as(shape.piece, EdgeRole.CAP, EdgeRole.CAP_PART):
                line = shape.edges[edge.name]
                if float(line.imag.max()) > 0.5 * float(shape.outline.imag.max()):
                    heads.append(move(np.concatenate([line, left_of(line, HEAD)[::-1]])))
                    inks += [Face("notion", heads[-1]), InkLine("sewing", move(line), f"{name}.{edge.name}")]
        blocks.append([*inks, *names_of(so_far.goods, part, TURNED_OVER, heads)])
    return StageDrawing("padded", (drawn_panel(in_rows(blocks)),))


def hung(so_far: SoFar, pieces: Sequence[str]) -> StageDrawing:
    """Return the parts as they hang, an arrow down for what drops, and the level line that they are cut to."""
    blocks = []
    for part in so_far.parts([(name, "") for name in pieces]):
        inks = list(flat(so_far, part, over=False))
        x0, y0, x1, _ = drawn_panel(inks).box
        inks.append(InkLine("fold", np.array([complex(x0 - 30, y0 + 12), complex(x1 + 30, y0 + 12)])))
        inks += [InkMark("move", complex(x0 + (x1 - x0) * at, y0 - 34), -1j, 44.0) for at in (0.25, 0.75)]
        blocks.append([*inks, *names_of(so_far.goods, part, STAY)])
    return StageDrawing("hung", (drawn_panel(in_rows(blocks)),))
