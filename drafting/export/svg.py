"""A sheet as SVG, one user unit = 1 mm.

Width and height stand in mm and the viewBox in mm (SVG 1.1, section 7: a unit is then one
millimetre whatever dots per inch a reader assumes). Nothing is transformed, no clock is read, and
every text passes `clean_text` and the writer's escaping.
"""

from __future__ import annotations

from drafting.export.svg_writer import EDITOR, EDITOR_SPACE, SPACE, Pen, element, layers, number, words
from drafting.ground.names import clean_text
from drafting.ground.palette import Colour
from drafting.sheet import Sheet

DECIMALS = 4
"""A ten-thousandth of a millimetre: lengths read back stay within a hundredth."""

DESCRIPTION_LIMIT = 2000
"""Characters kept of a sheet's description (ours)."""

SCREEN = 2.2
"""Screen pixels for each mm of line width where a drawing is fitted to its place (ours)."""

HEAD = '<?xml version="1.0" encoding="utf-8"?>\n'


def svg_text(sheet: Sheet, fit: bool = False) -> str:
    """Return `sheet` as the text of an SVG file; the same sheet gives the same text.

    `fit` gives a drawing for the screen instead: as wide as its place allows, lines of a steady
    width, no XML head.
    """
    pen = Pen(DECIMALS, sheet.height, SCREEN if fit else 1.0, steady=fit, editable=not fit)
    wide, high = number(sheet.width), number(sheet.height)
    drawn = element(
        "svg",
        words("title", clean_text(sheet.title)),
        words("desc", clean_text(sheet.description, DESCRIPTION_LIMIT)),
        layers(sheet.strokes, sheet.texts, pen),
        xmlns=SPACE,
        version="1.1",
        width="100%" if fit else f"{wide}mm",
        height=None if fit else f"{high}mm",
        viewBox=f"0 0 {wide} {high}",
        **({} if fit else {f"xmlns:{EDITOR}": EDITOR_SPACE}),
        style=f"height:auto;background:{Colour.PAPER}" if fit else None,
    )
    return f"{'' if fit else HEAD}{drawn}\n"
