"""Close torso: drafted smaller than the body in stretch cloth, without darts.

Back and front as in the bodice, to the waist or the hip; girths and widths are reduced by the share
of the cloth's own stretch that the choice allows, lengths only where the cloth stretches along.

      back                                   front
     neck   shoulder                 shoulder      neck
       .--------.                       .--------.
     c |        )  armhole     armhole  (        | c
     e |       /                         \\       | e
     n |      |   side             side   |      | n
     t '------'                           '------' t
        waist                               waist
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.body.reduced import reduced
from drafting.draft.draft import Draft
from drafting.fabric import Fabric
from drafting.ground.choices import choice
from drafting.ground.sources import ours, practice
from drafting.shaping.shared_choices import OPENING, stretch_share, torso_length
from drafting.shaping.stretch import settle_stretch, stretch_findings
from drafting.shaping.torso.pieces import TorsoStyle, torso_draft, with_body_girths
from drafting.shaping.torso.plan import TorsoEase


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the close torso."""

    stretch_share: float = stretch_share(0.25)
    armhole_drop: float = choice(
        10.0,
        "mm",
        "how far the underarm lies below the armpit fold",
        low=0,
        high=60,
        scales=True,
        source=ours("⟨0⟩ to ⟨15⟩, by how many of the 3,541 people of ANSUR II and bdims get a sleeve"),
    )
    neck_ease: float = choice(
        0.0,
        "mm",
        "neckline minus neck base (made smaller as the body is): what a head needs where nothing opens",
        low=-20,
        high=250,
        step=5,
        scales=True,
        source=practice("a neck without a closing opens to ⟨560⟩ to ⟨600⟩"),
    )
    length: str = torso_length("hip")
    opening: str = OPENING


def close_torso(body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the close torso (pieces `back` and `front`).

    Raises `DraftError` where the cloth does not stretch, or no armhole can be drawn.
    """
    stretch = settle_stretch(fabric, choices.stretch_share)
    share = 1 / (1 + stretch.used)
    small = reduced(body, share, stretch.length)
    layers = body.layer
    ease = TorsoEase(
        bust=layers("bust_girth"),
        waist=layers("waist_girth"),
        hip=layers("hip_girth"),
        neck=choices.neck_ease,
        across_back=0.0,
        across_front=0.0,
        arm=0.0,
        shoulder=0.0,
        length=0.0,
        drop=choices.armhole_drop,
    )
    style = TorsoStyle(choices.length == "hip", False, "side", choices.opening, yokes=False)
    draft = with_body_girths(torso_draft(small, ease, style), share)
    levels = ("bust", "waist", "hip") if choices.length == "hip" else ("bust", "waist")
    around = {level: body[f"{level}_girth"] for level in levels}
    girth = {level: around[level] * share for level in levels}
    said = stretch_findings(stretch, fabric, around, girth)
    grain = 0.0 if stretch.turned else 90.0
    pieces = tuple(replace(p, grain=grain, stretch=0.0) for p in draft.pieces)
    return replace(draft, pieces=pieces, findings=(*draft.findings, *said))
