"""Settle a torso's numbers before anything is drawn: levels, widths, slopes, dart amounts.

Half frame: nape at 0, centre on x = 0, side on +x, y up, mm and degrees. Constants marked *ours*
were chosen by eye and by how many people of `Source.ANSUR_II` they fit; the other sources are named.
Conflicts between measures are settled here by named rules, each of which leaves a finding.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from drafting.body import Body, bust_level
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.shaping.torso.neckline import BACK_RISE, FRONT_WIDTH, Neckline, neckline, sided_neckline

LEAST_ARM_WIDTH = 0.13
"""Least armhole width as a share of the half bust (ours)."""

LEAST_ARM_WIDTH_CLOSE = 0.20
"""The same in a close stretch torso, whose cloth gives across (ours)."""

SLOPES = (7.0, 33.0)
"""degrees: flattest and steepest shoulder that is drafted (ours)."""

BALANCE = 8.0
"""mm: front side neck below the back's on a body without bust shaping (ours)."""

SCYE_BELOW_AXILLA = 30.0
"""mm: a taped scye depth less this stands for the axilla depth, so that the default drop of 40
ends 10 below the tape (the demand is 0-20)."""

SPLIT_BUST_DART = 25.0
"""degrees: past this, half of the further bust shaping stays as armhole ease (trade habit, memory)."""


@dataclass(frozen=True)
class TorsoEase:
    """What the maker asks for over the body, mm (layers worn beneath included).

    `drop` is the underarm's depth below the axilla, `arm` the upper-arm ease of the sleeve that the
    armhole is fitted to.
    """

    bust: float
    waist: float
    hip: float
    neck: float
    across_back: float
    across_front: float
    arm: float
    shoulder: float
    length: float
    drop: float


@dataclass(frozen=True)
class Shoulder:
    """Shoulder seam of the half frame: slopes in degrees, length in mm."""

    slope_back: float
    slope_front: float
    length: float


@dataclass(frozen=True)
class TorsoPlan:
    """The settled numbers of one half torso.

    `underarm`, `bust_line`, `waist`, `hip` are y levels; `back`, `front` the half widths at the bust line;
    `across_*` the half widths between the arm folds; `kappa` the bust dart's angle, `dart_short` how
    far its tip ends from `bust_point`; `front_neck` the y of the front side neck point.
    """

    scale: float
    neck: Neckline
    shoulder: Shoulder
    underarm: float
    bust_line: float
    waist: float
    back: float
    front: float
    waist_half: float
    hip: float
    hip_half: float
    across_back: float
    across_front: float
    kappa: float
    bust_point: complex
    dart_short: float
    front_neck: float
    fullness: float
    darts: bool
    findings: tuple[Finding, ...]

    @property
    def half(self) -> float:
        return self.back + self.front


def plan_torso(body: Body, ease: TorsoEase, drop: float, scale: float, *, darts: bool = True) -> TorsoPlan:
    """Return the settled numbers for an underarm `drop` mm below the axilla.

    `darts` False plans a close torso of stretch cloth: no bust shaping, across widths give way.
    Raises `DraftError` where the levels leave no room for an armhole above the waist.
    """
    findings: list[Finding] = []
    shoulder = _shoulder(body)
    both, neck = _necks(body, (body["neck_base_girth"] + ease.neck) / 2, shoulder)
    waist = -(body["back_waist_length"] + ease.length)
    underarm = _underarm(body, drop, waist, scale)
    half = (body["bust_girth"] + ease.bust) / 2
    across_back, across_front = _across(body, ease, half, darts, findings)
    fullness = max(0.0, body["bust_girth"] - body["high_bust_girth"]) if darts else 0.0
    arm = half - across_back - across_front
    back = across_back + max((arm - fullness / 2) / 2, 0.3 * arm)
    front = half - back
    point_x = min(body["bust_point_width"] / 2, front - 0.3 * (front - 0.6 * across_front))
    rise_arm = (across_front + front) / 2 - point_x
    plain = BACK_RISE * both.width - BALANCE * scale
    kappa = _kappa(body, fullness, scale, plain - waist, rise_arm, findings) if darts else 0.0
    front_neck, point_y = _front_levels(
        body,
        both,
        plain + math.sin(math.radians(kappa)) * rise_arm,
        point_x,
        underarm,
        waist,
        ease,
        scale,
        findings,
    )
    hip = waist - body["waist_to_hip"]
    return TorsoPlan(
        scale=scale,
        neck=neck,
        shoulder=shoulder,
        underarm=underarm,
        bust_line=point_y,
        waist=waist,
        back=back,
        front=front,
        waist_half=(body["waist_girth"] + ease.waist) / 2,
        hip=hip,
        hip_half=(body["hip_girth"] + ease.hip) / 2,
        across_back=across_back,
        across_front=across_front,
        kappa=kappa,
        bust_point=complex(point_x, point_y),
        dart_short=(22 + 10 * min(1.0, fullness / 120)) * scale,
        front_neck=front_neck,
        fullness=fullness,
        darts=darts,
        findings=tuple(findings),
    )


def _necks(body: Body, length: float, shoulder: Shoulder) -> tuple[Neckline, Neckline]:
    """Return the neckline of both shoulders together, and of this side.

    They are one on an even body; on an uneven one both sides meet in the centre line of the first.
    """
    slope = _slope(_both(body, "shoulder_drop"), _both(body, "shoulder_length"))
    common = neckline(length, slope - 2, slope + 2)
    if abs(slope - 2 - shoulder.slope_back) < 1e-9:
        return common, common
    depth = -common.front.end.imag
    return common, sided_neckline(length, shoulder.slope_back, shoulder.slope_front, depth)


def _both(body: Body, name: str) -> float:
    """Return the mean of both hands where they differ (a body of one side keeps both)."""
    measure = body.measures[name]
    if measure.left is None or measure.right is None:
        return measure.mm
    return (measure.left + measure.right) / 2


def _slope(drop: float, length: float) -> float:
    """Return the shoulder's slope in degrees, between the flattest and the steepest drafted."""
    flat, steep = (math.sin(math.radians(slope)) for slope in SLOPES)
    return math.degrees(math.asin(max(flat, min(steep, drop / length))))


def _shoulder(body: Body) -> Shoulder:
    """Slope from drop over length; the front seam steeper by 2 degrees, the back flatter (ours)."""
    length = body["shoulder_length"]
    slope = _slope(body["shoulder_drop"], length)
    return Shoulder(slope - 2, slope + 2, length)


def _underarm(body: Body, drop: float, waist: float, scale: float) -> float:
    measured = body.measured("scye_depth")
    depth = body["scye_depth"] - SCYE_BELOW_AXILLA * scale if measured else body["axilla_depth"]
    level, lowest = -(depth + drop), waist + 70 * scale
    if level < lowest:
        raise DraftError(
            "the armhole reaches too near the waist",
            value=f"underarm {-level:.0f} mm below the nape, waist {-waist:.0f} mm",
            reach=f"underarm up to {-lowest:.0f} mm below the nape",
            turn="choose a smaller armhole drop, or measure the back waist length again",
        )
    return level


def _across(body: Body, ease: TorsoEase, half: float, darts: bool, findings: list[Finding]) -> tuple[float, float]:
    """Half across widths; where they leave too little for the arm they give way, estimates first."""
    back = (body["across_back_width"] + ease.across_back) / 2
    front = (body["across_front_width"] + ease.across_front) / 2
    room = (1 - (LEAST_ARM_WIDTH if darts else LEAST_ARM_WIDTH_CLOSE)) * half
    over = back + front - room
    if over <= 0:
        return back, front
    wanted = back, front
    if darts and not body.measured("across_front_width"):
        front -= min(over, max(0.0, front - 0.8 * back))
    share = room / (back + front)
    back, front = back * min(1.0, share), front * min(1.0, share)
    findings.append(_moved("across", wanted, (back, front), "to leave room for the arm at this bust"))
    return back, front


def _moved(check: str, was: tuple[float, float], now: tuple[float, float], why: str) -> Finding:
    text = (
        f"across back {2 * was[0]:.0f} to {2 * now[0]:.0f} mm, "
        f"across front {2 * was[1]:.0f} to {2 * now[1]:.0f} mm"
    )
    return Finding(check, "note", "bodice", 2 * sum(now), 2 * sum(was), f"Drafted {text}, {why}.")


def _kappa(body: Body, fullness: float, scale: float, plain: float, arm: float, findings: list[Finding]) -> float:
    """Return the bust dart's angle, degrees.

    The armhole must open by half the fullness (bust less high bust) at a tenth of the bust girth
    from the bust point (ours; 50 mm at 880 gives 16-17 degrees, charts 15-18 from memory). Where
    the front waist length is measured, what it says has equal weight: twice as much where the high
    bust is only an estimate.
    """
    radius = 0.10 * body["bust_girth"]
    angle = 2 * math.degrees(math.asin(min(0.5, fullness / 4 / radius)))
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
                f"The bust asks for a dart of {angle:.0f} degrees; {kept:.0f} are drafted and the rest "
                "stays as ease in the armhole. A second dart or a princess seam would shape it better.",
            )
        )
        angle = kept
    opening = 2 * radius * math.sin(math.radians(angle / 2))
    return angle if opening >= 3 * scale else 0.0


def _front_levels(
    body: Body,
    neck: Neckline,
    front_neck: float,
    point_x: float,
    underarm: float,
    waist: float,
    ease: TorsoEase,
    scale: float,
    findings: list[Finding],
) -> tuple[float, float]:
    """Return the y of the front side neck point and of the bust point.

    A measured front waist length is taken from the side neck point straight to the bust point and
    from there straight down; a measured bust point depth likewise. The bust line stays at least
    6 mm below the underarm and 60 mm above the waist.
    """
    run = point_x - FRONT_WIDTH * neck.width
    point_y = -bust_level(body)
    if body.measured("front_waist_length"):
        whole = body["front_waist_length"] + ease.length
        if body.measured("bust_point_depth"):
            point_y = waist + whole - body["bust_point_depth"]
        upper = max(whole - (point_y - waist), abs(run) + 1.0)
        front_neck = point_y + math.sqrt(upper**2 - run**2)
    elif body.measured("bust_point_depth"):
        depth = body["bust_point_depth"]
        point_y = front_neck - math.sqrt(max(depth**2 - run**2, (0.5 * depth) ** 2))
    kept = min(max(point_y, waist + 60 * scale), underarm - 6 * scale)
    if abs(kept - point_y) > 5 * scale and body.measured("bust_point_depth"):
        way = "lower" if kept < point_y else "higher"
        findings.append(
            Finding(
                "bust line",
                "note",
                "front",
                -kept,
                -point_y,
                f"The bust line is drafted {abs(kept - point_y):.0f} mm {way} than measured, to stay between "
                "underarm and waist.",
            )
        )
    return front_neck, kept
