"""Join two pieces along the seam between them into one piece."""

from __future__ import annotations

from dataclasses import replace

from drafting.alter.style.merged import merged
from drafting.alter.style.rings import Names, named_apart, renamed_chains
from drafting.draft.draft import Draft, EdgeRef, Seam
from drafting.draft.named import edge_named, piece_named
from drafting.draft.piece import Edge, EdgeKind, Level, Piece
from drafting.draft.walk import walk
from drafting.geometry import Path
from drafting.geometry.area import distances, is_simple
from drafting.geometry.crossing import ends_moved
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.ground.names import name_in_words
from drafting.reading.style import JoinWish

LIES = 0.002
"""mm: two edges that lie no farther apart are one line, and no cloth is lost or gained (ours)."""


def joined_up(draft: Draft, wish: JoinWish) -> Draft:
    """Return the draft with the piece of an edge joined to the piece that it is sewn to, which keeps its name.

    Raises `DraftError` where the edge is sewn to no other piece, or the two edges are not one line.
    """
    ref = wish.piece, edge_named(piece_named(draft, wish.piece), wish.edge).name
    seam = _seam_of(draft, ref)
    (a, ref_a), (b, ref_b) = _ends(draft, seam, ref)
    if draft[b].fold_edge is not None and draft[a].fold_edge is None:
        (a, ref_a), (b, ref_b) = (b, ref_b), (a, ref_a)
    stays, comes = draft[a], _laid(draft[b], ref_b, draft[a][ref_a])
    _refuse_apart(stays, ref_a, comes, ref_b)
    whole, names = _one_ring(stays, ref_a, comes, ref_b)
    pieces = tuple(whole if p.name == a else p for p in draft.pieces if p.name != b)
    gone = {(a, ref_a), (b, ref_b)}  # no longer an edge: no chain runs along it
    chains = {name: tuple(one for one in refs if one not in gone) for name, refs in draft.chains.items()}
    chains = {name: refs for name, refs in chains.items() if refs}
    found = replace(draft, seams=tuple(s for s in draft.seams if s is not seam), chains=chains)
    found = renamed_chains(found, b, names)
    found = replace(found, pieces=tuple(_behind(p, a, b) for p in pieces))
    for before, after in _junctions(whole, stays, ref_a, names):
        if before in found[a] and after in found[a]:
            found = merged(found, a, before, after)
    return found


def _seam_of(draft: Draft, ref: EdgeRef) -> Seam:
    for seam in draft.seams:
        if ref in (*seam.a, *seam.b) and seam.a != seam.b:
            return seam
    raise DraftError(
        f"{name_in_words('.'.join(ref))} is sewn to no other piece",
        turn="name an edge along the seam that is to go",
    )


def _ends(draft: Draft, seam: Seam, ref: EdgeRef) -> tuple[EdgeRef, EdgeRef]:
    """Return the edge of the piece that stays and the other; raises `DraftError` where a seam cannot go."""
    if len(seam.a) > 1 or len(seam.b) > 1:
        raise DraftError(f"the seam {seam.name} runs over several edges", turn="join along a seam of two edges")
    walked = walk(draft, seam)
    if abs(walked.a_length - walked.b_length) > LIES:
        raise DraftError(
            f"the seam {seam.name} is eased or gathered, and cannot go", value=told(seam.ease, "fine")
        )
    one, two = seam.a[0], seam.b[0]
    if one[0] == two[0]:
        raise DraftError(f"the seam {seam.name} joins the {one[0]} to itself")
    return (two, one) if one == ref else (one, two)


def _laid(piece: Piece, name: str, onto: Edge) -> Piece:
    """Return the piece moved so that its edge lies on another edge, which runs the other way."""
    own = piece[name].path
    turn = (onto.path.start - onto.path.end) / (own.end - own.start)
    turn /= abs(turn)
    at = onto.path.end
    return replace(piece.mapped(lambda p: at + (p - own.start) * turn), grain=piece.grain)


def _refuse_apart(stays: Piece, ref_a: str, comes: Piece, ref_b: str) -> None:
    apart = float(max(distances(comes[ref_b].path, stays[ref_a].path)))
    if apart > LIES:
        raise DraftError(
            f"the {comes.name}'s {ref_b} and the {stays.name}'s {ref_a} do not lie in one line",
            value=told(apart, "fine"),
            reach="as near as what was cut in two",
            turn="join only what was cut, or lies flat together",
        )


def _one_ring(stays: Piece, ref_a: str, comes: Piece, ref_b: str) -> tuple[Piece, Names]:
    """Return both as one piece, and what the edges of the one that came are called in it."""
    at, there = stays.index(ref_a), comes.index(ref_b)
    more = [*comes.edges[there + 1 :], *comes.edges[:there]]
    kept = [*stays.edges[:at], *stays.edges[at + 1 :]]
    new = named_apart(more, [edge.name for edge in kept])
    ends = stays[ref_a].path
    new[0] = replace(new[0], path=ends_moved(new[0].path, start=ends.start))
    new[-1] = replace(new[-1], path=ends_moved(new[-1].path, end=ends.end))
    edges = (*kept[:at], *new, *kept[at:])
    folds = [edge for edge in edges if edge.kind is EdgeKind.FOLD]
    if not is_simple(Path.joined(edge.path for edge in edges)) or (len(folds) > 1 and not _in_line(folds)):
        raise DraftError(f"the {stays.name} and the {comes.name} do not make one piece that lies flat")
    whole = replace(
        stays,
        edges=edges,
        levels=(*stays.levels, *(level for level in comes.levels)),
        darts=(*stays.darts, *comes.darts),
        points={**comes.points, **stays.points},
        placements=(*stays.placements, *comes.placements),
    )
    names: Names = {old.name: ((stays.name, edge.name),) for old, edge in zip(more, new, strict=True)}
    return _levels_whole(whole), names


def _in_line(folds: list[Edge]) -> bool:
    one, two = folds
    return abs((two.path.leave.conjugate() * one.path.leave).imag) < 0.01 and one.path.end == two.path.start


def _levels_whole(piece: Piece) -> Piece:
    """Return the piece with its levels of one name as one, paths that meet end to end joined."""
    found: dict[str, Level] = {}
    for level in piece.levels:
        known = found.get(level.name)
        found[level.name] = level if known is None else replace(known, paths=(*known.paths, *level.paths))
    return replace(piece, levels=tuple(replace(one, paths=run_on(one.paths)) for one in found.values()))


def run_on(paths: tuple[Path, ...], gap: float = 0.1) -> tuple[Path, ...]:
    """Return paths of which none ends where another begins."""
    left = list(paths)
    for one in paths:
        for two in paths:
            if one is not two and one in left and two in left and abs(one.end - two.start) < gap:
                left[left.index(one)] = Path.joined([one, ends_moved(two, start=one.end)])
                left.remove(two)
                return run_on(tuple(left), gap)
    return tuple(left)


def _behind(piece: Piece, a: str, b: str) -> Piece:
    """Return a piece with what it stiffens and lines called as it is now."""
    if b not in (*piece.stiffens, *piece.lines):
        return piece

    def now(names: tuple[str, ...]) -> tuple[str, ...]:
        return tuple(dict.fromkeys(a if name == b else name for name in names))

    return replace(piece, stiffens=now(piece.stiffens), lines=now(piece.lines))


def _junctions(whole: Piece, stays: Piece, ref_a: str, names: Names) -> list[tuple[str, str]]:
    """Return the pairs of edges that met at the ends of the seam that is gone."""
    at = stays.index(ref_a)
    new = [refs[0][1] for refs in names.values()]
    before, after = stays.edges[at - 1].name, stays.edges[(at + 1) % len(stays.edges)].name
    return [(before, new[0]), (new[-1], after)]
