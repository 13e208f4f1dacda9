"""One seam taken in or let out where it is noted, and a level taken at its seams."""

from __future__ import annotations

import math

from drafting.checks.levels import width
from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.roles import EdgeRole, LevelKind
from drafting.fitting.found import Found
from drafting.fitting.lines.altered import Altered, made_exact
from drafting.fitting.lines.places import at_height, body_pieces, height, leg_pieces, needed
from drafting.fitting.lines.rise import leg_width
from drafting.fitting.lines.waist import at_edges
from drafting.ground.errors import DraftError

THIGH_DROP = 30.0
"""mm: so far below the fork a leg is taken in where no place is noted (ours: where the thigh is measured)."""


def one_seam(found: Found, taken: float) -> Altered:
    """Return the draft with both edges of a seam taken in by half of `taken` mm each, at the height noted.

    Without a place it is the waist. Raises `DraftError` where the seam does not pass there.
    """
    level = needed(found.height(LevelKind.WAIST), "waist")
    joined = found.seam()
    refs = {found.ref} if joined is None else {*joined.a, *joined.b}
    return at_edges(found.draft, _passing(found.draft, sorted(refs), level), taken, level)


def _passing(draft: Draft, refs: list[EdgeRef], level: float) -> list[EdgeRef]:
    """Return the edges that pass a height, or end just beside it."""
    met = [
        ref
        for ref in refs
        if at_height(draft.edge(ref).path, level) is not None
        or min(abs(p.imag - level) for p in (draft.edge(ref).path.start, draft.edge(ref).path.end)) < BESIDE
    ]
    if not met:
        raise DraftError("the seam does not pass this height", turn="note the place on it (`at`)")
    return met


BESIDE = 25.0
"""mm: a seam that ends so near a level is taken in at its end (ours)."""


def at_sides(found: Found, kind: LevelKind, taken: float) -> Altered:
    """Return the draft narrower at a level by `taken` mm on this hand, at its side seams."""
    pieces_of = leg_pieces if found.part == "leg" else body_pieces
    pieces = pieces_of(found.draft)
    level = needed(height(pieces, kind), kind.value)
    refs = [(p.name, e.name) for p in pieces for e in p.edges if e.role is EdgeRole.SIDE]
    met = _passing(found.draft, refs, level)

    def wide(draft: Draft) -> float:
        return math.fsum(width(p, lv) for p in pieces_of(draft) for lv in p.levels if lv.kind is kind)

    return made_exact(found.draft, -taken, lambda one, by: at_edges(one, met, -by, level), wide)


def noted_leg(found: Found, taken: float) -> Altered:
    """Return legs narrower by `taken` mm where it is noted: the knee, a place on the inseam, else the thigh."""
    pieces = leg_pieces(found.draft)
    knee = height(pieces, LevelKind.KNEE)
    at_knee = found.level == LevelKind.KNEE or found.measure == "knee_girth"
    if found.at is not None:
        y = needed(found.height(LevelKind.KNEE), "knee")
    elif at_knee and knee is not None:
        y = knee
    else:
        tops = [
            max(e.path.start.imag, e.path.end.imag) for p in pieces for e in p.edges if e.role is EdgeRole.INSEAM
        ]
        y = min(tops) - THIGH_DROP
    return leg_width(found.draft, y, taken)
