"""How every turned edge is sewn: hems, casings, necks, vents."""

from __future__ import annotations

from collections.abc import Mapping

from drafting.body import Body
from drafting.costume.garment import MadeGarment
from drafting.costume.workroom import Workroom
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.fabric import Fabric
from drafting.making.model import Setting, said
from drafting.making.seam_lengths import turned_edges
from drafting.making.settings.feet import BY_HAND, feeding, foot_for, set_lighter
from drafting.making.settings.needles import needle_for
from drafting.making.settings.pressing import heat, pressed_on
from drafting.making.settings.pulling_on import passes, unmeasured
from drafting.making.settings.stitches import LITTLE, edge_stitch
from drafting.making.settings.surface import layers_held, suited_length, unpinned
from drafting.making.treating import has_pile

EDGE_FINISH = 6
"""Class of a hem or a turned edge (`Source.ISO_4916`)."""


def edge_key(piece: str, edge: str) -> str:
    """Return the name under which a hem's or an opening's setting stands.

    >>> edge_key("front", "hem")
    'hem: front.hem'
    """
    return f"hem: {piece}.{edge}"


def edge_settings(
    garment: MadeGarment, body: Body, fabric: Fabric | None, room: Workroom
) -> Mapping[str, Setting]:
    """Return how every edge that is turned in is sewn, by `edge_key`."""
    return {
        edge_key(piece.name, edge.name): _edge(garment, piece, edge, body, fabric, room)
        for piece, edge in turned_edges(garment)
    }


def _edge(
    garment: MadeGarment, piece: Piece, edge: Edge, body: Body, fabric: Fabric | None, room: Workroom
) -> Setting:
    knit = fabric is not None and fabric.weave == "knit"
    gives = passes(garment.draft, piece, edge, body, fabric)
    pile = fabric is not None and has_pile(fabric)
    found = edge_stitch(gives, knit, room, pile=pile, topstitched=edge.kind is EdgeKind.OPENING)
    stitch = suited_length(found, fabric)
    needle, stands_in = needle_for(fabric, room)
    foot = foot_for(fabric, gives.share, stitch.number, room)
    light = set_lighter(fabric, gives.share, foot, room)
    dots = heat((fabric,), room) if fabric else None
    why = (
        *stitch.why,
        *([said("set.stand_in")] if stands_in else []),
        *unpinned(feeding(gives.share, knit, stitch.number, foot, light), fabric),
        *(said("set.try_over", measure=name) for name in unmeasured(garment.draft, piece, edge, body, fabric)),
        *pressed_on(fabric, dots, room, by_hand=stitch.number in BY_HAND),
    )
    return Setting(
        stitch=stitch.number,
        seam_class=EDGE_FINISH,
        stitch_length=stitch.length,
        needle=needle,
        foot=foot,
        width=stitch.width,
        pressure="lighter" if light else "usual",
        lengthens=gives.share,
        stayed=False,
        press="not",
        dots=dots,
        why=why,
        trials=(said("set.trial_stretch", share=gives.share),) if gives.share > LITTLE else (),
        cause=gives.cause,
        holds=layers_held(fabric),
    )
