"""Coat body: back with a centre seam, side body, and a front with lapel and cutaway waist, faced.

Fitted close over the layers worn beneath. Without tails it is a waist-length coat. The wearer's left
side, seen from outside; the lapel's tip lies beyond the centre front.

     back        side-body        front
    .-----.                      .-----.__ lapel_top
     \\    |                      |  neck gorge\\_
      )   | c    .--. armhole   (               \\ lapel
     /    | e   /    \\          |               |
    | panel n  | panel|         | panel         | edge
    |     | t  | front| panel   |              /
    '-----' r  '------' back    '----.--------'
     waist  e    waist          waist  bottom
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.draft.draft import Draft, Notion
from drafting.draft.piece import Placement
from drafting.fabric import Fabric
from drafting.ground.choices import choice
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.sources import BY_EYE, Source, cite, memory, ours, practice
from drafting.shaping.coat.body import body_draft, settle_body
from drafting.shaping.coat.button_row import (
    AS_THE_FRONT,
    ButtonPlace,
    close_said,
    count_of,
    row_on_centre,
    rows_apart_said,
    rows_beside,
)
from drafting.shaping.coat.lapel import BREAK_AT, FRONT_STYLES, NO_LAPEL, Fronts
from drafting.shaping.details.button_rows import on_both_fronts, on_the_middle
from drafting.shaping.details.button_stand import narrow_said
from drafting.shaping.details.buttons import Button, button_notion, inner_hook
from drafting.shaping.shared_choices import ARM_EASE, BUTTON_DIAMETER, BUTTON_SHAPE, BUTTON_THICKNESS, CLOSING
from drafting.shaping.torso.plan import TorsoEase
from drafting.shaping.torso.shape import TorsoKind, fit_drop

POINT_SHARE = 0.024
"""How far the front corner hangs below the waist, as a share of the chest (ours)."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the coat body. Eases are garment minus body, all round, in mm."""

    bust_ease: float = choice(
        100.0,
        "mm",
        "garment minus body at the bust, all round; what is worn beneath comes on top",
        low=0,
        high=400,
        step=5,
        scales=True,
        source=(
            memory("⟨40⟩ to ⟨100⟩, close like a waistcoat"),
            practice("a jacket ⟨80⟩ to ⟨120⟩, a coat ⟨120⟩ to ⟨200⟩"),
        ),
    )
    waist_ease: float = choice(
        60.0,
        "mm",
        "garment minus body at the waist, all round",
        low=0,
        high=500,
        step=5,
        scales=True,
        source=BY_EYE,
    )
    neck_ease: float = choice(
        20.0,
        "mm",
        "back neck and front neck curve minus neck base girth, taken as a whole neckline",
        low=-20,
        high=120,
        scales=True,
        source=ours("by eye: a shirt collar lies beneath"),
    )
    across_ease: float = choice(
        24.0,
        "mm",
        "garment minus body across the back; the front gets half of it",
        low=0,
        high=120,
        scales=True,
        source=ours("by eye, within what four recalled blocks give a bust of ⟨880⟩"),
    )
    armhole_drop: float = choice(
        45.0,
        "mm",
        "how far the underarm lies below the armpit fold",
        low=0,
        high=120,
        scales=True,
        source=ours("⟨25⟩ to ⟨65⟩ in woven cloth, by how many of the 3,034 people of ANSUR II get a sleeve"),
    )
    shoulder_ease: float = choice(
        5.0,
        "mm",
        "how much longer the back shoulder is, eased in",
        low=0,
        high=6,
        scales=True,
        source=memory("the back ⟨5⟩ longer than the front"),
    )
    arm_ease: float = ARM_EASE
    breasted: str = choice(
        "double",
        "word",
        "two rows of buttons and fronts that lap, or one row on the centre and an even stand beyond it",
        words=("double", "single"),
        group="closing",
        source=practice(),
    )
    front_overlap: float = choice(
        26.0,
        "mm",
        "how far the front edge lies beyond the centre front at the waist; a full double-breasted front ⟨60⟩ to "
        "⟨90⟩",
        low=10,
        high=120,
        scales=True,
        group="closing",
        grows=True,
        source=(practice("at least the button's diameter"), BY_EYE),
    )
    overlap_above: float = choice(
        2.0,
        "ratio",
        "double-breasted: so many times as far out lies the edge at the lapel's break, or at the neck",
        low=0.8,
        high=3.0,
        step=0.05,
        group="closing",
        source=ours("⟨52⟩ and ⟨26⟩: a dress coat's front, which is seldom closed; 1 to 1.2 where it is"),
    )
    lapel_break: float = choice(
        BREAK_AT,
        "ratio",
        "how far down from the underarm to the waist the lapel breaks",
        low=0.1,
        high=0.95,
        step=0.01,
        group="style",
        source=memory("0.62"),
    )
    lapel_width: float = choice(
        84.0,
        "mm",
        "width of the lapel, square to its roll line",
        low=30,
        high=160,
        step=2,
        scales=True,
        group="style",
        grows=True,
        source=(cite(Source.FROCK_COAT, "⟨76⟩ at the chest, double-breasted"), memory("⟨84⟩")),
    )
    lapel_style: str = choice(
        "peaked",
        "word",
        "a peak beside the collar's tip, a peak that the collar closes, a step, a shawl that runs on into the "
        "collar, or none: a front that closes to the neck, with a stand",
        words=FRONT_STYLES,
        group="style",
        source=practice(),
    )
    button_diameter: float = BUTTON_DIAMETER
    button_thickness: float = BUTTON_THICKNESS
    button_shape: str = BUTTON_SHAPE
    coat_buttons: float = choice(
        AS_THE_FRONT,
        "count",
        "buttons in a row; those at or below the lapel's break close the coat; "
        f"-1: three where they find room, or one every {told(85.0)} where it closes to the neck",
        low=-1,
        high=14,
        group="closing",
        source=practice("two rows of three where the fronts lap; what stands above the break is for show"),
    )
    closing: str = CLOSING
    cutaway: float = choice(
        0.16,
        "ratio",
        "where the tails start, from the centre front, as a share of the half waist",
        low=0.04,
        high=0.30,
        step=0.01,
        group="style",
        source=BY_EYE,
    )


def coat_body(body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the coat body: pieces `back`, `side-body`, `front`, `front-facing`.

    Raises `DraftError` where these measures leave no room for an armhole.
    """
    ease = _ease(body, choices)
    chest = body["bust_girth"] + ease.bust
    above = choices.overlap_above if choices.breasted == "double" else 1.0
    asked = Fronts(
        overlap=choices.front_overlap,
        overlap_break=above * choices.front_overlap,
        lapel=choices.lapel_width,
        point=POINT_SHARE * body["bust_girth"],
        style=choices.lapel_style,
        breaks=choices.lapel_break,
    )
    drop = fit_drop(body, ease, TorsoKind())
    drawn = settle_body(body, ease, drop, asked, choices.cutaway)
    button = Button(choices.button_diameter, choices.button_thickness, choices.button_shape)
    single = choices.breasted == "single"
    count = count_of(drawn.front, choices.coat_buttons, chest, button.diameter, single=single)
    row = (row_on_centre if single else rows_beside)(drawn.front, count, chest)
    draft = body_draft(body, ease, drawn, tuple(_marks(row, button, choices)))
    narrow = narrow_said(choices.front_overlap, button.diameter, button.diameter)
    meet = () if single else rows_apart_said(row, button.diameter, chest)
    said = (*narrow, *close_said(row, button.diameter), *meet, _closes(row, button, choices))
    return replace(draft, notions=tuple(_notions(row, button, choices)), findings=(*draft.findings, *said))


def _marks(row: tuple[ButtonPlace, ...], button: Button, choices: Choices) -> Iterator[Placement]:
    """Yield both fronts' buttons, and the holes of those that close on the front on top."""
    over, under = choices.closing.split()[0], choices.closing.split()[-1]
    if choices.breasted == "single":
        return on_the_middle((place.button for place in row), button, over, under)
    return on_both_fronts(((place.button, place.hole) for place in row), button, over)


def _holes(row: tuple[ButtonPlace, ...]) -> int:
    return sum(place.hole is not None for place in row)


def _notions(row: tuple[ButtonPlace, ...], button: Button, choices: Choices) -> Iterator[Notion]:
    over = choices.closing.split()[0]
    if row:
        held, rows = _holes(row), 1 if choices.breasted == "single" else 2
        worked = "one buttonhole" if held == 1 else f"{held} buttonholes"
        note = f"{worked} on the wearer's {over}, for {_answered(row, choices)}"
        yield button_notion("front", rows * len(row), button, note)
        if choices.breasted == "double" and choices.lapel_style == NO_LAPEL:
            yield inner_hook("front", choices.closing.split()[-1])


def _closes(row: tuple[ButtonPlace, ...], button: Button, choices: Choices) -> Finding:
    over, under = choices.closing.split()[0], choices.closing.split()[-1]
    sentence = "The coat has no buttons and is worn open."
    if not row and choices.lapel_style == NO_LAPEL:
        sentence = "The coat has no buttons: it closes at its neck alone, and the fronts hang loose below."
    if row:
        holes = "a buttonhole" if _holes(row) == 1 else "buttonholes"
        sentence = (
            f"The coat closes {choices.closing}: {holes} of {told(button.hole, 'small')} on the wearer's "
            f"{over} front for {_answered(row, choices)}"
        )
        if choices.breasted == "double" and choices.lapel_style == NO_LAPEL:
            sentence += f"; fasten the {under} front's corner inside with the hook"
        sentence += f". The fronts lie {told(2 * choices.front_overlap)} over each other at the waist."
    return Finding("closing", "note", "front", choices.closing, None, sentence)


def _answered(row: tuple[ButtonPlace, ...], choices: Choices) -> str:
    """Return which buttons the holes of the front on top are for, and which are for show."""
    over, under = choices.closing.split()[0], choices.closing.split()[-1]
    holed, count = _holes(row), len(row)
    if holed < count:
        lowest = "the lowest" if holed == 1 else f"the {holed} lowest"
        return f"{lowest} of the {count} buttons on the {under}; the others are for show"
    held = "the button" if count == 1 else f"the {count} buttons"
    shown = "" if choices.breasted == "single" else f"; {'that' if count == 1 else 'those'} on the {over}"
    shown += shown and (" is for show" if count == 1 else " are for show")
    return f"{held} on the {under}{shown}"


def _ease(body: Body, choices: Choices) -> TorsoEase:
    """Return the eases asked for, layers worn beneath included."""
    return TorsoEase(
        bust=choices.bust_ease + body.layer("bust_girth"),
        waist=choices.waist_ease + body.layer("waist_girth"),
        hip=0.0,
        neck=choices.neck_ease + body.layer("neck_base_girth"),
        across_back=choices.across_ease + body.layer("across_back_width"),
        across_front=choices.across_ease / 2 + body.layer("across_front_width"),
        arm=choices.arm_ease + body.layer("upper_arm_girth"),
        shoulder=choices.shoulder_ease,
        length=0.0,
        drop=choices.armhole_drop,
    )
