"""A skirt in tiers: straight strips, each gathered to the one above, the first to the waist. mm.

Each tier is drawn where it hangs, the waist level at y = 0; its width is shared over as many strips as the
cloth asks for, the middle one on the fold.
"""

from __future__ import annotations

import itertools
from dataclasses import dataclass

from drafting.draft.draft import Seam, SeamNotch
from drafting.draft.frame import BodyFrame, BodyHeight, Limb
from drafting.draft.piece import Edge, EdgeKind, Level, Piece
from drafting.draft.roles import EdgeRole, Half, LevelKind, NotchKind, PieceRole, SeamKind
from drafting.geometry import line
from drafting.shaping.flare.fullness import QUARTERS
from drafting.shaping.skirt.plan import SkirtPlan

ROOM = 70.0
"""mm: what a strip needs of the cloth's width for its allowances (ours: two of 35, let out too)."""

DEEPER = 1.12
"""How much deeper each tier is than the one above it (common practice: the lowest is the deepest)."""


@dataclass(frozen=True)
class Tier:
    """Half a tier: where it hangs, how wide it is cut, and the widths of its strips, from the fold on."""

    number: int
    top: float
    low: float
    width: float
    gathered: float
    strips: tuple[float, ...]

    @property
    def depth(self) -> float:
        return self.top - self.low


def tiers(plan: SkirtPlan, count: int, ratio: float, first: float) -> tuple[Tier, ...]:
    """Return the tiers: `ratio` is how much wider each is than what it is gathered to, `first` to the waist."""
    shares = [DEEPER**k for k in range(count)]
    depths = [plan.length * share / sum(shares) for share in shares]
    need = plan.zip + 30.0 * plan.scale
    if count > 1 and depths[0] < need < 0.6 * plan.length:
        depths = [need, *(d * (plan.length - need) / sum(depths[1:]) for d in depths[1:])]
    found: list[Tier] = []
    top, sewn = 0.0, plan.waist
    for k, depth in enumerate(depths):
        wide = max(sewn * (ratio if k else first), plan.hip if not k else 0.0)
        found.append(Tier(k + 1, top, top - depth, wide, sewn, _strips(wide, plan.width - ROOM)))
        top, sewn = top - depth, wide
    return tuple(found)


def _strips(wide: float, room: float) -> tuple[float, ...]:
    """Return the widths of half a tier's strips from the fold: two alike, or as many as the cloth needs."""
    if wide <= room:
        return wide / 2, wide / 2
    count = 3
    while 2 * wide / (2 * count - 1) > room:
        count += 1
    each = 2 * wide / (2 * count - 1)
    return (each / 2, *(each,) * (count - 1))


def tier_pieces(plan: SkirtPlan, tier: Tier, last: bool) -> tuple[Piece, ...]:
    """Return the strips of a tier from centre front to centre back; the folded one lies where nothing opens."""
    widths = tier.strips if plan.behind else tier.strips[::-1]
    places = list(itertools.accumulate(widths, initial=0.0))
    count = len(widths)
    names = ("front", "back") if count == 2 else ("front", *(f"side-{k}" for k in range(1, count - 1)), "back")
    return tuple(
        _strip(plan, tier, name, (places[k], places[k + 1]), (k, count), last) for k, name in enumerate(names)
    )


def _strip(
    plan: SkirtPlan, tier: Tier, name: str, between: tuple[float, float], at: tuple[int, int], last: bool
) -> Piece:
    (x0, x1), (k, count) = between, at
    low, high = 1j * tier.low, 1j * tier.top
    first, final = k == 0, k == count - 1
    gathers = tier.gathered * (x1 - x0) / tier.width
    front = Edge("front", line(x0 + high, x0 + low), role=_role(k, count))
    back = Edge("back", line(x1 + low, x1 + high), role=_role(k + 1, count))
    if first:
        front = _middle(front, Half.FRONT, plan.behind)
    if final:
        back = _middle(back, Half.BACK, not plan.behind)
    top = Edge("top", line(x1 + high, x0 + high), sewn=gathers)
    below = Edge("hem", line(x0 + low, x1 + low), EdgeKind.HEM, role=EdgeRole.HEM)
    if tier.number == 1:
        top = Edge("waist", top.path, EdgeKind.OPENING, sewn=gathers, role=EdgeRole.WAIST)
    if not last:
        below = Edge("below", below.path, role=EdgeRole.YOKE)
    hip = -1j * plan.rise
    hips = (Level("hip", (line(x0 + hip, x1 + hip),), LevelKind.HIP),)
    return Piece(
        f"tier-{tier.number}-{name}",
        (front, below, back, top),
        levels=hips if tier.low <= -plan.rise < tier.top else (),
        pair=not any(e.kind is EdgeKind.FOLD for e in (front, back)),
        title=f"Tier {tier.number}, {name.replace('-', ' ')}",
        role=PieceRole.FRONT if 2 * k < count else PieceRole.BACK,
        place=tier.number,
        frame=BodyFrame(limb=Limb.TRUNK, heights=((BodyHeight.WAIST, complex((x0 + x1) / 2, 0.0)),)),
    )


def _role(place: int, count: int) -> EdgeRole:
    return EdgeRole.SIDE if 2 * place == count else EdgeRole.PANEL


def _middle(edge: Edge, half: Half, fold: bool) -> Edge:
    kind = EdgeKind.FOLD if fold else EdgeKind.SEAM
    return Edge("centre", edge.path, kind, role=EdgeRole.CENTRE, half=half)


def tier_seams(found: tuple[tuple[Piece, ...], ...]) -> tuple[Seam, ...]:
    """Return the seams between the strips of each tier, and of each tier to the one above."""
    seams = [
        Seam(
            f"{one.title.split(',')[0].lower()} side {k + 1}",
            ((one.name, "back"),),
            ((other.name, "front"),),
            kind=SeamKind.SIDE if 2 * (k + 1) == len(row) else SeamKind.PANEL,
        )
        for row in found
        for k, (one, other) in enumerate(itertools.pairwise(row))
    ]
    for number, (above, below) in enumerate(itertools.pairwise(found), 1):
        tops = tuple((piece.name, "top") for piece in reversed(below))
        lows = tuple((piece.name, "below") for piece in reversed(above))
        flat = sum(piece["top"].length for piece in below)
        sewn = sum(piece["below"].length for piece in above)
        marks = tuple(
            SeamNotch(f"quarter_{i}", share * flat, share * sewn, kind=NotchKind.QUARTER)
            for i, share in enumerate(QUARTERS, 1)
        )
        seams.append(
            Seam(
                f"tier {number} to tier {number + 1}",
                tops,
                lows,
                start=None,
                end=None,
                notches=marks,
                kind=SeamKind.YOKE,
            )
        )
    return tuple(seams)
