"""How a cloth is to be laid: the wishes of a maker, and what one cloth lays down itself."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from typing import Literal

from drafting.fabric import Fabric, handling
from drafting.fabric.handling import Layers
from drafting.geometry.path import Box
from drafting.ground.choices import choice
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.sources import practice
from drafting.ground.units import LENGTH_UNITS, ShownUnit
from drafting.layout.packing.model import Strip

LayName = Literal["open", "folded", "crosswise", "double"]

LENGTHWISE: tuple[LayName, LayName] = ("folded", "double")
"""Ways to spread the cloth that have a fold along it: one, or two with the selvedges brought in to meet."""

LEVELS = ("bust", "waist", "hip", "upper_arm", "thigh")
"""Levels that a repeat is matched on, the first that a piece has (ours)."""

WIDTH = 1400.0
"""mm: taken where no file names the width; common practice (137 to 140 cm)."""

INTERFACING_WIDTH = 900.0
"""mm: the same for interfacing; common practice (90 cm)."""


BOLTS = (900.0, 1120.0, 1370.0, 1500.0, 1600.0, 2800.0)
"""mm: common bolt widths, the narrow end of each range (common practice)."""

ONE_WIDTH = 1.0
"""mm: bolts that differ by less are one width (ours)."""

INCH_BOLTS = tuple(float(LENGTH_UNITS["in"]) * inches for inches in (36, 45, 54, 60, 108))
"""mm: the same as they are sold by the inch (common practice: 36, 45, 54 and 60 in, and 108 in extra wide)."""


BUY_STEP = 100.0
YARD_STEP = float(LENGTH_UNITS["yd"]) / 8
"""mm: the steps that cloth is sold in, 10 cm or an eighth of a yard (common practice)."""


def step_sold(unit: ShownUnit) -> float:
    """Return the step, mm, in which cloth is sold by its length in this unit."""
    return YARD_STEP if unit == "in" else BUY_STEP


def bolts_sold(unit: ShownUnit) -> tuple[float, ...]:
    """Return the common bolt widths, mm, where cloth is sold in this unit."""
    return INCH_BOLTS if unit == "in" else BOLTS


@dataclass(frozen=True)
class LayWishes:
    """What a maker may ask of a lay; every length mm."""

    lay: str = choice(
        "auto",
        "word",
        "how the cloth is spread; auto folds it lengthwise where all pieces fit, double on two folds",
        words=("auto", "folded", "open", "crosswise", "double"),
        group="lay",
        source=practice("at home cloth is cut folded"),
    )
    gap: float = choice(
        5.0,
        "mm",
        "room between two pieces for the blade",
        low=0,
        high=50,
        group="lay",
        source=practice("at least 5 mm"),
    )
    spare: float = choice(
        50.0,
        "mm",
        "cloth bought beyond the lay, to square both ends",
        low=0,
        high=500,
        group="lay",
        source=practice("5 to 10 cm"),
    )
    level: str = choice(
        "auto",
        "word",
        "the level line that a repeat along the cloth is matched on",
        words=("auto", *LEVELS),
        group="lay",
        source=practice("bars run on at one level; auto takes the first a piece has"),
    )


ShrunkBy = Literal["wash", "steam", ""]
"""What takes the shrinkage out of a cloth before it is cut."""

SHRINKING: dict[ShrunkBy, str] = {"wash": "the wash", "steam": "the steaming", "": "the wash"}
"""The same in a sentence; a cloth made up by hand is washed."""


@dataclass(frozen=True)
class Cloth:
    """One cloth as a lay needs it: `role` of the costume, widths and shrinkage in mm and fractions.

    `usable_width` is what is left between the selvedges when the shrinkage is taken out, by `shrunk_by`, and so
    are both repeats: pieces are laid on that.

    `faults` are boxes (x0, y0, x1, y1) of the opened cloth that cannot be used, from the start of
    the lay and one selvedge. `shrinkage` is what the first wash still takes along and across;
    nothing where the pieces are cut unwashed and enlarged for it. `stretch_turned` says that the
    cloth stretches most along the selvedge (None: it matters little); `layers`, how two layers of
    it lie, or that it is cut in one. `bolts` are the widths it may be sold in, selvedges included,
    `step` the mm that its length to buy is rounded up to.
    """

    role: str
    title: str
    usable_width: float
    selvedge: float = 15.0
    one_way: bool = False
    faces_alike: bool = False
    shrinkage: tuple[float, float] = (0.0, 0.0)
    shrunk_by: ShrunkBy = ""
    repeat_along: float | None = None
    repeat_across: float | None = None
    stretch_turned: bool | None = None
    layers: Layers = "right sides together"
    wishes: LayWishes = field(default_factory=LayWishes)
    faults: tuple[Box, ...] = ()
    findings: tuple[Finding, ...] = ()
    bolts: tuple[float, ...] = BOLTS
    step: float = BUY_STEP

    @property
    def width(self) -> float:
        """The bolt's width, selvedges included."""
        return self.bought_width + 2 * self.selvedge

    @property
    def bought_width(self) -> float:
        """What lies between the selvedges as it is bought."""
        return self.usable_width / (1 - self.shrinkage[1])

    @property
    def turns(self) -> tuple[int, ...]:
        """The turns allowed: one-way cloth has one right way up, and bars run on only where pieces lie alike."""
        return (0,) if self.one_way or self.repeat_along else (0, 180)

    def layer_width(self, lay: LayName) -> float:
        """The width of one layer: half of it where the cloth is folded lengthwise, once or twice."""
        return self.usable_width / 2 if lay in LENGTHWISE else self.usable_width

    def strip(self, lay: LayName, meet: float | None = None) -> Strip:
        """Return the strip that one layer gives, faults of both layers marked on it.

        On two folds the selvedges meet `meet` mm from the first one, half-way where nothing is said.
        """
        faults, half = self.faults, self.usable_width / 2
        if lay == "double":
            meet = half / 2 if meet is None else meet
            faults = tuple(box for fault in faults for box in _folded_twice(fault, half, meet))
        elif lay == "folded":
            faults = tuple(box for fault in faults for box in _folded(fault, half))
        return Strip(
            width=self.layer_width(lay),
            gap=self.wishes.gap,
            blocked=faults,
            repeat=self.repeat_along,
            repeat_across=self.repeat_across if lay == "open" else None,
            fold_gap=self.wishes.gap / 2 if lay in LENGTHWISE else 0.0,
            meet=meet if lay == "double" else None,
        )

    @property
    def widths(self) -> tuple[float, ...]:
        """The bolt widths that are compared, narrow to wide: its own, and those it is sold in beside it."""
        return tuple(sorted({self.width, *(bolt for bolt in self.bolts if abs(bolt - self.width) > ONE_WIDTH)}))

    def at_width(self, width: float) -> Cloth:
        """Return the cloth as it would be in another bolt width (mm, selvedges included)."""
        usable = (width - 2 * self.selvedge) * (1 - self.shrinkage[1])
        return replace(self, usable_width=usable, faults=())


def cloth_of(
    role: str,
    fabric: Fabric | None,
    wishes: LayWishes | None = None,
    unwashed: bool = False,
    *,
    kept_dry: bool = False,
) -> Cloth:
    """Return the cloth that plays `role`; a width that nothing names is assumed, and said.

    `unwashed`: pieces are cut larger instead; `kept_dry`: no garment of it is ever washed.
    """
    wishes = wishes or LayWishes()
    stiff = role == "interfacing"
    width = INTERFACING_WIDTH if stiff else WIDTH
    if fabric is None:
        return _unnamed(role, width, wishes)
    found: tuple[Finding, ...] = ()
    assumed = fabric.usable_width or width - 2 * fabric.selvedge
    if fabric.usable_width is None:
        found = (_assumed(role, fabric.title, assumed, "its file gives no width"),)
    takes = handling(fabric)
    by: ShrunkBy = "" if unwashed else "wash" if takes.water and not kept_dry else "steam" if takes.steam else ""
    shrinkage = fabric.shrinkage_to_come if by else (0.0, 0.0)
    apart = fabric.stretch_along - fabric.stretch_across
    turned = None if fabric.greatest_stretch < 0.1 or abs(apart) < 0.02 else apart > 0
    return Cloth(
        role=role,
        title=fabric.title,
        usable_width=assumed * (1 - shrinkage[1]),
        selvedge=fabric.selvedge,
        shrunk_by=by,
        one_way=fabric.one_way,
        faces_alike=fabric.faces_alike,
        shrinkage=shrinkage,
        repeat_along=_shrunk(fabric.repeat_along, shrinkage[0]),
        repeat_across=_shrunk(fabric.repeat_across, shrinkage[1]),
        stretch_turned=turned,
        layers=takes.layers,
        wishes=wishes,
        findings=found,
    )


def _shrunk(repeat: float | None, shrinkage: float) -> float | None:
    return None if repeat is None else repeat * (1 - shrinkage)


def _unnamed(role: str, width: float, wishes: LayWishes) -> Cloth:
    """Return what is laid out where no cloth is named: plain cloth of the usual width."""
    selvedge, title = Fabric("").selvedge, role.replace("-", " ")
    usable = width - 2 * selvedge
    said = (_assumed(role, title, usable, "no cloth is named for it"),)
    return Cloth(role, title, usable, selvedge, faces_alike=False, wishes=wishes, findings=said)


def _assumed(role: str, title: str, usable: float, why: str) -> Finding:
    return Finding(
        "cloth width",
        "note",
        role,
        usable,
        None,
        f"{title}: {why}, so {told(usable)} between the selvedges is assumed for the lay. "
        "Measure the cloth and write its width before you cut.",
    )


def _folded(fault: Box, half: float) -> list[Box]:
    """Return a fault of the opened cloth as it lies on the folded one, the fold at y = 0."""
    x0, y0, x1, y1 = fault
    near, far = sorted((abs(y0 - half), abs(y1 - half)))
    crosses = y0 < half < y1
    return [(x0, 0.0 if crosses else near, x1, far)]


def _folded_twice(fault: Box, half: float, meet: float) -> Iterator[Box]:
    """Yield a fault of the opened cloth as it lies on cloth with two folds, at y = 0 and y = `half`.

    From one selvedge the cloth goes down to the first fold, under both parts to the second, and back.
    """
    x0, low, x1, high = fault
    far = meet + half
    for start, end, way, at in ((0.0, meet, -1, meet), (meet, far, 1, -meet), (far, 2 * half, -1, far + half)):
        a, b = max(low, start), min(high, end)
        if a < b:
            y0, y1 = sorted((at + way * a, at + way * b))
            yield x0, y0, x1, y1
