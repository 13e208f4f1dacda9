"""What the drawing of a wearer consists of: views, and one tape line for each measure."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Literal

from drafting.geometry import Path
from drafting.geometry.path import Box
from drafting.ground.frozen import freeze

ViewName = Literal["front", "side", "back"]


@dataclass(frozen=True, slots=True)
class Lines:
    """A tape in one view: what is `seen`, what lies on the `far` side, and its two `ends`."""

    seen: tuple[Path, ...]
    far: tuple[Path, ...] = ()
    ends: tuple[complex, ...] = ()

    def moved(self, by: complex) -> Lines:
        seen, far = (tuple(p.moved(by) for p in paths) for paths in (self.seen, self.far))
        return Lines(seen, far, tuple(end + by for end in self.ends))


@dataclass(frozen=True)
class FigureView:
    """The figure from one side, mm, y up from the floor.

    `shapes` are filled, later ones over earlier; `details` are light lines within. `tapes` has the
    lines of each measure that shows from this side.
    """

    name: ViewName
    shapes: tuple[Path, ...]
    details: tuple[Path, ...]
    tapes: Mapping[str, Lines]
    box: Box

    def __post_init__(self) -> None:
        freeze(self, "tapes")

    def moved(self, by: complex) -> FigureView:
        shapes, details = (tuple(p.moved(by) for p in ps) for ps in (self.shapes, self.details))
        x0, y0, x1, y1 = self.box
        box = (x0 + by.real, y0 + by.imag, x1 + by.real, y1 + by.imag)
        tapes = {name: lines.moved(by) for name, lines in self.tapes.items()}
        return replace(self, shapes=shapes, details=details, tapes=tapes, box=box)


@dataclass(frozen=True)
class Drawing:
    """All views side by side on `width` by `height` mm, the lower left corner at 0."""

    width: float
    height: float
    views: tuple[FigureView, ...]

    def tape(self, name: str) -> tuple[Lines, ...]:
        """Return a measure's lines in every view that shows it."""
        return tuple(view.tapes[name] for view in self.views if name in view.tapes)

    @property
    def taped(self) -> tuple[str, ...]:
        """The measures that have a tape line, each once."""
        return tuple(dict.fromkeys(name for view in self.views for name in view.tapes))
