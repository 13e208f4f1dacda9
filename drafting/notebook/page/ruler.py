"""What a ruler says of the printed square, and whether the print is true."""

from __future__ import annotations

from typing import Any

import ipywidgets as widgets

from drafting.ground.errors import DraftError
from drafting.ground.units import ShownUnit, parse_length
from drafting.notebook.errors_said import plainly
from drafting.notebook.said import paragraphs_html, refused_html
from drafting.printing.scale_repair import typed_repair

SQUARE = {False: "100 mm", True: "4 in"}
"""The square to measure, by whether lengths are told in inches: both stand on every page."""

LEAST = 20.0
"""A bare number below it is no side in mm: it is read in the maker's own unit (ours)."""

TO_MEASURE = "Measure the printed square across and up, and write both here."


class PrintedSquare:
    """Two fields, across and up, empty until they are measured; what they mean stands below.

    `bust` is the wearer's, mm, and told in `unit`.
    """

    def __init__(self, bust: float, unit: ShownUnit = "cm") -> None:
        self.bust, self.unit = f"{bust} mm", unit
        self.across, self.up = self._field("Across"), self._field("Up")
        self.said, self.refused = widgets.HTML(), widgets.HTML()
        row = widgets.HBox([self.across, self.up])
        row.layout.flex_flow = "row wrap"
        self.view = widgets.VBox([row, self.refused, self.said])
        self._show()

    def _field(self, label: str) -> Any:
        field = widgets.Text(placeholder=SQUARE[self.unit == "in"], description=label, continuous_update=False)
        field.layout.width = "200px"
        field.add_class(f"square-{label.lower()}")
        field.observe(lambda _: plainly(self._show, self._say, self.unit), names="value")
        return field

    def _show(self) -> None:
        across, up = self.across.value, self.up.value
        try:
            both = across.strip() and up.strip()
            sides = (self._meant(text) for text in (across, up))
            said = typed_repair(*sides, bust=self.bust, told_in=self.unit).said if both else (TO_MEASURE,)
        except ValueError as bad:
            raise DraftError(str(bad)) from None
        self._say("")
        self.said.value = paragraphs_html(said)

    def _meant(self, text: str) -> str:
        """Return what was typed with its unit: a small bare number is in the maker's own."""
        return f"{text} {self.unit}" if parse_length(text, "mm") < LEAST else text

    def _say(self, words: str) -> None:
        self.refused.value = refused_html(words) if words else ""
