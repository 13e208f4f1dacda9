"""A wearer drawn from the measures: front, side and back, a tape line for each measure.

    Body -> Build (levels, sections) -> Half, Profile (outlines) -> View (shapes, tapes) -> Drawing

Every girth is the girth of a section, every length the height of a level; only where a section lies
along the plumb line, and how the curve runs between the levels, is by eye.
"""

from __future__ import annotations

from drafting.body import Body
from drafting.geometry import Path
from drafting.sheet import box_around
from drafting.sheet.wearer.details import back_details, front_details, side_details
from drafting.sheet.wearer.front import HalfFigure, half_figure, head
from drafting.sheet.wearer.front_tapes import back_tapes, front_tapes
from drafting.sheet.wearer.model import Drawing, FigureView, Lines
from drafting.sheet.wearer.profile import profile
from drafting.sheet.wearer.side_tapes import side_tapes
from drafting.worn.levels import FigureBuild, Levels, figure_build

GAP, MARGIN = 90.0, 60.0
"""mm between two views, and round them, on an adult (ours)."""

__all__ = ["Drawing", "FigureBuild", "FigureView", "Levels", "Lines", "draw_wearer", "figure_build"]


def draw_wearer(body: Body) -> Drawing:
    """Return the wearer from the front, the side and the back.

    Raises `DraftError` for measures that make no figure (two levels in one place).
    """
    form = figure_build(body)
    gap, margin = GAP * form.unit, MARGIN * form.unit
    views, x = [], margin
    for view in (_front(body, form), _side(body, form), _back(body, form)):
        views.append(view.moved(complex(x - view.box[0], margin)))
        x += view.box[2] - view.box[0] + gap
    height = max(view.box[3] for view in views) + margin
    return Drawing(x - gap + margin, height, tuple(views))


def _front(body: Body, form: FigureBuild) -> FigureView:
    right, left = half_figure(body, form, "left"), half_figure(body, form, "right")
    tapes = front_tapes(body, form, right, left)
    details = front_details(body, form, right, left)
    return FigureView("front", *_shapes(form, right, left), details, tapes, _box(right, left, form, 60))


def _back(body: Body, form: FigureBuild) -> FigureView:
    right, left = half_figure(body, form, "right"), half_figure(body, form, "left")
    tapes = back_tapes(body, form, right, left)
    details = back_details(form, right, left)
    return FigureView("back", *_shapes(form, right, left), details, tapes, _box(right, left, form))


def _side(body: Body, form: FigureBuild) -> FigureView:
    side = profile(body, form)
    shapes = (side.outline, side.head, side.arm_outline)
    box = box_around(path.bounds for path in shapes)
    return FigureView("side", shapes, side_details(form, side), side_tapes(form, side), box)


def _shapes(form: FigureBuild, right: HalfFigure, left: HalfFigure) -> tuple[tuple[Path, ...]]:
    mirrored = left.contour.mirrored().reversed()
    return ((Path.joined((right.contour, mirrored)), head(form)),)


def _box(
    right: HalfFigure, left: HalfFigure, form: FigureBuild, beside: float = 0.0
) -> tuple[float, float, float, float]:
    reach = right.contour.bounds[2] + beside, left.contour.bounds[2]
    return -reach[1], 0.0, reach[0], form.levels.crown
