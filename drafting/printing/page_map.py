"""The map of all pages of a sheet: each page with its name, each piece with its number, none over another."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np

from drafting.geometry import Path, line
from drafting.geometry.path import Box
from drafting.printing.pages import Tiling, page_name
from drafting.sheet import Layer, Stroke, Text, box_path

SIZES = (3.0, 2.4, 1.9, 1.5)
"""mm: sizes that a piece's number may have on the map (ours: 9 to 4 points)."""

STEPS = 9
"""Places tried across a piece, and as many up (ours)."""

RINGS = 40
"""Rings of places that are tried about a piece which has no room for its number (ours)."""

AIR = 0.25
"""mm kept free round a number."""


MapDrawn = tuple[list[Stroke], list[Text], float]
"""Lines and words of a map, and how far down it reaches."""


def map_scale(tiling: Tiling, wide: float, high: float) -> float:
    """Return the scale by which the map of all pages fits a box of this size, mm."""
    across, up = tiling.size
    return min(wide / across, high / up)


def page_map(numbers: Sequence[str], outlines: Sequence[Path], tiling: Tiling, box: Box) -> MapDrawn:
    """Return lines and words of the map in a box, from its top, and how far down it reaches."""
    left, low, right, top = box
    scale = map_scale(tiling, right - left, top - low)
    at = complex(left, top - tiling.size[1] * scale)
    strokes, texts = _cells(tiling, scale, at)
    paths = [outline.mapped(lambda p: at + scale * p) for outline in outlines]
    taken = [text.bounds for text in texts]
    small_first = sorted(range(len(paths)), key=lambda n: (_extent(paths[n]), n))
    for n in small_first:
        text, leader = _numbered(numbers[n], paths[n], taken)
        taken.append(text.bounds)
        texts.append(text)
        strokes.append(Stroke(Layer.LABEL, (paths[n],), f"map.piece.{numbers[n]}", closed=True))
        strokes += leader
    return strokes, texts, at.imag + scale * tiling.paper.overlap / 2


def _cells(tiling: Tiling, scale: float, at: complex) -> tuple[list[Stroke], list[Text]]:
    strokes, texts = [], []
    for place in tiling.used:
        x0, y0, x1, y1 = tiling.cell(place)
        a, b = at + scale * complex(x0, y0), at + scale * complex(x1, y1)
        name = page_name(place)
        box = box_path((a.real, a.imag, b.real, b.imag))
        strokes.append(Stroke(Layer.PAGE, (box,), f"map.{name}", closed=True))
        size = min(6.0, 0.25 * (b - a).imag, 0.25 * (b - a).real)
        corner = complex(a.real + 0.4, b.imag - 0.4 - 0.75 * size)
        texts.append(Text(corner, size, (name,), layer=Layer.PAGE))
    return strokes, texts


def _extent(path: Path) -> float:
    x0, y0, x1, y1 = path.bounds
    return (x1 - x0) * (y1 - y0)


def _numbered(number: str, path: Path, taken: Sequence[Box]) -> tuple[Text, list[Stroke]]:
    """Return a piece's number in it, off what is taken; beside it, with a line to it, where it has no room."""
    x0, y0, x1, y1 = path.bounds
    middle = complex(x0 + x1, y0 + y1) / 2
    places = [p for p in _places(path.bounds) if _inside(p, path)] or [middle]
    places.sort(key=lambda p: abs(p - middle))
    for size in SIZES:
        for place in places:
            text = _centred(number, size, place)
            if not any(_touch(text.bounds, box) for box in taken):
                return text, []
    for place in _about(places[0]):
        text = _centred(number, SIZES[-1], place)
        if not any(_touch(text.bounds, box) for box in taken):
            return text, [Stroke(Layer.PAGE, (line(places[0], place),), f"map.leader.{number}")]
    return _centred(number, SIZES[-1], places[0]), []


def _places(box: Box) -> Iterator[complex]:
    shares = [(n + 0.5) / STEPS for n in range(STEPS)]
    for up in shares:
        for across in shares:
            yield complex(box[0] + across * (box[2] - box[0]), box[1] + up * (box[3] - box[1]))


def _about(point: complex) -> Iterator[complex]:
    for ring in range(1, RINGS):
        for n in range(12):
            yield point + complex(ring * np.exp(2j * np.pi * n / 12))


def _centred(number: str, size: float, place: complex) -> Text:
    return Text(place - 0.35j * size, size, (number,), "middle", bold=True)


def _touch(a: Box, b: Box) -> bool:
    return a[0] < b[2] + AIR and b[0] < a[2] + AIR and a[1] < b[3] + AIR and b[1] < a[3] + AIR


def _inside(point: complex, path: Path) -> bool:
    ring = np.append(path.points(0.2), path.start) - point
    turned = np.angle(ring[1:] * ring[:-1].conjugate()).sum()
    return bool(abs(turned) > np.pi)
