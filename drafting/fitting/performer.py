"""What a performer tries in the garment, to be checked off: each with a place to say where it pulls."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.fitting.bands import GarmentSort
from drafting.ground.lengths import told

ALWAYS = (
    "Sit upright, cross the legs, rise",
    "Bend to the toes",
    "Kneel on one knee and rise",
    "Everything the role does on the floor: lie, roll, crawl",
    "Lift and be lifted; harness and microphone pack in their places",
    "Quick change, timed, with the dresser, in the dark, one hand free",
    "Ten minutes worn: is the hem where it was?",
)

ABOVE = (
    "Both arms overhead: how far does the hem rise?",
    "Both arms forward and crossed, as in a hug",
    "One arm out to the side",
    "Turn the head; the wig goes through the neck",
    "Sing and breathe deep",
)


ON_THE_FOOT = (
    "Rise onto the toes and bend the foot: does the strap lie close under the arch, before the heel?",
    "Turn and stop short: does an edge catch on the other shoe?",
    ALWAYS[2],
    ALWAYS[3],
    "Run up and down stairs: is every button still shut?",
    ALWAYS[5],
)


def to_try(sort: GarmentSort) -> Iterator[str]:
    """Yield what is tried in a garment of this sort, the upper body first."""
    if sort in (GarmentSort.LEGS, GarmentSort.WAISTED, GarmentSort.FOOT):
        yield f"Climb steps of {told(180.0)} and of {told(400.0)}; lunge; squat"
    else:
        yield from ABOVE
    yield from ON_THE_FOOT if sort is GarmentSort.FOOT else ALWAYS
