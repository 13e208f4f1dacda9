"""Notes about the body: which measure each of them changes, and by how much.

What pins take up is counted once here for all: a pinch holds as much cloth on either side of the pins,
and a note for both sides is pinned twice.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from drafting.body import Body
from drafting.body.body import SIDES
from drafting.body.dimensions import DIMENSIONS, dimension_name, names_offered
from drafting.body.sides import OWN_SIDE
from drafting.fitting.note import AmountAs, AtMeasure, Done, Moved, Note, NoteSide, Verb
from drafting.ground.lengths import told
from drafting.ground.units import BadValue, as_written

UPRIGHT = {
    "shoulder_length": "shoulder_drop",
    "waist_girth": "back_waist_length",
    "bust_girth": "bust_point_depth",
}
"""What lies higher or lower where a maker names a place by what goes round or along it."""

AROUND = {"arm_length": "upper_arm_girth"}
"""What goes round where a maker names a place by its length."""

DEPTHS = (*UPRIGHT.values(), "axilla_depth", "scye_depth", "waist_to_hip")
"""Lengths that say how low something lies: lowering it makes them longer."""

WITH_WAIST = {
    "front_waist_length": 1,
    "waist_to_hip": -1,
    "body_rise": -1,
    "outside_leg_length": -1,
    "waist_to_floor": -1,
}
"""What was taped to the waist besides the back: where the waist lies lower, longer (1) or shorter (-1) by as much.
Nape, hip, seat and floor stay where they are. Crotch lengths go over the body and are taken again (ours)."""

ADDS = {Verb.LET_OUT: 1, Verb.LENGTHEN: 1, Verb.LOWER: 1, Verb.TAKE_IN: -1, Verb.SHORTEN: -1, Verb.RAISE: -1}
"""Whether a verb makes the measure that it names greater."""

ROUND = (Verb.TAKE_IN, Verb.LET_OUT)
ALONG = (Verb.LENGTHEN, Verb.SHORTEN)
UPON = (Verb.RAISE, Verb.LOWER)


def measure_meant(value: object, verb: str) -> str:
    """Return the measure that a note about the body changes; raises `BadValue`.

    >>> measure_meant("waist", "take in"), measure_meant("shoulder", "lower"), measure_meant("sleeve", "lengthen")
    ('waist_girth', 'shoulder_drop', 'arm_length')
    """
    name = value.strip().replace(" ", "_") if isinstance(value, str) else ""
    found = dimension_name(name) if name else None
    if found is None:
        right = f"a note about the body names the measure that it changes; {names_offered(name)}"
        raise BadValue(f"{as_written(value)} is no body dimension", right)
    if verb in UPON:
        found = UPRIGHT.get(found, found)
    elif verb in ROUND:
        found = AROUND.get(found, found)
    allowed = _verbs(found)
    if verb and verb not in allowed:
        words = " or ".join(allowed)
        raise BadValue(f"{as_written(value)} is not changed by: {verb}", f"{found.replace('_', ' ')}: {words}")
    return found


def _verbs(measure: str) -> tuple[Verb, ...]:
    if DIMENSIONS[measure].kind in ("girth", "width"):
        return ROUND
    return (*ALONG, *UPON) if measure in DEPTHS else ALONG


@dataclass(frozen=True)
class Corrected:
    """A body with its notes in it, and what each of them changed."""

    body: Body
    done: tuple[Done, ...]


def corrected(body: Body, notes: Sequence[Note]) -> Corrected:
    """Return the body with each note put into the measure that it names.

    Raises `InputError` where a measure becomes one that nobody has.

    >>> from drafting.body import wearer
    >>> from drafting.fitting.note import AtMeasure, NoteKind, NoteState
    >>> body = wearer({"height": 1700, "bust_girth": 940, "waist_girth": 800, "hip_girth": 1000})
    >>> pinched = Note(
    ...     garment="",
    ...     side=NoteSide.BOTH,
    ...     where=AtMeasure("waist_girth"),
    ...     verb=Verb.TAKE_IN,
    ...     amount=10.0,
    ...     counted=AmountAs.PINCH,
    ...     kind=NoteKind.BODY,
    ...     state=NoteState.PINNED,
    ... )
    >>> corrected(body, [pinched]).body["waist_girth"]
    760.0
    """
    values: dict[str, tuple[float, float]] = {}
    done = []
    for note in notes:
        name = str(note.where)
        old = values.get(name) or (body.hand(name, "left"), body.hand(name, "right"))
        more = measure_change(note)
        left, right = (
            mm + more if name not in OWN_SIDE or note.side in (side, NoteSide.BOTH) else mm
            for mm, side in zip(old, SIDES, strict=True)
        )
        values[name] = left, right
        along = _along_with(body, values, note, more)
        values |= {measure: new for measure, _, new in along}
        done.append(_done(note, old, (left, right), along))
    changed = {name: left if left == right else (left, right) for name, (left, right) in values.items()}
    return Corrected(body.changed(**changed) if changed else body, tuple(done))


TapedAlong = tuple[str, tuple[float, float], tuple[float, float]]
"""A measure, and what it was and is, left and right, mm."""


def _along_with(
    body: Body, values: Mapping[str, tuple[float, float]], note: Note, more: float
) -> tuple[TapedAlong, ...]:
    """Return what else was taped to a waist that is raised or lowered; estimates follow by themselves."""
    if str(note.where) != UPRIGHT["waist_girth"] or note.verb not in UPON:
        return ()
    found = []
    for name, way in WITH_WAIST.items():
        if name in body.measures and body.measures[name].source == "measured":
            left, right = values.get(name) or (body.hand(name, "left"), body.hand(name, "right"))
            found.append((name, (left, right), (left + way * more, right + way * more)))
    return tuple(found)


def measure_change(note: Note) -> float:
    """Return by how much a note about the body changes its measure, mm; of one side where it is of one."""
    name, a = str(note.where), note.amount
    hands = 2 if note.side == NoteSide.BOTH else 1
    own, kind = name in OWN_SIDE, DIMENSIONS[name].kind
    if kind == "girth":
        seams = 1 if own else hands
        size = a if note.counted == AmountAs.TOTAL else 2 * a * seams
    elif kind == "width":
        sides = 2 if own else hands
        total = a * 2 / hands if own else a
        size = {AmountAs.TOTAL: total, AmountAs.PINCH: 2 * a * sides, AmountAs.SEAM: a * sides}[note.counted]
    else:
        size = 2 * a if note.counted == AmountAs.PINCH else a
    return ADDS[note.verb] * size


def _done(
    note: Note, old: tuple[float, float], new: tuple[float, float], along: Sequence[TapedAlong] = ()
) -> Done:
    """Return what a note did to a measure, in words that repeat how it was counted."""
    name = str(note.where)
    hand = SIDES.index("right") if note.side == NoteSide.RIGHT else 0
    one = f"{note.side} " if name in OWN_SIDE and note.side != NoteSide.BOTH else ""
    called = name.replace("_", " ").replace(" girth", "")
    said = f"{amount_said(note)}: {one}{called} {told(old[hand])} to {told(new[hand])}"
    said += "".join(f", {n.replace('_', ' ')} {told(was[0])} to {told(now[0])}" for n, was, now in along)
    why = f"{note.verb.done} at the fitting"
    moved = (Moved("", n, was[hand], now[hand], why) for n, was, now in ((name, old, new), *along))
    return Done(note, tuple(moved), said)


NO_AMOUNT = {Verb.LEAVE: "left as it is", Verb.CLIP: "clipped, and nothing drawn as no amount is said,"}
"""What is said of the verbs that may come without an amount."""


def amount_said(note: Note) -> str:
    """Return how an amount was counted, as it is echoed: "1 cm pinched at each side"."""
    if note.verb in NO_AMOUNT and not note.amount:
        return NO_AMOUNT[note.verb]
    place = "at each side" if note.side == NoteSide.BOTH else f"at the {note.side} side"
    amount = told(note.amount)
    if note.verb not in ROUND:
        folded = ", twice as much with its fold" if note.counted == AmountAs.PINCH else ""
        hand = "" if note.side == NoteSide.BOTH or isinstance(note.where, AtMeasure) else f" on the {note.side}"
        return f"{note.verb.done} by {amount}{folded}{hand}"
    if note.counted == AmountAs.PINCH:
        return f"{amount} pinched {place}"
    if note.counted == AmountAs.SEAM:
        return f"{note.verb.done}, {amount} on every edge {place}"
    return f"{note.verb.done} by {amount} in all"
