"""What a cloth changes in the words of a step, in its iron and in what holds it: one place for every step.

A sentence that irons, pins or fuses has a twin in `words/suited.toml` for cloths that take none of it, or
whose edges are neatened in another way.
"""

from __future__ import annotations

from collections.abc import Iterable

from drafting.checks.treatments import iron_limit
from drafting.fabric import Fabric, handling
from drafting.fabric.handling import frays
from drafting.making.model import Said, Setting
from drafting.making.words import texts

COOLEST = 1
"""Dots to begin with where nobody knows what a cloth takes (common practice)."""

IRONED = ("fuse", "dart", "join", "face", "hem", "bind", "casing", "line", "try")
"""Verbs of steps in which the iron is at hand."""


LEFT_ALONE = frozenset({"do.last_brushed"})
"""Sentences by which a garment is neither pressed nor steamed, though its verb has the iron at hand."""


def suited(one: Said, fabric: Fabric | None) -> Said:
    """Return the sentence as it is said of this cloth."""
    if fabric is None or not one.key.startswith("do."):
        return one
    takes = handling(fabric)
    twins = {
        "clipped": takes.holds == "clips",
        "bound": takes.neatens == "bound",
        "cold": iron_limit(fabric) == 0,
        "unfused": not takes.fuses,
        "unfrayed": not frays(fabric),
    }
    known = texts()
    for section, applies in twins.items():
        key = one.key.replace("do.", f"{section}.", 1)
        if applies and key in known:
            return Said(key, one.facts)
    return one


def heat_of(verb: str, setting: Setting | None, fabric: Fabric | None, say: Iterable[Said] = ()) -> int | None:
    """Return the dots of the iron in a step, None where no iron is used or none may be."""
    if any(one.key in LEFT_ALONE for one in say):
        return None
    if setting is None and verb not in IRONED:
        return None
    known = setting.dots if setting else None
    if known is None and fabric is not None:
        known = iron_limit(fabric)
    return (COOLEST if known is None else known) or None
