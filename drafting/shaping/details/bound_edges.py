"""A raw edge that nothing else finishes: a strip of cloth along it, on the bias or the way a knit gives. mm.

The strip is sewn along the stitching line and turned inside whole, so that the edge stays where it is drawn:

      .-------- inner, turned under --------.
  end |                                     | on the fold, where the edge runs over one
      '--------- sewn along the edge -------'
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.draft.draft import Draft, EdgeRef, Seam, SeamNotch
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.geometry import line
from drafting.shaping.details.band import band_grain

BIAS = 45.0
"""degrees from the warp: woven cloth gives most there (common practice)."""

GIVES = 0.10
"""Greatest stretch from which a strip is cut the way the cloth gives, not on the bias (ours)."""

SHORTER = 0.05
"""Share by which a strip that gives is cut shorter than its edge, so that it lies close (common practice: 5 to
15 % for a knit's neck)."""

ENDS = 10.0
"""mm at each end of a strip: sewn to its other end, or turned in (common practice)."""


@dataclass(frozen=True, slots=True)
class _Run:
    """What one strip goes along: edges in the order they run, the length of the first half, where the fold is."""

    refs: tuple[EdgeRef, ...]
    first: float
    length: float
    fold: EdgeKind | None
    at_start: bool = False


def bound_edges(draft: Draft, fabric: Fabric | None, role: EdgeRole, width: float, turned: float) -> Draft:
    """Return the draft with a strip along the neck or the armholes, or as it is where something is sewn to them.

    `width` is what the strip shows inside once it is stitched down, `turned` what is turned under along it.
    """
    run = _run(draft, role)
    if run is None:
        return draft
    share = strip_share(fabric)
    piece = _strip(draft, run, role, share * run.length, width)
    piece = replace(piece, grain=band_grain(fabric) if share < 1 else BIAS)
    piece = piece.with_edges(replace(piece["inner"], allowance=turned))
    seam = Seam(
        f"{role} strip",
        ((piece.name, str(role)),),
        run.refs[::-1],
        ease=(share - 1) * run.length,
        start=None,
        end=None,
        notches=(SeamNotch(f"{role} strip", share * (run.length - run.first), run.length - run.first),),
        kind=SeamKind.FACING,
    )
    return draft + Draft((piece,), (seam,))


def strip_share(fabric: Fabric | None) -> float:
    """Return how long a strip is for its edge: shorter in cloth that gives, which pulls it flat.

    >>> strip_share(None), strip_share(Fabric("knit", stretch_across=0.5))
    (1.0, 0.95)
    """
    return 1 - SHORTER if fabric is not None and fabric.greatest_stretch >= GIVES else 1.0


def _run(draft: Draft, role: EdgeRole) -> _Run | None:
    """Return the edges of the ring as they run: back to front at a neck, front to back round an arm.

    None where the draft has no such ring, or something is sewn to it.
    """
    halves = ("back", "front") if role is EdgeRole.NECK else ("front", "back")
    chains = [draft.chains.get(f"{half}_{role}", ()) for half in halves]
    refs = tuple(ref for chain in chains for ref in chain)
    sewn = {ref for seam in draft.seams for ref in (*seam.a, *seam.b)}
    if not all(chains) or sewn & {*refs}:
        return None
    first, whole = (sum(draft.edge(ref).length for ref in part) for part in (chains[0], refs))
    folds = [_on_fold(draft, refs[0], -1), _on_fold(draft, refs[-1], 1)]
    fold = EdgeKind.FOLD if any(folds) else None
    return _Run(refs, first, whole, fold, at_start=folds[0] and not folds[1])


def _on_fold(draft: Draft, ref: EdgeRef, step: int) -> bool:
    piece = draft[ref[0]]
    return piece.edges[(piece.index(ref[1]) + step) % len(piece.edges)].kind is EdgeKind.FOLD


def _strip(draft: Draft, run: _Run, role: EdgeRole, length: float, width: float) -> Piece:
    """Return the strip: half of it on the fold where its edges end on one, else a pair."""
    lined = tuple(dict.fromkeys(piece for piece, _ in run.refs))
    name = f"{role}-strip"
    return Piece(
        name,
        tuple(_ring(run, role, length, width)),
        pair=run.fold is None,
        title=f"{role.capitalize()} strip",
        role=PieceRole.BINDING,
        lines=lined,
    )


def _ring(run: _Run, role: EdgeRole, length: float, width: float) -> Iterator[Edge]:
    """Yield the strip's edges; the sewn one runs from where the ring ends to where it starts."""
    a, b, c, d = 0j, complex(length, 0), complex(length, width), complex(0, width)
    end = Edge("end", line(b, c), EdgeKind.FREE, allowance=ENDS)
    start = Edge("start", line(d, a), EdgeKind.FREE, allowance=ENDS)
    if run.fold:
        fold = Edge("centre", line(b, c) if run.at_start else line(d, a), EdgeKind.FOLD, role=EdgeRole.CENTRE)
        end, start = (fold, start) if run.at_start else (end, fold)
    yield Edge(str(role), line(a, b), role=role)
    yield end
    yield Edge("inner", line(c, d), EdgeKind.FREE, role=EdgeRole.INNER)
    yield start
