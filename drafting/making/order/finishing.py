"""What comes last: elastic, lining, hanging and levelling, bones, hems, buttons, trying on."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from drafting.draft.draft import EdgeRef, Seam
from drafting.draft.piece import EdgeKind
from drafting.fabric import Fabric
from drafting.making.model import Said, said
from drafting.making.order import additions as adding
from drafting.making.order.parts import Bench, pieces_in
from drafting.making.order.seam_kinds import is_facing, is_sleeve, is_unit
from drafting.making.seam_lengths import seam_lengths, turned_edges
from drafting.making.treating import has_pile

HANG = 24.0
"""hours that bias parts hang before their hem is levelled (row K24, trouble FL4: 24 to 48)."""


def sleeve_ends(bench: Bench) -> None:
    """Finish sleeve hems while the sleeve can still be turned about freely: elastic, or a hem."""
    refs = [
        (piece.name, edge.name)
        for piece, edge in turned_edges(bench.garment)
        if is_sleeve(piece) and edge.kind is EdgeKind.HEM
    ]
    if refs:
        elastic = bench.of("elastic", "sleeve")
        ends(bench, "sleeve", refs, elastic)


def ends(bench: Bench, where: str, refs: list[EdgeRef], elastic: list[str]) -> None:
    """Add the step that finishes these hems, on elastic where there is some."""
    draft = bench.garment.draft
    pieces = list(dict.fromkeys(piece for piece, _ in refs))
    length = sum(draft.edge(ref).length * draft[ref[0]].count for ref in refs)
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
    else:
        bench.do(
            "finish",
            "hem",
            f"{where} hemmed",
            pieces,
            [*_turned(bench, "do.hem", refs), said("do.hem_last")],
            edges=refs,
            length=length,
        )


def _turned(bench: Bench, key: str, refs: list[EdgeRef]) -> Iterator[Said]:
    """Yield how each edge is turned up, those of one depth together."""
    depths: dict[float, list[str]] = {}
    for cut in bench.garment.pattern.pieces:
        for piece, edge in refs:
            if piece == cut.piece.name:
                depths.setdefault(round(cut.allowances[edge], 1), []).append(f"{piece} {edge}")
    for depth, names in depths.items():
        yield said(key, names=", ".join(names), depth=depth)


def rest(bench: Bench, flared: bool, fabric: Fabric | None) -> None:
    """Everything after the garment stands: in the order that leaves each thing reachable."""
    casings(bench)
    openings(bench)
    if flared:
        hang(bench)
    hems(bench)
    adding.bones(bench)
    adding.trims(bench, ("braid", "ribbon", "lace", "fringe", "binding"))
    adding.lining(bench)
    adding.buttons(bench)
    whole(bench, fabric)


def casings(bench: Bench) -> None:
    """Elastic that no hem takes: in a waist's casing."""
    done = {notion for step in bench.steps for notion in step.notions}
    for notion in bench.of("elastic"):
        where = notion.removeprefix("elastic: ")
        refs = _edges_at(bench, where)
        if notion not in done and refs:
            ends(bench, where, refs, [notion])


def _edges_at(bench: Bench, where: str) -> list[EdgeRef]:
    """Return the hems that a notion's place names (`waist`, `trouser hem left`), not finished yet."""
    done = {edge for step in bench.steps for edge in step.edges}
    words = where.split()
    hand = words.pop() if words[-1] in ("left", "right") else ""
    return [
        (piece.name, edge.name)
        for piece, edge in turned_edges(bench.garment)
        if edge.name == words[-1]
        and (piece.name, edge.name) not in done
        and (not hand or piece.name.endswith(f"-{hand}"))
    ]


def openings(bench: Bench) -> None:
    """Vents, slits, necks and whatever stays open: bound, faced, or turned in and stitched."""
    _finish(bench, "openings finished", _still_open(bench))


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
            notions=[f"{n.what}: {n.where}" for n in bench.garment.draft.notions if n.what == "zip"],
        )
    _finish(bench, "fly finished", [ref for ref in _still_open(bench) if ref[1] == "fly"])


def _still_open(bench: Bench) -> list[EdgeRef]:
    done = {edge for step in bench.steps for edge in step.edges}
    return [
        (piece.name, edge.name)
        for piece, edge in turned_edges(bench.garment)
        if edge.kind is EdgeKind.OPENING and (piece.name, edge.name) not in done
    ]


def _finish(bench: Bench, name: str, refs: list[EdgeRef]) -> None:
    if refs:
        draft = bench.garment.draft
        bench.do(
            "finish" if name.startswith("openings") else "shape",
            "bind",
            name,
            list(dict.fromkeys(piece for piece, _ in refs)),
            list(_opened(refs)),
            edges=refs,
            length=sum(draft.edge(ref).length * draft[ref[0]].count for ref in refs),
        )


def _opened(refs: list[EdgeRef]) -> Iterator[Said]:
    """Yield how openings are finished: vents, a fly, a waist, a front left free, and any other edge."""
    groups: dict[str, list[str]] = {}
    for piece, edge in refs:
        word = next((word for word in ("vent", "fly", "waist", "front") if word in edge.split("_")), "")
        groups.setdefault(f"{piece} {word}" if word == "vent" else word, []).append(f"{piece} {edge}")
    for group, names in groups.items():
        listed = ", ".join(names)
        match group.split(" ")[-1]:
            case "vent":
                yield said("do.vent", names=listed)
            case "fly":
                yield said("do.fly", names=listed)
            case "waist":
                yield said("do.waist", names=listed)
            case "front":
                yield said("do.free_front", names=listed)
            case _:
                yield said("do.openings", names=listed)


def hang(bench: Bench) -> None:
    pieces = list(
        dict.fromkeys(
            p
            for step in bench.steps
            if step.makes.startswith(f"{bench.garment.name}: flare")
            for p in _of(step.pieces)
        )
    )
    bench.do(
        "finish",
        "hang",
        "levelled",
        pieces,
        [said("do.hang", hours=HANG), said("do.level")],
        wait=HANG,
        count=1,
        cautions=[said("caution.trip")],
    )


def _of(names: tuple[str, ...]) -> Iterator[str]:
    return (name.partition(".")[2] for name in names)


def hems(bench: Bench) -> None:
    """Turn up every hem that is left."""
    done = {edge for step in bench.steps for edge in step.edges}
    turned = ((piece.name, edge.name) for piece, edge in turned_edges(bench.garment))
    left = [ref for ref in turned if ref not in done]
    if left:
        ends(bench, "hem", left, [])


def whole(bench: Bench, fabric: Fabric | None) -> None:
    """Bring what is still apart together, give it a last press and try it on."""
    draft = bench.garment.draft
    parts = {bench.parts[p.name] for p in draft.pieces}
    apart = [
        p.name for p in draft.pieces if not p.material and bench.parts[p.name].startswith(f"{bench.garment.name}.")
    ]
    loose = [said("do.loose", names=", ".join(apart))] if len(parts) > 1 and apart else []
    pile = [said("do.last_pile")] if fabric is not None and has_pile(fabric) else []
    tried = (
        "do.try_closures"
        if any(n.what not in ("interfacing", "boning", "bone tip", "elastic") for n in draft.notions)
        else "do.try_moves"
    )
    shown = [p.name for p in draft.pieces if not p.material and not (is_unit(p.name) or is_facing(p.name))]
    bench.do(
        "finish",
        "try",
        "finished",
        [p.name for p in draft.pieces],
        [said("do.last", garment=bench.garment.name), *loose, *pile, said(tried)],
        count=1,
        shown=shown,
    )
