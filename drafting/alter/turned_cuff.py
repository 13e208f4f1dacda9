"""Turned cuff: a cuff on a plain sleeve end that is folded up over the sleeve, closed all round or open at a vent.

Drawn as it hangs before it is turned: the sleeve's end is its fold. Its far edge is as wide as the sleeve where it
will lie, and so much wider as it is to stand off. Cut twice, outer and inner.

            sleeve
        .-------------.
   end /               \\ end
      '-----------------'
              far
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Iterator
from dataclasses import dataclass

from drafting.body import Body
from drafting.draft.by_role import edge_as, the_edge
from drafting.draft.draft import Draft, EdgeRef, Seam
from drafting.draft.piece import Edge, EdgeKind, Piece, Placement
from drafting.draft.roles import SLEEVES, EdgeRole, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.geometry import Path, line
from drafting.geometry.arc import arc
from drafting.ground.choices import choice
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.sources import BY_EYE, practice
from drafting.shaping.details.collar_seams import twin_seam
from drafting.shaping.details.small_pieces import interfacing, interfacing_notion

SIDES = frozenset({EdgeRole.ARM_SEAM, EdgeRole.UNDERARM, EdgeRole.VENT, EdgeRole.SLIT})
"""What a sleeve has beside its hem: the edges that a cuff lies along."""

STRAIGHT = 1e-6
"""radians: a cuff that bends less is drawn straight."""

MOST = 5.5
"""radians that a cuff may bend: beyond a whole turn, with room to cut between its ends, it lies over itself."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about a cuff that is turned back, in mm."""

    turned_cuff: float = choice(
        0.0,
        "mm",
        "depth of a cuff that is turned back over the sleeve; 0: none",
        low=0,
        high=300,
        step=5,
        scales=True,
        group="cuff",
        source=practice("⟨80⟩ to ⟨120⟩; deep ones of the 18th century ⟨150⟩ and more"),
    )
    turned_cuff_spread: float = choice(
        24.0,
        "mm",
        "how much wider than the sleeve beneath a turned cuff is at its upper edge",
        low=4,
        high=300,
        step=2,
        scales=True,
        group="cuff",
        source=(practice("at least twice round the thickness of the cloth"), BY_EYE),
    )


def turned_cuff(draft: Draft, body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the draft with its cuff, interfacing and seams; as it is where none is asked for.

    Raises `DraftError` where no sleeve ends in a plain hem, or for a cuff deeper than the sleeve.
    """
    if choices.turned_cuff <= 0:
        return draft
    sleeves = _hemmed(draft)
    hems = [the_edge(piece, EdgeRole.HEM) for piece in sleeves]
    low, high = sum(e.length for e in hems), sum(_width_at(p, choices.turned_cuff) for p in sleeves)
    opens = any(edge_as(piece, EdgeRole.VENT) for piece in sleeves)
    cuff = _cuff(low, high + choices.turned_cuff_spread, choices.turned_cuff)
    stiff = interfacing(cuff)
    refs = tuple((piece.name, hem.name) for piece, hem in zip(sleeves, hems, strict=True))
    seams = (*_own_seams(cuff, opens=opens), _to_sleeve(cuff, refs))
    return draft + Draft(
        (cuff, stiff),
        seams,
        findings=(_said(choices, cuff, opens=opens),),
        facts={"turned_cuff_top": cuff["far"].length},
        notions=(interfacing_notion(stiff),),
    )


def _hemmed(draft: Draft) -> tuple[Piece, ...]:
    """Return the pieces of a sleeve that end in a plain hem, as a cuff meets them: from the hind seam round to it,
    where a vent opens, each against its outline."""
    order = (PieceRole.TOP_SLEEVE, PieceRole.UNDER_SLEEVE, PieceRole.SLEEVE)
    found = [p for p in draft.pieces if p.role in SLEEVES and not p.material and edge_as(p, EdgeRole.HEM)]
    hems = [the_edge(piece, EdgeRole.HEM) for piece in found]
    if not found or any(hem.sewn is not None or hem.kind is not EdgeKind.HEM for hem in hems):
        raise DraftError(
            "a turned cuff lies on the plain hem of a sleeve, and this sleeve has none",
            turn="leave out turned_cuff, or the sleeve's fullness, cuff or elastic",
        )
    return tuple(sorted(found, key=lambda piece: order.index(piece.role)))


def _width_at(piece: Piece, depth: float) -> float:
    """Return how wide a sleeve's piece is `depth` mm up both its sides from the hem.

    Raises `DraftError` where a side is not so long.
    """
    at = piece.index(the_edge(piece, EdgeRole.HEM).name)
    ring = (*piece.edges[at + 1 :], *piece.edges[:at])
    after, before = list[Path](), list[Path]()
    for edges, found in ((ring, after), (ring[::-1], before)):
        for edge in edges:
            if edge.role not in SIDES:
                break
            found.append(edge.path)
    up = Path.joined(after), Path.joined(path.reversed() for path in before)
    least = min(path.length for path in up)
    if depth > 0.8 * least:
        raise DraftError(
            "a turned cuff reaches up to the sleeve's cap",
            value=f"{told(depth)} deep on a sleeve of {told(least)} below it",
            reach=f"up to {told(0.8 * least, 'most')}",
            turn="choose a lesser turned_cuff",
        )
    return abs(up[0].at(depth) - up[1].at(depth))


def _cuff(low: float, high: float, depth: float) -> Piece:
    """Return the cuff, a part of a ring: `low` mm at the sleeve's end, `high` at its far edge."""
    bend = (high - low) / depth
    if bend > MOST:
        raise DraftError(
            "a turned cuff that spreads so much would lie over itself on the cloth",
            value=f"{told(high)} at its edge and {told(low)} at the sleeve, {told(depth)} deep",
            reach=f"up to {told(low + MOST * depth, 'most')} at its edge",
            turn="choose a lesser turned_cuff_spread, or a deeper turned_cuff",
        )
    if abs(bend) < STRAIGHT:
        a, b = complex(low / 2, 0), complex(-low / 2, 0)
        sleeve, far = line(a, b), line(b - 1j * depth, a - 1j * depth)
    else:
        right, near, degrees = -1j * cmath.exp(0.5j * bend), low / bend, math.degrees(bend)
        sleeve = arc(0j, near * right, -degrees)
        far = arc(0j, -(near + depth) * right.conjugate(), degrees)
    edges = (
        Edge("sleeve", sleeve),
        Edge("start", line(sleeve.end, far.start)),
        Edge("far", far),
        Edge("end", line(far.end, sleeve.start)),
    )
    roll = Placement("roll_line", sleeve, "roll line")
    return Piece(
        "turned-cuff", edges, pair=True, copies=2, title="Turned cuff", placements=(roll,), role=PieceRole.CUFF
    )


def _own_seams(cuff: Piece, *, opens: bool) -> Iterator[Seam]:
    """Yield the seams of a cuff's two layers: round the ends of one that opens, else each to a ring first."""
    if opens:
        for name in ("start", "far", "end"):
            yield twin_seam(f"turned cuff {name}", cuff, name)
        return
    start, end = ((cuff.name, "start"),), ((cuff.name, "end"),)
    yield Seam("turned cuff closed", start, end, start=None, end=None, kind=SeamKind.MADE_UP)
    yield twin_seam("turned cuff far", cuff, "far")


def _to_sleeve(cuff: Piece, hems: tuple[EdgeRef, ...]) -> Seam:
    return Seam("turned cuff", ((cuff.name, "sleeve"),), hems, start=None, end=None, kind=SeamKind.ATTACHED)


def _said(choices: Choices, cuff: Piece, *, opens: bool) -> Finding:
    way = "stands open at the vent" if opens else "is closed all round"
    degrees = math.degrees(abs((cuff["far"].length - cuff["sleeve"].length) / choices.turned_cuff))
    said = (
        f"The turned cuff {way}; its upper edge is {told(cuff['far'].length)}, {told(choices.turned_cuff_spread)} "
        f"wider than the sleeve there (a ring of {degrees:.0f} degrees). The sleeve's length counts to the fold; "
        f"cut the visible layer {told(2.0, 'fine')} larger round its free edges, for the turn of the cloth."
    )
    return Finding("turned cuff", "note", "turned-cuff", cuff["far"].length, None, said)
