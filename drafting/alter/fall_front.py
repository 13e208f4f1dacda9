r"""Fall front: the fronts of a trouser open as one flap, buttoned up over two bearers that carry the waistband.

Each side seam stays open for the depth of the fall. The fall is faced with its own shape along its top and sides;
the bearers, of the same shape, are sewn to the waistband above and to the back at the side, and meet on the middle
beneath the fall. So the waist is as long as before, and nothing of the leg changes.

       waistband ......                  waistband sewn on
     .--o-------o--.  fall, faced      .--------------.
     |             :                   |    bearer    :  turned in
     | slit        : centre       side |              : centre
     |             :                   '--------------'  lower
      side          crotch
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.draft.by_role import edge_as, edges_as, piece_as, the_edge
from drafting.draft.draft import Draft, EdgeRef, Seam
from drafting.draft.one_value import the_smaller
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.geometry import line
from drafting.ground.choices import choice
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.scale import body_scale
from drafting.ground.sources import practice
from drafting.shaping.details.buttons import Button, button_mark, button_notion, hole_mark
from drafting.shaping.details.small_pieces import interfacing, interfacing_notion, turned_under
from drafting.shaping.shared_choices import BUTTON_SHAPE, BUTTON_THICKNESS, FALL_FRONT
from drafting.shaping.torso.dart_mouth import dart_seams
from drafting.shaping.trouser.fly import centre_front, fly_room
from drafting.shaping.trouser.notches import crotch_seam

OPEN, TURNED = "fall_side", 15.0
"""What both sides of the opening are called; mm turned in along a bearer's free edges (common
practice: 15 to 20)."""

DOWN, FROM_SIDE, FROM_CENTRE = 16.0, 20.0, 35.0
"""mm at adult scale: how far below its top, from its side and from the middle the fall is buttoned (ours, by
eye: a button's width clear of the edge)."""

APART = 180.0
"""mm at adult scale: farther from each other stand no two buttons of one hand (ours, by eye: a fall gapes between
buttons farther apart than a hand is long)."""

MOST = 0.5
"""Of the side seam: how far down a fall reaches at most (ours)."""

SHARED = {"fall_depth": the_smaller("fall_depth")}
"""A fall is as deep on both hands: its facing is sewn together on the middle."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about a fall front, in mm."""

    fall_front: bool = FALL_FRONT
    fall_depth: float = choice(
        200.0,
        "mm",
        "from the waist down to where the side is closed; no less than the hip needs to pass",
        low=80,
        high=400,
        step=5,
        scales=True,
        group="fly",
        source=practice("⟨180⟩ to ⟨230⟩, as far as a fly"),
    )
    fall_button: float = choice(
        18.0,
        "mm",
        "diameter of the buttons of the fall",
        low=8,
        high=40,
        scales=True,
        of_hand=True,
        group="fly",
        source=practice("⟨15⟩ to ⟨20⟩"),
    )
    button_thickness: float = BUTTON_THICKNESS
    button_shape: str = BUTTON_SHAPE


def fall_front(draft: Draft, body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the draft with its fronts opened as a fall over bearers, or as it is where none is asked for.

    Raises `DraftError` where there is no trouser front that opens at the waist.
    """
    if not choices.fall_front:
        return draft
    front, back = (piece_as(draft, role) for role in (PieceRole.FRONT, PieceRole.BACK))
    if front is None or back is None or not edge_as(front, EdgeRole.FLY):
        raise DraftError(
            "there is no front that opens at the waist for a fall", turn="choose waist_finish = waistband"
        )
    scale = body_scale(body)
    depth = _depth(draft, front, choices, scale)
    front, back = _closed_in_front(_opened(front, depth)), _opened(back, depth)
    button = Button(choices.fall_button, choices.button_thickness, choices.button_shape)
    bearer, facing = _under(front, depth, "bearer"), _under(front, depth, "fall-facing").mirrored()
    spots = _spots(front, scale)
    holes = [hole_mark(f"fall_hole_{i}", at, 1j, button.hole) for i, at in enumerate(spots, 1)]
    buttons = [button_mark(f"fall_button_{i}", at, button.diameter) for i, at in enumerate(spots, 1)]
    front = replace(front, placements=(*front.placements, *holes))
    bearer = replace(bearer, placements=(*bearer.placements, *buttons))
    stiff = interfacing(facing, bare=("lower",))
    opened = _carried(draft.with_pieces([front, back]), front.name, bearer, depth)
    return opened + Draft(
        (bearer, facing, stiff),
        (*_seams(front, back, facing, bearer), *dart_seams(bearer), *dart_seams(facing)),
        findings=(_said(depth, len(spots)),),
        facts={"fall_depth": depth, "fly": depth},
        notions=(button_notion(bearer.name, 2 * len(spots), button), interfacing_notion(stiff)),
    )


def _depth(draft: Draft, front: Piece, choices: Choices, scale: float) -> float:
    """Return how deep the fall gets: as asked, within what the hip needs and the crotch's curve and side allow."""
    girths = {girth.level: girth for girth in draft.girths}
    waist, hip = girths["waist"], girths["hip"]
    needed = (hip.body - waist.body - waist.settled_ease) / 2
    room = fly_room(centre_front(front), choices.fall_depth, needed)
    return min(max(choices.fall_depth, needed), room, MOST * the_edge(front, EdgeRole.SIDE).length)


def _opened(leg: Piece, depth: float) -> Piece:
    """Return a leg whose side is parted `depth` mm below the waist: the upper part is the side of the fall."""
    side = the_edge(leg, EdgeRole.SIDE)
    rises = side.path.end.imag > side.path.start.imag
    low, high = side.path.split(side.length - depth) if rises else side.path.split(depth)[::-1]
    lower, upper = replace(side, path=low), replace(side, name=OPEN, path=high)
    if leg.role is PieceRole.FRONT:
        upper = replace(upper, role=EdgeRole.PLAIN)
    parts = (lower, upper) if rises else (upper, lower)
    return replace(leg, edges=tuple(one for e in leg.edges for one in (parts if e is side else (e,))))


def _closed_in_front(front: Piece) -> Piece:
    """Return the front with its crotch seam up to the waist, and a waist that is faced."""
    fly, crotch = the_edge(front, EdgeRole.FLY), the_edge(front, EdgeRole.CROTCH)
    whole = replace(crotch, path=centre_front(front))
    kept = (whole if e is crotch else e for e in front.edges if e is not fly)
    return replace(
        front,
        edges=tuple(replace(e, kind=EdgeKind.SEAM) if e.role is EdgeRole.WAIST else e for e in kept),
        placements=tuple(mark for mark in front.placements if mark.what != "stitching"),
    )


def _under(front: Piece, depth: float, name: str) -> Piece:
    """Return the part of a front above the fall's depth: a bearer, or the facing of the fall."""
    crotch = the_edge(front, EdgeRole.CROTCH)
    centre, _ = crotch.path.split(depth)
    start = front.index(OPEN)
    ring = [*front.edges[start:], *front.edges[:start]]
    top = ring[: next(i for i, e in enumerate(ring) if e.name == crotch.name)]
    bearer = name == "bearer"
    across = line(centre.end, top[0].path.start)
    end, lower = Edge("centre", centre), Edge("lower", across, EdgeKind.FREE, allowance=turned_under(1.0))
    if bearer:
        end, lower = (replace(e, kind=EdgeKind.HEM, allowance=TURNED) for e in (end, lower))
    side = replace(top[0], role=EdgeRole.SIDE if bearer else EdgeRole.PLAIN)
    return Piece(
        name,
        (side, *(replace(e, notches=()) for e in top[1:]), end, lower),
        grain=front.grain,
        stretch=front.stretch,
        pair=True,
        title=name.replace("-", " ").capitalize(),
        role=PieceRole.BEARER if bearer else PieceRole.FACING,
        lines=(front.name,),
    )


def _spots(front: Piece, scale: float) -> list[complex]:
    """Return where the fall of one hand is buttoned: near its side, near the middle, and between them where the
    front is wide."""
    waists = edges_as(front, EdgeRole.WAIST)  # from the side to the middle
    first, last = waists[0].path, waists[-1].path
    whole = sum(edge.length for edge in waists)
    side = min(FROM_SIDE * scale, first.length / 2)
    middle = whole - min(FROM_CENTRE * scale, last.length / 2)
    gaps = max(1, math.ceil((middle - side) / (APART * scale) - 1e-9))
    places = (side + (middle - side) * i / gaps for i in range(gaps + 1))
    return [_along(waists, place) - 1j * DOWN * scale for place in places]


def _along(edges: Sequence[Edge], place: float) -> complex:
    """Return the point `place` mm along edges that run on one after the other, their darts closed."""
    for edge in edges[:-1]:
        if place <= edge.length:
            return edge.path.at(place)
        place -= edge.length
    return edges[-1].path.at(min(place, edges[-1].length))


def _carried(draft: Draft, front: str, bearer: Piece, depth: float) -> Draft:
    """Return the draft with what was sewn to the front's waist sewn to the bearers, the side shorter by the fall,
    and the crotch seam closed in front."""
    waist = {(front, e.name): (bearer.name, e.name) for e in edges_as(bearer, EdgeRole.WAIST)}

    def moved(refs: tuple[EdgeRef, ...]) -> tuple[EdgeRef, ...]:
        return tuple(waist.get(ref, ref) for ref in refs)

    seams = []
    for seam in draft.seams:
        if seam.kind is SeamKind.CROTCH and seam.a[0][0] == front:
            seams.append(crotch_seam(draft[front]))
        elif seam.kind is SeamKind.SIDE:
            seams.append(_shorter(draft, seam, depth))
        else:
            seams.append(replace(seam, a=moved(seam.a), b=moved(seam.b)))
    return replace(draft, seams=tuple(seams), chains={name: moved(refs) for name, refs in draft.chains.items()})


def _shorter(draft: Draft, seam: Seam, depth: float) -> Seam:
    """Return the side seam without what the fall leaves open at its upper end."""
    path = draft.edge(seam.a[0]).path
    if path.end.imag > path.start.imag:  # it starts at the hem
        length = sum(draft.edge(ref).length for ref in seam.a)
        return replace(seam, end=None, notches=tuple(n for n in seam.notches if n.a < length - 1.0))
    kept = [replace(n, a=n.a - depth, b=n.b - depth) for n in seam.notches if n.a > depth + 1.0]
    return replace(seam, start=None, notches=tuple(kept))


def _seams(front: Piece, back: Piece, facing: Piece, bearer: Piece) -> Iterator[Seam]:
    tops = [e.name for e in edges_as(front, EdgeRole.WAIST)]
    own = {"start": None, "end": None}

    def seam(name: str, one: Piece, other: Piece, edges: list[str], kind: SeamKind) -> Seam:
        a, b = (tuple((piece.name, edge) for edge in edges) for piece in (one, other))
        return Seam(name, a, b, start=own["start"], end=own["end"], kind=kind)

    yield seam("fall facing centre", facing, facing, ["centre"], SeamKind.FACING)
    yield seam("fall facing side", front, facing, [OPEN], SeamKind.FACING)
    yield seam("fall facing top", front, facing, tops, SeamKind.FACING)
    yield seam("bearer side", bearer, back, [OPEN], SeamKind.SIDE)


def _said(depth: float, count: int) -> Finding:
    return Finding(
        "fall",
        "note",
        "front",
        depth,
        None,
        f"The fall opens {told(depth)} down both sides and is buttoned with {2 * count} buttons to the bearers, "
        "which meet beneath it and carry the waistband; bar the foot of each opening.",
    )
