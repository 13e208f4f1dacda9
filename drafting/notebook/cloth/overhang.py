"""The overhang test on the screen: a strip pushed over an edge, and what its stiffness holds."""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from drafting.export.svg import svg_text
from drafting.fabric import Fabric
from drafting.fabric.overhang import SLOPE, bending_length
from drafting.ground.units import show_length, shown_unit
from drafting.notebook.cloth.controls import one_of_these, press, slider
from drafting.notebook.cloth.readings import KeptReadings, readings_beside
from drafting.notebook.cloth.ruled import METRIC, Ruled
from drafting.notebook.cloth.state import begin_cloth, with_test
from drafting.notebook.cloth.strip_picture import strip_svg
from drafting.notebook.cloth.trial import Trial
from drafting.notebook.errors_said import plainly
from drafting.notebook.whole_files import put_whole
from drafting.sheet.strip_card import strip_card
from drafting.worn.hang import COLLAPSES_FROM, HOLDS_TO, UPRIGHT

STRIPS = {
    "along the warp": "bending_length_along",
    "across it": "bending_length_across",
    "on the bias": "bending_length_bias",
    "along, starched lightly": "starched_light",
    "along, starched stiff": "starched_heavy",
    "along, light fusible": "fused_light",
    "along, medium fusible": "fused_medium",
    "along, heavy fusible": "fused_heavy",
}
"""What the strip is, by the key of the cloth's file."""

LIKE = ((12.0, "chiffon"), (20.0, "shirting"), (28.0, "suiting"), (60.0, "denim or canvas"))
"""mm up to which a bending length is one of such a cloth (from memory)."""

USUAL = 45.0
"""mm that the strip hangs over where the cloth's file says nothing: a shirting's."""

BOUNDS = {"length": (10.0, 250.0), "angle": (10.0, 80.0)}
"""What can be read: mm that hang over, degrees (ours)."""

CARDS = Path("../cards")


@dataclass(frozen=True)
class Overhang:
    """What was read: which strip, mm that hang over, degrees down to its tip."""

    strip: str = "bending_length_along"
    length: float = USUAL
    angle: float = SLOPE

    @property
    def bending_length(self) -> float:
        """The bending length in mm; raises `DraftError` for an angle that tells nothing."""
        return bending_length(self.length, self.angle)

    @property
    def figures(self) -> dict[str, float]:
        """What a hand told, by its names."""
        return {"length": self.length, "angle": self.angle}

    @property
    def written(self) -> dict[str, str | float]:
        """The test as a cloth's file holds it."""
        return self.written_in(METRIC)

    def written_in(self, ruled: Ruled) -> dict[str, str | float]:
        """The test as a cloth's file holds it, its length as it was read on this ruler."""
        return {"overhang": ruled.written(self.length), "angle": self.angle}


def first_overhang(cloth: Fabric, strip: str = "bending_length_along", usual: float = USUAL) -> Overhang:
    """Return the test of a strip that a cloth's file tells already, on the slope of the card; else `usual`."""
    treated = {one.treatment: one.bending_length for one in cloth.treated}
    known = treated.get(strip) or getattr(cloth, strip, None)
    return Overhang(strip=strip, length=round(2 * known, 1) if known else usual)


def overhang_said(test: Overhang, ruled: Ruled = METRIC) -> tuple[str, ...]:
    """Return what an overhang says of a cloth, as sentences."""
    c, own = test.bending_length, "in" if ruled.inches else "cm"
    like = next((name for most, name in LIKE if c < most), "buckram")
    return (
        f"The bending length is {ruled.said(c)}, as {like} has it: {test.length / c:.2f} of them hang over.",
        f"A free edge of it, such as a peplum or a collar, holds its angle up to "
        f"{show_length(HOLDS_TO * c, own)}, softens from there, and past "
        f"{show_length(COLLAPSES_FROM * c, own)} it hangs as if it were limp.",
        f"Upright it stands alone up to {show_length(UPRIGHT * c, own)}.",
    )


class OverhangTest(Trial):
    """Sliders for what the card says; the bent strip and its bending length change with them.

    `file` is the cloth's file, which the button writes to; `test` holds the figures.
    """

    def __init__(self, file: Path | str, cards: Path = CARDS, unit: str | None = None) -> None:
        self.file, self.cards = begin_cloth(file), cards
        self.ruled = Ruled("in" if shown_unit(unit) == "in" else "mm")
        self.readings = KeptReadings(readings_beside(self.file.path), "overhang", BOUNDS, ("length",))
        last = [Overhang.strip, *(strip for strip in self.readings.before() if strip in STRIPS.values())][-1]
        self.test = self._begun(last, self.ruled.nearest(USUAL))
        controls = {
            "strip": one_of_these("The strip is cut", STRIPS, self.test.strip),
            "length": self.ruled.slider("Hangs over", self.test.length, *BOUNDS["length"], 0.5),
            "angle": slider("Down to its tip, degrees", self.test.angle, *BOUNDS["angle"], 0.5),
        }
        buttons = (
            press(
                "Save to the cloth's file", "save-overhang", lambda: plainly(self.save, self.say, self.ruled.unit)
            ),
            press(
                "Write the card to print",
                "write-card",
                lambda: plainly(self.write_card, self.say, self.ruled.unit),
            ),
        )
        super().__init__("overhang", controls, self.ask, buttons)
        self._show()
        self.tell_kept(self.test.strip)

    def ask(self, name: str, value: Any) -> None:
        """Take one figure of the test; another strip brings what the file knows of it."""
        if name == "strip":
            self.test = begun = self._begun(value, self.test.length)
            self.bring({"length": self.ruled.read(begun.length), "angle": begun.angle})
            self._show()
            self.tell_kept(value)
            return
        taken: Any = self.ruled.mm(value) if name == "length" else value
        self.test = replace(self.test, **{name: taken})
        self._show()
        stood = first_overhang(self.file.cloth, self.test.strip, USUAL)
        self.keep(self.test.strip, self.test.figures, stood.figures)

    def save(self) -> None:
        """Write the test to the cloth's file, its comments kept; raises `DraftError`."""
        self.file = with_test(self.file, self.test.strip, self.test.written_in(self.ruled))
        self.readings.keep(self.test.strip, None)
        self.tell(f"Saved to {self.file.path.name}: {self.test.strip}.")

    def write_card(self) -> None:
        """Write the card, true to scale, as PDF and as SVG."""
        from drafting.printing.single_page import single_page_pdf  # slow to open, and few pages print

        self.cards.mkdir(parents=True, exist_ok=True)
        card = strip_card(self.ruled.unit)
        put_whole(self.cards / "overhang-card.pdf", single_page_pdf(card))
        put_whole(self.cards / "overhang-card.svg", svg_text(card).encode())
        self.tell(f"Written: overhang-card.pdf and .svg in {self.cards.resolve()}.")

    def _begun(self, strip: str, usual: float) -> Overhang:
        """Return the test of a strip as it was told and not saved, else as the cloth's file tells it."""
        told = self.readings.before().get(strip)
        return Overhang(strip, **told) if told else first_overhang(self.file.cloth, strip, usual)

    def _show(self) -> None:
        bent = strip_svg(self.test.length, self.test.angle, self.test.bending_length, self.ruled)
        self.show(bent, overhang_said(self.test, self.ruled))
