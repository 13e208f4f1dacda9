"""Tests of where a note lies, as the table of alterations asks them."""

from __future__ import annotations

from collections.abc import Callable

from drafting.draft.roles import EdgeRole, LevelKind, PieceRole, SeamKind
from drafting.fitting.found import Found

IsMeant = Callable[[Found], bool]
"""Says whether an alteration is meant by a note that lies here."""


def edge(*roles: EdgeRole, part: str = "trunk", behind: bool | None = None) -> IsMeant:
    """Return a test for a note at an edge of one of these roles, on this part of the garment."""

    def meant(found: Found) -> bool:
        here = found.edge is not None and found.part == part and found.edge.role in roles
        return here and (behind is None or found.behind == behind)

    return meant


def piece(part: str, *roles: PieceRole) -> IsMeant:
    """Return a test for a note at a whole piece of a part, of one of these roles where any is given."""

    def meant(found: Found) -> bool:
        whole = found.piece is not None and found.edge is None and found.part == part
        return whole and found.piece is not None and (not roles or found.piece.role in roles)

    return meant


def level(part: str, kind: LevelKind) -> IsMeant:
    """Return a test for a note at a level of a part."""
    return lambda found: found.part == part and found.level == kind


def measure(part: str, *names: str) -> IsMeant:
    """Return a test for a note at a measure of the body, on a part of the garment."""
    return lambda found: found.part == part and found.measure in names


def in_the_middle(found: Found) -> bool:
    """Return whether a note lies at a seam that joins both hands of a body."""
    seam = found.seam() if found.edge is not None else None
    return found.part == "trunk" and seam is not None and seam.kind is SeamKind.CENTRE
