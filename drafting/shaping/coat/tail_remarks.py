"""What the maker is told about the tails: angles, sweep, floor, doorway and seat. mm and degrees."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from drafting.body import Body
from drafting.draft.bias import BIASED
from drafting.ground.findings import Finding, Severity
from drafting.ground.lengths import told
from drafting.ground.tolerances import SEAM_MATCH
from drafting.shaping.coat.body_pieces import TAIL_FRONT_MOST
from drafting.shaping.coat.skirt import Tail
from drafting.shaping.flare.grain import TRUE_BIAS

LEAST_CLEARANCE = 25.0
"""mm: least clearance of a hem over the floor (common practice: 20-40)."""

PAST_KNEE = 50.0
"""mm: tails may pass the hollow of the knee by so much without a word (ours)."""

DOORWAY, SEAT = 800.0, 450.0
"""mm: clear width of a doorway, and width of a chair's seat (common practice)."""

BODY_WIDTH = 0.36
"""Width of the hips as a share of their girth (from memory)."""


@dataclass(frozen=True)
class HemHang:
    """Where the hem hangs: tail length and knee hollow from the nape, and the floor, mm."""

    length: float
    knee: float
    floor: float


def hang_of(body: Body, length: float) -> HemHang:
    """Return knee and floor below the nape; the shoe's heel counts, where it is not measured in."""
    measured = "nape_to_floor" in body.measures
    floor = body["nape_to_floor"] if measured else body["nape_height"] + body.heel
    return HemHang(length, knee_hollow(body), floor)


def knee_hollow(body: Body) -> float:
    """Return how far the hollow of the knee lies below the nape, mm."""
    return body["nape_height"] - body["knee_height"]


def tail_findings(tail: Tail, hang: HemHang, hip: float, skirt: float) -> tuple[Finding, ...]:
    """Return the findings; `skirt` is the width of the back's skirt at the hem, half coat."""
    return (*_length(hang), *_seams(tail), *_living(tail, hang, hip, skirt), *_hanging(tail))


def cutaway_said(at: float, asked: float, half: float) -> Iterator[Finding]:
    """Yield where the tails start, mm from the centre front, if not as `asked`, mm; `half` is the half waist."""
    if asked - at < SEAM_MATCH:
        return
    most = math.floor(100 * at / half) / 100
    yield Finding(
        "cutaway",
        "note",
        "front",
        at,
        asked,
        f"The tails were asked to start {told(asked)} from the centre front (`cutaway` {asked / half:.2f} of the "
        f"half waist), and start {told(at)} from it: they begin at most {TAIL_FRONT_MOST:.0%} of the way from the "
        "centre front to the front seam, so that the forepart carries them. How far off that seam lies at the "
        f"waist, `bust_ease` and `waist_ease` settle with the tape; as they are, `cutaway` up to {most:.2f} is "
        "drafted as it is asked for.",
    )


def _length(hang: HemHang) -> Iterator[Finding]:
    over = hang.floor - hang.length
    usual = f"The hollow of the knee, where tails usually end, lies {told(hang.knee)} below the nape."
    if over < 0:
        text = (
            f"The tails end {told(-over)} below the floor: {told(hang.length)} from the nape, which "
            f"stands {told(hang.floor)} high. {usual} Leave at least {told(LEAST_CLEARANCE)} above the "
            f"floor: at most {told(hang.floor - LEAST_CLEARANCE)}."
        )
    elif over < LEAST_CLEARANCE:
        text = (
            f"The tails end only {told(over)} above the floor: heels, stairs and escalators catch them. "
            f"{usual} Leave at least {told(LEAST_CLEARANCE)}."
        )
    elif hang.length > hang.knee + PAST_KNEE:
        text = (
            f"The tails pass the hollow of the knee by {told(hang.length - hang.knee)} and end "
            f"{told(over)} above the floor: lift them on stairs."
        )
    else:
        text = f"The tails end {told(over)} above the floor, {told(hang.length)} below the nape. {usual}"
    level: Severity = "warning" if over < LEAST_CLEARANCE else "note"
    yield Finding("hem clearance", level, "tail", over, LEAST_CLEARANCE, text)


def _seams(tail: Tail) -> Iterator[Finding]:
    """Every seam with both its angles to the warp."""
    for seam in tail.biases:
        state = f"{'' if seam.true else 'not '}the true bias of {TRUE_BIAS:.0f} on both panels"
        extra = f"{told(seam.flare)} of flare" if seam.flare > 0 else "no flare"
        yield Finding(
            "seam bias",
            "note",
            f"tail-{seam.number} to tail-{seam.number + 1}",
            f"{seam.back:.1f} and {seam.front:.1f}",
            TRUE_BIAS,
            f"Tail seam {seam.number} ({extra}): {seam.back:.1f} degrees to the warp of tail {seam.number}, "
            f"{seam.front:.1f} to that of tail {seam.number + 1}: {state}.",
        )
    if any(seam.flare > 0 for seam in tail.biases):
        yield Finding(
            "mirrored bias",
            "note",
            "tail",
            None,
            None,
            "The right tail mirrors the left with its warp. On a twill the mirrored bias is not the same "
            "bias, as one runs with the twill line and one across it: take a plain weave where both tails "
            "have to hang alike.",
        )


def _living(tail: Tail, hang: HemHang, hip: float, skirt: float) -> Iterator[Finding]:
    sweep = 2 * (tail.sweep + skirt)
    drop = tail.plain.length_at(tail.plain.width / 2) * tail.longer
    wide = BODY_WIDTH * hip + 2 * drop * math.sin(math.radians(tail.lean))
    yield Finding(
        "sweep",
        "note",
        "tail",
        sweep,
        2 * (tail.plain_sweep + skirt),
        f"The hem measures {told(sweep)} in all, of which flare adds {told(2 * (tail.sweep - tail.plain_sweep))}; "
        f"each tail turns {tail.turned:.0f} degrees more than plain. Held open it leans out "
        f"{tail.lean:.0f} degrees and hems about {told(wide)} across.",
    )
    if wide > DOORWAY:
        yield Finding(
            "doorway",
            "note",
            "tail",
            wide,
            DOORWAY,
            f"Boned open, the tails are {told(wide)} across and a doorway is {told(DOORWAY)}: they have to "
            "give, or the wearer goes through sideways. Spiral bones give; so does a bone a panel.",
        )
    if hang.length > hang.knee - 250 and sweep > SEAT:
        yield Finding(
            "seat",
            "note",
            "tail",
            sweep,
            SEAT,
            f"A chair's seat is {told(SEAT)} wide and the tails' hem {told(sweep)}: part them at the vent and lay "
            "them to the sides before sitting down; a hem bone bends only as far as its tips allow.",
        )


def _hanging(tail: Tail) -> Iterator[Finding]:
    if tail.turned < 1:
        return
    off = [min(seam.back, seam.front, 90 - seam.back, 90 - seam.front) for seam in tail.biases]
    if not off or max(off) > BIASED:  # what is cut along the warp does not drop, nor is it cut longer
        yield Finding(
            "hang before hemming",
            "note",
            "tail",
            24.0,
            None,
            "Sew the flared panels and let them hang at least 24 hours first: the bias drops, and for that they "
            "are cut longer by `hang_length`. Then level the hem from the floor, and hem.",
        )
    if tail.longer > 1.0005:
        yield Finding(
            "level hem",
            "note",
            "tail",
            tail.longer,
            1.0,
            f"Every line down the tail is drafted {100 * (tail.longer - 1):.1f} % longer, so that the hem is "
            f"level when the tails are held open, {tail.lean:.0f} degrees out; hanging limp they are longer.",
        )
