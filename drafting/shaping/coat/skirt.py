"""The tail settled: length, plain shape, flare, grain, and the hem's level. Coat frame, mm.

Everything that `tail_pieces` draws is decided here; no piece is made.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from drafting.body import Body
from drafting.geometry import Path, smooth, turn
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.shaping.flare.grain import SeamBias, seam_biases, warps, with_plain_seams
from drafting.shaping.flare.other_ways import Godet, godet, shaped_panels, uncut_tail
from drafting.shaping.flare.plain_tail import PlainTail, plain_tail
from drafting.shaping.flare.tail_bend import TailPanel, bent_panels, even_cuts, level_factor

WAYS = ("straight", "shaped", "godets", "uncut")
"""How the hem gets its flare."""

HEM_RISE = 20.0
"""mm on a tail of 600: how much higher the hem is at the front (ours)."""

SEAT_ROOM, MOST_SPRING = 50.0, 17.0
"""mm of ease at the seat, and degrees the plain tail may turn for it at most (ours)."""

MOST_LEAN = 60.0
"""degrees: past this a tail held open lies out flat, and no hem is level (ours)."""

LEAST_TAIL = 80.0
"""mm at adult scale: shortest tail below the waist (ours)."""


@dataclass(frozen=True)
class TailAsked:
    """What the maker asks of the tail: `flare` mm at each of panels - 1 seams, `grain`, `way`, shares
    for shaped seams and godets, whether the hem is to be level, hem over waist of the plain tail."""

    panels: int
    flare: tuple[float, ...]
    grain: str
    way: str
    shaped_from: float
    godet_height: float
    level: bool
    width: float


@dataclass(frozen=True)
class Tail:
    """The settled tail: panels from back to front with their warps (degrees, coat frame).

    `longer` is the factor on every ruling for a level hem; `turned` how far flare turns the tail,
    degrees; `lean` how far it leans out when held open; `godets` the godet of each inner seam, or None.
    """

    plain: PlainTail
    panels: tuple[TailPanel, ...]
    flare: tuple[float, ...]
    cuts: tuple[float, ...]
    warps: tuple[float, ...]
    biases: tuple[SeamBias, ...]
    godets: tuple[Godet | None, ...]
    longer: float
    turned: float
    lean: float

    @property
    def sweep(self) -> float:
        """Length of the hem from the back fold to the front edge, godets included, mm."""
        return sum(p.hem.length for p in self.panels) + sum(g.hem.length for g in self.godets if g)

    @property
    def plain_sweep(self) -> float:
        return sum(p.hem_plain for p in self.panels)


def back_drop(length: float, waist: float, scale: float) -> float:
    """Return how far the tail hangs below the waist, mm, for a length from the nape."""
    drop = length - waist
    if drop < LEAST_TAIL * scale:
        raise DraftError(
            "the tail ends above the waist or just below it",
            value=f"tail length {told(length)} from the nape",
            reach=f"from {told(waist + LEAST_TAIL * scale, 'least')}",
            turn="tail length is taken from the nape down to the hem",
        )
    return drop


def seat_spring(body: Body, waist_half: float, tail_waist: float) -> float:
    """Return how far (degrees) the plain tail turns over its whole waist, to lie over the seat.

    The tail's share of what half the hip with its ease has over the half waist, gained over the
    height from waist to hip.
    """
    room = ((body["hip_girth"] + SEAT_ROOM) / 2 - waist_half) * tail_waist / waist_half
    return min(max(0.0, math.degrees(room / max(body["waist_to_hip"], 80.0))), MOST_SPRING)


@lru_cache(maxsize=8)
def draw_plain(waist: Path, drop: float, width: float, spring: float) -> PlainTail:
    """Return the plain tail below `waist` (back to front, from 0): hem square to the back fold."""
    low, far = -1j * drop, complex(width * waist.length, (HEM_RISE / 600 - 1) * drop)
    hem = Path((smooth(low, far, 1 + 0j, turn(9)),))
    return plain_tail(waist.moved(-waist.start), hem, spring)


@lru_cache(maxsize=8)
def settle_tail(plain: PlainTail, asked: TailAsked, wrap: float) -> Tail:
    """Return the tail with its flare, grain and level; `wrap` is the azimuth it covers, radians."""
    draw = {"straight": _bent, "shaped": _swung, "godets": _let_in, "uncut": _spread}
    return draw[asked.way](plain, asked, wrap)


def _stations(plain: PlainTail, asked: TailAsked) -> tuple[tuple[float, ...], tuple[float, ...]]:
    cuts: Sequence[float] = even_cuts(plain, asked.panels)
    flare: Sequence[float] = (0.0, *asked.flare, 0.0)
    if asked.grain == "pairs":
        cuts, flare = with_plain_seams(cuts, flare)
    return tuple(cuts), tuple(flare)


def _lean(turned: float, wrap: float, level: bool) -> tuple[float, float]:
    """Return lean (degrees) and ruling factor of a tail held open."""
    if level and turned > wrap * math.sin(math.radians(MOST_LEAN)):
        raise DraftError(
            "a tail flared so far cannot have a level hem",
            value=f"it turns {math.degrees(turned):.0f} degrees where it covers {math.degrees(wrap):.0f}",
            reach=f"up to {math.degrees(wrap * math.sin(math.radians(MOST_LEAN))):.0f} degrees",
            turn="take tail hem = seam length, or less flare",
        )
    factor = level_factor(turned, wrap)
    return math.degrees(math.acos(1 / factor)), factor if level else 1.0


def _bent(plain: PlainTail, asked: TailAsked, wrap: float) -> Tail:
    cuts, flare = _stations(plain, asked)
    panels = bent_panels(plain, cuts, flare)
    lean, longer = _lean(panels[-1].turned[1], wrap, asked.level)
    if longer > 1:
        panels = bent_panels(plain, cuts, flare, longer)
    turned = math.degrees(panels[-1].turned[1])
    return _grained(plain, panels, (cuts, flare), asked.grain, (longer, turned, lean))


def _grained(
    plain: PlainTail,
    panels: tuple[TailPanel, ...],
    stations: tuple[tuple[float, ...], tuple[float, ...]],
    rule: str,
    hang: tuple[float, float, float],
    godets: tuple[Godet | None, ...] = (),
) -> Tail:
    cuts, flare = stations
    warp = warps(panels, flare, rule)
    longer, turned, lean = hang
    return Tail(
        plain=plain,
        panels=panels,
        flare=flare,
        cuts=cuts,
        warps=warp,
        biases=seam_biases(panels, warp, flare, rule),
        godets=godets,
        longer=longer,
        turned=turned,
        lean=lean,
    )


def _swung(plain: PlainTail, asked: TailAsked, wrap: float) -> Tail:
    cuts, flare = _stations(plain, asked)
    panels = shaped_panels(plain, cuts, flare, asked.shaped_from)
    turned = sum(f / plain.length_at(c) for f, c in zip(flare, cuts, strict=True))
    lean, _ = _lean(turned, wrap, False)
    return _grained(plain, panels, (cuts, flare), asked.grain, (1.0, math.degrees(turned), lean))


def _let_in(plain: PlainTail, asked: TailAsked, wrap: float) -> Tail:
    cuts, flare = _stations(plain, asked)
    panels = bent_panels(plain, cuts, [0.0] * len(cuts))
    inner = list(zip(cuts, flare, strict=True))[1:-1]
    godets = tuple(godet(asked.godet_height * plain.length_at(c), f) if f > 0 else None for c, f in inner)
    turned = sum(f / (asked.godet_height * plain.length_at(c)) for c, f in inner)
    lean, _ = _lean(turned, wrap, False)
    return _grained(plain, panels, (cuts, flare), asked.grain, (1.0, math.degrees(turned), lean), godets)


def _spread(plain: PlainTail, asked: TailAsked, wrap: float) -> Tail:
    total = sum(asked.flare)
    piece = uncut_tail(plain, total)
    lean, longer = _lean(piece.turned[1], wrap, asked.level)
    if longer > 1:
        piece = uncut_tail(plain, total, longer)
    turned = math.degrees(piece.turned[1])
    cuts, flare = (0.0, plain.width), (total / 2, total / 2)
    return Tail(
        plain=plain,
        panels=(piece,),
        flare=flare,
        cuts=cuts,
        warps=(90.0,),
        biases=(),
        godets=(),
        longer=longer,
        turned=turned,
        lean=lean,
    )
