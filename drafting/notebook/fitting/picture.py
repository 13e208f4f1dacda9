"""Pieces before and after a fitting, laid on one anchor, as SVG. Pure."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

from drafting.checks.words import capital, plain
from drafting.export.svg_writer import FONT, SPACE, Pen, Svg, element, number, path_data, words
from drafting.ground.units import ShownUnit, show_length
from drafting.notebook.fitting.state import Pair

GAP = 60.0
"""mm between two pieces (ours)."""

WIDEST = 2200.0
"""mm of pieces in one row (ours): about five, so that an arrow of 5 mm is seen on a screen."""

LEAST_ROOM = 220.0
"""mm that the words below a narrow piece need (ours)."""

TOLD_FROM: Mapping[ShownUnit, float] = MappingProxyType({"mm": 1.0, "cm": 1.0, "in": 25.4 / 16})
"""mm: a shorter arrow is drawn without its length, as it could not be read apart, or be told in inches."""

HEAD = 0.35
"""Of the letters' size: how long the barbs of an arrow are."""


def before_after(pairs: Sequence[Pair], unit: ShownUnit) -> Svg:
    """Return the pieces in rows: before in thin grey, now above it, an arrow at each place that moved."""
    rows = list(_rows(pairs))
    wide = max((sum(_wide(pair) + GAP for pair in row) for row in rows), default=GAP) + GAP
    size = max(wide / 90, 9.0)
    parts, y = [], 2 * size
    for row in rows:
        high = max(y1 - y0 for _, y0, _, y1 in map(_box, row))
        x = GAP
        for pair in row:
            x0, y0, _, _ = _box(pair)
            page = _Page(by=complex(x - x0, -y0), base=y + high, size=size, unit=unit, room=_wide(pair) + GAP)
            parts.append(_piece(pair, page))
            x += page.room
        y += high + 8.5 * size
    said = f"Before in grey, after in colour: {', '.join(plain(pair.after.name) for pair in pairs)}"
    return element(
        "svg",
        *parts,
        xmlns=SPACE,
        role="img",
        aria_label=said,
        viewBox=f"0 0 {wide:.0f} {y:.0f}",
        font_family=FONT,
        font_size=number(size, 1),
    )


def _rows(pairs: Sequence[Pair]) -> Iterator[list[Pair]]:
    """Yield the pieces row by row, none wider than `WIDEST` unless one piece alone is."""
    row: list[Pair] = []
    for pair in pairs:
        if row and sum(_wide(one) + GAP for one in (*row, pair)) > WIDEST:
            yield row
            row = []
        row.append(pair)
    if row:
        yield row


def _wide(pair: Pair) -> float:
    x0, _, x1, _ = _box(pair)
    return max(x1 - x0, LEAST_ROOM)


@dataclass(frozen=True, slots=True)
class _Page:
    """Where a piece is drawn: moved `by`, its foot at `base` from the top; letters of `size`; `room` wide, mm."""

    by: complex
    base: float
    size: float
    unit: ShownUnit
    room: float

    def text(self, said: str, at: complex, **more: str) -> Svg:
        return words("text", said, x=number(at.real, 1), y=number(self.base - at.imag, 1), **more)


def _box(pair: Pair) -> tuple[float, float, float, float]:
    a, b = pair.before.outline.moved(pair.by).bounds, pair.after.outline.bounds
    return min(a[0], b[0]), min(a[1], b[1]), max(a[2], b[2]), max(a[3], b[3])


def _piece(pair: Pair, page: _Page) -> Svg:
    pen = Pen(places=1, height=page.base, short=False)
    old = path_data(pair.before.outline.moved(pair.by + page.by), pen, closed=True)
    new = path_data(pair.after.outline.moved(page.by), pen, closed=True)
    at, left = pair.anchor + page.by, _box(pair)[0] + page.by.real
    letters = int(page.room / (0.6 * page.size))
    words_below = textwrap.wrap(f"laid {pair.named}; {_stayed(pair)}", letters, max_lines=4, placeholder=" ...")
    rows = [capital(plain(pair.after.name)), *words_below]
    texts = [page.text(row, complex(left, -(1.5 + 1.2 * n) * page.size)) for n, row in enumerate(rows)]
    anchor = element(
        "circle",
        class_="anchor",
        cx=number(at.real, 1),
        cy=number(page.base - at.imag, 1),
        r=number(page.size / 2.5, 1),
    )
    was, now = (element("path", class_=kind, d=data) for kind, data in (("was", old), ("now", new)))
    return element("g", was, now, *_arrows(pair, page), anchor, *texts, class_="pair")


def _stayed(pair: Pair) -> str:
    if not pair.shifts and len(pair.stayed) == len(pair.after.edges):
        return "stayed as it was"
    return f"stayed: {', '.join(map(plain, pair.stayed)) or 'nothing'}"


def _arrows(pair: Pair, page: _Page) -> Iterator[Svg]:
    """Yield an arrow at each place that moved, the longest first, with its length where there is room for it."""
    told: list[complex] = []
    for shift in sorted(pair.shifts, key=lambda one: -abs(one.new - one.old)):
        a, b = shift.old + page.by, shift.new + page.by
        yield from _arrow(a, b, page)
        place = b + (b - a) / abs(b - a) * page.size * 0.6
        clear = all(
            abs((place - one).real) > 6 * page.size or abs((place - one).imag) > 1.2 * page.size for one in told
        )
        if abs(b - a) >= TOLD_FROM[page.unit] and clear:
            told.append(place)
            unit: ShownUnit = "in" if page.unit == "in" else "mm"
            yield page.text(show_length(abs(b - a), unit, finer=unit == "in"), place)


def _arrow(a: complex, b: complex, page: _Page) -> Iterator[Svg]:
    way = (b - a) / abs(b - a)
    barbs = [b - HEAD * page.size * way * turn for turn in (complex(0.8, 0.6), complex(0.8, -0.6))]
    points = " ".join(f"{p.real:.1f},{page.base - p.imag:.1f}" for p in (a, b, barbs[0], b, barbs[1]))
    yield element("polyline", class_="shift", points=points)
