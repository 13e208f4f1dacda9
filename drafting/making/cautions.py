"""Cautions of the whole costume, each for a reason in this draft; they defer to those in charge.

What they follow is named below and in `rests_on`; the rest is common practice. Nothing here replaces
instructions, local rules or licensed practice.
"""

from __future__ import annotations

from collections.abc import Iterator

from drafting.body import Body
from drafting.body.children import SMALL_CHILD
from drafting.costume.make import Made
from drafting.draft.by_role import edge_as
from drafting.draft.frame import Limb
from drafting.draft.roles import EdgeRole
from drafting.making.model import Said, said
from drafting.making.order.hems import CLEARS, clearances, low_hems

CHILD = 1640.0
"""mm of height taken for 14 years where no age is known (from memory: size 164)."""

MELTS = ("nylon", "polyamide", "polyester", "acrylic", "acetate", "elastane", "pvc", "vinyl")
"""Fibres that melt onto skin near a flame (`Source.FIRE_COSTUME`)."""

ANKLES = 150.0
"""mm above the floor from which a hem is no matter for stairs (ours)."""

TIED = ("cord", "drawstring", "ribbon tie")


def cautions(made: Made) -> tuple[Said, ...]:
    """Return the cautions that this costume calls for, those for everyone first."""
    return tuple(_cautions(made))


def _cautions(made: Made) -> Iterator[Said]:
    yield said("caution.toile")
    yield said("caution.hazards")
    if made.costume.wearer.posture == "seated":
        yield said("caution.seated")
    yield from _flame(made)
    yield from _hems(made)
    kinds = {notion.what for garment in made.garments for notion in garment.draft.notions}
    if "elastic" in kinds:
        yield said("caution.elastic")
    if "boning" in kinds:
        yield said("caution.bones")
    yield from children(made.costume.wearer, bool(kinds & set(TIED)))
    yield from _lets_go(made)
    yield said("caution.work")


def _flame(made: Made) -> Iterator[Said]:
    worn = [f for f in made.costume.fabrics.values() if f.fibre]
    melting = sorted({w for f in worn for w in f.fibre.lower().replace(",", " ").split() if w in MELTS})
    if melting:
        yield said("caution.melts", fibres=", ".join("PVC" if word == "pvc" else word for word in melting))
    yield said("caution.flame")


def _hems(made: Made) -> Iterator[Said]:
    """Yield what the hems come to: how far above the floor, or that one trails."""
    for garment in made.garments:
        yield from low_hems(garment)
        yield from (
            said("caution.hem", garment=garment.name, clear=clear)
            for clear in clearances(garment)
            if CLEARS <= clear < ANKLES
        )


def _lets_go(made: Made) -> Iterator[Said]:
    """Yield that what hangs from a child's neck must let go of her when it is caught (common practice)."""
    if made.costume.wearer["height"] > CHILD:
        return
    for garment in made.garments:
        frames = [p.frame for p in garment.draft.pieces if p.frame is not None and edge_as(p, EdgeRole.NECK)]
        if any(frame.limb is Limb.HANGS for frame in frames):
            closed = any(notion.what == "press stud" for notion in garment.draft.notions)
            yield said("caution.lets_go" if closed else "caution.lets_go_not", garment=garment.name)


def children(body: Body, cords: bool) -> Iterator[Said]:
    """Yield what holds for a child's costume; `cords` says that something is tied or drawn in."""
    height = body["height"]
    if height <= SMALL_CHILD:
        yield said("caution.small_child", height=SMALL_CHILD)
    elif height <= CHILD:
        yield said("caution.child")
    else:
        return
    if cords:
        yield said("caution.cords_there")
    yield said("caution.stage_only")
