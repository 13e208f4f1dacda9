"""What has to be said of an armhole that was settled: widths across, shoulder, and room for the arm."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.shaping.torso.plan import TorsoPlan

NARROW, TOO_NARROW = 0.25, 0.22
"""Width of an armhole over the hanging upper arm under which it is said, and warned (ours)."""

TURNS = 0.96
"""Least radius of an armhole over the one aimed at under which it is said (25 of 26 mm)."""

SEEN = 0.02
"""mm: what moved by less needs no word."""

CUT = 1.0
"""mm: a width across under the body's own by more than this is warned (as the girth checks allow)."""


def across_findings(
    was: TorsoPlan, now: TorsoPlan, own: tuple[float, float], outside: float, share: float
) -> tuple[Finding, ...]:
    """Return a finding for each thing that gave way.

    `own` are the body's half widths across where measured (else 0), `outside` how far the across point
    lies outside the shoulder point (mm), `share` the armhole's width over the upper arm.
    """
    return (*_across(was, now, own), *_shoulder(was, now), *_outside(outside, was.scale), *_width(share))


def _across(was: TorsoPlan, now: TorsoPlan, own: tuple[float, float]) -> Iterator[Finding]:
    back, front = now.across_back - was.across_back, now.across_front - was.across_front
    if max(abs(back), abs(front)) <= SEEN:
        return
    cut = max(min(own[0], was.across_back) - now.across_back, min(own[1], was.across_front) - now.across_front)
    why = (
        "the shoulder is long and flat for the widths across, and the armhole has to stay smooth"
        if back + front > 0
        else "they are great for this shoulder and this arm, and the armhole needs its hollow"
    )
    yield Finding(
        "across",
        "warning" if cut > CUT else "note",
        "bodice",
        2 * now.across_back,
        2 * was.across_back,
        f"Across back {told(2 * was.across_back, 'fine')} to {told(2 * now.across_back, 'fine')}, across front "
        f"{told(2 * was.across_front, 'fine')} to {told(2 * now.across_front, 'fine')}: {why}."
        + (" Measure shoulder length and both widths across again." if cut > CUT else ""),
    )


WARNED = 0.5
"""mm by which a shoulder has to be shorter for a warning (ours: a tape reads no finer)."""


def _shoulder(was: TorsoPlan, now: TorsoPlan) -> Iterator[Finding]:
    more = now.shoulder.length - was.shoulder.length
    if abs(more) <= 0.05:
        return
    longer = more > 0
    why = "great" if longer else "narrow"
    yield Finding(
        "shoulder",
        "note" if longer or abs(more) < WARNED else "warning",
        "bodice",
        now.shoulder.length,
        was.shoulder.length,
        f"The shoulder is drafted {told(abs(more))} {'longer' if longer else 'shorter'} "
        f"({told(now.shoulder.length)} instead of {told(was.shoulder.length)}), as the widths across are {why} "
        "for it. Measure shoulder length, shoulder drop and across back again.",
    )


def _outside(outside: float, scale: float) -> Iterator[Finding]:
    if outside > 0.5 * scale:
        yield Finding(
            "across point",
            "note",
            "bodice",
            outside,
            0.0,
            f"The arm fold lies {told(outside)} outside the shoulder's end: the widths across are great for "
            "this shoulder, and a sleeve will sit a little under it.",
        )


def _width(share: float) -> Iterator[Finding]:
    if share >= NARROW:
        return
    yield Finding(
        "armhole width",
        "warning" if share < TOO_NARROW else "note",
        "bodice",
        share,
        NARROW,
        f"The armhole is narrow for this arm: near its bottom it measures {share:.2f} of the upper arm, and "
        f"{NARROW:.2f} to 0.28 is wanted. More bust ease makes room; measure upper arm and across widths again.",
    )


def turn_findings(roundness: float) -> tuple[Finding, ...]:
    """Return what is said of an armhole that turns more sharply than it should; 1 and more is good."""
    if roundness >= TURNS:
        return ()
    return (
        Finding(
            "armhole turn",
            "warning",
            "front",
            roundness,
            1.0,
            f"The armhole turns on {100 * roundness:.0f} % of the radius that a sleeve sets in well on: so large "
            "a bust dart turns the underarm far up. A panel seam, or more bust ease, gives it room.",
        ),
    )
