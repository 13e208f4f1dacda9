"""A place clicked on a piece, as a costume file calls it. Pure."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from drafting.draft.draft import Draft
from drafting.draft.piece import Edge, EdgeKind, Piece


@dataclass(frozen=True)
class Click:
    """A place clicked on a piece: `share` of the edge, as both hands have it; `sewn` to something, or a fold."""

    piece: Piece
    edge: Edge
    share: float
    sewn: bool

    @property
    def piece_name(self) -> str:
        """The piece, as both hands have it."""
        return self.piece.base or self.piece.name

    @property
    def edge_name(self) -> str:
        """The edge, as both hands have it."""
        return self.edge.base or self.edge.name

    @property
    def ref(self) -> str:
        """The edge with its piece."""
        return f"{self.piece_name}.{self.edge_name}"

    @property
    def dart(self) -> str:
        """What the dart is called of which the edge is a leg."""
        return self.edge.dart.dart if self.edge.dart else self.edge.name

    @property
    def upright(self) -> bool:
        """Whether the edge stands more upright than it lies level there."""
        way = self.edge.path.tangent(self.share * self.edge.length)
        return abs(way.imag) > abs(way.real)

    @property
    def place(self) -> str:
        """The place as a field says it."""
        if self.edge.kind is EdgeKind.DART:
            return f"dart {self.dart}"
        return f"{self.edge_name} {100 * self.share:.4g} %"

    @property
    def beside(self) -> str:
        """The edge that this one meets at the end nearer to the click."""
        at, count = self.piece.index(self.edge.name), len(self.piece.edges)
        other = self.piece.edges[(at + 1) % count if self.share >= 0.5 else at - 1]
        return other.base or other.name


def click_on(draft: Draft, place: Mapping[str, Any]) -> Click | None:
    """Return what was clicked on the pieces of a draft; None for an edge that it does not have."""
    name, _, edge = str(place.get("edge", "")).partition(".")
    if name not in draft or edge not in draft[name]:
        return None
    piece, own, share = draft[name], draft[name][edge], float(place["share"])
    mirrored = "right" in (own.hand, piece.hand if piece.base else "")
    sewn = any((name, edge) in (*seam.a, *seam.b) for seam in draft.seams)
    return Click(piece, own, 1 - share if mirrored else share, sewn or own.kind is EdgeKind.FOLD)
