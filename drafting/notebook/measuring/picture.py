"""The figure of the measuring guide as SVG: every tape line is in it, and shows by CSS alone."""

from __future__ import annotations

import html
import textwrap
from collections.abc import Iterable, Iterator

from drafting.body import Body
from drafting.checks.words import capital, plain
from drafting.export.svg import path_data
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


def figure_picture(body: Body, unit: str | None, title: str = "") -> str:
    """Return the drawing of a body (mm, fitted to its place); raises `DraftError`."""
    drawing = draw_wearer(body)
    k = drawing.width / WIDE
    top = drawing.height + HEAD * k
    parts = [*_figures(drawing, top), *_names(drawing, top, k), _caption("", IDLE, "no-tape", k)]
    for name in (*drawing.taped, "weight"):
        lines = _lines(drawing.tape(name), top, k)
        head = f"{capital(plain(name))}{_size(body, name, unit)}"
        parts.append(_caption(head, capital(f"{WAYS[name]}."), "tape", k, f"tape.{name}", lines))
    label = html.escape(title or f"{body.title}: front, side and back")
    box = f"0 0 {drawing.width:.0f} {top + FOOT * k:.0f}"
    return (
        f'<svg class="wearer" viewBox="{box}" style="--k:{k:.3f}" role="img" aria-label="{label}" '
        f'xmlns="http://www.w3.org/2000/svg">{"".join(parts)}</svg>'
    )


def _figures(drawing: Drawing, top: float) -> Iterator[str]:
    for view in drawing.views:
        yield f'<g class="view" data-view="{view.name}">'
        yield from (f'<path class="shape" d="{path_data(p, top)}"/>' for p in view.shapes)
        yield f'<path class="detail" d="{_data(view.details, top)}"/></g>'


def _names(drawing: Drawing, top: float, k: float) -> Iterator[str]:
    for view in drawing.views:
        x0, _, x1, _ = view.shapes[0].bounds
        x, y = (x0 + x1) / 2, top + 30 * k
        yield f'<text class="view-name" x="{x:.0f}" y="{y:.0f}">{view.name}</text>'


def _lines(tapes: Iterable[Lines], top: float, k: float) -> str:
    """Return a measure's lines in every view: what is seen, what lies behind, both ends."""
    parts = []
    for one in tapes:
        if one.far:
            parts.append(f'<path class="far" d="{_data(one.far, top)}"/>')
        parts.append(f'<path class="seen" d="{_data(one.seen, top)}"/>')
        parts += [
            f'<circle class="end" cx="{p.real:.1f}" cy="{top - p.imag:.1f}" r="{13 * k:.1f}"/>' for p in one.ends
        ]
    return "".join(parts)


def _caption(head: str, words: str, kind: str, k: float, name: str = "", lines: str = "") -> str:
    """Return a group of lines with its words: what is measured, how much, and the way."""
    texts = [f'<text class="head" x="{60 * k:.0f}" y="{70 * k:.0f}">{html.escape(head)}</text>']
    texts += [
        f'<text class="way" x="{60 * k:.0f}" y="{(136 + 60 * i) * k:.0f}">{html.escape(row)}</text>'
        for i, row in enumerate(textwrap.wrap(words, WIDEST))
    ]
    own = f' id="{name}"' if name else ""
    return f'<g class="{kind}"{own}>{lines}{"".join(texts if head else texts[1:])}</g>'


def _size(body: Body, name: str, unit: str | None) -> str:
    if name == "weight":
        return "" if body.weight is None else f": {body.weight:g} kg"
    measure = body.measures.get(name)
    if measure is None:
        return ""
    about = "about " if measure.source == "estimated" else ""
    return f": {about}{show_length(measure.mm, unit)}"


def _data(paths: Iterable[Path], top: float) -> str:
    return " ".join(path_data(path, top) for path in paths)
