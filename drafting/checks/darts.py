"""Do darts close, and does a bust dart stop short of the bust point and aim at it?"""

from __future__ import annotations

import cmath
import math
from collections.abc import Iterator
from dataclasses import dataclass

from drafting.checks.words import capital, degrees, mm, plain, verdict
from drafting.draft.by_role import BUST_POINTS, dart_legs
from drafting.draft.draft import Draft
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole
from drafting.ground import tolerances as tol
from drafting.ground.findings import Finding
from drafting.ground.lengths import told

TIP_SHORT = (20.0, 35.0)
"""mm at adult scale: how far short of the bust point a bust dart ends (common practice: 20 to 35)."""


@dataclass(frozen=True, slots=True)
class OpenDart:
    """A dart open to the outline: name, tip, the middle of its mouth, both leg lengths, what it is."""

    name: str
    tip: complex
    mouth: complex
    legs: tuple[float, float]
    role: EdgeRole


def darts_of_outline(piece: Piece) -> list[OpenDart]:
    """Return the darts of `piece` that open to its outline: two legs that meet in a tip."""
    return [
        OpenDart(
            into.dart.dart if into.dart else into.name,
            into.path.end,
            (into.path.start + out.path.end) / 2,
            (into.length, out.length),
            into.role,
        )
        for into, out in dart_legs(piece)
    ]


def dart_legs_equal(draft: Draft) -> Iterator[Finding]:
    """Are the two legs of every dart equally long?"""
    for piece in draft.pieces:
        inner = [(d.name, (d.leg_a.length, d.leg_b.length)) for d in piece.darts]
        for name, (a, b) in [*((d.name, d.legs) for d in darts_of_outline(piece)), *inner]:
            holds = abs(a - b) <= tol.LEG_MATCH
            said = f"{capital(plain(piece.name))} {plain(name)}: legs {mm(a)} and {mm(b)}"
            if not holds:
                said += f", they differ by {mm(abs(a - b))} (tolerance {mm(tol.LEG_MATCH)})"
            yield verdict("dart legs", holds, f"{piece.name}.{name}", a, b, said)


def bust_dart_tips(draft: Draft, scale: float) -> Iterator[Finding]:
    """Does the bust dart end 20-35 mm (adult scale) short of the bust point, and aim at it?"""
    for piece in draft.pieces:
        bust_points = [piece.points[name] for name in BUST_POINTS if name in piece.points]
        for dart in darts_of_outline(piece) if bust_points else ():
            if dart.role is EdgeRole.BUST_DART:
                tip = dart.tip
                yield from _tip(piece.name, dart, min(bust_points, key=lambda p: abs(p - tip)), scale)


def _tip(piece: str, dart: OpenDart, bust_point: complex, scale: float) -> Iterator[Finding]:
    where, name = f"{piece}.{dart.name}", f"{capital(plain(piece))} {plain(dart.name)}"
    short = abs(bust_point - dart.tip)
    low, high = (end * scale for end in TIP_SHORT)
    holds = low - tol.EXACT <= short <= high + tol.EXACT
    band = f"{told(low)} to {told(high)}"
    said = f"{name}: ends {mm(short)} from the bust point ({band} is wanted)"
    wanted = f"{low:g} to {high:g}"
    yield Finding("dart tip", "ok" if holds else "error", where, short, wanted, said)
    if short > tol.EXACT:
        aim = (bust_point - dart.tip) / (dart.tip - dart.mouth)
        off = abs(math.degrees(cmath.phase(aim)))
        said = f"{name}: aims {degrees(off)} past the bust point"
        yield verdict("dart aim", off <= tol.DART_AIM, where, off, 0.0, said)
