"""A drawing written down: panels placed on 60 mm of paper, faces hatched, names where they have room.

One unit is 0.1 mm; all numbers are whole. The look of each class stands in `making/page/stages.css`.
"""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np

from drafting.export.svg_writer import Svg, caption, element, path_element, svg_joined, words
from drafting.geometry.area_room import free_part, room_for_box
from drafting.geometry.curve import Points
from drafting.geometry.path import Box
from drafting.geometry.polylines import fewer_points, within_box
from drafting.making.stages.hatching import HATCHES, hatched
from drafting.making.stages.marks import written_mark
from drafting.making.stages.picture import Face, FaceLook, Ink, InkLine, InkMark, InkName, LineLook, StageDrawing
from drafting.making.stages.placed import WIDE, PlacedPanel, placed_panels

CLASSES: dict[FaceLook | LineLook, str] = {
    "right": "r",
    "wrong": "w",
    "interfacing": "i",
    "lining": "l",
    "elastic": "g",
    "notion": "t",
    "solid": "k",
    "sewing": "n",
    "sewn": "N",
    "basting": "b",
    "fold": "f",
    "hidden": "h",
    "fine": "s",
    "firm": "e",
    "before": "z",
    "edge": "o",
}
"""The class of each face and line."""

TEXT, LETTER = 23, 0.58
"""Height of the words, units, and width of a letter as a share of it, on the wide side."""

STRAIGHT_TO = 0.6
"""Units by which a point may leave the line of its neighbours and still be left out (0.06 mm on paper)."""

BEYOND = 12.0
"""Units beyond a window up to which faces are drawn, so that no outline lies on its rim."""


@dataclass(frozen=True)
class Inked:
    """A drawing as SVG, its height in units, and the boxes of its names on paper."""

    svg: Svg
    high: int
    names: tuple[Box, ...]


@dataclass
class _Sheet:
    """What is written so far of one panel, and what of the paper is taken."""

    placed: PlacedPanel
    parts: list[Svg] = field(default_factory=list)
    run: tuple[str, list[str]] = ("", [])
    taken: list[Box] = field(default_factory=list)
    names: list[Box] = field(default_factory=list)

    def flush(self) -> None:
        """Write the lines of one look that follow each other as one path."""
        kind, data = self.run
        if data:
            self.parts.append(path_element(kind, "".join(data)))
        self.run = ("", [])

    def add(self, part: Svg) -> None:
        self.flush()
        self.parts.append(part)


def inked(drawing: StageDrawing, title: str) -> Inked:
    """Return a drawing written down; `title` is what it says to those who cannot see it."""
    panels, high = placed_panels(drawing)
    parts, names = [words("title", title)], []
    for number, placed in enumerate(panels, 1):
        sheet = _Sheet(placed)
        _write(sheet)
        parts.append(_windowed(placed, svg_joined(sheet.parts)))
        names += sheet.names
        if len(panels) > 1:
            x, y = placed.head
            parts.append(caption("c", str(number), f' x="{x:.0f}" y="{y:.0f}"'))
    svg = element("svg", *parts, class_="stage", role="img", viewBox=f"0 0 {WIDE} {high}")
    return Inked(svg, high, tuple(names))


def _windowed(placed: PlacedPanel, inside: Svg) -> Svg:
    """Return a panel's strokes, clipped where only a window of it is shown."""
    if placed.panel.window is None:
        return inside
    x0, y0, x1, y1 = placed.shown
    x, y, wide, high = (f"{value:.0f}" for value in (x0, y0, x1 - x0, y1 - y0))
    return element("svg", inside, x=x, y=y, width=wide, height=high, viewBox=f"{x} {y} {wide} {high}")


def _write(sheet: _Sheet) -> None:
    inks, place = sheet.placed.panel.inks, sheet.placed.at
    for ink in inks:
        if isinstance(ink, InkMark):
            sheet.taken += _arrow_box(ink, complex(place(np.array([ink.at]))[0]))
    for ink in inks:
        if isinstance(ink, InkLine) and ink.of:
            sheet.taken += _line_boxes(place(ink.points))
    for ink in inks:
        _write_one(sheet, ink)
    sheet.flush()


def _write_one(sheet: _Sheet, ink: Ink) -> None:
    place = sheet.placed.at
    match ink:
        case Face():
            ring = _seen(sheet, place(ink.ring))
            if len(ring) > 2:
                sheet.add(path_element(CLASSES[ink.look], line_data(ring, closed=True)))
                if lines := hatched(ring, HATCHES[ink.look]) if ink.look in HATCHES else "":
                    sheet.add(path_element(f"h{CLASSES[ink.look]}", lines))
        case InkLine():
            kind = CLASSES[ink.stroke]
            if sheet.run[0] != kind:
                sheet.flush()
                sheet.run = (kind, [])
            sheet.run[1].append(line_data(place(ink.points), closed=False))
        case InkMark():
            at = complex(place(np.array([ink.at]))[0])
            sheet.add(written_mark(ink.kind, at, ink.way.conjugate(), ink.size, ink.count))
        case InkName():
            _write_name(sheet, ink)


def _seen(sheet: _Sheet, ring: Points) -> Points:
    if sheet.placed.panel.window is None:
        return ring
    x0, y0, x1, y1 = sheet.placed.shown
    return within_box(ring, (x0 - BEYOND, y0 - BEYOND, x1 + BEYOND, y1 + BEYOND))


def _write_name(sheet: _Sheet, ink: InkName) -> None:
    """Write a name where it has room in its piece, else its number, else nothing."""
    place = sheet.placed.at
    ring, covers = place(ink.ring), [place(other) for other in ink.hidden]
    if sheet.placed.panel.window is not None:
        ring = within_box(ring, sheet.placed.shown)
    if len(ring) < 3:
        return
    across, up = (float(np.ptp(part)) for part in (ring.real, ring.imag))
    wides = [(said, LETTER * TEXT * len(said) + 6) for said in (ink.words, str(ink.number))]
    wides = [(said, wide) for said, wide in wides if wide <= across and up >= TEXT + 4.0]
    if not wides:
        return
    free = free_part(ring, covers, sheet.taken)
    for said, wide in wides:
        at = room_for_box(free, (wide, TEXT + 4.0))
        if at is not None:
            box = (at.real - wide / 2, at.imag - TEXT / 2 - 2, at.real + wide / 2, at.imag + TEXT / 2 + 2)
            sheet.taken.append(box)
            sheet.names.append(box)
            x, y, w = f"{box[0] + 2:.0f}", f"{box[1] + 1:.0f}", f"{wide - 4:.0f}"
            sheet.add(element("rect", x=x, y=y, width=w, height=f"{TEXT + 1}"))
            sheet.add(caption("c", said, f' x="{at.real:.0f}" y="{at.imag + 8:.0f}"'))
            return


def _arrow_box(ink: InkMark, at: complex) -> list[Box]:
    """Return what an arrow or an iron takes of the paper; pins and notches are small enough to lie under words."""
    if ink.kind not in ("move", "press", "iron", "button"):
        return []
    long = ink.kind in ("move", "press")
    start = at - ink.way.conjugate() * ink.size if long else at
    by = 14.0 if long else 1.1 * ink.size
    low = complex(min(at.real, start.real) - by, min(at.imag, start.imag) - by)
    high = complex(max(at.real, start.real) + by, max(at.imag, start.imag) + by)
    return [(low.real, low.imag, high.real, high.imag)]


def _line_boxes(line: Points) -> list[Box]:
    """Return small boxes along a line in work, so that no name lies on it."""
    every = max(1, len(line) // 6)
    bits = [line[i : i + every + 1] for i in range(0, len(line) - 1, every)]
    return [(b.real.min() - 4, b.imag.min() - 4, b.real.max() + 4, b.imag.max() + 4) for b in bits]


def line_data(points: Points, *, closed: bool) -> str:
    """Return the path of a line in whole units, each step from the last."""
    points = fewer_points(points, STRAIGHT_TO)
    whole = np.round(np.column_stack([points.real, points.imag])).astype(int)
    steps = np.diff(whole, axis=0)
    steps = steps[np.any(steps != 0, axis=1)]
    start = f"M{whole[0][0]} {whole[0][1]}"
    if not len(steps):
        return f"{start}h1"
    run = " ".join(f"{x} {y}" for x, y in steps.tolist()).replace(" -", "-")
    return f"{start}l{run}{'z' if closed else ''}"
