"""A chain of edges as it runs once sewn: darts between them closed, panels joined."""

from __future__ import annotations

import math
from dataclasses import dataclass

from drafting.draft.by_role import piece_roles
from drafting.draft.draft import Draft, EdgeRef, elastic_in
from drafting.draft.piece import EdgeKind
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.geometry import Path


@dataclass(frozen=True)
class Chain:
    """Edges in the order they run, and the one path they make when laid end to end.

    The path starts where the first edge lies; each further edge is moved so that it goes on where,
    and in the direction in which, the one before ends. `sewn` is its length (mm) once gathers and
    elastic are pulled up (None: as drawn). `pieces` and `edges` are the roles of what the chain runs
    along, `lengths` what each edge has of it sewn and `drawn` as it lies flat, one for each of `refs`. `opens`
    says whether what lies beside its start, and its end, is an opening; `elastic` that all of it is turned over
    an elastic.
    """

    refs: tuple[EdgeRef, ...]
    path: Path
    sewn: float | None = None
    pieces: tuple[PieceRole, ...] = ()
    edges: tuple[EdgeRole, ...] = ()
    lengths: tuple[float, ...] = ()
    drawn: tuple[float, ...] = ()
    opens: tuple[bool, bool] = (False, False)
    elastic: bool = False

    @property
    def sewn_length(self) -> float:
        return self.path.length if self.sewn is None else self.sewn

    def mirrored(self) -> Chain:
        """Return the chain as its mirror image runs (outlines stay anticlockwise)."""
        return Chain(
            refs=self.refs[::-1],
            path=self.path.mirrored().reversed(),
            sewn=self.sewn,
            pieces=self.pieces[::-1],
            edges=self.edges[::-1],
            lengths=self.lengths[::-1],
            drawn=self.drawn[::-1],
            opens=(self.opens[1], self.opens[0]),
            elastic=self.elastic,
        )


def chain(draft: Draft, name: str) -> Chain:
    """Return the chain a draft offers by `name`. Raises KeyError naming those there are."""
    if name not in draft.chains:
        raise KeyError(f"the draft has no chain {name!r}; it has {sorted(draft.chains)}")
    refs = draft.chains[name]
    edges = [draft.edge(ref) for ref in refs]
    gathered = any(edge.sewn is not None for edge in edges)
    sewn = math.fsum(edge.sewn_length for edge in edges) if gathered else None
    path = laid_end_to_end([edge.path for edge in edges])
    roles = tuple(edge.role for edge in edges)
    lengths = tuple(edge.sewn_length for edge in edges)
    opens = _opens(draft, refs[0], -1), _opens(draft, refs[-1], 1)
    return Chain(
        refs=refs,
        path=path,
        sewn=sewn,
        pieces=tuple(piece_roles(draft, refs)),
        edges=roles,
        lengths=lengths,
        drawn=tuple(edge.length for edge in edges),
        opens=opens,
        elastic=all(elastic_in(draft, ref) is not None for ref in refs),
    )


def _opens(draft: Draft, ref: EdgeRef, step: int) -> bool:
    """Return whether the neighbour of an edge in its piece's ring is an opening."""
    piece = draft[ref[0]]
    return piece.edges[(piece.index(ref[1]) + step) % len(piece.edges)].kind is EdgeKind.OPENING


def laid_end_to_end(paths: list[Path]) -> Path:
    """Return one path; every path after the first is turned and moved to go on smoothly."""
    whole = paths[0]
    for path in paths[1:]:
        factor = whole.arrive / path.leave
        start, end = path.start, whole.end
        moved = path.mapped(lambda p, s=start, e=end, f=factor: e + (p - s) * f)  # type: ignore[misc]
        whole = Path((*whole.segments, *moved.segments))
    return whole
