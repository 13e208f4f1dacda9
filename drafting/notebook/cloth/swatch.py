"""The swatch test on the screen: a strip stretched and let go, and what that cloth means for a body."""

from __future__ import annotations

from dataclasses import asdict, dataclass, replace
from pathlib import Path
from typing import Any

from drafting.body import Body
from drafting.export.svg_writer import Svg, element, move_by, number, words
from drafting.fabric import cut_for, cut_girth, dimensional_change, needed_stretch, recovery_of, stretch_of
from drafting.fabric.cloth import POOR_RECOVERY
from drafting.ground.errors import DraftError
from drafting.ground.lengths import YARD, in_unit, told
from drafting.ground.palette import Colour
from drafting.ground.units import show_length, shown_unit
from drafting.notebook.cloth.controls import slider
from drafting.notebook.cloth.readings import KeptReadings, readings_beside
from drafting.notebook.cloth.ruled import METRIC, Ruled
from drafting.notebook.cloth.trial import Trial

REST = 100.0
"""mm: how long the strip is at rest; percentages can then be read off the ruler."""

LEFT = 84.0
"""Where the strips begin, in the drawing's own units: half a millimetre of a strip each."""

MOST = 2.2
"""How many times its length a strip on the screen can be pulled (ours)."""


@dataclass(frozen=True)
class Swatch:
    """What a ruler said: mm stretched and released of 100, mm left of 500 after the wash.

    `share` is the part of the stretch that the garment is to use when it is worn.
    """

    stretched: float = 140.0
    released: float = 102.0
    washed: float = 490.0
    share: float = 0.25

    @property
    def stretch(self) -> float:
        return stretch_of(REST, self.stretched)

    @property
    def recovery(self) -> float | None:
        """The part of the stretch that goes back; None where nothing was stretched."""
        return recovery_of(REST, self.stretched, self.released) if self.stretched > REST else None

    @property
    def shrinkage(self) -> float:
        return -dimensional_change(WASHED_FROM, self.washed)


WASHED_FROM = 500.0
"""mm: how long the mark is before the wash (as in `Source.ISO_5077`, from memory)."""


def sentences(swatch: Swatch, body: Body, level: str = "bust_girth", unit: str | None = "cm") -> tuple[str, ...]:
    """Return what a cloth with this swatch test means for one girth of a body, lengths in `unit`."""
    girth, found, own = body[level], [], shown_unit(unit)
    name = level.removesuffix("_girth").replace("_", " ")
    found.append(f"The cloth stretches by {100 * swatch.stretch:.0f} %.")
    recovery = swatch.recovery
    if recovery is not None:
        found.append(f"After you let go, {100 * recovery:.0f} % of that goes back.")
        if recovery < POOR_RECOVERY:
            found.append("That is little: it will bag at elbows, knees and seat. Use less of its stretch.")
    cut = cut_girth(girth, swatch.stretch, swatch.share)
    found.append(
        f"For a {name} of {show_length(girth, own)}, cut {show_length(cut, own)}: that uses "
        f"{100 * swatch.share:.0f} % of the stretch, and the cloth is pulled by "
        f"{100 * needed_stretch(girth, cut):.0f} %."
    )
    if swatch.shrinkage > 0.001:
        stay = YARD if own == "in" else METRE
        stays, need = (in_unit(told(mm, "bought"), own) for mm in (stay, cut_for(stay, -swatch.shrinkage)))
        found.append(f"It loses {100 * swatch.shrinkage:.1f} % in the wash: for {stays} that stays, buy {need}.")
    return tuple(found)


METRE = 1000.0


def swatch_svg(swatch: Swatch, ruled: Ruled = METRIC) -> Svg:
    """Return the strip at rest, stretched and released, to one scale, as SVG; lengths as they are `ruled`."""
    rows = (("at rest", REST), ("stretched", swatch.stretched), ("let go", swatch.released))
    title = words("title", "The strip at rest, stretched and let go")
    bars = [_bar(name, mm, 14 + 34 * i, ruled) for i, (name, mm) in enumerate(rows)]
    rest = element("path", class_="mark", d=f"M {LEFT + 2 * REST:g} 8 V 112")
    return element("svg", title, *bars, rest, class_="swatch", role="img", viewBox="0 0 620 122")


def _bar(name: str, mm: float, top: float, ruled: Ruled) -> Svg:
    return element(
        "g",
        words("text", name, x="-8", y="15", text_anchor="end"),
        element(
            "rect",
            class_="strip",
            data_mm=number(mm, 1),
            width=number(2 * mm, 1),
            height="20",
            rx="3",
            fill=Colour.OWN_3,
        ),
        words("text", ruled.said(ruled.even(mm)), x=number(2 * mm + 6, 1), y="15"),
        transform=move_by(complex(LEFT, -top)),
    )


NOTHING_READ = "Nothing is read off a ruler yet: these figures are to begin with, and of no cloth of yours."

ONLY = ""
"""The swatch test knows one strip."""

BOUNDS = {
    "stretched": (REST, MOST * REST),
    "released": (REST, MOST * REST),
    "washed": (400.0, 510.0),
    "share": (0.0, 0.6),
}
"""What can be read: mm of 100, of 100, of 500, and a share (ours)."""


class SwatchTest(Trial):
    """Sliders for what the ruler says; the strip and what it means change with them.

    `swatch` holds the figures; what they mean is told of one `girth` of the body. Beside the file `at` they
    are kept (None: nowhere).
    """

    def __init__(
        self,
        body: Body,
        swatch: Swatch | None = None,
        unit: str | None = None,
        girth: str = "bust_girth",
        at: Path | None = None,
    ) -> None:
        self.readings = KeptReadings(readings_beside(at), "swatch", BOUNDS, ("stretched", "released", "washed"))
        told = self.readings.before().get(ONLY)
        self.usual = swatch or Swatch()
        self.body, self.swatch, self.girth = body, Swatch(**told) if told else self.usual, girth
        self.unit = shown_unit(unit or body.unit)
        self.ruled = Ruled("in" if self.unit == "in" else "mm")
        controls = {
            "stretched": self._slider("Stretched", self.swatch.stretched, *BOUNDS["stretched"], REST),
            "released": self._slider("Let go", self.swatch.released, *BOUNDS["released"], REST),
            "washed": self._slider("After the wash", self.swatch.washed, *BOUNDS["washed"], WASHED_FROM),
            "share": slider("Share of the stretch in use", self.swatch.share, *BOUNDS["share"], 0.05),
        }
        super().__init__("swatch", controls, self.ask)
        self._show()
        self.tell_kept(ONLY)

    def _slider(self, words: str, value: float, low: float, high: float, of: float) -> Any:
        even = self.ruled.even
        named = f"{words}, of {self.ruled.said(even(of)).removesuffix(' mm').removesuffix(' in')}"
        return self.ruled.slider(named, even(value), even(low), even(high), 1)

    def ask(self, name: str, value: float) -> None:
        """Take one figure of the ruler; what no swatch can do is said, and the picture stays."""
        taken = value if name == "share" else REST * self.ruled.mm(value) / self.ruled.even(REST)
        new = replace(self.swatch, **{name: taken})
        if new.released > new.stretched:
            raise DraftError("a strip that is let go cannot be longer than it was stretched")
        self.swatch = new
        self._show()
        self.keep(ONLY, asdict(new), asdict(self.usual))

    def _show(self) -> None:
        begins = (NOTHING_READ,) if self.swatch == self.usual else ()
        means = sentences(self.swatch, self.body, self.girth, self.unit)
        self.show(swatch_svg(self.swatch, self.ruled), (*begins, *means))
