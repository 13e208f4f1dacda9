"""What every cut of a skirt starts from: half girths at waist and hip, the depth of the hip, the length. mm."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from drafting.body import Body
from drafting.draft.draft import Girth
from drafting.fabric import Fabric
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.scale import body_scale

ENDS = {"above the knee": 1.16, "knee": 1.0, "mid-calf": 0.58, "ankle": 0.17}
"""Where a skirt may end, as heights over the sole in kneecap heights (common practice: a palm above the
kneecap, on it, over the fullest of the calf's lower half, on the ankle)."""

FLOOR = 20.0
"""mm at adult scale: a skirt to the floor ends so far above it (common practice: 10 to 30)."""

BELOW_HIP = 40.0
"""mm at adult scale: a skirt ends at least so far below the hip level (ours: room for its hem)."""

WIDER_FRONT = 5.0
"""mm at adult scale: half the front is so much wider than half a half (common practice: the side seam lies
10 behind the half)."""

FRONT_OF_BELLY = 0.75
"""The front's share of what a waist larger than the hip needs (as in a torso: three quarters)."""

CLOTH_WIDTH = 1400.0
"""mm: the usable width of cloth where nobody said (common practice: 140 to 150 in suitings)."""

ZIP_LENGTH = 180.0
"""mm at adult scale: the opening of a skirt (common practice: 180 to 200)."""


@dataclass(frozen=True)
class SkirtPlan:
    """A skirt's measures, mm. `waist` and `hip` are halves as finished, `front_hip` the front's part of it.

    `rise` is how deep the hip lies, `scale` the body's, `width` what the cloth can take across. `behind` says
    that it opens at the back, `zip` how long the opening is; `hung` what the hip gained under a belly. `one_way`
    says that the cloth has one right way up.
    """

    waist: float
    hip: float
    front_hip: float
    rise: float
    length: float
    knee: float
    scale: float
    width: float
    behind: bool
    zip: float
    body_waist: float
    body_hip: float
    waist_ease: float
    hip_ease: float
    hung: float
    one_way: bool = False

    @property
    def back_hip(self) -> float:
        return self.hip - self.front_hip

    @property
    def spare(self) -> float:
        """What darts and sides take in between half the hip and half the waist."""
        return self.hip - self.waist

    def girths(self, hip: float | None = None) -> tuple[Girth, ...]:
        """Return the girths; `hip` is what a full cut has there all round, where no ease was asked for."""
        across = 2 * self.hip if hip is None else hip
        ease = across - self.body_hip
        asked = self.hip_ease if hip is None else ease
        return (
            Girth("waist", self.body_waist, self.waist_ease, self.waist_ease),
            Girth("hip", self.body_hip, asked, ease),
        )

    def said(self) -> Iterator[Finding]:
        """Yield what a belly did to the hip."""
        if self.hung > 0:
            yield Finding(
                "hip of the skirt",
                "note",
                "hip",
                2 * self.hip - self.body_hip,
                self.hip_ease,
                f"The waist is larger than the hip: the skirt hangs straight from it, and has "
                f"{told(2 * self.hung)} more at the hip than was asked for, three quarters of it in front.",
            )


def skirt_plan(
    body: Body, fabric: Fabric | None, *, eases: tuple[float, float], ends: str, length: float, opens: str
) -> SkirtPlan:
    """Return the plan; `eases` are those of waist and hip, `length` 0 leaves it to where the skirt `ends`.

    Raises `DraftError` where the skirt would end above or on the hip, or below the floor.
    """
    scale = body_scale(body)
    waist_ease, hip_ease = eases
    waist, asked = (body["waist_girth"] + waist_ease) / 2, (body["hip_girth"] + hip_ease) / 2
    hip = max(asked, waist)
    hung = hip - asked
    rise = body["waist_to_hip"]
    return SkirtPlan(
        waist=waist,
        hip=hip,
        front_hip=hip / 2 + WIDER_FRONT * scale + (FRONT_OF_BELLY - 0.5) * hung,
        rise=rise,
        length=_length(body, ends, length, rise, scale),
        knee=waist_to_floor(body) - body.heel - body["knee_height"],
        scale=scale,
        width=(fabric and fabric.laid_width) or CLOTH_WIDTH,
        behind=opens == "back",
        zip=max(ZIP_LENGTH * scale, (body["hip_girth"] - 2 * waist) / 2 + 10 * scale),
        body_waist=body["waist_girth"],
        body_hip=body["hip_girth"],
        waist_ease=waist_ease,
        hip_ease=hip_ease,
        hung=hung,
        one_way=fabric is not None and fabric.one_way,
    )


def waist_to_floor(body: Body) -> float:
    """Return how far the waist lies over the floor in the shoes of the costume, over the side of the hip."""
    if "waist_to_floor" in body.measures:
        return body["waist_to_floor"]
    return body["outside_leg_length"] + body.heel


def _length(body: Body, ends: str, asked: float, rise: float, scale: float) -> float:
    floor = waist_to_floor(body)
    over = FLOOR * scale if ends == "floor" else ENDS[ends] * body["knee_height"] + body.heel
    length, least = asked or floor - over, rise + BELOW_HIP * scale
    if not least <= length <= floor:
        raise DraftError(
            "the skirt ends above the hip" if length < least else "the skirt is longer than to the floor",
            value=told(length),
            reach=f"{told(least, 'least')} to {told(floor, 'most')}",
            turn="choose another skirt_length, or leave it at 0 and choose where the skirt ends",
        )
    return length
