"""An overview drawn for the screen: the same lines as in a file, lighter and quicker to write.

One user unit is 1 mm. Each piece is written once, where it was drafted, and moved to its place by one
translation: a piece that stays as it was costs nothing, wherever it has to make room. The shown part
is chosen by the viewBox alone, so that a page is never stretched. Lines keep their width at any zoom
(the style sheet of the place it is shown in sets `vector-effect`), and hundredths of a mm are enough
to see.
"""

from __future__ import annotations

from collections.abc import Mapping

from drafting.draft.pattern import CutPiece
from drafting.export.svg import SCREEN
from drafting.export.svg_writer import SPACE, Pen, Svg, element, layers, move_by
from drafting.geometry.path import Box
from drafting.ground.names import clean_text
from drafting.ground.remembered import remembered
from drafting.sheet import Stroke
from drafting.sheet.overview import Overview
from drafting.sheet.shown_piece import KEPT, ShownPiece

PEN = Pen(places=2, wide=SCREEN, short=False, alone=False)


def screen_text(
    overview: Overview, box: Box, words: str, over: Svg, earlier: Mapping[str, Stroke] | None = None
) -> Svg:
    """Return the SVG of what lies in `box` (mm on the page, y up), as large as its place allows.

    `words` tell a screen reader what it is; `over` is put above all lines, and `earlier` holds
    strokes put above the pieces of these names, as those pieces were drafted.
    """
    x0, y0, x1, y1 = box
    pieces = [_placed(item, overview.height, earlier or {}) for item in overview.laid]
    beside = layers(overview.rails, overview.texts, PEN)
    return element(
        "svg",
        element("g", beside, transform=move_by(0j, overview.height)),
        *pieces,
        over,
        xmlns=SPACE,
        viewBox=f"{x0:.2f} {overview.height - y1:.2f} {x1 - x0:.2f} {y1 - y0:.2f}",
        width="100%",
        height="100%",
        preserveAspectRatio="xMidYMax",
        role="img",
        aria_label=clean_text(words, len(words)),
    )


def _placed(item: ShownPiece, height: float, earlier: Mapping[str, Stroke]) -> Svg:
    """Return one piece at its place."""
    lines = _lines_of(item.cut_piece, item.garment, item.size, item.place)
    was = earlier.get(item.cut_piece.piece.name)
    pale = [layers([was], (), PEN)] if was else []
    return element("g", lines, *pale, transform=move_by(item.by, height))


@remembered(KEPT)
def _lines_of(cut_piece: CutPiece, garment: str, size: float, place: int) -> Svg:
    """Return every line and word of a piece as drafted."""
    item = ShownPiece(cut_piece, garment, 0j, size, place)
    return layers(item.strokes, item.words, PEN)
