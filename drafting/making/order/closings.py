"""How a centre that opens is closed: zips while the body lies flat, facings folded back over the neck.

Common practice: a hidden zip goes in before the seam below it, a lapped one after; one that is taken
apart is sewn to each side before the sides are joined, and after what hangs from its foot.
"""

from __future__ import annotations

from collections.abc import Iterator

from drafting.checks.treatments import FUSING, iron_limit
from drafting.draft.by_role import edges_as
from drafting.draft.draft import EdgeRef, Notion
from drafting.draft.openings import hands
from drafting.draft.piece import EdgeKind, Piece
from drafting.draft.roles import EdgeRole, SeamKind
from drafting.fabric import Fabric, handling
from drafting.ground.lengths import told
from drafting.making.model import Said, Supply, said
from drafting.making.order.parts import Bench, notion_key, pieces_of
from drafting.making.settings.edges import ZIP

APART = "open-ended zip"
"""What is taken apart at its foot."""

SEWN = {
    "invisible zip": ("do.zip_invisible", "do.zip_below"),
    APART: ("do.zip_strip", "do.zip_apart"),
    "zip": ("do.zip_strip", "do.zip_lapped"),
}
"""How each sort of zip in a centre is sewn in; a zip in a fly is none of them."""

FIRST = ("invisible zip", APART)
"""Zips that go in before the seam below them; one that comes apart after the waist seam that it ends at."""


def zipped(bench: Bench, *, seam_sewn: bool) -> None:
    """Put in the zips of centres that are still to be put in; a lapped one once its seam is sewn."""
    done = {notion for step in bench.steps for notion in step.notions}
    for notion in bench.notions("zip"):
        wanted = notion.kind in SEWN and (seam_sewn or notion.kind in FIRST)
        if wanted and notion_key(notion) not in done and not _hangs_on(bench, notion):
            _zip(bench, notion)


def _hangs_on(bench: Bench, notion: Notion) -> bool:
    """Return whether a waist seam is still to come at the foot of a zip that is taken apart there: it would run
    over the box and the pin."""
    if notion.kind != APART:
        return False
    pieces, sewn = {piece for piece, _ in _opening(bench, notion)}, {s for step in bench.steps for s in step.seams}
    waists = (s for s in bench.garment.draft.seams if s.kind is SeamKind.WAIST and s.name not in sewn)
    return any(pieces & set(pieces_of(seam)) for seam in waists)


def _zip(bench: Bench, notion: Notion) -> None:
    edges = list(_opening(bench, notion))
    bench.do(
        "join",
        "face",
        f"with {notion.what}",
        list(dict.fromkeys([notion.piece, *(piece for piece, _ in edges)])),
        [said(key, where=notion.where) for key in SEWN[notion.kind]],
        edges=edges,
        notions=[notion_key(notion)],
        length=2 * _on_one_hand(bench, edges),
        cautions=[said("caution.fumes")] if _fused(bench) else [],
    )
    bench.also(setting=bench.settings.get((bench.garment.name, ZIP)))
    if any("stays" in step.does for step in bench.steps[-1:]):
        bench.also(zip_strip(bench, bench.steps[-1].length))


def _on_one_hand(bench: Bench, edges: list[EdgeRef]) -> float:
    """Return how long a zip's edges are on the hand where they are longest, mm."""
    draft = bench.garment.draft
    hands: dict[str, float] = {}
    for ref in edges:
        hands[draft[ref[0]].hand] = hands.get(draft[ref[0]].hand, 0.0) + draft.edge(ref).length
    return max(hands.values(), default=0.0)


def zip_strip(bench: Bench, length: float) -> Supply:
    """Return the strip that lies behind both edges of a zip: fused, or sewn where the cloth takes no fusible."""
    what = _fusible(bench.fabric) if _fused(bench) else STAY_TAPE
    return Supply("tape", what, length + STRIP_ENDS, "mm")


def _fused(bench: Bench) -> bool:
    """Return whether the strip behind a zip is fused."""
    return bench.fabric is None or handling(bench.fabric).fuses


def _fusible(fabric: Fabric | None) -> str:
    """Return what strip is bought: one that bonds at what heat the cloth bears."""
    limit = iron_limit(fabric) if fabric is not None else None
    cool = limit is not None and limit < FUSING
    return f"{FUSED_STRIP}, that bonds at one dot: no hotter on this cloth" if cool else FUSED_STRIP


FUSED_STRIP = f"fusible strip that does not stretch, {told(20.0)} wide"
STAY_TAPE = f"linen or cotton stay tape, {told(20.0)} wide"
STRIP_ENDS = 40.0
"""mm beyond the end of the opening, on both sides together (common practice)."""


def _opening(bench: Bench, notion: Notion) -> Iterator[EdgeRef]:
    """Yield the edges between which a zip lies, of both hands where each is drafted apart, and of every part
    that its piece was cut in."""
    draft = bench.garment.draft
    own = draft[notion.piece]
    yokes = {name for s in draft.seams if s.kind is SeamKind.YOKE for name in pieces_of(s)}
    for piece in draft.pieces:
        beside = piece.role is own.role and not piece.material
        yoked = {piece.name, own.name} <= yokes
        if piece is own or beside or yoked or (piece.base and piece.base == own.base):
            for edge in edges_as(piece, EdgeRole.CENTRE, EdgeRole.CENTRE_SEAM):
                if edge.kind is EdgeKind.OPENING:
                    yield piece.name, edge.name


def fold_back(bench: Bench) -> None:
    """Fold the facings grown on to an edge over the neck, and sew them across it."""
    done = {edge for step in bench.steps for edge in step.edges}
    for piece in bench.garment.draft.pieces:
        necks = [
            (piece.name, edge.name)
            for edge in edges_as(piece, EdgeRole.FACING_NECK, EdgeRole.STAND_NECK)
            if edge.kind is EdgeKind.OPENING and (piece.name, edge.name) not in done
        ]
        if necks and not piece.material and edges_as(piece, EdgeRole.FACING):
            bench.do(
                "close",
                "face",
                f"{piece.name} folded back",
                (piece.name,),
                list(_across(piece)),
                edges=[*necks, *(ref for ref in _across_hem(piece) if ref not in done)],
                length=sum(piece[name].length for _, name in necks) * hands(piece),
            )


def _across_hem(piece: Piece) -> Iterator[EdgeRef]:
    """Yield the edges at the hem that a facing sewn across it turns in."""
    for edge in edges_as(piece, EdgeRole.FACING_HEM, EdgeRole.STAND_HEM):
        if edge.kind is EdgeKind.HEM:
            yield piece.name, edge.name


def _across(piece: Piece) -> Iterator[Said]:
    inner = hands(piece) * sum(edge.length for edge in edges_as(piece, EdgeRole.FACING))
    yield said("do.fold_across", piece=piece.name, neatened=inner)
    yield said("do.turn_out")
