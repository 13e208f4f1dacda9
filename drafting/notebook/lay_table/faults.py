"""The fields that mark a faulty place in the cloth."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import ipywidgets as widgets

from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.ground.templates import macros
from drafting.ground.units import LENGTH_UNITS, ShownUnit
from drafting.layout import Cloth, Lay

FIELDS = (("along", 200.0), ("across", 200.0), ("length", 50.0), ("width", 50.0))
"""The fields, and what stands in them first, mm: shown to be overwritten (ours)."""


PRESSED = 50.0
"""mm: the side of a faulty place that is pressed, not drawn out (ours)."""


def with_fault(cloth: Cloth, along: float, across: float, length: float, width: float) -> Cloth:
    """Return the cloth with a faulty place (mm); raises `DraftError` for one that is not on it."""
    if along < 0 or across < 0 or length <= 0 or width <= 0:
        raise DraftError(
            "a faulty place has a corner on the cloth, a length and a width",
            turn="write its length and width, and measure from the start of the lay",
        )
    if across + width > cloth.usable_width:
        raise DraftError(
            "the faulty place lies off the cloth",
            value=f"{told(across + width)} across",
            reach=f"{told(cloth.usable_width)} between the selvedges",
        )
    box = (along, across, along + length, across + width)
    return replace(cloth, faults=(*cloth.faults, box))


def pressed_fault(lay: Lay, x0: float, y0: float, x1: float, y1: float) -> tuple[float, float, float, float]:
    """Return along, across, length and width (mm) on the opened cloth of a place pressed on a drawn lay.

    A press without a drag is a place of `PRESSED` about it. On folded cloth y goes up from the fold,
    and the place is on the upper layer, the one that is looked at.
    """
    (left, right), (low, high) = sorted((x0, x1)), sorted((y0, y1))
    if max(right - left, high - low) < PRESSED / 2:
        x, y = (left + right) / 2, (low + high) / 2
        left, right, low, high = x - PRESSED / 2, x + PRESSED / 2, y - PRESSED / 2, y + PRESSED / 2
    most = lay.cloth.layer_width(lay.lay)
    left, low, high = max(0.0, left), max(0.0, low), min(most, high)
    return left, _across(lay, low, high), right - left, high - low


def _across(lay: Lay, low: float, high: float) -> float:
    """Return how far from one selvedge a place begins that lies from `low` to `high` on the upper layer."""
    meet = lay.job.strip.meet
    if meet is not None:
        return max(0.0, meet - high) if low < meet else lay.cloth.usable_width + meet - high
    return lay.cloth.usable_width / 2 + low if lay.lay == "folded" else low


class FaultFields:
    """Four fields in `unit` and two buttons; `mark` hears the four sizes in mm, `forget` hears nothing."""

    def __init__(
        self,
        mark: Callable[[float, float, float, float], None],
        forget: Callable[[], None],
        unit: ShownUnit = "cm",
    ) -> None:
        wide = widgets.Layout(width="150px")
        self.scale = float(LENGTH_UNITS[unit])
        self.fields = [
            widgets.BoundedFloatText(
                value=round(mm / self.scale),
                min=0,
                max=100_000,
                step=1,
                layout=wide,
                description=f"{name}, {unit}",
            )
            for name, mm in FIELDS
        ]
        self.add = _button("Mark a faulty place", lambda: mark(*self.sizes))
        self.clear = _button("Forget faulty places", forget)
        row = widgets.HBox([*self.fields, self.add, self.clear])
        row.layout.flex_flow = "row wrap"
        self.view = widgets.VBox([widgets.HTML(macros(__file__).about(unit)), row])
        self.view.add_class("lay-faults")

    @property
    def sizes(self) -> tuple[float, float, float, float]:
        """Along, across, length and width as the fields have them, mm."""
        along, across, length, width = (self.scale * float(field.value) for field in self.fields)
        return along, across, length, width


def _button(words: str, do: Callable[[], None]) -> Any:
    button = widgets.Button(description=words, layout=widgets.Layout(width="auto"))
    button.add_class(words.lower().replace(" ", "-"))
    button.on_click(lambda _: do())
    return button
