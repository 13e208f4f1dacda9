"""Woven bodice: a fitted torso to the waist with a bust dart and waist darts.

Drafted from direct measures; each is used as measured, and estimated ones are named in the report.
The construction is ours. Half frame with the nape at 0; front and back of the wearer's left side,
seen from outside. A dart may stand on the back's shoulder or neck, or a yoke (`back-yoke`) lie above it.

      back                                   front
     neck   shoulder                 shoulder      neck
       .--------.                       .--------.
     c |         \\                     /         | c
     e |          ) armhole   armhole  (          | e
     n |         /                      \\         | n
     t |        |  side      side_upper  |        | t
     r |        |        bust_dart  ----<  * bust | r
     e |        |             side_lower |   point| e
       '--. .---'                        '---. .--'
        waist_dart                        waist_dart
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.body import Body
from drafting.draft.draft import Draft
from drafting.draft.one_value import the_smaller, where_either_has
from drafting.draft.roles import EdgeRole
from drafting.fabric import Fabric
from drafting.ground.choices import choice
from drafting.ground.sources import AS_ASKED, BY_EYE, Source, cite, ours, practice
from drafting.shaping.shared_choices import ARM_EASE, OPENING, torso_length
from drafting.shaping.torso.bust_dart import PLACES
from drafting.shaping.torso.pieces import TorsoStyle, torso_draft
from drafting.shaping.torso.plan import TorsoEase
from drafting.shaping.torso.princess import PLACES as PRINCESS
from drafting.shaping.torso.round_back import WAYS

SHARED = {"back_shaping": where_either_has(EdgeRole.YOKE, "yoke"), "yoke_depth": the_smaller("yoke_depth")}
"""A back is yoked on both hands or on neither, and one seam runs level over both."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the bodice. Eases are garment minus body, all round, in mm."""

    bust_ease: float = choice(
        80.0,
        "mm",
        "garment minus body at the bust, all round",
        low=0,
        high=400,
        step=5,
        scales=True,
        source=(cite(Source.EASE_IN_CLOTHING, "⟨38⟩ to ⟨51⟩ is the least, a shirt up to ⟨76⟩"), BY_EYE),
    )
    waist_ease: float = choice(
        60.0,
        "mm",
        "garment minus body at the waist, all round",
        low=0,
        high=500,
        step=5,
        scales=True,
        source=(cite(Source.EASE_IN_CLOTHING, "⟨19⟩ to ⟨25⟩ is the least in a woven dress"), BY_EYE),
    )
    hip_ease: float = choice(
        60.0,
        "mm",
        "garment minus body at the hip, all round (hip length)",
        low=0,
        high=600,
        step=5,
        scales=True,
        source=cite(Source.EASE_IN_CLOTHING, "⟨51⟩ to ⟨70⟩"),
    )
    neck_ease: float = choice(
        10.0, "mm", "neckline minus neck base girth", low=-20, high=120, scales=True, source=BY_EYE
    )
    across_ease: float = choice(
        16.0,
        "mm",
        "garment minus body across the back; the front gets half of it",
        low=0,
        high=120,
        scales=True,
        source=ours("by eye, within what four recalled blocks give a bust of ⟨880⟩"),
    )
    armhole_drop: float = choice(
        40.0,
        "mm",
        "how far the underarm lies below the armpit fold",
        low=0,
        high=120,
        scales=True,
        source=ours("⟨25⟩ to ⟨65⟩ in woven cloth, by how many of the 3,034 people of ANSUR II get a sleeve"),
    )
    shoulder_ease: float = choice(
        4.0,
        "mm",
        "how much longer the back shoulder is, eased in",
        low=0,
        high=6,
        scales=True,
        source=(practice("up to ⟨6⟩ is eased in"), BY_EYE),
    )
    length_ease: float = choice(
        0.0,
        "mm",
        "length added between underarm and waist",
        low=-40,
        high=120,
        step=5,
        group="length",
        source=AS_ASKED,
    )
    arm_ease: float = ARM_EASE
    armhole_for: str = choice(
        "a sleeve",
        "word",
        "what the armhole is for: a sleeve, which moves the underarm until it fits this arm, or a bare arm",
        words=("a sleeve", "a bare arm"),
        source=practice("a bare armhole lies ⟨10⟩ to ⟨25⟩ below the armpit, higher than a sleeve's"),
    )
    length: str = torso_length("waist")
    bust_dart: str = choice(
        "side",
        "word",
        "where the bust is shaped; a princess is a panel seam through the bust",
        words=PLACES + PRINCESS,
        group="style",
        source=practice(),
    )
    back_shaping: str = choice(
        "by the figure",
        "word",
        "what shapes the back above the blades; by the figure: nothing, or darts where the back is rounded",
        words=WAYS,
        group="style",
        source=(practice(), ours("which and how wide: by eye, on backs up to ⟨60⟩ longer than their fronts")),
    )
    yoke_depth: float = choice(
        0.0,
        "mm",
        "how far below the nape a yoke is cut off, no deeper than where the armhole turns; 0 cuts it there",
        low=0,
        high=250,
        step=5,
        group="style",
        scales=True,
        source=AS_ASKED,
    )
    opening: str = OPENING


def bodice(body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the bodice (`back`, `front`, with a panel seam `front-side`, with a yoke `back-yoke`) for `body`.

    Raises `DraftError` where these measures leave no room for an armhole.
    """
    ease = TorsoEase(
        bust=choices.bust_ease + body.layer("bust_girth"),
        waist=choices.waist_ease + body.layer("waist_girth"),
        hip=choices.hip_ease + body.layer("hip_girth"),
        neck=choices.neck_ease + body.layer("neck_base_girth"),
        across_back=choices.across_ease + body.layer("across_back_width"),
        across_front=choices.across_ease / 2 + body.layer("across_front_width"),
        arm=choices.arm_ease + body.layer("upper_arm_girth"),
        shoulder=choices.shoulder_ease,
        length=choices.length_ease,
        drop=choices.armhole_drop,
    )
    style = TorsoStyle(
        to_hip=choices.length == "hip",
        darts=True,
        bust_dart=choices.bust_dart,
        opening=choices.opening,
        back_shaping=choices.back_shaping,
        yoke_depth=choices.yoke_depth,
        sleeved=choices.armhole_for == "a sleeve",
    )
    return torso_draft(body, ease, style)
