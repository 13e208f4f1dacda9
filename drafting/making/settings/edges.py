"""How every turned edge is sewn: hems, casings, necks, vents."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from drafting.body import Body
from drafting.costume.garment import MadeGarment
from drafting.costume.workroom import THREE_STEP, Workroom
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.fabric import Fabric, handling
from drafting.fabric.handling import has_pile
from drafting.fitting.bands import GarmentSort, sort_of_garment
from drafting.making.model import Setting, said
from drafting.making.seam_lengths import turned_edges
from drafting.making.settings.feet import BY_HAND, CAST, WORKED, feeding, foot_for, set_lighter
from drafting.making.settings.lengthening import Gives
from drafting.making.settings.lining_covers import lining_covers
from drafting.making.settings.needles import needle_for
from drafting.making.settings.pressing import heat, pressed_on
from drafting.making.settings.pulling_on import passes, unmeasured
from drafting.making.settings.stitches import LITTLE, OVEREDGE, PLAIN, Stitch, edge_stitch
from drafting.making.settings.surface import layers_held, suited_length, unpinned

EDGE_FINISH = 6
"""Class of a hem or a turned edge (`Source.ISO_4916`)."""


def edge_key(piece: str, edge: str) -> str:
    """Return the name under which a hem's or an opening's setting stands.

    >>> edge_key("front", "hem")
    'hem: front.hem'
    """
    return f"hem: {piece}.{edge}"


BUTTONHOLE = "buttonhole"
"""The name under which the setting of a garment's buttonholes stands."""


def _slit_framed(fabric: Fabric, room: Workroom) -> Setting:
    needle, stands_in = needle_for(fabric, room)
    return Setting(
        stitch="301",
        seam_class=6,
        stitch_length=max(handling(fabric).stitches),
        needle=needle,
        foot="all-purpose",
        press="not",
        why=(said("set.stand_in"),) if stands_in else (),
        holds=layers_held(fabric),
    )


CLOSE, ACROSS = 0.4, 2.5
"""mm from stitch to stitch and across one bar of a worked hole (common practice: 0.3 to 0.5, 2 to 3)."""


def buttonhole_setting(fabric: Fabric | None, room: Workroom) -> Setting:
    """Return how buttonholes are worked: a close zigzag where a machine sews one, else by hand.

    Close stitches perforate a cloth that keeps every hole: there a plain row frames the slit (common practice).
    """
    if fabric is not None and handling(fabric).holds == "clips":
        return _slit_framed(fabric, room)
    machine = room.has("304", "three-step zigzag") == "304"
    needle, stands_in = needle_for(fabric, room)
    return Setting(
        stitch="304" if machine else WORKED,
        seam_class=6,
        stitch_length=CLOSE if machine else 1.0,
        needle=needle,
        foot="buttonhole" if "buttonhole" in room.feet else "all-purpose",
        width=ACROSS if machine else 0.0,
        press="not",
        why=(said("set.stand_in"),) if stands_in else (),
        holds=layers_held(fabric),
    )


BARRED, OVERCAST = "bars", "overcast"
"""The names under which the settings of a garment's bars and of its overcast edges stand."""

CAST_WIDE = 3.0
"""mm across an overcast edge where no overedge machine is at hand (common practice)."""


def bars_setting(fabric: Fabric | None, room: Workroom) -> Setting:
    """Return how the ends that are pulled at are barred: as buttonholes are worked, the bar across the end."""
    worked = buttonhole_setting(fabric, replace(room, feet=()))
    light = set_lighter(fabric, 0.0, worked.foot, room) and worked.stitch not in BY_HAND
    return replace(worked, pressure="lighter" if light else "usual")


def overcast_setting(fabric: Fabric | None, room: Workroom) -> Setting:
    """Return how a raw edge is overcast: by an overedge machine, a zigzag over the edge, or by hand."""
    overedge = room.has(*OVEREDGE)
    number = overedge or room.has("304", THREE_STEP) or CAST
    needle, stands_in = needle_for(fabric, room)
    foot = foot_for(fabric, 0.0, number, room)
    light = set_lighter(fabric, 0.0, foot, room)
    knit = fabric is not None and fabric.weave == "knit"
    return Setting(
        stitch=number,
        seam_class=EDGE_FINISH,
        stitch_length=PLAIN,
        needle=needle,
        foot=foot,
        pressure="lighter" if light else "usual",
        width=0.0 if overedge or number == CAST else CAST_WIDE,
        press="not",
        why=(
            *([said("set.stand_in")] if stands_in else []),
            *unpinned(feeding(0.0, knit, number, foot, light), fabric),
        ),
        holds=layers_held(fabric),
    )


ZIP = "zip"
"""The name under which the setting of a garment's zips stands."""


def zip_setting(fabric: Fabric | None, room: Workroom) -> Setting:
    """Return how zips are sewn in: one plain row close beside the teeth, with a zip foot where there is one."""
    stitch = suited_length(Stitch("301", ALONG_ZIP), fabric)
    needle, stands_in = needle_for(fabric, room)
    footed = "zip" in room.feet
    return Setting(
        stitch=stitch.number,
        seam_class=6,
        stitch_length=stitch.length,
        needle=needle,
        foot="zip" if footed else "all-purpose",
        pressure="lighter" if set_lighter(fabric, 0.0, "zip", room) else "usual",
        press="not",
        why=(*([said("set.stand_in")] if stands_in else []), *([] if footed else [said("set.no_zip_foot")])),
        holds=layers_held(fabric),
    )


ADDED = "sewn on"
"""The name under which the setting stands of what is sewn onto a piece: trims, pockets, strips of slits."""


def added_setting(fabric: Fabric | None, room: Workroom) -> Setting:
    """Return how trims, pockets and strips are sewn onto a piece: as a turned edge that shows is stitched."""
    knit = fabric is not None and fabric.weave == "knit"
    stitch = suited_length(edge_stitch(Gives(), knit, room, caught="", topstitched=True), fabric)
    needle, stands_in = needle_for(fabric, room)
    foot = foot_for(fabric, 0.0, stitch.number, room)
    return Setting(
        stitch=stitch.number,
        seam_class=7,
        stitch_length=stitch.length,
        needle=needle,
        foot=foot,
        width=stitch.width,
        pressure="lighter" if set_lighter(fabric, 0.0, foot, room) else "usual",
        press="not",
        why=(said("set.stand_in"),) if stands_in else (),
        holds=layers_held(fabric),
    )


ALONG_ZIP = 2.5
"""mm of the stitches beside a zip (common practice)."""


def lining_key(seam: str) -> str:
    """Return the name under which the setting of a seam's lining stands.

    >>> lining_key("side")
    'lining: side'
    """
    return f"lining: {seam}"


def edge_settings(
    garment: MadeGarment, body: Body, fabric: Fabric | None, room: Workroom
) -> Mapping[str, Setting]:
    """Return how every edge that is turned in is sewn, by `edge_key`."""
    return {
        edge_key(piece.name, edge.name): _edge(garment, piece, edge, body, fabric, room)
        for piece, edge in turned_edges(garment)
    }


def _caught(garment: MadeGarment, piece: Piece, edge: Edge, fabric: Fabric | None) -> str:
    """Return why an edge is caught by hand: in a pile, as a hem that a lining covers, or one of a coat, of satin,
    or of trousers, a skirt or a cape of wool, where a machine's row would show; none where every hole stays, or
    where an elastic in its casing pulls at it (common practice)."""
    if fabric is None or handling(fabric).holds == "clips":
        return ""
    if any((piece.name, edge.name) in n.edges for n in garment.draft.notions if n.what == "elastic"):
        return ""
    if has_pile(fabric):
        return "set.why_caught"
    if edge.kind is not EdgeKind.HEM:
        return ""
    if lining_covers(garment, piece, edge):
        return "set.why_hidden"
    sort, woollen = sort_of_garment(garment.draft), any(word in fabric.fibre.lower() for word in WOOL)
    tailored = sort is GarmentSort.COAT or (woollen and sort is not GarmentSort.TOP)
    return "set.why_unseen" if tailored or "satin" in fabric.possible_sorts else ""


WOOL = ("wool", "worsted", "cashmere", "mohair", "alpaca")
"""Words of a fibre whose garments are tailored (common practice)."""


def _edge(
    garment: MadeGarment, piece: Piece, edge: Edge, body: Body, fabric: Fabric | None, room: Workroom
) -> Setting:
    knit = fabric is not None and fabric.weave == "knit"
    gives = passes(garment.draft, piece, edge, body, fabric)
    hand = _caught(garment, piece, edge, fabric)
    found = edge_stitch(gives, knit, room, caught=hand, topstitched=edge.kind is EdgeKind.OPENING)
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
