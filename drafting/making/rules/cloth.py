"""What the cloth and the draft ask for: neatened once, starched once, as many holes as are drawn.

All is common practice.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from drafting.checks.enclosed import french
from drafting.costume.garment import MadeGarment
from drafting.fabric import Fabric, handling
from drafting.fabric.handling import frays
from drafting.making.model import Step
from drafting.making.order.holes import holes
from drafting.making.settings.stitches import OVEREDGE


def neatened_once(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """Seams of washed cloth that frays are neatened once; an overedge neatens itself; sheer seams are French."""
    if fabric is None:
        return
    takes = handling(fabric)
    lined = any(piece.material == "lining" for piece in garment.draft.pieces)
    for step in steps:
        if step.verb not in ("join", "set in") or not step.setting or not step.seams:
            continue
        overedge, done = step.setting.stitch in OVEREDGE, "neatens" in step.does
        if overedge and done:
            yield f"{step.key} overcasts what is overcast already"
        raw = frays(fabric) and takes.neatens == "overcast" and takes.water and not lined and not overedge
        sheer = takes.neatens == "french" and fabric.weave != "knit" and not lined and not overedge
        if (raw or (sheer and step.verb == "join")) and not done:
            yield f"{step.key} leaves raw edges in a cloth that is washed or shows them"
        seam = next(s for s in garment.draft.seams if s.name == step.seams[0])
        if french(garment.draft, seam, fabric) and not any(one.key.endswith(".french") for one in step.say):
            yield f"{step.key} is no French seam in a sheer cloth"


def starched_once(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """What is starched again after every wash was starched once in the making."""
    if fabric is not None and fabric.takes_starch and not any("starches" in step.does for step in steps):
        yield "is to be starched again, and was never starched"


def holed_as_drawn(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """As many buttonholes are worked as are drawn; their test piece is tried before them."""
    drawn = sum(one.count for one in holes(garment.draft))
    worked = sum(step.count for step in steps if step.verb == "buttonhole")
    if drawn != worked:
        yield f"{worked} buttonholes are worked, {drawn} are drawn"
    for step in steps:
        keys = [one.key for one in step.say]
        if step.verb == "buttonhole" and (not keys[0].endswith(".holes_tried") or step.setting is None):
            yield f"{step.key} has no test piece or no stitch"
