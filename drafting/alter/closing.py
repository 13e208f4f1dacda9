"""Closing: a zip, buttons, hooks or a lacing at the centre that opens, at the front or the back.

A zip lies in the centre seam and leaves the girths alone; below it the seam is sewn. Buttons and hooks
lie on edges that reach over each other beyond the centre, with their facing folded back; a lacing
draws two faced edges together on the centre line.

        zip                buttons, hooks              lacing
      neck                 neck  stand facing          neck  facing
     ---.                 ---.-----.-----.            ---.------.
        | opening            |o    :     |             o |      |
        |                    |     : fold              o :fold  |
        + stop               |o    :     |             o |      |
        | centre seam        |     :     |               |      |
     ---'                 ---'-----'-----'            ---'------'
      hem                  hem
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.draft.by_role import pieces_as
from drafting.draft.draft import Draft
from drafting.draft.one_value import the_smaller
from drafting.draft.piece import Edge, EdgeKind, Piece, Placement
from drafting.draft.roles import FACINGS, EdgeRole, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.geometry import line
from drafting.ground.choices import choice
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.scale import body_scale
from drafting.ground.sources import ours, practice
from drafting.shaping.details.button_stand import FrontLines, narrow_said
from drafting.shaping.details.buttons import Button
from drafting.shaping.details.closings import closing_strip, folded_back, front_lines
from drafting.shaping.details.fastener_rows import Fasteners, buttoned, hooks, laced, row_said
from drafting.shaping.details.small_pieces import interfacing, interfacing_notion
from drafting.shaping.details.zips import Zip, foot_of, lap, lap_above, parted, zip_notions, zip_said
from drafting.shaping.shared_choices import (
    BUTTON_DIAMETER,
    BUTTON_LEVEL,
    BUTTON_SHAPE,
    BUTTON_STAND,
    BUTTON_THICKNESS,
    CLOSING,
)

BEHIND = 5.0
"""mm at adult scale: a facing reaches at least this far past the other edge (ours)."""

SHARED = {"button_level": the_smaller("button_level")}
"""Buttons on one hand meet holes on the other."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the closing, in mm."""

    fastening: str = choice(
        "zip",
        "word",
        "what closes the centre that opens",
        words=("zip", "buttons", "hooks", "laced"),
        group="closing",
        source=practice(),
    )
    zip_kind: str = choice(
        "invisible",
        "word",
        "hidden in the seam, or covered by a lap that shows one line of stitching",
        words=("invisible", "lapped"),
        group="closing",
        source=practice(),
    )
    zip_allowance: float = choice(
        20.0,
        "mm",
        "seam allowance along the zip and the seam below it",
        low=12,
        high=40,
        of_hand=True,
        source=practice("⟨20⟩ to ⟨25⟩"),
        group="closing",
    )
    zip_above_hem: float = choice(
        60.0,
        "mm",
        "how far above the hem the zip ends; a garment that ends at the waist opens all the way",
        low=20,
        high=500,
        step=5,
        scales=True,
        source=ours("by eye; the hem is then turned up in one round"),
        group="closing",
    )
    fastening_space: float = choice(
        0.0,
        "mm",
        "greatest space between two fasteners, which never touch; 0 takes what is usual for them",
        low=0,
        high=200,
        source=practice("buttons ⟨60⟩ to ⟨90⟩, hooks ⟨20⟩ to ⟨30⟩, eyelets ⟨20⟩ to ⟨30⟩"),
        group="closing",
    )
    facing_width: float = choice(
        50.0,
        "mm",
        "of the facing that is folded back, from its fold",
        low=10,
        high=200,
        scales=True,
        source=practice("⟨40⟩ to ⟨70⟩"),
        group="closing",
    )
    closing: str = CLOSING
    button_diameter: float = BUTTON_DIAMETER
    button_thickness: float = BUTTON_THICKNESS
    button_shape: str = BUTTON_SHAPE
    button_stand: float = BUTTON_STAND
    button_level: float = BUTTON_LEVEL

    @property
    def hands(self) -> tuple[str, str]:
        """The hand on top, and the one beneath."""
        return self.closing.split()[0], self.closing.split()[-1]

    @property
    def button(self) -> Button:
        return Button(self.button_diameter, self.button_thickness, self.button_shape)

    def fasteners(self, scale: float) -> Fasteners:
        """Return what is asked of a row of fasteners."""
        stand, level = self.button_stand, self.button_level
        return Fasteners(self.fastening_space, self.hands, self.button, stand, level, scale)


def closing(draft: Draft, body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the draft with its open centre made to be closed.

    A draft whose centre does not open is left as it is, with a finding.
    """
    opened = next((p for p in pieces_as(draft, PieceRole.FRONT, PieceRole.BACK) if _opens(p) is not None), None)
    if opened is None:
        pulled = fabric is not None and fabric.greatest_stretch >= PULLED_ON
        return draft if pulled else replace(draft, findings=(*draft.findings, _closed()))
    if choices.fastening == "zip":
        return _zipped(draft, opened, choices, body_scale(body))
    if _yokes(draft, opened):
        raise DraftError(
            f"a {_side(opened)} with a yoke is closed by a zip through both",
            value=choices.fastening,
            turn="choose fastening = zip, another opening, or back_shaping = shoulder dart, which has no yoke",
        )
    return _overlapped(draft, opened, choices, body_scale(body))


PULLED_ON = 0.10
"""Stretch from which a cloth is pulled on without a closing (ours)."""


def _yokes(draft: Draft, piece: Piece) -> list[Piece]:
    """Return the pieces that lie above one whose centre opens, joined by a yoke's seam, and open with it."""
    joined = (s for s in draft.seams if s.kind is SeamKind.YOKE and piece.name in {n for n, _ in (*s.a, *s.b)})
    names = dict.fromkeys(name for seam in joined for name, _ in (*seam.a, *seam.b) if name != piece.name)
    return [draft[name] for name in names if _opens(draft[name]) is not None]


def _as_wide(draft: Draft, zipped: Zip, done: str) -> Iterator[Piece]:
    """Yield every other piece whose centre opens in line with the zip, with as much allowance as its edge."""
    yokes = {piece.name for piece in _yokes(draft, draft[done])}
    for piece in draft.pieces:
        at = _opens(piece)
        if at is None or piece.material or piece.role in FACINGS or piece.name == done:
            continue
        edge = replace(piece.edges[at], allowance=zipped.allowance)
        marks = piece.placements
        if piece.name in yokes and zipped.kind == "lapped":
            turned = piece.mirrored()  # only a back has a yoke
            lapped = replace(turned, placements=(lap_above(turned.edges[_opens(turned) or 0].path, zipped),))
            marks = (*marks, *lapped.mirrored().placements)
        yield replace(piece, edges=(*piece.edges[:at], edge, *piece.edges[at + 1 :]), placements=marks)


def _opens(piece: Piece) -> int | None:
    """Return the place of the centre that opens in a piece's ring, or None."""
    found = (i for i, e in enumerate(piece.edges) if e.role is EdgeRole.CENTRE and e.kind is EdgeKind.OPENING)
    return next(found, None)


def _turned(piece: Piece) -> Piece:
    """Return the piece as a front's left hand lies, or such a one back again."""
    return piece if piece.role is PieceRole.FRONT else piece.mirrored()


def _side(piece: Piece) -> str:
    return "front" if piece.role is PieceRole.FRONT else "back"


def _zipped(draft: Draft, piece: Piece, choices: Choices, scale: float) -> Draft:
    front, side = _turned(piece), _side(piece)
    at = _opens(front) or 0
    lines, centre = front_lines(front, at), front.edges[at]
    below = front.edges[(at + 1) % len(front.edges)]
    right_through = below.role is EdgeRole.WAIST
    length = centre.length - (0.0 if right_through else min(choices.zip_above_hem, centre.length / 2))
    zipped = Zip(
        side=side,
        kind=choices.zip_kind,
        length=length,
        allowance=choices.zip_allowance,
        over=choices.hands[0],
        through=right_through,
        foot=foot_of(draft, (piece.name, below.name)),
        scale=scale,
        above=math.fsum(yoke.edges[_opens(yoke) or 0].length for yoke in _yokes(draft, piece)),
    )
    edges, seams = parted(centre, piece.name, zipped)
    marks = lap(lines, zipped) if choices.zip_kind == "lapped" else ()
    front = replace(
        front, edges=(*front.edges[:at], *edges, *front.edges[at + 1 :]), placements=(*front.placements, *marks)
    )
    return draft.with_pieces([_turned(front), *_as_wide(draft, zipped, piece.name)]) + Draft(
        seams=seams,
        findings=(zip_said(zipped),),
        facts={"closing": length + zipped.above, "zip": zipped.need},
        notions=tuple(zip_notions(piece.name, zipped)),
    )


def _overlapped(draft: Draft, piece: Piece, choices: Choices, scale: float) -> Draft:
    front, side = _turned(piece), _side(piece)
    at = _opens(front) or 0
    lines = front_lines(front, at)
    row = ROWS[choices.fastening](front, lines, choices.fasteners(scale))
    least = 2 * row.stand + BEHIND * scale
    width = min(max(choices.facing_width, least), row.stand + lines.reach())
    front = replace(
        front,
        edges=(*front.edges[:at], *folded_back(lines, row.stand, width), *front.edges[at + 1 :]),
        placements=(*front.placements, *_folds(lines, row.stand, side), *row.marks),
    )
    stiff = _stiffened(piece, closing_strip(lines, row.stand, width))
    narrow = narrow_said(row.stand, choices.button_diameter, choices.button.stand) if row.stand else ()
    return replace(draft.with_pieces([_turned(front)]), chains=_chains(draft, piece, row.stand)) + Draft(
        (stiff,),
        findings=(row_said(side, choices.closing, row), *(narrow if choices.fastening == "buttons" else ())),
        facts={"closing": lines.top.imag - lines.low.imag, "button_level": row.level},
        notions=(*row.notions, interfacing_notion(stiff)),
    )


ROWS = {"buttons": buttoned, "hooks": hooks, "laced": laced}
"""What draws each sort of row."""


def _stiffened(piece: Piece, ring: tuple[Edge, ...]) -> Piece:
    """Return the interfacing of the facing that is folded back, a pair."""
    title = f"{_side(piece).capitalize()} facing"
    drawn = Piece(
        f"{piece.name}-facing",
        ring,
        grain=90.0,
        pair=True,
        title=title,
        role=PieceRole.FACING,
        lines=(piece.name,),
    )
    turned = drawn if piece.role is PieceRole.FRONT else drawn.mirrored()
    return interfacing(turned, bare=("front_edge", "facing"), stiffens=(piece.name,))


def _folds(lines: FrontLines, stand: float, side: str) -> Iterator[Placement]:
    yield Placement(f"centre_{side}", line(lines.top, lines.low), "centre")
    yield Placement("front_edge", line(lines.top - stand, lines.low - stand), "fold")


def _chains(draft: Draft, piece: Piece, stand: float) -> dict[str, tuple[tuple[str, str], ...]]:
    """Return the chains: a front's neckline runs on over its stand, and so does a waist."""
    chains = dict(draft.chains)
    if stand and piece.role is PieceRole.FRONT:
        chains["front_neck"] = (*chains.get("front_neck", ()), (piece.name, "stand_neck"))
        if "waist" in chains:
            chains["waist"] = ((piece.name, "stand_hem"), *chains["waist"])
    return chains


def _closed() -> Finding:
    return Finding(
        "closing",
        "warning",
        "front",
        None,
        None,
        "Neither front nor back opens, so there is nothing to close: choose opening = front or back, or see that "
        "neck and waist pass over head and shoulders.",
    )
