"""What a lay has to say: pieces that stick out, and what to do; stripes, stretch, length."""

from __future__ import annotations

import math
from collections.abc import Iterator

from drafting.draft.piece import Piece
from drafting.draft.roles import PieceRole
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.names import name_in_words
from drafting.layout.cloth import LENGTHWISE, SHRINKING, Cloth, LayName
from drafting.layout.lay import Lay
from drafting.layout.on_bars import matched_on
from drafting.layout.outlines import Outline
from drafting.layout.packing.model import box_of

SEAM = 10.0
"""mm of allowance taken for a new seam where an edge names none; common practice."""

STRIPS = frozenset(
    {PieceRole.WAISTBAND, PieceRole.BAND, PieceRole.KNEE_BAND, PieceRole.HEM_BAND, PieceRole.BINDING}
)
"""Pieces that are joined out of lengths where the cloth is too narrow, not out of gores (common practice)."""

TURNED = 1.0
"""degrees by which the stretch may lie off the way the cloth stretches most (ours)."""


def lay_findings(lay: Lay) -> tuple[Finding, ...]:
    """Return everything there is to say about a lay, what sticks out first."""
    return tuple(_said(lay))


def _said(lay: Lay) -> Iterator[Finding]:
    for outline in lay.left_out:
        yield too_wide(outline, lay.cloth, lay.lay)
    yield from lay.cloth.findings
    if lay.packing.spots:
        yield Finding("lay", "note", lay.role, lay.length, lay.lower_bound, lay.summary())
    yield from _hands(lay)
    yield from _repeats(lay)
    yield from _wash(lay)
    yield from _stretch(lay)


def too_wide(outline: Outline, cloth: Cloth, lay: LayName) -> Finding:
    """Return the error for a piece that is wider than the cloth: both sizes, and what to do."""
    _, y0, _, y1 = box_of(outline.ring)
    wide, room, name = y1 - y0, _room(cloth, lay), name_in_words(outline.part.name)
    if lay in LENGTHWISE and outline.opened:
        what = f"{name} has its fold across the grain, and this cloth is folded along it"
        do = "open the cloth, or fold it across"
    else:
        what = f"{name} needs {told(wide)} across the cloth, and there are {told(room)}" + (
            ROOMS.get(lay, " between the selvedges")
        )
        do = _way_out(outline, wide, cloth, lay)
    message = f"{what}. It is left out of the lay: {do}."
    return Finding("fits the cloth", "error", outline.part.name, wide, room, message)


ROOMS: dict[LayName, str] = {
    "folded": " on each half of the folded cloth",
    "double": " between a fold and where the selvedges meet",
}


def _room(cloth: Cloth, lay: LayName) -> float:
    """Return what there is across: on two folds the middle is taken for the place where selvedges meet."""
    return cloth.layer_width(lay) / 2 if lay == "double" else cloth.layer_width(lay)


def _way_out(outline: Outline, wide: float, cloth: Cloth, lay: LayName) -> str:
    """Return what to do with a piece too wide: open the cloth, or cut it in the fewest parts."""
    whole = 2 * wide if outline.fold else wide
    if lay in LENGTHWISE and whole <= cloth.usable_width:
        return "open the cloth, where it fits on one layer"
    seam = max((w for w in outline.part.cut.allowances.values()), default=0.0) or SEAM
    parts = fewest_parts(whole, cloth.usable_width, seam)
    each = whole / parts + 2 * seam * (parts - 1) / parts
    if outline.part.cut.piece.role in STRIPS:
        return (
            f"cut it in {parts} lengths, joined at the middle or above seams of what it is sewn to, each about "
            f"{told(each)} long with {told(seam)} for the new seams; or take a wider cloth"
        )
    return (
        f"split it into {parts} gores or panels, each on its own grainline and about "
        f"{told(each)} wide with {told(seam)} for the new seams; or piece the cloth, "
        "or take a wider one"
    )


def fewest_parts(wide: float, room: float, seam: float) -> int:
    """Return into how many equal parts a piece must be split to fit, new seams counted.

    >>> fewest_parts(1650, 1470, 10), fewest_parts(1543, 1500, 10), fewest_parts(900, 1470, 10)
    (2, 2, 1)
    """
    parts = max(1, math.ceil(wide / room))
    while parts > 1 and wide / parts + 2 * seam * (parts - 1) / parts > room and parts < 100:
        parts += 1
    return parts


def _hands(lay: Lay) -> Iterator[Finding]:
    singles = [
        f"{name_in_words(lay.outline(spot).part.name)} ({lay.job.copies[spot.copy].hand})"
        for spot in lay.packing.spots
        if lay.lay != "open" and lay.job.copies[spot.copy].hand != "both" and not lay.outline(spot).fold
    ]
    if singles:
        yield Finding(
            "cut from one layer",
            "note",
            lay.role,
            None,
            None,
            f"Cut from one layer of the folded cloth only, the one whose right side gives the hand "
            f"named: {', '.join(singles)}.",
        )


def _repeats(lay: Lay) -> Iterator[Finding]:
    cloth, (lost_along, lost_across) = lay.cloth, lay.cloth.shrinkage
    if cloth.repeat_along:
        yield _repeat(cloth, cloth.repeat_along, lost_along, f"along its length: {_levelled(lay)}")
    if cloth.repeat_across:
        yield _repeat(cloth, cloth.repeat_across, lost_across, STRIPES[lay.lay == "open"] + _first_stripe(lay))


def _first_stripe(lay: Lay) -> str:
    """Return where the lay counts a wide repeat from, where that was chosen."""
    first = lay.job.strip.stripe
    if not first:
        return ""
    return (
        f" It was laid for a pattern that mirrors itself {told(first)} inside the selvedge, and every repeat from "
        "there: where yours does so elsewhere, shift all pieces with it and see that they still have room."
    )


def _levelled(lay: Lay) -> str:
    matched = matched_on(lay.outlines, lay.cloth.wishes.level)
    pieces = dict.fromkeys(name_in_words(outline.part.name) for outline in matched.without)
    rest = f" Lay what has no such line ({', '.join(pieces)}) as what it is sewn to, where it shows." * bool(
        pieces
    )
    if not matched.levels:
        return f"no piece has a level line to lay it by.{rest}"
    lines = " or ".join(name_in_words(name) for name in matched.levels)
    sleeves = " a sleeve with its front notch on the bar of the front's," * matched.notched
    return (
        f"every piece is laid with its {lines} line on the same place of the repeat,{sleeves} and the lay is "
        f"longer for it.{rest} Check each pair of partners before cutting."
    )


STRIPES = {
    True: "across: the grainline of every piece lies on the same place of a stripe, where it has room "
    "to. Check each pair of partners before cutting.",
    False: "across: fold it on a stripe and pin the layers stripe on stripe, then both hands of a pair "
    "match. From piece to piece stripes are matched on open cloth only.",
}
"""What is said of stripes, by whether the cloth lies open."""


def _repeat(cloth: Cloth, every: float, lost: float, words: str) -> Finding:
    left = f" ({told(every / (1 - lost))} before {SHRINKING[cloth.shrunk_by]})" if lost else ""
    message = f"{cloth.title} repeats every {told(every)}{left} {words}"
    return Finding("repeat", "note", cloth.role, every, None, message)


def _wash(lay: Lay) -> Iterator[Finding]:
    _, across = lay.cloth.shrinkage
    if across > 0:
        yield Finding(
            "width after the wash",
            "note",
            lay.role,
            lay.cloth.usable_width,
            lay.cloth.bought_width,
            f"{lay.cloth.title} loses {round(100 * across, 1):g} % of its width in "
            f"{SHRINKING[lay.cloth.shrunk_by]}, before cutting: of {told(lay.cloth.bought_width)} it is laid on "
            f"the {told(lay.cloth.usable_width)} that are left. Measure it then; where it is narrower, write "
            "usable_width and pretreated = true.",
        )


ON_BIAS = frozenset(
    {
        PieceRole.BINDING,
        PieceRole.BONE_CASING,
        PieceRole.UNDER_COLLAR,
        PieceRole.TAIL,
        PieceRole.GODET,
        PieceRole.HEM_BAND,
    }
)
"""What is cut on the bias on purpose, so that it follows a curve or flares (common practice); a band along a hem
has the grain of what it lies behind."""


def _on_purpose(piece: Piece) -> bool:
    """Return whether a piece lies on the bias as what it is declared to be has to; no other piece has."""
    return piece.role in ON_BIAS and min(piece.grain % 90, 90 - piece.grain % 90) > TURNED


def _stretch(lay: Lay) -> Iterator[Finding]:
    """Yield a warning for each piece whose greatest stretch does not lie as the cloth's does."""
    if lay.cloth.stretch_turned is None:
        return
    wanted = 0.0 if lay.cloth.stretch_turned else 90.0
    for outline in lay.outlines:
        piece = outline.part.cut.piece
        lies = (piece.stretch - piece.grain) % 180
        off = abs((lies - wanted + 90) % 180 - 90)
        if off > TURNED and not _on_purpose(piece):
            yield Finding(
                "stretch",
                "warning",
                outline.part.name,
                lies,
                wanted,
                f"{name_in_words(outline.part.name)} is to stretch {lies:.0f} degrees off the selvedge, and "
                f"{lay.cloth.title} stretches most at {wanted:.0f}: it would "
                f"{'give as it is drawn' if piece.role is PieceRole.STRAP else 'not stretch around the body'}. "
                "Turn its grain, or take a cloth that stretches the other way.",
            )
