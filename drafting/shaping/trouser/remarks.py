"""What the rules settled, in a maker's words: findings of the trouser block."""

from __future__ import annotations

import math
from collections.abc import Iterator

from drafting.body import Body
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.shaping.trouser.pieces import Openings
from drafting.shaping.trouser.rise import BELLY_FROM, at_fork_limit, off_level
from drafting.shaping.trouser.seat import seat_of
from drafting.shaping.trouser.shape import LegShape

MATTERS = 2.0
"""mm: a smaller change of a length is not worth a word (ours: the crotch holds within 2)."""

STRETCHES = 0.10
"""Cloth that stretches so much round the body needs no ease (common practice)."""

LEAST_EASE = {"waist": 13.0, "hip": 51.0}
"""mm at adult scale (`Source.EASE_IN_CLOTHING`: 13 at the waist of trousers and skirts, 51 at every hip)."""

WHOLE = 0.5
"""mm: ease so near to the least is the least, as it was rounded from inches."""


def trouser_findings(body: Body, shape: LegShape) -> tuple[Finding, ...]:
    """Return what was settled at hip, crotch, thigh, knee, waist and for a seated wearer."""
    return (
        *_least_ease(shape),
        *_hip(shape),
        *_crotch(body, shape),
        *_thigh(shape),
        *_knee(shape),
        *_waist(shape),
        *_seated(shape),
    )


def _least_ease(shape: LegShape) -> Iterator[Finding]:
    """Cloth that hardly stretches needs room: less than the trade's least is warned, none is an error."""
    asked = shape.frame.asked
    if asked.stretch.around >= STRETCHES:
        return
    drawn = {"waist": shape.frame.waist_girth, "hip": seat_of(shape.frame, shape.rise).girth}
    for level, least in LEAST_EASE.items():
        ease, wanted = drawn[level] - asked.layered[level], least * asked.scale
        if ease < wanted - WHOLE:
            none = ease <= 0
            said = "has no ease at all and will not close" if none else f"has only {told(ease)} of ease"
            yield Finding(
                "least ease",
                "error" if none else "warning",
                level,
                ease,
                wanted,
                f"The {level} {said}, in cloth that stretches {100 * asked.stretch.around:.0f} % round the "
                f"body; the trade's least is {told(wanted)}. Ask for more, or take a cloth that stretches more.",
            )


def _hip(shape: LegShape) -> Iterator[Finding]:
    frame = shape.frame
    girth, wanted = seat_of(frame, shape.rise).girth, frame.asked.girth["hip"]
    if girth - wanted > 1e-3:
        yield Finding(
            "hip",
            "note",
            "hip",
            girth,
            wanted,
            f"The hip is {told(girth)} round instead of {told(wanted)}: its level lies only {told(frame.hip)} "
            "over the crotch line, where the legs part already and the cloth has to reach round both.",
        )


def _crotch(body: Body, shape: LegShape) -> Iterator[Finding]:
    rise, asked = shape.rise, shape.frame.asked
    split = "as measured" if body.measured("back_crotch_length") else "1.30 to 1, as none was measured"
    how = "as chosen" if asked.front_chosen else split
    yield Finding(
        "crotch split",
        "note",
        "crotch",
        rise.back.length / rise.front.length,
        asked.crotch_back / asked.crotch_front,
        f"Crotch seam {told(rise.front.length)} in front and {told(rise.back.length)} behind "
        f"(asked: {told(asked.crotch_front)} and {told(asked.crotch_back)}, {how}).",
    )
    moved = rise.back.length - asked.crotch_back
    if abs(moved) > MATTERS:
        way = "from front to back" if moved > 0 else "from back to front"
        yield Finding(
            "crotch split",
            "note",
            "crotch",
            moved,
            0.0,
            f"{told(abs(moved))} of the crotch seam are moved {way}: the centre front would lie too "
            "far off the waist level. The whole length holds.",
        )
    yield from _front(shape)


def _front(shape: LegShape) -> Iterator[Finding]:
    """A centre front far off the waist level: over a belly it must be, else the tape is doubted."""
    over = off_level(shape.frame, shape.rise.front_rise)
    if abs(over) <= MATTERS:
        return
    body = shape.frame.asked.body
    belly = over > 0 and body["waist"] > BELLY_FROM * body["hip"]
    rise = shape.rise.front_rise
    way = "over" if rise > 0 else "under"
    why = "so that it covers the belly" if belly else "as the front crotch length asks"
    doubt = "" if belly else " Is it measured from the inside leg point, with the waist tape level?"
    yield Finding(
        "front rise",
        "note" if belly else "warning",
        "front",
        rise,
        rise - over,
        f"The centre front lies {told(abs(rise))} {way} the waist level, {why}; on the body it is level.{doubt}",
    )


def _thigh(shape: LegShape) -> Iterator[Finding]:
    rise, asked = shape.rise, shape.frame.asked
    wanted = asked.girth["thigh"]
    if abs(rise.thigh - wanted) > 1e-3:
        limit = at_fork_limit(shape.frame, rise)
        why = (
            "no fork between the legs gives that width"
            if limit
            else "with it no seat angle would give the crotch length"
        )
        yield Finding(
            "thigh",
            "warning" if limit else "note",
            "thigh",
            rise.thigh,
            wanted,
            f"The thigh is {told(rise.thigh)} round instead of {told(wanted)}: {why}.",
        )
    if abs(rise.extra) > MATTERS:
        way = "higher" if rise.extra > 0 else "lower"
        yield Finding(
            "back rise",
            "warning",
            "back",
            rise.extra,
            0.0,
            f"The back waist lies {told(abs(rise.extra))} {way} than the seat angle gives, so that "
            "the crotch length holds: thigh and crotch length hardly go together. Measure both again.",
        )


def _knee(shape: LegShape) -> Iterator[Finding]:
    frame = shape.frame
    wanted = frame.asked.girth["knee"]
    if frame.knee_girth > wanted + 1e-3:
        yield Finding(
            "knee",
            "note",
            "knee",
            frame.knee_girth,
            wanted,
            f"The knee is {told(frame.knee_girth)} round instead of {told(wanted)}, so that the calf passes.",
        )


def _waist(shape: LegShape) -> Iterator[Finding]:
    frame = shape.frame
    wanted = frame.asked.girth["waist"]
    if abs(frame.waist_girth - wanted) > 1e-3:
        yield Finding(
            "casing",
            "note",
            "waist",
            frame.waist_girth,
            wanted,
            f"The waist's cloth is {told(frame.waist_girth)} round instead of {told(wanted)}, so that it "
            "passes over the hip; the elastic draws it in.",
        )


def _seated(shape: LegShape) -> Iterator[Finding]:
    frame, rise = shape.frame, shape.rise
    if frame.asked.seated:
        level = shape.waist.side.imag
        yield Finding(
            "seated",
            "note",
            "waist level",
            rise.back.top.imag - level,
            None,
            f"Drafted for sitting: the waist lies {told(rise.back.top.imag - level)} higher at the "
            f"centre back and {told(level - rise.front.top.imag)} lower at the centre front than at "
            "the side, and the hem is longer in front.",
        )


def openings_said(shape: LegShape, openings: Openings) -> tuple[Finding, ...]:
    """Return what is said of the slit at the hem and of a fly too short to get in by."""
    found = []
    frame = shape.frame
    if openings.slit:
        tight = frame.hem_girth < frame.asked.heel
        why = (
            f": the hem of {told(frame.hem_girth)} does not pass the heel ({told(frame.asked.heel)} needed)"
            * tight
        )
        found.append(
            Finding(
                "heel",
                "note",
                "trouser hem",
                openings.slit,
                None,
                f"The lowest {told(openings.slit)} of the side seam stay open{why}.",
            )
        )
    opens = frame.waist_girth * frame.asked.stretch.pull + 2 * openings.fly
    hip = frame.asked.body["hip"]
    if openings.fly and opens < hip:
        longer = openings.fly + math.ceil((hip - opens) / 2)
        found.append(
            Finding(
                "fly",
                "warning",
                "fly",
                openings.fly,
                longer,
                f"With the fly open for {told(openings.fly)} the waist is {told(opens)} round and does not "
                f"pass the hip of {told(hip)}: add an opening of {told(longer - openings.fly)} at the side.",
            )
        )
    return tuple(found)
