"""A lay in small: the cloth, its fold, every piece where it lies with its number, and its grain."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from drafting.geometry.curve import Points
from drafting.layout import Lay, Spot
from drafting.making.stages.picture import Face, Ink, InkLine, InkMark, InkName, StageDrawing, drawn_panel

CHORD = 3.0
"""mm of cloth that a drawn line may leave its curve by: a lay is drawn at 1 : 20 and smaller (ours)."""

MOST = 40
"""Pieces up to which each one's grain is shown (ours)."""


def laid_out_to_cut(lay: Lay) -> StageDrawing:
    """Return the lay as it is cut: x along the selvedge, a fold below."""
    return StageDrawing("cut", (drawn_panel(_inks(lay)),))


def _inks(lay: Lay) -> Iterator[Ink]:
    end, high = max(lay.end, 1.0), lay.cloth.layer_width(lay.lay)
    corners = np.array([0j, end + 0j, complex(end, high), 1j * high])
    yield Face("wrong", corners)
    meet = lay.job.strip.meet
    if lay.lay == "folded" or meet is not None:
        yield InkLine("fold", corners[:2])
    if meet is not None:
        yield InkLine("fold", corners[[3, 2]])
        yield InkLine("edge", np.array([1j * meet, end + 1j * meet]))
    if lay.lay == "crosswise":
        yield InkLine("fold", corners[[0, 3]])
    for spot in lay.packing.spots:
        yield from _piece(lay, spot)


def _piece(lay: Lay, spot: Spot) -> Iterator[Ink]:
    outline = lay.outline(spot)
    ring: Points = outline.placed(spot, outline.path).points(CHORD)[:-1]
    number = outline.part.cut.number
    yield Face("notion", ring, outline.part.name)
    drawn = outline.part.cut.grainline
    if drawn is not None and len(lay.packing.spots) <= MOST:
        grain = outline.placed(spot, drawn.mapped(outline.base)).points(CHORD)
        way = complex(grain[-1] - grain[0])
        yield InkMark("grain", complex(grain[-1]), way / abs(way), 30.0)
    yield InkName(str(number), number, ring)
