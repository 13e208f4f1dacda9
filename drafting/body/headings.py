"""What heads a column of a table of wearers: a maker's words for a measure, its unit, its hand.

"Bust"  "bust_girth"  "Waist (in)"  "Hip circumference, cm"  "Shoulder (left)"  "Played by"
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from drafting.body.dimensions import dimension_name
from drafting.body.toml_reader import KEYS
from drafting.ground.units import LENGTH_UNITS, WEIGHT_UNITS

WEARER, ROLE, UNDERSTUDIES, ID, UNIT = "wearer", "role", "understudies", "id", "unit"

ABOUT_HER = {
    **dict.fromkeys(("wearer", "name", "performer", "player", "actor", "dancer", "singer", "played_by"), WEARER),
    **dict.fromkeys(("role", "character", "part", "plays"), ROLE),
    **dict.fromkeys(("understudies", "understudy_for", "understudy_of", "covers", "stands_in_for"), UNDERSTUDIES),
    **dict.fromkeys(("id", "wearer_id", "performer_id", "code", "initials"), ID),
}
"""Words for the wearer's name, what she plays, whose understudy she is, and what tells two of one name apart."""

LEFT_OUT = frozenset(("", "no", "no.", "nr", "number", "notes", "note", "remarks", "remark", "comments"))
"""Columns that say nothing to the kit; any other is left out where its heading begins with #."""

IN_WORDS = {
    "nape_to_back_waist": "back_waist_length",
    "back_length": "back_waist_length",
    "back_waist": "back_waist_length",
    "cross_back": "across_back_width",
    "cross_front": "across_front_width",
    "cross_shoulder": "back_shoulder_width",
    "shoulder_to_shoulder": "back_shoulder_width",
    "bust_point_to_bust_point": "bust_point_width",
    "bicep": "upper_arm_girth",
    "biceps": "upper_arm_girth",
    "arm": "arm_length",
    "wrist": "wrist_girth",
    "hand": "hand_girth",
    "hips": "hip_girth",
    "inseam": "inside_leg_length",
    "outseam": "outside_leg_length",
    "crotch_depth": "body_rise",
}
"""Words of fitting rooms beside the older names of `dimensions` (common practice)."""

UNITS = {**LENGTH_UNITS, **WEIGHT_UNITS}
TAKEN_LAST = re.compile(r"(?P<name>.+?)[\s,:]*[(\[](?P<last>[^()\[\]]*)[)\]]")
BEHIND = re.compile(r"(?P<name>.+?)(?:\s*[,:/]\s*|\s+in\s+|\s+)(?P<last>\S+)")
HANDS = {"left": "left", "l": "left", "right": "right", "r": "right"}


@dataclass(frozen=True, slots=True)
class Heading:
    """What a column holds: a `name` that a body file knows, new or old ("": nothing for the kit), its unit.

    A hand stands behind the name, as in `shoulder_length.left`. What nobody knows is not `known`.
    """

    name: str
    unit: str = ""
    known: bool = True

    @property
    def today(self) -> str:
        """The name of today, by which two words for one measure are told to be one."""
        name, dot, hand = self.name.partition(".")
        return f"{dimension_name(name) or name}{dot}{hand}"

    @property
    def is_length(self) -> bool:
        """Whether it heads lengths of the body."""
        return dimension_name(self.name.partition(".")[0]) is not None


def column_heading(cell: str) -> Heading:
    """Return what heads a column.

    >>> column_heading("Waist (in)"), column_heading("Shoulder L"), column_heading("bust_girth")
    (Heading(name='waist', unit='in', known=True), Heading(name='shoulder.left', unit='', known=True),
     Heading(name='bust_girth', unit='', known=True))
    """
    words = " ".join(cell.replace("\N{NO-BREAK SPACE}", " ").split()).lower()
    if words.startswith("#"):
        return Heading("")
    name, unit, hand = words, "", ""
    while not _known(name) and (last := TAKEN_LAST.fullmatch(name) or BEHIND.fullmatch(name)):
        if last["last"] in UNITS and not unit:
            unit = last["last"]
        elif last["last"] in HANDS and not hand:
            hand = HANDS[last["last"]]
        else:
            break
        name = last["name"]
    for side in ("left", "right"):
        if name.startswith(f"{side} ") and not hand:
            name, hand = name.removeprefix(f"{side} "), side
    found = _known(name)
    if found is None:
        return Heading(_joined(name), unit, known=False)
    return Heading(f"{found}.{hand}" if hand else found, unit)


def _joined(words: str) -> str:
    return re.sub(r"[\s_-]+", "_", words.strip(" .:")).replace("circumference", "girth")


def _known(words: str) -> str | None:
    """Return the name that a body file has for these words, None for a stranger."""
    name = _joined(words)
    plain, dot, side = name.partition(".")
    if words in LEFT_OUT or name in LEFT_OUT:
        return ""
    if dot and side in ("left", "right") and (known := _known(plain)):
        return f"{known}.{side}"
    if name in (*KEYS, "weight") or name.startswith("layers."):
        return name
    return ABOUT_HER.get(name) or IN_WORDS.get(name) or (name if dimension_name(name) else None)
