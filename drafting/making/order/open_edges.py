"""Edges that stay open: vents, flies, waists, fronts, and what no piece of the draft finishes.

A straight one is turned in on its own allowance; along a curve, for which the draft has no facing and no strip,
a tape is bought.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from drafting.draft.by_role import edges_beside, vent_at_centre
from drafting.draft.draft import EdgeRef, Seam
from drafting.draft.openings import hands
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole
from drafting.ground.lengths import told
from drafting.making.model import Stage, Supply, said
from drafting.making.order.parts import Bench, base_of, edges_told, notion_key
from drafting.making.order.seam_kinds import is_facing, is_sleeve
from drafting.making.order.used_up import STAY
from drafting.making.seam_lengths import turned_edges
from drafting.shaping.details.zips import sold_zip

OPENED = {
    EdgeRole.VENT: "do.vent",
    EdgeRole.FLY: "do.fly",
    EdgeRole.WAIST: "do.waist",
    EdgeRole.FRONT: "do.free_front",
    EdgeRole.FRONT_EDGE: "do.free_front",
}
"""How an edge that stays open is finished, by what it is; any other is turned in or bound with a tape."""

STRAIGHT = 0.995
"""Share of its length that an edge's ends lie apart from which it can be turned in (ours)."""

TAPE_ENDS = 40.0
"""mm of a tape or a ribbon beyond its edge: both ends turned in (common practice)."""


def still_open(bench: Bench) -> list[EdgeRef]:
    """Return the openings that no step has finished yet."""
    sewn = {name for step in bench.steps for name in step.seams}
    seams = [seam for seam in bench.garment.draft.seams if seam.name in sewn]
    done = {edge for step in bench.steps for edge in step.edges}
    done |= {edge for seam in seams for edge in (*seam.a, *seam.b)}  # faced or bound by a piece of its own
    return [
        (piece.name, edge.name)
        for piece, edge in turned_edges(bench.garment)
        if edge.kind is EdgeKind.OPENING and (piece.name, edge.name) not in done
    ]


def finish_open(bench: Bench, stage: Stage, name: str, refs: list[EdgeRef]) -> None:
    """Add the step that finishes these openings, with what is bought for it; nothing where there are none."""
    if not refs:
        return
    groups = _grouped(bench, refs)
    bench.do(
        stage,
        "bind",
        name,
        list(dict.fromkeys(piece for piece, _ in refs)),
        [
            said(key, names=edges_told(bench.garment.draft, found), sewn=_length(bench, found))
            for (key, _), found in groups.items()
        ],
        edges=refs,
        length=_length(bench, refs),
    )
    bench.also(*_bought(bench, groups))


ENDING = (EdgeRole.SLIT, EdgeRole.CENTRE, EdgeRole.VENT, EdgeRole.FRONT)
"""What a band or a collar closes over the end of: a cape's front edges end in its stand, vents in a band along the
hem (common practice)."""


def finish_ends(bench: Bench, seams: Sequence[Seam]) -> None:
    """Finish the slits and front edges that end at an edge which one of these seams closes, before a band or a
    collar is sewn on there."""
    draft = bench.garment.draft
    sewn = {ref for seam in seams for ref in (*seam.a, *seam.b)}
    still = [ref for ref in still_open(bench) if draft.edge(ref).role in ENDING and ref not in sewn]
    ends = [ref for ref in still if edges_beside(draft, ref) & sewn]
    if any(draft.edge(ref).role is EdgeRole.VENT for ref in ends):  # a vent is finished with its top, in one
        bodies = [ref for ref in still if not is_sleeve(draft[ref[0]])]
        ends = [ref for ref in bodies if ref in ends or draft.edge(ref).role is EdgeRole.VENT]
    finish_open(bench, "join", "ends turned in", ends)


_Groups = dict[tuple[str, str], list[EdgeRef]]
"""Edges by how they are finished, and by the piece where each is told for itself."""


def _grouped(bench: Bench, refs: Sequence[EdgeRef]) -> _Groups:
    """Return how openings are finished: centre vents apart, each with both its hands, any others of one sort
    together; both pieces of a side vent are one."""
    found: _Groups = {}
    for ref in refs:
        key = _how(bench, ref)
        alone = key == "do.vent" and vent_at_centre(bench.garment.draft[ref[0]])
        found.setdefault((key, base_of(bench.garment.draft[ref[0]]) if alone else ""), []).append(ref)
    return found


def _how(bench: Bench, ref: EdgeRef) -> str:
    piece, edge = bench.garment.draft[ref[0]], bench.garment.draft.edge(ref)
    if is_facing(piece) and edge.role is EdgeRole.CENTRE:
        return "do.facing_ends" if _beside_zip(bench, ref) else "do.facing_ends_turned"
    if edge.role not in OPENED and ref[0] in bench.lined() and not is_sleeve(piece):
        return "do.turned_straight_lined" if _is_straight(piece, edge) else "do.turned_lined"
    if edge.role not in OPENED:
        return "do.turned_in" if _is_straight(piece, edge) else "do.taped"
    key = OPENED[edge.role]
    return "do.free_front_unlined" if key == "do.free_front" and ref[0] not in bench.lined() else key


def _beside_zip(bench: Bench, end: EdgeRef) -> bool:
    """Return whether the end of a facing lies beside an edge that a zip is sewn to."""
    draft = bench.garment.draft
    zips = {notion_key(notion) for notion in bench.notions("zip")}
    zipped = {ref for step in bench.steps if zips & {*step.notions} for ref in step.edges}
    near = edges_beside(draft, end)
    sewn = {ref for seam in draft.seams if near & {*seam.a, *seam.b} for ref in (*seam.a, *seam.b)} - near
    return any(edges_beside(draft, ref) & zipped for ref in sewn)


def turned_in(bench: Bench, ref: EdgeRef) -> bool:
    """Return whether an opening of the body is straight and turned in on its own allowance."""
    return not is_sleeve(bench.garment.draft[ref[0]]) and _how(bench, ref) == "do.turned_in"


def _is_straight(piece: Piece, edge: Edge) -> bool:
    """Return whether an edge can be turned in along a line; of a neck or an armhole that a dart parts, all."""
    whole = edge.role in (EdgeRole.NECK, EdgeRole.ARMHOLE)
    parts = [e for e in piece.edges if e.role is edge.role and e.kind is edge.kind] if whole else [edge]
    return all(abs(e.path.end - e.path.start) >= STRAIGHT * e.length for e in parts)


def _bought(bench: Bench, groups: _Groups) -> Iterator[Supply]:
    """Yield the tape along what is curved and the ribbon inside a waist, as long as the edges of both hands, and
    the zip of a fly that is turned in."""
    fabric, role = bench.fabric, bench.garment.fabric
    knit = fabric is not None and fabric.weave == "knit"
    for key, what, kind in (
        ("do.turned_lined", "tape", STAY),
        ("do.turned_straight_lined", "tape", STAY),
        ("do.taped", "tape", FOLD_OVER if knit else BIAS_TAPE),
        ("do.waist", "ribbon", RIBBON),
    ):
        if refs := groups.get((key, "")):
            yield Supply(what, kind, _length(bench, refs) + TAPE_ENDS, "mm", role)
    if refs := groups.get(("do.fly", "")):
        longest = max(bench.garment.draft.edge(ref).length for ref in refs)
        yield Supply("zip", f"trouser zip, {told(sold_zip(longest), 'ready')}", 1.0, "piece", role)


def _length(bench: Bench, refs: Sequence[EdgeRef]) -> float:
    """Return the mm of these edges on the garment, both hands and halves."""
    draft = bench.garment.draft
    return sum(draft.edge(ref).length * hands(draft[ref[0]]) for ref in refs)


BIAS_TAPE = f"bias tape in the cloth's colour, folded, {told(20.0, 'small')} wide"
FOLD_OVER = f"elastic to fold over an edge, in the cloth's colour, {told(15.0, 'small')} wide"
RIBBON = f"ribbed ribbon for the inside of a waist, {told(25.0, 'small')} wide"
"""What is bought for an edge that the draft has no piece for (common practice)."""
