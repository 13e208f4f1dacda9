"""A cloth: what its swatch tests gave, and the arithmetic of stretch and shrinkage.

Lengths in mm, mass in g/m2; stretch, shrinkage and recovery are fractions (0.40 for 40 %).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from drafting.fabric.sorts import SHADING, Sort, possible_sorts
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.lengths import told

SELVEDGE = 15.0  # mm at each side that cannot be cut from, where nothing is said; trade: 10-20
STRETCHES = 0.05  # a fraction along or across from which a cloth counts as one that stretches (ours)
POOR_RECOVERY = 0.90  # below it the cloth bags; common practice

Weave = Literal["woven", "knit"]
Eases = Literal["well", "little", "none"]


@dataclass(frozen=True)
class TreatedStrip:
    """A strip of the cloth starched or fused and tried again: its `bending_length` in mm along the
    warp, and its `mass` in g/m2 where it was weighed."""

    treatment: str
    bending_length: float
    mass: float | None = None


@dataclass(frozen=True)
class Fabric:
    """One cloth. A value that no test gave is None, and nothing is guessed for it.

    `stretch_*` is (stretched - rest) / rest, `shrinkage_*` what is lost in the first wash, both as
    fractions along the warp, across it, and on the bias. `eases`: how much the cloth takes up in
    easing. `sort` is what kind of surface it has, None where nobody said. `iron_dots` 0-3 as on the care label.
    `colour` is written #rrggbb, "" where nobody said.
    `noted` is what was said of it at fittings, in a maker's words.
    `load_*` is what pulled at the strip, N per metre of its width, None where the test does not say.
    """

    title: str
    usable_width: float | None = None
    width: float | None = None
    selvedge: float = SELVEDGE
    fibre: str = ""
    weave: Weave = "woven"
    sort: Sort | None = None
    mass: float | None = None
    thickness: float | None = None
    shrinkage_along: float = 0.0
    shrinkage_across: float = 0.0
    pretreated: bool = False
    stretch_along: float = 0.0
    stretch_across: float = 0.0
    stretch_bias: float = 0.0
    load_along: float | None = None
    load_across: float | None = None
    load_bias: float | None = None
    recovery: float | None = None
    bending_length_along: float | None = None
    bending_length_across: float | None = None
    bending_length_bias: float | None = None
    treated: tuple[TreatedStrip, ...] = ()
    one_way: bool = False
    faces_alike: bool = False
    eases: Eases = "little"
    takes_fusible: bool = True
    takes_starch: bool = False
    iron_dots: int | None = None
    care: str = ""
    price: float | None = None
    colour: str = ""
    repeat_along: float | None = None
    repeat_across: float | None = None
    noted: tuple[str, ...] = ()
    findings: tuple[Finding, ...] = ()

    @property
    def greatest_stretch(self) -> float:
        """The greater of the stretches along and across, as a fraction."""
        return max(self.stretch_along, self.stretch_across)

    @property
    def stretches_at(self) -> float | None:
        """The angle between warp and greatest stretch, 0 or 90 degrees; None for cloth that hardly
        stretches along or across (the bias of a woven does not count)."""
        if self.greatest_stretch < STRETCHES:
            return None
        return 0.0 if self.stretch_along > self.stretch_across else 90.0

    @property
    def possible_sorts(self) -> tuple[Sort, ...]:
        """What it can be: the sort its file names, else what its other facts leave."""
        return possible_sorts(self.sort, self.fibre, self.care, self.one_way, self.faces_alike)

    @property
    def shades(self) -> bool:
        """Whether it looks lighter or darker as its warp is turned: pile, nap, satin, one-way cloth."""
        return self.one_way or bool(SHADING & set(self.possible_sorts))

    @property
    def shrinkage_to_come(self) -> tuple[float, float]:
        """What the first wash will still take (along, across); nothing once pretreated."""
        return (0.0, 0.0) if self.pretreated else (self.shrinkage_along, self.shrinkage_across)

    @property
    def laid_width(self) -> float | None:
        """What is left between the selvedges, mm, once wash or steam has taken its share: there pieces lie.

        Pieces that are cut unwashed are enlarged by as much, so that no wider one finds room there either.
        """
        return None if self.usable_width is None else self.usable_width * (1 - self.shrinkage_to_come[1])


def dimensional_change(before: float, after: float) -> float:
    """Return (after - before) / before as a fraction, minus for shrinkage (`Source.ISO_5077`).

    >>> round(dimensional_change(350, 336), 4)
    -0.04
    """
    return (after - before) / _positive(before, "the mark before washing")


def cut_for(wanted: float, change: float) -> float:
    """Return the length to cut so that `wanted` remains after a dimensional `change` (a fraction).

    >>> round(cut_for(1000, -0.04), 2)
    1041.67
    """
    return wanted / _positive(1 + change, "what the wash leaves")


def stretch_of(rest: float, stretched: float) -> float:
    """Return (stretched - rest) / rest as a fraction (the shop test; `Source.ASTM_D2594`, `Source.ASTM_D3107`).

    >>> stretch_of(100, 140)
    0.4
    """
    return (stretched - rest) / _positive(rest, "the length at rest")


def recovery_of(rest: float, stretched: float, released: float) -> float:
    """Return what part of the stretch goes back after release, as a fraction."""
    gained = _positive(stretched - rest, "what the swatch was stretched by")
    return 1 - (released - rest) / gained


def cut_girth(body: float, stretch: float, share: float) -> float:
    """Return the girth to cut (mm) when a `share` of the stretch is used: body / (1 + u s).

    >>> cut_girth(960, 0.50, 0.4)
    800.0
    """
    if not 0 <= share <= 1:
        raise DraftError(
            "no more than all of the stretch can be used",
            value=f"a share of {share:g}",
            reach="0 to 1",
            turn="0.2 to 0.5 is worn with comfort",
        )
    return body / (1 + share * max(0.0, stretch))


def needed_stretch(body: float, finished: float) -> float:
    """Return the stretch (a fraction) a garment of girth `finished` needs to reach `body` (mm)."""
    return body / _positive(finished, "the finished girth") - 1


def must_reach(level: str, body: float, finished: float, stretch: float) -> None:
    """Refuse a `finished` girth (mm) that the cloth's `stretch` cannot bring round `body` (mm).

    Without stretch there must be some ease at all (common practice). Raises `DraftError`.
    """
    needed = needed_stretch(body, finished)
    if needed < 0 or (stretch > 0 and needed <= stretch + 1e-9):
        return
    least = told(body / (1 + max(0.0, stretch)))
    if needed == 0:
        what = f"finished {level} is the body's own, and the cloth does not stretch"
    else:
        what = (
            f"finished {level} {told(finished)} must stretch {100 * needed:.1f} % to "
            f"go round {told(body)}, and the cloth gives {100 * max(0, stretch):.3g} %"
        )
    raise DraftError(
        what,
        value=f"{level} ease {told(finished - body)}",
        reach=f"a finished {level} of {'more than ' if stretch <= 0 else ''}{least}",
        turn="give it ease and draft for a woven, or choose a cloth that stretches more",
    )


def _positive(value: float, what: str) -> float:
    if not value > 0:
        raise DraftError(f"{what} must be more than zero", value=f"{value:g}")
    return value
