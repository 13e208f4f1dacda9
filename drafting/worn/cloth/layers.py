"""Cloths upon each other: loose, as a lining hangs, or bonded, as a fusible holds.

Loose layers slide, and their rigidities add. Bonded layers bend about one neutral plane, and each
is stretched by its distance from it: rigidity = sum of rigidities + sum of stiffness * distance^2
(the classical laminate). Cloth gives way in compression, so that is the most that can be had
(`Source.KIM_LAMINATE`), and the loose sum the least.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from drafting.fabric import Fabric
from drafting.worn.cloth.single import single_ply
from drafting.worn.cloth.treatments import AT_HEM, BAND_DEPTH, Treatment, treated_ply
from drafting.worn.nouns import Ply

SHARES = (0.0, 0.5, 1.0)
"""Of the range from least to most stiff: low, likely, high."""


class Bond(StrEnum):
    """How a layer is held to what lies on it."""

    LOOSE = "loose"
    FUSED = "fused"


@dataclass(frozen=True)
class ClothLayer:
    """A further cloth behind the first."""

    cloth: Fabric
    bond: Bond = Bond.LOOSE


@dataclass(frozen=True)
class PlyRange:
    """The least, the likely and the most stiff that layers or a treatment can be."""

    low: Ply
    likely: Ply
    high: Ply


@dataclass(frozen=True)
class Stiffened:
    """A treated piece: the ply of the `whole`, of what lies within `hem_depth` mm of its hem, and the
    `boned`: a bone along the hem."""

    whole: Ply
    hem: Ply
    hem_depth: float = 0.0
    boned: bool = False


def ply_of(cloth: Fabric, *layers: ClothLayer | Fabric | Treatment) -> Ply:
    """Return a cloth with what lies behind it as one ply, as likely as it can be told.

    A cloth among the layers lies loose; a `Treatment` is one of the first cloth.

    >>> shirting = Fabric("shirting", mass=118.0, bending_length_along=23.0, bending_length_across=20.0)
    >>> limp, fused = ply_of(shirting), ply_of(shirting, Treatment.FUSED_MEDIUM)
    >>> round(1e6 * limp.bends_along, 1), round(fused.bends_along / limp.bends_along, 1)
    (14.1, 12.6)
    """
    return ply_range(cloth, *layers).likely


def ply_range(cloth: Fabric, *layers: ClothLayer | Fabric | Treatment) -> PlyRange:
    """Return a cloth with what lies behind it, from least to most stiff."""
    low, likely, high = (_stacked(cloth, layers, share) for share in SHARES)
    return PlyRange(low=low, likely=likely, high=high)


def stiffened(cloth: Fabric, treatment: Treatment, *layers: ClothLayer | Fabric, share: float = 0.5) -> Stiffened:
    """Return a piece with a treatment of its first cloth: of the whole of it, or of its hem."""
    done = _stacked(cloth, (treatment, *layers), share)
    if treatment not in AT_HEM:
        return Stiffened(whole=done, hem=done)
    boned = treatment is Treatment.BONED
    return Stiffened(whole=_stacked(cloth, layers, share), hem=done, hem_depth=BAND_DEPTH, boned=boned)


def _stacked(cloth: Fabric, layers: tuple[ClothLayer | Fabric | Treatment, ...], share: float) -> Ply:
    treatments = [one for one in layers if isinstance(one, Treatment)]
    ply = treated_ply(cloth, treatments[0] if treatments else Treatment.PLAIN, share)
    for one in layers:
        if isinstance(one, Treatment):
            continue
        layer = ClothLayer(one) if isinstance(one, Fabric) else one
        ply = _joined(ply, single_ply(layer.cloth), layer.bond, share)
    return ply


def _joined(first: Ply, second: Ply, bond: Bond, share: float) -> Ply:
    """Return two plies as one; of a fused pair at a `share` of the way from loose to laminate, by factor."""
    apart = (first.thickness + second.thickness) / 2000 if bond is Bond.FUSED else 0.0

    def stiffer(loose: float, one: float, other: float) -> float:
        bonded = loose + one * other / (one + other) * apart**2
        return loose * float((bonded / loose) ** share)

    bends_along = first.bends_along + second.bends_along
    bends_across = first.bends_across + second.bends_across
    twists = first.twisting + second.twisting
    unsure = ("bends_along", "bends_across", "twists") if bond is Bond.FUSED else ()
    return Ply(
        along=first.along + second.along,
        across=first.across + second.across,
        shear=first.shear + second.shear,
        bends_along=stiffer(bends_along, first.along, second.along),
        bends_across=stiffer(bends_across, first.across, second.across),
        twists=stiffer(twists, 2 * first.shear, 2 * second.shear),
        weight=first.weight + second.weight,
        thickness=first.thickness + second.thickness,
        guessed=tuple(dict.fromkeys((*first.guessed, *second.guessed, *unsure))),
    )
