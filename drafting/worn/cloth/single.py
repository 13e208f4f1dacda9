"""One cloth as a ply: its swatch tests as stiffness, rigidity and weight."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.fabric import Fabric
from drafting.fabric.strip_tests import GRAVITY
from drafting.worn.cloth.guesses import BIAS, DENSITY, LOAD, MASS, STRETCH, guessed_bending_length
from drafting.worn.nouns import Ply

LEAST_READ = 0.005  # a fraction: half a millimetre of 100, what a ruler tells
LEAST_TWIST = 0.1  # of the mean rigidity; a bias strip limper than that was misread (ours)


@dataclass(frozen=True)
class Tested:
    """A number, and whether a test gave it."""

    value: float
    measured: bool


def single_ply(cloth: Fabric) -> Ply:
    """Return one cloth as a ply; what no test gave is guessed, and named in `guessed`.

    A stretch without its load is a guess of a stiffness.
    """
    mass = Tested(cloth.mass or MASS[cloth.weave], cloth.mass is not None)
    weight = mass.value / 1000 * GRAVITY
    along = _stiffness(cloth.stretch_along, cloth.load_along, STRETCH[cloth.weave][0])
    across = _stiffness(cloth.stretch_across, cloth.load_across, STRETCH[cloth.weave][1])
    lengths = _bending_lengths(cloth, mass.value)
    bends = [Tested(weight * (c.value / 1000) ** 3, c.measured and mass.measured) for c in lengths]
    twists = _twist(cloth, weight, mass.measured, bends[0].value, bends[1].value)
    thickness = Tested(cloth.thickness or mass.value / 1000 / DENSITY[cloth.weave], cloth.thickness is not None)
    told = {
        "along": along,
        "across": across,
        "shear": _shear(cloth, along, across),
        "bends_along": bends[0],
        "bends_across": bends[1],
        "weight": Tested(weight, mass.measured),
        "thickness": thickness,
        "twists": twists,
    }
    values = {name: number.value for name, number in told.items()}
    return Ply(**values, guessed=tuple(name for name, number in told.items() if not number.measured))


def _stiffness(stretch: float, load: float | None, usual: float) -> Tested:
    """Return N/m per unit strain: what a strip was hung with over how far it stretched.

    A cloth that did not stretch by what a ruler tells is at least as stiff as that.
    """
    if load is None:
        return Tested(LOAD / max(stretch or usual, LEAST_READ), False)
    return Tested(load / max(stretch, LEAST_READ), stretch >= LEAST_READ)


def _shear(cloth: Fabric, along: Tested, across: Tested) -> Tested:
    """Return the shear stiffness from the stretch on the bias.

    A strip on the bias gives at once in both threads and in shear:
    stretch / load = (1 / along + 1 / across + 1 / shear) / 4 (threads that do not narrow each other).
    No stiffer in shear than a sheet alike all ways.
    """
    stretch = cloth.stretch_bias or max(BIAS, cloth.stretch_along, cloth.stretch_across)
    load = cloth.load_bias or LOAD
    gives = 4 * stretch / load - 1 / along.value - 1 / across.value
    least = 2 / (along.value * across.value) ** 0.5
    asked = cloth.load_bias is not None and cloth.stretch_bias > 0
    return Tested(1 / max(gives, least), asked and along.measured and across.measured and gives > least)


def _bending_lengths(cloth: Fabric, mass: float) -> tuple[Tested, Tested]:
    """Return the bending lengths along and across in mm; one that is missing is as the other."""
    along, across = cloth.bending_length_along, cloth.bending_length_across
    usual = along or across or guessed_bending_length(cloth, mass)
    return Tested(along or usual, along is not None), Tested(across or usual, across is not None)


def _twist(cloth: Fabric, weight: float, weighed: bool, along: float, across: float) -> Tested:
    """Return the rigidity to twist, N m, from a strip on the bias: bias = (along + across) / 4 + twist / 2."""
    mean = (along * across) ** 0.5
    if cloth.bending_length_bias is None:
        return Tested(mean, False)
    bias = weight * (cloth.bending_length_bias / 1000) ** 3
    twist = 2 * bias - (along + across) / 2
    both = cloth.bending_length_along is not None and cloth.bending_length_across is not None
    return Tested(max(twist, LEAST_TWIST * mean), weighed and both and twist > LEAST_TWIST * mean)
