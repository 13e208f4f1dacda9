"""Every seam's setting, and what the maker would do more easily with more tools. Layer 5."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Literal

from drafting.costume import Made
from drafting.draft import Draft, Seam
from drafting.fabric import Fabric
from drafting.garment import MadeGarment
from drafting.making.model import Said, Setting, said
from drafting.making.settings.lengthening import TRUE_BIAS, bias_angle, lengthens, on_bias
from drafting.making.settings.needles import needle_for
from drafting.making.settings.stitches import LITTLE, MUCH, STRETCHY, stitch_for
from drafting.making.treating import has_pile
from drafting.treatments import iron_limit
from drafting.workroom import Workroom

Press = Literal["open", "to one side", "not"]

THICK = 280.0
"""g/m2 from which layers creep under a plain foot (from memory)."""


def settings(made: Made, room: Workroom | None = None) -> Mapping[tuple[str, str], Setting]:
    """Return how each seam is sewn, by garment and the seam's name."""
    room = room or Workroom()
    return {
        (garment.name, seam.name): setting(
            garment, seam, made.costume.fabrics.get(garment.fabric), room
        )
        for garment in made.garments
        for seam in garment.draft.seams
    }


def setting(garment: MadeGarment, seam: Seam, fabric: Fabric | None, room: Workroom) -> Setting:
    """Return how one seam is sewn and pressed."""
    draft = garment.draft
    gives = lengthens(draft, seam, fabric)
    knit = fabric is not None and fabric.weave == "knit"
    stayed = must_not_stretch(draft, seam, knit)
    stitch = stitch_for(0.0 if stayed and not knit else gives, knit, room)
    needle, stands_in = needle_for(fabric, room)
    light = room.foot_pressure and (gives > LITTLE or knit)
    why = (
        *stitch.why,
        *([said("set.stand_in")] if stands_in else []),
        *_held(gives, light),
        *_pressing(fabric),
    )
    return Setting(
        stitch.number, 1, stitch.length, needle, foot_for(fabric, gives, room), stitch.width,
        "lighter" if light else "usual", gives, stayed, press_for(draft, seam, stitch.number),
        iron_limit(fabric) if fabric else None, why,
        (said("set.trial_stretch", share=gives),) if gives > LITTLE else (),
    )  # fmt: skip


def _held(gives: float, light: bool) -> Iterator[Said]:
    """Yield how the layers are kept together while they pass under the foot."""
    if gives > MUCH:
        yield said("set.much_light" if light else "set.much")
    elif gives > LITTLE:
        yield said("set.pinned")


def _pressing(fabric: Fabric | None) -> Iterator[Said]:
    if fabric is not None and has_pile(fabric):
        yield said("set.pile")


def foot_for(fabric: Fabric | None, gives: float, room: Workroom) -> str:
    """Return the foot: walking where layers creep and there is one, else the all-purpose."""
    creeps = fabric is not None and (has_pile(fabric) or (fabric.mass or 0) > THICK or gives > MUCH)
    return "walking" if creeps and "walking" in room.feet else "all-purpose"


def must_not_stretch(draft: Draft, seam: Seam, knit: bool) -> bool:
    """Return whether a seam is stayed: a knit's shoulder, or a bias edge sewn to a straight one."""
    if knit:
        return any("shoulder" in edge for _, edge in seam.a)
    held = {
        p.name.removesuffix("-interfacing") for p in draft.pieces if p.material == "interfacing"
    }
    chains = [[ref for ref in chain if ref[0] not in held] for chain in (seam.a, seam.b)]
    a, b = (max((bias_angle(draft, ref) for ref in chain), default=0.0) for chain in chains)
    return max(a, b) > TRUE_BIAS and min(a, b) < TRUE_BIAS / 2


def press_for(draft: Draft, seam: Seam, stitch: str) -> Press:
    """Return how the allowances are pressed: open, but where one side must hold the other."""
    edges = {edge for _, edge in (*seam.a, *seam.b)}
    if stitch in STRETCHY or any("cap" in edge or "dart" in edge for edge in edges):
        return "to one side"
    gathered = any(draft.edge(ref).sewn is not None for ref in (*seam.a, *seam.b))
    return "to one side" if gathered or any("neck" in edge for edge in edges) else "open"


def easier(made: Made, room: Workroom) -> tuple[Said, ...]:
    """Return what would be easier with more than the workroom has, for these cloths."""
    return tuple(_easier(made, room))


def _easier(made: Made, room: Workroom) -> Iterator[Said]:
    cloths = [made.costume.fabrics.get(garment.fabric) for garment in made.garments]
    if any(c and c.weave == "knit" for c in cloths) and not room.has("514", "504"):
        yield said("easier.overlock")
    if (
        any(c and (has_pile(c) or (c.mass or 0) > THICK) for c in cloths)
        and "walking" not in room.feet
    ):
        yield said("easier.walking")
    if any(c and has_pile(c) for c in cloths) and "needle board" not in room.pressing:
        yield said("easier.needle_board")
    if room.blade == "shears" and any(c and c.greatest_stretch > MUCH for c in cloths):
        yield said("easier.rotary")
    if (
        any(on_bias(g.draft, s) for g in made.garments for s in g.draft.seams)
        and not room.foot_pressure
    ):
        yield said("easier.pressure")
