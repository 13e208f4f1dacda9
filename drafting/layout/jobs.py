"""From outlines to the job of a lay: the kinds of piece, and the copies of each that are to be laid."""

from __future__ import annotations

from dataclasses import replace

from drafting.ground.remembered import remembered
from drafting.layout.cloth import LENGTHWISE, Cloth, LayName
from drafting.layout.on_bars import level_matched, levels_to_match, sleeves_by_notch
from drafting.layout.outlines import Outline, copies_of, fold_on_grain
from drafting.layout.packing.model import HAIR, Copy, Job, Kind, Strip


@remembered(300)
def kind_to_lay(outline: Outline, names: tuple[str, ...]) -> Kind:
    """Return the kind of an outline, which knows where its level and its grainline lie, if it has them.

    `names` are the levels that a repeat along the cloth may be matched on, the first of them first.
    """
    kind = Kind(outline.part.name, outline.ring, outline.fold, line=_line_of(outline))
    level = level_matched(outline, names)
    if level is None:
        return kind
    path = level.paths[0]
    return replace(kind, level=outline.base(path.at(path.length / 2)).real)


def _line_of(outline: Outline) -> float | None:
    """Return the y that a repeat across the cloth is matched on: a fold's, else the grainline's."""
    cut = outline.part.cut
    edge = cut.piece.fold_edge
    if edge is not None and fold_on_grain(outline.part):
        return outline.base(edge.path.start).imag
    return None if cut.grainline is None else outline.base(cut.grainline.start).imag


def with_room(copy: Copy, wide: float, strip: Strip) -> Copy:
    """Return a copy on the fold that is `wide` across without the poses it has no room for on two folds."""
    if strip.meet is None:
        return copy
    parts = {False: strip.meet, True: strip.width - strip.meet}
    return replace(copy, poses=tuple(pose for pose in copy.poses if wide < parts[pose.over] - HAIR * strip.width))


def job_from(
    outlines: tuple[Outline, ...], cloth: Cloth, lay: LayName, meet: float | None = None
) -> tuple[Job, tuple[Outline, ...], tuple[Outline, ...]]:
    """Return the job of a lay, its outlines by kind, and those too wide to be laid at all.

    `meet` as `Cloth.strip` takes it.
    """
    strip = cloth.strip(lay, meet)
    kept: list[Outline] = []
    left_out: list[Outline] = []
    copies: list[Copy] = []
    for outline in outlines:
        wide = outline.box[3] - outline.box[1]
        lost_fold = lay in LENGTHWISE and outline.opened
        if not strip.holds(wide, outline.fold) or lost_fold:
            left_out.append(outline)
            continue
        lying = copies_of(outline, len(kept), cloth, lay)
        copies += (with_room(copy, wide, strip) for copy in lying) if outline.fold else lying
        kept.append(outline)
    levels = levels_to_match(kept, cloth.wishes.level)
    kinds = [kind_to_lay(o, levels[o.part.worn_as]) for o in kept]
    if cloth.repeat_along:
        by = sleeves_by_notch(kept, cloth.wishes.level)
        kinds = [
            replace(k, level=(k.level or 0.0) + by[o]) if o in by else k for k, o in zip(kinds, kept, strict=True)
        ]
    return Job(tuple(kinds), tuple(copies), strip), tuple(kept), tuple(left_out)
