"""The newer garments and their choices, each as one way to ask for it, for tests of many people."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cache

from drafting.body import Body, wearer
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.fabric import Fabric
from drafting.ground.errors import DraftError
from tests.blocks.figures import errors
from tests.blocks.sleeves import odd_bodies
from tests.blocks.test_contact_sheets_of_settings import six
from tests.drawn_bodies import drawn, far
from tests.making.orders import WOVEN
from tests.worn.unusual import child

Way = tuple[str, Mapping[str, object]]

_LAP = {"breasted": "double", "front_overlap": 75.0, "overlap_above": 1.1}
_CUFF = {"turned_cuff": 100.0, "vent": "centre"}
_FALL = {"fly": False, "fall_front": True}

WAYS: Mapping[str, Way] = {
    "coat": ("coat", {}),
    "coat, shawl": ("coat", {"lapel_style": "shawl", **_CUFF}),
    "coat, double": ("coat", {"lapel_style": "peaked", **_LAP}),
    "coat, double shawl": ("coat", {"lapel_style": "shawl", **_LAP}),
    "coat, stand": ("coat", {"lapel_style": "none", "collar_stand": 42.0, **_CUFF}),
    "coat, side vents": ("coat", {"vent": "sides", "lapel_style": "step"}),
    "coat, long": ("coat", {"coat_length": 1000.0, "vent": "centre", "skirt_flare": 60.0, "cuff_vent": False}),
    "coat, closed lapel": ("coat", {"lapel_style": "closed", "turned_cuff": 120.0, "cuff_vent": False}),
    "spencer": ("spencer", {}),
    "spencer, stand": ("spencer", {"lapel_style": "none", **_LAP}),
    "tailcoat, shawl": ("tailcoat", {"lapel_style": "shawl"}),
    "waistcoat": ("waistcoat", {}),
    "waistcoat, double": ("waistcoat", {"breasted": "double"}),
    "waistcoat, double, high": ("waistcoat", {"breasted": "double", "v_above_bust": 60.0, "bust_dart": "side"}),
    "shirt, wing": ("shirt", {"collar": "wing", "tails": "straight", "back_pleat": "box"}),
    "shirt, flat": ("shirt", {"collar": "flat", "opening": "front", "sleeve_opening": "bound"}),
    "shirt, tails": (
        "shirt",
        {"back_shaping": "yoke", "back_pleat": "inverted", "tails": "shaped", "sleeve_opening": "placket"},
    ),
    "shirt, side pleats": (
        "shirt",
        {"collar": "stand", "back_shaping": "yoke", "back_pleat": "side pleats", "facing": "separate"},
    ),
    "top, lantern": ("fitted-top", {"sleeve_style": "lantern"}),
    "top, two puffs": ("fitted-top", {"sleeve_style": "two puffs"}),
    "top, cap": ("fitted-top", {"sleeve_style": "cap"}),
    "top, turned cuff": ("fitted-top", {"turned_cuff": 80.0}),
    "mutton": ("mutton-top", {}),
    "bishop": ("bishop-top", {}),
    "peplum": ("peplum-top", {}),
    "peplum, full": ("peplum-top", {"peplum_angle": 360.0, "peplum_length": 220.0, "fastening": "buttons"}),
    "breeches": ("breeches", {}),
    "breeches, buckle": ("breeches", {"knee_finish": "buckle", "leg_slit": 120.0}),
    "knee breeches, fall": ("knee-breeches", {**_FALL, "knee_finish": "buckle"}),
    "trousers, fall": ("trousers", _FALL),
    "trousers, fall, tapered": ("trousers", {**_FALL, "leg": "tapered", "fall_depth": 150.0}),
    "skirt, lined": ("skirt", {"lining": "whole"}),
    "skirt, gored, lined": ("skirt", {"skirt_cut": "gored", "skirt_ends": "floor", "lining": "whole"}),
    "skirt, circle, lined": ("skirt", {"skirt_cut": "full circle", "lining": "whole"}),
    "skirt, tiers, lined": ("skirt", {"skirt_cut": "tiered", "skirt_ends": "ankle", "lining": "whole"}),
    "overskirt": ("overskirt", {}),
    "overskirt, lined": ("overskirt", {"lining": "whole", "loop_places": "all round", "skirt_opens": "front"}),
    "overskirt, gored": ("overskirt", {"skirt_cut": "gored", "skirt_ends": "ankle", "loop_places": "back"}),
    "cape, lined": ("cape", {"lining": "whole"}),
    "cape, hood": ("cape", {"cape_neck": "hood", "shoulder_fit": "seam", "lining": "whole", "cape_ends": "floor"}),
    "cape, circle": ("cape", {"cape_cut": "full circle", "shoulder_fit": "none", "cape_closes": "ties"}),
    "spats": ("spats", {}),
    "spats, high": ("spats", {"spat_height": 260.0, "spat_ease": 15.0}),
    "skirt, hem bone": ("skirt", {"skirt_cut": "gored", "stiff_hem": "bone"}),
    "skirt, slit, hem bone": ("skirt", {"walking_slit": "yes", "stiff_hem": "bone", "bone_kind": "flat"}),
    "skirt, hem braid": ("skirt", {"skirt_cut": "half circle", "stiff_hem": "braid", "lining": "whole"}),
    "cape, hem braid": ("cape", {"stiff_hem": "braid"}),
    "coat, hem bone": ("coat", {"vent": "sides", "stiff_hem": "bone"}),
}
"""What is asked for, by a name for the reader: garment and the choices that differ."""


OF_A_GROWN_WEARER = ("turned_cuff", "spat_height", "coat_length", "peplum_length")
"""Lengths asked for in mm here, as a grown wearer has them: a doll's are smaller by her height."""


def asked(way: str, body: Body, fabric: Fabric | None = WOVEN) -> MadeGarment:
    block, choices = WAYS[way]
    share = min(1.0, body["height"] / 1600.0)
    own = {n: v * share for n, v in choices.items() if n in OF_A_GROWN_WEARER and isinstance(v, float)}
    return draft_garment(body, fabric, block, {**choices, **own})


@cache
def made_up() -> tuple[Body, ...]:
    """Return the hardest bodies that were made up: far ones, the six, odd ones, a child, uneven shoulders."""
    uneven = wearer({**_EVEN, "shoulder_drop": (40.0, 60.0)}, title="uneven shoulders")
    return (*drawn(3), *far(), *six().values(), *odd_bodies().values(), child(1160.0), uneven)


_EVEN = {"height": 1700.0, "bust_girth": 900.0, "waist_girth": 720.0, "hip_girth": 970.0}


def amiss(way: str, body: Body) -> Iterator[str]:
    """Yield each refusal and error of one garment on one body."""
    try:
        made = asked(way, body)
    except DraftError as refusal:
        yield f"{body.title}: refused: {refusal}"
        return
    for said in {*errors(made), *(f.message for f in made.findings if f.level == "error")}:
        yield f"{body.title}: {said}"
