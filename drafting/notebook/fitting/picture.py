"""Pieces before and after a fitting, laid on one anchor, as SVG. Pure."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from drafting.checks.words import capital, plain
from drafting.export.svg_writer import FONT, SPACE, Pen, Svg, element, number, path_data, words
from drafting.ground.units import ShownUnit, show_length
from drafting.notebook.fitting.state import Pair, Shift

GAP = 60.0
"""mm between two pieces."""

TOLD_FROM = 1.0
"""mm: a shorter arrow is drawn without its length, as it could not be read apart."""

HEAD = 0.35
"""Of the letters' size: how long the barbs of an arrow are."""

PEN = Pen(places=1, short=False)


def before_after(pairs: Sequence[Pair], unit: ShownUnit) -> Svg:
    """Return the pieces side by side: before in thin grey, now above it, an arrow at each corner that moved."""
    boxes = [_box(pair) for pair in pairs]
    wide = sum(x1 - x0 for x0, _, x1, _ in boxes) + GAP * (len(boxes) + 1)
    high = max((y1 - y0 for _, y0, _, y1 in boxes), default=100.0)
    size = max(wide / 70, 9.0)
    x, parts = GAP, []
    for pair, (x0, y0, x1, _) in zip(pairs, boxes, strict=True):
        by = complex(x - x0, -y0)
        parts.append(_piece(pair, by, high, size, unit))
        x += x1 - x0 + GAP
    foot = 5.5 * size
    said = f"Before in grey, after in colour: {', '.join(plain(pair.after.name) for pair in pairs)}"
    return element(
        "svg",
        *parts,
        xmlns=SPACE,
        role="img",
        aria_label=said,
        viewBox=f"0 {-2 * size:.0f} {wide:.0f} {high + foot + 2 * size:.0f}",
        font_family=FONT,
        font_size=number(size, 1),
    )


def _box(pair: Pair) -> tuple[float, float, float, float]:
    a, b = pair.before.outline.moved(pair.by).bounds, pair.after.outline.bounds
    return min(a[0], b[0]), min(a[1], b[1]), max(a[2], b[2]), max(a[3], b[3])


def _piece(pair: Pair, by: complex, high: float, size: float, unit: ShownUnit) -> Svg:
    pen = Pen(places=1, height=high, short=False)
    old = path_data(pair.before.outline.moved(pair.by + by), pen, closed=True)
    new = path_data(pair.after.outline.moved(by), pen, closed=True)
    arrows = [part for shift in pair.shifts for part in _arrow(shift, by, high, size, unit)]
    at = pair.anchor + by
    x, _, _, _ = _box(pair)
    rows = [capital(plain(pair.after.name)), f"laid {pair.named}", *_stayed(pair)]
    texts = [
        words("text", row, x=number(x + by.real, 1), y=number(high + (1.4 + 1.3 * n) * size, 1))
        for n, row in enumerate(rows)
    ]
    return element(
        "g",
        element("path", class_="was", d=old),
        element("path", class_="now", d=new),
        *arrows,
        element(
            "circle", class_="anchor", cx=number(at.real, 1), cy=number(high - at.imag, 1), r=number(size / 2.5, 1)
        ),
        *texts,
        class_="pair",
    )


def _stayed(pair: Pair) -> list[str]:
    if not pair.shifts and len(pair.stayed) == len(pair.after.edges):
        return ["stayed as it was"]
    if not pair.stayed:
        return []
    some = ", ".join(map(plain, pair.stayed[:4])) + (" ..." if len(pair.stayed) > 4 else "")
    return [f"stayed: {some}"]


def _arrow(shift: Shift, by: complex, high: float, size: float, unit: ShownUnit) -> Iterator[Svg]:
    a, b = shift.old + by, shift.new + by
    way = (b - a) / abs(b - a)
    barbs = [b - HEAD * size * way * turn for turn in (complex(0.8, 0.6), complex(0.8, -0.6))]
    points = " ".join(f"{p.real:.1f},{high - p.imag:.1f}" for p in (barbs[0], b, barbs[1]))
    line = {"x1": a, "x2": b}
    ends = {key: number(p.real, 1) for key, p in line.items()}
    yield element("line", class_="shift", y1=number(high - a.imag, 1), y2=number(high - b.imag, 1), **ends)
    yield element("polyline", class_="shift", points=points)
    if abs(b - a) >= TOLD_FROM:
        place = b + way * size * 0.6
        yield words("text", show_length(abs(b - a), unit), x=number(place.real, 1), y=number(high - place.imag, 1))
