"""What comes last: elastic, lining, hanging and levelling, bones, hems, buttons, trying on."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from drafting.draft.by_role import edge_as
from drafting.draft.draft import EdgeRef, Notion, Seam
from drafting.draft.openings import hands
from drafting.draft.piece import EdgeKind
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.fabric import Fabric, handling
from drafting.fabric.handling import has_pile
from drafting.fitting.bands import GarmentSort, sort_of_garment
from drafting.making.model import Said, Supply, said
from drafting.making.order import additions as adding
from drafting.making.order import fastening, inside, levelled, units
from drafting.making.order.hem_braid import hem_braid
from drafting.making.order.hems import hem_made, low_hems
from drafting.making.order.lining import lining
from drafting.making.order.open_edges import finish_open, still_open
from drafting.making.order.parts import Bench, edges_told, notion_key, pieces_in
from drafting.making.order.seam_kinds import is_facing, is_sleeve, is_unit
from drafting.making.seam_lengths import seam_lengths, turned_edges
from drafting.making.settings.edges import ZIP, edge_key
from drafting.making.settings.lining_covers import lining_covers
from drafting.making.settings.stitches import CAUGHT


def sleeve_ends(bench: Bench) -> None:
    """Finish sleeve hems while the sleeve can still be turned about freely: elastic, or a hem."""
    refs = [
        (piece.name, edge.name)
        for piece, edge in turned_edges(bench.garment)
        if is_sleeve(piece) and edge.kind is EdgeKind.HEM
    ]
    adding.piped_edges(bench, sleeves=True)
    if refs:
        elastic = bench.drawn_through("elastic", refs)
        ends(bench, "sleeve", refs, elastic)


def ends(bench: Bench, where: str, refs: list[EdgeRef], elastic: list[str], cautions: Sequence[Said] = ()) -> None:
    """Add the step that finishes these hems, on elastic where there is some."""
    draft = bench.garment.draft
    pieces = list(dict.fromkeys(piece for piece, _ in refs))
    length = sum(draft.edge(ref).length * hands(draft[ref[0]]) for ref in refs)
    if elastic:
        bench.do(
            "close",
            "casing",
            f"{where} on elastic",
            pieces,
            [
                *_turned(bench, "do.casing", refs),
                said("do.loop"),
                said("do.quarters_elastic"),
                said("do.casing_close"),
            ],
            edges=refs,
            notions=elastic,
            length=length,
            cautions=[said("caution.elastic")],
        )
        return
    hidden = [ref for ref in refs if lining_covers(bench.garment, draft[ref[0]], draft.edge(ref))]
    for found in (hidden, [ref for ref in refs if ref not in hidden]):
        if found:
            _hemmed(bench, where, found, cautions, hidden=found is hidden)


def _hemmed(bench: Bench, where: str, refs: list[EdgeRef], cautions: Sequence[Said], *, hidden: bool) -> None:
    """Add the step that hems these edges: all `hidden` by a lining, or none."""
    draft = bench.garment.draft
    pieces = list(dict.fromkeys(piece for piece, _ in refs))
    setting = bench.settings.get((bench.garment.name, edge_key(*refs[0])))
    by_hand = setting is not None and setting.stitch == CAUGHT
    caught = hidden and by_hand
    long = any(draft[piece].role is not PieceRole.BEARER for piece in pieces)
    turned = list(_turned(bench, "do.hem", refs))
    depths = [value for one in turned for key, value in one.facts if key == "depth" and isinstance(value, float)]
    bench.do(
        "finish",
        "hem",
        f"{where} hemmed",
        pieces,
        [
            *turned,
            *hem_made(bench.fabric, max(depths, default=0.0), caught=caught, by_hand=by_hand),
            *_mitred(bench, pieces),
            *([said("do.hem_last")] if long else []),
        ],
        edges=refs,
        length=sum(draft.edge(ref).length * hands(draft[ref[0]]) for ref in refs),
        cautions=cautions,
    )


def bearers(bench: Bench) -> None:
    """Hem the free edges of a fall's bearers before the band is sewn on across their ends."""
    turned = ((piece, edge) for piece, edge in turned_edges(bench.garment) if edge.kind is EdgeKind.HEM)
    refs = [(piece.name, edge.name) for piece, edge in turned if piece.role is PieceRole.BEARER]
    if refs:
        ends(bench, "bearers", refs, [])


def _mitred(bench: Bench, pieces: Sequence[str]) -> Iterator[Said]:
    """Yield how the corner is made where a sleeve's hem meets its vent."""
    draft = bench.garment.draft
    if any(is_sleeve(draft[name]) and edge_as(draft[name], EdgeRole.VENT) for name in pieces):
        yield said("do.mitre")


def _turned(bench: Bench, key: str, refs: list[EdgeRef]) -> Iterator[Said]:
    """Yield how each edge is turned up, those of one depth together."""
    depths: dict[float, list[EdgeRef]] = {}
    for cut in bench.garment.pattern.pieces:
        for piece, edge in refs:
            if piece == cut.piece.name:
                depth = cut.allowances[edge] - cut.piece[edge].drops
                depths.setdefault(round(depth, 1), []).append((piece, edge))
    for depth, found in depths.items():
        yield said(key, names=edges_told(bench.garment.draft, found), depth=depth)


def rest(bench: Bench, fabric: Fabric | None, hem_facings: Sequence[Seam]) -> None:
    """Everything after the garment stands: in the order that leaves each thing reachable."""
    casings(bench)
    levelled.hang(bench)
    levelled.bands(bench, fabric)
    units.join_facings(bench, hem_facings)
    adding.piped_edges(bench, sleeves=False)
    openings(bench)
    hem_braid(bench)
    hems(bench)
    adding.bones(bench)
    adding.trims(bench)
    inside.bars(bench)
    inside.padded_shoulders(bench)
    inside.full_crowns(bench, fabric)
    lining(bench)
    fastening.buttons(bench)
    starch_last(bench, fabric)
    whole(bench, fabric)


def starch_last(bench: Bench, fabric: Fabric | None) -> None:
    """Starch what is starched again after each wash, where nothing of it was starched on the way."""
    done = any("starches" in step.does for step in bench.steps)
    if fabric is None or not fabric.takes_starch or done:
        return
    shell = bench.shell()
    bench.do(
        "finish",
        "starch",
        "starched",
        shell,
        [said("do.starch_last", garment=bench.garment.name)],
        wait=4.0,
        count=1,
    )
    bench.also(STARCH)


STARCH = Supply("starch", "laundry starch, one packet", 1.0, "piece")


def casings(bench: Bench) -> None:
    """Elastic that no hem takes: in a waist's casing, or in the band that is sewn to the waist."""
    done = {notion for step in bench.steps for notion in step.notions}
    for notion in bench.notions("elastic"):
        if notion_key(notion) in done:
            continue
        if refs := _edges_of(bench, notion):
            ends(bench, notion.where, refs, [notion_key(notion)])
        elif notion.edges:
            _in_the_band(bench, notion)


def _in_the_band(bench: Bench, notion: Notion) -> None:
    """Thread an elastic through the band that encloses the edges it draws up."""
    bench.do(
        "close",
        "casing",
        f"{notion.where} on elastic",
        list(dict.fromkeys(piece for piece, _ in notion.edges)),
        [said("do.elastic_in_band"), said("do.loop")],
        notions=[notion_key(notion)],
        cautions=[said("caution.elastic")],
    )


def _edges_of(bench: Bench, notion: Notion) -> list[EdgeRef]:
    """Return the turned edges that a notion goes through and that are not finished yet."""
    done = {edge for step in bench.steps for edge in step.edges}
    turned = ((piece.name, edge.name) for piece, edge in turned_edges(bench.garment))
    return [ref for ref in turned if ref in notion.edges and ref not in done]


def openings(bench: Bench) -> None:
    """Vents, slits, necks and whatever stays open: bound, faced, or turned in and stitched."""
    finish_open(bench, "finish", "openings finished", still_open(bench))


def sew_fly(bench: Bench, seams: Sequence[Seam] = ()) -> None:
    """The fly, as soon as the seam below it is sewn: the fronts still lie flat.

    One cut on is turned in; one with a facing and a shield has the zip between them.
    """
    if seams:
        lengths = seam_lengths(bench.garment)
        bench.do(
            "join",
            "face",
            "fly made",
            pieces_in(seams),
            [said("do.fly_facing"), said("do.fly_shield"), said("do.fly_top")],
            seams=[seam.name for seam in seams],
            length=2 * sum(lengths[s.name] for s in seams),
            notions=bench.of("zip"),
        )
        bench.also(setting=bench.settings.get((bench.garment.name, ZIP)))
    draft = bench.garment.draft
    flies = [ref for ref in still_open(bench) if draft.edge(ref).role is EdgeRole.FLY]
    finish_open(bench, "shape", "fly finished", flies)


def hems(bench: Bench) -> None:
    """Turn up every hem that is left."""
    done = {edge for step in bench.steps for edge in step.edges}
    turned = ((piece.name, edge.name) for piece, edge in turned_edges(bench.garment))
    left = [ref for ref in turned if ref not in done]
    if left:
        ends(bench, "hem", left, [], list(low_hems(bench.garment)))


def whole(bench: Bench, fabric: Fabric | None) -> None:
    """Bring what is still apart together, give it a last press and try it on."""
    draft = bench.garment.draft
    parts = {bench.parts[p.name] for p in draft.pieces}
    apart = [p.name for p in draft.pieces if not p.material and bench.parts[p.name] == bench.raw(p.name)]
    loose = [said("do.loose", names=", ".join(apart))] if len(parts) > 1 and apart else []
    tried = (
        "do.try_closures"
        if any(n.what not in ("interfacing", "boning", "bone tip", "elastic") for n in draft.notions)
        else "do.try_moves"
    )
    if sort_of_garment(draft) is GarmentSort.FOOT:
        tried = "do.try_foot"
    shown = [p.name for p in draft.pieces if not p.material and not (is_unit(p) or is_facing(p))]
    bench.do(
        "finish",
        "try",
        "finished",
        [p.name for p in draft.pieces],
        [said(_last(bench, fabric), garment=bench.garment.name), *loose, said(tried)],
        count=1,
        shown=shown,
    )


def _last(bench: Bench, fabric: Fabric | None) -> str:
    """Return how a garment leaves the table: pressed or starched, a pile steamed or, at worst, brushed."""
    if fabric is None or not has_pile(fabric):
        starched = any(one.key == "do.starch_last" for step in bench.steps for one in step.say)
        return "do.last_starched" if starched else "do.last"
    return "do.last_pile" if handling(fabric).steam else "do.last_brushed"
