"""What becomes of the raw edge of a hem: rolled, caught behind a lining, overcast, or left (common practice)."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.fabric import Fabric, handling
from drafting.fabric.handling import frays
from drafting.making.model import Said, said


def hem_made(fabric: Fabric | None, *, caught: bool) -> Iterator[Said]:
    """Yield how a hem's raw edge is made in this cloth; of a knit and of felt it is left as it was cut.

    One that is `caught` by hand lies beneath a lining.
    """
    if fabric is None:
        return
    takes = handling(fabric)
    if caught and takes.iron and takes.holds != "clips":
        yield said("do.hem_caught")
    elif takes.neatens == "french" and fabric.weave != "knit":
        yield said("do.hem_rolled")
    elif frays(fabric) and takes.neatens == "overcast":
        yield said("do.hem_overcast")
