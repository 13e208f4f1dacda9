"""Edges that run on in one once the garment is sewn: in their order, and what lies at the two ends."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from drafting.draft.draft import Draft, EdgeRef, Seam, elastic_in
from drafting.draft.named import edge_named, piece_named
from drafting.draft.piece import Edge, EdgeKind
from drafting.draft.roles import EdgeRole, SeamKind
from drafting.ground.errors import DraftError
from drafting.ground.names import name_in_words

FLAT_SEAMS = frozenset(
    {SeamKind.DART, SeamKind.PANEL, SeamKind.PRINCESS, SeamKind.LAID_PLEAT, SeamKind.YOKE, SeamKind.PLEAT}
)
"""Seams over which a facing is one piece (common practice); at sides and shoulders it has seams of its own."""


class RunEnd(StrEnum):
    """What lies at an end of a run of edges."""

    FREE = "free"
    FOLD = "fold"
    MIRROR = "mirror"
    OTHER_END = "other end"


@dataclass(frozen=True)
class SewnRun:
    """Edges that run on one after the other in outline order, with what lies at their `start` and their `end`."""

    refs: tuple[EdgeRef, ...]
    start: RunEnd
    end: RunEnd

    @property
    def closed(self) -> bool:
        """Whether they make a ring once sewn: by themselves, or with their mirror image."""
        return RunEnd.FREE not in (self.start, self.end)


def beside_edge(draft: Draft, ref: EdgeRef, step: int) -> EdgeRef:
    """Return the neighbour of an edge in its piece: the one after it (1) or before it (-1)."""
    piece = draft[ref[0]]
    return ref[0], piece.edges[(piece.index(ref[1]) + step) % len(piece.edges)].name


def sewn_run(draft: Draft, wanted: Sequence[EdgeRef]) -> SewnRun:
    """Return edges as they run on; raises `DraftError` for one that is sewn to something, or lies apart."""
    for ref in wanted:
        _refuse(draft, ref)
    refs, seen = list(dict.fromkeys(wanted)), []
    afters = {
        ref: next((o for o in refs if o != ref and joined_by(draft, ref, o) is not None), None) for ref in refs
    }
    firsts = [ref for ref in refs if ref not in afters.values()] or refs[:1]
    at: EdgeRef | None = firsts[0]
    while at is not None and at not in seen:
        seen.append(at)
        at = afters[at]
    if len(seen) < len(refs):
        lost = next(ref for ref in refs if ref not in seen)
        raise DraftError(
            f"{_words(lost)} does not run on from {_words(seen[-1])}",
            turn="name edges that meet at a seam, or make a piece for each",
        )
    return SewnRun(tuple(seen), _end(draft, seen, -1), _end(draft, seen, 1))


def joined_by(draft: Draft, one: EdgeRef, other: EdgeRef) -> Seam | str | None:
    """Return the seam over which `other` runs on from `one`, "" where they meet in a corner, else None."""
    after, before = beside_edge(draft, one, 1), beside_edge(draft, other, -1)
    if after == other and before == one and one[0] == other[0]:
        return ""
    return next((s for s in draft.seams if _sewn_together(s, after, before)), None)


def flat_parts(draft: Draft, run: SewnRun) -> list[tuple[EdgeRef, ...]]:
    """Return the stretches of a run over which a facing is one piece."""
    parts = [run.refs[:1]]
    for ref in run.refs[1:]:
        seam = joined_by(draft, parts[-1][-1], ref)
        if isinstance(seam, Seam) and seam.kind in FLAT_SEAMS:
            parts[-1] = (*parts[-1], ref)
        else:
            parts.append((ref,))
    return parts


def _sewn_together(seam: Seam, one: EdgeRef, other: EdgeRef) -> bool:
    return (one in seam.a and other in seam.b) or (one in seam.b and other in seam.a)


def _end(draft: Draft, refs: Sequence[EdgeRef], step: int) -> RunEnd:
    ends = beside_edge(draft, refs[0], -1), beside_edge(draft, refs[-1], 1)
    here, there = ends if step < 0 else ends[::-1]
    if draft.edge(here).kind is EdgeKind.FOLD:
        return RunEnd.FOLD
    for seam in draft.seams:
        if here in seam.a and seam.a == seam.b:
            return RunEnd.MIRROR
        if here != there and _sewn_together(seam, here, there):
            return RunEnd.OTHER_END
    return RunEnd.FREE


def _refuse(draft: Draft, ref: EdgeRef) -> None:
    piece = piece_named(draft, ref[0])
    edge: Edge = edge_named(piece, ref[1])
    if edge.twin or (edge.role is EdgeRole.INNER and any(one.twin for one in piece.edges)):
        raise DraftError(
            f"{_words(ref)} lies inside the {name_in_words(ref[0])} once that is folded and sewn down",
            turn="name an edge that stays in sight",
        )
    if edge.kind in (EdgeKind.DART, EdgeKind.FOLD):
        raise DraftError(f"{_words(ref)} is a {edge.kind}, which nothing is sewn along", turn="name another edge")
    if elastic_in(draft, ref):
        raise DraftError(
            f"{_words(ref)} is turned over an elastic, which lies in its own casing", turn="name another edge"
        )
    for seam in draft.seams:
        if ref in (*seam.a, *seam.b):
            raise DraftError(
                f"{_words(ref)} is sewn to something already ({seam.name})", turn="name an edge that is still free"
            )


def _words(ref: EdgeRef) -> str:
    return f"the {name_in_words('.'.join(ref))}"
