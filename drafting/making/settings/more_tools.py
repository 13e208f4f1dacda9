"""What a maker would do more easily with more than the workroom has, for these cloths."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.costume.make import Made
from drafting.costume.workroom import THREE_STEP, Workroom
from drafting.draft.bias import on_bias
from drafting.draft.roles import SLEEVES
from drafting.fabric import Fabric
from drafting.fabric.handling import has_pile
from drafting.making.model import Said, said
from drafting.making.settings.feet import creeps
from drafting.making.settings.needles import needle_for, point_for
from drafting.making.settings.stitches import MUCH, STRETCHY


def easier(made: Made, room: Workroom) -> tuple[Said, ...]:
    """Return what would be easier with more tools; nothing that these cloths have no use for."""
    cloths = [c for g in made.garments if (c := made.costume.fabrics.get(g.fabric))]
    return (*_machines(made, cloths, room), *_needles(cloths, room), *_tools(made, cloths, room))


def _machines(made: Made, cloths: list[Fabric], room: Workroom) -> Iterator[Said]:
    stretchy = any(cloth.weave == "knit" for cloth in cloths)
    notions = {notion.what for garment in made.garments for notion in garment.draft.notions}
    if stretchy and not room.has(*STRETCHY, "304", THREE_STEP):
        yield said("easier.zigzag")
    if stretchy and not room.has("514", "504"):
        yield said("easier.overlock")
    if stretchy and not room.has("406", THREE_STEP):
        yield said("easier.three_step")
    if "button" in notions and "buttonhole" not in room.feet:
        yield said("easier.buttonhole")
    if any(creeps(cloth, 0.0) for cloth in cloths) and "walking" not in room.feet:
        yield said("easier.walking")
    bias = any(on_bias(g.draft, s) for g in made.garments for s in g.draft.seams)
    soft = any(cloth.weave == "knit" or has_pile(cloth) for cloth in cloths)
    if (bias or soft) and not room.foot_pressure:
        yield said("easier.pressure")


def _needles(cloths: list[Fabric], room: Workroom) -> Iterator[Said]:
    """Yield a packet for every cloth whose needle only stands in for a better one."""
    stands_in = {point_for(cloth): cloth for cloth in cloths if needle_for(cloth, room)[1]}
    for point, cloth in stands_in.items():
        yield said("easier.needle", point=point, cloth=cloth.title)


def _tools(made: Made, cloths: list[Fabric], room: Workroom) -> Iterator[Said]:
    sleeved = any(piece.role in SLEEVES for g in made.garments for piece in g.draft.pieces)
    if any(has_pile(cloth) for cloth in cloths) and "needle board" not in room.pressing:
        yield said("easier.needle_board")
    if sleeved and "sleeve board" not in room.pressing:
        yield said("easier.sleeve_board")
    if room.blade == "shears" and any(cloth.greatest_stretch > MUCH for cloth in cloths):
        yield said("easier.rotary")
