"""The one writer of SVG: numbers, escaping, path commands, and the dress of each layer.

Whatever is drawn, on paper or on a screen, goes this way: strokes and texts as groups by layer
(`layers`), or single elements (`element`, `words`). What they return is an `Svg`: text that is
escaped already, so that a type checker tells it from a maker's words. No other module writes a tag.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache
from html import escape
from typing import NewType

from drafting.geometry import Line, Path
from drafting.ground.names import clean_text, safe_id
from drafting.ground.palette import Colour
from drafting.sheet import Layer, Stroke, Text
from drafting.sheet.style import STYLES, TEXT_COLOURS

Svg = NewType("Svg", str)
"""Elements as text, ready to stand in a file or a page."""

SPACE = "http://www.w3.org/2000/svg"

EDITOR, EDITOR_SPACE = "inkscape", "http://www.inkscape.org/namespaces/inkscape"
"""The extension of SVG by which vector editors know layers; readers without it see plain groups."""

FONT = "DejaVu Sans, Verdana, Arial, sans-serif"
"""Wide faces first, as text widths are estimated on the wide side."""

FARTHEST = 1e9
"""mm: what lies farther (a path: all its points together) is on no paper."""

STEADY = "non-scaling-stroke"
"""The effect by which a line keeps its width at any zoom."""

_NOUGHTS = re.compile(r"\.?0+(?=[ ,Z]|$)")
_NO_SIGN = re.compile(r"-0(?=[ ,Z]|$)")


@dataclass(frozen=True, slots=True)
class Pen:
    """How strokes and texts are written down.

    Coordinates have `places` decimals, y is turned down from `height` (mm), lines are `wide` times
    their mm. `short` leaves needless noughts out. `steady` lines keep their width at any zoom.
    `editable` layers are such in vector editors too, each with a name.
    `alone` says that a layer has one group on the page, which then carries the layer's name as id.
    """

    places: int = 4
    height: float = 0.0
    wide: float = 1.0
    short: bool = True
    steady: bool = False
    alone: bool = True
    editable: bool = False

    def coordinates(self, at: complex) -> tuple[str, str]:
        """Return x and y of a point as they are written."""
        x, y, places = at.real, self.height - at.imag, self.places
        if self.short:
            return number(x, places), number(y, places)
        return f"{x:.{places}f}", f"{y:.{places}f}"


def element(name: str, *inside: Svg, **given: str | None) -> Svg:
    """Return one element; attributes are escaped, and None is left out.

    An underscore stands for a hyphen, and behind a name that Python keeps for itself.

    >>> element("path", class_="edge", stroke_width="0.5", d="M 0,0", id=None)
    '<path class="edge" stroke-width="0.5" d="M 0,0"/>'
    """
    said = "".join([f'{_SPELT[key]}{_quoted(value)}"' for key, value in given.items() if value is not None])
    return Svg(f"<{name}{said}>{''.join(inside)}</{name}>" if inside else f"<{name}{said}/>")


def path_element(kind: str, data: str, more: str = "") -> Svg:
    """Return `element("path", class_=kind, d=data)` in a fraction of its time.

    Nothing of this may come from a maker: it is not escaped. `more` holds further attributes.
    """
    return Svg(f'<path class="{kind}" d="{data}"{more}/>')


def group(kind: str, inside: Iterable[Svg], more: str = "") -> Svg:
    """Return `element("g", *inside, class_=kind)` in a fraction of its time, as `path_element` does."""
    return Svg(f'<g class="{kind}"{more}>{"".join(inside)}</g>')


def caption(kind: str, text: str, more: str = "") -> Svg:
    """Return `words("text", text, class_=kind)` in a fraction of its time; the text is escaped."""
    return Svg(f'<text class="{kind}"{more}>{_quoted(text)}</text>')


def attribute(name: str, value: str) -> str:
    """Return one attribute, escaped, as further ones for `path_element`, `group` and `caption`.

    >>> attribute("id", 'a"b')
    ' id="a&quot;b"'
    """
    return f' {name}="{_quoted(value)}"'


def words(name: str, text: str, **given: str | None) -> Svg:
    """Return an element that holds a maker's words: `text`, `title` or `desc`.

    >>> words("title", "Kite & <b>")
    '<title>Kite &amp; &lt;b&gt;</title>'
    """
    return element(name, Svg(escape(text, quote=False)), **given)


def svg_joined(parts: Iterable[Svg]) -> Svg:
    """Return elements one after the other."""
    return Svg("".join(parts))


def number(value: float, places: int = 4) -> str:
    """Return a number without needless noughts; a not-a-number is refused with `ValueError`.

    >>> number(12.5), number(100.0), number(-0.00001)
    ('12.5', '100', '0')
    """
    if not abs(value) < FARTHEST:
        raise ValueError(f"a sheet holds {value}, which is no place on paper")
    text = f"{value:.{places}f}"
    text = text.rstrip("0").rstrip(".") if places else text
    return "0" if text == "-0" else text


def move_by(by: complex, height: float = 0.0) -> str:
    """Return the transform that moves what was drawn without a height by `by`, to 0.01 mm."""
    return f"translate({by.real:.2f} {height - by.imag:.2f})"


def path_data(path: Path, pen: Pen, closed: bool = False) -> str:
    """Return the path commands of `path`; cubics stay cubics.

    Raises `ValueError` for a point that is no place on paper.
    """
    segments = path.segments
    if closed and len(segments) > 1 and isinstance(segments[-1], Line):
        segments = segments[:-1]  # Z draws it
    one, three, height = *_steps(pen.places), pen.height
    forms, numbers = ["M " + one], [path.start.real, height - path.start.imag]
    for segment in segments:
        forms.append(" L " + one if isinstance(segment, Line) else " C " + three)
        for point in segment[1:]:
            numbers += (point.real, height - point.imag)
    if not sum(map(abs, numbers)) < FARTHEST:  # a not-a-number compares with nothing
        raise ValueError("a sheet holds a point which is no place on paper")
    text = "".join(forms) % tuple(numbers)
    if pen.short:
        text = _NO_SIGN.sub("0", _NOUGHTS.sub("", text))
    return text + " Z" if closed else text


def stroke_data(stroke: Stroke, pen: Pen) -> str:
    """Return the path commands of all paths of a stroke."""
    return " ".join([path_data(path, pen, stroke.closed) for path in stroke.paths])


def layers(strokes: Iterable[Stroke], texts: Iterable[Text], pen: Pen) -> Svg:
    """Return the group of each layer that has something on it, in order, its texts behind it."""
    on: dict[Layer, tuple[list[Stroke], list[Text]]] = {}
    for stroke in strokes:
        on.setdefault(stroke.layer, ([], []))[0].append(stroke)
    for text in texts:
        on.setdefault(text.layer, ([], []))[1].append(text)
    drawn = ((layer, "".join(_layer(layer, *on[layer], pen))) for layer in Layer if layer in on)
    return Svg("".join([_editable(layer, inside) if pen.editable else inside for layer, inside in drawn]))


def _editable(layer: Layer, inside: str) -> str:
    """Return a layer's groups as one layer of a vector editor."""
    given = {f"{EDITOR}:groupmode": "layer", f"{EDITOR}:label": layer.replace("-", " ")}
    return element("g", Svg(inside), **given)


def _layer(layer: Layer, strokes: list[Stroke], texts: list[Text], pen: Pen) -> Iterator[str]:
    """Yield the group of one layer; before it what clears the ground below, behind it its texts."""
    if strokes:
        data = [stroke_data(stroke, pen) for stroke in strokes]
        effect = f' vector-effect="{STEADY}"' if pen.steady else ""
        if STYLES[layer].halo:
            yield _halo(layer, pen.wide)
            yield from [path_element("halo", d, effect) for d in data]
            yield "</g>"
        yield _dress(layer, pen.wide, pen.alone)
        for stroke, d in zip(strokes, data, strict=True):
            fill = f' fill="{stroke.tint}"' if stroke.tint else ""
            yield path_element(layer, d, f' id="{safe_id(stroke.id)}"{fill}{effect}')
        yield "</g>"
    if texts:
        yield _ink(layer)
        for text in texts:
            yield from _text(text, pen)
        yield "</g>"


@cache
def _halo(layer: Layer, wide: float) -> str:
    style = STYLES[layer]
    width = number((style.width + 2 * style.halo) * wide)
    return _opened(class_="halo", stroke=Colour.PAPER, fill="none", stroke_width=width)


@cache
def _dress(layer: Layer, wide: float, alone: bool) -> str:
    """Return the beginning of a layer's group."""
    style = STYLES[layer]
    return _opened(
        class_=layer,
        id=layer if alone else None,
        stroke=style.colour,
        fill="none",
        stroke_width=number(style.width * wide),
        stroke_linejoin="round",
        stroke_linecap="butt" if style.dash else "round",
        stroke_dasharray=" ".join(number(v * wide, 3) for v in style.dash) or None,
    )


@cache
def _ink(layer: Layer) -> str:
    colour = TEXT_COLOURS.get(layer, Colour.INK)
    return _opened(class_="text", fill=colour, stroke="none", font_family=FONT)


def _opened(**given: str | None) -> str:
    return element("g", **given).replace("/>", ">")


def _text(text: Text, pen: Pen) -> Iterator[str]:
    size, bold = number(text.size), ' font-weight="bold"' if text.bold else ""
    anchor = "" if text.anchor == "start" else f' text-anchor="{text.anchor}"'
    for row, at in zip(text.lines, text.baselines, strict=True):
        x, y = pen.coordinates(at)
        said = _quoted(clean_text(row))
        yield f'<text x="{x}" y="{y}" font-size="{size}"{bold}{anchor}>{said}</text>'


@cache
def _steps(places: int) -> tuple[str, str]:
    one = f"%.{places}f,%.{places}f"
    return one, f"{one} {one} {one}"


def _quoted(value: str) -> str:
    """Return `value` escaped: seldom anything is, and asking is quicker than replacing."""
    wild = "&" in value or "<" in value or ">" in value or '"' in value
    return escape(value) if wild else value


class _Spelt(dict[str, str]):
    """The beginning of an attribute by its name in Python."""

    def __missing__(self, key: str) -> str:
        self[key] = f' {key.rstrip("_").replace("_", "-")}="'
        return self[key]


_SPELT = _Spelt()
