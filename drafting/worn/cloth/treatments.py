"""What stiffens a cloth: starch, fusible, a fused band at the hem, a bone in it.

No trustworthy table of these was found: the factors are recalled, and a strip of the cloth that was
starched or fused and tried again (`Fabric.treated`) takes their place.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum

from drafting.fabric import Fabric
from drafting.fabric.strip_tests import GRAVITY
from drafting.ground.sources import Cited, memory
from drafting.worn.cloth.single import single_ply
from drafting.worn.nouns import Ply


class Treatment(StrEnum):
    """What is done to a whole piece or, as band and bone, to its hem."""

    PLAIN = "plain"
    STARCHED_LIGHT = "starched_light"
    STARCHED_HEAVY = "starched_heavy"
    FUSED_LIGHT = "fused_light"
    FUSED_MEDIUM = "fused_medium"
    FUSED_HEAVY = "fused_heavy"
    BAND = "band"
    BONED = "boned"


@dataclass(frozen=True)
class Factors:
    """By how much a treatment stiffens, least and most: `bends` and `shears` as factors, `adds` in g/m2."""

    bends: tuple[float, float]
    shears: tuple[float, float]
    adds: tuple[float, float]


FACTORS: dict[Treatment, Factors] = {
    Treatment.STARCHED_LIGHT: Factors(bends=(1.5, 2.0), shears=(1.0, 1.5), adds=(2.0, 5.0)),
    Treatment.STARCHED_HEAVY: Factors(bends=(3.0, 8.0), shears=(1.5, 3.0), adds=(5.0, 15.0)),
    Treatment.FUSED_LIGHT: Factors(bends=(3.0, 6.0), shears=(1.5, 2.5), adds=(25.0, 40.0)),
    Treatment.FUSED_MEDIUM: Factors(bends=(8.0, 20.0), shears=(2.0, 4.0), adds=(45.0, 80.0)),
    Treatment.FUSED_HEAVY: Factors(bends=(20.0, 60.0), shears=(3.0, 6.0), adds=(90.0, 150.0)),
}
FACTORS_FROM: Cited = memory("starch, and light, medium and heavy fusible on shirting and suiting")

AT_HEM: frozenset[Treatment] = frozenset({Treatment.BAND, Treatment.BONED})
BAND_OF = Treatment.FUSED_MEDIUM
"""What a band at the hem is fused with."""

BAND_DEPTH = 60.0
"""mm that a band reaches up from the hem."""


CHANGED = ("shear", "bends_along", "bends_across", "twists", "weight")
"""What a treatment changes of a ply."""


def treated_ply(cloth: Fabric, treatment: Treatment = Treatment.PLAIN, share: float = 0.5) -> Ply:
    """Return a cloth after a treatment, at a `share` of the range from least (0) to most (1).

    A strip of the cloth that had this treatment decides; else the factors do, and are marked as guesses.
    Of a band or a bone: the band itself.
    """
    plain = single_ply(cloth)
    kind = BAND_OF if treatment in AT_HEM else treatment
    if kind is Treatment.PLAIN:
        return plain
    factors = FACTORS[kind]
    strip = next((one for one in cloth.treated if one.treatment == kind), None)
    weight = plain.weight + _between(factors.adds, share) / 1000 * GRAVITY
    bends = _between_as_factor(factors.bends, share)
    sure: tuple[str, ...] = ()
    if strip is not None:
        weight = weight if strip.mass is None else strip.mass / 1000 * GRAVITY
        bends = weight * (strip.bending_length / 1000) ** 3 / plain.bends_along
        sure = () if strip.mass is None else ("weight", "bends_along")
    also = [name for name in (*plain.guessed, *CHANGED) if name not in sure]
    return replace(
        plain,
        shear=plain.shear * _between_as_factor(factors.shears, share),
        bends_along=plain.bends_along * bends,
        bends_across=plain.bends_across * bends,
        twists=plain.twisting * bends,
        weight=weight,
        guessed=tuple(dict.fromkeys(also)),
    )


def _between(ends: tuple[float, float], share: float) -> float:
    return ends[0] + (ends[1] - ends[0]) * share


def _between_as_factor(ends: tuple[float, float], share: float) -> float:
    return ends[0] * float((ends[1] / ends[0]) ** share)
