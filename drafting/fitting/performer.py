"""What a performer tries in the garment, to be checked off: each with a place to say where it pulls."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.fitting.bands import GarmentSort
from drafting.ground.lengths import told

LIFTED = "Lift and be lifted; harness and microphone pack in their places"
QUICKLY = "Quick change, timed, with the dresser, in the dark, one hand free"

ALWAYS = (
    "Sit upright, cross the legs, rise",
    "Bend to the toes",
    "Kneel on one knee and rise",
    "Everything the role does on the floor: lie, roll, crawl",
    LIFTED,
    QUICKLY,
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
    QUICKLY,
)


SEATED = (
    "In the wearer's own chair: push the wheels, far forward and far back; turn on the spot",
    "Every hem, tail and tie clear of the wheels, whichever way they turn",
    "Lean to the feet and to either side, and sit up again: does it gape or ride up behind?",
    "Move over into another seat and back, as it is done every day",
    LIFTED,
    QUICKLY,
    "Ten minutes in the chair: does anything bunch or lie hard under the seat, the thighs or the back?",
)
"""What a wearer tries who does not stand: nobody is asked to climb, to kneel or to rise."""


def to_try(sort: GarmentSort, *, seated: bool = False) -> Iterator[str]:
    """Yield what is tried in a garment of this sort, the upper body first; by a `seated` wearer in the chair."""
    if seated:
        yield from () if sort in (GarmentSort.LEGS, GarmentSort.WAISTED, GarmentSort.FOOT) else ABOVE
        yield from SEATED
        return
    if sort in (GarmentSort.LEGS, GarmentSort.WAISTED, GarmentSort.FOOT):
        yield f"Climb steps of {told(180.0)} and of {told(400.0)}; lunge; squat"
    else:
        yield from ABOVE
    yield from ON_THE_FOOT if sort is GarmentSort.FOOT else ALWAYS
