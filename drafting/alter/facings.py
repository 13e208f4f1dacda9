"""Facings: neckline and armholes faced with pieces of their own, cut from the garment's own lines.

A facing copies the edge it is sewn to and the seams on either side of it, as deep as it is wide; its
inner edge is free. Across a dart, a yoke's or a panel's seam it is one piece. An edge with something sewn
to it is left alone all round.

        shoulder.---.
                |    \\ neck
         inner   \\    \\
                  '-.  '--.
                     '-----| centre
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.alter.style.rings import named_apart
from drafting.body import Body
from drafting.draft.by_role import edge_as, edges_as
from drafting.draft.draft import Draft, EdgeRef, Seam
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.geometry import Path
from drafting.geometry.crossing import crossings, ends_moved, extended, part_between
from drafting.geometry.offset import offset
from drafting.ground import tolerances as tol
from drafting.ground.choices import choice
from drafting.ground.findings import Finding
from drafting.ground.sources import practice
from drafting.shaping.details.joined_edges import EdgeRun, laid_together, name_of, runs
from drafting.shaping.details.small_pieces import interfacing, interfacing_notion


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about facings."""

    facings: str = choice(
        "neck",
        "word",
        "which edges are faced",
        words=("neck", "armholes", "neck and armholes"),
        group="facings",
        source=practice(),
    )
    facing_depth: float = choice(
        45.0,
        "mm",
        "how deep the facings are",
        low=15,
        high=150,
        scales=True,
        source=practice("⟨40⟩ to ⟨60⟩"),
        group="facings",
    )


def facings(draft: Draft, body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the draft with facings on the edges chosen that nothing is sewn to yet.

    Where a front and a back facing meet they are sewn together along what both copy.
    """
    for role in (EdgeRole.NECK, EdgeRole.ARMHOLE):
        if role in choices.facings:
            draft = _faced(draft, role, choices.facing_depth)
    return draft


def _faced(draft: Draft, role: EdgeRole, depth: float) -> Draft:
    """Return the draft with this edge faced all round, or left alone where one part cannot be."""
    sewn = {ref for seam in draft.seams for ref in (*seam.a, *seam.b)}
    found = [
        (run, None if sewn & {*run} else facing_of_run(draft, run, role, depth)) for run in _runs(draft, role)
    ]
    missing = [ref for run, piece in found if piece is None for ref in run]
    if missing:
        said = tuple(_left_out(ref) for ref in missing)
        return replace(draft, findings=draft.findings + said)
    made = _ends_trued([piece for _, piece in found if piece is not None])
    faced = list(zip((run for run, _ in found), made, strict=True))
    stiff = [interfacing(piece, bare=("inner",)) for piece in made]
    return draft + Draft(
        (*made, *stiff),
        (*_edge_seams(faced, role), *_end_seams(made)),
        notions=tuple(interfacing_notion(piece) for piece in stiff),
    )


def _runs(draft: Draft, role: EdgeRole) -> list[EdgeRun]:
    return [run for half in ("front", "back") for run in runs(draft, draft.chains.get(f"{half}_{role}", ()))]


def facing_of_run(draft: Draft, run: EdgeRun, role: EdgeRole, depth: float) -> Piece | None:
    """Return the facing of these edges, or None where their neighbours leave no room for the depth."""
    made = facing_of_edge(laid_together(draft, run, role), name_of(run, role), depth)
    lined = tuple(dict.fromkeys(name for name, _ in run))
    return None if made is None else replace(made, lines=lined)


def facing_of_edge(piece: Piece, name: str, depth: float) -> Piece | None:
    """Return the facing of edge `name`, or None where its neighbours leave no room for the depth.

    It is turned over, as it lies against the garment: its outline runs against the garment's.
    """
    at = piece.index(name)
    before, edge, after = (piece.edges[(at + i) % len(piece.edges)] for i in (-1, 0, 1))
    if EdgeKind.DART in (before.kind, after.kind):
        return None
    inner = _inner(edge.path, before.path, after.path, depth)
    if inner is None:
        return None
    line, start, end = inner
    half = EdgeKind.FOLD in (before.kind, after.kind)
    ends = named_apart(
        [replace(_plain(e), path=path) for e, path in ((before, start), (after, end))], [name, "inner"]
    )
    free = Edge("inner", line.reversed(), EdgeKind.FREE, role=EdgeRole.INNER)
    ring = (ends[0], Edge(name, edge.path, role=edge.role), ends[1], free)
    title = f"{piece.title or piece.name.capitalize()} {name.replace('_', ' ')} facing"
    drawn = Piece(
        f"{piece.name}-{name.replace('_', '-')}-facing",
        ring,
        grain=piece.grain,
        pair=not half,
        title=title,
        role=PieceRole.FACING,
        lines=(piece.name,),
    )
    return drawn.mirrored()


def _plain(edge: Edge) -> Edge:
    """Return a neighbouring edge as the facing has it: a centre that opens, a fold, else a seam."""
    kind = edge.kind if edge.kind in (EdgeKind.FOLD, EdgeKind.OPENING) else EdgeKind.SEAM
    name = edge.name if edge.role is EdgeRole.PLAIN else edge.role.replace(" ", "_")
    return Edge(name, edge.path, kind, role=edge.role)


def _inner(edge: Path, before: Path, after: Path, depth: float) -> tuple[Path, Path, Path] | None:
    """Return the inner line between its neighbours, and the ends of both that the facing copies."""
    long = extended(offset(edge, -depth), before=depth, after=depth)
    starts, ends = crossings(long, before), crossings(long, after)
    if not starts or not ends:
        return None
    first, last = starts[0], ends[-1]
    line = part_between(long, first.on_a, last.on_a)
    start = part_between(before, first.on_b, len(before.segments))
    end = part_between(after, 0.0, last.on_b)
    if line is None or start is None or end is None:
        return None
    return (
        ends_moved(line, start=first.point, end=last.point),
        ends_moved(start, start=first.point),
        ends_moved(end, end=last.point),
    )


# ------------------------------------------------------------------------------------------- seams


def _edge_seams(faced: list[tuple[EdgeRun, Piece]], role: EdgeRole) -> Iterator[Seam]:
    """Yield the seam of each facing to the garment's edges that it was made for."""
    for run, piece in faced:
        mine = ((piece.name, name_of(run, role)),)
        name = piece.name.replace("-", " ")
        yield Seam(name, mine, run[::-1], start=None, end=None, kind=SeamKind.FACING)


def _ends_trued(made: list[Piece]) -> list[Piece]:
    """Return the facings with the ends that two of them share as long as each other.

    What a shoulder eases in, its facing does not: the longer end is cut off where it runs into the inner edge.
    """
    pieces = {piece.name: piece for piece in made}
    for a, b in _shared_ends(made):
        shorter = min(pieces[name][edge].length for name, edge in (a, b))
        pieces |= {name: _cut_at(pieces[name], edge, shorter) for name, edge in (a, b)}
    return list(pieces.values())


def _cut_at(facing: Piece, name: str, length: float) -> Piece:
    """Return a facing whose end is `length` mm long, from the edge that is faced to the inner one."""
    edge, inner = facing[name], edges_as(facing, EdgeRole.INNER)[0]
    if edge.length - length < tol.EXACT:
        return facing
    if facing.edges[facing.index(name) - 1] is inner:
        path = edge.path.split(edge.length - length)[1]
        drawn = ends_moved(inner.path, end=path.start)
    else:
        path = edge.path.split(length)[0]
        drawn = ends_moved(inner.path, start=path.end)
    return facing.with_edges(replace(edge, path=path), replace(inner, path=drawn))


def _shared_ends(made: list[Piece]) -> Iterator[tuple[EdgeRef, EdgeRef]]:
    """Yield each end that two facings share (`shoulder`, `side`)."""
    for role in (EdgeRole.SHOULDER, EdgeRole.SIDE):
        pair = [(piece.name, edge.name) for piece in made if (edge := edge_as(piece, role))]
        if len(pair) == 2:
            yield pair[0], pair[1]


def _end_seams(made: list[Piece]) -> Iterator[Seam]:
    """Yield a seam for each end that two facings share."""
    for a, b in _shared_ends(made):
        name = f"{a[0]} {a[1]}".replace("-", " ")
        yield Seam(name, (a,), (b,), start=None, end=None, kind=SeamKind.FACING)


def _left_out(ref: EdgeRef) -> Finding:
    return Finding(
        "facing",
        "note",
        f"{ref[0]}.{ref[1]}",
        None,
        None,
        f"The {ref[0]} {ref[1].replace('_', ' ')} gets no facing: something is sewn to it, or the seams "
        "beside it are too short. What is sewn to nothing gets a strip instead.",
    )
