"""Thread: how much each step of a costume takes, by its kind and the cloth that it matches.

    step -> rows of stitches (stitch, mm of seam, plies) -> mm of thread, at least what its own geometry needs

`Source.THREAD_GUIDE` gives thread per length of seam: 301 2.5, 304 5.5, 101 5, 103 4.5. Others are from memory:
401 5.5, 504 14, 514 18 (with all their threads), hand stitches 200 and 202 3 and 4, the three-step zigzag 7. A
guide knows thin cloth only: two plies of velveteen need more, which the stitch's own path tells.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Literal

from drafting.costume.garment import MadeGarment
from drafting.costume.make import Made
from drafting.costume.workroom import THREE_STEP, Workroom
from drafting.draft.by_role import edges_as
from drafting.draft.openings import hands
from drafting.draft.roles import COLLARS, FACINGS, EdgeRole, SeamKind
from drafting.fabric import Fabric
from drafting.making.model import Said, Step
from drafting.making.seam_lengths import seam_lengths

ThreadKind = Literal["sewing", "overlock", "basting", "buttonhole", "mock-up"]

RATIOS = {
    "101": 5.0,
    "103": 4.5,
    "200": 3.0,
    "202": 4.0,
    "209": 1.0,
    "301": 2.5,
    "304": 5.5,
    THREE_STEP: 7.0,
    "401": 5.5,
    "406": 18.0,
    "504": 14.0,
    "514": 18.0,
    "buttonhole stitch": 20.0,
}
"""Thread per length of seam (`Source.THREAD_GUIDE`; those not in it from memory)."""

WASTE = 0.25
"""Share added for ends, trials and unpicking (common practice: a quarter)."""

BUTTON = 500.0
"""mm of thread to sew on one button, shank and all, or a hook with its eye (from memory)."""

PLY = 0.5
"""mm: thickness of a ply where nobody measured it (a shirting's)."""

LONG, TOILE = 5.0, 4.0
"""mm of a gathering stitch and of a toile's (common practice)."""

OVERCAST_WIDE = 3.0
"""mm across an overcast edge where no overedge machine is at hand (common practice)."""

UNDERARM = 1 / 3
"""Share of an armhole that is sewn a second time, from notch to notch (common practice)."""

MACHINE_OVEREDGE = ("504", "514")


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


def thread_ratio(stitch: str, length: float = 2.5, width: float = 0.0, thickness: float = 0.0) -> float:
    """Return thread per length of seam: the handbook's, or what the stitch's path needs if that is more.

    A lockstitch of length l through T mm of cloth runs l along each face and T through it, on both threads:
    2 (l + T) / l. A zigzag runs the slant of l and its width. A running stitch is one such thread. A stitch that
    nobody lists counts as the greediest.

    >>> thread_ratio("301", 2.5, thickness=2.25)
    3.8
    """
    known = RATIOS.get(stitch, max(RATIOS.values()))
    slant = math.hypot(length, width)
    path = {
        "301": 2 * (length + thickness) / length,
        "304": 2 * (slant + thickness) / length,
        THREE_STEP: 2 * (slant + thickness) / length,
        "401": (4 * length + 2 * thickness) / length,
        "209": (length + thickness) / length,
    }
    return max(known, path.get(stitch, 0.0))


def thread_of(rows: Iterable[StitchRow], ply: float) -> float:
    """Return the mm of thread that rows through plies of this thickness take, no waste yet."""
    return math.fsum(r.length * thread_ratio(r.stitch, r.stitch_length, r.width, r.plies * ply) for r in rows)


def seam_thread(made: Made, steps: Iterable[Step]) -> dict[tuple[ThreadKind, str], float]:
    """Return mm of thread by its kind and the role of the cloth that it matches; no waste yet."""
    garments = {garment.name: garment for garment in made.garments}
    found: dict[tuple[ThreadKind, str], float] = {}
    for step in steps:
        if step.stage == "cut":
            for one in garments.values():
                if length := _stayed(step, one):
                    found["sewing", one.fabric] = found.get(("sewing", one.fabric), 0.0) + length
        garment = garments.get(step.garment)
        if garment is None:
            continue
        for row in rows_of(step, garment, made.costume.workroom):
            role = "lining" if row.lining else garment.fabric
            colour = role if row.kind in ("sewing", "overlock", "buttonhole") else ""
            length = thread_of([row], thread_ply(made.costume.fabrics.get(role)))
            found[row.kind, colour] = found.get((row.kind, colour), 0.0) + length
    return {key: length for key, length in found.items() if length}


STAYED = 2.2
"""mm of the stitches that hold a curved neck (common practice)."""


def _stayed(step: Step, garment: MadeGarment) -> float:
    """Return the mm of thread in the rows that hold a garment's necks as soon as they are cut."""
    if "stay_neck" not in _keys(step.say):
        return 0.0
    cut = {f"{garment.name}.{piece.name}": piece for piece in garment.draft.pieces if not piece.material}
    own = [cut[name] for name in step.pieces if name in cut and cut[name].role not in COLLARS | FACINGS]
    necks = math.fsum(e.length * hands(piece) for piece in own for e in edges_as(piece, EdgeRole.NECK))
    return thread_of([StitchRow("301", necks, STAYED, plies=1)], PLY)


def thread_ply(fabric: Fabric | None) -> float:
    return (fabric.thickness if fabric else None) or PLY


def rows_of(step: Step, garment: MadeGarment, room: Workroom) -> tuple[StitchRow, ...]:
    """Return every row of stitches that a step sews; nothing where it sews none."""
    return (*_main(step, garment), *_neatened(step, garment, room), *_gathered(step, garment))


def _sewn(step: Step, garment: MadeGarment) -> float:
    """Return the mm of seam in a step: of its seams, or what it says."""
    lengths = seam_lengths(garment)
    return math.fsum(lengths[name] for name in step.seams) or step.length


def _main(step: Step, garment: MadeGarment) -> Iterator[StitchRow]:
    length, keys = _sewn(step, garment), _keys(step.say)
    made = _by_verb(step, length, keys)
    if made is not None:
        yield from made
        return
    if step.setting is None and step.verb not in SEWS:
        return
    plies = 3 if step.edges or step.verb in ("hem", "casing") else 2
    yield _row(step, length * _times(step, keys), plies)
    if "inside" in keys:
        yield StitchRow("200", length, 4.0)
    if "understitch" in keys:
        yield StitchRow("301", length)
    if keys & {"strip_turned", "strip_turned_neat"}:
        gives = step.setting is not None and step.setting.stitch != "301"
        yield StitchRow("304" if gives else "301", length, width=OVERCAST_WIDE if gives else 0.0, plies=4)


SEWS = frozenset({"join", "set in", "face", "dart", "hem", "casing", "bind", "trim"})
"""Verbs that are sewn by machine where nothing else is said."""


def _times(step: Step, keys: set[str]) -> float:
    """Return how often a row is sewn: a crotch and a French seam twice, an underarm again."""
    if keys & {"join_crotch", "join_crotch_fly", "french", "trim_bind", "casing_close", "waist", "hem_rolled"}:
        return 2.0
    return 1.0 + UNDERARM if step.verb == "set in" else 1.0


def _by_verb(step: Step, length: float, keys: set[str]) -> tuple[StitchRow, ...] | None:
    """Return the rows of work that is not one seam, None for a plain one."""
    close, across = (step.setting.stitch_length, step.setting.width) if step.setting else (0.4, 2.5)
    stitch = step.setting.stitch if step.setting else "304"
    match step.verb:
        case "baste" if step.holds == "clips":
            return ()
        case "baste":
            return (StitchRow("209", length, close, kind="basting"),)
        case "fuse" if "clipped.baste_interfacing" in {one.key for one in step.say}:
            return ()
        case "fuse" if "baste_interfacing" in keys:
            return (StitchRow("209", step.length, 4.5, kind="basting"),)
        case "toile":
            return (StitchRow("301", length, TOILE, kind="mock-up"),)
        case "fell":
            return (StitchRow("200", length, 4.0, lining=True),)
        case "stay":
            return (StitchRow("200", 2 * length, 6.0),)
        case "pad":
            return (StitchRow("200", 2 * length, 8.0),)
        case "bar":
            return (StitchRow("304", length, stitch_length=0.4, width=2.5, plies=4),)
        case "buttonhole":
            return (StitchRow(stitch, 2 * length, stitch_length=close, width=across, kind="buttonhole"),)
        case "button":
            return (StitchRow("101", step.count * BUTTON / RATIOS["101"]),)
        case "bone":
            return (StitchRow("301", 2 * step.length),)
        case _:
            return None


def _row(step: Step, length: float, plies: int) -> StitchRow:
    lining = step.verb == "join" and step.stage == "finish"
    if step.setting is None:
        return StitchRow("301", length, plies=plies, lining=lining)
    own = step.setting
    kind: ThreadKind = "overlock" if own.stitch in MACHINE_OVEREDGE else "sewing"
    return StitchRow(
        own.stitch, length, stitch_length=own.stitch_length, width=own.width, plies=plies, kind=kind, lining=lining
    )


def _neatened(step: Step, garment: MadeGarment, room: Workroom) -> Iterator[StitchRow]:
    """Yield the overcasting of raw edges: both by themselves, both together, one edge, a bag's outline."""
    keys = _keys(one for one in step.say if not one.key.startswith(UNCAST))
    bags = _bags(step, garment)
    length = 0.0 if "slant_back" in keys else _sewn(step, garment) - bags
    times = 2 * ("neaten_open" in keys) + len(keys & OVERCAST)
    cast = times * length + bags * bool(keys & BAGS)
    if cast and not (step.verb == "face" and "neaten" in keys and not step.edges):
        if room.has(*MACHINE_OVEREDGE):
            yield StitchRow("504", cast, plies=2, kind="overlock")
        else:
            yield StitchRow("304", cast, width=OVERCAST_WIDE, plies=1)


OVERCAST = frozenset(
    {"neaten_side", "neaten", "set_press", "vent", "free_front", "fold_back", "fold_back_stand", "hem_overcast"}
)
"""Sentences by which one edge, or two together, is overcast along all that a step sews."""

BAGS = frozenset({"seam_pocket", "slant_back"})
"""Sentences by which the two layers of a pocket's bag are overcast together."""

UNCAST = ("unfrayed.", "bound.")
"""Twins of such sentences that overcast nothing."""


def _bags(step: Step, garment: MadeGarment) -> float:
    """Return the mm of the bags of pockets that a step closes."""
    lengths = seam_lengths(garment)
    bags = {seam.name for seam in garment.draft.seams if seam.kind is SeamKind.BAG}
    return math.fsum(lengths[name] for name in step.seams if name in bags)


def _gathered(step: Step, garment: MadeGarment) -> Iterator[StitchRow]:
    """Yield two rows of long stitches over what is gathered or eased, as long as it lies flat."""
    lengths = seam_lengths(garment)
    sewn = math.fsum(lengths[name] for name in (step.seams or step.basted))
    for one in step.say:
        key = one.key.partition(".")[2]
        if key == "gather":
            yield StitchRow("301", 2 * sewn * _number(one, "ratio"), LONG, plies=1)
        elif key == "cap_ease":
            yield StitchRow("301", 2 * sewn, LONG, plies=1)


def _number(one: Said, fact: str) -> float:
    found = dict(one.facts)[fact]
    if isinstance(found, Said):
        raise TypeError(f"{one.key}: {fact} is words, not a number")
    return float(found)


def _keys(say: Iterable[Said]) -> set[str]:
    return {one.key.partition(".")[2] for one in say}
