"""What is told of a garment that does not stay up by itself: legs hang from braces, anything else is hooked up."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.worn.placed.braces import Slides, Sunk
from drafting.worn.stands.words import Remark, remark


def held_told(slides: Slides | None, sank: Sunk | None) -> Iterator[Remark]:
    """Yield what holds a garment up that would slide down, and by how much one sank, mm."""
    if slides:
        key = "held.braces" if slides.legs else "held.hooked"
        yield remark(key, waist=slides.waist, widest=slides.widest)
    if sank:
        key = "held.sinks" if sank.legs else "held.sinks_round"
        yield remark(key, waist=sank.waist, by=sank.by)
