"""What a tailored front and shoulder have inside: canvas, the tape of the roll line, pads, sleeve heads, bars.

Common practice of tailoring. The draft leaves no height for a pad, so only the thinnest is asked for, and only
where a lining covers it.
"""

from __future__ import annotations

from collections.abc import Iterable

from drafting.draft.by_role import edges_as, pieces_as, vent_at_centre, vent_tops
from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.openings import hands
from drafting.draft.piece import Edge, Piece
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.ground.lengths import told
from drafting.making.model import Supply, said
from drafting.making.order.parts import Bench, base_of, edges_told, own_each_hand
from drafting.making.order.seam_kinds import is_sleeve
from drafting.making.order.used_up import STAY

TAPE_SHORT = 0.02
"""Share by which the roll line's tape is drawn up (common practice: 5 to 10 mm on a lapel of 40 cm)."""

TAPE_ENDS = 40.0
"""mm of tape beyond a line, to catch both ends (common practice)."""

HEAD = 300.0
"""mm of wadding for one sleeve head, from notch to notch over the crown (common practice)."""

FULL = 1.25
"""Cap over armhole from which a gathered crown is held up by net (common practice: leg-of-mutton, full puffs)."""

NET = 300.0
"""mm of net for one full crown, before it is gathered (common practice)."""

BAR = 10.0
"""mm of a bar tack (common practice: 8 to 12)."""


def roll_line(bench: Bench) -> None:
    """Tape the roll line of every front that has one, while it lies flat."""
    rolled: dict[Piece, float] = {}
    for piece in pieces_as(bench.garment.draft, PieceRole.FRONT):
        lines = [mark.path.length for mark in piece.placements if mark.what == "roll line"]
        if lines and not piece.material:
            rolled[piece] = max(lines)
    if not rolled:
        return
    tape = sum(piece.count * (line + TAPE_ENDS) for piece, line in rolled.items())
    fronts, short = list(rolled), TAPE_SHORT * sum(rolled.values()) / len(rolled)
    bench.do(
        "prepare",
        "stay",
        f"{base_of(fronts[0])} taped",
        [piece.name for piece in fronts],
        [said("do.roll_tape", short=short), *own_each_hand(fronts)],
        length=tape,
    )
    bench.also(Supply("tape", STAY, tape, "mm"))


def padded_shoulders(bench: Bench) -> None:
    """Put sleeve heads and thin pads into a coat's shoulders before its lining closes them."""
    draft = bench.garment.draft
    rolled = any(m.what == "roll line" for p in pieces_as(draft, PieceRole.FRONT) for m in p.placements)
    sleeved = [p.name for p in pieces_as(draft, PieceRole.TOP_SLEEVE, PieceRole.SLEEVE) if not p.material]
    if not (rolled and sleeved and bench.lined()):
        return
    fronts = [p.name for p in pieces_as(draft, PieceRole.FRONT) if not p.material]
    say = [said("do.sleeve_heads"), said("do.pads")]
    bench.do("finish", "pad", "shoulders padded", [*sleeved, *fronts], say, length=2 * HEAD, count=2)
    bench.also(
        Supply("sleeve head", f"bias strip of lambswool or wadding, {told(40.0, 'small')} wide", 2 * HEAD, "mm"),
        Supply("shoulder pad", f"thin, at most {told(6.0, 'small')}", 1.0, "pair"),
    )


def full_crowns(bench: Bench, fabric: Fabric | None) -> None:
    """Sew a head of net into each crown that is gathered full, so that it stands; a knit holds none."""
    draft = bench.garment.draft
    if fabric is None or fabric.weave == "knit":
        return
    sleeves = dict.fromkeys(
        name
        for seam in draft.seams
        if seam.kind is SeamKind.SET_IN and _length(draft, seam.a) > FULL * _length(draft, seam.b)
        for name, _ in seam.a
        if is_sleeve(draft[name])
    )
    if not sleeves:
        return
    count = sum(draft[name].count for name in sleeves)
    bench.do(
        "finish", "pad", "crowns held up", list(sleeves), [said("do.full_crowns")], length=count * NET, count=count
    )
    bench.also(Supply("sleeve head", f"stiff net, {told(120.0, 'small')} wide", count * NET, "mm"))


def _length(draft: Draft, refs: Iterable[EdgeRef]) -> float:
    return sum(draft[piece][edge].length for piece, edge in refs)


def _top_of(piece: Piece, role: EdgeRole) -> list[Edge]:
    """Return the edges at the top of an opening: of a vent what its seam ends at, of a pleat the uppermost."""
    if role is EdgeRole.VENT:
        return vent_tops(piece)
    return sorted(edges_as(piece, role), key=lambda edge: -edge.path.at(edge.length / 2).imag)[:1]


def _count(draft: Draft, ends: list[tuple[str, str]]) -> int:
    """Return how many bars these ends take: one a hand, but one in all of a vent in which a centre seam opens."""
    centre = {base_of(draft[piece]) for piece, edge in ends if draft[piece][edge] in vent_at_centre(draft[piece])}
    others = [piece for piece, edge in ends if draft[piece][edge] not in vent_at_centre(draft[piece])]
    return len(centre) + sum(hands(draft[piece]) for piece in others)


def bars(bench: Bench) -> None:
    """Bar the ends that are pulled at: the top of a body's vents and side pleats, the foot of a fall."""
    draft = bench.garment.draft
    ends = [
        (piece.name, edge.name)
        for piece in draft.pieces
        if not piece.material and not is_sleeve(piece) and piece.role is not PieceRole.SIDE_BODY
        for role in (EdgeRole.VENT, EdgeRole.PLEAT)
        for edge in _top_of(piece, role)
        if role is EdgeRole.VENT or piece.role is PieceRole.BACK
    ]
    feet = [
        (piece.name, edge.name)
        for piece in pieces_as(draft, PieceRole.BEARER)
        for edge in edges_as(piece, EdgeRole.SIDE)[:1]
    ]
    say, counts = [], [_count(draft, found) for found in (ends, feet)]
    if ends:
        key = "do.bars" if counts[0] > 1 else "do.bars_one"
        say.append(said(key, names=edges_told(draft, ends), n=counts[0]))
    if feet:
        say.append(said("do.bars_fall", n=counts[1]))
    if say:
        pieces = list(dict.fromkeys(piece for piece, _ in (*ends, *feet)))
        bench.do("finish", "bar", "barred", pieces, say, length=sum(counts) * BAR)
        bench.also(along=[*ends, *feet])
