"""The wearer small, from all four sides, to be written on: outlines alone, no tapes."""

from __future__ import annotations

from collections.abc import Sequence

from drafting.geometry import Path
from drafting.geometry.area import rough_ring
from drafting.sheet import box_around
from drafting.sheet.figures import SmallFigure
from drafting.sheet.wearer.model import Drawing, FigureView


def small_figures(drawing: Drawing) -> tuple[SmallFigure, ...]:
    """Return front, left side, back and right side of a wearer that was drawn.

    >>> from drafting.body import wearer
    >>> from drafting.sheet.wearer import draw_wearer
    >>> body = wearer({"height": 1700, "bust_girth": 900, "waist_girth": 720, "hip_girth": 970})
    >>> [figure.name for figure in small_figures(draw_wearer(body))]
    ['front', 'left side', 'back', 'right side']
    """
    front, side, back = drawing.views
    right = _small(side, "right side", side.shapes[:2], side.shapes[2:])
    return (
        _small(front, "front", front.shapes, (), ("R", "L")),
        _turned_round(right, "left side"),
        _small(back, "back", back.shapes, (), ("L", "R")),
        right,
    )


def _small(
    view: FigureView, name: str, joined: Sequence[Path], over: Sequence[Path], hands: tuple[str, str] = ("", "")
) -> SmallFigure:
    """Return a view with the shapes that are `joined` in one outline, and those `over` it.

    The middle of the head lies over 0, the soles on 0.
    """
    outline, head = rough_ring(joined), joined[1].bounds
    by = -complex((head[0] + head[2]) / 2, outline.bounds[1])
    outlines = tuple(path.moved(by) for path in (outline, *over))
    details = tuple(path.moved(by) for path in view.details)
    return SmallFigure(name, outlines, details, box_around(p.bounds for p in outlines), hands)


def _turned_round(figure: SmallFigure, name: str) -> SmallFigure:
    outlines = tuple(path.mirrored() for path in figure.outlines)
    details = tuple(path.mirrored() for path in figure.details)
    return SmallFigure(name, outlines, details, box_around(path.bounds for path in outlines), figure.hands)
