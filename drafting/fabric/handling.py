"""What hands, water and irons may do to a cloth, by its sort: one table, and the gentlest of what a cloth can be.

    sort (or the sorts that fibre, lie, faces and care leave) + care text -> Handling

All of the table is common practice at a cutting table; a care label and the maker of the cloth decide
where they say otherwise, and a scrap is tried before the cloth.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from typing import Any, Literal

from drafting.fabric.cloth import Fabric
from drafting.fabric.sorts import Sort

Holds = Literal["pins", "basting", "clips"]
"""What holds two layers until they are sewn."""

MarkedWith = Literal["chalk", "thread", "paper"]
"""What marks it: chalk, a thread drawn through, or pen on a paper tape stuck to the wrong side."""

Neatens = Literal["overcast", "french", "bound", "none"]
"""What becomes of a raw edge inside."""

Layers = Literal["right sides together", "wrong sides together", "single"]
"""How two layers lie for cutting, or that only one may."""

FULL = 3
"""The most dots on a care label (`Source.ISO_3758`)."""


@dataclass(frozen=True)
class Handling:
    """What a cloth takes. `iron` is the most dots, 0 where no iron may touch it; `stitches` the
    shortest and the longest stitch of a plain seam, mm; `point` the needle that its surface asks for; `sags` says
    that an edge off its threads grows where a garment hangs from it."""

    water: bool = True
    steam: bool = True
    iron: int = FULL
    fuses: bool = True
    holds: Holds = "pins"
    marks: MarkedWith = "chalk"
    layers: Layers = "right sides together"
    weighted: bool = False
    old_blades: bool = False
    stitches: tuple[float, float] = (2.2, 2.8)
    point: str = ""
    neatens: Neatens = "overcast"
    press_cloth: bool = False
    sags: bool = False


PLAIN = Handling()

COATED = Handling(
    water=False,
    steam=False,
    iron=0,
    fuses=False,
    holds="clips",
    marks="paper",
    layers="single",
    weighted=True,
    stitches=(3.0, 4.0),
    point="microtex",
    neatens="none",
)

TABLE: dict[Sort, Handling] = {
    "plain": PLAIN,
    "pile": Handling(holds="basting", marks="thread", layers="wrong sides together", sags=True),
    "napped": Handling(press_cloth=True, sags=True),
    "satin": Handling(steam=False, marks="thread", point="microtex", press_cloth=True, sags=True),
    "sheer": Handling(
        fuses=False,
        holds="basting",
        marks="thread",
        stitches=(1.8, 2.2),
        point="microtex",
        neatens="french",
        sags=True,
    ),
    "coated": COATED,
    "sequinned": Handling(
        water=False,
        steam=False,
        iron=0,
        fuses=False,
        holds="clips",
        marks="thread",
        layers="single",
        weighted=True,
        old_blades=True,
        stitches=(2.5, 3.0),
        neatens="bound",
    ),
    "lace": Handling(
        iron=1,
        fuses=False,
        holds="basting",
        marks="thread",
        layers="single",
        stitches=(1.8, 2.2),
        neatens="french",
        press_cloth=True,
        sags=True,
    ),
    "felted": Handling(water=False, stitches=(2.8, 3.5), neatens="none", press_cloth=True),
    "foiled": replace(COATED, neatens="overcast", stitches=(2.5, 3.5), point=""),
}
"""By sort (common practice). A coated cloth keeps every hole and melts; sequins blunt a blade and melt; foil
dulls; felted cloth felts on; a pile walks and is crushed; a sheer one shows its insides."""

NO_IRON = ("do not iron", "no iron", "not be ironed", "never iron")
NO_STEAM = (*NO_IRON, "do not steam", "no steam")
NO_WATER = ("dry clean", "do not wash", "no wash", "not be washed", "wipe", "spot clean", "sponge")
"""Words of a care label that keep iron, steam and water away (common practice; the signs are those of
`Source.ISO_3758`)."""

BIAS_GIVES = 0.10
"""Stretch of a strip on the bias, pulled by hand, from which a cloth of any sort counts as soft (from memory)."""

FUR = 5.0
"""mm: a pile as thick is cut like fur (common practice)."""

STEAMED = "steam"
"""A care text that names steam alone is of a cloth that is steamed in place of a wash (common practice)."""


def frays(fabric: Fabric) -> bool:
    """Return whether a raw edge ravels: not what is coated or felted, nor a knit (common practice)."""
    return handling(fabric).neatens != "none" and fabric.weave != "knit"


def has_pile(fabric: Fabric) -> bool:
    """Return whether the cloth has, or may have, a pile that an iron would crush; a nap takes a press cloth."""
    return "pile" in fabric.possible_sorts


def is_long_pile(fabric: Fabric) -> bool:
    """Return whether a cloth is fur, or like it: a pile whose hairs must not be cut with it."""
    return has_pile(fabric) and (fabric.thickness or 0.0) >= FUR


def handling(fabric: Fabric) -> Handling:
    """Return what a cloth takes: the gentlest of what it can be, and of what its care text says.

    >>> handling(Fabric("oilcloth", sort="coated")).iron
    0
    >>> handling(Fabric("cotton", care="wash at 40")) == Handling()
    True
    """
    found = gentlest([TABLE[sort] for sort in fabric.possible_sorts])
    care = fabric.care.lower()
    if is_long_pile(fabric):
        found = replace(found, layers="single")  # its ground alone is cut, from the back
    if fabric.stretch_bias >= BIAS_GIVES:
        found = replace(found, sags=True)
    if any(word in care for word in NO_WATER) or (STEAMED in care and "wash" not in care):
        found = replace(found, water=False)
    if any(word in care for word in NO_STEAM):
        found = replace(found, steam=False)
    if any(word in care for word in NO_IRON) or fabric.iron_dots == 0:
        found = replace(found, iron=0, steam=False)
    return found if fabric.takes_fusible and found.iron else replace(found, fuses=False)


def gentlest(every: Iterable[Handling]) -> Handling:
    """Return what suits each of several sorts: the first one with whatever is harder on another taken away."""
    first, *rest = every
    for other in rest:
        first = _both(first, other)
    return first


def _both(one: Handling, other: Handling) -> Handling:
    def pick(name: str, order: Callable[[Any], Any]) -> Any:
        return max((getattr(one, name), getattr(other, name)), key=order)

    return Handling(
        water=one.water and other.water,
        steam=one.steam and other.steam,
        iron=min(one.iron, other.iron),
        fuses=one.fuses and other.fuses,
        holds=pick("holds", ("pins", "basting", "clips").index),
        marks=pick("marks", ("chalk", "thread", "paper").index),
        layers=pick("layers", ("right sides together", "wrong sides together", "single").index),
        weighted=one.weighted or other.weighted,
        old_blades=one.old_blades or other.old_blades,
        stitches=pick("stitches", lambda pair: pair[0]),
        point=one.point or other.point,
        neatens=pick("neatens", ("none", "overcast", "french", "bound").index),
        press_cloth=one.press_cloth or other.press_cloth,
        sags=one.sags or other.sags,
    )
