"""LaidPieces the panels of a drawing stand on 60 mm of paper: side by side, or one below the other."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from drafting.geometry.curve import Points
from drafting.geometry.path import Box
from drafting.making.stages.picture import Panel, StageDrawing

WIDE, TALL = 600, 440
"""Units of paper (0.1 mm): a drawing's width, and the greatest height of what is drawn."""

GAP, RIM, PANEL_HEAD, COLUMN = 26.0, 6.0, 30.0, 52.0
"""Units between panels, round the drawing, over a numbered panel, and beside one that stands below."""

GAIN = 1.15
"""How much greater panels have to get for standing one below the other (ours)."""


@dataclass(frozen=True, eq=False)
class PlacedPanel:
    """A panel on paper: its scale (units a mm), where its upper left corner stands, where its number."""

    panel: Panel
    scale: float
    corner: complex
    head: tuple[float, float]

    def at(self, points: Points) -> Points:
        """Return where points of the cloth stand on paper, y down."""
        left, _, _, top = self.box
        return np.asarray(points.conj() * self.scale + (self.corner - complex(left, -top) * self.scale))

    @cached_property
    def box(self) -> Box:
        """What of the cloth the panel shows, worked out once."""
        return self.panel.box

    @property
    def shown(self) -> Box:
        """What of the paper the panel takes."""
        x0, y0, x1, y1 = self.box
        x, y = self.corner.real, self.corner.imag
        return x, y, x + (x1 - x0) * self.scale, y + (y1 - y0) * self.scale


def placed_panels(drawing: StageDrawing) -> tuple[list[PlacedPanel], int]:
    """Return the panels where they stand, and the height of the drawing, units."""
    panels = drawing.panels
    sizes = [(x1 - x0, y1 - y0) for x0, y0, x1, y1 in (panel.box for panel in panels)]
    head = PANEL_HEAD if len(panels) > 1 else RIM
    free = WIDE - GAP * (len(panels) - 1) - 2 * RIM
    low = TALL - (GAP + RIM) * (len(panels) - 1)
    shares = [panel.share / sum(p.share for p in panels) for panel in panels]
    beside = [min(free * share / w, TALL / h) for share, (w, h) in zip(shares, sizes, strict=True)]
    below = [min((WIDE - 2 * COLUMN) / w, low * share / h) for share, (w, h) in zip(shares, sizes, strict=True)]
    if drawing.alike:
        wide, high = sum(w for w, _ in sizes), max(h for _, h in sizes)
        beside = [min(free / wide, TALL / high)] * len(panels)
        widest, tall = max(w for w, _ in sizes), sum(h for _, h in sizes)
        below = [min((WIDE - 2 * COLUMN) / widest, low / tall)] * len(panels)
    if len(panels) > 1 and min(a / b for a, b in zip(below, beside, strict=True)) > GAIN:
        return _column(panels, sizes, below)
    return _row(panels, sizes, beside, head)


_Sizes = list[tuple[float, float]]


def _row(
    panels: tuple[Panel, ...], sizes: _Sizes, scales: list[float], head: float
) -> tuple[list[PlacedPanel], int]:
    """Return the panels side by side, each in the middle of its height."""
    widths = [w * s for (w, _), s in zip(sizes, scales, strict=True)]
    tall = max(h * s for (_, h), s in zip(sizes, scales, strict=True))
    spare = (WIDE - 2 * RIM - GAP * (len(panels) - 1) - sum(widths)) / len(panels)
    x, found = RIM + spare / 2, []
    for panel, (_, high), scale, wide in zip(panels, sizes, scales, widths, strict=True):
        corner = complex(x, head + (tall - high * scale) / 2)
        found.append(PlacedPanel(panel, scale, corner, (max(x + wide / 2, 12.0), 22.0)))
        x += wide + GAP + spare
    return found, round(tall + head + RIM)


def _column(panels: tuple[Panel, ...], sizes: _Sizes, scales: list[float]) -> tuple[list[PlacedPanel], int]:
    """Return the panels one below the other, their numbers on the left."""
    y, found = RIM, []
    for panel, (wide, high), scale in zip(panels, sizes, scales, strict=True):
        corner = complex(COLUMN + (WIDE - 2 * COLUMN - wide * scale) / 2, y)
        found.append(PlacedPanel(panel, scale, corner, (18.0, y + min(high * scale / 2, 40.0) + 8.0)))
        y += high * scale + GAP + RIM
    return found, round(y - GAP)
