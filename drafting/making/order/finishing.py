"""What comes last: elastic, lining, hanging and levelling, bones, hems, buttons, trying on. Layer 5."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.draft import EdgeRef
from drafting.fabric import Fabric
from drafting.making.model import Said, said
from drafting.making.order.bench import Bench
from drafting.making.order.kinds import is_facing, is_sleeve, is_unit
from drafting.making.seam_lengths import seam_lengths, turned_edges
from drafting.making.tables import trim_length
from drafting.making.treating import has_pile
from drafting.piece import EdgeKind

HANG = 24.0
"""hours that bias parts hang before their hem is levelled (row K24, trouble FL4: 24 to 48)."""


def sleeve_ends(bench: Bench) -> None:
    """Finish sleeve hems while the sleeve can still be turned about freely: elastic, or a hem."""
    refs = [
        (piece.name, edge.name) for piece, edge in turned_edges(bench.garment)
        if is_sleeve(piece) and edge.kind is EdgeKind.HEM
    ]  # fmt: skip
    if refs:
        elastic = _notions(bench, "elastic", "sleeve")
        ends(bench, "sleeve", refs, elastic)


def ends(bench: Bench, where: str, refs: list[EdgeRef], elastic: list[str]) -> None:
    """Add the step that finishes these hems, on elastic where there is some."""
    draft = bench.garment.draft
    pieces = list(dict.fromkeys(piece for piece, _ in refs))
    length = sum(draft.edge(ref).length * draft[ref[0]].count for ref in refs)
    if elastic:
        bench.do(
            "close", "casing", f"{where} on elastic", pieces,
            [said("do.casing", where=where), said("do.loop"), said("do.quarters_elastic"),
             said("do.casing_close")],
            edges=refs, notions=elastic, length=length, cautions=[said("caution.elastic")],
        )  # fmt: skip
    else:
        bench.do(
            "finish", "hem", f"{where} hemmed", pieces, [said("do.hem", where=where)], edges=refs, length=length
        )  # fmt: skip


def _notions(bench: Bench, what: str, where: str = "") -> list[str]:
    return [
        f"{n.what}: {n.where}" for n in bench.garment.draft.notions
        if n.what == what and where in n.where
    ]  # fmt: skip


def rest(bench: Bench, flared: bool, fabric: Fabric | None) -> None:
    """Everything after the garment stands: in the order that leaves each thing reachable."""
    casings(bench)
    openings(bench)
    if flared:
        hang(bench)
    hems(bench)
    bones(bench)
    trims(bench, ("braid", "ribbon", "lace", "fringe", "binding"))
    lining(bench)
    buttons(bench)
    whole(bench, fabric)


def _shell(bench: Bench) -> list[str]:
    return [p.name for p in bench.garment.draft.pieces if not p.material]


def casings(bench: Bench) -> None:
    """Elastic that no hem takes: in a waist's casing."""
    done = {notion for step in bench.steps for notion in step.notions}
    for notion in _notions(bench, "elastic"):
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
        (piece.name, edge.name) for piece, edge in turned_edges(bench.garment)
        if edge.name == words[-1] and (piece.name, edge.name) not in done
        and (not hand or piece.name.endswith(f"-{hand}"))
    ]  # fmt: skip


def openings(bench: Bench) -> None:
    """Vents, slits, necks and whatever stays open: bound, faced, or turned in and stitched."""
    done = {edge for step in bench.steps for edge in step.edges}
    refs = [
        (piece.name, edge.name) for piece, edge in turned_edges(bench.garment)
        if edge.kind is EdgeKind.OPENING and (piece.name, edge.name) not in done
    ]  # fmt: skip
    if refs:
        draft = bench.garment.draft
        names = ", ".join(dict.fromkeys(f"{piece} {edge}" for piece, edge in refs))
        bench.do(
            "finish", "bind", "openings finished", list(dict.fromkeys(piece for piece, _ in refs)),
            [said("do.openings", names=names)], edges=refs,
            length=sum(draft.edge(ref).length * draft[ref[0]].count for ref in refs),
        )  # fmt: skip


def hang(bench: Bench) -> None:
    pieces = list(dict.fromkeys(p for step in bench.steps if step.makes.startswith(f"{bench.garment.name}: flare")
                                for p in _of(step.pieces)))  # fmt: skip
    bench.do(
        "finish", "hang", "levelled", pieces, [said("do.hang", hours=HANG), said("do.level")],
        wait=HANG, count=1, cautions=[said("caution.trip")],
    )  # fmt: skip


def _of(names: tuple[str, ...]) -> Iterator[str]:
    return (name.partition(".")[2] for name in names)


def hems(bench: Bench) -> None:
    """Turn up every hem that is left."""
    done = {edge for step in bench.steps for edge in step.edges}
    turned = ((piece.name, edge.name) for piece, edge in turned_edges(bench.garment))
    left = [ref for ref in turned if ref not in done]
    if left:
        ends(bench, "hem", left, [])


def bones(bench: Bench) -> None:
    """Sew the casing on and slide the bones in, before it is closed."""
    boning = [*_notions(bench, "boning"), *_notions(bench, "bone tip")]
    if not boning:
        return
    casing = [p.name for p in bench.garment.draft.pieces if "casing" in p.name and not p.material]
    boned = sorted({m[0] for m in _boned(bench)})
    bench.do(
        "finish", "bone", "boned", [*boned, *casing],
        [said("do.bone"), said("do.bone_short"), said("do.bone_closed")], notions=boning,
        cautions=[said("caution.bones")], count=len(boned),
    )  # fmt: skip


def _boned(bench: Bench) -> Iterator[tuple[str, str]]:
    for piece in bench.garment.draft.pieces:
        for mark in piece.placements:
            if mark.what == "bone" and not piece.material:
                yield piece.name, mark.name


def trims(bench: Bench, kinds: tuple[str, ...]) -> None:
    """Sew trims of these kinds along their edges."""
    for trim in bench.garment.trims:
        if trim.kind in kinds:
            count, each = trim_length(bench.garment, trim)
            key = f"do.trim_{'in' if trim.kind == 'piping' else 'bind' if trim.kind == 'binding' else 'on'}"
            bench.do(
                "finish", "trim", f"with {trim.kind}", (trim.piece,),
                [said(key, kind=trim.kind, piece=trim.piece, edge=trim.edge)], length=count * each,
            )  # fmt: skip


def sewn_on(bench: Bench) -> None:
    """Sew every appliqué onto its piece while that lies flat."""
    draft = bench.garment.draft
    for piece in draft.pieces:
        for mark in piece.placements:
            if mark.what == "appliqué" and mark.name in draft:
                bench.do(
                    "prepare", "trim", f"{piece.name} with {mark.name}", (piece.name, mark.name),
                    [said("do.applique", piece=piece.name)], length=mark.path.length * piece.count,
                )  # fmt: skip


def lining(bench: Bench) -> None:
    """Make the lining as the shell was made, then put it in."""
    lined = [p.name for p in bench.garment.draft.pieces if p.material == "lining"]
    if not lined:
        return
    names = ", ".join(_shell_seams(bench, lined))
    lengths = seam_lengths(bench.garment)
    length = sum(lengths[seam] for seam in _shell_seams(bench, lined))
    pleat = [said("do.ease_pleat")] if any("ease_pleat" in p for p in bench.garment.draft.pieces
                                           if p.name in lined) else []  # fmt: skip
    bench.do(
        "finish", "join", "lining", lined, [said("do.lining", names=names), *pleat], length=length
    )
    bench.do(
        "finish", "fell", "lined", [*_shell(bench), lined[0]], [said("do.line"), said("do.line_loose")],
        length=length / 2, shown=lined,
    )  # fmt: skip


def _shell_seams(bench: Bench, lined: list[str]) -> list[str]:
    """Return the shell's seams whose pieces are all lined: the lining is joined by the same."""
    stems = {name.removesuffix("-lining") for name in lined}
    return [
        seam.name for seam in bench.garment.draft.seams
        if all(piece in stems for piece, _ in (*seam.a, *seam.b))
    ]  # fmt: skip


def buttons(bench: Bench) -> None:
    """Buttonholes through two layers with interfacing between; buttons; then try them."""
    fasteners = [n for n in bench.garment.draft.notions if n.what not in DONE_ELSEWHERE]
    found = [n for n in fasteners if n.what == "button"]
    if found:
        places = (n.where.replace(" ", "-") for n in found)
        pieces = [place for place in places if place in bench.garment.draft]
        bench.do(
            "finish", "button", "with buttons", pieces or _shell(bench),
            [said("do.holes"), said("do.open_holes"), said("do.buttons"),
             *_shanks([n.kind for n in found])],
            notions=[f"button: {n.where}" for n in found], count=sum(n.count for n in found),
        )  # fmt: skip
    for notion in fasteners:
        if notion.what != "button":
            where = [notion.where] if notion.where in bench.garment.draft else _shell(bench)[:1]
            bench.do(
                "finish", "button", f"with {notion.what}", where,
                [said("do.fastener", what=notion.what, where=notion.where, note=notion.note)],
                notions=[f"{notion.what}: {notion.where}"], count=notion.count,
            )  # fmt: skip


DONE_ELSEWHERE = ("interfacing", "elastic", "boning", "bone tip")


def _shanks(kinds: list[str]) -> Iterator[Said]:
    if "flat" in kinds:
        yield said("do.thread_shank")


def whole(bench: Bench, fabric: Fabric | None) -> None:
    """Bring what is still apart together, give it a last press and try it on."""
    draft = bench.garment.draft
    parts = {bench.parts[p.name] for p in draft.pieces}
    apart = [
        p.name
        for p in draft.pieces
        if not p.material and bench.parts[p.name].startswith(f"{bench.garment.name}.")
    ]
    loose = [said("do.loose", names=", ".join(apart))] if len(parts) > 1 and apart else []
    pile = [said("do.last_pile")] if fabric is not None and has_pile(fabric) else []
    tried = "do.try_closures" if any(n.what not in ("interfacing", "boning", "bone tip", "elastic")
                                     for n in draft.notions) else "do.try_moves"  # fmt: skip
    shown = [
        p.name
        for p in draft.pieces
        if not p.material and not (is_unit(p.name) or is_facing(p.name))
    ]
    bench.do(
        "finish", "try", "finished", [p.name for p in draft.pieces],
        [said("do.last", garment=bench.garment.name), *loose, *pile, said(tried)], count=1, shown=shown,
    )  # fmt: skip
