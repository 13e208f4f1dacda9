"""A sheet drawn for the screen: the same lines as in a file, lighter and quicker to write. Layer 5.

One user unit is 1 mm and nothing is transformed, as in `svg`; the shown part is chosen by the
viewBox alone, so that a page is never stretched. Lines keep their width at any zoom (the style
sheet of the place it is shown in sets `vector-effect`), and hundredths of a mm are enough to see.
"""

from __future__ import annotations

from collections.abc import Iterator
from html import escape

from drafting.export.svg import FONT, SCREEN
from drafting.geometry import Line, Path
from drafting.names import clean_text, safe_id
from drafting.sheet import Box, Layer, Sheet, Stroke, Text
from drafting.sheet.style import INK, STYLES, TEXT_COLOURS

FARTHEST = 1e9
"""mm: a path that goes farther than this, all its points together, is on no paper."""


def screen_text(sheet: Sheet, box: Box, words: str, under: str = "", over: str = "") -> str:
    """Return the SVG of what lies in `box` (mm on the sheet, y up), as large as its place allows.

    `words` tell a screen reader what it is; `under` and `over` are SVG put below and above the
    sheet's own lines.
    """
    x0, y0, x1, y1 = box
    place = f"{x0:.2f} {sheet.height - y1:.2f} {x1 - x0:.2f} {y1 - y0:.2f}"
    lines = "".join(part for layer in Layer for part in _layer(sheet, layer))
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{place}" width="100%" height="100%" '
        'preserveAspectRatio="xMidYMax" '
        f'role="img" aria-label="{escape(clean_text(words, len(words)))}">{under}{lines}{over}</svg>'
    )


def screen_path(path: Path, height: float, closed: bool = False, places: int = 2) -> str:
    """Return the path commands of `path` to `places` decimals, y turned down from `height`."""
    segments = path.segments
    if closed and len(segments) > 1 and isinstance(segments[-1], Line):
        segments = segments[:-1]  # Z draws it
    one, three = _steps(places)
    forms, numbers = ["M" + one], [path.start.real, height - path.start.imag]
    for segment in segments:
        forms.append("L" + one if isinstance(segment, Line) else "C" + three)
        for point in segment[1:]:
            numbers += (point.real, height - point.imag)
    if not sum(map(abs, numbers)) < FARTHEST:  # a not-a-number compares with nothing
        raise ValueError("a sheet holds a point which is no place on paper")
    text = "".join(forms) % tuple(numbers)
    return text + "Z" if closed else text


def _steps(places: int) -> tuple[str, str]:
    one = f"%.{places}f,%.{places}f"
    return one, f"{one} {one} {one}"


def _layer(sheet: Sheet, layer: Layer) -> Iterator[str]:
    """Yield the group of one layer; before it what clears the ground below, behind it its texts."""
    strokes, style = sheet.on(layer), STYLES[layer]
    if strokes and style.halo:
        wide = (style.width + 2 * style.halo) * SCREEN
        paths = "".join(f'<path d="{_data(s, sheet.height)}"/>' for s in strokes)
        yield f'<g class="halo" stroke="#fff" fill="none" stroke-width="{wide:.2f}">{paths}</g>'
    if strokes:
        cap = "butt" if style.dash else "round"
        dash = " ".join(f"{v * SCREEN:.3g}" for v in style.dash)
        broken = f' stroke-dasharray="{dash}"' if dash else ""
        yield (
            f'<g class="{layer}" stroke="{style.colour}" fill="none" stroke-linejoin="round" '
            f'stroke-width="{style.width * SCREEN:.2f}" stroke-linecap="{cap}"{broken}>'
        )
        yield from (_path(stroke, sheet.height) for stroke in strokes)
        yield "</g>"
    texts = [text for text in sheet.texts if text.layer is layer]
    if texts:
        yield f'<g class="text" fill="{TEXT_COLOURS.get(layer, INK)}" font-family="{FONT}">'
        yield from (line for text in texts for line in _text(text, sheet.height))
        yield "</g>"


def _path(stroke: Stroke, height: float) -> str:
    tint = f' fill="{stroke.tint}"' if stroke.tint else ""
    data = _data(stroke, height)
    return f'<path class="{stroke.layer}" id="{safe_id(stroke.id)}" d="{data}"{tint}/>'


def _data(stroke: Stroke, height: float) -> str:
    return "".join(screen_path(path, height, stroke.closed) for path in stroke.paths)


def _text(text: Text, height: float) -> Iterator[str]:
    bold = ' font-weight="bold"' if text.bold else ""
    anchor = "" if text.anchor == "start" else f' text-anchor="{text.anchor}"'
    for line, at in zip(text.lines, text.baselines, strict=True):
        yield (
            f'<text x="{at.real:.2f}" y="{height - at.imag:.2f}" font-size="{text.size:.2f}"'
            f"{bold}{anchor}>{escape(clean_text(line))}</text>"
        )
