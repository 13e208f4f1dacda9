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

from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.draft.by_role import pieces_as
from drafting.draft.draft import Draft, Notion, Seam
from drafting.draft.piece import Edge, EdgeKind, Notch, Piece, Placement
from drafting.draft.roles import EdgeRole, LevelKind, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.geometry import line
from drafting.ground.choices import choice
from drafting.ground.findings import Finding
from drafting.ground.scale import body_scale
from drafting.ground.sources import ours, practice
from drafting.shaping.details.button_stand import FrontLines, narrow_said
from drafting.shaping.details.buttons import Button, button_mark, button_notion, button_row, hole_mark
from drafting.shaping.details.closings import (
    cord_length,
    evenly,
    eyelet_mark,
    folded_back,
    front_lines,
    hook_marks,
    sold_zip,
    strip,
)
from drafting.shaping.details.small_pieces import interfacing, interfacing_notion
from drafting.shaping.shared_choices import BUTTON_DIAMETER, BUTTON_SHAPE, BUTTON_STAND, BUTTON_THICKNESS, CLOSING

BELOW_NECK = 8.0
"""mm at adult scale: a zip begins so far below the neck, with a hook and eye above it (common practice)."""

HOOK_LAP, HOOK, HOOK_SPACE = 15.0, 8.0, 25.0
"""mm at adult scale: how far edges with hooks reach past the centre, a hook, and the space between two
(common practice: 12 to 20, size 2 or 3, 20 to 30)."""

EYELET, EYELET_IN, EYELET_SPACE = 5.0, 12.0, 25.0
"""mm at adult scale: an eyelet, its distance from the edge, and between two (common practice: 20 to 30)."""

BUTTON_SPACE = 70.0
"""mm at adult scale between two buttons (common practice: 60 to 90 on a bodice)."""

LAPPED = 12.0
"""mm at adult scale: the lap over a zip is stitched so far from the centre (common practice: 10 to 15)."""

AT_ENDS = 10.0
"""mm at adult scale: the first and last fastener stand so far from neck and hem (common practice)."""

BEHIND = 5.0
"""mm at adult scale: a facing reaches at least this far past the other edge (ours)."""


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
        source=practice("20 to 25"),
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
        "greatest space between two fasteners; 0 takes what is usual for them",
        low=0,
        high=200,
        source=practice("buttons 60 to 90, hooks 20 to 30, eyelets 20 to 30"),
        group="closing",
    )
    facing_width: float = choice(
        50.0,
        "mm",
        "of the facing that is folded back, from its fold",
        low=10,
        high=200,
        scales=True,
        source=practice("40 to 70"),
        group="closing",
    )
    closing: str = CLOSING
    button_diameter: float = BUTTON_DIAMETER
    button_thickness: float = BUTTON_THICKNESS
    button_shape: str = BUTTON_SHAPE
    button_stand: float = BUTTON_STAND

    @property
    def hands(self) -> tuple[str, str]:
        """The hand on top, and the one beneath."""
        return self.closing.split()[0], self.closing.split()[-1]

    @property
    def button(self) -> Button:
        return Button(self.button_diameter, self.button_thickness, self.button_shape)

    def space(self, usual: float) -> float:
        return self.fastening_space or usual


def closing(draft: Draft, body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the draft with its open centre made to be closed.

    A draft whose centre does not open is left as it is, with a finding.
    """
    opened = next((p for p in pieces_as(draft, PieceRole.FRONT, PieceRole.BACK) if _opens(p) is not None), None)
    if opened is None:
        return replace(draft, findings=(*draft.findings, _closed()))
    scale = body_scale(body)
    if choices.fastening == "zip":
        return _zipped(draft, opened, choices, scale)
    return _overlapped(draft, opened, choices, scale)


def _opens(piece: Piece) -> int | None:
    """Return the place of the centre that opens in a piece's ring, or None."""
    found = (i for i, e in enumerate(piece.edges) if e.role is EdgeRole.CENTRE and e.kind is EdgeKind.OPENING)
    return next(found, None)


def _turned(piece: Piece) -> Piece:
    """Return the piece as a front's left hand lies, or such a one back again."""
    return piece if piece.role is PieceRole.FRONT else piece.mirrored()


def _side(piece: Piece) -> str:
    return "front" if piece.role is PieceRole.FRONT else "back"


# ------------------------------------------------------------------------------------------- a zip


def _zipped(draft: Draft, piece: Piece, choices: Choices, scale: float) -> Draft:
    front, side = _turned(piece), _side(piece)
    at = _opens(front) or 0
    lines, centre = front_lines(front, at), front.edges[at]
    right_through = front.edges[(at + 1) % len(front.edges)].role is EdgeRole.WAIST
    length = centre.length - (0.0 if right_through else min(choices.zip_above_hem, centre.length / 2))
    edges, seams = _parted(centre, piece.name, side, length, choices.zip_allowance)
    marks = _lap(lines, length, choices.hands[0], scale) if choices.zip_kind == "lapped" else ()
    front = replace(
        front, edges=(*front.edges[:at], *edges, *front.edges[at + 1 :]), placements=(*front.placements, *marks)
    )
    need = length - BELOW_NECK * scale
    return draft.with_pieces([_turned(front)]) + Draft(
        seams=seams,
        findings=(_zip_said(side, choices, need, right_through),),
        facts={"closing": length, "zip": need},
        notions=tuple(_zip_notions(piece.name, side, need, right_through, choices)),
    )


def _parted(
    centre: Edge, piece: str, side: str, length: float, allowance: float
) -> tuple[tuple[Edge, ...], tuple[Seam, ...]]:
    """Return the centre as an opening, and below the stop a seam from left to right."""
    if length >= centre.length:
        return (replace(centre, allowance=allowance),), ()
    high, low = centre.path.split(length)
    stop = Notch("zip_stop", length, 1 if side == "front" else 2)
    below = Edge("centre_seam", low, allowance=allowance, role=EdgeRole.CENTRE)
    chain = ((piece, below.name),)
    seam = Seam(f"centre {side}", chain, chain, start=None, end=None, kind=SeamKind.CENTRE)
    return (replace(centre, path=high, allowance=allowance, notches=(*centre.notches, stop)), below), (seam,)


def _lap(lines: FrontLines, length: float, over: str, scale: float) -> tuple[Placement, ...]:
    """Return the stitching of the lap, down beside the centre and across below the stop."""
    x, top, low = LAPPED * scale, lines.top - 1j * BELOW_NECK * scale, lines.top - 1j * length
    down = Placement(f"zip_stitching_{over}", line(top + x, low + x), "stitching", over)
    return down, Placement(f"zip_stitching_end_{over}", line(low + x, low), "stitching", over)


def _zip_notions(piece: str, side: str, need: float, right_through: bool, choices: Choices) -> Iterator[Notion]:
    sort = (
        "open-ended zip"
        if right_through
        else f"{choices.zip_kind} zip"
        if choices.zip_kind == "invisible"
        else "zip"
    )
    sold = sold_zip(need)
    said = "taken apart below" if right_through else f"stopped with a bar at the notch, {need / 10:.1f} cm down"
    yield Notion(
        "zip", f"centre {side}", 1, sold, f"{said}; the opening takes {need / 10:.1f} cm", sort, piece=piece
    )
    yield Notion(
        "hook and eye", f"centre {side}", 1, None, "above the zip, inside", "hook and eye", HOOK, piece=piece
    )


def _zip_said(side: str, choices: Choices, need: float, right_through: bool) -> Finding:
    sold = sold_zip(need)
    low = (
        "as far as the hem, and is taken apart there"
        if right_through
        else "to the notch; below it the seam is sewn"
    )
    return Finding(
        "closing",
        "note",
        side,
        need,
        sold,
        f"The {side} closes with {'an invisible' if choices.zip_kind == 'invisible' else 'a lapped'} zip of "
        f"{need / 10:.1f} cm, {low}. Buy one of {sold / 10:.0f} cm: cut it off and bar it where it is longer. "
        f"The centre has {choices.zip_allowance:.0f} mm of allowance.",
    )


# --------------------------------------------------------------------- edges that are folded back


@dataclass(frozen=True)
class _Row:
    """What stands in a row down a closing: the `stand` beyond the centre, places, marks, what to buy."""

    stand: float
    places: list[float]
    marks: tuple[Placement, ...]
    notions: tuple[Notion, ...]
    said: str


def _overlapped(draft: Draft, piece: Piece, choices: Choices, scale: float) -> Draft:
    front, side = _turned(piece), _side(piece)
    at = _opens(front) or 0
    lines = front_lines(front, at)
    row = {"buttons": _buttons, "hooks": _hooks, "laced": _laced}[choices.fastening](front, lines, choices, scale)
    least = 2 * row.stand + BEHIND * scale
    width = min(max(choices.facing_width, least), row.stand + lines.reach())
    front = replace(
        front,
        edges=(*front.edges[:at], *folded_back(lines, row.stand, width), *front.edges[at + 1 :]),
        placements=(*front.placements, *_folds(lines, row.stand, side), *row.marks),
    )
    stiff = _stiffened(piece, strip(lines, row.stand, width))
    narrow = narrow_said(row.stand, choices.button_diameter, choices.button.stand) if row.stand else ()
    return replace(draft.with_pieces([_turned(front)]), chains=_chains(draft, piece, row.stand)) + Draft(
        (stiff,),
        findings=(_row_said(side, choices, row), *(narrow if choices.fastening == "buttons" else ())),
        facts={"closing": lines.top.imag - lines.low.imag},
        notions=(*row.notions, interfacing_notion(stiff)),
    )


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
    if stand:
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


def _length(lines: FrontLines) -> float:
    return abs(lines.top - lines.low)


def _buttons(front: Piece, lines: FrontLines, choices: Choices, scale: float) -> _Row:
    button, (over, under) = choices.button, choices.hands
    stand = choices.button_stand or button.stand
    first, last = max(AT_ENDS * scale, button.diameter), _length(lines) - 3 * AT_ENDS * scale
    count = len(evenly(first, last, choices.space(BUTTON_SPACE * scale)))
    places = button_row(first, last, count, _bust(front, lines))
    marks = []
    for number, down in enumerate(places, 1):
        at = lines.top - 1j * down
        marks.append(button_mark(f"button_{under}_{number}", at, button.diameter, under))
        marks.append(hole_mark(f"buttonhole_{over}_{number}", at, -1 + 0j, button.hole, over))
    note = f"buttonholes level, on the {over}"
    said = f"{len(places)} buttonholes of {button.hole:.1f} mm on the wearer's {over}, the buttons on the {under}"
    return _Row(stand, places, tuple(marks), (button_notion(front.name, len(places), button, note),), said)


def _bust(front: Piece, lines: FrontLines) -> float | None:
    """Return how far below the neck the bust line of a front lies; None at a back."""
    if front.role is not PieceRole.FRONT:
        return None
    bust = next((v.paths[0].start.imag for v in front.levels if v.kind is LevelKind.BUST), None)
    return None if bust is None else lines.top.imag - bust


def _hooks(front: Piece, lines: FrontLines, choices: Choices, scale: float) -> _Row:
    lap, end = HOOK_LAP * scale, AT_ENDS * scale
    places = evenly(end, _length(lines) - end, choices.space(HOOK_SPACE * scale))
    marks = [
        mark
        for number, down in enumerate(places, 1)
        for mark in hook_marks(lines, down, number, choices.hands, lap - 3 * scale, HOOK * scale)
    ]
    over, under = choices.hands
    note = f"hooks under the {over} edge, 3 mm in, through the facing alone; eyes on the {under} below them"
    notion = Notion("hook and eye", front.name, len(places), None, note, "hook and eye", HOOK, piece=front.name)
    said = f"{len(places)} hooks under the edge of the wearer's {over}, the eyes on the {under}"
    return _Row(lap, places, tuple(marks), (notion,), said)


def _laced(front: Piece, lines: FrontLines, choices: Choices, scale: float) -> _Row:
    end, inside, size = AT_ENDS * scale, EYELET_IN * scale, EYELET * scale
    places = evenly(end, _length(lines) - end, choices.space(EYELET_SPACE * scale))
    marks = tuple(eyelet_mark(lines, down, number, inside, size) for number, down in enumerate(places, 1))
    count = 2 * len(places)
    cord = cord_length(places, inside)
    eyelets = Notion(
        "eyelet",
        front.name,
        count,
        None,
        "through cloth, interfacing and facing",
        "eyelet",
        size,
        piece=front.name,
    )
    notion = Notion("cord", front.name, 1, cord, "lacing, both ends tipped", "lacing cord", piece=front.name)
    said = f"{len(places)} eyelets on each side, laced with {cord / 10:.0f} cm of cord"
    return _Row(0.0, places, marks, (eyelets, notion), said)


def _row_said(side: str, choices: Choices, row: _Row) -> Finding:
    apart = row.places[1] - row.places[0] if len(row.places) > 1 else 0.0
    laps = f"The edges lie {2 * row.stand:.0f} mm over each other" if row.stand else "The edges meet on the centre"
    how = f"closes {choices.closing}" if row.stand else "is laced"
    return Finding(
        "closing",
        "note",
        side,
        float(len(row.places)),
        None,
        f"The {side} {how}: {row.said}, {apart:.0f} mm apart. {laps}; their facings are folded back.",
    )


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
