"""The squares that prove the scale of a print, and the bar of an overview."""

from __future__ import annotations

from itertools import pairwise

from drafting.geometry import line
from drafting.geometry.path import Box
from drafting.ground.units import ShownUnit
from drafting.sheet import Layer, Stroke, Text, box_around, box_path, wider_box
from drafting.sheet.room import Room, least_page

SQUARES: tuple[tuple[str, str, float], ...] = (("4in", "4 in", 101.6), ("100mm", "100 mm", 100.0))
"""id, caption and side (mm) of the scale squares; an inch is 25.4 mm by definition."""

ADVICE = ("Measure both ways.", "If a side is not true, print", "again at 100 %, actual size.")

TOGETHER = 0.9
"""Two squares stand side by side unless apart they save a tenth of the page (ours)."""

_Squares = tuple[tuple[Stroke, ...], tuple[Text, ...]]


def scale_square(index: int, corner: complex) -> tuple[Stroke, Text, Text]:
    """Return one of `SQUARES` with its captions, its lower left corner at `corner`."""
    key, caption, side = SQUARES[index]
    x, y = corner.real, corner.imag
    square = box_path((x, y, x + side, y + side))
    middle = corner + complex(side, side) / 2
    return (
        Stroke(Layer.SCALE, (square,), f"scale-check.{key}", closed=True),
        Text(middle + 4j, 9.0, (caption,), "middle", bold=True, layer=Layer.SCALE),
        Text(middle - 5j, 4.0, ADVICE, "middle", layer=Layer.SCALE),
    )


def scale_squares(room: Room, page: Box, apart: float) -> _Squares:
    """Return both squares, `apart` mm from all else in `room`, so that the page grows least."""
    step = round(SQUARES[0][2] + apart)
    rows = [_set((0j, offset), room, page, apart) for offset in (complex(step, 0), complex(0, step))]
    corners = min(rows, key=lambda found: _area(page, found))
    single = _one_by_one(room, page, apart)
    if _area(page, single) < TOGETHER * _area(page, corners):
        corners = single
    squares = [scale_square(index, corner) for index, corner in enumerate(corners)]
    return tuple(s[0] for s in squares), tuple(text for s in squares for text in s[1:])


def _set(offsets: tuple[complex, ...], room: Room, page: Box, apart: float) -> list[complex]:
    """Return the corners of squares that keep these `offsets` to each other (whole mm)."""
    box = wider_box(box_around(_box(i, offset) for i, offset in enumerate(offsets)), apart)
    width, height = box[2] - box[0], box[3] - box[1]
    corner = room.place(width, height, least_page(wider_box(page, apart), width, height))
    if corner is None:
        raise ValueError("the room handed over is too small for the scale squares")
    return [corner + complex(apart, apart) + offset for offset in offsets]


def _one_by_one(room: Room, page: Box, apart: float) -> list[complex]:
    first = _set((0j,), room, page, apart)[0]
    box = _box(0, first)
    # The 100 mm square is asked the room of the larger one: a whole number of cells more at most.
    second = _set((0j,), room.without(boxes=[box]), box_around((page, box)), apart)[0]
    return [first, second]


def _box(index: int, corner: complex) -> Box:
    side = SQUARES[index][2]
    return corner.real, corner.imag, corner.real + side, corner.imag + side


def _area(page: Box, corners: list[complex]) -> float:
    x0, y0, x1, y1 = box_around((page, *(_box(i, corner) for i, corner in enumerate(corners))))
    return (x1 - x0) * (y1 - y0)


BARS: dict[tuple[ShownUnit, bool], tuple[str, float, int]] = {
    ("cm", True): ("cm", 10.0, 50),
    ("cm", False): ("cm", 10.0, 10),
    ("mm", True): ("mm", 1.0, 500),
    ("mm", False): ("mm", 1.0, 100),
    ("in", True): ("in", 25.4, 20),
    ("in", False): ("in", 25.4, 5),
}
"""Scale bars by the maker's unit and whether they are long: the unit, its mm, how many of them (ours)."""


def scale_bar(
    left: complex, size: float, long: bool = True, unit: ShownUnit = "cm"
) -> tuple[tuple[Stroke, ...], tuple[Text, ...]]:
    """Return a bar of 50 cm or 20 in (10 cm or 5 in where not `long`) in five parts, figures `size` mm high."""
    name, each, count = BARS[unit, long]
    length = each * count
    ticks = [left + length * part / 5 for part in range(6)]
    ends = [line(tick, tick + 0.6j * size) for tick in ticks]
    rails = [line(a, b) for a, b in pairwise(ticks)]
    figures = (0, 1, 5)
    texts = [
        Text(ticks[i] - 1.1j * size, size, (f"{count * i / 5:g}" + (f" {name}" if i == 5 else ""),), "middle")
        for i in figures
    ]
    bar = Stroke(Layer.SCALE, (*rails, *ends), "scale-check.bar")
    return (bar,), tuple(texts)
