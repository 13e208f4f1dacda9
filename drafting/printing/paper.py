"""Paper to print on: sheets, rolls, and the part of them that a printer reaches."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from drafting.ground.errors import Fault, InputError
from drafting.ground.nearest import meant
from drafting.ground.units import LONGEST_TEXT, BadValue, as_written, parse_length, show_length

MARGIN = 10.0
"""mm kept free on every side (printers leave 4.2 to 5.1 mm unprinted: their drivers' documents)."""

OVERLAP = 10.0
"""mm that two neighbouring pages share (common practice)."""

LONGEST = 5080.0
"""mm: the longest page that readers of PDF take, 14,400 units of 1/72 in (`Source.ISO_32000`, from memory)."""

SMALLEST = 140.0
"""mm: a page narrower than this has no room for a 4 in square between its margins."""

ROLL = 914.4
"""mm: 36 in, the plotter roll that copy shops keep (common practice)."""


@dataclass(frozen=True, slots=True)
class Paper:
    """A kind of paper, upright, mm. `height` is None for a roll, which is cut to the length needed.

    `margin` is kept free of ink on every side; neighbouring pages share `overlap`.
    """

    name: str
    title: str
    width: float
    height: float | None
    margin: float = MARGIN
    overlap: float = OVERLAP

    def __post_init__(self) -> None:
        sides = [self.width] if self.height is None else [self.width, self.height]
        if not all(SMALLEST <= side <= LONGEST for side in sides):
            raise BadValue(
                f"{self.title}: a side of {min(sides):g} x {max(sides):g} mm", f"{SMALLEST:g} to {LONGEST:g} mm"
            )
        if not 0 <= self.overlap <= 40 or not 0 <= self.margin <= (self.width - 110) / 2:
            raise BadValue("margin or overlap leave no room", "margins of 10 mm, an overlap of 10")

    @property
    def tall(self) -> float:
        """Height of the longest page of this paper."""
        return LONGEST if self.height is None else self.height

    @property
    def net(self) -> tuple[float, float]:
        """Width and height within the margins."""
        return self.width - 2 * self.margin, self.tall - 2 * self.margin

    @property
    def step(self) -> tuple[float, float]:
        """How far one page's drawing lies from the next one's, across and up."""
        width, height = self.net
        return width - self.overlap, height - self.overlap

    def cut_to(self, height: float) -> Paper:
        """Return the page of a roll that is cut to a drawing of this height."""
        return replace(self, height=max(SMALLEST, height + 2 * self.margin))


PAPERS: dict[str, Paper] = {
    paper.name: paper
    for paper in (
        Paper("a4", "A4", 210.0, 297.0),  # Source.ISO_216
        Paper("a3", "A3", 297.0, 420.0),
        Paper("a0", "A0", 841.0, 1189.0),
        Paper("letter", "Letter", 215.9, 279.4),  # Source.ASME_Y14_1
        Paper("tabloid", "Tabloid", 279.4, 431.8),
        # As narrow as A4 and as low as Letter: comes out whole on either.
        Paper("a4-or-letter", "A4 or Letter", 210.0, 279.4),
        Paper("roll", "roll, 36 in wide", ROLL, None),
    )
}

_TWO_SIDES = re.compile(r"(?P<a>[\d.,/ ]+?)\s*[x×]\s*(?P<b>[\d.,/ ]+?)\s*(?P<unit>mm|cm|in)")
_ROLL = re.compile(r"roll\s+(?P<a>[\d.,/ ]+?)\s*(?P<unit>mm|cm|in)")


def paper_named(text: str) -> Paper:
    """Return the paper that a maker names: a known one, `roll 61 cm`, or `50 x 70 cm`.

    Raises `InputError` for anything else.

    >>> paper_named("A4"), paper_named("roll 24 in").width
    (Paper(name='a4', title='A4', width=210.0, height=297.0, margin=10.0, overlap=10.0), 609.6)
    """
    words = " ".join(text.casefold().split())[: LONGEST_TEXT + 1]
    known = PAPERS.get(words.replace(" ", "-"))
    if known:
        return known
    try:
        return _measured(words)
    except BadValue as bad:
        raise InputError([Fault(bad.what, bad.right)]) from bad


def _side(written: str, unit: str) -> float:
    """Return a side of a paper in mm; raises `BadValue` in the unit that it is written in."""
    side = parse_length(f"{written} {unit}")
    if not SMALLEST <= side <= LONGEST:
        low, high = show_length(SMALLEST, unit), show_length(LONGEST, unit)
        raise BadValue(f"a side of {show_length(side, unit)} is no paper's", f"it lies between {low} and {high}")
    return side


def _measured(words: str) -> Paper:
    if found := _ROLL.fullmatch(words):
        width = _side(found["a"], found["unit"])
        wide = f"{' '.join(found['a'].split())} {found['unit']}"
        return Paper(f"roll-{width:.0f}", f"roll, {wide} wide", width, None)
    if found := _TWO_SIDES.fullmatch(words):
        sides = sorted((_side(found[key], found["unit"]), found[key].strip()) for key in "ab")
        (short, a), (long, b) = sides
        return Paper(f"{short:.0f}x{long:.0f}", f"{a} x {b} {found['unit']}", short, long)
    right = f"{meant(words, PAPERS)}; any other is written as 'roll 61 cm' or '50 x 70 cm'"
    raise BadValue(f"{as_written(words)} is no paper", right)
