"""The ruler that a cloth's tests are read on: in mm, or in inches and sixteenths."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

from drafting.ground.units import ShownUnit, show_length
from drafting.ground.written_lengths import written_length
from drafting.notebook.cloth.controls import slider
from drafting.notebook.cloth.inch_slider import InchSlider

INCH = 25.4
LINE = 1 / 16
"""Inches from line to line of the ruler."""
FOUR = 25.0
"""mm of a metric test for each inch of one in inches: 4 in for 100 mm, 20 for 500, 2 for a strip of 50."""


@dataclass(frozen=True)
class Ruled:
    """A ruler in `unit`; what is read on it is kept in mm."""

    unit: ShownUnit = "mm"

    @property
    def inches(self) -> bool:
        return self.unit == "in"

    @property
    def word(self) -> str:
        """What the ruler's figures are."""
        return "in" if self.inches else "mm"

    def even(self, mm: float) -> float:
        """Return the round length (mm) on this ruler that stands for so many mm on a metric one."""
        return INCH * mm / FOUR if self.inches else mm

    def read(self, mm: float) -> float:
        """Return the figure on the ruler."""
        return mm / INCH if self.inches else mm

    def mm(self, figure: float) -> float:
        """Return what a figure on the ruler is in mm."""
        return figure * INCH if self.inches else figure

    def said(self, mm: float) -> str:
        """Return a length as it is read on this ruler.

        >>> Ruled("in").said(108.0), Ruled().said(108.0)
        ('4 1/4 in', '108 mm')
        """
        return show_length(mm, self.word, finer=True)

    def nearest(self, mm: float) -> float:
        """Return the length (mm) at the nearest line of a ruler in inches; a metric one is read between lines."""
        return INCH * LINE * round(mm / INCH / LINE) if self.inches else mm

    def written(self, mm: float) -> str:
        """Return a length as it is written into a cloth's file.

        >>> Ruled("in").written(115.8875), Ruled().written(108.0)
        ('4 9/16 in', '10.8 cm')
        """
        return written_length(mm, "in" if self.inches else "cm")

    def slider(self, words: str, mm: float, low: float, high: float, step: float) -> Any:
        """Return a slider of a length, its figures those of the ruler; all in mm, `step` of a metric ruler.

        In inches it begins and ends on a sixteenth: each step of it is a line of the ruler then.
        """
        value, least, most = (self.read(length) for length in (mm, low, high))
        if self.inches:
            least, most, step = math.floor(least / LINE) * LINE, math.ceil(most / LINE) * LINE, LINE
        plain = slider(f"{words}, {self.word}", value, least, most, step)
        return InchSlider(plain) if self.inches else plain


METRIC = Ruled()
