"""The braid that a hem is stiffened with: stitched to the hem's allowance before that is turned up over it."""

from __future__ import annotations

from drafting.making.model import said
from drafting.making.order.parts import Bench
from drafting.making.settings.edges import ADDED
from drafting.shaping.coat.hem_braid import HEM_BRAID


def hem_braid(bench: Bench) -> None:
    """Lay the braid along every hem that takes one, once it is level, draw it to the curve, and stitch it on."""
    found = bench.notions(HEM_BRAID)
    if not found:
        return
    marked = [
        piece for piece in bench.garment.draft.pieces if any(mark.what == HEM_BRAID for mark in piece.placements)
    ]
    ends = "do.hem_braid_ring" if any(notion.loop is not None for notion in found) else "do.hem_braid_ends"
    bench.do(
        "finish",
        "trim",
        "with hem braid",
        [piece.name for piece in sorted(marked, key=lambda piece: (piece.role, piece.place, piece.hand))],
        [said("do.hem_braid", width=found[0].size or 0.0), said(ends)],
        notions=bench.of(HEM_BRAID),
        length=sum(notion.count * (notion.cut_length or 0.0) for notion in found),
    )
    bench.also(setting=bench.settings.get((bench.garment.name, ADDED)))
