"""A cape's half on paper: three circles that are settled before anything is drawn. mm and degrees.

The hem is an arc round the one point where the middle in front, the shoulder's ray and the middle behind meet,
so that its length is exactly angle x radius. A wedge that is closed along the shoulder turns the neck of the
front about a point of its own on the middle in front, and that of the back about one on the middle behind: each
neck is an arc square to its middle and to the wedge's leg, and the closed neck line runs on smoothly.

    sine rule:  tip = (leg + r) sin(angle + wedge) / sin(angle),    r = neck / (angle + wedge)

for the front's angle and neck and for the back's alike; where the two meet is solved. Plane geometry, ours.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.geometry import solve, turn
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.ground.scale import body_scale
from drafting.shaping.torso.neckline import neckline

SHOULDERS_CHEST, SHOULDERS_HEIGHT = 0.96, 0.11
"""Girth over both arms at their fullest: shares of the chest above the breasts and of the height (ours: 0.959 of
the chest and 187 mm, fitted to the 507 adults of `Source.BDIMS`, the constant shared out over their 1.71 m)."""

ARM_BELOW = 60.0
"""mm at adult scale: the arms are fullest so far below the shoulder bone, along the cape (ours, by eye)."""

TIP = 0.92
"""Of the shoulder's length: how long its dart is (common practice: it ends 10 to 15 mm before the bone)."""

LEAST_WEDGE, MOST_WEDGE = 6.0, 16.0
"""degrees: half of what is taken in along the shoulder (ours: 25 to 65 mm at the neck of an adult)."""

LEAST_BELOW = 60.0
"""mm at adult scale: a cape ends at least so far below the shoulder bone (ours)."""

WHOLE = 360.0
"""degrees."""


@dataclass(frozen=True)
class CapePlan:
    """Half a cape. `half` is its angle and `front` the front's part of it; `wedge` half of what is closed on the
    shoulder (0: nothing). The shoulder's `tip` lies so far from the middle of the ring, the hem `outer`, and the
    level over the arms `arms`. `front_neck` and `back_neck` are the necks' lengths, `leg` that of the wedge."""

    half: float
    front: float
    wedge: float
    leg: float
    tip: float
    arms: float
    outer: float
    front_neck: float
    back_neck: float
    shoulders: float
    scale: float

    @property
    def back(self) -> float:
        return self.half - self.front

    def ray(self, degrees: float) -> complex:
        """Return the direction from the middle of the ring, straight down at 0, towards the back."""
        return -1j * turn(degrees)

    def neck_radius(self, behind: bool) -> float:
        """Return the radius of the neck's arc in front, or behind."""
        neck, angle = (self.back_neck, self.back) if behind else (self.front_neck, self.front)
        return neck / math.radians(angle + self.wedge)

    def neck_middle(self, behind: bool) -> complex:
        """Return the middle of the neck's arc, on the middle in front or behind."""
        angle = self.back if behind else self.front
        off = self.tip * math.sin(math.radians(self.wedge)) / math.sin(math.radians(angle + self.wedge))
        return off * self.ray(self.half if behind else 0.0)

    def neck_at(self, behind: bool, share: float) -> complex:
        """Return a place of the neck: share 0 on the middle in front or behind, 1 on the shoulder."""
        angle = (self.back if behind else self.front) + self.wedge
        way = self.half - share * angle if behind else share * angle
        return self.neck_middle(behind) + self.neck_radius(behind) * self.ray(way)

    @property
    def girth(self) -> float:
        """The whole cape's girth over the arms."""
        return 2 * math.radians(self.half) * self.arms

    @property
    def hem(self) -> float:
        """The whole cape's hem: angle x radius."""
        return 2 * math.radians(self.half) * self.outer

    def length(self, behind: bool) -> float:
        """Return how long it is from neck to hem on the middle behind, or in front."""
        return self.outer - abs(self.neck_at(behind, 0.0))


@dataclass(frozen=True)
class Necks:
    """What the ring is put on: the necks in front and behind, and the length of the shoulder's wedge."""

    front: float
    back: float
    leg: float


def necks_of(body: Body, ease: float) -> Necks:
    """Return the half neck line over the neck base, parted where the body's shoulder meets it."""
    length, drop = body["shoulder_length"], body["shoulder_drop"]
    slope = math.degrees(math.asin(min(0.7, max(0.0, drop / length))))
    girth = body["neck_base_girth"] + body.layer("neck_base_girth") + ease
    line = neckline(girth / 2, slope, slope)
    return Necks(line.front.length, line.back.length, TIP * length)


def shoulder_girth(body: Body) -> float:
    """Return the girth over both arms below the shoulders, mm: an estimate, with what is worn beneath."""
    chest = min(body["bust_girth"], body["high_bust_girth"]) if "high_bust_girth" in body else body["bust_girth"]
    return SHOULDERS_CHEST * (chest + body.layer("bust_girth")) + SHOULDERS_HEIGHT * body["height"]


def cape_plan(body: Body, *, angle: float, fitted: bool, eases: tuple[float, float], length: float) -> CapePlan:
    """Return the plan of a cape that is `angle` degrees of a circle; `eases` are those of neck and shoulders.

    It is opened wider, to at most a whole circle, where it would not pass over the arms. Raises `DraftError`
    where it would end on the shoulder.
    """
    necks, scale = necks_of(body, eases[0]), body_scale(body)
    below = body["shoulder_length"] - necks.leg + ARM_BELOW * scale
    wanted = shoulder_girth(body) + eases[1]

    def girth(half: float, wedge: float) -> float:
        return 2 * math.radians(half) * (_settled(necks, half, wedge)[1] + below)

    half, wedge = angle / 2, LEAST_WEDGE if fitted else 0.0
    if girth(half, wedge) < wanted:
        wedge = MOST_WEDGE if fitted else 0.0
        if girth(half, wedge) >= wanted:
            wedge = solve(lambda w: girth(half, w), wanted, (LEAST_WEDGE, MOST_WEDGE), what="cape")
        elif girth(WHOLE / 2, wedge) >= wanted:
            half = solve(lambda h: girth(h, wedge), wanted, (half, WHOLE / 2), what="cape")
        else:
            half = WHOLE / 2
    front, tip = _settled(necks, half, wedge)
    plan = CapePlan(
        half=half,
        front=front,
        wedge=wedge,
        leg=necks.leg,
        tip=tip,
        arms=tip + below,
        outer=0.0,
        front_neck=necks.front,
        back_neck=necks.back,
        shoulders=wanted - eases[1],
        scale=scale,
    )
    return _as_long(plan, length)


def _as_long(plan: CapePlan, length: float) -> CapePlan:
    start = abs(plan.neck_at(True, 0.0))
    least = plan.tip + LEAST_BELOW * plan.scale - start
    if length < least:
        raise DraftError(
            "the cape ends on the shoulder",
            value=told(length),
            reach=f"{told(least, 'least')} and more",
            turn="choose a longer cape_length",
        )
    return replace(plan, outer=start + length)


def _settled(necks: Necks, half: float, wedge: float) -> tuple[float, float]:
    """Return the front's angle, and how far the shoulder's tip lies from the middle of the ring."""

    def tip(neck: float, angle: float) -> float:
        closed = math.radians(angle + wedge)
        return (necks.leg + neck / closed) * math.sin(closed) / math.sin(math.radians(angle))

    if not wedge:
        front = half * necks.front / (necks.front + necks.back)
        return front, tip(necks.front, front)
    low, high = 0.12 * half, 0.88 * half
    front = solve(
        lambda a: tip(necks.back, half - a) - tip(necks.front, a), 0.0, (low, high), what="shoulder of the cape"
    )
    return front, tip(necks.front, front)
