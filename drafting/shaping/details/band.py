"""A straight band for cuffs and waistbands: sewn along one edge, an underlap at one end. mm.

As drawn here the sewn edge lies on top from x = 0 to its length, the underlap beyond it:

      .------- sewn edge --------.-underlap-.
    far                                    end
      |- - - - - - - fold - - - - - - - - - |     (a folded band is cut double)
    far_inner                          end_inner
      '-------- inner ------------'---------'
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.draft.draft import Seam
from drafting.draft.piece import Edge, EdgeKind, Piece, Placement
from drafting.draft.roles import EdgeRole, SeamKind
from drafting.fabric import Fabric
from drafting.geometry import Path, line
from drafting.shaping.details.small_pieces import LEAST_TURNED


@dataclass(frozen=True)
class Band:
    """What a band measures: `sewn` edge, `underlap`, `depth` once finished; `turned` under inside.

    `folded` cuts outside and inside in one, else the band is cut twice; `on_fold` puts the far end
    on the fold of the cloth (half a band).
    """

    sewn: float
    underlap: float
    depth: float
    folded: bool
    on_fold: bool = False
    turned: float = LEAST_TURNED

    @property
    def length(self) -> float:
        return self.sewn + self.underlap

    def corner(self, x: float, depths: float) -> complex:
        return complex(x, -depths * self.depth)


def band_grain(fabric: Fabric | None) -> float:
    """Return how the warp lies (degrees) in a band drawn along x: along it, where it gives least; in cloth
    that stretches so that the greatest stretch goes round what the band closes (common practice).

    >>> band_grain(None), band_grain(Fabric("knit", stretch_across=0.5, stretch_along=0.2))
    (0.0, 90.0)
    """
    return 90.0 if fabric is not None and fabric.stretches_at == 90.0 else 0.0


def band_edges(band: Band, name: str, role: EdgeRole = EdgeRole.PLAIN) -> tuple[Edge, ...]:
    """Return the ring of a band whose sewn edge is called `name` and is what `role` says."""
    far = EdgeKind.FOLD if band.on_fold else EdgeKind.SEAM
    return (*_below(band), *_end(band), *_above(band, name, role), *_far(band, far))


def _edge(name: str, a: complex, b: complex, role: EdgeRole = EdgeRole.PLAIN, twin: str = "") -> Edge:
    return Edge(name, line(a, b), role=role, twin=twin)


def _below(band: Band) -> list[Edge]:
    at = band.corner
    if not band.folded:
        return [_edge("lower", at(0, 1), at(band.length, 1))]
    inner = _edge("inner", at(0, 2), at(band.sewn, 2), EdgeRole.INNER)
    under = at(band.sewn, 2), at(band.length, 2)
    return [
        replace(inner, kind=EdgeKind.FREE, allowance=band.turned),
        _edge("underlap_inner", *under, EdgeRole.UNDERLAP, twin="underlap"),
    ]


def _end(band: Band) -> list[Edge]:
    at, x = band.corner, band.length
    outer = _edge("end", at(x, 1), at(x, 0))
    return [_edge("end_inner", at(x, 2), at(x, 1), twin="end"), outer] if band.folded else [outer]


def _above(band: Band, name: str, role: EdgeRole) -> list[Edge]:
    at = band.corner
    sewn = _edge(name, at(band.sewn, 0), at(0, 0), role)
    return [_edge("underlap", at(band.length, 0), at(band.sewn, 0), EdgeRole.UNDERLAP), sewn]


def _far(band: Band, kind: EdgeKind) -> list[Edge]:
    at = band.corner
    if kind is EdgeKind.FOLD:
        fold = _edge("centre", at(0, 0), at(0, 2 if band.folded else 1), EdgeRole.CENTRE)
        return [replace(fold, kind=kind)]
    outer = _edge("far", at(0, 0), at(0, 1))
    return [outer, _edge("far_inner", at(0, 1), at(0, 2), twin="far")] if band.folded else [outer]


def band_seams(piece: Piece, sewn: str) -> tuple[Seam, ...]:
    """Return the seams of a band with itself: outside to inside at its ends, underlap and edge.

    A folded band joins each of them to its own inside, one cut twice to its twin's.
    """
    inside = {edge.twin: edge.name for edge in piece.edges if edge.twin}
    return tuple(
        Seam(
            f"{piece.name} {e.name}",
            ((piece.name, inside.get(e.name, e.name)),),
            ((piece.name, e.name),),
            start=None,
            end=None,
            kind=SeamKind.MADE_UP,
        )
        for e in piece.edges
        if e.kind is EdgeKind.SEAM and e.name != sewn and not e.twin
    )


def fold_line(band: Band) -> tuple[Placement, ...]:
    """Return the line along which a folded band is folded."""
    if not band.folded:
        return ()
    return (Placement("fold", line(band.corner(0, 1), band.corner(band.length, 1)), "fold"),)


def line_across_band(band: Band, x: float, name: str, what: str) -> Placement:
    """Return a line across the outside of the band, `x` mm from the far end."""
    path: Path = line(band.corner(x, 0), band.corner(x, 1))
    return Placement(name, path, what)
