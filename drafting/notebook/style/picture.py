"""The pieces of a garment with every edge and corner to be clicked, and the line that would be cut. Pure."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from drafting.checks.words import capital, edge_words, plain
from drafting.draft.by_role import is_shell
from drafting.draft.draft import Draft
from drafting.draft.piece import Piece
from drafting.export.svg_writer import FONT, SPACE, Pen, Svg, element, number, path_data, words
from drafting.geometry import Path
from drafting.geometry.area_room import free_part, room_for_box

GAP, MARGIN = 60.0, 40.0
"""mm between two pieces, and round all of them (ours)."""

WIDEST = 2600.0
"""mm of pieces in one row (ours)."""

LETTER, LINE, AIR = 12.0, 22.0, 4.0
"""mm: how wide a letter of a piece's name is at most, how high a line of them, the air round it (ours)."""

SHARES = (0.25, 0.5, 0.75)
"""Places marked along each edge, beside its corners."""


@dataclass(frozen=True, slots=True)
class _Laid:
    """A piece on the page: moved `by`, its foot at `base` mm from the top."""

    piece: Piece
    by: complex
    base: float


def clickable(
    draft: Draft, lines: Mapping[str, Sequence[Path]], chosen: Sequence[tuple[str, complex]] = ()
) -> Svg:
    """Return the shell pieces in rows; `lines` are drawn dashed by piece, `chosen` places as filled rings."""
    laid, wide, high = _placed([piece for piece in draft.pieces if is_shell(piece)])
    parts = [part for one in laid for part in _piece(one, lines.get(one.piece.name, ()), chosen)]
    return element(
        "svg",
        *parts,
        xmlns=SPACE,
        role="img",
        aria_label=f"Pieces: {', '.join(plain(one.piece.name) for one in laid)}",
        viewBox=f"0 0 {wide:.0f} {high:.0f}",
        font_family=FONT,
        font_size=number(22.0, 1),
    )


def _placed(pieces: Sequence[Piece]) -> tuple[list[_Laid], float, float]:
    """Return where each piece lies, row by row, and how wide and high the page is."""
    laid: list[_Laid] = []
    row: list[Piece] = []
    y = wide = MARGIN

    def end_row() -> None:
        nonlocal y, wide
        tall = max(_size(piece)[1] for piece in row)
        x = MARGIN
        for piece in row:
            x0, y0, x1, _ = piece.outline.bounds
            laid.append(_Laid(piece, complex(x - x0, -y0), y + tall))
            x += x1 - x0 + GAP
        y, wide = y + tall + GAP, max(wide, x)
        row.clear()

    for piece in pieces:
        if row and sum(_size(one)[0] + GAP for one in (*row, piece)) > WIDEST:
            end_row()
        row.append(piece)
    if row:
        end_row()
    return laid, wide, y


def _size(piece: Piece) -> tuple[float, float]:
    x0, y0, x1, y1 = piece.outline.bounds
    return x1 - x0, y1 - y0


def _piece(laid: _Laid, lines: Sequence[Path], chosen: Sequence[tuple[str, complex]]) -> Iterator[Svg]:
    piece, pen = laid.piece, Pen(places=1, height=laid.base, short=False)
    yield element("path", class_="cloth", d=path_data(piece.outline.moved(laid.by), pen, closed=True))
    for dart in piece.darts:
        for leg in (dart.leg_a, dart.leg_b):
            yield element("path", class_="inner-dart", d=path_data(leg.moved(laid.by), pen))
    for edge in piece.edges:
        name = f"{piece.name}.{edge.name}"
        said = words("title", capital(edge_words((piece.name, edge.name))))
        data = path_data(edge.path.moved(laid.by), pen)
        yield element("path", said, class_="edge", d=data, data_edge=name)
        for share in SHARES:
            yield _dot(laid, edge.path.at(share * edge.length), "place", data_edge=name, data_share=f"{share}")
        yield _dot(laid, edge.path.end, "corner", data_edge=name, data_share="1")
    for mark in piece.placements:
        if mark.what in ("pocket", "pleat fold"):
            yield element("path", class_="mark", d=path_data(mark.path.moved(laid.by), pen))
    for path in lines:
        yield element("path", class_="to-cut", d=path_data(path.moved(laid.by), pen))
    for name, point in chosen:
        if name == piece.name:
            yield _dot(laid, point, "chosen")
    title = capital(plain(piece.name))
    middle = _clear(piece, title) + laid.by
    yield words(
        "text", title, x=number(middle.real, 1), y=number(laid.base - middle.imag, 1), text_anchor="middle"
    )


def _dot(laid: _Laid, at: complex, kind: str, **more: str) -> Svg:
    point = at + laid.by
    size = {"place": 6.0, "corner": 8.0, "chosen": 12.0}[kind]
    where = {"cx": number(point.real, 1), "cy": number(laid.base - point.imag, 1), "r": number(size, 1)}
    return element("circle", class_=kind, **where, **more)


def _clear(piece: Piece, title: str) -> complex:
    """Return where a piece's name stands clear of its outline and its darts; in its middle where nothing is."""
    darts = [Path.joined([d.leg_a, d.leg_b.reversed()]).points(1.0) for d in piece.darts]
    size = (LETTER * len(title) + 2 * AIR, LINE + 2 * AIR)
    x0, y0, x1, y1 = piece.outline.bounds
    found = room_for_box(free_part(piece.outline.points(1.0), darts, ()), size)
    return complex((x0 + x1) / 2, (y0 + y1) / 2) if found is None else found - 0.35j * LINE
