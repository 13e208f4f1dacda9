"""What a drawing of a stage is made of: faces of cloth, lines, marks and names, on one to three panels.

Places are mm of cloth, y up; what a mark measures is units of paper (0.1 mm). `inked` writes it down.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Literal

import numpy as np

from drafting.geometry.curve import Points
from drafting.geometry.path import Box

FaceLook = Literal["right", "wrong", "interfacing", "lining", "elastic", "notion", "solid"]
"""How a face is filled: the right side grey and hatched, the wrong side white, interfacing dotted ..."""

LineLook = Literal["sewing", "sewn", "basting", "fold", "hidden", "fine", "firm", "before", "edge"]
"""How a line is drawn: dashed heavy while it is sewn, solid heavy once it is; thin for what was before."""

MarkKind = Literal["move", "press", "pin", "clip", "notch", "button", "dot", "iron", "grain"]


@dataclass(frozen=True, slots=True, eq=False)
class Face:
    """A flat of cloth that one side is seen of; `piece` is what it is of, `over` that it is turned over."""

    look: FaceLook
    ring: Points
    piece: str = ""
    over: bool = False


@dataclass(frozen=True, slots=True, eq=False)
class InkLine:
    """An open line; `of` names the seam or edge in work that it is (none for what only helps)."""

    stroke: LineLook
    points: Points
    of: str = ""


@dataclass(frozen=True, slots=True)
class InkMark:
    """A sign at a place: an arrow comes to `at` along `way`, a pin lies across it, a notch ends there."""

    kind: MarkKind
    at: complex
    way: complex = 1 + 0j
    size: float = 20.0
    count: int = 1


@dataclass(frozen=True, slots=True, eq=False)
class InkName:
    """A piece's name, or else its number, written where what is seen of `ring` has most room."""

    words: str
    number: int
    ring: Points
    hidden: tuple[Points, ...] = ()


Ink = Face | InkLine | InkMark | InkName


@dataclass(frozen=True, slots=True, eq=False)
class Panel:
    """One picture: what lies below comes first. `window` shows a part of it only (mm of cloth).

    `numbered` panels follow each other; `share` is its part of the drawing's width, against the others.
    """

    inks: tuple[Ink, ...]
    window: Box | None = None
    share: float = 1.0

    @property
    def box(self) -> Box:
        """Least x, least y, greatest x, greatest y of what is shown, mm."""
        if self.window:
            return self.window
        places = np.concatenate([_places(ink) for ink in self.inks if not isinstance(ink, InkName)])
        low, high = complex(places.real.min(), places.imag.min()), complex(places.real.max(), places.imag.max())
        return low.real, low.imag, max(high.real, low.real + 1.0), max(high.imag, low.imag + 1.0)

    def in_work(self) -> Iterator[InkLine]:
        """Yield the lines that are sewn in this step."""
        return (ink for ink in self.inks if isinstance(ink, InkLine) and ink.of)


@dataclass(frozen=True, slots=True, eq=False)
class StageDrawing:
    """The panels of one step and what sort of drawing it is; `alike` panels are drawn to one scale."""

    sort: str
    panels: tuple[Panel, ...]
    alike: bool = False


def drawn_panel(inks: Iterable[Ink], *, window: Box | None = None, share: float = 1.0) -> Panel:
    return Panel(tuple(inks), window, share)


def _places(ink: Face | InkLine | InkMark) -> Points:
    match ink:
        case Face():
            return ink.ring
        case InkLine():
            return ink.points
        case _:
            return np.array([ink.at])


FILLS = 0.45
"""Share of a picture that a seam in work has to take, or only the window round it is shown (ours)."""

MARGIN = 80.0
"""mm of cloth shown round it."""


def closer(shown: Panel) -> Panel:
    """Return the panel with a window round what is in work, where that is small in the whole picture."""
    lines = [ink.points for ink in shown.in_work()]
    if not lines:
        return shown
    work = np.concatenate(lines)
    x0, y0, x1, y1 = shown.box
    wide, high = float(np.ptp(work.real)), float(np.ptp(work.imag))
    if max(wide / (x1 - x0), high / (y1 - y0)) >= FILLS:
        return shown
    x, y = (work.real.min() + work.real.max()) / 2, (work.imag.min() + work.imag.max()) / 2
    reach = max(wide, high) / 2 + MARGIN
    window = (max(x0, x - reach), max(y0, y - reach), min(x1, x + reach), min(y1, y + reach))
    return Panel(shown.inks, window, shown.share)
