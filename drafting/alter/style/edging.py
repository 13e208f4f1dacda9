r"""What is made for an edge: a facing cut from its own line, a bias binding, a straight band, a cuff.

A facing has the edge's own line and the ends of its neighbours. A binding is a bias strip as long as the edge,
turned inside whole; in a knit it is cut the way that gives most, and a little shorter. Band and cuff are folded
strips of the edge's length; a cuff closes into a ring. As a band is drawn, for an edge above it:

      .-------- sewn along the edge --------.
  far |- - - - - - - - fold - - - - - - - - | end
      '-------- inner, turned under --------'
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.alter.facings import facing_of_run
from drafting.alter.style.edge_runs import RunEnd, SewnRun, beside_edge, flat_parts, sewn_run
from drafting.alter.style.rings import free_name
from drafting.draft.by_role import the_edge
from drafting.draft.draft import Draft, EdgeRef, Seam, SeamNotch
from drafting.draft.piece import Edge, EdgeKind, Piece, Placement
from drafting.draft.roles import SLEEVES, EdgeRole, NotchKind, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.geometry import line
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.ground.names import name_in_words
from drafting.reading.style_made import EdgingWish
from drafting.shaping.details.band import band_grain
from drafting.shaping.details.bound_edges import BIAS, ENDS, strip_share
from drafting.shaping.details.joined_edges import name_of
from drafting.shaping.details.lapped_parts import lapped_parts, wide_parts_said
from drafting.shaping.details.small_pieces import TURNED_UNDER, interfacing, interfacing_notion

NARROWEST, WIDEST = 5.0, 400.0
"""mm: the least and the greatest width of what is made for an edge (ours)."""

QUARTERS = {"quarter": 0.25, "half": 0.5, "three quarters": 0.75}


def edged(draft: Draft, wish: EdgingWish, fabric: Fabric | None = None) -> Draft:
    """Return the draft with a strip made for edges that run on in one, sewn to them, cut the way `fabric` gives.

    Raises `DraftError` for an edge that is sewn to something, edges that lie apart, and a cuff on what is open.
    """
    if not NARROWEST <= wish.width <= WIDEST:
        raise DraftError(
            f"a {wish.kind} cannot be so wide",
            value=told(wish.width),
            reach=f"{told(NARROWEST, 'least')} to {told(WIDEST, 'most')}",
        )
    run = sewn_run(draft, wish.edges)
    if wish.name and wish.name in draft:
        raise DraftError(f"there is a piece {wish.name} already", turn="give the new one another name")
    made = (
        _faced(draft, run, wish) if wish.kind in ("facing", "hem facing") else _stripped(draft, run, wish, fabric)
    )
    return _ready(draft, run) + made


def _ready(draft: Draft, run: SewnRun) -> Draft:
    """Return the draft with the edges of a run as seams: what was turned up or left raw is sewn now."""
    pieces: dict[str, Piece] = {}
    for name, edge in run.refs:
        piece = pieces.get(name, draft[name])
        old = piece[edge]
        kind = old.kind if old.kind is EdgeKind.OPENING else EdgeKind.SEAM
        pieces[name] = piece.with_edges(replace(old, kind=kind, allowance=None, drops=0.0))
    return draft.with_pieces(pieces.values())


# ------------------------------------------------------------------------------------------ facings


def _faced(draft: Draft, run: SewnRun, wish: EdgingWish) -> Draft:
    """Return the facing of a run, one piece from seam to seam, with the seams between its pieces."""
    found: list[tuple[tuple[EdgeRef, ...], Piece]] = []
    for refs in flat_parts(draft, run):
        role = draft.edge(refs[0]).role
        piece = facing_of_run(draft, refs, role, wish.width)
        if piece is None:
            raise DraftError(
                f"the {name_in_words('.'.join(refs[0]))} leaves no room for a {wish.kind}",
                value=told(wish.width),
                turn="make it narrower, or face an edge that lies between seams long enough",
            )
        found.append((refs, _as_cut(draft, refs, piece, wish, [one.name for _, one in found])))
    pieces = [piece for _, piece in found]
    stiff = list(_stiff(draft, found)) if wish.interfacing else []
    seams = [
        _sewn_on(draft, (piece.name, name_of(refs, draft.edge(refs[0]).role)), refs, SeamKind.FACING)
        for refs, piece in found
    ]
    joined = tuple(_between(draft, found))
    sewn = {ref for seam in (*seams, *joined) for ref in (*seam.a, *seam.b)}
    return Draft(
        (*(_loose_ends(piece, sewn) for piece in pieces), *stiff),
        (*seams, *joined),
        findings=tuple(wide_parts_said(stiff)),
        notions=tuple(interfacing_notion(piece) for piece in stiff),
    )


def _stiff(draft: Draft, found: list[tuple[tuple[EdgeRef, ...], Piece]]) -> Iterator[Piece]:
    """Yield the interfacing of each facing, in parts where one would be wider than what is sold."""
    for refs, piece in found:
        yield from lapped_parts(interfacing(piece, bare=("inner",)), name_of(refs, draft.edge(refs[0]).role))


def _as_cut(draft: Draft, refs: tuple[EdgeRef, ...], piece: Piece, wish: EdgingWish, more: list[str]) -> Piece:
    own = draft[refs[0][0]]
    name = wish.name or f"{'-'.join(refs[0]).replace('_', '-')}-facing"
    half = piece.fold_edge is not None
    taken = (*more, *(one.name for one in draft.pieces))
    return replace(
        piece,
        name=free_name(name, taken).replace("_", "-"),
        pair=own.both_hands and not half,
        hand=own.hand,
        copies=own.copies,
        title=free_name(name, taken).replace("-", " ").replace("_", " ").capitalize(),
    )


def _loose_ends(piece: Piece, sewn: set[EdgeRef]) -> Piece:
    """Return a facing whose ends that meet no other facing are turned in, or caught in the seam there."""
    free = [e for e in piece.edges if e.kind is EdgeKind.SEAM and (piece.name, e.name) not in sewn]
    return piece.with_edges(*(replace(e, kind=EdgeKind.FREE, allowance=ENDS) for e in free))


def _between(draft: Draft, found: list[tuple[tuple[EdgeRef, ...], Piece]]) -> Iterator[Seam]:
    """Yield the seams where the garment's own seams run on through its facing: end to end, and to a mirror."""
    ends = [(ref, (piece.name, edge.name)) for refs, piece in found for ref, edge in _ends(draft, refs, piece)]
    for at, (one, mine) in enumerate(ends):
        for other, theirs in ends[at:]:
            sewn = any(
                (one in s.a and other in s.b) or (one in s.b and other in s.a)
                for s in draft.seams
                if (s.a == s.b) == (mine == theirs)
            )
            if sewn:
                name = f"{mine[0]} {mine[1]}".replace("-", " ").replace("_", " ")
                yield Seam(name, (mine,), (theirs,), start=None, end=None, kind=SeamKind.FACING)


def _ends(draft: Draft, refs: tuple[EdgeRef, ...], piece: Piece) -> Iterator[tuple[EdgeRef, Edge]]:
    """Yield each end of a facing with the edge of the garment that it copies; it lies turned over."""
    inner = piece.name, the_edge(piece, EdgeRole.INNER).name
    made = Draft((piece,))
    yield beside_edge(draft, refs[-1], 1), made.edge(beside_edge(made, inner, 1))
    yield beside_edge(draft, refs[0], -1), made.edge(beside_edge(made, inner, -1))


# ------------------------------------------------------------------------------------------- strips


@dataclass(frozen=True, slots=True)
class _Strip:
    """A straight strip: its sewn `length`, its `depth` of cloth, and whether its ends are folds or seams."""

    length: float
    depth: float
    start: RunEnd
    end: RunEnd
    turned: float


def _stripped(draft: Draft, run: SewnRun, wish: EdgingWish, fabric: Fabric | None) -> Draft:
    """Return a binding, band or cuff for a run, its interfacing, and its seams."""
    if wish.kind == "cuff" and not run.closed:
        raise DraftError(
            f"a cuff closes into a ring, and the {name_in_words('.'.join(run.refs[0]))} is open",
            turn="name every edge round the opening, or make a band",
        )
    length = sum(draft.edge(ref).sewn_length for ref in run.refs)
    folded = wish.kind != "binding"
    share = strip_share(fabric) if not folded else 1.0
    start, end = _halved(run)
    strip = _Strip(share * length, wish.width * (2 if folded else 1), start, end, TURNED_UNDER)
    grain = band_grain(fabric) if folded or share < 1 else BIAS
    piece = replace(_strip_piece(draft, run, wish, strip), grain=grain)
    stiff = [_half_stiff(piece, wish.width)] if folded and wish.interfacing else []
    kind = SeamKind.ATTACHED if folded else SeamKind.FACING
    own = _sewn_on(draft, (piece.name, "edge"), run.refs, kind)
    own = replace(own, notches=_quarters(draft, run, strip.length, length), ease=(share - 1) * length)
    return Draft(
        (piece, *stiff),
        (own, *_closing_seams(piece, strip, SeamKind.MADE_UP if folded else SeamKind.FACING)),
        notions=tuple(interfacing_notion(one) for one in stiff),
    )


def _halved(run: SewnRun) -> tuple[RunEnd, RunEnd]:
    """Return the ends of the strip: a mirrored one lies on the fold of the cloth, but no strip has two folds."""
    start, end = run.start, run.end
    if RunEnd.FOLD not in (start, end):
        start, end = (RunEnd.FOLD, end) if start is RunEnd.MIRROR else (start, end)
        end = RunEnd.FOLD if end is RunEnd.MIRROR and start is not RunEnd.FOLD else end
    return (start, RunEnd.MIRROR) if start is end is RunEnd.FOLD else (start, end)


def _strip_piece(draft: Draft, run: SewnRun, wish: EdgingWish, strip: _Strip) -> Piece:
    first = draft[run.refs[0][0]]
    name = wish.name or f"{'-'.join(run.refs[0]).replace('_', '-')}-{wish.kind}"
    name = free_name(name, (piece.name for piece in draft.pieces)).replace("_", "-")
    folded = wish.kind != "binding"
    on_sleeve = all(draft[piece].role in SLEEVES for piece, _ in run.refs)
    role = PieceRole.CUFF if on_sleeve and wish.kind == "cuff" else PieceRole.BAND
    middle = line(0 - 1j * wish.width, strip.length - 1j * wish.width)
    drawn = Piece(
        name,
        tuple(_ring(strip, folded)),
        pair=RunEnd.FOLD not in (strip.start, strip.end) and first.both_hands,
        hand=first.hand,
        title=name.replace("-", " ").capitalize(),
        placements=(Placement("fold", middle, "fold"),) if folded else (),
        copies=first.copies,
        role=role if folded else PieceRole.BINDING,
        lines=() if folded else tuple(dict.fromkeys(piece for piece, _ in run.refs)),
    )
    above = sum(((p := draft.edge(ref).path).end - p.start).real for ref in run.refs) < 0
    return drawn.mapped(lambda p: -p) if above else drawn


def _ring(strip: _Strip, folded: bool) -> Iterator[Edge]:
    """Yield the edges of a strip drawn below its edge: `far` meets the start of the run, `end` its end."""
    x, y = strip.length, -strip.depth
    inner = Edge("inner", line(1j * y, x + 1j * y), EdgeKind.FREE, role=EdgeRole.INNER, allowance=strip.turned)
    yield inner
    yield from _side("end", (x + 1j * y, complex(x, y / 2), complex(x, 0)), strip.end, folded)
    yield Edge("edge", line(complex(x, 0), 0j))
    yield from _side("far", (0j, 0.5j * y, 1j * y), strip.start, folded)


def _side(name: str, points: tuple[complex, complex, complex], end: RunEnd, folded: bool) -> Iterator[Edge]:
    if end is RunEnd.FOLD:
        yield Edge("centre", line(points[0], points[2]), EdgeKind.FOLD, role=EdgeRole.CENTRE)
    elif end is RunEnd.FREE and folded:
        inside = (f"{name}_inner", name) if name == "end" else (name, f"{name}_inner")
        for own, at in zip(inside, (0, 1), strict=True):
            twin = name if own != name else ""
            yield Edge(own, line(points[at], points[at + 1]), twin=twin)
    elif end is RunEnd.FREE:
        yield Edge(name, line(points[0], points[2]), EdgeKind.FREE, allowance=ENDS)
    else:
        yield Edge(name, line(points[0], points[2]))


def _closing_seams(piece: Piece, strip: _Strip, kind: SeamKind) -> Iterator[Seam]:
    """Yield the seams of a strip with itself: its ends, its own inside, or its mirror image."""

    def seam(one: str, other: str) -> Seam:
        name = f"{piece.name} {one}".replace("-", " ")
        return Seam(name, ((piece.name, one),), ((piece.name, other),), start=None, end=None, kind=kind)

    if strip.start is RunEnd.OTHER_END:
        yield seam("end", "far")
        return
    for name, end in (("end", strip.end), ("far", strip.start)):
        if end is RunEnd.MIRROR:
            yield seam(name, name)
    for edge in piece.edges:
        if edge.twin:
            yield seam(edge.name, edge.twin)


def _half_stiff(piece: Piece, width: float) -> Piece:
    """Return the interfacing of the outside of a folded strip."""
    turned = piece.outline.bounds[3] > width  # it lies above its edge

    def halved(p: complex) -> complex:
        y = min(p.imag, width) if turned else max(p.imag, -width)
        return complex(p.real, y)

    edges = []
    for edge in piece.edges:
        ends = halved(edge.path.start), halved(edge.path.end)
        if abs(ends[1] - ends[0]) > 1.0:
            edges.append(replace(edge, path=line(*ends), twin=""))
    return interfacing(replace(piece, edges=tuple(edges)), bare=("inner",))


# -------------------------------------------------------------------------------------------- seams


def _sewn_on(draft: Draft, own: EdgeRef, refs: tuple[EdgeRef, ...], kind: SeamKind) -> Seam:
    name = free_name(own[0].replace("-", " "), (seam.name for seam in draft.seams))
    return Seam(name, (own,), refs[::-1], start=None, end=None, kind=kind)


def _quarters(draft: Draft, run: SewnRun, own: float, length: float) -> tuple[SeamNotch, ...]:
    """Return quarters of a strip `own` long where an edge of the run is gathered, or longer than the strip; else
    notches come by themselves."""
    if own == length and all(draft.edge(ref).sewn is None for ref in run.refs):
        return ()
    drawn = sum(draft.edge(ref).length for ref in run.refs)
    return tuple(
        SeamNotch(name, share * own, share * drawn, kind=NotchKind.QUARTER) for name, share in QUARTERS.items()
    )
