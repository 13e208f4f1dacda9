"""The steps of a making plan on record: what a workshop needs to count its own stitches and hours."""

from __future__ import annotations

from typing import Any

from drafting.costume.make import Made
from drafting.ground.lengths import in_unit
from drafting.ground.units import ShownUnit
from drafting.making.model import Setting, Step
from drafting.making.order.by_hand import hand_said
from drafting.making.settings.feet import BY_HAND
from drafting.making.thread import seam_thread
from drafting.making.words import plan_sentence

Record = dict[str, Any]


def _needle(sewn: Setting | None) -> str | None:
    if sewn is None:
        return None
    return "hand needle" if sewn.stitch in BY_HAND else f"{sewn.needle.point} {sewn.needle.size}"


def step_row(made: Made, step: Step, unit: ShownUnit) -> Record:
    """Return one step: what to do in words, what it uses and makes, how it is sewn, what it takes of thread.

    `seams` are sewn in it, `basted` only basted; `edges` and `along` are (piece, edge); `count` is how many
    things (darts, bones, buttons ...); `how` says why it is sewn so, and what its cloth asks besides. Stitch
    length and width in mm; `thread` in mm before any waste, by its kind and by the cloth that it matches; `takes`
    is what else it uses up, in mm or pieces, not rounded yet; `by_hand` names the hand stitches beside `stitch`.
    """
    sewn = step.setting
    return {
        "n": step.n,
        "stage": step.stage,
        "verb": step.verb,
        "garment": step.garment,
        "do": " ".join(plan_sentence(sentence, unit) for sentence in step.say),
        "uses": list(step.uses),
        "makes": step.makes,
        "seams": list(step.seams),
        "basted": list(step.basted),
        "edges": [list(ref) for ref in step.edges],
        "along": [list(ref) for ref in step.along],
        "count": step.count,
        "notions": list(step.notions),
        "stitch": sewn.stitch if sewn else None,
        "stitch_length": sewn.stitch_length if sewn else None,
        "stitch_width": sewn.width if sewn else None,
        "how": " ".join(plan_sentence(sentence, unit) for sentence in (sewn.why if sewn else ())),
        "needle": _needle(sewn),
        "by_hand": list(hand_said(step)),
        "holds": step.holds,
        "heat": step.heat,
        "caution": " ".join(plan_sentence(sentence, unit) for sentence in step.cautions),
        "thread": [
            {"kind": kind, "fabric": role, "mm": length}
            for (kind, role), length in seam_thread(made, [step]).items()
        ],
        "takes": [
            {"what": one.what, "kind": in_unit(one.kind, unit), "amount": one.amount, "unit": one.unit}
            for one in step.takes
        ],
        "minutes": step.minutes,
        "wait_hours": step.wait,
    }
