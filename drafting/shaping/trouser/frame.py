"""Levels and widths of one leg, settled before the width of the fork is known. mm.

Shares of the hip, thigh and leg without a source beside them are ours, by eye and by how many
people of `Source.ANSUR_II` they fit.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.geometry import unit
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.shaping.trouser.curves import clamp
from drafting.shaping.trouser.measures import TrouserMeasures

HIP_SHIFT = 0.010
"""The back hip wider and the front narrower than a quarter, of the hip girth (ours; `Source.ALDRICH`)."""

SEATED_SHIFT = 0.015
"""The same for a seated wearer, whose centre back leans in far (ours)."""

BACK_WIDER = 0.018
"""The back leg wider at each of its edges, of the hip girth (`Source.PLAIN_TROUSERS`: 20 mm at 1,000)."""

THIGH_BELOW = 0.035
"""Thigh level below the crotch line, of the inside leg (ours)."""

KNEE = (0.30, 0.60)
"""Knee level below the crotch, of the inside leg (`Source.PLAIN_TROUSERS`: half of it less 50)."""

FLOOR_GAP = 0.025
"""Hem above the floor, of the inside leg (ours: trousers that just touch a shoe)."""

STRAIGHT_HEM = 0.93
"""A straight leg's hem over its knee (`Source.PLAIN_TROUSERS`: 440 and 520 give 0.85; ours)."""

TAPERED_ANKLE = 1.15
"""A tapered hem over the ankle in woven cloth (ours)."""

FLARED_HEM = 1.5
"""A flared leg's hem over its knee where no width is given (ours)."""

CASING_WAIST, CASING_HIP = 0.87, 1.03
"""Waist cloth of a casing: least share of the finished hip, and what passes over the hip (ours)."""

MOST_NARROWER, FRONT_NARROWER = 0.06, 0.40
"""The hip between the centre lines is at most so much less than asked for, of the girth (ours: about
the least of a woven trouser's ease, `Source.EASE_IN_CLOTHING`), and the front's share of that."""

LEAST_SHIN = 0.12
"""Hem below the knee at least, of the inside leg (ours)."""

LEAST_HALF = 0.25
"""Narrowest half leg at knee or hem, as a share of the back's widening (ours)."""


@dataclass(frozen=True)
class LegStyle:
    """Choices of shape: `leg` straight, tapered or flared; `hem` mm (0: by the leg); `casing`."""

    leg: str = "straight"
    hem: float = 0.0
    longer: float = 0.0
    casing: bool = False
    inseam_short: float = 0.0


@dataclass(frozen=True)
class LegFrame:
    """One leg's levels (y) and widths, mm. Waist, hip, thigh, knee, hem run down from positive y.

    `front_hip`, `back_hip` are widths at the hip, side to centre line (a quarter, less what a crotch
    curve begun above the hip adds to the outline there); `wider` what the back leg has more at each
    edge; `knee_half`, `hem_half` the front's half widths; `shin` the direction of the lower leg's
    inside edge, going up; `centre_lean` (tangent) how far the centre front leans in, `side_lean` how
    far the side leans out at the hip; `closer` (0..1) how far the seat is drawn in for its curves.
    """

    asked: TrouserMeasures
    style: LegStyle
    waist: float
    hip: float
    thigh: float
    knee: float
    hem: float
    waist_girth: float
    knee_girth: float
    hem_girth: float
    front_hip: float
    back_hip: float
    wider: float
    knee_half: float
    hem_half: float
    flared: bool
    shin: complex
    centre_lean: float
    side_lean: float
    closer: float = 0.0

    @property
    def rise(self) -> float:
        """Hip level to waist level, mm."""
        return self.waist - self.hip

    @property
    def without_hem(self) -> LegFrame:
        """What rise and waist are settled from: no level, width or style of the hem."""
        style = replace(self.style, leg="", hem=0.0, longer=0.0)
        return replace(self, style=style, hem=0.0, hem_girth=0.0, hem_half=0.0)

    def drawn_in(self, share: float) -> LegFrame:
        """Return the frame with its seat drawn in by this share of what it may be.

        Its crotch curves get hollower, and its centre lines come nearer to the sides.
        """
        half = share * MOST_NARROWER * self.asked.girth["hip"] / 2
        front = self.front_hip - FRONT_NARROWER * half
        back = self.back_hip - (1 - FRONT_NARROWER) * half
        return replace(self, front_hip=front, back_hip=back, closer=share)

    @property
    def unit(self) -> float:
        """Scale of small lengths: 1 at a hip of 1,000 mm."""
        return self.asked.body["hip"] / 1000


def frame_leg(asked: TrouserMeasures, style: LegStyle, knee_more: float, side_lean: float) -> LegFrame:
    """Return the frame with the knee `knee_more` wider than asked, the side leaning `side_lean`.

    Raises `DraftError` where the leg would end above the knee or a hem be too narrow.
    """
    hip = asked.girth["hip"]
    waist = waist_girth(asked, style)
    knee_girth = max(asked.girth["knee"], asked.calf_at_knee) + knee_more
    hem = hem_girth(asked, style, knee_girth)
    wider = BACK_WIDER * asked.body["hip"]
    shift = hip * (SEATED_SHIFT if asked.seated else HIP_SHIFT)
    _wide_enough(hem, knee_girth, wider)
    flared = hem > knee_girth
    knee_half = knee_girth / 4 - wider / 2
    hem_half = knee_half if flared else hem / 4 - wider / 2
    waist_y, hip_y, knee_y, hem_y = _levels(asked, style)
    centre = _centre_lean(asked, (hip - waist) / 2, waist_y - hip_y)
    return LegFrame(
        asked=asked,
        style=style,
        waist=waist_y,
        hip=hip_y,
        thigh=-THIGH_BELOW * asked.inside,
        knee=knee_y,
        hem=hem_y,
        waist_girth=waist,
        knee_girth=knee_girth,
        hem_girth=hem,
        front_hip=hip / 4 - shift,
        back_hip=hip / 4 + shift,
        wider=wider,
        knee_half=knee_half,
        hem_half=hem_half,
        flared=flared,
        shin=1j if flared else unit(complex(knee_half - hem_half, knee_y - hem_y)),
        centre_lean=centre,
        side_lean=side_lean,
    )


def waist_girth(asked: TrouserMeasures, style: LegStyle) -> float:
    """Return the waist's cloth: as asked, or with a casing what passes over the hip."""
    if not style.casing:
        return asked.girth["waist"]
    passes = CASING_HIP * asked.body["hip"] / asked.stretch.pull
    return max(CASING_WAIST * asked.girth["hip"], passes, asked.girth["waist"])


def hem_girth(asked: TrouserMeasures, style: LegStyle, knee_girth: float) -> float:
    """Return the hem's girth: as chosen, else by the leg's style and passing the heel."""
    if style.hem > 0:
        return style.hem
    if style.leg == "tapered":
        return max(asked.heel, asked.ankle * (1.0 if asked.stretch.used else TAPERED_ANKLE))
    straight = max(STRAIGHT_HEM * knee_girth, asked.heel)
    return max(FLARED_HEM * knee_girth, asked.heel) if style.leg == "flared" else straight


def _wide_enough(hem: float, knee: float, wider: float) -> None:
    least = 2 * wider + 4 * LEAST_HALF * wider
    for name, girth in (("hem", hem), ("knee", knee)):
        if girth < least:
            raise DraftError(
                f"the leg is too narrow at the {name} to be drafted from this hip",
                value=f"{told(girth)} round",
                reach=f"{told(least, 'least')} or more",
                turn=f"give the {name} more width, or measure {name} and hip again",
            )


def _levels(asked: TrouserMeasures, style: LegStyle) -> tuple[float, float, float, float]:
    """Return the y of waist, hip, knee and hem."""
    inside, length = asked.inside, asked.stretch.length
    waist = asked.rise + asked.depth
    hip = asked.rise - asked.to_hip + asked.depth
    knee = asked.depth - clamp(inside - asked.shin, KNEE[0] * inside, KNEE[1] * inside)
    hem = asked.depth - inside * (1 - FLOOR_GAP) - style.longer * length
    if hem > knee - LEAST_SHIN * inside:
        longest = inside * (1 - FLOOR_GAP) + (knee - LEAST_SHIN * inside - asked.depth)
        raise DraftError(
            "the leg would end above the knee",
            value=f"a leg length of {told(style.longer)}",
            reach=f"{told(-longest, 'least')} or more",
            turn="draft it longer, and cut the finished block off for shorts",
        )
    return waist, hip, knee, hem


def _centre_lean(asked: TrouserMeasures, spare: float, rise: float) -> float:
    """Return how far the centre front leans in (tangent); out for a belly or a seated wearer."""
    hip = asked.body["hip"]
    if asked.stretch.used:
        inset = 0.0
    else:
        inset = clamp(0.08 * spare if spare > 0 else 0.35 * spare, -0.030 * hip, 0.010 * hip)
    if asked.seated:
        inset -= 0.012 * hip
    return inset / rise
