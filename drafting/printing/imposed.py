"""Drawings on the pages of one paper, and which of them have ink where."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from drafting.geometry import Path
from drafting.geometry.path import Box
from drafting.ground.frozen import freeze
from drafting.ground.remembered import remembered
from drafting.printing.page_marks import ink_points
from drafting.printing.pages import Place, Tiling
from drafting.printing.piece_on_paper import PieceOnPaper
from drafting.printing.raster import PlaceOnPage
from drafting.sheet import Layer


@dataclass(frozen=True)
class Imposed:
    """Drawings on the pages of one paper: the tiling, and where each drawing lies on its plane.

    Drawings are turned already as they lie; `corners` are where the squares of each page stand.
    """

    title: str
    drawings: tuple[PieceOnPaper, ...]
    tiling: Tiling
    spots: tuple[PlaceOnPage, ...]
    corners: Mapping[Place, complex] = field(default_factory=dict)

    def __post_init__(self) -> None:
        freeze(self, "corners")

    @cached_property
    def ink(self) -> tuple[NDArray[np.complex128], ...]:
        """Points on everything drawn, a set a drawing, where it lies."""
        return tuple(_ink(d) * spot.factor + spot.move for d, spot in zip(self.drawings, self.spots, strict=True))

    @cached_property
    def reach(self) -> tuple[Box, ...]:
        """The box round the ink of each drawing."""
        return tuple(
            (ink.real.min(), ink.imag.min(), ink.real.max(), ink.imag.max()) if len(ink) else NOWHERE
            for ink in self.ink
        )

    def marked(self, box: Box) -> list[int]:
        """Return which drawings have ink in a box."""
        near = (n for n, reach in enumerate(self.reach) if _touch(reach, box))
        return [n for n in near if _within(self.ink[n], box).any()]

    @property
    def outlines(self) -> list[Path]:
        """The cut line of each drawing where it lies."""
        return [
            next(s for s in d.strokes if s.layer is Layer.CUT).paths[0].mapped(spot.of)
            for d, spot in zip(self.drawings, self.spots, strict=True)
        ]

    @property
    def printed(self) -> int:
        """How many pages show pieces."""
        return len(self.tiling.used)

    @property
    def least(self) -> int:
        """How many pages the area alone would take."""
        area = math.fsum(drawing.area for drawing in self.drawings)
        across, up = self.tiling.paper.step
        return math.ceil(area / (across * up))

    def on(self, place: Place) -> list[int]:
        """Return which drawings have ink on a page."""
        return self.marked(self.tiling.window(place))


NOWHERE: Box = (math.inf, math.inf, -math.inf, -math.inf)


def _touch(a: Box, b: Box) -> bool:
    return a[0] <= b[2] and b[0] <= a[2] and a[1] <= b[3] and b[1] <= a[3]


@remembered(256)
def _ink(drawing: PieceOnPaper) -> NDArray[np.complex128]:
    """Return points on everything drawn of a piece, where it was drawn."""
    return ink_points(drawing.strokes, drawing.texts)


def _within(points: NDArray[np.complex128], box: Box) -> NDArray[np.bool_]:
    x, y = points.real, points.imag
    return np.asarray((x >= box[0]) & (x <= box[2]) & (y >= box[1]) & (y <= box[3]))
