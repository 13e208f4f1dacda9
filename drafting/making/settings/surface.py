"""What the surface of a cloth asks of a seam: how long the stitch, what holds it, what becomes of raw edges."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import Literal

from drafting.costume.workroom import THREE_STEP
from drafting.draft.roles import SeamKind
from drafting.fabric import Fabric, handling
from drafting.fabric.handling import Holds, Neatens, is_long_pile
from drafting.making.model import Said, said
from drafting.making.settings.stitches import Stitch

MACHINED = ("301", "401", "101")
"""Plain rows, whose length a surface decides; what gives with a knit keeps its own."""

ZIGZAGS = ("304", THREE_STEP)
"""Rows that are only lengthened, where a surface would tear along shorter ones."""


BARS = 15.0
"""mm: a repeat along the cloth from which bars that do not meet at a seam are seen (ours)."""

NEATENED: dict[Neatens, str] = {"none": "set.neaten_none", "bound": "set.neaten_bound"}
"""What is said of raw edges that are not overcast."""


CLIPPED = {
    "set.pinned": "set.clipped_even",
    "set.much": "set.clipped_much",
    "set.much_light": "set.clipped_much",
    "set.much_walking": "set.clipped_much",
}
"""What stands for a sentence that pins, where no pin may touch the cloth."""


def unpinned(why: Iterable[Said], *cloths: Fabric | None) -> Iterator[Said]:
    """Yield the sentences, those that pin said anew where one of the cloths is held with clips."""
    for one in why:
        key = CLIPPED.get(one.key) if layers_held(*cloths) == "clips" else None
        yield said(key) if key else one


def suited_length(stitch: Stitch, fabric: Fabric | None) -> Stitch:
    """Return a row no shorter than the surface bears, and no longer than its neighbours hold (mm)."""
    if fabric is None or fabric.possible_sorts == ("plain",):
        return stitch
    least, most = handling(fabric).stitches
    if stitch.number in ZIGZAGS:
        return replace(stitch, length=max(stitch.length, least))
    if stitch.number not in MACHINED:
        return stitch
    return replace(stitch, length=min(max(stitch.length, least), max(most, least)))


def layers_held(*cloths: Fabric | None) -> Holds:
    """Return what holds layers of these cloths until they are sewn: the gentlest that any of them asks for."""
    found: list[Holds] = [handling(cloth).holds for cloth in cloths if cloth is not None]
    return max(found, key=GENTLER.index, default="pins")


GENTLER: tuple[Holds, ...] = ("pins", "basting", "clips")
"""What holds layers, from what leaves holes to what leaves none."""


def bars_met(fabric: Fabric | None, kind: SeamKind) -> Iterator[Said]:
    """Yield that bars meet, at a seam that runs up and down beside its partner on a cloth that has bars."""
    if fabric is not None and (fabric.repeat_along or 0.0) >= BARS and kind in MEET:
        yield said("set.repeat")


MEET = frozenset(
    {
        SeamKind.SIDE,
        SeamKind.CENTRE,
        SeamKind.PANEL,
        SeamKind.PRINCESS,
        SeamKind.INSEAM,
        SeamKind.CROTCH,
        SeamKind.SLEEVE,
    }
)
"""Seams at which bars of a plaid are seen to meet or not (common practice)."""


def surface_said(
    fabric: Fabric | None, neatens: Neatens | Literal[""] = "", *, enclosed: bool = False
) -> Iterator[Said]:
    """Yield what a special cloth asks for at every seam, its raw edges neatened as `neatens` says ("": as that
    cloth is); those that it encloses need nothing."""
    if fabric is None:
        return
    takes, sorts = handling(fabric), fabric.possible_sorts
    if takes.holds == "clips":
        yield said("set.clips")
    if is_long_pile(fabric):
        yield said("set.long_pile")
    if "sequinned" in sorts:
        yield said("set.sequins")
    if {"sheer", "lace"} & set(sorts):
        yield said("set.sheer")
    how = neatens if neatens and fabric.weave != "knit" else takes.neatens
    if how in NEATENED and not enclosed:
        yield said(NEATENED[how])
