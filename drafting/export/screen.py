"""An overview drawn for the screen: the same lines as in a file, lighter and quicker to write.

One user unit is 1 mm. Each piece is written once, where it was drafted, and moved to its place by one
translation: a piece that stays as it was costs nothing, wherever it has to make room. The shown part
is chosen by the viewBox alone, so that a page is never stretched. Lines keep their width at any zoom
(the style sheet of the place it is shown in sets `vector-effect`), and hundredths of a mm are enough
to see.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from html import escape

from drafting.draft.pattern import CutPiece
from drafting.export.svg import FONT, SCREEN
from drafting.geometry import Line, Path
from drafting.ground.names import clean_text, safe_id
from drafting.ground.palette import Colour
from drafting.ground.remembered import remembered
from drafting.sheet import Box, Layer, Stroke, Text
from drafting.sheet.overview import KEPT, Laid, Overview
from drafting.sheet.style import STYLES, TEXT_COLOURS

FARTHEST = 1e9
"""mm: a path that goes farther than this, all its points together, is on no paper."""


def screen_text(
    overview: Overview,
    box: Box,
    words: str,
    under: str = "",
    over: str = "",
    below: Mapping[str, Stroke] | None = None,
) -> str:
    """Return the SVG of what lies in `box` (mm on the page, y up), as large as its place allows.

    `words` tell a screen reader what it is; `under` and `over` are SVG put below and above all
    lines, `below` a stroke put under the piece of that name, as that piece was drafted.
    """
    x0, y0, x1, y1 = box
    place = f"{x0:.2f} {overview.height - y1:.2f} {x1 - x0:.2f} {y1 - y0:.2f}"
    beside = "".join(_layers(overview.rails, overview.texts))
    lines = "".join(_placed(item, overview.height, below or {}) for item in overview.laid)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{place}" width="100%" height="100%" '
        'preserveAspectRatio="xMidYMax" '
        f'role="img" aria-label="{escape(clean_text(words, len(words)))}">{under}'
        f"<g {moved(0j, overview.height)}>{beside}</g>{lines}{over}</svg>"
    )


def moved(by: complex, height: float) -> str:
    """Return the attribute that moves what `screen_path` drew by `by` on a page of this height."""
    return f'transform="translate({by.real:.2f} {height - by.imag:.2f})"'


def screen_path(path: Path, closed: bool = False, places: int = 2) -> str:
    """Return the path commands of `path` to `places` decimals, y turned down."""
    segments = path.segments
    if closed and len(segments) > 1 and isinstance(segments[-1], Line):
        segments = segments[:-1]  # Z draws it
    one, three = _steps(places)
    forms, numbers = ["M" + one], [path.start.real, -path.start.imag]
    for segment in segments:
        forms.append("L" + one if isinstance(segment, Line) else "C" + three)
        for point in segment[1:]:
            numbers += (point.real, -point.imag)
    if not sum(map(abs, numbers)) < FARTHEST:  # a not-a-number compares with nothing
        raise ValueError("a sheet holds a point which is no place on paper")
    text = "".join(forms) % tuple(numbers)
    return text + "Z" if closed else text


def _steps(places: int) -> tuple[str, str]:
    one = f"%.{places}f,%.{places}f"
    return one, f"{one} {one} {one}"


def _placed(item: Laid, height: float, below: Mapping[str, Stroke]) -> str:
    """Return one piece at its place."""
    earlier = below.get(item.cut_piece.piece.name)
    under = "".join(_layers([earlier], ())) if earlier else ""
    lines = _lines_of(item.cut_piece, item.garment, item.size, item.place)
    return f"<g {moved(item.by, height)}>{under}{lines}</g>"


@remembered(KEPT)
def _lines_of(cut_piece: CutPiece, garment: str, size: float, place: int) -> str:
    """Return every line and word of a piece as drafted."""
    item = Laid(cut_piece, garment, 0j, size, place)
    return "".join(_layers(item.strokes, item.words))


def _layers(strokes: Iterable[Stroke], texts: Iterable[Text]) -> Iterator[str]:
    """Yield the group of each layer that has something on it, in order."""
    on: dict[Layer, tuple[list[Stroke], list[Text]]] = {}
    for stroke in strokes:
        on.setdefault(stroke.layer, ([], []))[0].append(stroke)
    for text in texts:
        on.setdefault(text.layer, ([], []))[1].append(text)
    for layer in Layer:
        if layer in on:
            yield from _layer(layer, *on[layer])


def _layer(layer: Layer, strokes: list[Stroke], texts: list[Text]) -> Iterator[str]:
    """Yield the group of one layer; before it what clears the ground below, behind it its texts."""
    style = STYLES[layer]
    if strokes and style.halo:
        wide = (style.width + 2 * style.halo) * SCREEN
        paths = "".join(f'<path d="{_data(s)}"/>' for s in strokes)
        yield f'<g class="halo" stroke="#fff" fill="none" stroke-width="{wide:.2f}">{paths}</g>'
    if strokes:
        cap = "butt" if style.dash else "round"
        dash = " ".join(f"{v * SCREEN:.3g}" for v in style.dash)
        broken = f' stroke-dasharray="{dash}"' if dash else ""
        yield (
            f'<g class="{layer}" stroke="{style.colour}" fill="none" stroke-linejoin="round" '
            f'stroke-width="{style.width * SCREEN:.2f}" stroke-linecap="{cap}"{broken}>'
        )
        yield from (_path(stroke) for stroke in strokes)
        yield "</g>"
    if texts:
        yield f'<g class="text" fill="{TEXT_COLOURS.get(layer, Colour.INK)}" font-family="{FONT}">'
        yield from (line for text in texts for line in _text(text))
        yield "</g>"


def _path(stroke: Stroke) -> str:
    tint = f' fill="{stroke.tint}"' if stroke.tint else ""
    return f'<path class="{stroke.layer}" id="{safe_id(stroke.id)}" d="{_data(stroke)}"{tint}/>'


def _data(stroke: Stroke) -> str:
    return "".join(screen_path(path, stroke.closed) for path in stroke.paths)


def _text(text: Text) -> Iterator[str]:
    bold = ' font-weight="bold"' if text.bold else ""
    anchor = "" if text.anchor == "start" else f' text-anchor="{text.anchor}"'
    for line, at in zip(text.lines, text.baselines, strict=True):
        yield (
            f'<text x="{at.real:.2f}" y="{-at.imag:.2f}" font-size="{text.size:.2f}"'
            f"{bold}{anchor}>{escape(clean_text(line))}</text>"
        )
