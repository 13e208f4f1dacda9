"""Room for the forearm: where it is fullest, how wide a sleeve is there at least, and what is said."""

from __future__ import annotations

from drafting.body import Body
from drafting.ground.findings import Finding
from drafting.ground.lengths import told

FULLEST = 0.26
"""How far down from elbow to wrist the forearm is fullest, as a share (ours; the wearer's form has it there)."""

LEAST_EASE = 20.0
"""mm at adult scale: a woven sleeve is so much wider than the forearm at least (ours: it still slides over it)."""

HAND_ROOM = 5.0
"""mm: a closed hem passes the hand with this much to spare (ours)."""

TOO_NARROW = 0.5
"""mm: a sleeve narrower than the forearm by no more is not worth a word (ours)."""


def forearm_depth(body: Body) -> float:
    """Return how far below the crown the forearm is fullest, mm."""
    elbow = body["upper_arm_length"]
    return elbow + FULLEST * max(body["arm_length"] - elbow, 0.0)


def forearm_room(body: Body, arm_ease: float, scale: float) -> float:
    """Return how wide (mm) a sleeve is round the forearm at least; one of less `arm_ease` has less there."""
    ease = min(LEAST_EASE * scale, max(arm_ease, 0.0))
    return body["forearm_girth"] + body.layer("forearm_girth") + ease


def hem_for(body: Body, pull: float) -> float:
    """Return what a hem has to measure (mm) for the hand to pass, opened by `pull` times as it is drawn on."""
    return body["hand_girth"] / pull + HAND_ROOM


def hand_hem(hem: float, hand: float, share: float) -> float:
    """Return a hem (mm) that is `share` of the limb it lies on, wide enough for the `hand` where it stays close.

    `hand` is what a hem has to measure for the hand to pass as the cloth is pulled. A few mm let it through, and
    no slit is needed (common practice); where the hem would be looser than the limb it stays as it is.

    >>> hand_hem(138.0, 141.0, 1 / 1.15), hand_hem(138.0, 190.0, 1 / 1.15), hand_hem(200.0, 141.0, 1.0)
    (141.0, 138.0, 200.0)
    """
    return hand if hem < hand <= hem / share else hem


def hem_said(hem: float, asked: float) -> tuple[Finding, ...]:
    """Tell where a hem was made wider (mm) than `asked`, so that a hand passes."""
    if hem == asked:
        return ()
    text = (
        f"The sleeve's hem is {told(hem)} round in place of {told(asked)}, so that the hand passes without a slit."
    )
    return (Finding("hand", "note", "sleeve", hem, asked, text),)


def forearm_said(body: Body, width: float, length: float, opens: float = 1.0) -> tuple[Finding, ...]:
    """Warn where a sleeve `width` mm wide at the upper arm and `length` mm long does not go over the forearm.

    `body` is as the tape took it. `opens` is how many times its width a close sleeve of stretch cloth opens to as
    it is drawn on; 1 for what has ease.
    """
    least = body["forearm_girth"] + body.layer("forearm_girth")
    if width * opens >= least - TOO_NARROW or length < forearm_depth(body):
        return ()
    drawn = f", {told(width * opens)} as it is drawn on" if opens > 1 else ""
    text = (
        f"The sleeve is {told(width)} wide{drawn}, the forearm {told(least)} round: it will not go over it. "
        f"At least {told(least / opens - width)} more arm_ease makes room."
    )
    return (Finding("forearm", "warning", "sleeve", width, least / opens, text),)
