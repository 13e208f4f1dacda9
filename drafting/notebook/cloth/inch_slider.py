"""A slider along a ruler in inches: its figure stands beside it as a tape has it, and may be typed so."""

from __future__ import annotations

from typing import Any

import ipywidgets as widgets
from traitlets import Float

from drafting.ground.errors import DraftError
from drafting.ground.units import LENGTH_UNITS, BadValue, in_parts, parse_length

LINES = 16
"""Lines of the ruler to the inch."""

INCH = float(LENGTH_UNITS["in"])


class InchSlider(widgets.HBox):  # type: ignore[misc]
    """A slider whose `value` is in inches, and a field that says it in sixteenths."""

    value = Float()

    def __init__(self, slider: Any) -> None:
        self.slider, self.value = slider, slider.value
        slider.readout = False
        looks = widgets.Layout(width="90px")
        self.field = widgets.Text(continuous_update=False, tooltip=slider.description, layout=looks)
        super().__init__([slider, self.field])
        slider.observe(lambda change: self.set_trait("value", change["new"]), names="value")
        self.observe(lambda change: self._show(), names="value")
        self._show()

    @property
    def description(self) -> str:
        """What stands beside it."""
        return str(self.slider.description)

    @property
    def shown(self) -> str:
        """What the field says.

        >>> InchSlider(widgets.FloatSlider(value=4.0625, max=9.0)).shown
        '4 1/16 in'
        """
        return f"{in_parts(self.value, LINES)} in"

    def take(self, text: str) -> None:
        """Take what was typed; raises `DraftError`, the figure as it was, for what is no length of this ruler.

        What is shown already leaves the figure to its last digit.
        """
        if text == self.shown:
            return
        try:
            inches = parse_length(text, "in", sign="not negative") / INCH
        except BadValue as error:
            self._show()
            raise DraftError(error.what, turn=error.right) from None
        low, high = self.slider.min, self.slider.max
        if not low <= inches <= high:
            self._show()
            reach = f"{in_parts(low, LINES)} in to {in_parts(high, LINES)} in"
            raise DraftError(f"{text} is beyond this ruler", reach=reach)
        self.value = inches

    def _show(self) -> None:
        self.slider.value = self.value
        self.field.value = self.shown
