"""Slash and spread: fullness let into one edge of a piece while another, the pivot, keeps its length.

As if the piece were cut n times from the edge to the pivot and each cut opened by the same amount;
the lines are bent evenly, so that there is nothing to smooth. Sides, corners, darts and notches
along the other edges stay as they are. An edge that is sewn to a partner is gathered back to what
it was.
"""

from __future__ import annotations

import cmath
import itertools
from collections.abc import Sequence
from dataclasses import replace

from drafting.draft import Draft, EdgeRef, Girth, Seam
from drafting.errors import DraftError
from drafting.findings import Finding
from drafting.geometry import Path
from drafting.geometry.area import is_simple
from drafting.piece import Edge, EdgeKind, Notch, Piece
from drafting.shaping.fullness import QUARTERS, bulk_said, flat_length, ratio_of_percentage
from drafting.shaping.spread import Fan, open_fan


def flared(draft: Draft, edge: EdgeRef, pivot: Sequence[str], *, cuts: int, each: float) -> Draft:
    """Return the draft with `edge` = (piece, edge) grown by `cuts` times `each` mm (row E28).

    `pivot` names neighbouring edges of the same piece that keep their lengths. Raises `DraftError`
    for edges that cannot be opened so.
    """
    if cuts < 1 or each < 0:
        raise DraftError(
            "slash and spread takes at least one cut and no less than 0 mm each",
            value=f"{cuts} cuts of {each:g} mm",
        )
    return _opened(draft, edge, pivot, cuts * each, f"{cuts} cuts opened {each:.0f} mm each")


def filled(
    draft: Draft, edge: EdgeRef, pivot: Sequence[str], *, ratio: float | None = None,
    flat: float | None = None, percent: float | None = None, thickness: float | None = None,
) -> Draft:  # fmt: skip
    """Return the draft with `edge` made wider and gathered up again to what it was.

    Exactly one of: `ratio` drawn over sewn, `flat` drawn length (mm), theatre fullness in `percent`
    (100: as much again). `thickness` of the cloth (mm) lets the bulk at the seam be judged.
    """
    if sum(wish is not None for wish in (ratio, flat, percent)) != 1:
        raise DraftError(
            "gathers are asked for by a ratio, a flat length or a percentage: one of them"
        )
    sewn = draft.edge(edge).sewn_length
    if percent is not None:
        ratio = ratio_of_percentage(percent)
    wide = flat if flat is not None else flat_length(sewn, ratio or 1.0)
    added = wide - draft.edge(edge).length
    if added < 0:
        raise DraftError(
            f"{' '.join(edge)} is drawn wider than that already", value=f"{wide:.0f} mm",
            reach=f"{draft.edge(edge).length:.0f} mm or more",
        )  # fmt: skip
    if added > 0:
        draft = _opened(draft, edge, pivot, added, f"{wide / sewn:.2f} to one")
    draft = _pulled_up(draft, edge, sewn)
    said = bulk_said(" ".join(edge), wide / sewn, thickness)
    return replace(draft, findings=(*draft.findings, *said))


def _opened(draft: Draft, ref: EdgeRef, pivot: Sequence[str], added: float, how: str) -> Draft:
    piece = draft[ref[0]]
    _sound(piece, ref[1], pivot)
    if added == 0:
        return draft
    sewn = draft.edge(ref).sewn_length
    new, turned = _fanned(piece, ref[1], tuple(pivot), added)
    opened = replace(
        draft.with_pieces([new]), girths=tuple(_girth(g, piece, new) for g in draft.girths)
    )
    opened = replace(opened, seams=tuple(_moved(s, draft, opened) for s in draft.seams))
    if any(ref in (*seam.a, *seam.b) for seam in draft.seams):
        opened = _pulled_up(opened, ref, sewn)
    said = Finding(
        "flare", "note", " ".join(ref), added, None,
        f"{_words(ref)} is {added:.0f} mm longer ({how}) and {' and '.join(pivot).replace('_', ' ')} as "
        f"long as before; the piece is opened by {turned:.0f} degrees.",
    )  # fmt: skip
    return replace(opened, findings=(*opened.findings, said))


# ------------------------------------------------------------------------------------- the piece


def _sound(piece: Piece, edge: str, pivot: Sequence[str]) -> None:
    """Refuse edges that are not there, not neighbours, or lie on the fold."""
    names = [e.name for e in piece.edges]
    lost = [name for name in (edge, *pivot) if name not in names]
    if lost or not pivot:
        raise DraftError(
            f"{piece.name} has no edge {', no '.join(lost) or 'named as the pivot'}",
            reach=", ".join(names),
        )
    places = [names.index(name) for name in pivot]
    if any((b - a) % len(names) != 1 for a, b in itertools.pairwise(places)):
        raise DraftError(
            f"the pivot of {piece.name} is one edge, or some in the order they run",
            value=", ".join(pivot), reach=", ".join(names),
        )  # fmt: skip
    folded = [n for n in (edge, *pivot) if piece[n].kind in (EdgeKind.FOLD, EdgeKind.DART)]
    if folded or edge in pivot:
        raise DraftError(
            f"{piece.name} cannot be opened from {', '.join(pivot)} to {edge}",
            turn="take two edges across from each other, neither a fold nor a dart",
        )


def _fanned(piece: Piece, edge: str, pivot: tuple[str, ...], added: float) -> tuple[Piece, float]:
    """Return the piece opened, and by how many degrees."""
    far = piece[edge].path.reversed()
    near = Path.joined(piece[name].path for name in pivot)
    fan = open_fan(near, far, added)
    ring = _ring(piece, pivot[0])
    split = [e.name for e in ring].index(edge)
    still, turning = fan.rigid(0.0), fan.rigid(1.0)
    edges = [
        *_pivots(fan, ring[: len(pivot)]),
        *(replace(e, path=e.path.mapped(turning)) for e in ring[len(pivot) : split]),
        _grown(ring[split], fan.grown().reversed()),
        *(replace(e, path=e.path.mapped(still)) for e in ring[split + 1 :]),
    ]
    opened = replace(
        piece, edges=_as_before(piece, _closed(edges)),
        levels=tuple(
            replace(v, paths=tuple(fan.bent(p) for p in v.paths)) for v in piece.levels
        ),
        darts=tuple(
            replace(d, leg_a=d.leg_a.mapped(m), leg_b=d.leg_b.mapped(m))
            for d in piece.darts for m in [fan.rigid(fan.share(d.leg_a.start))]
        ),
        points={n: fan.rigid(fan.share(p))(p) for n, p in piece.points.items()},
        placements=tuple(
            replace(m, path=m.path.mapped(fan.rigid(fan.share(m.path.start))))
            for m in piece.placements
        ),
    )  # fmt: skip
    if not is_simple(opened.outline):
        raise DraftError(
            f"{piece.name} would lie over itself", value=f"{added:.0f} mm let into its {edge}",
            turn="add less, or cut the piece in gores",
        )  # fmt: skip
    return _laid(opened, piece, fan, ring, split), abs(fan.turned) * 180 / cmath.pi


def _ring(piece: Piece, first: str) -> tuple[Edge, ...]:
    at = piece.index(first)
    return (*piece.edges[at:], *piece.edges[:at])


def _pivots(fan: Fan, old: Sequence[Edge]) -> list[Edge]:
    """Return the pivot's edges on the bent line, each as long as it was."""
    rest, done = fan.bent_pivot(), []
    for edge in old[:-1]:
        first, rest = rest.split(edge.length)
        done.append(replace(edge, path=first))
    return [*done, replace(old[-1], path=rest)]


def _grown(edge: Edge, path: Path) -> Edge:
    longer = path.length / edge.length
    notches = tuple(replace(n, at=n.at * longer) for n in edge.notches)
    return replace(edge, path=path, notches=notches)


def _closed(edges: list[Edge]) -> list[Edge]:
    """Return the edges meeting exactly; what rounding left between two of them is shifted away."""
    found, at = [edges[0]], edges[0].path.end
    for edge in edges[1:]:
        path = edge.path.moved(at - edge.path.start)
        found.append(replace(edge, path=path))
        at = path.end
    return found


def _as_before(piece: Piece, edges: list[Edge]) -> tuple[Edge, ...]:
    """Return the ring in the piece's own order of edges."""
    by_name = {e.name: e for e in edges}
    return tuple(by_name[e.name] for e in piece.edges)


def _laid(opened: Piece, old: Piece, fan: Fan, ring: tuple[Edge, ...], split: int) -> Piece:
    """Return the piece with its fold, or else its middle, lying as it lay before."""
    fold = old.fold_edge
    if fold is None:
        back = fan.rigid(0.5)
    elif fold.name in [e.name for e in ring[:split]]:
        back = fan.rigid(1.0)
    else:
        return opened
    shift = back(0j)
    factor = back(1 + 0j) - shift
    return opened.mapped(lambda p: (p - shift) / factor)


# ------------------------------------------------------------------- what goes with the piece


def _pulled_up(draft: Draft, ref: EdgeRef, sewn: float) -> Draft:
    """Return the draft with one edge gathered to `sewn` mm, marked in quarters (trouble GA2)."""
    edge = draft.edge(ref)
    marks = [Notch(f"quarter_{i}", q * edge.length) for i, q in enumerate(QUARTERS, 1)]
    kept = [n for n in edge.notches if not n.name.startswith("quarter")]
    notches = tuple(sorted((*kept, *marks), key=lambda n: n.at))
    pulled = replace(edge, sewn=sewn, notches=notches)
    return draft.with_pieces([draft[ref[0]].with_edges(pulled)])


def _moved(seam: Seam, old: Draft, new: Draft) -> Seam:
    """Return the seam with its notches at the same shares of edges that changed their lengths."""
    notches = tuple(
        replace(n, a=_place(seam.a, n.a, old, new), b=_place(seam.b, n.b, old, new))
        for n in seam.notches
    )
    eased = seam.eased and (
        _place(seam.a, seam.eased[0], old, new), _place(seam.a, seam.eased[1], old, new)
    )  # fmt: skip
    return replace(seam, notches=notches, eased=eased)


def _place(chain: tuple[EdgeRef, ...], at: float, old: Draft, new: Draft) -> float:
    passed = 0.0
    for ref in chain:
        was, now = old.edge(ref).length, new.edge(ref).length
        if at <= was + 1e-9 or ref == chain[-1]:
            return passed + at * now / was if now != was else passed + at
        at, passed = at - was, passed + now
    return at


def _girth(girth: Girth, old: Piece, new: Piece) -> Girth:
    """Return the girth with what the piece gained at its level, asked for as it was."""
    gained = sum(
        b.length - a.length for a, b in zip(old.levels, new.levels, strict=True)
        if a.name == girth.level
    )  # fmt: skip
    times = 2.0 if old.pair or old.fold_edge is not None else 1.0
    gained *= times / 2 if girth.limb and old.pair else times
    return replace(
        girth, asked_ease=girth.asked_ease + gained, settled_ease=girth.settled_ease + gained
    )


def _words(ref: EdgeRef) -> str:
    text = " ".join(ref).replace("_", " ")
    return text[:1].upper() + text[1:]
