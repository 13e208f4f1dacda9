"""Strips along a neck, an armhole or any edge that is bound: sewn on from the right side and turned inside."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from drafting.checks.enclosed import eased
from drafting.draft.draft import Draft, EdgeRef, Seam
from drafting.draft.openings import is_ring
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.making.model import Said, said
from drafting.making.order.open_edges import finish_open, still_open, turned_in
from drafting.making.order.parts import Bench, pieces_in, pieces_of
from drafting.making.order.pressing import overedged
from drafting.making.seam_lengths import seam_lengths


def stripped(draft: Draft, facings: Sequence[Seam]) -> set[str]:
    """Return the pieces to whose neck a strip is sewn."""
    strips = [s for s in facings if any(draft[name].role is PieceRole.BINDING for name in pieces_of(s))]
    refs = (ref for seam in strips for ref in (*seam.a, *seam.b))
    return {piece for piece, edge in refs if draft[piece][edge].role is EdgeRole.NECK}


def strips_sewn_on(bench: Bench, strips: Mapping[str, Sequence[Seam]]) -> None:
    """Sew strips, by the name of each with its seams, to their edges and turn them inside."""
    lengths = seam_lengths(bench.garment)
    if strips:
        finish_open(bench, "join", "centre turned in", _turned_first(bench))
    for strip, found in strips.items():
        bench.do(
            "close",
            "face",
            f"with {strip}",
            pieces_in(found),
            list(_strip(bench, strip, found)),
            seams=[seam.name for seam in found],
            length=2 * sum(lengths[seam.name] for seam in found),
        )


def _turned_first(bench: Bench) -> list[EdgeRef]:
    """Return the straight openings that are turned in before strips cross their ends; a facing that is folded back
    over a neck's own facing waits for that."""
    waits = (EdgeRole.FACING_NECK, EdgeRole.STAND_NECK)
    opened = (ref for ref in still_open(bench) if bench.garment.draft.edge(ref).role not in waits)
    return [ref for ref in opened if turned_in(bench, ref)]


def _strip(bench: Bench, strip: str, seams: Sequence[Seam]) -> Iterator[Said]:
    """Yield how a strip is sewn to its edge, both hands of one that goes over the middle, and turned inside."""
    draft = bench.garment.draft
    edges = [ref for seam in seams for ref in (*seam.a, *seam.b) if ref[0] != strip]
    yield said("do.strip_ring" if is_ring(draft, edges) else "do.strip_ends", piece=strip)
    short = -sum(seam.ease for seam in seams) * (2 if draft[strip].fold_edge else 1)
    marks = _strip_marks(draft, strip, seams)
    if eased(short):
        yield said("do.strip_short", piece=strip, marks=marks, short=short)
    else:
        yield said("do.strip", piece=strip, marks=marks)
    setting = bench.settings.get((bench.garment.name, seams[0].name))
    yield said("do.strip_turned_neat" if overedged(setting) else "do.strip_turned")


def _strip_marks(draft: Draft, strip: str, seams: Sequence[Seam]) -> Said:
    """Return by what a strip is laid on its edge: a neck's or an armhole's by its notch at the shoulder."""
    edges = [ref for seam in seams for ref in (*seam.a, *seam.b) if ref[0] != strip]
    beside = {piece for piece, _ in edges}
    shoulder = any(s.kind is SeamKind.SHOULDER and {*pieces_of(s)} <= beside for s in draft.seams)
    if shoulder and {draft.edge(ref).role for ref in edges} <= {EdgeRole.NECK, EdgeRole.ARMHOLE}:
        return said("do.strip_at_shoulder")
    if is_ring(draft, edges):
        return said("do.strip_in_ring")
    notched = any(draft.edge(ref).notches for ref in edges)
    return said("do.strip_at_notches" if notched else "do.strip_at_ends")
