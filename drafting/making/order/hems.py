"""What becomes of the raw edge of a hem: rolled, caught behind a lining, overcast, or left (common practice); and
what is said of a hem that trips."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.costume.garment import MadeGarment
from drafting.fabric import Fabric, handling
from drafting.fabric.handling import frays
from drafting.making.model import Said, said

CLEARS = 25.0
"""mm by which a walking hem clears the floor (common practice: 2 to 4 cm)."""


def clearances(garment: MadeGarment) -> list[float]:
    """Return how far the garment's hem was found to end above the floor, mm; less than nothing: below it."""
    found = (finding for finding in garment.findings if finding.check == "hem clearance")
    return [finding.value for finding in found if isinstance(finding.value, float)]


def low_hems(garment: MadeGarment) -> Iterator[Said]:
    """Yield the caution of a hem that is too low to walk in, or that trails."""
    for clear in clearances(garment):
        if clear < 0:
            yield said("caution.hem_trails", garment=garment.name, on=-clear)
        elif clear < CLEARS:
            yield said("caution.hem_low", garment=garment.name, clear=clear, wanted=CLEARS)


NARROW = 20.0
"""mm: no deeper is a hem that is rolled or trimmed to a hair (common practice: 6 to 15)."""


def hem_made(fabric: Fabric | None, depth: float, *, caught: bool, by_hand: bool = False) -> Iterator[Said]:
    """Yield how a hem's raw edge is made in this cloth; of a knit and of felt it is left as it was cut.

    It is turned up `depth` mm. One that is `caught` by hand lies beneath a lining; one sewn `by_hand` has no
    row of a machine; one in cloth that shows through is trimmed narrow, but for what is there to be let down.
    """
    if fabric is None:
        return
    takes = handling(fabric)
    if caught and takes.iron and takes.holds != "clips":
        yield said("do.hem_caught")
    elif takes.neatens == "french" and fabric.weave != "knit" and depth > NARROW:
        yield said("do.hem_turned")
    elif takes.neatens == "french" and fabric.weave != "knit":
        yield said("do.hem_rolled_by_hand" if by_hand else "do.hem_rolled")
    elif frays(fabric) and takes.neatens == "overcast":
        yield said("do.hem_overcast")
