"""The figure of the measuring guide as SVG: every tape line is in it, and shows by CSS alone."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Iterator

from drafting.body import Body
from drafting.checks.words import capital, plain
from drafting.export.svg_writer import SPACE, Pen, Svg, element, number, path_data, words
from drafting.geometry import Path
from drafting.ground.units import show_length
from drafting.sheet.wearer import Drawing, Lines, draw_wearer
from drafting.sheet.wearer.words import WAYS

WIDE = 1940.0
"""mm: the width of an adult's drawing, at which the sizes below hold; others are in proportion."""

HEAD, FOOT = 250.0, 80.0
"""mm over the figures for the words, and under them for the names of the views."""

WIDEST = 70
"""Characters in one line of the words."""

IDLE = "Click into a field, or press Tab until you reach it: the tape shows here."


def figure_picture(body: Body, unit: str | None, title: str = "") -> Svg:
    """Return the drawing of a body (mm, fitted to its place); raises `DraftError`."""
    drawing = draw_wearer(body)
    k = drawing.width / WIDE
    top = drawing.height + HEAD * k
    parts = [*_figures(drawing, top), *_names(drawing, top, k), _caption("", IDLE, "no-tape", k)]
    for name in (*drawing.taped, "weight"):
        lines = _lines(drawing.tape(name), top, k)
        head = f"{capital(plain(name))}{_size(body, name, unit)}"
        parts.append(_caption(head, capital(f"{WAYS[name]}."), "tape", k, f"tape.{name}", lines))
    return element(
        "svg",
        *parts,
        class_="wearer",
        role="img",
        xmlns=SPACE,
        style=f"--k:{k:.3f}",
        viewBox=f"0 0 {drawing.width:.0f} {top + FOOT * k:.0f}",
        aria_label=title or f"{body.title}: front, side and back",
    )


def _figures(drawing: Drawing, top: float) -> Iterator[Svg]:
    for view in drawing.views:
        shapes = [_line([path], "shape", top) for path in view.shapes]
        details = _line(view.details, "detail", top)
        yield element("g", *shapes, details, class_="view", data_view=view.name)


def _line(paths: Iterable[Path], kind: str, top: float) -> Svg:
    pen = Pen(height=top)
    return element("path", class_=kind, d=" ".join(path_data(path, pen) for path in paths))


def _names(drawing: Drawing, top: float, k: float) -> Iterator[Svg]:
    for view in drawing.views:
        x0, _, x1, _ = view.shapes[0].bounds
        at = {"x": number((x0 + x1) / 2, 0), "y": number(top + 30 * k, 0)}
        yield words("text", view.name, class_="view-name", **at)


def _lines(tapes: Iterable[Lines], top: float, k: float) -> list[Svg]:
    """Return a measure's lines in every view: what is seen, what lies behind, both ends."""
    parts = []
    for one in tapes:
        if one.far:
            parts.append(_line(one.far, "far", top))
        parts.append(_line(one.seen, "seen", top))
        parts += [
            element("circle", class_="end", cx=number(p.real, 1), cy=number(top - p.imag, 1), r=number(13 * k, 1))
            for p in one.ends
        ]
    return parts


def _caption(head: str, said: str, kind: str, k: float, name: str = "", lines: Iterable[Svg] = ()) -> Svg:
    """Return a group of lines with its words: what is measured, how much, and the way."""
    left = number(60 * k, 0)
    title = [words("text", head, class_="head", x=left, y=number(70 * k, 0))] if head else []
    rows = [
        words("text", row, class_="way", x=left, y=number((136 + 60 * i) * k, 0))
        for i, row in enumerate(textwrap.wrap(said, WIDEST))
    ]
    return element("g", *lines, *title, *rows, class_=kind, id=name or None)


def _size(body: Body, name: str, unit: str | None) -> str:
    if name == "weight":
        return "" if body.weight is None else f": {body.weight:g} kg"
    measure = body.measures.get(name)
    if measure is None:
        return ""
    about = "about " if measure.source == "estimated" else ""
    return f": {about}{show_length(measure.mm, unit)}"
