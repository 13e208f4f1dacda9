"""The first page of a printed sheet: how to print, how to join, the page map, the squares."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from drafting.geometry import Path
from drafting.ground.frozen import freeze
from drafting.printing.page_marks import Marks, Stamp, stamped_squares
from drafting.printing.pages import Place, Tiling, page_name
from drafting.printing.paper import PAPERS, Paper
from drafting.sheet import LEADING, Layer, Stroke, Text, box_path, text_width

SMALL, BODY, HEAD, TITLE = 2.7, 3.2, 4.2, 7.5
"""mm: sizes of text on the first page (ours: 8 to 21 points)."""

LEFT, GAP = 104.0, 6.0
"""mm: width of the left column, with the squares at its foot, and what lies between the columns."""

HOME = 440.0
"""mm: paper longer than this is printed away from home, and its first page made for A4 or Letter."""


@dataclass(frozen=True)
class FirstPage:
    """What the first page says: title, sub-title, the pieces by the pages they lie on, warnings."""

    title: str
    subtitle: str
    pieces: Mapping[str, tuple[Place, ...]]
    outlines: tuple[Path, ...] = ()
    warnings: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        freeze(self, "pieces")


def cover_paper(paper: Paper) -> Paper:
    """Return the paper of the first page: the same, or A4 or Letter beside large paper."""
    return PAPERS["a4-or-letter"] if paper.tall > HOME else paper


def cover(told: FirstPage, tiling: Tiling) -> Marks:
    """Return lines and words of the first page, the lower left corner of its window at 0."""
    paper = cover_paper(tiling.paper)
    wide, high = paper.net
    texts = _flow(0.0, high, wide, ((TITLE, True, told.title), (BODY, False, told.subtitle)))
    top = _foot(texts) - 4.0
    texts += _flow(0.0, top, LEFT, _advice(told, tiling))
    stamp = Stamp("", ("print this page first",))
    strokes, words = stamped_squares(0.5 + 0.5j, stamp)
    lines, names, low = _map(told, tiling, LEFT + GAP, top - 2.0, wide)
    listed = [(SMALL, False, f"{name}: {', '.join(map(page_name, pages))}") for name, pages in told.pieces.items()]
    rows = _flow(LEFT + GAP, low - 4.0, wide, ((HEAD, True, "Pieces and their pages"), *listed))
    kept = [text for text in rows if text.bounds[1] > 2.0]
    return (*strokes, *lines), (*texts, *words, *names, *kept)


def _advice(told: FirstPage, tiling: Tiling) -> list[tuple[float, bool, str]]:
    beside = cover_paper(tiling.paper) is not tiling.paper
    first = "Print this page at home" if beside else "Print this page first"
    said = [
        (HEAD, True, "How to print"),
        (
            BODY,
            False,
            f"{first}, at 100 % or 'actual size', never 'fit to page'. Measure both sides "
            "of the squares below: 100 mm, and 4 in. More than half a millimetre off is not true: mend "
            "the setting, or ask the kit's scale repair what your ruler means.",
        ),
        (
            BODY,
            False,
            "Print the others with the same setting, and measure the square on each: one "
            "later page may come out at another scale.",
        ),
    ]
    if len(tiling.used) > 1:
        start = page_name(tiling.middle)
        said += [
            (HEAD, True, "How to join"),
            (
                BODY,
                False,
                "Lay the pages out as on the map: letters count the rows from the top, "
                f"numbers the columns from the left. Begin in the middle, with {start}, and work outwards.",
            ),
            (
                BODY,
                False,
                "Cut each page you add along the grey line on the side it joins, lay it on "
                "its neighbour's uncut edge, so that half crosses and half diamonds become whole, and "
                "tape it. Beside a diamond stands the page that belongs there.",
            ),
        ]
    return said + [(BODY, True, warning) for warning in told.warnings]


def _flow(left: float, top: float, right: float, rows: Sequence[tuple[float, bool, str]]) -> list[Text]:
    """Return texts (size, bold, words) under each other, wrapped between `left` and `right`."""
    texts = []
    for size, bold, words in rows:
        lines = _wrapped(words, size, bold, right - left)
        top -= 0.35 * size
        texts.append(Text(complex(left, top - 0.8 * size), size, lines, bold=bold))
        top -= LEADING * size * len(lines)
    return texts


def _wrapped(words: str, size: float, bold: bool, width: float) -> tuple[str, ...]:
    """Return the words in lines no wider than `width` mm by estimate."""
    lines = [""]
    for word in words.split():
        longer = f"{lines[-1]} {word}".strip()
        if lines[-1] and text_width(Text(0j, size, (longer,), bold=bold)) > width:
            lines.append(word)
        else:
            lines[-1] = longer
    return tuple(lines)


def _foot(texts: Sequence[Text]) -> float:
    return min(text.bounds[1] for text in texts)


def _map(
    told: FirstPage, tiling: Tiling, left: float, top: float, right: float
) -> tuple[list[Stroke], list[Text], float]:
    """Return the map of all pages with the pieces on them, and how far down it reaches."""
    (wide, high), half = tiling.size, tiling.paper.overlap / 2
    scale = min((right - left) / wide, 0.45 * top / high)
    at = complex(left, top - high * scale)

    def small(p: complex) -> complex:
        return at + scale * p

    strokes, texts = [], []
    for place in tiling.used:
        x0, y0, x1, y1 = tiling.cell(place)
        a, b = small(complex(x0, y0)), small(complex(x1, y1))
        box = box_path((a.real, a.imag, b.real, b.imag))
        strokes.append(Stroke(Layer.PAGE, (box,), f"map.{page_name(place)}", closed=True))
        size = min(6.0, 0.25 * (b - a).imag, 0.25 * (b - a).real)
        corner = complex(a.real + 0.4, b.imag - 0.4 - 0.75 * size)
        texts.append(Text(corner, size, (page_name(place),), layer=Layer.PAGE))
    for (name, _), outline in zip(told.pieces.items(), told.outlines, strict=True):
        path = outline.mapped(small)
        strokes.append(Stroke(Layer.LABEL, (path,), f"map.piece.{name}", closed=True))
        x0, y0, x1, y1 = path.bounds
        number = name.partition(" ")[0]
        middle = complex(x0 + x1, y0 + y1) / 2 - 1j
        texts.append(Text(middle, 3.0, (number,), "middle", bold=True))
    return strokes, texts, small(complex(0, half)).imag
