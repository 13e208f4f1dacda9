"""Half a spat as a shoe's upper is drawn: its lines from heel to laces, its parts, where it is buttoned. Mm.

What goes round leg and shoe at each height is halved: up the back over the heel, down the front over the instep
and out over the laces as a tongue.
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Iterator
from dataclasses import dataclass

from drafting.body import Body
from drafting.draft.piece import Edge, EdgeKind, Level, Piece
from drafting.draft.roles import EdgeRole
from drafting.geometry import Path, line, smooth
from drafting.geometry.brent import brent_zero
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.shaping.details.buttons import button_row
from drafting.shaping.limbs import leg_girth_at

ANKLE, INSTEP = 0.062, 0.038
"""Of the height: where the ankle is thinnest, and where the line over heel and instep meets the laces (ours, from
memory: the bone itself lies at 0.045)."""

HEEL_OUT, FOOT = 0.06, 0.80
"""Of the heel's girth: how far the heel stands out behind the ankle, and the length of the foot (from memory: a
foot of 265 mm at a heel girth of 340)."""

TONGUE, TIP = 0.74, 24.0
"""Of foot and shoe: how far forward the tongue reaches; mm that its tip stands over the sole (ours, by eye)."""

TURNED, CLEAR = 12.0, 14.0
"""mm turned in along top, hem and laps, and how far the first and the last button stand off an end (common
practice)."""

TURNS, ROUNDED, LEAST_TURN = 15.0, 0.8, 0.05
"""mm: the least radius on which the front turns at the ankle (a hollow within its allowance has no cut line), the
share of the way to the instep on which it turns, and the radians from which it turns there at all (ours)."""


SEWN = {"front": EdgeRole.FRONT, "back": EdgeRole.BACK}
"""The edges that are sewn: over the instep, and up the heel."""


@dataclass(frozen=True)
class SpatEases:
    """How high a spat stands, and what leg and shoe are given beyond the body, mm; how far its front laps."""

    height: float
    leg: float
    shoe: float
    lap: float
    scale: float


@dataclass(frozen=True)
class SpatProfile:
    """Half a spat from heel to laces, the front to -x: its lines up the back, along the top, down the front and
    along the hem, where the buttons' line lies (x), and the two heights whose girths are counted."""

    back: Path
    front: Path
    hem: Path
    top: Path
    closing: float
    ankle: float
    counted: float

    def half(self, y: float) -> float:
        """Return half of what goes round at a height, mm."""
        return _x_at(self.back, y) - _x_at(self.front, y)


def spat_profile(body: Body, eases: SpatEases) -> SpatProfile:
    """Return the lines of a spat; raises `DraftError` where it ends below the ankle or at the knee."""
    scale = eases.scale
    height, foot = body["height"], body["heel_girth"]
    high, ankle = eases.height, ANKLE * height
    if high < ankle + 15.0 * scale:
        raise DraftError(
            "the spats end below the ankle",
            value=told(high),
            reach=f"{told(ankle + 15.0 * scale, 'least')} and more",
            turn="choose a greater spat_height",
        )
    if high > body["knee_height"] - 30.0 * scale:
        raise DraftError("the spats reach the knee", value=told(high), turn="choose a smaller spat_height")
    wa = (body["ankle_girth"] + eases.leg) / 2
    wt = max(wa, (leg_girth_at(body, body["inside_leg_length"] - high) + eases.leg) / 2)
    out, up = HEEL_OUT * foot, INSTEP * height
    across = (foot + eases.shoe) / 2
    if across <= up:
        raise DraftError("the heel girth is too small for a foot of this body", value=told(foot))
    heel = complex(out, 0)
    instep = complex(out - (across**2 - up**2) ** 0.5, up)
    tip = complex(out - TONGUE * (FOOT * foot + eases.shoe / 2), TIP * scale)
    tops = complex(0.6 * (wt - wa), high), complex(0.6 * (wt - wa) - wt, high)
    ankles = complex(0, ankle), complex(-wa, ankle)
    back = Path((smooth(heel, ankles[0], 1j, 1j), smooth(ankles[0], tops[0], 1j, tops[0] - ankles[0])))
    front = _front(tops[1], ankles[1], instep, tip, TURNS * scale)
    hem = Path((smooth(tip, heel, 1j * front.arrive, 1 + 0j, may_wave=True),))
    top = Path((smooth(back.end, front.start, 1j * back.arrive, front.leave / 1j),))
    return SpatProfile(
        back=back, top=top, front=front, hem=hem, closing=-0.42 * wa, ankle=ankle, counted=high - 12.0 * scale
    )


def _front(top: complex, ankle: complex, instep: complex, tip: complex, least: float) -> Path:
    """Return the front from the top down to the tip: narrowest at the ankle, from there round towards the instep
    on an arc of `least` mm and more, straight on, then down over the laces."""
    upper, between = smooth(top, ankle, ankle - top, -1j), instep - ankle
    slant = -cmath.phase(between / -1j)
    radius = max(least, ROUNDED * abs(between) / (2 * math.sin(slant))) if slant > LEAST_TURN else least

    def after(angle: float) -> tuple[complex, complex]:
        """Return where the arc ends after so many radians, and its way there."""
        return ankle + radius * (cmath.exp(-1j * angle) - 1), -1j * cmath.exp(-1j * angle)

    def past(angle: float) -> float:
        end, way = after(angle)
        return ((instep - end) * way.conjugate()).imag

    if slant <= LEAST_TURN or past(2 * slant) <= 0:
        way = between / abs(between) + (tip - instep) / abs(tip - instep)
        return Path((upper, smooth(ankle, instep, -1j, way), smooth(instep, tip, way, tip - instep)))
    end, way = after(brent_zero(past, 0.0, 2 * slant))
    on = line(end, instep).segments
    return Path((upper, smooth(ankle, end, -1j, way), *on, smooth(instep, tip, way, tip - instep)))


def spat_parts(p: SpatProfile, lap: float) -> Iterator[Piece]:
    """Yield the inner side, and the outer side's front and back, all with the front to -x."""
    levels = {"ankle": p.ankle, "spat_top": p.counted}
    yield _piece("spat-inner", {"back": p.back, "top": p.top, "front": p.front, "hem": p.hem}, levels, None)
    half = lap / 2
    ends = p.closing - half, p.closing + half
    low = [p.hem.split(_hem_at(p.hem, x)) for x in ends]
    high = [p.top.split(p.top.length - _hem_at(p.top.reversed(), x)) for x in ends]
    front = {"lap": line(low[1][0].end, high[1][1].start), "top": high[1][1], "front": p.front, "hem": low[1][0]}
    back = {"back": p.back, "top": high[0][0], "lap": line(high[0][0].end, low[0][1].start), "hem": low[0][1]}
    yield _piece("spat-front", front, levels, p.closing)
    yield _piece("spat-back", back, levels, p.closing)


def _hem_at(hem: Path, x: float) -> float:
    """Return how far along the hem it lies over `x`."""
    low, high = 0.0, hem.length
    for _ in range(50):
        middle = (low + high) / 2
        low, high = (middle, high) if hem.at(middle).real < x else (low, middle)
    return low


def _piece(name: str, paths: dict[str, Path], levels: dict[str, float], stops: float | None) -> Piece:
    edges = tuple(
        Edge(key, path, role=SEWN[key]) if key in SEWN else Edge(key, path, EdgeKind.HEM, allowance=TURNED)
        for key, path in paths.items()
    )
    return Piece(
        name,
        edges,
        pair=True,
        title=name.replace("-", " ").capitalize(),
        levels=tuple(_level(key, y, edges, stops) for key, y in levels.items()),
    )


def _level(name: str, y: float, edges: tuple[Edge, ...], stops: float | None) -> Level:
    """Return a level line across a part; an outer one ends on the buttons' line."""
    xs = [_x_at(edge.path, y) for edge in edges if edge.kind is EdgeKind.SEAM]
    if stops is None:
        return Level(name, (line(complex(min(xs), y), complex(max(xs), y)),))
    a, b = sorted((xs[0], stops))
    return Level(name, (line(complex(a, y), complex(b, y)),), stops=(complex(stops, y),))


def _x_at(path: Path, y: float) -> float:
    low, high = (0.0, path.length) if path.end.imag > path.start.imag else (path.length, 0.0)
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if path.at(middle).imag < y else (low, middle)
    return path.at(low).real


def spat_closing(p: SpatProfile) -> tuple[complex, complex]:
    """Return the ends, at the top and at the hem, of the line that the buttons stand on: front's on back's."""
    head = p.top.reversed()
    return head.at(_hem_at(head, p.closing)), p.hem.at(_hem_at(p.hem, p.closing))


def spat_buttons(p: SpatProfile, spacing: float) -> list[complex]:
    """Return where the buttons stand, from the top down."""
    high, foot = (end.imag for end in spat_closing(p))
    span = high - foot - 2 * CLEAR
    count = max(2, int(span / spacing + 0.999) + 1)
    return [complex(p.closing, high - CLEAR - down) for down in button_row(0.0, span, count)]
