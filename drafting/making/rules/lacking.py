"""Does a step ask for anything that nobody cuts and nobody buys?"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from drafting.costume.garment import MadeGarment
from drafting.draft.roles import PieceRole
from drafting.fabric import Fabric
from drafting.making.model import Step

BOUGHT = {
    "taped": "tape",
    "turned_lined": "tape",
    "turned_straight_lined": "tape",
    "waist": "ribbon",
    "roll_tape": "tape",
    "tiers_taped": "tape",
    "tiers_elastic": "elastic",
    "fly": "zip",
    "zip_strip": "tape",
    "zip_invisible": "tape",
    "eyelets": "tape",
    "pads": "shoulder pad",
    "sleeve_heads": "sleeve head",
    "full_crowns": "sleeve head",
    "starch": "starch",
    "starch_last": "starch",
}
"""What a sentence asks for that no piece of the draft is: by the sentence's name, what has to be taken."""

CUT = ("strip", "strip_short")
"""Sentences about a strip, which the draft has to have as a piece."""


def nothing_lacking(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """What a step sews in is one of its pieces, or it is bought for it."""
    draft = garment.draft
    raw = {f"{garment.name}.{piece.name}": piece for piece in draft.pieces}
    for step in steps:
        keys = {one.key.partition(".")[2] for one in step.say}
        taken = {one.what for one in step.takes if one.amount > 0}
        wanted = {BOUGHT[key] for key in keys if key in BOUGHT}
        if step.setting and step.setting.stayed and step.seams:
            wanted.add("tape")
        yield from (f"{step.key} asks for {what}, which nobody buys" for what in sorted(wanted - taken))
        pieces = [raw[name] for name in step.pieces if name in raw]
        if keys & {*CUT} and not any(piece.role is PieceRole.BINDING for piece in pieces):
            yield f"{step.key} asks for a strip, which nobody cuts"
        if step.verb == "fuse" and not any(piece.material == "interfacing" for piece in pieces):
            yield f"{step.key} asks for an interfacing, which nobody cuts"
