"""What is added to a garment or its pieces: bones, trims, appliqués, pockets."""

from __future__ import annotations

from collections.abc import Sequence

from drafting.alter.edge_pocket import SEAM_BACK, SEAM_BAG
from drafting.draft.by_role import pieces_as
from drafting.draft.draft import Draft, EdgeRef, Notion, Seam
from drafting.draft.piece import EdgeKind, Piece, Placement
from drafting.draft.roles import FACINGS, SEWN_ON, EdgeRole, PieceRole, SeamKind
from drafting.making.model import Said, Stage, Supply, said
from drafting.making.order.parts import Bench, base_of, pieces_of
from drafting.making.order.seam_kinds import is_sleeve
from drafting.making.settings.edges import ADDED
from drafting.making.trim_lengths import LaidTrim, laid_trims


def bones(bench: Bench) -> None:
    """Sew the casing on and slide the bones in, before it is closed."""
    boning = [*bench.of("boning"), *bench.of("bone tip")]
    if not boning:
        return
    casing = [p.name for p in pieces_as(bench.garment.draft, PieceRole.BONE_CASING)]
    boned, cut = _boned(bench), bench.notions("boning")
    in_hem = [notion for notion in cut if not notion.edges]
    in_seams = [notion for notion in cut if notion.edges]
    lined = [said("do.bone_lined")] if in_hem and bench.lined() & set(boned) else []
    bench.do(
        "finish",
        "bone",
        "boned",
        [*boned, *casing],
        [*_boned_so(in_hem, in_seams), *lined],
        notions=boning,
        cautions=[said("caution.bones")],
        count=sum(notion.count for notion in cut),
        length=sum(notion.count * _channel(notion) for notion in cut),
    )
    taped = [*in_seams, *([] if casing else in_hem)]
    if long := sum(n.count * (_channel(n) + CASING_ENDS) for n in taped):
        bench.also(Supply("tape", "boning casing, a tape woven double or sewn so", long, "mm"))


def _boned_so(in_hem: Sequence[Notion], in_seams: Sequence[Notion]) -> list[Said]:
    """Return how bones go into a hem, from end to end or joined to a ring, and down seams."""
    rings = [notion for notion in in_hem if notion.loop is not None]
    ended = len(rings) < len(in_hem)
    say = [said("do.bone")] if in_hem else []
    say += [said("do.bone_short")] if ended or in_seams else []
    say += [said("do.bone_closed")] if ended else []
    say += [said("do.bone_ring", lap=(rings[0].cut_length or 0.0) - (rings[0].loop or 0.0))] if rings else []
    return [*say, *([said("do.bone_seams")] if in_seams else [])]


def _channel(notion: Notion) -> float:
    """Return about how long the casing of a bone is, mm: a ring's ends lap in it."""
    return notion.loop if notion.loop is not None else notion.cut_length or 0.0


CASING_ENDS = 30.0
"""mm of a casing beyond its bone: both its ends are turned in (common practice)."""


def _boned(bench: Bench) -> list[str]:
    """Return the pieces that bones are marked on, those of one role by their places."""
    marked = [
        piece
        for piece in bench.garment.draft.pieces
        if not piece.material and any(mark.what == "bone" for mark in piece.placements)
    ]
    return [piece.name for piece in sorted(marked, key=lambda p: (p.role, p.place, p.hand))]


def caught_trims(bench: Bench, *, small: bool) -> None:
    """Sew on what a seam catches: piping in it, and any trim along an edge that is sewn to another.

    Those of `small` things that are sewn onto a piece come before these are made up.
    """
    draft = bench.garment.draft
    for laid in laid_trims(bench.garment):
        if _is_caught(draft, laid) and (draft[laid.trim.piece].role in SEWN_ON) == small:
            _trim(bench, laid, "prepare")


def trims(bench: Bench) -> None:
    """Sew on what lies on edges that are finished by now: a strap under a foot, and the other trims, both their
    ends turned under."""
    draft = bench.garment.draft
    for what in ON_HEMS:
        _on_marks(bench, what, "finish")
    for laid in laid_trims(bench.garment):
        if not _is_caught(draft, laid) and not _is_turned_in(bench, laid):
            _trim(bench, laid, "finish")


def piped_edges(bench: Bench, *, sleeves: bool) -> None:
    """Sew piping onto edges that are turned in along it, before they are: those of sleeves, or all others."""
    draft = bench.garment.draft
    for laid in laid_trims(bench.garment):
        if _is_turned_in(bench, laid) and is_sleeve(draft[laid.trim.piece]) == sleeves:
            _trim(bench, laid, "finish")


def _is_turned_in(bench: Bench, laid: LaidTrim) -> bool:
    """Return whether a trim is piping along an edge that no seam closes, but a hem.

    A sleeve's opening is made while the sleeve lies flat, and a zip sewn in while its piece does; what lies along
    either is sewn on by hand afterwards.
    """
    draft, steps = bench.garment.draft, bench.steps
    edge = draft.edge(laid.refs[0])
    early = is_sleeve(draft[laid.refs[0][0]]) and edge.role in (EdgeRole.VENT, EdgeRole.SLIT)
    if laid.trim.kind != "piping" or edge.kind not in (EdgeKind.HEM, EdgeKind.OPENING) or early:
        return False
    piped = any(one.verb == "trim" and laid.refs[0] in one.along and one.stage == "finish" for one in steps)
    return piped or not any(ref in one.edges for one in steps for ref in laid.refs)


def _is_caught(draft: Draft, laid: LaidTrim) -> bool:
    return draft.edge(laid.refs[0]).kind is EdgeKind.SEAM


def _trim(bench: Bench, laid: LaidTrim, stage: Stage) -> None:
    """Sew a trim on, both hands of it in one step."""
    draft, trim = bench.garment.draft, laid.trim
    key = TRIMMED.get(trim.kind, "do.trim_caught" if stage == "prepare" else "do.trim_on")
    key = "do.trim_turned" if _is_turned_in(bench, laid) else key
    seen = [_seen(draft, trim.kind, ref) for ref in laid.refs]
    pieces = list(dict.fromkeys(piece for piece, _ in seen))
    own = base_of(draft[pieces[0]]) if len(pieces) > 1 else pieces[0]
    asked, edge = laid.place
    if tuple(seen) != laid.refs:
        edge = seen[0][1]
    if draft.edge(seen[0]).role is EdgeRole.FRONT_EDGE:
        edge = "front"  # else it is the edge edge
    say = [said(key, kind=trim.kind, piece=own, edge=edge)]
    if laid.by_hand:
        say.append(said("do.trim_hands", **laid.by_hand))
    if tuple(seen) != laid.refs:
        say.append(said("do.trim_rolls", piece=asked, facing=own))
    bench.do(stage, "trim", f"with {trim.kind}", pieces, say, length=laid.total)
    bench.also(along=seen, setting=bench.settings.get((bench.garment.name, ADDED)))


def _seen(draft: Draft, kind: str, asked: EdgeRef) -> EdgeRef:
    """Return the edge that a trim lies along: the facing's where the front rolls as a lapel and hides its own.

    Piping in the seam, and a binding round it, show on both sides and stay where they are.
    """
    rolls = any(mark.what == "roll line" for mark in draft[asked[0]].placements)
    if kind in TRIMMED or not rolls or draft.edge(asked).role is not EdgeRole.LAPEL:
        return asked
    for seam in draft.seams:
        here, there = (seam.a, seam.b) if asked in seam.a else (seam.b, seam.a)
        faced = [ref for ref in there if draft[ref[0]].role in FACINGS]
        if asked in here and len(here) == len(faced):
            return faced[here.index(asked)]
        lapels = [ref for ref in faced if draft.edge(ref).role is EdgeRole.LAPEL]
        if asked in here and lapels:
            return lapels[0]
    return asked


TRIMMED = {"piping": "do.trim_in", "binding": "do.trim_bind"}


def sewn_on(bench: Bench) -> None:
    """Sew every appliqué onto its piece while that lies flat."""
    _on_marks(bench, "appliqué")


def pockets(bench: Bench) -> None:
    """Sew every pocket, flap and strap onto its piece: its darts are sewn, and it lies flat still."""
    for what in (*BY_MARK, "pocket", "strap"):
        if what not in ON_HEMS:
            _on_marks(bench, what)


def slits(bench: Bench) -> None:
    """Finish every slit that is cut into a piece, the edge that lies beneath first, while the piece lies flat."""
    _on_marks(bench, "slit edge")
    _on_marks(bench, "slit")


ON_HEMS = ("underfoot strap",)
"""Marks of what is sewn to a hem, and so only once that is turned up."""


def _on_marks(bench: Bench, what: str, stage: Stage = "prepare") -> None:
    """Sew on what is marked so; a flap comes after the pockets that it falls over."""
    draft = bench.garment.draft
    marks = [(p, m) for p in draft.pieces for m in p.placements if m.what == what and m.piece in draft]
    for piece, mark in sorted(marks, key=lambda on: _how(draft[on[1].piece], what) == "do.flap_on"):
        bench.do(
            stage,
            "trim",
            f"{piece.name} with {mark.name}",
            (piece.name, mark.piece),
            [*_one_hand(mark, piece), _sewn_on(draft[mark.piece], mark, piece)],
            seams=_bags_closed(bench, piece.name, mark.piece),
            notions=bench.named("buckle", mark.piece),
            cautions=[said("caution.buckle")] if bench.named("buckle", mark.piece) else [],
            length=mark.path.length * (1 if mark.hand else piece.count),
        )
        if bench.steps[-1].setting is None:
            bench.also(setting=bench.settings.get((bench.garment.name, ADDED)))


def _sewn_on(own: Piece, mark: Placement, piece: Piece) -> Said:
    """Return how a piece is sewn on, and the mm sewn: round its mark, or along its longest free edge alone."""
    key, times = _how(own, mark.what), 1 if mark.hand else piece.count
    longest = max((edge.length for edge in own.edges if edge.kind is EdgeKind.FREE), default=0.0)
    if key in ALONG_ONE_EDGE:
        sewn = times * longest * ALONG_ONE_EDGE[key]
        part = {"part": own.base or own.name} if mark.what in SEAM_PARTS else {}
        return said(key, piece=piece.name, sewn=sewn, **part)
    return said(key, piece=piece.name, sewn=times * mark.path.length, neatened=times * longest)


ALONG_ONE_EDGE = {
    "do.welt_on": 1,
    "do.pocket_facing": 1,
    "do.flap_on": 1,
    "do.pocket_bag": 2,
    "do.slant_mouth": 1,
    "do.slant_back": 1,
    "do.seam_bag": 1,
    "do.seam_back": 1,
}
"""How many seams lie along the one longest free edge of what is sewn on; anything else is sewn round its mark."""


def _one_hand(mark: Placement, piece: Piece) -> list[Said]:
    """Return that a mark is meant for one hand of a pair alone."""
    return [said("do.one_hand", hand=mark.hand, piece=piece.name)] if mark.hand and not piece.hand else []


def _bags_closed(bench: Bench, piece: str, sewn_on: str) -> list[str]:
    """Return the bags that are closed once a part of a pocket is on its piece: both their layers are there."""
    bags = [s for s in bench.garment.draft.seams if s.kind is SeamKind.BAG and sewn_on in pieces_of(s)]
    here = {sewn_on, *(name for name, part in bench.parts.items() if part == bench.parts[piece])}
    return [seam.name for seam in bags if set(pieces_of(seam)) <= here]


def bags_between(bench: Bench, seam: Seam) -> list[Seam]:
    """Return the bags of pockets that lie in a seam: one layer is sewn to either side of it."""
    draft = bench.garment.draft
    on = {mark.piece for name in pieces_of(seam) for mark in draft[name].placements if mark.what in SEAM_PARTS}
    done = {name for step in bench.steps for name in step.seams}
    bags = [s for s in draft.seams if s.kind is SeamKind.BAG and s.name not in done]
    return [bag for bag in bags if set(pieces_of(bag)) <= on]


SEAM_PARTS = (SEAM_BAG, SEAM_BACK)

BY_MARK = {
    "pocket facing": "do.pocket_facing",
    "welt": "do.welt_on",
    "pocket bag": "do.pocket_bag",
    "pocket mouth": "do.slant_mouth",
    "pocket back": "do.slant_back",
    SEAM_BAG: "do.seam_bag",
    SEAM_BACK: "do.seam_back",
    "underfoot strap": "do.strap_under",
}
"""How a part of a pocket is sewn on, by its mark, in the order of the work."""

SLIT = {
    ("slit", PieceRole.BINDING): "do.slit_strip",
    ("slit edge", PieceRole.BINDING): "do.slit_under",
    ("slit", PieceRole.PLACKET): "do.slit_placket",
}
"""How a slit is finished, by its mark and what is sewn to it."""


def _how(piece: Piece, what: str) -> str:
    """Return the sentence for a piece that is sewn on where a mark of this kind says."""
    return BY_MARK.get(what) or SLIT.get((what, piece.role)) or _key(piece)


def _key(piece: Piece) -> str:
    """Return how a piece is sewn on: a pocket turned in all round, a flap, a strap, or an appliqué."""
    if piece.role is PieceRole.STRAP:
        return "do.strap_on_hand" if piece.hand else "do.strap_on"
    if piece.role is not PieceRole.POCKET:
        return "do.applique"
    return "do.flap_on" if any(edge.kind is EdgeKind.SEAM for edge in piece.edges) else "do.pocket_on"
