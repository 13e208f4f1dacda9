"""Every colour of the kit, once, each named for what it means. No other file names a colour.

A workroom's face: white paper, blue-black ink, petrol seams, and cloth in the shades of undyed linen
(the garment's own cloth), sage (lining) and lavender (interfacing). Nothing is told by colour alone:
lines are known by dash and width, pieces by their names. `tests/test_palette.py` holds the contrast
of every line and text against each ground it may lie on.

Colours that a maker meets on a page whose theme may be dark (`ERROR`, `WARNING`, `HAND`, `TAPE`) are
of middling lightness, so that one colour does for light and dark.
"""

from __future__ import annotations

from enum import StrEnum


class Colour(StrEnum):
    """A colour as #rrggbb."""

    PAPER = "#ffffff"
    """The sheet that is printed: white, as a printer's paper is and as nothing else need be inked."""
    PAPER_AT_NIGHT = "#e9e5dc"
    """The same sheet in a dark page, toned down so that it does not glare."""
    PAGE = "#faf8f4"
    """What words are read on at length: a little off white tires the eye less."""
    CLOTH = "#f5f2ec"
    """The cloth under the pieces of a lay: paler than any piece, so that gaps are seen."""

    RIGHT_SIDE = "#e4e4e4"
    """The right side of cloth where the making is drawn, hatched besides: a grey that a black printer keeps."""

    OWN_1 = "#f6eeda"
    """A piece of the garment's own cloth, in the first garment of a costume: linen."""
    OWN_2 = "#ebdfc2"
    """The same in the second garment: a step darker, so that a grey print tells them apart."""
    OWN_3 = "#ddcfa9"
    """The same in the third."""
    OWN_4 = "#cfbe91"
    """The same in the fourth: as dark as dark text on it allows."""
    LINING_1 = "#e4f1ea"
    """A lining piece of the first garment: cool beside linen, as a lining feels."""
    LINING_2 = "#d2e5db"
    """The same in the second garment."""
    LINING_3 = "#bed7ca"
    """The same in the third."""
    LINING_4 = "#aac9b9"
    """The same in the fourth."""
    INTERFACING_1 = "#edebf5"
    """Interfacing of the first garment: never seen once it is sewn, so the least like cloth."""
    INTERFACING_2 = "#dfdceb"
    """The same in the second garment."""
    INTERFACING_3 = "#cfcbdf"
    """The same in the third."""
    INTERFACING_4 = "#bfbad2"
    """The same in the fourth."""

    INK = "#1b2230"
    """What is cut along or read first: cut lines, grain, notches, words."""
    SOFT = "#454b57"
    """What is read second: notes, placements, the names of levels."""
    FAINT = "#63676f"
    """Help lines that may be overlooked: levels, guides, page edges, what stood before."""
    RULE = "#cdc7bc"
    """Lines between rows and round boxes, which carry nothing by themselves."""
    SEAM = "#0e5a63"
    """What is sewn: stitching lines and darts, told from the cut line in colour too."""
    STRETCH = "#86391a"
    """The way of greatest stretch, beside the ink of the grain."""
    PICK = "#cc6500"
    """The edge under the pointer, or looked at."""
    PARTNER = "#7b3a86"
    """What the picked edge is sewn to."""

    ERROR = "#c62f25"
    """What was refused, or cannot be cut so."""
    WARNING = "#96660f"
    """What wants care or a second look."""
    HAND = "#1d7a86"
    """What a hand can use: links, the slider's track, the ring of the focus."""
    TAPE = "#b8327a"
    """The tape on the wearer, unlike any line of a body or a pattern."""
    SKIN = "#f1e7dc"
    """The wearer's figure: nobody's skin, pale enough for every line on it."""


DYES: dict[str, str] = {
    "white": "#f4f2ec",
    "ivory": "#ece2c8",
    "silver": "#b9bcc0",
    "grey": "#85878a",
    "charcoal": "#43464b",
    "black": "#26262a",
    "red": "#b5322f",
    "crimson": "#8e1f35",
    "wine": "#5c2433",
    "pink": "#d99aa5",
    "plum": "#64405f",
    "purple": "#5b4288",
    "lilac": "#a998c4",
    "navy": "#27324f",
    "blue": "#3c5f96",
    "sky": "#8fb3cf",
    "teal": "#2c6b70",
    "green": "#3f6b48",
    "bottle green": "#27463a",
    "olive": "#6d6a3c",
    "yellow": "#dcbf4f",
    "mustard": "#b48c33",
    "gold": "#b59a52",
    "orange": "#c8743a",
    "rust": "#96502f",
    "brown": "#634736",
    "tan": "#b3936c",
    "beige": "#d3c3a6",
}
"""How a maker names a cloth's colour, and how it looks dyed: duller and softer than paint (by eye)."""


def css_name(colour: Colour) -> str:
    """Return the custom property by which a style sheet calls a colour.

    >>> css_name(Colour.PAPER_AT_NIGHT)
    '--kit-paper-at-night'
    """
    return f"--kit-{colour.name.lower().replace('_', '-')}"


def css() -> str:
    """Return the rule that hands every colour to a style sheet as a custom property."""
    lines = "".join(f" {css_name(colour)}: {colour};" for colour in Colour)
    return f":root {{{lines} }}\n"
