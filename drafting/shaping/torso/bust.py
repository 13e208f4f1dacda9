"""The bust: by how much it is shaped, and where bust point and front side neck point lie. mm, degrees."""

from __future__ import annotations

import math
from dataclasses import dataclass

from drafting.body import Body, bust_level
from drafting.body.heights import front_answer, tapes_apart
from drafting.ground import tolerances as tol
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.shaping.torso.neckline import FRONT_WIDTH

SPLIT_BUST_DART = 25.0
"""degrees: past this, half of the further bust shaping stays as armhole ease (trade habit, memory)."""


@dataclass(frozen=True)
class BustLevels:
    """y levels (mm) between which the bust lies: underarm, waist; `length` is what was added to the waist."""

    underarm: float
    waist: float
    length: float


@dataclass(frozen=True)
class Run:
    """Half front, mm: where the bust point lies, and how far from it the middle of the arm's width is."""

    point: float
    arm: float


def bust_run(body: Body, front: float, across_front: float) -> Run:
    """Return these for a half front and a half across front (mm)."""
    point = min(body["bust_point_width"] / 2, front - 0.3 * (front - 0.6 * across_front))
    return Run(point, (across_front + front) / 2 - point)


def back_excess(body: Body, plain: float, arm: float) -> float:
    """Return what the back is longer than its front leads one to expect, mm: a rounded back.

    `plain` is how far the front side neck of a flat chest lies above the nape. Only a measured front tells.
    """
    if not body.measured("front_waist_length"):
        return 0.0
    bust = math.sin(math.radians(angle_of_girths(body))) * arm
    expected = body["back_waist_length"] + plain + bust
    return max(0.0, expected - body["front_waist_length"])


FRONT_TOLD = 8.0
"""mm at adult scale that a front is longer or shorter than usual from which it is told (ours)."""


def front_said(body: Body, scale: float) -> tuple[Finding, ...]:
    """Return what is told where nape and waist heights make the front longer or shorter, or cannot be true."""
    apart, more = tapes_apart(body), front_answer(body)
    if apart and not body.measured("front_waist_length"):
        text = (
            f"The nape stands {told(abs(apart))} {'too high' if apart > 0 else 'too low'} over the waist for any "
            "back of this length, so the front goes by the back waist length rather than by them. Measure "
            "nape_height, outside_leg_length and back_waist_length again, from one tape tied round the waist."
        )
        return (Finding("front length", "warning", "front", apart, None, text),)
    if abs(more) < FRONT_TOLD * scale:
        return ()
    back, way = ("straight", "longer") if more > 0 else ("round", "shorter")
    text = (
        f"The front is drafted {told(abs(more))} {way} than the back waist length alone would have it, as the "
        f"nape's height over the waist tells of a {back} back. Measure front_waist_length to be sure."
    )
    return (Finding("front length", "note", "front", more, None, text),)


def angle_of_girths(body: Body) -> float:
    """Return the bust dart's angle by bust and high bust, degrees: see `bust_angle`."""
    fullness = max(0.0, body["bust_girth"] - body["high_bust_girth"])
    return 2 * math.degrees(math.asin(min(0.5, fullness / 4 / (OPENED_AT * body["bust_girth"]))))


OPENED_AT = 0.10
"""Where the bust dart's opening is taken, from the bust point, as a share of the bust girth (ours)."""

GUESSED = 6.0
"""mm at adult scale: bust less an estimated high bust from which a maker is asked (ours)."""


def bust_guessed(body: Body, scale: float) -> tuple[Finding, ...]:
    """Return what is asked where a bust's shape is guessed from girths alone."""
    full = body["bust_girth"] - body["high_bust_girth"]
    known = body.measured("high_bust_girth") or body.measured("front_waist_length")
    if known or body.figure or full <= GUESSED * scale:
        return ()
    return (
        Finding(
            "bust shape",
            "warning",
            "front",
            full,
            GUESSED * scale,
            f"The bust is shaped by a guess: nobody measured the high bust, and it is estimated {told(full)} "
            'under the bust. Measure high_bust_girth; for a chest without a bust write figure = "mens" in the '
            'body file, or figure = "womens" if the guess is right.',
        ),
    )


def bust_angle(body: Body, scale: float, plain: float, arm: float, findings: list[Finding]) -> float:
    """Return the bust dart's angle, degrees.

    The armhole must open by half the fullness (bust less high bust) at a tenth of the bust girth
    from the bust point (ours; 50 mm at 880 gives 16-17 degrees, charts 15-18 from memory). Where
    the front waist length is measured, what it says has equal weight: twice as much where the high
    bust is only an estimate.
    """
    angle = angle_of_girths(body)
    if body.measured("front_waist_length"):
        extra = body["front_waist_length"] - plain
        by_length = math.degrees(math.asin(max(0.0, min(0.6, extra / max(arm, 1.0)))))
        weight = 1 / 2 if body.measured("high_bust_girth") else 2 / 3
        angle += weight * (by_length - angle)
    if angle > SPLIT_BUST_DART:
        kept = SPLIT_BUST_DART + (angle - SPLIT_BUST_DART) / 2
        findings.append(
            Finding(
                "bust dart",
                "warning",
                "front",
                angle,
                SPLIT_BUST_DART,
                f"The bust asks for a dart of {angle:.1f} degrees; {kept:.1f} are drafted and the rest "
                "stays as ease in the armhole. A panel seam in the dart's place, or a second dart, would shape it "
                "better; where it has a panel seam already, pin the rest out of the armhole at the mock-up.",
            )
        )
        angle = kept
    return angle if bust_opening(body["bust_girth"], angle) >= tol.LEAST_DART * scale else 0.0


def bust_opening(bust: float, angle: float) -> float:
    """Return how wide (mm) a bust dart of this angle (degrees) is where its opening is taken."""
    return 2 * OPENED_AT * bust * math.sin(math.radians(angle / 2))


FAR = 20.0
"""mm past the bust point from which a dart shapes the wrong place (common practice: it ends 20 to 30 before)."""


def front_levels(
    body: Body,
    neck_width: float,
    front_neck: float,
    point_x: float,
    at: BustLevels,
    scale: float,
    findings: list[Finding],
) -> tuple[float, float]:
    """Return the y of the front side neck point and of the bust point.

    A measured front waist length is taken from the side neck point straight to the bust point and
    from there straight down; a measured bust point depth likewise. The bust line stays at least
    6 mm below the underarm and 60 mm above the waist.
    """
    run = point_x - FRONT_WIDTH * neck_width
    point_y = -bust_level(body)
    if body.measured("front_waist_length"):
        whole = body["front_waist_length"] + at.length
        if body.measured("bust_point_depth"):
            point_y = at.waist + whole - body["bust_point_depth"]
        upper = max(whole - (point_y - at.waist), abs(run) + 1.0)
        front_neck = point_y + math.sqrt(upper**2 - run**2)
    elif body.measured("bust_point_depth"):
        depth = body["bust_point_depth"]
        point_y = front_neck - math.sqrt(max(depth**2 - run**2, (0.5 * depth) ** 2))
    kept = min(max(point_y, at.waist + 60 * scale), at.underarm - 6 * scale)
    if abs(kept - point_y) > 5 * scale and body.measured("bust_point_depth"):
        way = "lower" if kept < point_y else "higher"
        far = abs(kept - point_y) > FAR * scale
        more = " The darts point so far past the bust: measure bust point depth and front waist length again"
        mend = f"{more}{', or take less armhole_drop' if kept < point_y else ''}." if far else ""
        findings.append(
            Finding(
                "bust line",
                "note",
                "front",
                -kept,
                -point_y,
                f"The bust line is drafted {told(abs(kept - point_y))} {way} than measured, to stay between "
                f"underarm and waist.{mend}",
            )
        )
    return front_neck, kept
