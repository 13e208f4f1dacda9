"""What a fitting sheet has a line for: every seam of the mock-up, then every raw edge, with what is left in it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.roles import EdgeRole, SeamKind
from drafting.fitting.wide import lets_out

NOT_ALTERED = frozenset({SeamKind.MADE_UP, SeamKind.FACING})
"""Seams inside a cuff or a collar: it is made larger or smaller whole."""

NOT_WRITTEN = frozenset({EdgeRole.FACING, EdgeRole.FACING_NECK, EdgeRole.FACING_HEM, EdgeRole.INNER})
"""Raw edges that are folded behind: they follow what they lie behind."""


@dataclass(frozen=True)
class SeamLine:
    """One line to write on: the seam's name, its edges, and mm of allowance at the narrowest of them.

    A `dart` has none: it is pinned deeper or flatter as it stands. `hand` is the one side that it exists on,
    where all its pieces are cut for that side alone.
    """

    name: str
    edges: tuple[EdgeRef, ...]
    allowance: float

    dart: bool = False
    hand: str = ""

    @property
    def lets_out(self) -> float:
        """By how much each edge can be let out, mm, so that enough stays."""
        return lets_out(self.allowance)

    @property
    def where(self) -> str:
        """How the place is written in a fitting file."""
        return ", ".join(f"{piece}.{edge}" for piece, edge in self.edges)


def seam_lines(draft: Draft) -> tuple[SeamLine, ...]:
    """Return the lines of a fitting sheet for this mock-up, seams before raw edges."""
    seams = [
        _line(draft, s.name, (*s.a, *s.b), s.kind is SeamKind.DART)
        for s in draft.seams
        if s.kind not in NOT_ALTERED
    ]
    return (*seams, *_raw(draft))


def _raw(draft: Draft) -> Iterator[SeamLine]:
    """Yield a line for each sort of raw edge: all hems of tails together, each plain edge by itself."""
    sewn = {ref for seam in draft.seams for ref in (*seam.a, *seam.b)}
    found: dict[str, list[EdgeRef]] = {}
    for piece in draft.pieces:
        for edge in piece.edges:
            if (piece.name, edge.name) in sewn or not edge.allowance or edge.role in NOT_WRITTEN:
                continue
            plain = edge.role is EdgeRole.PLAIN
            of_it = str(edge.role).startswith(str(piece.role))  # a front's own front edge
            name = str(edge.role) if of_it else f"{piece.role} {edge.role}"
            name = f"{piece.name} {edge.name}" if plain else name
            found.setdefault(name, []).append((piece.name, edge.name))
    for name, refs in found.items():
        yield _line(draft, name, refs)


def _line(draft: Draft, name: str, refs: Iterable[EdgeRef], dart: bool = False) -> SeamLine:
    own = tuple(dict.fromkeys(refs))
    hands = {draft[piece].hand or draft.edge((piece, edge)).hand for piece, edge in own}
    least = min(draft.edge(ref).allowance or 0.0 for ref in own)
    return SeamLine(name, own, least, dart, hands.pop() if len(hands) == 1 else "")
