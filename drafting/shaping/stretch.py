"""What the cloth's stretch does to a draft: how much is used, which way it lies, what to say.

A share u of the stretch s is worn: girth = body / (1 + u s) (exact; u of 0.2 to 0.5 is worn with
comfort, from memory). Greatest stretch goes around the body.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from drafting.fabric import Fabric, must_reach, needed_stretch
from drafting.fabric.cloth import POOR_RECOVERY
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.lengths import told

PULL = 0.6
"""Share of the stretch that is used for the moment of pulling on (ours)."""

SEAT_STRAIN = 0.25
"""What the skin of the seat stretches by when sitting down (`Source.KIRK_IBRAHIM`: 25-30 %)."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """How a draft uses the cloth's stretch; fractions, and factors on lengths.

    `around` and `along` are the stretches that lie around and along the body, `share` what is worn
    of them (0: drafted with ease). `length` shortens lengths, `pull` is what a girth opens to when
    pulled on, `turned` says that the warp runs around the body.
    """

    around: float = 0.0
    along: float = 0.0
    share: float = 0.0
    length: float = 1.0
    pull: float = 1.0
    turned: bool = False

    @property
    def used(self) -> float:
        """The stretch that is worn, around the body."""
        return self.share * self.around


def settle_stretch(fabric: Fabric | None, share: float) -> Stretch:
    """Return how `share` of the cloth's stretch is used.

    Raises `DraftError` where a share is asked for and there is no stretch to take it from.
    """
    around = fabric.greatest_stretch if fabric else 0.0
    pull = 1 + PULL * around
    if share <= 0:
        return Stretch(around=around, pull=pull)
    if fabric is None or around <= 0:
        cloth = fabric.title if fabric else "no cloth is named, so none"
        raise DraftError(
            f"a girth smaller than the body needs cloth that stretches, and {cloth} stretches 0 %",
            value=f"a stretch share of {share:g}",
            reach="0 for cloth without stretch",
            turn="draft it for a woven (stretch_share = 0, with ease), or choose a cloth that stretches",
        )
    along = min(fabric.stretch_along, fabric.stretch_across)
    shorter = min(share * around / 2, share * along)  # lengths give half of what girths give
    turned = fabric.stretch_along > fabric.stretch_across
    return Stretch(around=around, along=along, share=share, length=1 / (1 + shorter), pull=pull, turned=turned)


def stretch_findings(
    stretch: Stretch, fabric: Fabric | None, around: Mapping[str, float], girth: Mapping[str, float]
) -> tuple[Finding, ...]:
    """Return what has to be said about stretch: what is needed, recovery, which way it lies."""
    return tuple(_said(stretch, fabric, around, girth)) if fabric else ()


def _said(
    stretch: Stretch, fabric: Fabric, around: Mapping[str, float], girth: Mapping[str, float]
) -> Iterator[Finding]:
    worn = {level: needed_stretch(around[level], girth[level]) for level in girth}
    if max(worn.values()) <= 0:
        return
    level = max(worn, key=worn.__getitem__)
    must_reach(level, around[level], girth[level], stretch.around)
    yield Finding(
        "needed stretch",
        "note",
        level,
        worn[level],
        stretch.around,
        f"Worn, the cloth stretches {100 * worn[level]:.0f} % around the {level} "
        f"({told(girth[level])} cut, {told(around[level])} to go round) of the "
        f"{100 * stretch.around:.0f} % it has; eases are left out.",
    )
    yield from _recovery(fabric)
    yield from _direction(stretch, fabric)
    left = (1 + stretch.around) / (1 + worn["hip"]) - 1 if "hip" in worn else SEAT_STRAIN
    if left < SEAT_STRAIN:
        yield Finding(
            "stretch left",
            "warning",
            "hip",
            left,
            SEAT_STRAIN,
            f"Worn, {100 * left:.0f} % of stretch is left at the seat; sitting down takes 25-30 %, so "
            "it will strain or slide down. Use a smaller share, or a cloth that stretches more.",
        )


def _recovery(fabric: Fabric) -> Iterator[Finding]:
    if fabric.recovery is None:
        yield Finding(
            "recovery",
            "note",
            fabric.title,
            None,
            POOR_RECOVERY,
            f"No recovery is known of {fabric.title}: stretch a swatch, release it and measure, or it may bag.",
        )
    elif fabric.recovery < POOR_RECOVERY:
        yield Finding(
            "recovery",
            "warning",
            fabric.title,
            fabric.recovery,
            POOR_RECOVERY,
            f"{fabric.title} goes back by only {100 * fabric.recovery:.0f} % of what it was stretched "
            f"({100 * POOR_RECOVERY:.0f} % is wanted): it will bag.",
        )


def _direction(stretch: Stretch, fabric: Fabric) -> Iterator[Finding]:
    if not stretch.turned:
        return
    yield Finding(
        "stretch direction",
        "warning" if fabric.one_way else "note",
        "front",
        stretch.around,
        stretch.along,
        f"{fabric.title} stretches more along the selvedge ({100 * fabric.stretch_along:.0f} %) than "
        f"across ({100 * fabric.stretch_across:.0f} %), so the pieces are turned: their grainline runs "
        "around the body." + (" Its nap then lies sideways." if fabric.one_way else ""),
    )
