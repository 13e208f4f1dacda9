"""Rows of stitches: what a step sews, row by row, by its words, its setting, and how long it is.

    step -> verb (basted, felled, barred ...) or sentences (once, twice, by hand, overcast ...) -> rows

What a sentence says of its own length stands in its facts: `sewn` is what it sews, `neatened` what it overcasts.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from drafting.costume.garment import MadeGarment
from drafting.costume.workroom import Workroom
from drafting.draft.roles import SeamKind
from drafting.making.model import Said, Step
from drafting.making.order.used_up import GLUED_DOWN, only_glued
from drafting.making.seam_lengths import has_half, seam_lengths, times_sewn
from drafting.making.settings.edges import CAST_WIDE

ThreadKind = Literal["sewing", "overlock", "basting", "buttonhole", "mock-up"]

BUTTON = 500.0
"""mm of thread to sew on one button, shank and all, or a hook with its eye (from memory)."""

LONG, TOILE = 5.0, 4.0
"""mm of a gathering stitch and of a toile's (common practice)."""

BOX = 3.0
"""mm of plain stitches to each mm of a bar that is sewn as a box half as wide: 2 (1 + 1/2), plane geometry."""

UNDERARM = 1 / 3
"""Share of an armhole that is sewn a second time, from notch to notch (common practice)."""

MACHINE_OVEREDGE = ("504", "514")

SEWS = frozenset({"join", "set in", "face", "dart", "hem", "casing", "bind", "trim"})
"""Verbs that are sewn by machine where nothing else is said."""

TIMES: dict[str, float] = {
    "join_crotch": 2.0,
    "join_crotch_fly": 2.0,
    "french": 2.0,
    "join_yoke_front": 2.0,
    "trim_bind": 2.0,
    "waist": 2.0,
    "hem_rolled": 2.0,
    "flap_on": 2.0,
    "slant_mouth": 2.0,
    "slit_strip": 4.0,
    "slit_under": 2.0,
    "slit_placket": 4.0,
    "set_in": 1.0 + UNDERARM,
    "set_in_hand": 1.0 + UNDERARM,
}
"""How often the row of a sentence is sewn, where it is not once: a crotch twice, a strip on and down again; a slit
pulled straight is two edges long."""

UNSEWN = frozenset({"neaten", "vent", "free_front", "fold_back", "lay_pleat"})
"""Sentences that press, overcast or fold along an edge, and sew nothing along it."""

BY_HAND = frozenset(
    {
        *(
            "free_front_unlined",
            "turned_lined",
            "turned_straight_lined",
            "facing_ends",
            "facing_ends_turned",
            "facing_caught",
        ),
        *("slit_vent", "slit_vent_seam", "inside"),
    }
)
"""Sentences by which an edge is felled or caught by hand; `inside` besides the row that joins it."""

CAST = {
    "do.neaten": 1,
    "do.neaten_side": 1,
    "do.neaten_narrow": 1,
    "do.neaten_open": 2,
    "cold.neaten_open": 2,
    "piled.neaten_open": 2,
    "do.set_press": 1,
    "do.vent": 1,
    "do.free_front": 1,
    "do.hem_overcast": 1,
    "do.fold_back": 1,
    "do.fold_back_stand": 1,
    "piled.free_front": 1,
    "piled.fold_back": 1,
    "piled.fold_back_stand": 1,
    "do.fold_across": 1,
    "do.slant_back": 1,
    "do.seam_pocket": 1,
    "do.pocket_on": 1,
    "cold.pocket_on": 1,
    "clipped.pocket_on": 1,
}
"""Edges that a sentence overcasts, together or each by itself; a twin that says nothing of it overcasts none."""

BY_MACHINE = frozenset(
    {"clipped.inside", "clipped.turned_lined", "clipped.turned_straight_lined", "cold.free_front_unlined"}
)
"""Twins that stitch by machine what their elder fells or catches by hand."""

BAGS = frozenset({"do.slant_back", "do.seam_pocket"})
"""Sentences by which the two layers of a pocket's bag are overcast together, and nothing else of the step."""

TOPSTITCHED = frozenset({"cold.press_side", "cold.turn_out", "clipped.inside"})
"""Sentences by which one more row holds what no iron presses and no hand fells."""


CAUGHT_DOWN = {"piled.press_open": 2, "piled.press_side": 1, "piled.turn_out": 1, "piled.dart": 1}
"""Allowances that a hand catches down in a pile that no iron may touch, by how many rows."""


@dataclass(frozen=True, slots=True)
class StitchRow:
    """`length` mm of one row of stitches through `plies`; `stitch_length` and `width` in mm."""

    stitch: str
    length: float
    stitch_length: float = 2.5
    width: float = 0.0
    plies: int = 2
    kind: ThreadKind = "sewing"
    lining: bool = False


def rows_of(step: Step, garment: MadeGarment, room: Workroom) -> tuple[StitchRow, ...]:
    """Return every row of stitches that a step sews; nothing where it sews none."""
    return (*_main(step, garment), *_neatened(step, garment, room), *_gathered(step, garment))


def _sewn(step: Step, garment: MadeGarment) -> float:
    """Return the mm of seam in a step: of its seams, or what it says."""
    lengths = seam_lengths(garment)
    return math.fsum(lengths[name] for name in step.seams) or step.length


def _main(step: Step, garment: MadeGarment) -> Iterator[StitchRow]:
    made = _by_verb(step)
    if made is not None:
        yield from made
        return
    if step.setting is None and step.verb not in SEWS:
        return
    length, plies = _sewn(step, garment), 3 if step.edges or step.verb in ("hem", "casing") else 2
    apart = [one for one in step.say if _fact(one, "sewn") is not None]
    for one in (said for said in apart if said.key not in GLUED_DOWN):
        yield from _told(step, [one], _fact(one, "sewn") or 0.0, plies)
    if step.seams or not (apart or only_glued(step.say)):
        yield from _told(step, [one for one in step.say if one not in apart], length, plies)
    if any(one.key in TOPSTITCHED for one in step.say):
        yield StitchRow("301", length, plies=3)
    if rows := sum(CAUGHT_DOWN.get(one.key, 0) for one in step.say):
        yield StitchRow("200", rows * length, 6.0)


def _told(step: Step, say: Sequence[Said], length: float, plies: int) -> Iterator[StitchRow]:
    """Yield the rows along `length` that these sentences tell."""
    keys = list(map(_key, say))
    hand = BY_HAND & {_key(one) for one in say if one.key not in BY_MACHINE}
    if not hand - {"inside"} and not (keys and set(keys) <= UNSEWN):
        times = max((TIMES.get(key, 1.0) for key in keys), default=1.0)
        yield _row(step, length * times, plies)
    if "understitch" in keys:
        yield StitchRow("301", length)
    if {"strip_turned", "strip_turned_neat"} & set(keys):
        gives = step.setting is not None and step.setting.stitch != "301"
        yield StitchRow("304" if gives else "301", length, width=CAST_WIDE if gives else 0.0, plies=4)
    if hand:
        yield StitchRow("200", length, 4.0)


def _by_verb(step: Step) -> tuple[StitchRow, ...] | None:
    """Return the rows of work that is not one seam, None for a plain one."""
    close, across = (step.setting.stitch_length, step.setting.width) if step.setting else (0.4, 2.5)
    stitch, length = step.setting.stitch if step.setting else "304", step.length
    match step.verb:
        case "baste" if step.holds == "clips":
            return ()
        case "baste":
            return (StitchRow("209", length, close, kind="basting"),)
        case "fuse" if "clipped.baste_interfacing" in {one.key for one in step.say}:
            return ()
        case "fuse" if "baste_interfacing" in set(map(_key, step.say)):
            return (StitchRow("209", length, 4.5, kind="basting"),)
        case "toile":
            return (StitchRow("301", length, TOILE, kind="mock-up"),)
        case "fell":
            return (StitchRow("200", length, 4.0, lining=True),)
        case "stay":
            return (StitchRow("200", 2 * length, 6.0),)
        case "pad":
            return (StitchRow("200", 2 * length, 8.0),)
        case "bar" if any(one.key.startswith("clipped.bars") for one in step.say):
            return (StitchRow("301", BOX * length, plies=4),)
        case "bar":
            return (StitchRow("304", length, stitch_length=0.4, width=2.5, plies=4),)
        case "buttonhole":
            return (StitchRow(stitch, 2 * length, stitch_length=close, width=across, kind="buttonhole"),)
        case "button":
            return (StitchRow("101", step.count * BUTTON / 5.0),)
        case "bone":
            return (StitchRow("301", 2 * length),)
        case _:
            return None


def _row(step: Step, length: float, plies: int) -> StitchRow:
    lining = step.verb == "join" and step.stage == "finish"
    plain = StitchRow("301", length, plies=plies, lining=lining)
    if step.setting is None:
        return plain
    own = step.setting
    kind: ThreadKind = "overlock" if own.stitch in MACHINE_OVEREDGE else "sewing"
    return replace(plain, stitch=own.stitch, stitch_length=own.stitch_length, width=own.width, kind=kind)


def _neatened(step: Step, garment: MadeGarment, room: Workroom) -> Iterator[StitchRow]:
    """Yield the overcasting of raw edges: both by themselves, both together, one edge, a bag's outline."""
    cast = 0.0
    for one in step.say:
        bags = _bags(step, garment)
        plain = bags if one.key in BAGS else _sewn(step, garment) - bags
        own = _fact(one, "neatened")
        told = None if one.key in BAGS else own if own is not None else _fact(one, "sewn")
        cast += CAST.get(one.key, 0) * (plain if told is None else told)
    if step.seams and step.setting and any(one.key == "set.neaten_bound" for one in step.setting.why):
        yield StitchRow("301", 2 * _sewn(step, garment))
    if cast:
        if room.has(*MACHINE_OVEREDGE):
            yield StitchRow("504", cast, plies=2, kind="overlock")
        else:
            yield StitchRow("304", cast, width=CAST_WIDE, plies=1)


def _bags(step: Step, garment: MadeGarment) -> float:
    """Return the mm of the bags of pockets that a step closes."""
    lengths = seam_lengths(garment)
    bags = {seam.name for seam in garment.draft.seams if seam.kind is SeamKind.BAG}
    return math.fsum(lengths[name] for name in step.seams if name in bags)


def _gathered(step: Step, garment: MadeGarment) -> Iterator[StitchRow]:
    """Yield two rows of long stitches over what is gathered or eased, as long as it lies flat."""
    lengths, own = seam_lengths(garment), step.seams or step.basted
    sewn = math.fsum(lengths[name] for name in own)
    for one in step.say:
        if _key(one) in ("gather", "gather_between", "gather_piece"):
            found = [s for s in garment.draft.seams if s.name in own]
            times = max(
                (1 if has_half(garment.draft, s) else times_sewn(garment.draft, s) for s in found), default=1
            )
            yield StitchRow("301", 2 * times * (_fact(one, "drawn") or 0.0), LONG, plies=1)
        elif _key(one) == "cap_ease":
            yield StitchRow("301", (1 if one.key.startswith("cold.") else 2) * sewn, LONG, plies=1)


def _fact(one: Said, name: str) -> float | None:
    """Return a length that a sentence holds, None where it holds none of this name."""
    found = dict(one.facts).get(name)
    return float(found) if isinstance(found, int | float) else None


def _key(one: Said) -> str:
    return one.key.partition(".")[2]


def keys_of(say: Iterable[Said]) -> set[str]:
    """Return the names of these sentences, whichever section they stand in."""
    return {_key(one) for one in say}
