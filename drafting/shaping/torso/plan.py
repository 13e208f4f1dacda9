"""Settle a torso's numbers before anything is drawn: levels, widths, slopes, dart amounts.

Half frame: nape at 0, centre on x = 0, side on +x, y up, mm and degrees. Constants marked *ours*
were chosen by eye and by how many people of `Source.ANSUR_II` they fit; the other sources are named.
Conflicts between measures are settled here by named rules, each of which leaves a finding.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from drafting.body import Body, shorter_back, usual_axilla
from drafting.body.heights import chest_forward, front_answer
from drafting.body.sides import both_sides
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.scale import ADULT_BUST, SMALL_BUST
from drafting.shaping.torso.bust import (
    BustLevels,
    Run,
    back_excess,
    bust_angle,
    bust_guessed,
    bust_run,
    front_levels,
    front_said,
)
from drafting.shaping.torso.neckline import BACK_RISE, Neckline, neckline, sided_neckline

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


OWN_WAIST, BACK_OF_GROWTH = 0.80, 0.25
"""The waist that is the trunk's own, as a share of the bust, and the back's part of what it gains over
that (the survey's waist breadths and depths on its hundred largest bellies)."""

UNUSUAL_SCYE = 12.0
"""mm at adult scale: a taped scye depth so far from the expected one is told (ours; its spread is 10.6)."""


@dataclass(frozen=True)
class TorsoEase:
    """What the maker asks for over the body, mm (layers worn beneath included).

    `drop` is the underarm's depth below the axilla, `arm` the upper-arm ease of the sleeve that the
    armhole is fitted to, `narrower` what a sleeveless shoulder is cut in from its tip.
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
    narrower: float = 0.0


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
    far its tip ends from `bust_point`; `front_neck` the y of the front side neck point; `growth` what the
    half waist has gained over the trunk's own line (a belly); `excess` what the back is longer than its
    front (a rounded back), which the levels leave out: it stands above the blades; `forward` how much farther
    forward than usual the chest is carried.
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
    growth: float
    excess: float
    forward: float
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
    shoulder = _shoulder(body, ease.narrower)
    both, neck = _necks(body, (body["neck_base_girth"] + ease.neck) / 2, shoulder)
    half = (body["bust_girth"] + ease.bust) / 2
    findings = list(bust_guessed(body, scale) if darts else ())
    across = _across(body, ease, half, darts, findings)
    fullness = max(0.0, body["bust_girth"] - body["high_bust_girth"]) if darts else 0.0
    back = half_back(half, across, fullness)
    run = _run(both_sides(body), ease, darts)
    plain = BACK_RISE * both.width - BALANCE * scale
    excess = back_excess(body, plain, run.arm)
    if excess > 0:
        body = shorter_back(body, excess, SCYE_BELOW_AXILLA * scale)
    findings += (*_taped_scye(body, scale), *(front_said(body, scale) if darts else ()))
    waist = -(body["back_waist_length"] + ease.length)
    levels = BustLevels(_underarm(body, drop, waist, scale), waist, ease.length)
    kappa = bust_angle(body, scale, plain - waist, run.arm, findings) if darts else 0.0
    raised = plain + math.sin(math.radians(kappa)) * run.arm + (front_answer(body) if darts else 0.0)
    front_neck, point_y = front_levels(body, both.width, raised, run.point, levels, scale, findings)
    return TorsoPlan(
        scale=scale,
        neck=neck,
        shoulder=shoulder,
        underarm=levels.underarm,
        bust_line=point_y,
        waist=waist,
        back=back,
        front=half - back,
        waist_half=(body["waist_girth"] + ease.waist) / 2,
        hip=waist - body["waist_to_hip"],
        hip_half=(body["hip_girth"] + ease.hip) / 2,
        across_back=across[0],
        across_front=across[1],
        kappa=kappa,
        bust_point=complex(run.point, point_y),
        dart_short=(22 + 10 * min(1.0, fullness / 120)) * scale,
        front_neck=front_neck,
        fullness=fullness,
        growth=belly(body),
        excess=excess,
        forward=chest_forward(body),
        darts=darts,
        findings=tuple(findings),
    )


def belly(body: Body) -> float:
    """Return what the half waist has over the trunk's own line, mm: 0.80 of the bust (survey).

    The rule is for adults: it comes in between a bust of 600 and one of 700 mm, as a child's waist is
    nearly its bust.
    """
    bust = body["bust_girth"]
    adult = min(1.0, max(0.0, (bust - SMALL_BUST) / (ADULT_BUST - SMALL_BUST)))
    return adult * max(0.0, body["waist_girth"] - OWN_WAIST * bust) / 2


def _run(body: Body, ease: TorsoEase, darts: bool) -> Run:
    """Return where the bust lies, by the mean of both hands: both sides meet in one centre front."""
    half = (body["bust_girth"] + ease.bust) / 2
    across = _across(body, ease, half, darts, [])
    fullness = max(0.0, body["bust_girth"] - body["high_bust_girth"]) if darts else 0.0
    return bust_run(body, half - half_back(half, across, fullness), across[1])


def half_back(half: float, across: tuple[float, float], fullness: float) -> float:
    """Return how much of the `half` bust the back has: across back, and its share of the arm's width."""
    arm = half - sum(across)
    return across[0] + max((arm - fullness / 2) / 2, 0.3 * arm)


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


def _shoulder(body: Body, narrower: float) -> Shoulder:
    """Slope from drop over length; the front seam steeper by 2 degrees, the back flatter (ours)."""
    length = body["shoulder_length"]
    slope = _slope(body["shoulder_drop"], length)
    return Shoulder(slope - 2, slope + 2, length - narrower)


def _taped_scye(body: Body, scale: float) -> tuple[Finding, ...]:
    """Return what a taped scye depth costs, where it lies far from what the shoulder leads one to expect."""
    if not body.measured("scye_depth"):
        return ()
    usual = usual_axilla(body)
    deeper = body["scye_depth"] - SCYE_BELOW_AXILLA * scale - usual
    if abs(deeper) <= UNUSUAL_SCYE * scale:
        return ()
    way, armhole, side = ("deeper", "longer", "shorter") if deeper > 0 else ("higher", "shorter", "longer")
    return (
        Finding(
            "scye depth",
            "note",
            "bodice",
            body["scye_depth"],
            usual + SCYE_BELOW_AXILLA * scale,
            f"The scye depth as taped puts the underarm {told(abs(deeper))} {way} than this shoulder, back and "
            f"arm lead one to expect. It is kept, and costs this: the armhole is some {told(abs(deeper))} "
            f"{armhole} front and back, the sleeve cap goes with it, and the side seam is {side}. If the "
            "shoulder slopes more or less than when it was taped, tape it again or leave it out.",
        ),
    )


def _underarm(body: Body, drop: float, waist: float, scale: float) -> float:
    measured = body.measured("scye_depth")
    depth = body["scye_depth"] - SCYE_BELOW_AXILLA * scale if measured else body["axilla_depth"]
    level, lowest = -(depth + drop), waist + 70 * scale
    if level < lowest:
        raise DraftError(
            "the armhole reaches too near the waist",
            value=f"underarm {told(-level)} below the nape, waist {told(-waist)}",
            reach=f"underarm up to {told(-lowest, 'most')} below the nape",
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
        f"across back {told(2 * was[0])} to {told(2 * now[0])}, "
        f"across front {told(2 * was[1])} to {told(2 * now[1])}"
    )
    return Finding(check, "note", "bodice", 2 * sum(now), 2 * sum(was), f"Drafted {text}, {why}.")
