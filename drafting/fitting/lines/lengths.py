"""Longer or shorter: the body above the waist, what hangs below it, a sleeve, a leg.

Each is opened on lines square to the grain, the same in front and behind (common practice): a sleeve and
a leg half above and half below the joint, so that elbow and knee stay in the middle of what was added.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from drafting.draft.by_role import dart_legs
from drafting.draft.draft import Draft
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole, LevelKind, PieceRole
from drafting.fitting.lines.altered import Altered, carried_out
from drafting.fitting.lines.longer import Zone, lengthened
from drafting.fitting.lines.places import body_pieces, height, leg_pieces, needed, sleeve_pieces
from drafting.ground.errors import DraftError

CLEAR = 2.0
"""mm: a zone that is opened keeps so far from a dart, a slit or a level (ours)."""


LENGTH_CHOSEN = (
    "write the garment's own (skirt_length, cape_length, peplum_length, coat_length, tail_length) longer or "
    "shorter by as much, and every seam, lining and hem follows"
)
"""What to do where a length is a choice of the draft, and no alteration of its lines."""


def waist_level(draft: Draft, more: float) -> Altered:
    """Return a body with the waist lower by `more` mm, all round; bust and armhole stay.

    What is sewn at the waist goes down as it is: it is opened above the highest place of a waist that slopes.
    """
    body = body_pieces(draft)
    top, low = needed(height(body, LevelKind.BUST), "bust"), needed(height(body, LevelKind.WAIST), "waist")
    low = max([low, *(e.path.bounds[3] for p in body for e in p.edges if e.role is EdgeRole.WAIST)])
    zone = clear(body, top, low, more)
    facts = {"front_waist_length": more, "back_waist_length": more}
    return carried_out(draft, [lengthened(p, (zone,)) for p in body], _why("waist level", more), facts)


def body_length(draft: Draft, more: float) -> Altered:
    """Return a body longer below the waist by `more` mm; the waist stays, and all of a hem goes down as it is."""
    body = body_pieces(draft)
    if any(piece.role is PieceRole.TAIL for piece in draft.pieces):
        raise DraftError(
            "the tails beside it have to be as long", turn="write tail_length longer or shorter by as much"
        )
    if not any(level.kind is LevelKind.WAIST for piece in body for level in piece.levels):
        raise DraftError("what hangs from the neck alone has no waist to be longer below", turn=LENGTH_CHOSEN)
    top = needed(height(body, LevelKind.WAIST), "waist")
    hems = {p.name: [e.path.bounds[3] for e in p.edges if e.role is EdgeRole.HEM] for p in body}
    if not any(hems.values()) or min(min(ys) for ys in hems.values() if ys) > top - 4 * CLEAR:
        raise DraftError(
            "this body ends at the waist: there is nothing below it to lengthen", turn="note it at the waist level"
        )
    highest = max(max(ys) for ys in hems.values() if ys)
    zones = {p.name: clear([p], top - CLEAR, max(hems[p.name], default=highest) + CLEAR, more) for p in body}
    return carried_out(draft, [lengthened(p, (zones[p.name],)) for p in body], _why("hem", more))


def sleeve_length(draft: Draft, more: float) -> Altered:
    """Return a sleeve longer by `more` mm, half of it above the elbow and half below; the cap stays."""
    pieces = sleeve_pieces(draft)
    top = needed(height(pieces, LevelKind.UPPER_ARM), "upper arm")
    return _limb(draft, pieces, (top, height(pieces, LevelKind.ELBOW)), more, "sleeve length")


def leg_length(draft: Draft, more: float) -> Altered:
    """Return legs longer by `more` mm, half of it above the knee and half below; the rise stays."""
    pieces = leg_pieces(draft)
    forks = [p[e].path.start.imag for p in pieces for e in _names(p, EdgeRole.INSEAM)]
    forks += [p[e].path.end.imag for p in pieces for e in _names(p, EdgeRole.INSEAM)]
    tops = sorted(forks)[len(forks) // 2 :]
    return _limb(draft, pieces, (min(tops), height(pieces, LevelKind.KNEE)), more, "leg length")


def _limb(
    draft: Draft, pieces: Sequence[Piece], at: tuple[float, float | None], more: float, what: str
) -> Altered:
    top, joint = at
    low = max(_ends(pieces)) + CLEAR
    zones: tuple[Zone, ...] = (clear(pieces, top - CLEAR, low, more),)
    if joint is not None and low < joint - 10 * CLEAR:
        above = clear(pieces, top - CLEAR, joint + CLEAR, more / 2)
        zones = (above, clear(pieces, joint - CLEAR, low, more / 2))
    return carried_out(draft, [lengthened(p, zones) for p in pieces], _why(what, more))


def _ends(pieces: Iterable[Piece]) -> list[float]:
    """Return the heights at which the open ends of a limb begin: its hem, a vent, a slit."""
    last = {EdgeRole.HEM, EdgeRole.VENT, EdgeRole.SLIT}
    return [y for p in pieces for e in p.edges if e.role in last for y in (e.path.start.imag, e.path.end.imag)]


def _names(piece: Piece, role: EdgeRole) -> list[str]:
    return [edge.name for edge in piece.edges if edge.role is role]


def clear(pieces: Iterable[Piece], top: float, low: float, more: float) -> Zone:
    """Return the zone between two heights, or the larger part of it that no sideways dart opens into."""
    for piece in pieces:
        for into, out in dart_legs(piece):
            mouth = out.path.end - into.path.start
            if abs(mouth.imag) <= abs(mouth.real):
                continue
            ys = [into.path.start.imag, into.path.end.imag, out.path.end.imag]
            high, deep = max(ys) + CLEAR, min(ys) - CLEAR
            if high > low and deep < top:
                top, low = (top, high) if top - high > deep - low else (deep, low)
    return Zone(top, low, more)


def _why(what: str, more: float) -> str:
    return f"{what} {'lengthened' if more > 0 else 'shortened'}"
