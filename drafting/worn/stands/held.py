"""What is told of a garment that does not stay up by itself: legs hang from braces, anything else is hooked up.

One cause is told once: how such a garment is drawn, where it stands off, its hem on the floor come of it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from drafting.worn.placed.braces import Slides, Sunk
from drafting.worn.stands.model import LevelWorn
from drafting.worn.stands.words import Remark, remark


def held_told(slides: Slides | None, sank: Sunk | None, *, on_floor: bool = False) -> Iterator[Remark]:
    """Yield what holds a garment up that would slide down, and by how much one sank, mm (`on_floor`: so far)."""
    if slides:
        key = "held.braced" if slides.chosen else "held.braces" if slides.legs else "held.hooked"
        yield remark(key, waist=slides.waist, widest=slides.widest)
    if sank:
        key = "held.sinks" if sank.legs else "held.sinks_round"
        yield remark(f"{key}_floor" if on_floor else key, waist=sank.waist, by=sank.by)


def drawn_by_the_cut(levels: Iterable[LevelWorn], body: Mapping[str, float]) -> tuple[LevelWorn, ...]:
    """Return the levels of a garment that slid: strain is trusted where drafted narrower than the `body`.

    `body` holds the girth that each level was drafted for, mm. Elsewhere the garment's own weight draws it.
    """
    return tuple(
        one if one.drafted < body.get(one.name, 0.0) else replace(one, strain=replace(one.strain, trusted=False))
        for one in levels
    )
