"""How a waistcoat closes: where the V ends, the edge turns and the buttons stand, and what is said of it. Mm."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from drafting.draft.by_role import edges_as
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole, LevelKind
from drafting.ground.findings import Finding
from drafting.ground.lengths import apart_said, counted, told
from drafting.shaping.details.button_stand import narrow_said
from drafting.shaping.details.buttons import Button
from drafting.shaping.waistcoat.fronts import NARROWER_LOW, FrontWish

ARMS_RAISE = 35.0
"""mm at adult scale by which a close garment without sleeves rises with the arms (from memory: 25 to 40)."""

COVERS = 15.0
"""mm at adult scale: what has to be left of the cover over the trousers' waist when the arms are up (ours)."""

CROWDED = 1.6
"""Buttons stand at least so many diameters apart (ours)."""

FIRST_BELOW, BELOW_LAST = 1.0, 1.2
"""So many diameters below the end of the V stands the first button, and so many below the last the edge turns away
(common practice: about a button's width; the figures are ours)."""

LAST_BELOW = 20.0
"""mm at adult scale of the last button below the waist (common practice: just below it)."""

POINT_IN = 16.0
"""mm at adult scale that the point of a single-breasted front lies behind the centre (ours, by eye)."""

LEAST_EDGE, LEAST_POINT = 60.0, 15.0
"""mm at adult scale: least height of the front edge above the waist, and of the point below the sides (ours)."""

DOUBLE_LOWER = 0.6
"""Of the lap: so much lower ends the V where fronts lap, as its edge lies beyond the centre (ours, by eye)."""

USUAL = {False: 5, True: 3}
"""Buttons in a row of a single-breasted waistcoat, and of a double-breasted one (common practice)."""


@dataclass(frozen=True)
class ClosingWish:
    """What a maker asks of the closing: `double` breasted, how far above the bust line the V ends, how far below
    the waist sides and points hang, the `lap` of a double, the `stand` of a single (0: the button's), the `count`
    of buttons (0: the usual), all mm, and which hand closes over which."""

    double: bool
    v_above_bust: float
    below_waist: float
    point_below: float
    lap: float
    stand: float
    count: int
    button: Button
    closing: str
    scale: float

    @property
    def hands(self) -> tuple[str, str]:
        """The hand on top, and the one beneath."""
        return self.closing.split()[0], self.closing.split()[-1]


def front_wish(front: Piece, asked: ClosingWish) -> FrontWish:
    """Return where the front's edge runs and its buttons stand, as heights of a torso's front as it is drawn.

    Both hands of an uneven wearer take it from one front, that of both together: their V's mirror each other.
    """
    levels = {level.kind: level.paths[0].start.imag for level in front.levels}
    bust, waist, scale = levels[LevelKind.BUST], levels[LevelKind.WAIST], asked.scale
    button, low = asked.button, NARROWER_LOW * asked.lap
    lower = DOUBLE_LOWER * asked.lap if asked.double else 0.0
    opens = max(bust + asked.v_above_bust - lower, waist + LEAST_EDGE * scale)
    point = waist - max(asked.point_below, asked.below_waist + LEAST_POINT * scale)
    last, stand = waist - LAST_BELOW * scale, asked.stand or button.stand
    turns = max(last - BELOW_LAST * button.diameter, point + LEAST_POINT * scale)
    return FrontWish(
        lap=asked.lap if asked.double else stand,
        low_lap=low if asked.double else stand,
        leaves=edges_as(front, EdgeRole.NECK)[0].path.leave,
        opens=opens,
        first=opens - FIRST_BELOW * button.diameter,
        last=last,
        corner=point if asked.double else turns,
        point=complex(low if asked.double else POINT_IN * scale, point),
        rows=2 if asked.double else 1,
        scale=scale,
    )


def button_count(wish: FrontWish, asked: ClosingWish) -> int:
    """Return how many buttons stand in a row: those asked for, as far as there is room."""
    room = 1 + int((wish.first - wish.last) / (CROWDED * asked.button.diameter))
    return max(1, min(asked.count or USUAL[asked.double], room))


def closing_said(asked: ClosingWish, wish: FrontWish, count: int) -> Iterator[Finding]:
    """Yield how it closes, and what of it could not be had."""
    over, under = asked.hands
    apart = (wish.first - wish.last) / (count - 1) if count > 1 else 0.0
    rows = f"{counted(count, 'buttonhole', 'buttonholes')} of {told(asked.button.hole, 'small')} "
    rows += f"on the wearer's {over} front, "
    if asked.double:
        many = f"two rows of {count} buttons{apart_said(count, apart)}, those on the {over} front for show"
        rows += many if count > 1 else f"a button on each front, the one on the {over} front for show"
        rows += f"; fasten the {under} front's corner inside with the hook"
    else:
        rows += f"the {'buttons' if count > 1 else 'button'} on the {under}{apart_said(count, apart)}"
    sentence = (
        f"The waistcoat closes {asked.closing}: {rows}. The fronts lie {told(2 * wish.lap)} over each other."
    )
    if count > 1:
        sentence += " By custom the lowest button is left open."
    yield Finding("closing", "note", "front", asked.closing, None, sentence)
    wanted = asked.count or USUAL[asked.double]
    if count < wanted:
        size = told(asked.button.diameter, "small")
        said = f"There is room for {counted(count, 'button', 'buttons')} of {size} in a row, not for {wanted}."
        yield Finding("buttons", "note", "front", float(count), float(wanted), said)
    if not asked.double:
        yield from narrow_said(wish.lap, asked.button.diameter, asked.button.stand)


def length_said(asked: ClosingWish) -> Iterator[Finding]:
    """Yield whether the trousers' waist stays covered when the arms rise."""
    scale = asked.scale
    left = asked.below_waist - ARMS_RAISE * scale
    short = left < COVERS * scale
    sentence = (
        f"Back and sides end {told(asked.below_waist)} below the waist, the points of the fronts "
        f"{told(asked.point_below)}. With the arms up it rises by some {told(ARMS_RAISE * scale)}: "
    )
    sentence += (
        "the shirt will show above the trousers; choose a longer below_waist, or wear the trousers higher."
        if short
        else f"trousers that reach the waist stay covered by {told(left)}; lower ones want a longer below_waist."
    )
    yield Finding("length", "warning" if short else "note", "hem", left, COVERS * scale, sentence)
