r"""Pockets of a piece: patch, flap, welt, slant or in-seam, each with its outline marked where it belongs.

A patch has its top turned in and stitched before it is sewn on along its sides and bottom. A flap is cut
twice, sewn together round its free edges, turned, and sewn on along its top, upwards, then pressed down.
A welt stands over a mouth that is cut into the piece (`shaping/details/welt_pocket`); a slant or in-seam pocket's
mouth lies at an edge (`alter/edge_pocket`). Where one hand alone has it, it is cut once and its marks say whose.

       top                    top
    .-------.              .-------.
    | patch |              | flap  |
    |       |               '-----'
     '-----'
"""

from __future__ import annotations

import cmath
from collections.abc import Iterator
from dataclasses import replace

from drafting.alter.edge_pocket import bag_cloth, edge_pocket, with_edge_pocket
from drafting.draft.draft import Draft, Seam
from drafting.draft.named import edge_named, piece_named
from drafting.draft.piece import Edge, EdgeKind, Piece, Placement
from drafting.draft.roles import PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.fabric.sorts import Sort
from drafting.geometry import Path, line
from drafting.geometry.arc import arc
from drafting.geometry.area import outside
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.names import name_in_words
from drafting.reading.pockets import BAGGED, ON_EDGE, PocketWish
from drafting.shaping.details.moved_pocket import MovedPocket, moved_said, moved_to_fit
from drafting.shaping.details.small_pieces import interfacing, interfacing_notion
from drafting.shaping.details.welt_pocket import Welt, with_welt

TOP_TURNED, TURNED = 30.0, 10.0
"""mm: a patch's top is turned in by the first, its other edges by the second (common practice: 25 to 40, 10)."""

ROUNDED, POINTED = 0.18, 0.14
"""Of the width: the radius of a round corner, and how far a point reaches below the corners (ours, by eye)."""

HAND = 110.0
"""mm: an opening narrower than this takes no grown hand; a note says so (common practice: the hand and 20)."""

CLEAR = 3.0
"""mm: a pocket keeps so far off the stitching line (ours)."""


def with_pocket(draft: Draft, wish: PocketWish, number: int, fabric: Fabric | None = None) -> Draft:
    """Return the draft with the pocket marked on its piece and its own pieces to cut; `fabric` is the garment's.

    Raises `DraftError` for a piece or edge that there is not, and for a pocket that sticks out, unless it gives
    way and can be moved.
    """
    piece = piece_named(draft, wish.piece)
    edge = edge_named(piece, wish.edge)
    made = _with(draft, piece, wish, number)
    made = replace(made, findings=(*made.findings, *_bulk_said(draft, wish, fabric)))
    return _on_one_hand(draft, made, piece, wish) if wish.hand and not (piece.hand or edge.hand) else made


BULKY: frozenset[Sort] = frozenset({"pile", "napped", "felted", "coated", "sequinned"})
"""Sorts of cloth that a bag is not cut from (common practice: it lies double inside, and a hand goes into it)."""

THICK = 1.2
"""mm: no more does cloth of a bag measure (ours; pocketing is 0.3 to 0.5, from memory)."""


def _bulk_said(draft: Draft, wish: PocketWish, fabric: Fabric | None) -> Iterator[Finding]:
    """Yield what is said of a bag that is cut from a thick or a rough cloth, for want of another."""
    if fabric is None or wish.kind not in BAGGED or bag_cloth(draft, wish):
        return
    if BULKY & set(fabric.possible_sorts) or (fabric.thickness or 0.0) > THICK:
        yield Finding(
            "pocket bag",
            "warning",
            wish.piece,
            fabric.title,
            None,
            f"The bag of the {wish.kind} pocket on the {name_in_words(wish.piece)} is cut from {fabric.title}, "
            "which lies thick inside: cut it from firm pocketing. Name that cloth under [fabrics], and its role "
            'here, as in bag = "pocketing".',
        )


def _with(draft: Draft, piece: Piece, wish: PocketWish, number: int) -> Draft:
    """Return the draft with the pocket on both hands of its piece."""
    if wish.kind in ON_EDGE:
        return with_edge_pocket(draft, piece, wish, number)
    moved = _fitted(draft, piece, wish)
    said = () if moved.wish == wish and not moved.shift else (moved_said(piece, wish, moved),)
    draw = _welted if wish.kind == "welt" else _sewn_on
    made = draw(draft, piece, moved, number)
    return replace(made, findings=(*made.findings, *said))


def _fitted(draft: Draft, piece: Piece, wish: PocketWish) -> MovedPocket:
    """Return the pocket where it lies inside its piece: as asked, or moved if it gives way.

    Raises `DraftError` where it sticks out.
    """
    path = pocket_line(draft, piece, wish)
    if path.area > 1.0 and outside(path, piece.outline) <= CLEAR / 2:
        return MovedPocket(wish)
    moved = None
    if wish.gives_way and path.area > 1.0:
        moved = moved_to_fit(piece, wish, lambda one: pocket_line(draft, piece, one), CLEAR / 2)
    if moved is None:
        raise DraftError(
            f"the pocket on the {wish.piece} sticks out over its stitching line",
            value=f"{told(wish.width)} x {told(wish.height)}, {told(wish.inside)} inside the {wish.edge}",
            turn="make it smaller or move it",
        )
    return moved


def _sewn_on(draft: Draft, piece: Piece, moved: MovedPocket, number: int) -> Draft:
    """Return the draft with a patch or a flap."""
    wish = moved.wish
    edges = _on_piece(piece, moved)
    drawn = _pocket(piece, edges, wish, number)
    mark = Placement(drawn.name, Path.joined(edge.path for edge in edges), "pocket", piece=drawn.name)
    marked = replace(piece, placements=(*piece.placements, mark))
    return draft.with_pieces([marked]) + _made(drawn, wish)


def _on_one_hand(draft: Draft, made: Draft, piece: Piece, wish: PocketWish) -> Draft:
    """Return the draft with what a pocket added cut for one hand alone, its marks said to be that hand's.

    Pieces are drawn as the left hand's, so those of the right are turned over.
    """
    if not piece.both_hands:
        raise DraftError(
            f"the {name_in_words(piece.name)} is cut once, so no hand has a pocket of its own",
            turn="leave out hand",
        )
    new = [one for one in made.pieces if one.name not in draft]
    pieces = {}
    for one in new:
        copies = one.copies if one.pair else max(1, one.copies // 2)
        single = replace(one, pair=False, copies=copies, hand=wish.hand)
        pieces[one.name] = single.mirrored() if wish.hand == "right" else single
    for old in draft.pieces:
        had = len(old.placements)
        own = made[old.name].placements
        marks = (*own[:had], *(replace(mark, hand=wish.hand) for mark in own[had:]))
        pieces[old.name] = replace(made[old.name], placements=marks) if len(own) > had else made[old.name]
    notions = (
        replace(n, count=pieces[n.piece].count) if n.piece in pieces and n.piece not in draft else n
        for n in made.notions
    )
    return replace(made.with_pieces(pieces.values()), notions=tuple(notions))


def pocket_line(draft: Draft, piece: Piece, wish: PocketWish) -> Path:
    """Return the outline of a pocket where it would lie on its piece, though it stick out."""
    edge_named(piece, wish.edge)
    if wish.kind in ON_EDGE:
        return edge_pocket(draft, piece, wish).bag
    if wish.kind == "welt":
        return _welt(piece, MovedPocket(wish), 1).outline
    return Path.joined(edge.path for edge in _on_piece(piece, MovedPocket(wish)))


def _welted(draft: Draft, piece: Piece, moved: MovedPocket, number: int) -> Draft:
    """Return the draft with a welt pocket and its bags."""
    welt = _welt(piece, moved, number)
    made = with_welt(draft, piece, welt, bag_cloth(draft, moved.wish))
    return made + Draft(findings=_narrow_said(made[welt.name], moved.wish))


def _welt(piece: Piece, moved: MovedPocket, number: int) -> Welt:
    wish = moved.wish
    return Welt(
        name=f"welt-{number}",
        title=f"Welt pocket {number}",
        top=_top(piece, wish) + moved.shift,
        width=wish.width,
        height=wish.height,
        tilt=wish.tilt,
    )


def _on_piece(piece: Piece, moved: MovedPocket) -> tuple[Edge, ...]:
    """Return the pocket's edges where it lies, level: its top last, so that it runs anticlockwise."""
    wish = moved.wish
    top = _top(piece, wish) + moved.shift
    w, h = wish.width / 2, wish.height
    runs = dict(_round(w, h, wish))
    runs["top"] = line(complex(w, 0), complex(-w, 0))
    return tuple(Edge(name, path.moved(top)) for name, path in runs.items())


def _top(piece: Piece, wish: PocketWish) -> complex:
    """Return the middle of the pocket's top on its piece."""
    edge = piece[wish.edge].path
    at = wish.along * edge.length
    inwards = 1j * cmath.rect(1.0, cmath.phase(edge.tangent(at)))
    return edge.at(at) + inwards * wish.inside


def _round(w: float, h: float, wish: PocketWish) -> Iterator[tuple[str, Path]]:
    """Yield the edges below the top, from its left corner round to its right one; the top lies on y = 0."""
    if wish.corners == "pointed":
        high = h - min(POINTED * wish.width, 0.4 * h)
        yield "left", line(complex(-w, 0), complex(-w, -high))
        yield "bottom_left", line(complex(-w, -high), complex(0, -h))
        yield "bottom_right", line(complex(0, -h), complex(w, -high))
        yield "right", line(complex(w, -high), complex(w, 0))
        return
    r = min(ROUNDED * wish.width, 0.45 * h) if wish.corners == "round" else 0.0
    if not r:
        yield "left", line(complex(-w, 0), complex(-w, -h))
        yield "bottom", line(complex(-w, -h), complex(w, -h))
        yield "right", line(complex(w, -h), complex(w, 0))
        return
    left = arc(complex(r - w, r - h), complex(-w, r - h), 90.0)
    right = arc(complex(w - r, r - h), complex(w - r, -h), 90.0)
    straight = line(complex(r - w, -h), complex(w - r, -h))
    yield "left", line(complex(-w, 0), complex(-w, r - h))
    yield "bottom", Path.joined([left, straight, right])
    yield "right", line(complex(w, r - h), complex(w, 0))


def _pocket(piece: Piece, edges: tuple[Edge, ...], wish: PocketWish, number: int) -> Piece:
    """Return the pocket as a piece of its own, on the grain of what it is sewn to."""
    patch = wish.kind == "patch"
    *below, top = edges
    free = [replace(edge, kind=EdgeKind.FREE, allowance=TURNED) if patch else edge for edge in below]
    turned = replace(top, kind=EdgeKind.FREE, allowance=TOP_TURNED if patch else TURNED)
    halves = 2 if piece.fold_edge is not None else 1
    return Piece(
        f"{wish.kind}-{number}",
        (*free, turned),
        grain=piece.grain,
        pair=piece.pair,
        hand=piece.hand,
        title=f"{'Patch pocket' if patch else 'Pocket flap'} {number}, for the {piece.title or piece.name}",
        copies=piece.copies * halves * (1 if patch else 2),
        role=PieceRole.POCKET,
    )


def _made(drawn: Piece, wish: PocketWish) -> Draft:
    """Return the pocket's pieces, the seams of a flap with its other layer, its interfacing, what is said."""
    said = _narrow_said(drawn, wish)
    if wish.kind == "patch":
        return Draft((drawn,), findings=said)
    stiff = interfacing(drawn, bare=("top",), copies=drawn.copies // 2)
    seams = tuple(
        Seam(
            f"{drawn.name} {edge.name.replace('_', ' ')}",
            ((drawn.name, edge.name),),
            ((drawn.name, edge.name),),
            start=None,
            end=None,
            kind=SeamKind.MADE_UP,
        )
        for edge in drawn.edges
        if edge.kind is EdgeKind.SEAM
    )
    return Draft((drawn, stiff), seams, notions=(interfacing_notion(stiff),))


def _narrow_said(drawn: Piece, wish: PocketWish) -> tuple[Finding, ...]:
    if wish.kind == "flap" or wish.width >= HAND:
        return ()
    return (
        Finding(
            "pocket",
            "note",
            drawn.name,
            wish.width,
            HAND,
            f"A pocket {told(wish.width)} wide takes no grown hand; {told(HAND)} and more do.",
        ),
    )
