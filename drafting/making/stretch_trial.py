"""A strip of the cloth stretched on the table before it is cut, to see what of it stays."""

from __future__ import annotations

from drafting.fabric import Fabric
from drafting.making.model import Said, said

PRETENSION = {"woven": 1.0, "knit": 0.5}
"""cN for each cm of width under which a strip lies flat before it is stretched (`Source.ISO_20932`)."""

GROWTH = {"loose": (0.15, 0.30), "close": (0.35, 0.60)}
"""How far a knit is stretched along and across to see what stays (`Source.ASTM_D2594`)."""

STRETCHES = 0.10
"""Greatest stretch from which it is worth measuring (ours)."""

LEAST_TRIED = 0.05
"""Stretch one way under which that way is left out of the trial (ours)."""


def stretch_trial(fabric: Fabric) -> tuple[Said, ...]:
    """Return how far a strip is stretched each way to see what stays, nothing for a cloth that gives too little.

    As the standard has it, and no farther than the cloth gives: beyond that it tears, or grows for good.
    """
    if fabric.greatest_stretch < STRETCHES:
        return ()
    pull = PRETENSION[fabric.weave]
    gives = fabric.stretch_along, fabric.stretch_across
    along, across = (min(most, own) for most, own in zip(GROWTH["close"], gives, strict=True))
    if min(gives) >= LEAST_TRIED:
        return (said("treat.try_stretch", pull=pull, share=along, across=across),)
    if gives[0] > gives[1]:
        return (said("treat.try_stretch_along", pull=pull, share=along),)
    return (said("treat.try_stretch_across", pull=pull, share=across),)
