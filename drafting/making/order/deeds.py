"""What the sentences of a step do to the cloth: pressed, stayed, trimmed, neatened, closed, turned.

Rules of order are asked of deeds: what presses a seam before it was tried on is wrong whatever it is called.
"""

from __future__ import annotations

from collections.abc import Iterable

from drafting.making.model import Deed, Said

DEEDS: dict[str, tuple[Deed, ...]] = {
    "fuse": ("presses",),
    "fuse_block": ("presses",),
    "fuse_bands": ("presses",),
    "dart": ("presses",),
    "inner_dart": ("presses",),
    "press_bias": ("presses",),
    "press_bias_side": ("presses",),
    "press_open": ("presses",),
    "press_side": ("presses",),
    "press_pleat": ("presses", "trims"),
    "press_neck": ("presses", "trims"),
    "trim_yoke": ("trims",),
    "turn_yoke": ("presses", "neatens"),
    "turn_yoke_front": ("presses", "neatens"),
    "french": ("presses", "trims", "neatens"),
    "neaten": ("neatens",),
    "neaten_open": ("neatens",),
    "neaten_side": ("neatens",),
    "neaten_narrow": ("trims", "neatens"),
    "turn_out": ("trims", "turns", "presses"),
    "strip_turned": ("trims", "turns", "presses"),
    "strip_turned_neat": ("turns", "presses"),
    "turn_fall": ("trims", "turns", "presses"),
    "fold_back": ("neatens", "presses"),
    "fold_back_stand": ("neatens", "trims", "turns", "presses"),
    "inside": ("closes",),
    "turned_back": ("closes",),
    "level": ("levels", "trims"),
    "starch": ("starches",),
    "starch_last": ("starches", "presses"),
    "set_press": ("neatens", "presses"),
    "set_press_coat": ("presses",),
    "vent": ("presses",),
    "waist": ("presses",),
    "zip_strip": ("presses", "stays"),
    "zip_invisible": ("presses", "stays"),
    "fly_facing": ("trims", "turns", "presses"),
    "line_sleeves": ("closes",),
    "roll_tape": ("stays",),
    "casing_close": ("closes",),
    "free_front": ("neatens", "presses"),
    "free_front_unlined": ("presses",),
    "turned_lined": ("trims", "stays"),
    "turned_straight_lined": ("stays",),
    "level_lining": ("levels",),
    "level_lining_whole": ("levels",),
    "clip_curve": ("trims",),
    "pocket_on": ("neatens", "presses"),
    "flap_on": ("trims", "presses"),
    "pocket_bag": ("trims", "presses"),
    "slant_mouth": ("trims", "presses"),
    "slant_back": ("neatens",),
    "seam_bag": ("presses",),
    "seam_back": ("presses",),
    "seam_pocket": ("neatens",),
}
"""By the sentence's name, whichever section it stands in: a cold twin creases where its elder presses."""


def deeds_of(say: Iterable[Said]) -> tuple[Deed, ...]:
    """Return what happens to the cloth in these sentences, each once.

    >>> deeds_of([Said("do.press_open"), Said("cold.press_open")])
    ('presses',)
    """
    found = (deed for one in say for deed in DEEDS.get(one.key.partition(".")[2], ()))
    return tuple(dict.fromkeys(found))
