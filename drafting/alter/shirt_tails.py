"""Shirt tails: a shirt that is long enough to be tucked in, its hem straight or shaped, longer behind.

Centres and side seams run straight on below the hip line; a shaped hem leaves the centres square, climbs and meets
the side seams square, so that front and back join in one smooth line.

      centre   hip line                         side
        | . . . . . . . . . . . . . . . . . . . |
        |                                  __.--'   tail_side
        |                             _.--'
        '------------------------.--''              tail_front; the back tail_longer
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.draft.by_role import edge_as, pieces_as
from drafting.draft.draft import Draft
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.fabric import Fabric
from drafting.geometry import Path, line, smooth
from drafting.ground.choices import choice
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.sources import practice

LEVEL = 0.4
"""Share of the half hem that is straight from the centre before a shaped one climbs (ours, by eye)."""

NARROW = 12.0
"""mm turned up twice along a shaped hem (common practice: 10 to 15 where a hem is curved)."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about how a shirt ends, in mm."""

    tails: str = choice(
        "none",
        "word",
        "how it goes on below the hip to be tucked in: not at all, straight, or shaped and higher at the sides",
        words=("none", "straight", "shaped"),
        group="length",
        source=practice(),
    )
    tail_front: float = choice(
        110.0,
        "mm",
        "hip line to hem at the centre front",
        low=10,
        high=700,
        scales=True,
        source=practice("⟨100⟩ to ⟨150⟩; worn out of the trousers less"),
        group="length",
    )
    tail_longer: float = choice(
        50.0,
        "mm",
        "how much longer the back's tail is at the centre",
        low=0,
        high=400,
        scales=True,
        source=practice("⟨30⟩ to ⟨80⟩"),
        group="length",
    )
    tail_side: float = choice(
        30.0,
        "mm",
        "hip line to hem at the side of shaped tails",
        low=0,
        high=700,
        scales=True,
        source=practice("the curve ends ⟨20⟩ to ⟨60⟩ below the hip"),
        group="length",
    )


def shirt_tails(draft: Draft, body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the draft with its fronts and backs run on below their hem.

    Raises `DraftError` where a hem does not run whole from a centre to a side.
    """
    if choices.tails == "none":
        return draft
    halves = [piece for piece in pieces_as(draft, PieceRole.FRONT, PieceRole.BACK) if edge_as(piece, EdgeRole.HEM)]
    if not halves:
        return replace(draft, findings=(*draft.findings, _ends_higher()))
    longer = {PieceRole.FRONT: 0.0, PieceRole.BACK: choices.tail_longer}
    made = [_tailed(piece, choices, choices.tail_front + longer[piece.role]) for piece in halves]
    facts = {f"tail_{piece.role.value}": choices.tail_front + longer[piece.role] for piece in halves}
    return replace(draft.with_pieces(made), facts={**draft.facts, **facts})


def _tailed(piece: Piece, choices: Choices, deep: float) -> Piece:
    """Return a front or back whose centre runs on by `deep` mm below its hem."""
    at = next(i for i, edge in enumerate(piece.edges) if edge.role is EdgeRole.HEM)
    count = len(piece.edges)
    before, hem, after = piece.edges[at - 1], piece.edges[at], piece.edges[(at + 1) % count]
    if {before.role, after.role} not in ({EdgeRole.SIDE, EdgeRole.CENTRE}, {EdgeRole.SIDE, EdgeRole.CENTRE_SEAM}):
        raise DraftError(
            f"the {piece.name}'s hem is parted by a dart or a panel seam, so it gets no tails",
            turn="choose a bust_dart that ends above the waist, or tails = none",
        )
    from_centre = after.role is EdgeRole.SIDE
    shaped = choices.tails == "shaped"
    at_side = min(choices.tail_side, choices.tail_front) if shaped else choices.tail_front
    by = (deep, at_side) if from_centre else (at_side, deep)
    low = before.path.end + by[0] * before.path.arrive
    far = after.path.start - by[1] * after.path.leave
    centre, side = (low, far) if from_centre else (far, low)
    down = -after.path.leave if from_centre else before.path.arrive
    out = 1.0 if side.real > centre.real else -1.0
    path = _hem(centre, side, complex(out, 0.0), down * (1j if out > 0 else -1j), shaped)
    made = replace(hem, path=path if from_centre else path.reversed())
    if shaped:
        made = replace(made, allowance=NARROW)
    down_to = Path.joined([before.path, line(before.path.end, low)])
    up_from = Path.joined([line(far, after.path.start), after.path])
    return piece.with_edges(made, replace(before, path=down_to), replace(after, path=up_from))


def _hem(centre: complex, side: complex, out: complex, arrive: complex, shaped: bool) -> Path:
    """Return the hem from the centre to the side seam, square to both."""
    if not shaped:
        return Path((smooth(centre, side, out, arrive, may_wave=True),))
    turns = centre + LEVEL * (side - centre).real
    return Path((*line(centre, turns).segments, smooth(turns, side, out, arrive, may_wave=True)))


def _ends_higher() -> Finding:
    text = "The top ends at the waist, so it gets no tails: choose length = hip."
    return Finding("tails", "warning", "front", None, None, text)
