"""What every rule asks of the steps of one garment: where a seam is sewn, what a step lies on."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from drafting.costume.garment import MadeGarment
from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.piece import EdgeKind
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.fabric import Fabric
from drafting.making.model import Step

OrderRule = Callable[[MadeGarment, Fabric | None, Sequence[Step]], Iterator[str]]
"""Reads the steps of one garment in their order and yields what breaks it, in words."""

HANGS = 24.0
"""Hours that a bias hangs, at least (common practice)."""


def steps_where(steps: Sequence[Step], holds: Callable[[Step], bool]) -> list[int]:
    """Return where the steps stand for which something holds."""
    return [i for i, step in enumerate(steps) if holds(step)]


def sewn_at(steps: Sequence[Step], seam: str) -> int:
    """Return where a seam is sewn; after all steps where it is not."""
    return next(iter(steps_where(steps, lambda step: seam in step.seams)), len(steps))


def pieces_on(step: Step, garment: MadeGarment) -> set[str]:
    return {piece.removeprefix(f"{garment.name}.") for piece in step.pieces}


def pieces_joined(*chains: Sequence[EdgeRef]) -> set[str]:
    return {piece for chain in chains for piece, _ in chain}


def chains_of(draft: Draft, seam: str) -> tuple[Sequence[EdgeRef], Sequence[EdgeRef]]:
    return next(((s.a, s.b) for s in draft.seams if s.name == seam), ((), ()))


def roles_of(draft: Draft, seam: str) -> set[PieceRole]:
    return {draft[piece].role for piece in pieces_joined(*chains_of(draft, seam))}


def is_hem(draft: Draft, ref: EdgeRef) -> bool:
    return draft.edge(ref).kind is EdgeKind.HEM and draft.edge(ref).role is EdgeRole.HEM
