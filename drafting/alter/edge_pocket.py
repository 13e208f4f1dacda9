"""A slant pocket and a pocket in a seam put into a draft: bags, back, stay, notches, marks, seams. Mm."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from drafting.draft.balance import facing_places
from drafting.draft.by_role import lies_before
from drafting.draft.draft import Draft, EdgeRef, Seam, SeamNotch
from drafting.draft.named import edge_named
from drafting.draft.piece import NAMED_MARK, Edge, EdgeKind, Notch, Piece, Placement
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.geometry import Path, line
from drafting.geometry.offset import line_beside
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.names import name_in_words
from drafting.reading.pockets import PocketWish
from drafting.shaping.details.edge_pockets import (
    BAG_WIDE,
    MOUTH_ENDS,
    EdgePocket,
    in_seam,
    marked_on_partner,
    slant,
)
from drafting.shaping.details.small_pieces import interfacing_notion
from drafting.shaping.details.welt_pocket import TURNED

STAY, OVER = 20.0, 3.0
"""mm: how wide the stay along a mouth is, and how far it reaches past the line (common practice: 20 to 25, 3)."""

OPENED = frozenset(
    {SeamKind.PLAIN, SeamKind.SIDE, SeamKind.PANEL, SeamKind.PRINCESS, SeamKind.CENTRE, SeamKind.INSEAM}
)
"""Seams that a pocket may lie in."""

SEAM_BAG, SEAM_BACK = "seam pocket", "seam pocket back"
"""Marks of the bag on the front lip of a mouth in a seam, and of the back on the lip behind."""


def edge_pocket(draft: Draft, piece: Piece, wish: PocketWish) -> EdgePocket:
    """Return where a slant or in-seam pocket lies on its piece; raises `DraftError` where it finds no room."""
    if wish.kind == "slant":
        return slant(piece, *_slant_edges(draft, piece, wish), wish.width, wish.height)
    middle = wish.along * edge_named(piece, wish.edge).length
    return in_seam(piece, wish.edge, middle, wish.width, wish.height)


def with_edge_pocket(draft: Draft, piece: Piece, wish: PocketWish, number: int) -> Draft:
    """Return the draft with a slant or in-seam pocket; its front bag is of the cloth asked, or of the lining's."""
    pocket, name = edge_pocket(draft, piece, wish), f"pocket-{number}"
    cloth = bag_cloth(draft, wish)
    if wish.kind == "slant":
        return _with_slant(draft, piece, wish, pocket, (name, cloth))
    return _with_in_seam(draft, piece, wish, pocket, (name, cloth))


def bag_cloth(draft: Draft, wish: PocketWish) -> str:
    """Return the role of a bag's cloth: as asked, else the lining's where there is one, else the garment's."""
    return wish.bag or ("lining" if any(other.cut_from == "lining" for other in draft.pieces) else "")


def _slant_edges(draft: Draft, piece: Piece, wish: PocketWish) -> tuple[str, str]:
    """Return the upper edge that a slant mouth begins on, and the seam that it ends in: one is named, the other
    its neighbour (of two seams, the nearer). A wearer's darts may part the upper edge, so the seam is safer.
    """
    at = piece.index(wish.edge)
    ends = {0.0: piece.edges[at - 1], 1.0: piece.edges[(at + 1) % len(piece.edges)]}
    sewn = {ref for seam in draft.seams if seam.kind in OPENED for ref in (*seam.a, *seam.b)}
    if (piece.name, wish.edge) in sewn:
        path = piece.edges[at].path
        upper = ends[float(path.end.imag > path.start.imag)]
        across = upper.path.end - upper.path.start
        if abs(across.imag) > abs(across.real):
            raise DraftError(
                f"the {name_in_words(f'{piece.name}.{wish.edge}')} does not reach up to the waist",
                turn="take another kind of pocket, or leave the side closed up to the waist",
            )
        return upper.name, wish.edge
    found = {share: edge.name for share, edge in ends.items() if (piece.name, edge.name) in sewn}
    if not found:
        raise DraftError(
            f"the {name_in_words(f'{piece.name}.{wish.edge}')} has no seam beside it for the mouth to end in",
            turn="name the side seam, or the part of the waist that meets it",
        )
    return wish.edge, found[min(found, key=lambda share: abs(share - wish.along))]


def _with_slant(draft: Draft, piece: Piece, wish: PocketWish, pocket: EdgePocket, made: tuple[str, str]) -> Draft:
    (name, cloth), (upper_edge, beside) = made, _slant_edges(draft, piece, wish)
    mouth = Placement(f"{name} mouth", pocket.mouth, NAMED_MARK)
    marks = (
        mouth,
        Placement(f"{name}-bag", pocket.bag, "pocket mouth", piece=f"{name}-bag"),
        Placement(f"{name}-back", pocket.whole, "pocket back", piece=f"{name}-back"),
    )
    upper, side = _like("waist", piece[upper_edge]), _like("side", piece[beside])
    below = {"low": replace(side, name="low"), "round": Edge("round", pocket.round), "top": upper}
    drawn = {"low": pocket.low, "round": pocket.round, "top": pocket.top}
    under = {key: replace(edge, name=key, path=drawn[key]) for key, edge in below.items()}
    open_ = Edge("mouth", pocket.mouth, EdgeKind.FREE, allowance=TURNED)
    filled = replace(upper, path=pocket.corner[0]), replace(side, path=pocket.corner[1])
    bag = _piece(piece, f"{name}-bag", (open_, *under.values()), cloth).mirrored()
    back = _piece(piece, f"{name}-back", (*filled, *under.values()), "")
    back = replace(back, placements=(*back.placements, replace(mouth, name="mouth of the pocket")))
    return _put_in(draft, {piece.name: marks}, (bag, back, _stay(piece, name, pocket)), (piece, wish, pocket))


def _like(name: str, edge: Edge) -> Edge:
    """Return a free edge with the allowance of the garment's own edge that it is caught with."""
    wide = edge.allowance if edge.allowance is not None else TURNED
    return Edge(name, edge.path, EdgeKind.FREE, allowance=wide)


def _with_in_seam(
    draft: Draft, piece: Piece, wish: PocketWish, pocket: EdgePocket, made: tuple[str, str]
) -> Draft:
    ref = piece.name, wish.edge
    seam = _seam_of(draft, ref)
    middle = wish.along * draft.edge(ref).length
    ends = [facing_places(draft, seam, ref, middle + way * wish.width / 2) for way in (-1, 1)]
    ends.sort()
    notches = [SeamNotch(f"{made[0]} mouth {i}", *place) for i, place in enumerate(ends, 1)]
    marked = replace(seam, notches=tuple(sorted((*seam.notches, *notches), key=lambda n: n.a)))
    other, at = _across(draft, seam, ref, facing_places(draft, seam, ref, middle), wish.width)
    partner = draft[other[0]]
    far = marked_on_partner(partner, other[1], at, wish.width, wish.height, pocket.drawn)
    along = Path.joined([pocket.top, pocket.mouth, pocket.low])
    places = pocket.top.length, pocket.top.length + pocket.mouth.length
    sewn = Edge(
        "seam",
        along,
        EdgeKind.FREE,
        allowance=TURNED,
        notches=tuple(Notch(f"mouth {i}", place) for i, place in enumerate(places, 1)),
    )
    edges = (sewn, Edge("round", pocket.round))
    notched = replace(draft, seams=tuple(marked if one is seam else one for one in draft.seams))
    lips = (piece, pocket), (partner, far)
    leads = lies_before(partner, piece) is not True
    put_in = _put_in(notched, *_lips(edges, lips if leads else lips[::-1], piece, made), (piece, wish, pocket))
    narrow = () if far.drawn == pocket.drawn else (_narrow(piece, partner, far, leads),)
    return put_in + Draft((), (), findings=narrow)


def _lips(
    edges: tuple[Edge, ...], lips: tuple[tuple[Piece, EdgePocket], ...], asked: Piece, made: tuple[str, str]
) -> tuple[dict[str, tuple[Placement, ...]], tuple[Piece, Piece, Piece]]:
    """Return the marks of an in-seam pocket and its parts: the bag on the front lip, which is stayed (it is what
    a hand pulls at: common practice), the back on the lip behind. `edges` are drawn on the piece that was `asked`.
    """
    (name, cloth), ((front, before), (rear, behind)) = made, lips
    bag, back = (
        _piece(asked, f"{name}-{part}", edges, own, lip)
        for part, own, lip in (("bag", cloth, front), ("back", "", rear))
    )
    bag, back = (bag.mirrored(), back) if front is asked else (bag, back.mirrored())
    marks: dict[str, tuple[Placement, ...]] = {
        front.name: (Placement(bag.name, before.bag, SEAM_BAG, piece=bag.name),),
        rear.name: (Placement(back.name, behind.bag, SEAM_BACK, piece=back.name),),
    }
    return marks, (bag, back, _stay(front, name, before))


def _narrow(piece: Piece, partner: Piece, far: EdgePocket, leads: bool) -> Finding:
    """Tell that what is sewn to the partner of a pocket's seam reaches past it while it is sewn."""
    narrow, behind = name_in_words(partner.name), name_in_words(piece.name)
    over = f"press it over behind the {behind}" if leads else "fold it back over its own seam"
    said = (
        f"The {'back' if leads else 'bag'} of the pocket is wider than the {narrow} that it is sewn to, and is "
        f"marked there as far as it goes: {over} before the next seam of the {narrow} is sewn."
    )
    return Finding("pocket", "note", partner.name, far.drawn[0], 1.0, said)


def _seam_of(draft: Draft, ref: EdgeRef) -> Seam:
    """Return the seam that a pocket lies in; raises `DraftError` where there is none that takes one."""
    for seam in draft.seams:
        if ref in (*seam.a, *seam.b) and seam.kind in OPENED and seam.a != seam.b:
            return seam
    raise DraftError(
        f"the {name_in_words('.'.join(ref))} is no seam between two pieces that a pocket could lie in",
        turn="name a side or a panel seam",
    )


def _across(
    draft: Draft, seam: Seam, ref: EdgeRef, at: tuple[float, float], width: float
) -> tuple[EdgeRef, float]:
    """Return the edge on the other side of a seam, and the middle of a mouth on it (mm from its start).

    Raises `DraftError` where the mouth with its ends runs over the end of that edge: into a dart, or a corner.
    """
    chain, left = (seam.b, at[1]) if ref in seam.a else (seam.a, at[0])
    reach = MOUTH_ENDS + width / 2
    for other in chain:
        edge = draft.edge(other)
        if left <= edge.length or other == chain[-1]:
            if not reach <= left <= edge.length - reach:
                raise DraftError(
                    f"the mouth of the pocket runs over an end of the {name_in_words('.'.join(other))}, which it "
                    "is sewn to",
                    value=told(width),
                    reach=f"up to {told(max(0.0, edge.length - 2 * MOUTH_ENDS), 'most')} along that edge",
                    turn="make it shorter, or move it along the edge, away from the dart or corner there",
                )
            return other, edge.length - left if chain is seam.b else left
        left -= edge.length
    raise AssertionError("a seam has two sides")


def _piece(piece: Piece, name: str, edges: tuple[Edge, ...], cloth: str, on: Piece | None = None) -> Piece:
    """Return a part of a pocket, its ring turned anticlockwise, cut as often as the piece; it is sewn `on` one."""
    if Path.joined(edge.path for edge in edges).area < 0:
        edges = tuple(_turned_round(edge) for edge in reversed(edges))
    return Piece(
        name,
        edges,
        grain=piece.grain,
        stretch=piece.stretch,
        pair=piece.pair or piece.fold_edge is not None,
        hand=piece.hand,
        title=f"{name.replace('-', ' ').capitalize()}, for the {(on or piece).title or (on or piece).name}",
        copies=piece.copies,
        role=PieceRole.POCKET,
        cloth=cloth,
    )


def _turned_round(edge: Edge) -> Edge:
    notches = tuple(replace(n, at=edge.length - n.at) for n in reversed(edge.notches))
    return replace(edge, path=edge.path.reversed(), notches=notches)


def _stay(piece: Piece, name: str, pocket: EdgePocket) -> Piece:
    """Return the strip of interfacing along the mouth, on the side of the bag."""
    mouth = pocket.mouth
    inner = pocket.bag.area > 0  # the bag lies to the left of the mouth
    near, far = (line_beside(mouth, by if inner else -by) for by in (OVER, -STAY))
    ends = line(near.end, far.end), line(far.start, near.start)
    paths = {"near": near, "bottom": ends[0], "far": far.reversed(), "top": ends[1]}
    edges = tuple(
        Edge(key, path, EdgeKind.FREE, role=EdgeRole.SHORT, allowance=0.0) for key, path in paths.items()
    )
    drawn = _piece(piece, f"{name}-stay", edges, "")
    return replace(drawn, material="interfacing", stiffens=(piece.name,))


def _put_in(
    draft: Draft,
    marks: Mapping[str, tuple[Placement, ...]],
    parts: tuple[Piece, Piece, Piece],
    asked: tuple[Piece, PocketWish, EdgePocket],
) -> Draft:
    """Return the draft with the parts of a pocket, its marks, the seam of its bags, what is to be said."""
    bag, back, stay = parts
    marked = [replace(draft[on], placements=(*draft[on].placements, *more)) for on, more in marks.items()]
    bags = Seam(
        bag.name.replace("-", " "),
        ((bag.name, "round"),),
        ((back.name, "round"),),
        start=None,
        end=None,
        kind=SeamKind.BAG,
    )
    return draft.with_pieces(marked) + Draft(
        parts, (bags,), findings=tuple(_said(*asked)), notions=(interfacing_notion(stay),)
    )


HAND = 140.0
"""mm: a slant or in-seam mouth shorter than this takes no grown hand (common practice: 150 to 170)."""


REACHED = 350.0
"""mm below the waist from which a mouth's middle is out of a standing hand's reach (ours: half-way down the thigh
of an adult; common practice: 150 to 220)."""


def _said(piece: Piece, wish: PocketWish, pocket: EdgePocket) -> Iterator[Finding]:
    on = name_in_words(piece.name)
    if min(pocket.drawn) < 1:
        size = f"{told(BAG_WIDE * pocket.drawn[0])} wide and {told(pocket.deep)} deep below its mouth"
        said = f"The bag of the pocket is drawn in to {size}, so that it lies inside the {on}."
        yield Finding("pocket", "note", piece.name, min(pocket.drawn), 1.0, said)
    if pocket.mouth.length < HAND:
        said = f"A mouth of {told(pocket.mouth.length)} takes no grown hand; {told(HAND)} and more do."
        yield Finding("pocket", "note", piece.name, pocket.mouth.length, HAND, said)
    middle = pocket.mouth.at(pocket.mouth.length / 2).imag
    waist = [edge.path.start.imag for edge in piece.edges if edge.role is EdgeRole.WAIST]
    if waist and (below := max(waist) - middle) > REACHED:
        said = (
            f"The pocket's mouth lies {told(below)} below the waist, where no hand reaches. `along` counts along "
            f"the {name_in_words(wish.edge)} from its start: {1 - wish.along:.2g} is as far from the other end."
        )
        yield Finding("pocket", "warning", piece.name, below, REACHED, said)
