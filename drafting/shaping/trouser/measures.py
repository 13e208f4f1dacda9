"""What a trouser is asked to measure: body and ease, or body and a share of the cloth's stretch. mm.

Woven: garment = body + layers + ease. By stretch: garment = (body + layers) / (1 + u s), the share
u of the stretch s that the maker allows to be used (exact), and lengths by half of that, as
far as the cloth stretches along at all.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from drafting.body import Body
from drafting.fabric import Fabric, cut_girth, must_reach
from drafting.ground.findings import Finding
from drafting.ground.frozen import freeze
from drafting.ground.lengths import told
from drafting.ground.remembered import remembered
from drafting.ground.scale import body_scale
from drafting.shaping.stretch import Stretch, stretch_findings
from drafting.shaping.trouser.curves import clamp

SPLIT = 1.30
"""Back over front of the crotch length where no split was measured (common practice)."""

BACK_SHARE = (0.40, 0.72)
"""Least and greatest share of the back in the crotch length (ours: beyond it a tape slipped)."""

SPLIT_BAND = (1.0, 1.7)
"""A measured split outside it is warned: 5-95 % of 3,034 people of `Source.ANSUR_II` lie inside."""

THIGH_BAND = (0.04, 0.22)
"""Ease at the thigh, as shares of it, between which a conflict may move it (ours)."""

DEPTH, DEPTH_SITTING = 0.030, 0.010
"""Crotch line below the body's, as a share of the hip: where the rise is a difference of heights,
and where it was taken sitting (ours; `Source.PLAIN_TROUSERS` takes it so)."""

SEATED_DEPTH, SEATED_THIGH = 0.010, 0.04
"""Further depth (of the hip) and thigh ease (of the thigh) of a seated wearer (ours)."""

SEATED_BACK, SEATED_FRONT = 0.06, -0.03
"""Crotch length that a seated wearer needs behind and in front, of the hip (common practice: 50-70)."""

HEEL_ROOM, CALF_ROOM = 1.04, 1.04
"""A closed hem over the heel's girth, and the leg over the calf's (ours)."""

CALF_AT_KNEE = 1.10
"""The leg at the knee over the calf's girth in woven cloth (ours)."""

HIP_IN_RISE = (0.25, 1.10)
"""Where the hip level may lie between the waist (0) and the crotch (1) (ours)."""

GIRTHS = {"waist": "waist_girth", "hip": "hip_girth", "thigh": "thigh_girth", "knee": "knee_girth"}


@dataclass(frozen=True, eq=False)
class TrouserMeasures:
    """Garment girths and lengths asked for, mm; `body` holds the girths they go round.

    It equals only itself: `trouser_measures` gives the same one again for the same wishes.

    `rise`, `to_hip`, `inside`, `shin` (knee to floor) are lengths of the garment before depth;
    `crotch_front` and `crotch_back` the two parts of the crotch seam, as the tape split it where
    `front_measured`, as the maker did where `front_chosen`. `thigh_band` holds the least and greatest
    thigh that a conflict may settle on, `heel` the least girth that passes the heel; `layered` holds
    body girths with what is worn below, `scale` that of adult constants.
    """

    body: Mapping[str, float]
    girth: Mapping[str, float]
    rise: float
    to_hip: float
    inside: float
    shin: float
    crotch_front: float
    crotch_back: float
    front_measured: bool
    front_chosen: bool
    depth: float
    thigh_band: tuple[float, float]
    calf: float
    calf_at_knee: float
    ankle: float
    heel: float
    seated: bool
    scale: float
    layered: Mapping[str, float]
    stretch: Stretch
    findings: tuple[Finding, ...]

    def __post_init__(self) -> None:
        freeze(self, "body", "girth", "layered")

    @property
    def crotch(self) -> float:
        return self.crotch_front + self.crotch_back


@remembered(8)
def trouser_measures(
    body: Body,
    fabric: Fabric | None,
    eases: tuple[tuple[str, float], ...],
    stretch: Stretch,
    crotch_front: float = 0.0,
) -> TrouserMeasures:
    """Return what is asked for; `eases` (mm) by level, `crotch` and `knee` among them.

    `crotch_front` (mm) is the front crotch seam that was chosen, 0 where the measures split it.

    Raises `DraftError` where a girth is smaller than the body and the cloth cannot reach it.
    """
    ease = dict(eases)
    findings: list[Finding] = []
    around = {level: body[name] + body.layer(name) for level, name in GIRTHS.items()}
    girth = {level: _garment(level, around, ease, stretch, fabric) for level in GIRTHS}
    hip, seated = body["hip_girth"], body.posture == "seated"
    front, back = _crotch(body, ease["crotch"], stretch, findings)
    if seated:
        girth["thigh"] += SEATED_THIGH * body["thigh_girth"]
    if crotch_front > 0:
        front, back = _split(front + back, crotch_front)
    rise = body["body_rise"] * stretch.length
    sitting = body.measured("body_rise")
    calf = body["calf_girth"] + body.layer("calf_girth")
    return TrouserMeasures(
        body={level: body[name] for level, name in GIRTHS.items()},
        girth=girth,
        rise=rise,
        to_hip=_to_hip(body, findings) * stretch.length,
        inside=body["inside_leg_length"] * stretch.length,
        shin=body["knee_height"] * stretch.length,
        crotch_front=front,
        crotch_back=back,
        front_chosen=crotch_front > 0,
        front_measured=body.measured("back_crotch_length") and body.measured("total_crotch_length"),
        depth=(DEPTH_SITTING if sitting else DEPTH) * hip + seated * SEATED_DEPTH * hip,
        thigh_band=_thigh_band(around["thigh"], girth["thigh"], stretch),
        calf=cut_girth(calf, stretch.around, stretch.share) * (1.0 if stretch.used else CALF_ROOM),
        calf_at_knee=cut_girth(calf, stretch.around, stretch.share) * (1.0 if stretch.used else CALF_AT_KNEE),
        ankle=cut_girth(body["ankle_girth"], stretch.around, stretch.share),
        heel=HEEL_ROOM * body["heel_girth"] / stretch.pull,
        seated=seated,
        scale=body_scale(body),
        layered=around,
        stretch=stretch,
        findings=(*findings, *stretch_findings(stretch, fabric, around, girth)),
    )


def _garment(
    level: str, around: Mapping[str, float], ease: Mapping[str, float], stretch: Stretch, fabric: Fabric | None
) -> float:
    if stretch.used:
        return cut_girth(around[level], stretch.around, stretch.share)
    finished = around[level] + ease[level]
    must_reach(level, around[level], finished, fabric.greatest_stretch if fabric else 0.0)
    return finished


def _thigh_band(around: float, asked: float, stretch: Stretch) -> tuple[float, float]:
    """Return the least and greatest thigh a conflict may settle on; what was asked lies inside."""
    if stretch.used:
        return 0.94 * asked, max(1.06 * asked, 1.02 * around)
    low, high = THIGH_BAND
    return min(asked, (1 + low) * around), max(asked, (1 + high) * around)


def _crotch(body: Body, ease: float, stretch: Stretch, findings: list[Finding]) -> tuple[float, float]:
    """Return the front and back part of the crotch seam: split as measured, else 1.30 to 1."""
    total = body["total_crotch_length"]
    share = SPLIT / (1 + SPLIT)
    if body.measured("back_crotch_length"):
        share = clamp(body["back_crotch_length"] / total, *BACK_SHARE)
        ratio = share / (1 - share)
        if not SPLIT_BAND[0] <= ratio <= SPLIT_BAND[1]:
            findings.append(
                Finding(
                    "crotch split",
                    "warning",
                    "crotch",
                    ratio,
                    None,
                    f"The back of the crotch length is {ratio:.2f} times the front as measured; outside "
                    f"{SPLIT_BAND[0]:.1f} to {SPLIT_BAND[1]:.1f} it is rare. Is it measured from the "
                    "inside leg point?",
                )
            )
    garment = total + body.layer("total_crotch_length")
    garment = garment * stretch.length if stretch.used else garment + ease
    front, back = (1 - share) * garment, share * garment
    if body.posture == "seated":
        front, back = front + SEATED_FRONT * body["hip_girth"], back + SEATED_BACK * body["hip_girth"]
    return front, back


def _split(whole: float, front: float) -> tuple[float, float]:
    """Return both parts of the crotch seam with the front as chosen, within what any tape finds."""
    least, most = (share * whole for share in BACK_SHARE)
    back = clamp(whole - front, least, most)
    return whole - back, back


def _to_hip(body: Body, findings: list[Finding]) -> float:
    """Return waist to hip, kept inside the rise."""
    low, high = (share * body["body_rise"] for share in HIP_IN_RISE)
    found = clamp(body["waist_to_hip"], low, high)
    if abs(found - body["waist_to_hip"]) > 1 and body.measured("waist_to_hip"):
        findings.append(
            Finding(
                "hip level",
                "warning",
                "hip",
                found,
                body["waist_to_hip"],
                f"The hip level is drafted {told(found)} below the waist instead of "
                f"{told(body['waist_to_hip'])}: with a body rise of {told(body['body_rise'])} the measured one "
                "lies outside the seat. Were both taken from the same waist?",
            )
        )
    return found
