"""What of a step is sewn by hand, with which stitch, and what of it by machine: no step tells one for the other.

A sentence says what is done; how it is sewn by hand stands here, by the sentence's name. Lengths in mm.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType

from drafting.making.model import Said, Setting, Step, said
from drafting.making.order.used_up import GLUED_DOWN
from drafting.making.settings.edges import ADDED, BARRED, OVERCAST
from drafting.making.settings.feet import BASTED, BY_HAND
from drafting.making.settings.stitches import CAUGHT


@dataclass(frozen=True, slots=True)
class HandWork:
    """A hand stitch and its length; `alone`: no machine sews anything of what the sentence tells."""

    stitch: str
    length: float
    alone: bool = False


FELLED, EDGE = HandWork(CAUGHT, 4.0), HandWork(CAUGHT, 4.0, alone=True)
SLIPPED, TACKED = HandWork("slip stitch", 4.0), HandWork("tacking stitch", 8.0)
BASTING, PADDING = HandWork(BASTED, 4.5), HandWork("pad stitch", 8.0)
THROUGH, DOWN = HandWork("through", 0.0), HandWork(CAUGHT, 6.0)
"""Common practice: felling 3 to 5 apart, slip stitches 4 to 6, basting 4 to 5, pad stitches 6 to 12."""

WORK: Mapping[str, HandWork] = MappingProxyType(
    {
        **dict.fromkeys(("free_front_unlined", "turned_lined", "turned_straight_lined"), EDGE),
        **dict.fromkeys(
            ("facing_ends", "facing_ends_turned", "facing_caught", "slit_vent", "slit_vent_seam"), EDGE
        ),
        **dict.fromkeys(("revers_inside", "shawl_inside", "coat_stand_inside", "turned_back"), TACKED),
        **dict.fromkeys(("revers_inside_unlined", "shawl_inside_unlined", "coat_stand_inside_unlined"), FELLED),
        **dict.fromkeys(("inside", "elastic_in_band"), SLIPPED),
        **dict.fromkeys(("bone_closed", "bone_ring", "hem_braid", "sleeve_heads", "full_crowns", "pads"), TACKED),
        **dict.fromkeys(("baste_interfacing", "fold_back", "fold_back_stand", "turn_fall", "ease_pleat"), BASTING),
        **dict.fromkeys(
            ("tape_caught", "trim_in", "trim_turned", "zip_lapped", "lay_pleat", "press_pleat", "facing_to_neck"),
            BASTING,
        ),
        "unfused.fuse_bands": BASTING,
        "roll_tape": DOWN,
        **dict.fromkeys(("piled.press_open", "piled.press_side", "piled.dart", "piled.turn_out"), DOWN),
        "pad_stitch": PADDING,
        **dict.fromkeys(("buttons", "buttons_one", "buttons_shown", "fastener", "fastener_plain"), THROUGH),
        **dict.fromkeys(("strap_on", "strap_on_hand", "strap_under"), THROUGH),
    }
)
"""By the sentence's name, or by its whole key where its elder is not sewn at all. `inside` may be stitched in the
ditch instead."""

MACHINED = frozenset({"cold.free_front_unlined"})
"""Twins that stitch by machine what their elder fells by hand; those of cloth that keeps its holes all do."""

CLIPPED_TOO = frozenset({"roll_tape"})
"""What is caught by hand in cloth that keeps its holes as well, to the interfacing alone."""

PRESSED = frozenset({"neaten", "free_front", "fold_back"})
"""Sentences that overcast an edge and press it, and sew nothing along it by machine."""

NEATENED = {"do": OVERCAST, "piled": OVERCAST, "bound": ADDED}
"""How such an edge is neatened, by the section that its sentence stands in: any other leaves it raw."""

BESIDE = frozenset({"hem_last", "one_hand", "each_hand", "line_loose"})
"""Sentences about the work that sew nothing."""

FED = ("set.stand_in", "set.why_edge_gives", "set.why_even_tension", "set.pinned", "set.much", "set.clipped")
"""How sentences begin that say how a machine is set or fed."""


def told_as_sewn(step: Step, settings: Mapping[tuple[str, str], Setting]) -> Step:
    """Return the step with what is sewn by hand told, and a machine's setting where, and only where, it sews."""
    found = dict.fromkeys(work for one in step.say if (work := _work(one)))
    setting = _setting(step, settings)
    machined = setting is not None and setting.stitch not in BY_HAND
    if setting is not None and machined and _alone(step):
        kept = tuple(one for one in setting.why if not one.key.startswith(FED))
        work = next(iter(found))
        setting = replace(
            setting,
            stitch=work.stitch,
            stitch_length=work.length,
            width=0.0,
            foot="no",
            pressure="usual",
            why=kept,
            trials=(),
        )
    known = setting.stitch if setting is not None else ""
    also = tuple(_told(work) for work in found if work.stitch != known)
    return replace(step, setting=setting, by_hand=tuple(dict.fromkeys(also)))


def _work(one: Said) -> HandWork | None:
    section, _, name = one.key.partition(".")
    kept = section == "clipped" and name not in CLIPPED_TOO
    return None if kept or one.key in MACHINED or one.key in GLUED_DOWN else WORK.get(one.key, WORK.get(name))


def _alone(step: Step) -> bool:
    """Return whether all that a step sews is sewn by hand."""
    names = {one.key.partition(".")[2]: _work(one) for one in step.say}
    return all(work.alone if work else name in BESIDE for name, work in names.items()) and bool(names)


def _setting(step: Step, settings: Mapping[tuple[str, str], Setting]) -> Setting | None:
    """Return how a step is sewn by machine: as it was found, or by what sort of work it is."""
    names = {one.key.partition(".")[2] for one in step.say}
    if names & PRESSED and not names - PRESSED - BESIDE:
        section = next(one.key.partition(".")[0] for one in step.say if one.key.partition(".")[2] in PRESSED)
        own = settings.get((step.garment, NEATENED.get(section, "")))
        heat = step.setting.dots if step.setting else None
        return replace(own, dots=heat) if own else None
    if step.setting is not None or step.verb not in BY_VERB:
        return step.setting
    return settings.get((step.garment, BY_VERB[step.verb]))


BY_VERB = {"bar": BARRED, "bone": ADDED, "join": ADDED}
"""What stands for a step that no seam or edge of the draft has a setting for."""


def _told(work: HandWork) -> Said:
    if work is THROUGH:
        return said("set.by_hand_through")
    return said("set.sewn_by_hand", name=said(f"stitch.{work.stitch}"), length=work.length)


def hand_said(step: Step) -> Iterator[str]:
    """Yield the names of the hand stitches of a step, as they stand on record."""
    for one in step.by_hand:
        name = dict(one.facts).get("name")
        yield name.key.partition(".")[2] if isinstance(name, Said) else "through"
