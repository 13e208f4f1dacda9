"""Shirt front: button stand, facing, interfacing and a row of buttons on a front that opens.

The stand lies beyond the centre front, which stays drawn; the body's girths are counted to the centre
and do not change. A cut-on facing is folded back along the front edge, a separate one sewn to it.

       facing   stand
        neck    neck  neck
       .-----.-------.---.
       |     :   |   |    '--
       | f   :fold   |o centre front, buttons and buttonholes
       | a   :   |   |
       | c   :   |   |o   bust line
       '-----'-------'---
       facing  stand   hem
        hem     hem
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.draft.by_role import edge_as, piece_as
from drafting.draft.draft import Draft, Seam
from drafting.draft.one_value import the_smaller
from drafting.draft.piece import Edge, EdgeKind, Piece, Placement
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.geometry import line
from drafting.ground.choices import choice
from drafting.ground.findings import Finding
from drafting.ground.lengths import apart_said, counted, told
from drafting.ground.scale import body_scale
from drafting.ground.sources import practice
from drafting.shaping.details.button_stand import FrontLines, front_facing_edges, narrow_said, stand_edges
from drafting.shaping.details.buttons import (
    SPACED,
    Button,
    button_mark,
    button_notion,
    counted_row,
    hole_mark,
    spaced_row,
)
from drafting.shaping.details.fastener_rows import bust_below
from drafting.shaping.details.small_pieces import interfacing, interfacing_notion
from drafting.shaping.shared_choices import (
    BUTTON_DIAMETER,
    BUTTON_LEVEL,
    BUTTON_SHAPE,
    BUTTON_STAND,
    BUTTON_THICKNESS,
    CLOSING,
)

SHARED = {"button_level": the_smaller("button_level")}
"""Buttons on one front meet holes on the other."""

BEHIND_CENTRE = 5.0
"""mm at adult scale: a facing reaches at least this far past the other front's edge (ours)."""

LAST_SHARE = 0.25
"""The lowest button stands within this share of the front's length from the hem (ours)."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the front closing, in mm."""

    closing: str = CLOSING
    button_diameter: float = BUTTON_DIAMETER
    button_thickness: float = BUTTON_THICKNESS
    button_shape: str = BUTTON_SHAPE
    button_stand: float = BUTTON_STAND
    button_level: float = BUTTON_LEVEL
    button_count: float = choice(
        0.0,
        "count",
        f"buttons down the front, one of them on the bust line; 0: as many as stand {told(SPACED[0])} to "
        f"{told(SPACED[1])} apart",
        low=0,
        high=40,
        source=practice("⟨80⟩ to ⟨100⟩ apart, on most shirts 6 or 7"),
        group="closing",
    )
    first_button: float = choice(
        50.0,
        "mm",
        "from the neck down to the first button",
        low=5,
        high=300,
        scales=True,
        source=practice("half a space where the collar has a button"),
        group="closing",
    )
    last_button: float = choice(
        90.0,
        "mm",
        "from the hem up to the last button, at most a quarter of the front",
        low=5,
        high=600,
        scales=True,
        source=practice(),
        group="closing",
    )
    buttonhole: str = choice(
        "upright",
        "word",
        "how the buttonholes lie",
        words=("upright", "level"),
        source=practice("upright on shirts, level on coats"),
        group="closing",
    )
    facing: str = choice(
        "cut on",
        "word",
        "the facing grown on and folded back, or a strip of its own",
        words=("cut on", "separate"),
        group="closing",
        source=practice(),
    )
    facing_width: float = choice(
        50.0,
        "mm",
        "from the front edge to the facing's inner edge; at least past the other edge",
        low=10,
        high=200,
        scales=True,
        source=practice("⟨40⟩ to ⟨70⟩"),
        group="closing",
    )


def shirt_front(draft: Draft, body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the draft with stand, facing and buttons on its piece `front`, which opens in front.

    A front that does not open is left as it is, with a finding.
    """
    front = piece_as(draft, PieceRole.FRONT)
    if front is None or not _opens(front):
        return replace(draft, findings=(*draft.findings, _closed()))
    button = Button(choices.button_diameter, choices.button_thickness, choices.button_shape)
    stand = choices.button_stand or button.stand
    lines = _lines(front)
    width = _facing_width(lines, stand, choices.facing_width, body_scale(body))
    level = choices.button_level or bust_below(front, lines)
    row = _row(lines, choices, level, body_scale(body))
    built = _front(front, lines, stand, width, choices, (*_marks(lines, stand, row, button, choices),))
    facing = _facing(front, lines, stand, width)
    cut_on = choices.facing == "cut on"
    bare, stiffened = (("front_edge", "facing"), front) if cut_on else (("facing",), facing)
    stiff = interfacing(facing, bare=bare, stiffens=(stiffened.name,))
    added = Draft(
        (stiff,) if cut_on else (facing, stiff),
        ()
        if cut_on
        else (
            Seam(
                "front edge",
                ((front.name, "front_edge"),),
                ((facing.name, "front_edge"),),
                start=None,
                end=None,
                kind=SeamKind.FACING,
            ),
        ),
        findings=(_said(choices, button, stand, row), *narrow_said(stand, button.diameter, button.stand)),
        facts={
            "button_stand": stand,
            "facing_width": width,
            "buttonhole": button.hole,
            "button_level": level or 0.0,
        },
        notions=(button_notion(front.name, len(row), button), interfacing_notion(stiff)),
    )
    return replace(draft.with_pieces([built]), chains=_chains(draft, front.name)) + added


def _opens(front: Piece) -> bool:
    centre = edge_as(front, EdgeRole.CENTRE)
    return centre is not None and centre.kind is EdgeKind.OPENING


def _centre(front: Piece) -> int:
    """Return the place of the centre in the front's outline."""
    return next(i for i, edge in enumerate(front.edges) if edge.role is EdgeRole.CENTRE)


def _lines(front: Piece) -> FrontLines:
    at = _centre(front)
    return FrontLines(front.edges[at - 1].path, front.edges[(at + 1) % len(front.edges)].path)


def _facing_width(lines: FrontLines, stand: float, asked: float, scale: float) -> float:
    """Return the facing's width from the front edge: past the other front, within neck and hem."""
    return min(max(asked, 2 * stand + BEHIND_CENTRE * scale), stand + lines.reach())


def _front(
    front: Piece, lines: FrontLines, stand: float, facing: float, choices: Choices, marks: tuple[Placement, ...]
) -> Piece:
    at, cut_on = _centre(front), choices.facing == "cut on"
    edges = _as_deep(front, stand_edges(lines, stand, facing if cut_on else 0.0))
    return replace(
        front, edges=(*front.edges[:at], *edges, *front.edges[at + 1 :]), placements=(*front.placements, *marks)
    )


def _as_deep(front: Piece, edges: tuple[Edge, ...]) -> tuple[Edge, ...]:
    """Return stand and facing with hems as deep as the front's own, whose line they carry on."""
    own = front.edges[(_centre(front) + 1) % len(front.edges)].allowance
    return tuple(replace(edge, allowance=own) if edge.kind is EdgeKind.HEM else edge for edge in edges)


def _facing(front: Piece, lines: FrontLines, stand: float, width: float) -> Piece:
    edges = _as_deep(front, front_facing_edges(lines, stand, width, unfolded=False))
    return Piece(
        f"{front.name}-facing",
        edges,
        grain=front.grain,
        pair=True,
        title="Front facing",
        role=PieceRole.FACING,
        lines=(front.name,),
    )


def _row(lines: FrontLines, choices: Choices, level: float | None, scale: float) -> list[float]:
    """Return how far below the neck each button stands; one of them on the `level`."""
    length = abs(lines.top - lines.low)
    last = length - min(choices.last_button, LAST_SHARE * length)
    first = min(choices.first_button, LAST_SHARE * length)
    count = round(choices.button_count)
    return counted_row(first, last, count, level, scale) if count else spaced_row(first, last, level, scale)


def _marks(
    lines: FrontLines, stand: float, row: list[float], button: Button, choices: Choices
) -> Iterator[Placement]:
    """Yield centre line and front edge, and for each button its own mark and its hole's.

    Both stand on the pair; their hands say which front of the wearer they are for.
    """
    yield Placement("centre_front", line(lines.top, lines.low), "centre")
    if choices.facing == "cut on":
        yield Placement("front_edge", line(lines.top - stand, lines.low - stand), "fold")
    over, under = choices.closing.split()[0], choices.closing.split()[-1]
    pull = -1 + 0j if choices.buttonhole == "level" else 1j
    for number, down in enumerate(row, 1):
        at = lines.top - 1j * down
        yield button_mark(f"button_{under}_{number}", at, button.diameter, under)
        yield hole_mark(f"buttonhole_{over}_{number}", at, pull, button.hole, over)


def _chains(draft: Draft, front: str) -> dict[str, tuple[tuple[str, str], ...]]:
    """The neckline runs on over the stand, and so does a waist that a band is sewn to."""
    chains = {**draft.chains, "front_neck": (*draft.chains["front_neck"], (front, "stand_neck"))}
    if "waist" in chains:
        chains["waist"] = ((front, "stand_hem"), *chains["waist"])
    return chains


# -------------------------------------------------------------------------------------- what is said


def _said(choices: Choices, button: Button, stand: float, row: list[float]) -> Finding:
    over, under = choices.closing.split()[0], choices.closing.split()[-1]
    step = row[1] - row[0] if len(row) > 1 else 0.0
    many = len(row) > 1
    buttons = "the buttons" if many else "the button"
    down = f"{told(choices.button_level)} below the neck" if choices.button_level else "on the bust line"
    on_bust = f"one of them {down}" if many else down
    return Finding(
        "closing",
        "note",
        "front",
        choices.closing,
        None,
        f"The front closes {choices.closing}: {counted(len(row), 'buttonhole', 'buttonholes')} of "
        f"{told(button.hole, 'small')} on the wearer's {over} front, {buttons} on the {under}"
        f"{apart_said(len(row), step)}, {on_bust}. The fronts lie {told(2 * stand)} over each other.",
    )


def _closed() -> Finding:
    return Finding(
        "closing",
        "warning",
        "front",
        None,
        None,
        "The front does not open, so it gets no button stand and no buttons: choose opening = front, or see "
        "that the neckline passes the head.",
    )
