"""What a cloth changes in the words of a step, in its iron and in what holds it: one place for every step.

A sentence that irons, pins or fuses has a twin in `words/suited.toml` for cloths that take none of it, or
whose edges are neatened in another way.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable

from drafting.checks.treatments import iron_limit
from drafting.fabric import Fabric, handling
from drafting.fabric.handling import frays, has_pile
from drafting.making.model import Said, Setting
from drafting.making.words import texts

COOLEST = 1
"""Dots to begin with where nobody knows what a cloth takes (common practice)."""

IRONED = ("fuse", "dart", "join", "face", "hem", "bind", "casing", "line", "try")
"""Verbs of steps in which the iron is at hand."""


LEFT_ALONE = frozenset({"do.last_brushed"})
"""Sentences by which a garment is neither pressed nor steamed, though its verb has the iron at hand."""


def suited(one: Said, cloths: Collection[Fabric]) -> Said:
    """Return the sentence as it is said where these cloths meet: what any of them cannot take is not done."""
    if not cloths or not one.key.startswith("do."):
        return one
    takes = [handling(cloth) for cloth in cloths]
    cold = any(iron_limit(cloth) == 0 for cloth in cloths)
    twins = {
        "clipped": any(each.holds == "clips" for each in takes),
        "bound": any(each.neatens == "bound" for each in takes),
        "piled": cold and any(map(has_pile, cloths)),
        "cold": cold,
        "unfused": not all(each.fuses for each in takes),
        "unfrayed": not any(map(frays, cloths)),
    }
    known = texts()
    for section, applies in twins.items():
        key = one.key.replace("do.", f"{section}.", 1)
        if applies and key in known:
            return Said(key, one.facts)
    return one


def heat_of(verb: str, setting: Setting | None, cloths: Iterable[Fabric], say: Iterable[Said] = ()) -> int | None:
    """Return the dots of the iron in a step, None where no iron is used or none may be."""
    if any(one.key in LEFT_ALONE for one in say):
        return None
    if setting is None and verb not in IRONED:
        return None
    known = setting.dots if setting else None
    if known is None:
        known = min((dots for cloth in cloths if (dots := iron_limit(cloth)) is not None), default=None)
    return (COOLEST if known is None else known) or None
