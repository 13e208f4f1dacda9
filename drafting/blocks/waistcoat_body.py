"""Waistcoat body: fronts with a V neck, a pointed hem and buttons; a back with a centre seam; no sleeves.

Drawn from the same torso as bodice and shirt, its armhole cut lower and in, its hem long enough to cover the
trousers' waist when the arms rise. The wearer's left side, seen from outside.

Source: common practice; proportions ours.

      back                       front
     neck shoulder           shoulder.---.
       .---.                        /     \\ neck
     c |    \\                      /       \\
     e |     ) armhole    armhole (         \\
     n |    /                      \\         | edge, buttons
     t |   | side             side  |        |
     r |   |                        |        |
     e '---'                        '-.    _.' cut
        hem                        hem '--' bottom
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.body.sides import both_sides
from drafting.draft.draft import Draft, Girth
from drafting.draft.piece import Piece
from drafting.fabric import Fabric
from drafting.ground.choices import choice
from drafting.ground.scale import body_scale
from drafting.ground.sources import BY_EYE, Source, cite, practice
from drafting.shaping.details.buttons import Button, button_notion, inner_hook
from drafting.shaping.shared_choices import BUTTON_SHAPE, BUTTON_STAND, BUTTON_THICKNESS, CLOSING
from drafting.shaping.torso.pieces import TorsoStyle, torso_draft
from drafting.shaping.torso.plan import TorsoEase
from drafting.shaping.waistcoat.backs import centre_back_seam, neck_turned, shaped_back
from drafting.shaping.waistcoat.closing import ClosingWish, button_count, closing_said, front_wish, length_said
from drafting.shaping.waistcoat.fronts import button_marks, draws_bust, shaped_front
from drafting.shaping.waistcoat.hemline import cut_at_side
from drafting.shaping.waistcoat.inside import facing_seam, front_facing


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the waistcoat's body. Eases are garment minus body, all round, in mm."""

    breasted: str = choice(
        "single",
        "word",
        "one row of buttons on the centre, or two beside it and fronts that lap",
        words=("single", "double"),
        group="closing",
        source=practice(),
    )
    bust_ease: float = choice(
        80.0,
        "mm",
        "garment minus body at the bust, all round; a shirt lies beneath",
        low=0,
        high=400,
        step=5,
        scales=True,
        source=(cite(Source.EASE_IN_CLOTHING, "⟨38⟩ to ⟨51⟩ is the least, a shirt up to ⟨76⟩"), BY_EYE),
    )
    waist_ease: float = choice(
        60.0,
        "mm",
        "garment minus body at the waist, all round; the strap behind draws it in",
        low=0,
        high=500,
        step=5,
        scales=True,
        source=BY_EYE,
    )
    hip_ease: float = choice(
        70.0,
        "mm",
        "garment minus body at the hip, towards which the sides run",
        low=0,
        high=600,
        step=5,
        scales=True,
        source=cite(Source.EASE_IN_CLOTHING, "⟨51⟩ to ⟨70⟩"),
    )
    neck_ease: float = choice(
        16.0,
        "mm",
        "neckline minus neck base girth, before the V is cut: a shirt's collar stands inside it",
        low=-20,
        high=120,
        scales=True,
        source=BY_EYE,
    )
    armhole_drop: float = choice(
        65.0,
        "mm",
        "how far the underarm lies below the armpit fold",
        low=20,
        high=140,
        scales=True,
        source=(practice("⟨25⟩ and more below a shirt's"), BY_EYE),
    )
    armhole_in: float = choice(
        12.0,
        "mm",
        "how far the armhole is cut in at the shoulder's tip, across the back and across the front, each side",
        low=0,
        high=60,
        scales=True,
        source=(practice("⟨10⟩ to ⟨20⟩"), BY_EYE),
    )
    shoulder_ease: float = choice(
        4.0,
        "mm",
        "how much longer the back shoulder is, eased in",
        low=0,
        high=6,
        scales=True,
        source=practice("up to ⟨6⟩ is eased in"),
    )
    bust_dart: str = choice(
        "armhole",
        "word",
        "where the bust is shaped, beside the waist dart",
        words=("armhole", "side"),
        group="style",
        source=practice(),
    )
    back_shaping: str = choice(
        "by the figure",
        "word",
        "what shapes the back above the blades; by the figure: nothing, or darts where the back is rounded",
        words=("by the figure", "ease", "shoulder dart", "neck dart"),
        group="style",
        source=practice(),
    )
    v_above_bust: float = choice(
        20.0,
        "mm",
        "how far above the bust line the V ends, where fronts lap 0.6 of the lap lower; below it where negative",
        low=-90,
        high=150,
        step=5,
        scales=True,
        group="style",
        source=(practice("the first button on the chest, low enough to show the shirt"), BY_EYE),
    )
    below_waist: float = choice(
        75.0,
        "mm",
        "how far below the waist back and sides end: the trousers' waist stays covered when the arms rise",
        low=20,
        high=200,
        step=5,
        scales=True,
        group="length",
        source=practice("⟨60⟩ to ⟨80⟩; it has to cover the trousers' waist"),
    )
    point_below_waist: float = choice(
        125.0,
        "mm",
        "how far below the waist the points of the fronts hang; the back is shorter",
        low=30,
        high=260,
        step=5,
        scales=True,
        group="length",
        source=practice("⟨110⟩ to ⟨130⟩"),
    )
    lap: float = choice(
        62.0,
        "mm",
        "double-breasted: how far each front reaches over the centre at the end of the V",
        low=25,
        high=130,
        scales=True,
        group="closing",
        grows=True,
        source=(practice("⟨50⟩ to ⟨75⟩"), BY_EYE),
    )
    waistcoat_buttons: float = choice(
        0.0,
        "count",
        "buttons in a row; 0 takes five where one row closes it, and two rows of three where fronts lap",
        low=0,
        high=14,
        group="closing",
        source=practice("single-breasted five or six, double-breasted two rows of three or four"),
    )
    closing: str = CLOSING
    button_diameter: float = choice(
        15.0,
        "mm",
        "diameter of the buttons",
        low=4,
        high=60,
        scales=True,
        of_hand=True,
        source=practice("⟨14⟩ to ⟨16⟩ on waistcoats"),
        group="closing",
    )
    button_thickness: float = BUTTON_THICKNESS
    button_shape: str = BUTTON_SHAPE
    button_stand: float = BUTTON_STAND
    back_cloth: str = choice(
        "lining",
        "word",
        "what the back is cut from: the lining's cloth, or the waistcoat's own",
        words=("lining", "own"),
        group="style",
        source=practice("the back in lining, as a coat goes over it"),
    )

    @property
    def button(self) -> Button:
        return Button(self.button_diameter, self.button_thickness, self.button_shape)


def waistcoat_body(body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the waistcoat's body: pieces `front` and `back`, their seams, and the row of buttons.

    Raises `DraftError` where these measures leave no room for an armhole.
    """
    style = TorsoStyle(
        to_hip=True,
        darts=True,
        bust_dart=choices.bust_dart,
        opening="front",
        back_shaping=choices.back_shaping,
        sleeved=False,
        yokes=False,
    )
    torso, both = torso_draft(body, _ease(body, choices), style), both_sides(body)
    of_both = torso if both is body else torso_draft(both, _ease(both, choices), style)
    front, scale = torso["front"], body_scale(body)
    asked = _asked(choices, scale)
    wish = front_wish(of_both["front"], asked)
    back = neck_turned(torso["back"], front, wish.leaves)
    cut = cut_at_side(back.mirrored()["side"].path, choices.below_waist)
    count = button_count(wish, asked)
    marks = button_marks(wish, count, choices.button, *asked.hands)
    shaped = shaped_front(front, cut, wish, marks)
    behind = shaped_back(back, cut, choices.below_waist, scale, "" if choices.back_cloth == "own" else "lining")
    facing = front_facing(shaped)
    draft = torso.with_pieces((shaped, behind))
    note = f"{count} to close, {count} for show" if wish.rows == 2 else ""
    return replace(
        draft,
        pieces=(*draft.pieces, facing),
        seams=(*torso.seams, centre_back_seam(behind), facing_seam(shaped, facing)),
        girths=_girths(torso, shaped),
        findings=(*torso.findings, *closing_said(asked, wish, count), *length_said(asked)),
        facts={**torso.facts, "button_stand": wish.lap, "buttonhole": choices.button.hole},
        notions=(
            button_notion("front", count * wish.rows, choices.button, note),
            *([inner_hook("front", asked.hands[1])] if wish.rows == 2 else []),
        ),
    )


def _ease(body: Body, choices: Choices) -> TorsoEase:
    """Return the eases asked for, layers worn beneath included."""
    less = 2 * choices.armhole_in
    return TorsoEase(
        bust=choices.bust_ease + body.layer("bust_girth"),
        waist=choices.waist_ease + body.layer("waist_girth"),
        hip=choices.hip_ease + body.layer("hip_girth"),
        neck=choices.neck_ease + body.layer("neck_base_girth"),
        across_back=body.layer("across_back_width") - less,
        across_front=body.layer("across_front_width") - less,
        arm=0.0,
        shoulder=choices.shoulder_ease,
        length=0.0,
        drop=choices.armhole_drop,
        narrower=choices.armhole_in,
    )


def _girths(torso: Draft, front: Piece) -> tuple[Girth, ...]:
    """Return the girths that the waistcoat still draws: no hip, no width across where the V lies."""
    kept = {"waist", "across_back"} | ({"bust"} if draws_bust(front) else set())
    return tuple(girth for girth in torso.girths if girth.level in kept)


def _asked(choices: Choices, scale: float) -> ClosingWish:
    return ClosingWish(
        double=choices.breasted == "double",
        v_above_bust=choices.v_above_bust,
        below_waist=choices.below_waist,
        point_below=choices.point_below_waist,
        lap=choices.lap,
        stand=choices.button_stand,
        count=round(choices.waistcoat_buttons),
        button=choices.button,
        closing=choices.closing,
        scale=scale,
    )
