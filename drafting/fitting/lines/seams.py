"""One seam taken in or let out where it is noted, and a level taken at its seams."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import islice

from drafting.checks.levels import width
from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.roles import EdgeRole, LevelKind
from drafting.fitting.found import Found
from drafting.fitting.lines.altered import Altered, made_exact
from drafting.fitting.lines.places import at_height, height, height_on, leg_pieces, needed, part_pieces
from drafting.fitting.lines.rise import leg_width
from drafting.fitting.lines.waist import at_heights
from drafting.ground.errors import DraftError

THIGH_DROP = 30.0
"""mm: so far below the fork a leg is taken in where no place is noted (ours: where the thigh is measured)."""


def one_seam(found: Found, taken: float) -> Altered:
    """Return the draft with both edges of a seam taken in by half of `taken` mm each, at the place noted.

    Without a place it is the waist. Raises `DraftError` where the seam does not pass there.
    """
    level = needed(found.height(LevelKind.WAIST), "waist")
    joined = found.seam()
    refs = {found.ref} if joined is None else {*joined.a, *joined.b}
    if found.at is not None:
        chains = (joined.a, joined.b) if joined is not None else ((found.ref,),)
        places = dict(_up(found.draft, chain, _above(found, level)) for chain in chains)
        return at_heights(found.draft, places, taken, hem_along=True)
    met = _passing(found.draft, sorted(refs), level)
    return at_heights(found.draft, _own(found.draft, met, LevelKind.WAIST, level), taken)


def _own(draft: Draft, refs: Sequence[EdgeRef], kind: LevelKind, level: float) -> dict[EdgeRef, float]:
    """Return the height at which a level meets each of these edges; `level` where it ends on none."""
    own = {ref: height_on(draft[ref[0]], draft.edge(ref), kind) for ref in refs}
    return {ref: level if y is None else y for ref, y in own.items()}


def _above(found: Found, level: float) -> float:
    """Return how far above the lower end of its seam a noted place lies, mm along the seam."""
    joined = found.seam()
    chain = next((c for c in (joined.a, joined.b) if found.ref in c), ()) if joined else ()
    below = [found.draft.edge(ref) for ref in chain if ref != found.ref]
    edge = found.draft.edge(found.ref)
    low = min(edge.path.start.imag, edge.path.end.imag)
    at = at_height(edge.path, level) or 0.0
    own = at if edge.path.start.imag < edge.path.end.imag else edge.length - at
    return own + math.fsum(one.length for one in below if max(one.path.start.imag, one.path.end.imag) < low + 1.0)


def _up(draft: Draft, chain: Sequence[EdgeRef], far: float) -> tuple[EdgeRef, float]:
    """Return the edge of a seam's chain that lies `far` mm above its lower end, and the height of that place."""
    rising = sorted(chain, key=lambda ref: draft.edge(ref).path.start.imag + draft.edge(ref).path.end.imag)
    for ref in rising[:-1]:
        length = draft.edge(ref).length
        if far <= length:
            break
        far -= length
    else:
        ref = rising[-1]
    path = draft.edge(ref).path
    upward = path.start.imag < path.end.imag
    return ref, path.at(min(max(far if upward else path.length - far, 0.0), path.length)).imag


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
    pieces = part_pieces(found.draft, found.part)
    level = needed(height(pieces, kind), kind.value)
    refs = [(p.name, e.name) for p in pieces for e in p.edges if e.role is EdgeRole.SIDE]
    if not refs:
        seams = (f"{p.name}.{e.name}" for p in pieces for e in p.edges if e.role in PANELS)
        example = "".join(f", as at {seam}" for seam in islice(seams, 1))
        raise DraftError("it has no side seam", turn=f"note it at the seam itself{example}")
    met = _passing(found.draft, refs, level)

    def wide(draft: Draft) -> float:
        return math.fsum(
            width(p, lv) for p in part_pieces(draft, found.part) for lv in p.levels if lv.kind is kind
        )

    own = _own(found.draft, met, kind, level)
    return made_exact(found.draft, -taken, lambda one, by: at_heights(one, own, -by), wide)


PANELS = (EdgeRole.PANEL, EdgeRole.PRINCESS)


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
