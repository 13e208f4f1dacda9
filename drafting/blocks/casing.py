"""Casing: a strip for elastic, sewn to a waist edge and stitched down inside along its other edge.

Half of it on the fold, as long as the flat waist it is sewn to; its ends are left open for the
elastic until that is threaded.

    end                          centre back
      .----------- inner ------------.
      |                              | on the fold
      '----------- waist ------------'
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.body import Body
from drafting.draft.chain import Chain
from drafting.draft.draft import Draft, Seam
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.geometry import line
from drafting.ground.choices import choice
from drafting.ground.scale import body_scale
from drafting.ground.sources import practice
from drafting.shaping.details.band import band_grain
from drafting.shaping.details.small_pieces import turned_under
from drafting.shaping.flare.elastic import CASING_ROOM

NEEDS = ("waist",)


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the casing, in mm."""

    elastic_width: float = choice(
        25.0, "mm", "width of the elastic", low=3, high=120, scales=True, source=practice(), group="casing"
    )
    elastic_play: float = choice(
        CASING_ROOM,
        "mm",
        "how much wider the casing is than its elastic",
        low=1,
        high=20,
        source=practice("⟨3⟩ to ⟨6⟩"),
        group="casing",
    )


def casing(body: Body, fabric: Fabric | None, choices: Choices, *, waist: Chain) -> Draft:
    """Return the casing strip, half of it on the fold."""
    length, depth = waist.path.length, choices.elastic_width + choices.elastic_play
    corners = (complex(-length, 0), 0j, complex(0, depth), complex(-length, depth))
    turned = turned_under(body_scale(body))
    a, b, c, d = corners
    edges = (
        Edge("waist", line(a, b), role=EdgeRole.WAIST),
        Edge("centre", line(b, c), EdgeKind.FOLD, role=EdgeRole.CENTRE),
        Edge("inner", line(c, d), EdgeKind.FREE, allowance=turned, role=EdgeRole.INNER),
        Edge("end", line(d, a), EdgeKind.OPENING),
    )
    above = waist.pieces[0] is PieceRole.BACK
    piece = Piece("casing", edges, grain=band_grain(fabric), title="Casing", role=PieceRole.CASING)
    if not above:
        piece = piece.mapped(lambda p: complex(-length, 0) - p).mirrored()
    seam = Seam(
        "casing", (("casing", "waist"),), tuple(reversed(waist.refs)), start=None, end=None, kind=SeamKind.ATTACHED
    )
    return Draft((piece,), (seam,), facts={"casing_depth": depth})
