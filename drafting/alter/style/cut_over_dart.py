"""Cut over an open dart as a cutter does: the dart is folded shut, the line drawn over it, and it is opened again.

Shut, the dart lies somewhere else of the part that has its tip: there it is opened while the line is drawn and
cut, and from there it comes back. The part without the tip stays shut, in one; the other has the dart, shorter,
with its mouth in the cut. No cloth is lost, and both sides of the cut are of one length.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from drafting.alter.style.cut_inner_dart import cut_through, line_through
from drafting.alter.style.dart import dart_moved
from drafting.alter.style.places import RingSpot, nearest_places, spot_on, spot_point
from drafting.draft.by_role import dart_legs
from drafting.draft.draft import Draft
from drafting.draft.named import piece_named
from drafting.draft.piece import Edge, EdgeKind, Notch, Piece
from drafting.draft.roles import EdgeRole
from drafting.geometry import Path, line
from drafting.geometry.crossing import crossings
from drafting.ground.errors import DraftError
from drafting.ground.names import name_in_words
from drafting.reading.style import CutWish, DartWish
from drafting.reading.style_places import OutlinePlace

FOUND = 0.01
"""mm: a place nearer to an edge lies on it."""

MARKS = (Notch("~from", 0.0), Notch("~to", 0.0), Notch("~mouth", 0.0))
"""Notches that hold the ends of a line, and a dart's mouth, while the dart is elsewhere."""

MIDDLE = frozenset({EdgeRole.CENTRE, EdgeRole.CENTRE_SEAM, EdgeRole.FRONT_EDGE})
"""Edges by which the grain of a part is that of the whole."""

Leg = tuple[Edge, Edge]


def cut_across(draft: Draft, wish: CutWish) -> Draft:
    """Return the draft with a piece cut in two, its darts folded where the line runs over them; raises what
    `cut_through` does."""
    piece = piece_named(draft, wish.piece)
    legs = crossed_dart(piece, wish)
    if legs is None:
        return cut_through(draft, wish)
    why: DraftError | None = None
    for folded in _folded(draft, piece, wish, legs):
        try:
            return _opened_again(cut_across(folded.draft, folded.wish), folded, piece)
        except DraftError as error:
            why = why or error
    raise _refused(piece, legs, why)


def lines_to_cut(draft: Draft, wish: CutWish) -> tuple[Path, ...]:
    """Return the line along which a piece would be cut: in two parts where it runs over an open dart."""
    piece = piece_named(draft, wish.piece)
    legs = crossed_dart(piece, wish)
    if legs is None:
        return (line_through(piece, wish),)
    why: DraftError | None = None
    for folded in _folded(draft, piece, wish, legs):
        shut = folded.draft[piece.name]
        try:
            path = line_through(shut, folded.wish)
        except DraftError as error:
            why = why or error
            continue
        found = crossings(path, line(folded.mouth, folded.tip))
        if found:
            whole, part = divmod(found[0].on_a, 1.0)
            first = Path((*path.segments[: int(whole)], path.segments[int(whole)].split(part)[0]))
            last = Path((path.segments[int(whole)].split(part)[1], *path.segments[int(whole) + 1 :]))
            ends = [spot_point(piece, spot_on(piece, place)) for place in (wish.start, wish.end)]
            return _turned_back(first, first.start, ends[0], folded.tip), _turned_back(
                last, last.end, ends[1], folded.tip
            )
    raise _refused(piece, legs, why)


def crossed_dart(piece: Piece, wish: CutWish) -> Leg | None:
    """Return the legs of the first open dart that the straight line from place to place runs over, or None."""
    a, b = (spot_point(piece, spot_on(piece, place)) for place in (wish.start, wish.end))
    if abs(b - a) < 1.0:
        return None
    straight = line(a, b)
    for legs in dart_legs(piece):
        hits = [c.point for leg in legs for c in crossings(straight, leg.path)]
        if any(all(abs(hit - end) > 0.2 for end in (a, b)) for hit in hits):
            return legs
    return None


@dataclass(frozen=True)
class _Folded:
    """A draft whose dart lies elsewhere while a line is cut: the line as it is asked for there, and where the shut
    dart runs from its `mouth` to its `tip`."""

    draft: Draft
    wish: CutWish
    dart: str
    mouth: complex
    tip: complex


def _folded(draft: Draft, piece: Piece, wish: CutWish, legs: Leg) -> Iterator[_Folded]:
    """Yield the draft with its dart at each place of the part that has its tip, as far as it can go there."""
    spots = spot_on(piece, wish.start), spot_on(piece, wish.end)
    before = piece.edges[piece.index(legs[0].name) - 1]
    marked = _marked(piece, [*spots, RingSpot(piece.index(before.name), before.length)])
    for place in _places(piece, spots, legs):
        try:
            moved = dart_moved(draft.with_pieces([marked]), DartWish(piece.name, legs[0].name, place))
        except DraftError:
            continue
        shut = moved[piece.name]
        places = [_place_now(piece, shut, *one) for one in zip((wish.start, wish.end), MARKS, strict=False)]
        mouth = _mark_of(shut, MARKS[2])
        there = replace(wish, start=places[0], end=places[1])
        tip = shut[legs[0].name].path.end
        yield _Folded(moved.with_pieces([_unmarked(shut)]), there, legs[0].name, mouth[1], tip)


def _places(piece: Piece, spots: tuple[RingSpot, RingSpot], legs: Leg) -> Iterator[OutlinePlace]:
    """Yield places between the ends of the line on the side away from the dart's mouth."""
    count, first = len(piece.edges), piece.index(legs[1].name)
    far, near = sorted(spots, key=lambda s: ((s.index - first) % count, s.at))
    between = [(far.index + step) % count for step in range(1, (near.index - far.index) % count)]
    for share in (0.5, 0.3, 0.7):
        for index in between:
            if piece.edges[index].kind not in (EdgeKind.DART, EdgeKind.FOLD):
                yield OutlinePlace(piece.edges[index].name, share=share)
    for index, at in ((far.index, (far.at + piece.edges[far.index].length) / 2), (near.index, near.at / 2)):
        if piece.edges[index].kind not in (EdgeKind.DART, EdgeKind.FOLD):
            yield OutlinePlace(piece.edges[index].name, distance=at)


def _marked(piece: Piece, spots: list[RingSpot]) -> Piece:
    for spot, mark in zip(spots, MARKS, strict=True):
        edge = piece.edges[spot.index]
        piece = piece.with_edges(replace(edge, notches=(*edge.notches, replace(mark, at=spot.at))))
    return piece


def _unmarked(piece: Piece) -> Piece:
    edges = (
        replace(e, notches=tuple(n for n in e.notches if replace(n, at=0.0) not in MARKS)) for e in piece.edges
    )
    return replace(piece, edges=tuple(edges))


def _mark_of(piece: Piece, mark: Notch) -> tuple[OutlinePlace, complex]:
    """Return where a mark lies now; raises `DraftError` where the move has lost it."""
    for edge in piece.edges:
        for notch in edge.notches:
            if replace(notch, at=0.0) == mark:
                at = min(max(notch.at, 0.0), edge.length)
                return OutlinePlace(edge.name, distance=at), edge.path.at(at)
    raise DraftError(f"the {piece.name}'s dart cannot be folded there")


def _place_now(old: Piece, new: Piece, place: OutlinePlace, mark: Notch) -> OutlinePlace:
    """Return a place as it is called while the dart is elsewhere: as before, where its edge is as it was."""
    same = place.edge in new and abs(new[place.edge].length - old[place.edge].length) < FOUND / 10
    return place if place.dart or same else _mark_of(new, mark)[0]


def _opened_again(cut: Draft, folded: _Folded, old: Piece) -> Draft:
    """Return the cut draft with its dart back where it was, its mouth in the cut."""
    names = (folded.wish.piece, folded.wish.name)
    inner = next(name for name in names if folded.dart in cut[name])
    shut = line(folded.mouth, folded.tip)
    for edge in cut[inner].edges:
        for hit in crossings(edge.path, shut):
            own = edge.name.startswith(folded.wish.edge)
            if own:
                place = OutlinePlace(edge.name, distance=_along(edge.path, hit.point))
                found = dart_moved(cut, DartWish(inner, folded.dart, place))
                return found.with_pieces([_laid_back(found[name], old) for name in names])
    raise DraftError("the line does not run over the folded dart")


def _along(path: Path, point: complex) -> float:
    """Return how far along a path the place nearest to a point lies."""
    best, passed = (float("inf"), 0.0), 0.0
    for segment, length in zip(path.segments, path.lengths, strict=True):
        for t in nearest_places(segment, point):
            at = passed + (segment.split(t)[0].length if 0 < t < 1 else t * length)
            best = min(best, (abs(segment.point(t) - point), at))
        passed += length
    return best[1]


def _laid_back(piece: Piece, old: Piece) -> Piece:
    """Return a part laid as it lay in the whole, so that its grain is that of the whole: by the middle where it
    has some of it, else by its longest edge, as a part that stays shut cannot lie so on both sides of its dart."""
    same = [e for e in piece.edges if e.name in old and abs(e.length - old[e.name].length) < FOUND]
    if not same:
        return piece
    edge = max(same, key=lambda e: (e.kind is EdgeKind.FOLD or e.role in MIDDLE, e.length))
    return piece.mapped(_onto(edge.path, old[edge.name].path))


def _onto(now: Path, was: Path) -> Callable[[complex], complex]:
    """Return the move that lays a path where it was."""
    turn = (was.end - was.start) / (now.end - now.start)
    return lambda p: was.start + (p - now.start) * turn / abs(turn)


def _turned_back(path: Path, now: complex, was: complex, tip: complex) -> Path:
    turn = (was - tip) / (now - tip)
    turn /= abs(turn)
    return path.mapped(lambda p: tip + (p - tip) * turn)


def _refused(piece: Piece, legs: Leg, why: DraftError | None) -> DraftError:
    named = name_in_words(legs[0].dart.dart if legs[0].dart else legs[0].name).removesuffix(" dart")
    if why is not None:
        return DraftError(f"with the {named} dart of the {piece.name} folded shut, {why.what}", turn=why.turn)
    return DraftError(
        f"the cut through the {piece.name} runs over its {named} dart, which can be folded shut nowhere",
        turn="move the dart first, end the line at its tip with { dart = ... }, or keep clear of it",
    )
