"""A draft on the cutter's table: what was drafted, all that moves it, and how it lies now.

What trueing adds is gathered beside what was asked, and each piece is moved by all of it at once, from where it
was: so the order in which corners and seams were put right does not matter, and the reverse finds the way back.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace

from drafting.draft.draft import Draft, EdgeRef
from drafting.fitting.lines.shift import Reshaped, Shift, reshaped
from drafting.geometry import Path
from drafting.ground.frozen import freeze


@dataclass(frozen=True)
class Longer:
    """By how much (mm) trueing made an edge longer at an end in all, and how far that end was moved for it."""

    mm: float = 0.0
    moved: complex = 0j


@dataclass(frozen=True)
class Met:
    """By how much (radians) corners that meet at a seam were turned, each of them and in all."""

    each: tuple[float, ...]
    turn: float = 0.0


@dataclass(frozen=True)
class Trueing:
    """A draft `before`, the shifts of each of its pieces (what was asked first), and the draft as they make it.

    `longer` says what trueing did at the ends of edges (True: at the start), `met` what it did to corners.
    """

    before: Draft
    draft: Draft
    shifts: Mapping[str, tuple[Shift, ...]] = field(default_factory=dict)
    found: Mapping[str, Reshaped] = field(default_factory=dict)
    longer: Mapping[tuple[EdgeRef, bool], Longer] = field(default_factory=dict)
    met: Mapping[tuple[EdgeRef, ...], Met] = field(default_factory=dict)

    def __post_init__(self) -> None:
        freeze(self, "shifts", "found", "longer", "met")

    def with_shift(self, shift: Shift) -> Trueing:
        """Return the work with a piece moved by one shift more."""
        if not (shift.corners or shift.turns):
            return self
        first, *more = self.shifts.get(shift.piece, (Shift(shift.piece),))
        at = next((k for k, one in enumerate(more) if one.joins(shift)), None)
        if at is None:
            more.append(shift)
        else:
            more[at] = more[at].joined(shift)
        return self._with(shift.piece, (first, *more))

    def paths(self, piece: str, edge: str) -> tuple[Path, Path]:
        """Return the path of an edge as it was and as it has become, with the same joints."""
        if piece not in self.found:
            path = self.before[piece][edge].path
            return path, path
        found = self.found[piece]
        return found.ways[edge].path, found.after[edge].path

    def asked(self, shift: Shift) -> Trueing:
        """Return the work with a piece moved as an alteration asks for it."""
        return self._with(shift.piece, (shift,))

    def _with(self, name: str, shifts: tuple[Shift, ...]) -> Trueing:
        found = reshaped(self.before[name], shifts, self.found.get(name))
        return replace(
            self,
            draft=self.draft.with_pieces([found.after]),
            shifts={**self.shifts, name: shifts},
            found={**self.found, name: found},
        )


def started(draft: Draft, shifts: Iterable[Shift]) -> Trueing:
    """Return the work with what an alteration asks for done, and nothing trued."""
    work = Trueing(draft, draft)
    for shift in shifts:
        work = work.asked(shift)
    return work
