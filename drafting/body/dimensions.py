"""Every body dimension by name: its adult band, and how the tape is laid.

Bands are "accept without asking" bands for adults: *survey* ones are widened from the 1-99 % span
of 507 measured people (`Source.BDIMS`), *memory* ones are recalled. Outside
a band a maker is asked whether the value is right; nothing is refused for it. Names follow
`Source.ISO_8559` where it has them, the trade's otherwise.
"""

from __future__ import annotations

from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal, cast

from drafting.ground.nearest import joined, nearest
from drafting.ground.sources import Source

DimensionKind = Literal["height", "girth", "width", "length"]


@dataclass(frozen=True, slots=True)
class Dimension:
    """One body dimension: `low`..`high` is the adult band in mm, `how` the way to take it."""

    name: str
    kind: DimensionKind
    low: float
    high: float
    source: Source
    how: str
    older: tuple[str, ...] = ()


BANDS = {"survey": Source.BDIMS, "memory": Source.MEMORY}

# name, kind, adult band in cm, source of the band | older names; below it how it is taken
TABLE = """
height height 140..205 survey | stature
    Floor to crown, barefoot, heels together, back to a wall.
nape_height height 115..180 memory
    Floor to the bone at the back of the neck, barefoot.
head_girth girth 50..64 memory | head
    Largest girth of the head, above the ears.
neck_girth girth 28..50 memory | neck mid_neck
    Round the neck just below the Adam's apple.
neck_base_girth girth 31..54 memory | neck_base
    Round the foot of the neck: nape, both side neck points, hollow of the throat.
shoulder_length length 9..17 memory | shoulder
    Side neck point to the shoulder bone, each side.
shoulder_drop length 1.5..10 memory
    How far the shoulder bone lies below the side neck point, straight down.
back_shoulder_width width 32..56 memory
    Shoulder bone to shoulder bone over the nape.
across_back_width width 28..48 memory | across_back back_width
    Back arm fold to back arm fold, half-way down the armhole.
across_back_low_width width 29..50 memory
    The same at the height of the arm folds.
across_front_width width 27..46 memory | across_front chest_width
    Front arm fold to front arm fold, half-way down the armhole.
bust_girth girth 70..150 survey | chest_girth bust chest bust_or_chest
    Level, over the fullest front, under the arms, tape not tight.
high_bust_girth girth 68..145 memory | high_bust upper_chest
    Under the arms, above the fullest front, high over the back.
under_bust_girth girth 58..130 memory | underbust under_bust
    Level, right under the breasts.
waist_girth girth 52..150 survey | waist
    Round the waist level that the file names; breathe out, do not pull in.
hip_girth girth 75..160 survey | hip seat_girth seat
    Level, over the fullest seat.
axilla_depth length 10..26 memory
    Nape straight down to the height of the armpit fold.
scye_depth length 16..30 memory
    Nape down to a tape held level, close under the arms.
back_waist_length length 34..54 memory | nape_to_waist
    Nape along the spine to the waist level.
front_waist_length length 36..60 memory | front_waist
    Side neck point over the bust point to the waist level.
bust_point_depth length 20..40 memory | neck_to_bust_point
    Side neck point to the bust point.
bust_point_width width 14..27 memory | bust_point_spacing
    Bust point to bust point, straight across.
waist_to_hip length 10..27 memory
    Down the side, waist level to hip level.
upper_arm_girth girth 20..52 survey | upper_arm top_arm
    Arm hanging loose, at its fullest below the armpit.
elbow_girth girth 20..42 memory | elbow
    Arm bent square, over the point of the elbow.
forearm_girth girth 18..39 survey | forearm
    Fullest part below the elbow.
wrist_girth girth 12..23 survey | wrist
    Over the wrist bone.
hand_girth girth 17..28 memory
    Round the knuckles, thumb folded in.
arm_length length 48..72 memory | sleeve_length sleeve
    Shoulder bone over the slightly bent elbow to the wrist bone.
upper_arm_length length 26..44 memory
    Shoulder bone to the point of the elbow.
body_rise length 20..38 memory | rise
    Seated on a flat chair: waist level down the side to the seat.
total_crotch_length length 50..95 memory | crotch_length
    Front waist between the legs to back waist.
back_crotch_length length 25..55 memory
    The part of it from the inside leg point to the back waist.
inside_leg_length length 60..98 memory | inside_leg
    Crotch straight down to the floor.
outside_leg_length length 85..128 memory | outside_leg
    Side waist over the hip to the floor.
thigh_girth girth 42..85 survey | thigh
    Level, at the top of the leg.
lower_thigh_girth girth 32..62 memory
    Level, a hand above the knee.
knee_girth girth 30..56 survey | knee
    Over the kneecap, leg straight.
knee_height height 35..62 memory
    Middle of the kneecap to the floor.
calf_girth girth 27..52 survey | calf
    Largest girth of the lower leg.
ankle_girth girth 17..32 survey | ankle
    Smallest girth above the ankle bone.
heel_girth girth 28..42 memory
    Over heel and instep, foot pointed.
nape_to_floor height 115..185 memory
    Nape straight to the floor, in the shoes of the costume.
waist_to_floor height 85..130 memory
    Waist level at the side to the floor, in the shoes of the costume.
"""


def _read(table: str) -> dict[str, Dimension]:
    rows = table.strip().splitlines()
    found = {}
    for head, how in zip(rows[::2], rows[1::2], strict=True):
        about, _, older = head.partition(" | ")
        name, kind, band, source = about.split()
        low, high = (10 * float(cm) for cm in band.split(".."))
        names = tuple(older.split())
        found[name] = Dimension(
            name=name,
            kind=cast("DimensionKind", kind),
            low=low,
            high=high,
            source=BANDS[source],
            how=how.strip(),
            older=names,
        )
    return found


DIMENSIONS: MappingProxyType[str, Dimension] = MappingProxyType(_read(TABLE))
OLDER: MappingProxyType[str, str] = MappingProxyType({old: d.name for d in DIMENSIONS.values() for old in d.older})
LEAST = ("height", "waist_girth", "hip_girth")  # and bust_girth or high_bust_girth


def dimension_name(name: str) -> str | None:
    """Return the name of today for `name` (itself, or an older name), None for a stranger."""
    return name if name in DIMENSIONS else OLDER.get(name)


def meant_by(name: str) -> tuple[str, ...]:
    """Return the nearest names for a misspelt one: today's, else older ones; none for a known one."""
    if dimension_name(name):
        return ()
    return nearest(name, (*DIMENSIONS, "weight")) or nearest(name, OLDER)


def names_offered(name: str) -> str:
    """Return a sentence that offers the nearest known dimensions for a misspelt `name`."""
    near = meant_by(name)
    listed = "the README in measurements/ lists every name"
    return f"did you mean {joined(near, 'or')}?" if near else listed
