"""What a child has that an adult's rules do not give: a neck that is thick for its chest.

Among adults of one figure the neck base grows by a fifth of the bust; the pooled .405 is men against
women, and carried down to a chest of 60 cm it leaves 24 cm. Children's size charts go by height.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Protocol

from drafting.body.rules import Known, Rule
from drafting.ground.scale import ADULT_BUST, CHILD, DOLL, REFERENCE_BUST
from drafting.ground.sources import memory, ours

GROWN_BUST, CHILDS_HEIGHT, GROWN_HEIGHT = 740.0, 1400.0, 1500.0
"""mm: from these up an adult; no adult of ANSUR II has a bust under 757, none of bdims under 741."""

SMALL_CHILD = 1340.0
"""mm of height up to which no cord may be at hood, head or neck (`Source.EN_14682`: under 7 years, to 134 cm)."""

GROWN_SHARE = 0.62
"""Chest over height from which a small wearer has grown up (ours: children's charts 0.48 to 0.52, a stout child
has 0.6, an adult of short stature 0.65 and more, from memory)."""

NECK_AT_NONE, NECK_PER_HEIGHT = 145.0, 0.125
"""mm, and mm a mm of height: 29 cm at 116 cm, 1 1/4 cm more for each 10 (from memory)."""

OF_A_CHILD = {"neck_base_girth": "childs_neck"}
"""What is known of a child (mm) in place of what these rules say."""

MOST_OF_BUST = 0.55
"""Greatest neck base of a child as a share of its bust (ours: 0.48 at 116 cm, 0.57 of the newborn)."""

CHARTS = (
    memory("children's size charts: 29 cm at a height of 116 cm, 1 1/4 cm more for each 10"),
    ours("joined to the adults' between a bust of 70 and 74 cm, a height of 140 and 150 cm"),
)


class KnownMeasures(Protocol):
    """Anything that knows which measures it has, and each in mm."""

    def __getitem__(self, name: str, /) -> float: ...

    def __contains__(self, name: str, /) -> bool: ...


def child_share(measured: KnownMeasures) -> float:
    """Return how far the measures (mm) are a growing child's: 1, 0 for an adult or a doll, between them a ramp.

    >>> [child_share({"height": h, "bust_girth": b}) for h, b in ((1160, 600), (1600, 800), (350, 200))]
    [1.0, 0.0, 0.0]
    """
    bust = _chest(measured)
    grown_bust = _ramp(bust, ADULT_BUST, GROWN_BUST)
    grown_height = _ramp(measured["height"], CHILDS_HEIGHT, GROWN_HEIGHT)
    doll = 1 - _ramp(bust, DOLL * REFERENCE_BUST, CHILD * REFERENCE_BUST)
    return (1 - grown_bust) * (1 - grown_height) * (1 - doll)


def is_child(measured: KnownMeasures) -> bool:
    """Return whether the measures (mm) are those of a growing child, to any share."""
    return child_share(measured) > 0


def grows(measured: KnownMeasures) -> bool:
    """Return whether the wearer will grow out of what is cut now: of a child's height, and not of a grown chest.

    >>> wearers = ((1160, 600), (1380, 800), (1280, 920), (1500, 900))
    >>> [grows({"height": height, "bust_girth": bust}) for height, bust in wearers]
    [True, True, False, False]
    """
    return measured["height"] < CHILDS_HEIGHT and _chest(measured) < GROWN_SHARE * measured["height"]


def must_let_go(measured: KnownMeasures) -> bool:
    """Return whether what closes at the neck has to pull open: on a child, and on whoever is no taller than a
    small one, whatever her chest. A doll is neither.

    >>> wearers = ((1160, 600), (1300, 780), (1500, 900), (350, 200))
    >>> [must_let_go({"height": height, "bust_girth": bust}) for height, bust in wearers]
    [True, True, False, False]
    """
    small = measured["height"] <= SMALL_CHILD and _chest(measured) > DOLL * REFERENCE_BUST
    return small or is_child(measured)


def childs_neck(measured: Mapping[str, float]) -> float:
    """Return a child's neck base in mm, from its height and no more than its chest allows.

    >>> childs_neck({"height": 1160, "bust_girth": 600})
    290.0
    """
    return min(NECK_AT_NONE + NECK_PER_HEIGHT * measured["height"], MOST_OF_BUST * _chest(measured))


def for_child(rule: Rule) -> Rule:
    """Return the rule for a growing child: as it stands, but for a neck base that is not told by a neck."""
    if rule.name not in OF_A_CHILD or rule.given:
        return rule
    own = OF_A_CHILD[rule.name]

    def of(known: Known) -> float:
        share = known["child"]
        return share * known[own] + (1 - share) * rule.of(known)

    formula = f"{NECK_AT_NONE:.4g} + {NECK_PER_HEIGHT:.4g} height; nearly grown: towards {rule.formula}"
    return replace(rule, formula=formula, source=(*CHARTS, *rule.source), sd=None, of=of)


def _chest(measured: KnownMeasures) -> float:
    return measured["bust_girth"] if "bust_girth" in measured else measured["high_bust_girth"]


def _ramp(value: float, low: float, high: float) -> float:
    return min(max((value - low) / (high - low), 0.0), 1.0)
