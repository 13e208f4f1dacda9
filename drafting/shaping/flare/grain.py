"""The warp of each flare panel: which seams lie on the true bias, and how far off the others are.

A panel has one warp and two seams, at the angle g to each other. Both lie at 45 to the warp only
where g is 0 or 90 (mod 90), so a rule has to choose (plane geometry).
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Protocol

from drafting.geometry import Path
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told

RULES = ("alternate", "pairs", "mean", "centre", "plumb", "everywhere")
"""What the grain may follow; `everywhere` is refused unless it can be had."""

TRUE_BIAS, WITHIN = 45.0, 1.0
"""degrees: the true bias, and how near to it counts (ours)."""

SHARE = 0.035
"""Greatest flare over seam length at which both seams are still within 1 degree: 2 degrees."""

NO_FLARE = 1e-6


class PanelBetweenSeams(Protocol):
    """A panel between two seams that run down from the waist, `angle` degrees apart."""

    @property
    def back(self) -> Path: ...

    @property
    def front(self) -> Path: ...

    @property
    def angle(self) -> float: ...


@dataclass(frozen=True)
class SeamBias:
    """One seam between two panels: its number (1 at the back), flare, angle to the warp (0..90) on
    its back and front panel, and whether the rule chose it."""

    number: int
    flare: float
    back: float
    front: float
    chosen: bool

    @property
    def true(self) -> bool:
        return all(abs(a - TRUE_BIAS) <= WITHIN for a in (self.back, self.front))


def chosen_seams(flare: Sequence[float]) -> tuple[int, ...]:
    """Return the stations whose seam both neighbours take as their bias seam.

    No panel is taken twice; as many flare seams as possible, then those that carry most flare: a
    recurrence over the panels. `flare` is the amount at each station, ends included.

    >>> chosen_seams([0, 80, 80, 80, 0]), chosen_seams([0, 20, 90, 0])
    ((1, 3), (2,))
    """
    best: list[tuple[int, float, tuple[int, ...]]] = [(0, 0.0, ())] * len(flare)
    for k in range(1, len(flare)):
        best[k] = best[k - 1]
        if k >= 2 and flare[k - 1] > NO_FLARE:
            count, carried, seams = best[k - 2]
            with_it = (count + 1, carried + flare[k - 1], (*seams, k - 1))
            best[k] = max(best[k], with_it, key=lambda found: found[:2])
    return best[-1][2]


def warps(panels: Sequence[PanelBetweenSeams], flare: Sequence[float], rule: str) -> tuple[float, ...]:
    """Return the direction of the warp on each panel, degrees, as the panels lie in the whole tail.

    The warp falls away from a chosen seam on both sides, as a chevron, so that both sides stretch
    alike. Raises `DraftError` where `everywhere` cannot be had.
    """
    if rule == "everywhere":
        _all_or_nothing(panels, flare)
        rule = "mean"
    seams = chosen_seams(flare)
    own = {panel: seam for seam in seams for panel in (seam - 1, seam)}
    found = []
    for k, panel in enumerate(panels):
        seam = own.get(k, _lone(k, flare)) if rule in ("alternate", "pairs") else None
        found.append(_warp(panel, k, seam, rule) % 180)
    return tuple(found)


def _lone(panel: int, flare: Sequence[float]) -> int | None:
    """Return the flared seam with most flare beside a panel that no chosen seam has taken."""
    beside = [j for j in (panel, panel + 1) if 0 < j < len(flare) - 1 and flare[j] > NO_FLARE]
    return max(beside, key=lambda j: flare[j]) if beside else None


def _warp(panel: PanelBetweenSeams, k: int, seam: int | None, rule: str) -> float:
    back, front = _degrees(panel.back.leave), _degrees(panel.front.leave)
    middle = (back + front) / 2
    if rule in ("alternate", "pairs"):
        if seam is None:
            return 90.0
        return back + TRUE_BIAS if seam == k else front - TRUE_BIAS
    if rule == "mean":
        return middle + (TRUE_BIAS if k % 2 else -TRUE_BIAS)
    return middle if rule == "centre" else 90.0


def seam_biases(
    panels: Sequence[PanelBetweenSeams], warp: Sequence[float], flare: Sequence[float], rule: str
) -> tuple[SeamBias, ...]:
    """Return every inner seam with its angle to the warp on both of its panels."""
    chosen = chosen_seams(flare) if rule in ("alternate", "pairs") else ()
    found = []
    for i, (one, two) in enumerate(pairwise(zip(panels, warp, strict=True)), 1):
        seam = _degrees(one[0].front.leave)
        angles = angle_to_warp(seam, one[1]), angle_to_warp(seam, two[1])
        found.append(SeamBias(i, flare[i], *angles, i in chosen))
    return tuple(found)


def angle_to_warp(direction: float, warp: float) -> float:
    """Return the angle between a line and the warp, 0..90 degrees.

    >>> angle_to_warp(-80.0, 35.0)
    65.0
    """
    off = abs(direction - warp) % 180
    return min(off, 180 - off)


def with_plain_seams(cuts: Sequence[float], flare: Sequence[float]) -> tuple[list[float], list[float]]:
    """Return stations and flare with a plain seam midway between neighbouring flared ones.

    So m flare seams stand on 2m panels, and every one of them can be true on both sides.
    """
    inner = [i for i in range(1, len(cuts) - 1) if flare[i] > NO_FLARE]
    wide, amounts = [cuts[0]], [flare[0]]
    for n, i in enumerate(inner):
        wide.append(cuts[i])
        amounts.append(flare[i])
        if n + 1 < len(inner):
            wide.append((cuts[i] + cuts[inner[n + 1]]) / 2)
            amounts.append(0.0)
    return [*wide, cuts[-1]], [*amounts, flare[-1]]


def _all_or_nothing(panels: Sequence[PanelBetweenSeams], flare: Sequence[float]) -> None:
    """Raise where some panel between two flared seams is not at 0 or 90 degrees between them."""
    for k, panel in enumerate(panels):
        inner = [j for j in (k, k + 1) if 0 < j < len(panels) and flare[j] > NO_FLARE]
        off = abs(panel.angle) % 90
        if len(inner) < 2 or min(off, 90 - off) <= 2 * WITHIN:
            continue
        length = panel.front.length
        raise DraftError(
            f"tail seam {k + 1} cannot lie on the true bias on both its panels: panel {k + 1} has one "
            f"warp, and its two seams part by {panel.angle:.1f} degrees",
            value=f"grain on every seam, {told(flare[k + 1])} of flare on a seam of {told(length)}",
            reach=f"up to {told(SHARE * length, 'most')} a seam (0.035 x its length)",
            turn="take grain alternate (every other seam exact), pairs (twice the panels, every flare "
            "seam exact) or mean (no seam exact, none far off)",
        )


def _degrees(direction: complex) -> float:
    return math.degrees(cmath.phase(direction))
