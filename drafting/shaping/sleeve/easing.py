"""How much of a longer edge a cloth can ease in without tucks, and what is told of a cap's ease."""

from __future__ import annotations

import math

from drafting.fabric import Fabric
from drafting.ground.findings import Finding, Severity
from drafting.ground.lengths import told

EASES: dict[str, float] = {"well": 60.0, "little": 15.0, "none": 4.0}
"""mm: greatest cap ease that a cloth takes, by how it eases (common practice: 0-5 where it does not)."""

BACK_SHARE = 0.56
"""Share of the cap ease that lies in the back half (common practice: 13-16 mm back, 10-13 front)."""

MOST_EASE = 0.091
"""Share of the armhole that can be eased in without puckers (common practice)."""

SOUND_CAP = (0.5, 0.92)
"""Cap height over armhole depth: below, the sleeve lies in folds under the arm when it hangs; above,
the arm hardly rises before the body is pulled along (ours, from the angle at which the arm lifts)."""

SEEN = 0.02
"""mm: a sleeve wider than asked for by no more than this is not worth a word (ours)."""


def cap_ease_in(fabric: Fabric | None, wanted: float) -> tuple[float, tuple[Finding, ...]]:
    """Return the cap ease in mm: as wanted, or the most that this cloth can ease in, and say so."""
    most = EASES[fabric.eases] if fabric else EASES["well"]
    if wanted <= most or fabric is None:
        return wanted, ()
    said = Finding(
        "cap ease",
        "warning",
        "sleeve",
        most,
        wanted,
        f"The cap ease is {told(most)} instead of {told(wanted)}: {fabric.title} eases "
        f"{'hardly' if fabric.eases == 'little' else 'not at all'}, and more would sew in as tucks.",
    )
    return most, (said,)


def cap_ease_said(cap: float, hole: float, caps: str = "The cap is") -> Finding:
    """Tell lengths of cap and armhole (mm) and the ease between; too much is a warning."""
    ease, most = cap - hole, MOST_EASE * hole
    text = (
        f"{caps} {told(cap)} long, the armhole {told(hole)}: {told(ease)} "
        f"({100 * ease / hole:.1f} %) are eased in."
    )
    if ease <= most:
        return Finding("cap ease", "note", "sleeve", ease, None, text)
    text += f" More than {told(most)} puckers: choose less cap ease, or gather the cap."
    return Finding("cap ease", "warning", "sleeve", ease, most, text)


def cap_height_said(height: float, lift: float, pulls: str) -> Finding:
    """Tell how high (mm) a cap is and to what angle (degrees) the arm lifts before it `pulls`; a cap
    too low or too high for its armhole is a warning."""
    share = math.cos(math.radians(lift))
    text = (
        f"The cap is {told(height)} high, {100 * share:.0f} % of the armhole's depth: the arm rises about "
        f"{lift:.0f} degrees from hanging before the sleeve {pulls}."
    )
    low, high = SOUND_CAP
    if share < low:
        text += " So low a cap hangs in folds under the arm: a deeper armhole, or less arm ease, raises it."
    elif share > high:
        text += " So high a cap lets the arm hardly rise: more arm ease or a shallower armhole lowers it."
    level: Severity = "note" if low <= share <= high else "warning"
    return Finding("arm lift", level, "sleeve", lift, None, text)


def sleeve_width_said(width: float, wanted: float, remedy: str) -> tuple[Finding, ...]:
    """Say so where the sleeve had to be made wider (mm) than asked for; `remedy` would mend it."""
    if width <= wanted + SEEN:
        return ()
    return (
        Finding(
            "sleeve width",
            "warning",
            "sleeve",
            width,
            wanted,
            f"The sleeve is drafted {told(width)} wide at the upper arm instead of {told(wanted)}: the arm "
            f"is thin for this armhole. {remedy} would bring the width back.",
        ),
    )
