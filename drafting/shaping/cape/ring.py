"""A cape's half as pieces: whole with a dart on the shoulder, or front and back, each in as few panels as lie on
the cloth. mm.

Each piece is drawn with its middle upright, or its own middle; neck and hem meet the middles square.
"""

from __future__ import annotations

import cmath
import itertools
import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.draft.draft import Seam, SeamNotch
from drafting.draft.frame import BodyFrame, BodyHeight, Limb
from drafting.draft.piece import Edge, EdgeKind, Level, Piece
from drafting.draft.roles import EdgeRole, Half, PieceRole, SeamKind
from drafting.geometry import Path, line, smooth, unit
from drafting.geometry.arc import arc
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.shaping.cape.plan import CapePlan
from drafting.shaping.torso.dart_mouth import dart_edges, dart_seams

ROOM = 90.0
"""mm: what a piece needs of the cloth's width beside its own (ours: the front's turned edge and a seam)."""

MOST_PANELS = 5
"""More panels than this in the front or the back of half a cape are refused (ours)."""

ROUNDED = 0.45
"""Of the shoulder's wedge: over so much to either side of its tip a shoulder seam is rounded (ours, by eye)."""

FRONT_TURNED = 40.0
"""mm: turned inside along the front (common practice: 30 to 50)."""

SHOULDERS = "shoulders"
"""What the level over the arms is called."""


@dataclass(frozen=True)
class PanelCut:
    """A panel from `start` to `end`, in front or `behind`: -1 is the middle in front, 0 the shoulder, 1 behind."""

    start: float
    end: float
    behind: bool
    name: str
    title: str
    place: int


def cape_pieces(
    plan: CapePlan, width: float, *, dart: bool, both: CapePlan
) -> tuple[tuple[Piece, ...], tuple[Seam, ...]]:
    """Return the pieces from the middle in front to the middle behind, and the seams between them.

    With `dart` it is one piece, where such a piece lies on cloth of this usable `width`. The last piece is on
    the fold where it can be: `both` is what the two hands share, which says it. Raises `DraftError` where no
    panel is narrow enough.
    """
    if dart:
        whole = _whole(plan)
        if 2 * _across(whole) <= width - ROOM and _parts_behind(_whole(both)):
            return (whole,), tuple(dart_seams(whole))
    pieces = (*_panels(plan, False, width, both), *_panels(plan, True, width, both))
    return pieces, tuple(_between(one, other) for one, other in itertools.pairwise(pieces))


def _between(one: Piece, other: Piece) -> Seam:
    """Return the seam of two neighbours, the second behind the first."""
    back = one.edges[one.index("hem") + 1]
    shoulder = back.role is EdgeRole.SHOULDER
    places = [(f"balance {k}", back.length * k / 3) for k in (1, 2)]  # a panel's side hangs on no body level
    return Seam(
        "shoulder" if shoulder else f"{one.name} to {other.name}",
        ((one.name, back.name),),
        ((other.name, other.edges[0].name),),
        notches=tuple(SeamNotch(name, at, at) for name, at in places),
        kind=SeamKind.SHOULDER if shoulder else SeamKind.PANEL,
    )


# ------------------------------------------------------------------------------------------- one piece


def _whole(plan: CapePlan) -> Piece:
    """Return half the cape in one piece on the fold behind, its dart open at the neck."""
    tip = plan.tip * plan.ray(plan.front)
    legs = line(plan.neck_at(True, 1.0), tip), line(tip, plan.neck_at(False, 1.0))
    edges = (
        _front(plan),
        _hem(plan, -1.0, 1.0),
        _back(plan, EdgeKind.FOLD),
        replace(_neck(plan, True, 0.0, 1.0), name="neck_back"),
        *(dart_edges("shoulder_dart", EdgeRole.SHOULDER, *legs) if plan.wedge else ()),
        replace(_neck(plan, False, -1.0, 0.0), name="neck_front"),
    )
    start, half = plan.arms * plan.ray(0.0), plan.half
    piece = Piece(
        "cape",
        edges,
        levels=(Level(SHOULDERS, (arc(0j, start, half),)),),
        title="Cape",
        role=PieceRole.BACK,
        frame=_frame(plan.neck_at(True, 0.0), plan.neck_at(False, 0.0)),
    )
    return _upright(piece, plan.ray(plan.half))


def _frame(*places: complex) -> BodyFrame:
    """Return how a piece hangs from the neck: each edge there ends at one of the places."""
    return BodyFrame(limb=Limb.HANGS, heights=tuple((BodyHeight.NAPE, at) for at in places))


# ---------------------------------------------------------------------------------------------- panels


def _panels(plan: CapePlan, behind: bool, width: float, both: CapePlan) -> tuple[Piece, ...]:
    """Return the fewest panels of the front, or the back, that the cloth takes, from the front backwards."""
    room, narrowest = width - ROOM, math.inf
    for count in range(1, MOST_PANELS + 1):
        cuts = list(_cuts(behind, count))
        panels = [_panel(plan, cut) for cut in cuts]
        widest = max(map(_across, panels))
        if widest <= room:
            if behind and 2 * _across(panels[-1]) <= room and _parts_behind(_panel(both, cuts[-1])):
                panels[-1] = _panel(plan, cuts[-1], fold=True)
            return tuple(panels)
        narrowest = min(narrowest, widest)
    raise DraftError(
        "the cape is too long for this cloth, whatever its panels",
        value=told(width),
        reach=f"{told(narrowest + ROOM, 'least')} of usable width",
        turn="choose wider cloth, or a shorter cape",
    )


def _cuts(behind: bool, count: int) -> Iterator[PanelCut]:
    word, first = ("back", 0.0) if behind else ("front", -1.0)
    for k in range(count):
        number = f" {k + 1}" if count > 1 else ""
        name = f"cape-{word}{number}".replace(" ", "-")
        yield PanelCut(first + k / count, first + (k + 1) / count, behind, name, f"Cape {word}{number}", k + 1)


def _panel(plan: CapePlan, cut: PanelCut, *, fold: bool = False) -> Piece:
    """Return a panel; the one on the middle stands upright with it, another with its own middle."""
    start, end = cut.start, cut.end
    ahead = _front(plan) if start == -1.0 else _side(plan, cut, start, "front")
    if end == 1.0:
        behind = _back(plan, EdgeKind.FOLD if fold else EdgeKind.SEAM)
    else:
        side = _side(plan, cut, end, "back")
        behind = replace(side, path=side.path.reversed())
    piece = Piece(
        cut.name,
        (ahead, _hem(plan, start, end), behind, _neck(plan, cut.behind, start, end)),
        levels=(_level(plan, cut),),
        pair=not fold,
        title=cut.title,
        role=PieceRole.BACK if cut.behind else PieceRole.FRONT,
        place=cut.place,
        frame=_frame(_neck_at(plan, cut.behind, end if cut.behind else start)),
    )
    middle = 1.0 if end == 1.0 else -1.0 if start == -1.0 else (start + end) / 2
    return _upright(piece, plan.ray(_way(plan, middle)))


def _side(plan: CapePlan, cut: PanelCut, at: float, name: str) -> Edge:
    """Return a side of a panel, running down."""
    if at == 0.0:
        return Edge("shoulder", _shoulder(plan, cut.behind), role=EdgeRole.SHOULDER)
    return Edge(name, line(*_ends(plan, cut.behind, at)), role=EdgeRole.PANEL)


def _shoulder(plan: CapePlan, behind: bool) -> Path:
    """Return the shoulder seam's edge from the neck down to the hem, rounded over the shoulder's bone."""
    ray = plan.ray(plan.front)
    neck, tip, hem = plan.neck_at(behind, 1.0), plan.tip * ray, plan.outer * ray
    if not plan.wedge:
        return line(neck, hem)
    way = unit(tip - neck)
    over = min(ROUNDED * plan.leg, 0.9 * abs(hem - tip))
    bend = smooth(tip - over * way, tip + over * ray, way, ray)
    return Path((*line(neck, tip - over * way).segments, bend, *line(tip + over * ray, hem).segments))


# ------------------------------------------------------------------------------------------ what they share


def _way(plan: CapePlan, at: float) -> float:
    """Return the angle of a place between -1 and 1, degrees from the middle in front."""
    return plan.front + at * (plan.back if at > 0 else plan.front)


def _neck_at(plan: CapePlan, behind: bool, at: float) -> complex:
    return plan.neck_at(behind, 1 - abs(at))


def _ends(plan: CapePlan, behind: bool, at: float) -> tuple[complex, complex]:
    """Return where a seam at this place meets neck and hem."""
    return _neck_at(plan, behind, at), plan.outer * plan.ray(_way(plan, at))


def _front(plan: CapePlan) -> Edge:
    """Return the middle in front, running down: it opens."""
    path = line(*_ends(plan, False, -1.0))
    return Edge(
        "centre_front", path, EdgeKind.OPENING, role=EdgeRole.CENTRE, half=Half.FRONT, allowance=FRONT_TURNED
    )


def _back(plan: CapePlan, kind: EdgeKind) -> Edge:
    path = line(*_ends(plan, True, 1.0)).reversed()
    return Edge("centre_back", path, kind, role=EdgeRole.CENTRE, half=Half.BACK)


def _hem(plan: CapePlan, start: float, end: float) -> Edge:
    one, two = _way(plan, start), _way(plan, end)
    return Edge("hem", arc(0j, plan.outer * plan.ray(one), two - one), EdgeKind.HEM, role=EdgeRole.HEM)


def _neck(plan: CapePlan, behind: bool, start: float, end: float) -> Edge:
    """Return the neck between two places; it runs from behind forwards."""
    angle = (plan.back if behind else plan.front) + plan.wedge
    path = arc(plan.neck_middle(behind), _neck_at(plan, behind, end), (start - end) * angle)
    return Edge("neck", path, role=EdgeRole.NECK)


def _level(plan: CapePlan, cut: PanelCut) -> Level:
    """Return the level over the arms: an arc round the middle of the ring, from side to side of a panel."""
    one, two = (_met(plan, cut, at) for at in (cut.start, cut.end))
    return Level(SHOULDERS, (arc(0j, one, math.degrees(cmath.phase(two / one)) % 360),))


def _met(plan: CapePlan, cut: PanelCut, at: float) -> complex:
    """Return where the level meets a panel's side: on the ray of middle and shoulder, else on the seam."""
    if abs(at) in (0.0, 1.0):
        return plan.arms * plan.ray(_way(plan, at))
    a, b = _ends(plan, cut.behind, at)
    way = unit(b - a)
    along = (a.conjugate() * way).real
    return a + way * (-along + math.sqrt(along**2 - abs(a) ** 2 + plan.arms**2))


def _parts_behind(piece: Piece) -> bool:
    """Return whether a piece on the fold lies on one side of it alone, its front clear of the other hand's."""
    middle = piece["centre_back"].path.start.real
    ahead = piece["centre_front"].path if "centre_front" in piece else piece.edges[0].path
    clear = max(ahead.start.real, ahead.end.real) <= middle - FRONT_TURNED - 10.0
    return clear and piece.outline.bounds[2] <= middle + 0.5


def _across(piece: Piece) -> float:
    """Return how wide a piece that stands upright lies across the cloth."""
    left, _, right, _ = piece.outline.bounds
    return right - left


def _upright(piece: Piece, ray: complex) -> Piece:
    """Return the piece turned until this ray of it hangs straight down."""
    turned = -1j / ray
    return piece.mapped(lambda p: p * turned)
