"""What a body asks of a garment when it moves: each figure with its source, and how an answer is judged."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType

from drafting.ground.sources import Cited, Source, cite, memory, ours


class Movement(StrEnum):
    """What a performer does in it."""

    ARMS_UP = "arms up"
    HUG = "hug"
    BENT_ARM = "bent arm"
    SIT = "sit"
    STAIRS = "stairs"
    KNEE = "bent knee"
    BREATH = "deep breath"
    CHANGE = "quick change"


class Enough(StrEnum):
    """How what is there compares with what is wanted."""

    ENOUGH = "enough"
    TIGHT = "tight"
    TOO_LITTLE = "too little"


@dataclass(frozen=True, slots=True)
class Demand:
    """From `low`, below which it is too little, to `high`, from which it is enough; a fraction, mm or s."""

    low: float
    high: float
    source: Cited


_SKIN = Source.KIRK_IBRAHIM

SKIN: Mapping[Movement, Demand] = MappingProxyType(
    {
        Movement.HUG: Demand(0.13, 0.16, cite(_SKIN, "the skin of the back, 13 to 16 %")),
        Movement.BENT_ARM: Demand(0.35, 0.40, cite(_SKIN, "the skin of the elbow, 35 to 40 %")),
        Movement.SIT: Demand(0.25, 0.30, cite(_SKIN, "the skin of the seat: 25 to 30 %")),
        Movement.KNEE: Demand(0.35, 0.45, cite(_SKIN, "the skin of the knee, 35 to 45 %")),
    }
)
"""By how much the skin itself lengthens, as fractions (recalled)."""

ROOM: Mapping[Movement, Demand] = MappingProxyType(
    {
        Movement.SIT: Demand(25.0, 51.0, cite(Source.EASE_IN_CLOTHING, "the least ease of a hip")),
        Movement.STAIRS: Demand(12.5, 25.0, cite(Source.EASE_IN_CLOTHING, "the least ease of a thigh")),
        Movement.BREATH: Demand(20.0, 50.0, memory("what a deep breath adds")),
    }
)
"""mm round the body in cloth that does not give; half of the least ease is told as tight (ours)."""

MAY_RISE: Mapping[bool, Demand] = MappingProxyType(
    {
        False: Demand(60.0, 40.0, memory("how far a bodice may rise")),
        True: Demand(90.0, 60.0, memory("how far a coat may rise")),
    }
)
"""mm by which a hem may rise, for a coat and for anything else; half as much again is told as tight (ours)."""

RAISED = 150.0
"""Degrees from hanging to which an upper arm is lifted by itself; the rest the shoulder gives (from memory)."""

SLEEVES_GIVE = 0.5
"""Of the ease round both upper arms, so much comes to the back when the arms go forward: the back half of each
sleeve (ours)."""

CHANGE = Demand(60.0, 30.0, memory("a quick change"))

SECONDS: Mapping[str, float] = MappingProxyType(
    {"zip": 6.0, "button": 4.0, "hook": 5.0, "hook and eye": 5.0, "eyelet": 8.0, "press stud": 2.0}
)
"""s to close one of each by a dresser in the dark; a zip is one (from memory: time it yourself)."""

PULLED_ON = 10.0
"""s to get into a garment and settle it (from memory)."""

TIMED = ours("counted from the closings drawn: time it")


def judged(have: float, wanted: Demand) -> Enough:
    """Return how much of what is wanted is there; where `low` is above `high`, less is better.

    >>> [str(judged(mm, ROOM[Movement.BREATH])) for mm in (10.0, 30.0, 60.0)]
    ['too little', 'tight', 'enough']
    >>> str(judged(30.0, MAY_RISE[False]))
    'enough'
    """
    sign = 1.0 if wanted.low <= wanted.high else -1.0
    if sign * have >= sign * wanted.high:
        return Enough.ENOUGH
    return Enough.TIGHT if sign * have >= sign * wanted.low else Enough.TOO_LITTLE
