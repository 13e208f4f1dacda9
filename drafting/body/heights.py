"""How high nape, waist and crotch lie above the floor, where several measures speak of one height.

A back waist length runs along the curve of the back and is longer than the height it spans; a waist
height that was measured at the side stands before it. What gives way is told.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.body.body import Body
from drafting.body.depths import seat_depth
from drafting.body.estimates import estimate_scale
from drafting.body.leg_rules import SITTING
from drafting.body.rules import rounded
from drafting.ground.findings import Finding
from drafting.ground.units import show_length

ALONG = 1.032
"""Nape to waist along the back / straight down: mean of 3,034 adults of `Source.ANSUR_II` (sd 0.028)."""

STRAIGHTEST, MOST_CURVED = 1.005, 1.06
"""The least and the most of the same that a form is given (ours; the survey's 15 to 85 % are 1.00 to 1.06)."""

ROUNDEST, SQUAREST = 0.62, 0.81
"""Crotch length less twice the rise, as shares of the seat's depth: the least and most that a seat's shape
holds (read off the form; the survey's women have 1.0, its men 0.83, sd 0.13)."""

MOST_RAISED = 0.018
"""Of the height: the farthest that waist and nape give way to a crotch length (ours)."""

FRONT_ANSWERS = 1.35
"""By how many mm a front is longer for each mm of `chest_forward`: regression on 3,034 adults of
`Source.ANSUR_II`, girths and throat alike (on the heights as measured, 1.00 and nothing for the back's curve)."""

FADES = 30.0
"""mm past what two tapes may disagree by over which they are believed less and less (ours)."""

TOLD = 15.0
"""mm by which a measure gives way before it is told (ours: two tapes may disagree by as much)."""


@dataclass(frozen=True)
class Heights:
    """Heights above the floor in mm, barefoot; `said` tells which measures gave way."""

    nape: float
    waist: float
    crotch: float
    said: tuple[Finding, ...] = ()


def heights(body: Body) -> Heights:
    """Return the heights that the measures of `body` agree on.

    The waist is the outside leg where that was measured, else inside leg and rise if both were, else as far
    below the nape as the back waist length spans. The crotch is the inside leg where that was measured,
    else a standing rise below the waist. A nape too near or far for its back waist length gives way, and
    waist and nape together give way to a measured crotch length that no seat's shape would hold.
    """
    back = body["back_waist_length"] - rounding(body)
    waist = _waist(body)
    if waist is None:
        waist = body["nape_height"] - back / ALONG
    nape = body["nape_height"]
    if not body.measured("nape_height") and body.measured("back_waist_length"):
        nape = waist + back / ALONG
    nape = waist + _spanned(back, nape - waist)
    crotch = body["inside_leg_length"] if body.measured("inside_leg_length") else waist - standing_rise(body)
    raised = _raised(body, waist - crotch)
    nape, waist = nape + raised, waist + raised
    return Heights(nape, waist, crotch, _said(body, nape, waist, crotch))


def _spanned(back: float, height: float) -> float:
    """Return how high a back waist length spans, mm: as measured, as far as a back may be curved."""
    return min(max(height, back / MOST_CURVED), back / STRAIGHTEST)


def chest_forward(body: Body) -> float:
    """Return how much straighter the back is than usual, mm: less than 0, rounder.

    Of two wearers with one back waist length the one whose nape stands higher over the waist carries the
    chest farther forward. 0 where nape and waist heights were not both measured; it fades out where no back is so
    straight or so curved as these tapes have it, as then one of them slipped.
    """
    back, height = _back_and_height(body)
    if not height:
        return 0.0
    slipped = abs(height - _spanned(back, height)) - TOLD
    believed = 1.0 - min(max(slipped / FADES, 0.0), 1.0)
    return believed * (ALONG * _spanned(back, height) - back)


def tapes_apart(body: Body) -> float:
    """Return by how much (mm) nape and waist heights lie farther apart than any back of this length is (less than
    0: nearer together); 0 where it is no more than two tapes may disagree by, or where a height is not known."""
    back, height = _back_and_height(body)
    beyond = height - _spanned(back, height) if height else 0.0
    return beyond if abs(beyond) > TOLD else 0.0


def _back_and_height(body: Body) -> tuple[float, float]:
    """Return the back waist length and the height of nape over waist, mm; 0 for a height that was not measured."""
    known = body.measured("nape_height") and body.measured("back_waist_length")
    waist = _waist(body) if known else None
    return (
        (0.0, 0.0) if waist is None else (body["back_waist_length"] - rounding(body), body["nape_height"] - waist)
    )


def front_answer(body: Body) -> float:
    """Return by how much (mm) the front is longer than the back waist length alone leads one to expect.

    It goes with the height of nape over waist, not with the curve of the back. 0 where the front waist length
    was measured: then it speaks for itself.
    """
    return 0.0 if body.measured("front_waist_length") else FRONT_ANSWERS * chest_forward(body)


def rounding(body: Body) -> float:
    """Return what a back is longer than the height it spans asks for, mm (`rules.rounded`)."""
    if not body.measured("front_waist_length"):
        return 0.0
    scale = estimate_scale(body["height"])
    names = ("front_waist_length", "back_waist_length", "bust_girth", "high_bust_girth")
    return scale * rounded({name: body[name] / scale for name in names})


def standing_rise(body: Body) -> float:
    """Return waist to crotch in mm of who stands: a rise that was taken sitting is longer by the flesh."""
    rise = body["body_rise"]
    return rise - SITTING * body["hip_girth"] if body.measured("body_rise") else rise


def _raised(body: Body, rise: float) -> float:
    """Return how far waist and nape stand higher, mm, so that a measured crotch length goes round the seat."""
    if not body.measured("total_crotch_length"):
        return 0.0
    deep = seat_depth(body, estimate_scale(body["height"]))
    over = body["total_crotch_length"] - 2 * rise
    beyond = over - min(max(over, ROUNDEST * deep), SQUAREST * deep)
    most = MOST_RAISED * body["height"]
    return min(max(beyond / 2, -most), most)


def _waist(body: Body) -> float | None:
    if body.measured("outside_leg_length"):
        return body["outside_leg_length"]
    if body.measured("inside_leg_length") and body.measured("body_rise"):
        return body["inside_leg_length"] + standing_rise(body)
    return None


def _said(body: Body, nape: float, waist: float, crotch: float) -> tuple[Finding, ...]:
    told = []
    if body.measured("nape_height") and abs(body["nape_height"] - nape) > TOLD:
        why = "the back waist length from the waist up reaches no higher"
        told.append(_gave_way("nape_height", body["nape_height"], nape, why))
    if body.measured("outside_leg_length") and abs(body["outside_leg_length"] - waist) > TOLD:
        why = "the crotch length needs it to go round the seat"
        told.append(_gave_way("outside_leg_length", body["outside_leg_length"], waist, why))
    if body.measured("outside_leg_length") and body.measured("body_rise") and body.measured("inside_leg_length"):
        rise = waist - crotch
        if abs(rise - standing_rise(body)) > TOLD:
            why = "outside leg less inside leg says so"
            told.append(_gave_way("body_rise", standing_rise(body), rise, why))
    return tuple(told)


def _gave_way(name: str, given: float, stands: float, why: str) -> Finding:
    words = name.replace("_", " ")
    text = f"the form stands with a {words} of {show_length(stands)}, not {show_length(given)}: {why}"
    return Finding("heights", "note", name, given, None, text)
