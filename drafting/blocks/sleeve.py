"""One-piece set-in sleeve: its cap fits the two armhole edges it is given, half by half.

The width at the upper arm is exact; the cap height follows from it. The sleeve lies as the left one
seen from outside, its front to the left. The elbow is shaped by a dart in the back seam.

              cap_front .-'''-. cap_back
                     .-'   |   '-.
       underarm     /      |      \\     underarm
                    \\      |      /
       underarm_    |      |     /  underarm_back_upper
       front        |   ---<elbow_dart
                    |      |     \\  underarm_back_lower
                    '------'------'
                         hem
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import partial

from drafting.blocks._one_piece_sleeve import one_piece
from drafting.body import Body
from drafting.body.reduced import reduced
from drafting.draft.chain import Chain
from drafting.draft.draft import Draft, Girth
from drafting.fabric import Fabric
from drafting.ground.choices import choice
from drafting.ground.scale import body_scale
from drafting.ground.sources import AS_ASKED, BY_EYE, memory, practice
from drafting.shaping.flare.fullness import gathered
from drafting.shaping.limbs import arm_girth_at
from drafting.shaping.shared_choices import (
    ARM_EASE,
    BENT_ARM,
    SLEEVE_STYLE,
    TIER_AT,
    TIER_FULLNESS,
    cuff_depth,
    stretch_share,
)
from drafting.shaping.sleeve.below_cap import Forearm, SleeveSeams, cap_hem, sleeve_seams
from drafting.shaping.sleeve.cap import WIDEST_HEM, Cap, fit_widened
from drafting.shaping.sleeve.easing import cap_ease_in, sleeve_width_said
from drafting.shaping.sleeve.forearm import forearm_depth, forearm_room, forearm_said, hand_hem, hem_for, hem_said
from drafting.shaping.sleeve.length import LEAST_UNDERARM, fit_long_enough, lengthened_said
from drafting.shaping.sleeve.set_in import half_armholes
from drafting.shaping.sleeve.squared import cut_below_cap, refuse_styled, squared
from drafting.shaping.sleeve.tiers import Tiers, tiers_for, with_lower_tier
from drafting.shaping.stretch import settle_stretch
from drafting.shaping.torso.pieces import with_body_girths

NEEDS = ("front_armhole", "back_armhole")

SHORT_HEM = 0.92
"""Least hem of a sleeve that ends above the elbow, of its width: else its seams lean too far (ours)."""

CAP_SLEEVE = 0.19
"""A cap sleeve over the arm's length, at the crown (common practice: 10 to 12 cm from the shoulder point)."""

WAYS_OUT = "A shallower armhole or gathers in the cap"

USUAL_CAP = 0.62
"""A cap's height over the armhole's depth, where it is not known yet (ours: 0.5 to 0.7)."""

SLIT, MOST_SLIT = 90.0, 0.5
"""mm at adult scale: seam left open at the hem where the hand does not pass (ours)."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the sleeve, in mm and degrees."""

    arm_ease: float = ARM_EASE
    cap_ease: float = choice(
        25.0,
        "mm",
        "cap seam minus armhole, eased in above the notches",
        low=0,
        high=60,
        scales=True,
        source=(practice("⟨23⟩ to ⟨40⟩ in woven cloth, a knit ⟨0⟩ to ⟨10⟩"), memory("a shirt ⟨0⟩ to ⟨15⟩")),
    )
    wrist_ease: float = choice(
        60.0,
        "mm",
        "garment minus body at the wrist, or where a shorter sleeve ends",
        low=0,
        high=300,
        step=5,
        scales=True,
        source=BY_EYE,
    )
    stretch_share: float = stretch_share(0.0)
    sleeve_length: float = choice(
        0.0,
        "mm",
        "length added at the wrist",
        low=-500,
        high=200,
        step=5,
        group="length",
        begins="wrist",
        source=AS_ASKED,
    )
    sleeve_share: float = choice(
        1.0,
        "ratio",
        "sleeve over arm length on the middle line, crown to hem or cuff, before `sleeve_length` is added",
        low=0.2,
        high=1.1,
        step=0.02,
        group="length",
        source=AS_ASKED,
    )
    bent_arm: float = BENT_ARM
    cuff_depth: float = cuff_depth(0.0, 0.0)
    hem_fullness: float = choice(
        1.0,
        "ratio",
        "hem as cut over what it is gathered up to, at a cuff or an elastic",
        low=1.0,
        high=3.0,
        step=0.1,
        group="fullness",
        source=practice("1.5 light, 2 standard, 3 full"),
    )
    overhang: float = choice(
        0.0,
        "mm",
        "length added so that a gathered sleeve falls over its cuff or elastic",
        low=0,
        high=200,
        step=5,
        group="fullness",
        source=practice("⟨20⟩ to ⟨60⟩"),
    )
    elbow_bend: float = choice(
        7.0,
        "deg",
        "how far the forearm turns forward, taken in by an elbow dart",
        low=0,
        high=12,
        source=BY_EYE,
        group="style",
    )
    sleeve_style: str = SLEEVE_STYLE
    tier_at: float = TIER_AT
    tier_fullness: float = TIER_FULLNESS


def sleeve(
    body: Body, fabric: Fabric | None, choices: Choices, *, front_armhole: Chain, back_armhole: Chain
) -> Draft:
    """Return the sleeve (piece `sleeve`) that fits these two armhole edges.

    Raises `DraftError` naming the widths in reach where no cap fits.
    """
    scale = body_scale(body)
    stretch = settle_stretch(fabric, choices.stretch_share)
    share = 1 / (1 + stretch.used)
    taped, hand, body = body, hem_for(body, stretch.pull), reduced(body, share)
    opens = stretch.pull if stretch.used > 0 else 1.0
    cap_ease, cloth_said = cap_ease_in(fabric, choices.cap_ease)
    front, back = half_armholes(front_armhole, back_armhole, cap_ease, scale)
    arm = body["upper_arm_girth"]
    ease = choices.arm_ease + body.layer("upper_arm_girth")
    asked = _asked(body, choices, arm + ease, scale, USUAL_CAP * (front.depth + back.depth) / 2, (hand, share))
    wrist = asked.wrist
    cap, width, length = fit_long_enough(front, back, arm + ease, wrist, asked.length, asked.least)
    if length < body["upper_arm_length"] and wrist < SHORT_HEM * width:
        wrist = SHORT_HEM * width  # a short sleeve hangs nearly straight from a widened cap
        cap, width, length = fit_long_enough(front, back, arm + ease, wrist, asked.length, asked.least)
    wrist = min(wrist, WIDEST_HEM * width)
    hems = asked.hem[0], wrist
    below = partial(_seams_below, body, choices, hems=hems, length=length, scale=scale, hand=hand)
    refit = partial(fit_widened, front, back, wrist=wrist, arm_length=length)
    if choices.sleeve_style == "cap":
        seams, slit = cut_below_cap(below, cap, width, scale), 0.0
        seams = cap_hem(seams, cap.height - CAP_SLEEVE * body["arm_length"] - choices.sleeve_length)
    else:
        cap, width, seams, slit = squared(below, refit, cap, width)
    said = (*cloth_said, *sleeve_width_said(width, arm + ease, WAYS_OUT))
    if choices.sleeve_style != "cap":
        narrow = forearm_said(taped, width, asked.reach - choices.cuff_depth, opens)
        said = (*said, *narrow, *hem_said(asked.hem[0], asked.close), *lengthened_said(length, asked.length))
    draft = one_piece(
        (front_armhole, back_armhole),
        cap,
        seams,
        (front, back),
        slit,
        said,
        Girth("upper_arm", arm, ease, width - arm, limb=True),
    )
    draft = _hemmed(draft, fabric, choices, asked, hems[1], hand)
    refuse_styled(choices.sleeve_style, cap, seams, draft)
    if stretch.turned:
        draft = draft.with_pieces(replace(piece, grain=0.0) for piece in draft.pieces)
    return with_body_girths(draft, share)


def _hemmed(
    draft: Draft, fabric: Fabric | None, choices: Choices, asked: SleeveAsked, wrist: float, hand: float
) -> Draft:
    """Return the sleeve with its lower tier, or with its hem gathered."""
    if asked.tiers:
        needed = choices.cuff_depth > 0 or asked.hem[1] < hand
        slit = SLIT * asked.scale if needed else 0.0
        thick, gives = fabric.thickness if fabric else None, choices.stretch_share > 0
        return with_lower_tier(draft, asked.tiers, asked.hem, slit, thick, gives)
    if choices.sleeve_style == "plain" and choices.hem_fullness > 1:
        return gathered(draft, ("sleeve", "hem"), sewn=min(asked.hem[0], wrist))
    return draft


@dataclass(frozen=True)
class SleeveAsked:
    """What a sleeve has to be, mm: how far down the arm it goes, the length and the wrist of its piece below the
    cap, the `least` underarm seam, the `hem` as sewn and as drawn, how `close` it was asked for, its tiers, and
    the body's scale."""

    reach: float
    length: float
    wrist: float
    least: float
    hem: tuple[float, float]
    close: float
    tiers: Tiers | None
    scale: float


def _asked(
    body: Body, choices: Choices, width: float, scale: float, cap: float, passing: tuple[float, float]
) -> SleeveAsked:
    if choices.sleeve_style == "cap":  # cut off a plain sleeve's cap
        choices = replace(choices, sleeve_share=1.0, sleeve_length=0.0, hem_fullness=1.0, overhang=0.0)
    reach = choices.sleeve_share * body["arm_length"] + choices.sleeve_length + choices.bent_arm
    length = reach - choices.cuff_depth + choices.overhang
    close = arm_girth_at(body, reach) + body.layer("wrist_girth") + choices.wrist_ease
    plain = choices.sleeve_style != "cap" and choices.cuff_depth <= 0 and choices.hem_fullness <= 1
    finished = hand_hem(close, *passing) if plain else close
    hem, least = (finished, finished * choices.hem_fullness), LEAST_UNDERARM * scale
    tiers = tiers_for(
        body,
        choices.sleeve_style,
        length=length,
        width=width,
        cap=cap,
        at=choices.tier_at,
        full=choices.tier_fullness,
        scale=scale,
    )
    return SleeveAsked(
        reach=reach,
        length=tiers.upper if tiers else length,
        wrist=tiers.above if tiers else hem[1],
        least=least,
        hem=hem,
        close=close,
        tiers=tiers,
        scale=scale,
    )


def _seams_below(
    body: Body,
    choices: Choices,
    cap: Cap,
    width: float,
    *,
    hems: tuple[float, float],
    length: float,
    scale: float,
    hand: float,
) -> tuple[SleeveSeams, float]:
    """Return the seams and the slit; `hems` are the hem's length as sewn and as drawn."""
    if choices.sleeve_style != "plain":  # what closes and shapes the forearm is not on this piece
        choices = replace(choices, cuff_depth=0.0, elbow_bend=0.0, hem_fullness=2.0)
    top = cap.height + 0.2 * (length - cap.height)
    elbow = min(max(body["upper_arm_length"], top), 0.8 * length)
    cuffed = choices.cuff_depth > 0
    long = length > body["upper_arm_length"] + 60 * scale
    slit = 0.0
    if cuffed or (long and hems[0] < hand and choices.hem_fullness <= 1):
        slit = min(SLIT * scale, 0.4 * (length - elbow))
    below = Forearm(
        cap=cap,
        width=width,
        wrist=hems[1],
        length=length,
        elbow=elbow,
        straight_hem=cuffed,
        slit=slit,
        fullest=(forearm_depth(body), min(forearm_room(body, choices.arm_ease, scale), width)),
    )
    seams = sleeve_seams(below, choices.elbow_bend if long else 0.0, passes_elbow=long)
    return seams, min(slit, MOST_SLIT * seams.back[-1].length, MOST_SLIT * seams.front.length)
