"""A skirt in gores: equal panels, shaped from waist to hip by their seams, flared from there to the hem. mm.

Each gore is drawn about its upright middle, the waist level at y = 0. Waist and hem are arcs square to both
seams, so that the joined edges run on smoothly; seams are alike on every gore.
"""

from __future__ import annotations

import cmath
import itertools
import math
from dataclasses import replace

from drafting.draft.draft import Seam
from drafting.draft.piece import Edge, EdgeKind, Level, Piece
from drafting.draft.roles import EdgeRole, Half, LevelKind, PieceRole, SeamKind
from drafting.geometry import Path, line
from drafting.geometry.arc import arc
from drafting.shaping.skirt.plan import SkirtPlan
from drafting.shaping.trouser.curves import one_way_curve

ROUNDS = 40
"""Rounds in which the leans at waist and hem settle: each is some twenty times nearer (measured)."""

TURNED_ON = 0.6
"""How far beyond its chord a seam turns at the waist, of what it turned before (ours)."""


def gored_pieces(plan: SkirtPlan, count: int, sweep: float) -> tuple[tuple[Piece, ...], tuple[Seam, ...]]:
    """Return the gores of half a skirt of `count` (even), and the seams between; the hem measures `sweep`."""
    half = count // 2
    outline = _Gore(plan, 2 * plan.waist / count, 2 * plan.hip / count, sweep / count)
    gores = tuple(outline.piece(k, half) for k in range(half))
    seams = tuple(
        Seam(
            f"gores {k + 1} and {k + 2}",
            ((one.name, "back"),),
            ((other.name, "front"),),
            kind=SeamKind.SIDE if 2 * (k + 1) == half else SeamKind.PANEL,
        )
        for k, (one, other) in enumerate(itertools.pairwise(gores))
    )
    return gores, seams


class _Gore:
    """One gore: widths at waist, hip and hem, and the leans of its seams at waist and below the hip."""

    def __init__(self, plan: SkirtPlan, waist: float, hip: float, hem: float) -> None:
        self.plan, self.waist, self.hem, self.hip_half = plan, waist, hem, hip / 2
        self.flare = self.lean = 0.0
        for _ in range(ROUNDS):
            low = self.hem_corner
            self.flare = math.atan2(low.real - self.hip_half, -plan.rise - low.imag)
        for _ in range(ROUNDS):
            top = self.waist_corner
            chord = math.atan2(self.hip_half - top.real, plan.rise + top.imag)
            self.lean = max(0.0, chord + TURNED_ON * (chord - self.flare))

    @property
    def hem_corner(self) -> complex:
        """The right corner of the hem, whose arc is square to both seams and as long as is asked."""
        return complex(0.0, -self.plan.length) + _corner(self.hem, self.flare)

    @property
    def waist_corner(self) -> complex:
        return _corner(self.waist, self.lean)

    def piece(self, k: int, half: int) -> Piece:
        top, low = self.waist_corner, self.hem_corner
        hip = complex(self.hip_half, -self.plan.rise)
        up = cmath.rect(1.0, math.pi / 2 + self.flare)
        curve = one_way_curve(hip, up, top, cmath.rect(1.0, math.pi / 2 + self.lean))
        right = Path((*line(low, hip).segments, curve))
        waist = _arc(top, self.lean).reversed()
        edges = (
            Edge("hem", _arc(low, self.flare), EdgeKind.HEM, role=EdgeRole.HEM),
            _seam_edge("back", "centre_back" if half == 1 else "centre", right, k + 1, half),
            Edge("waist", waist, EdgeKind.OPENING, role=EdgeRole.WAIST),
            _seam_edge("front", "centre", right.mirrored().reversed(), k, half),
        )
        behind = 2 * k + 1 > half
        return Piece(
            f"gore-{k + 1}",
            edges,
            levels=(
                Level("waist", (waist,), LevelKind.WAIST),
                Level("hip", (line(-hip.conjugate(), hip),), LevelKind.HIP),
            ),
            pair=True,
            title=f"Gore {k + 1}",
            role=PieceRole.BACK if behind else PieceRole.FRONT,
            place=k + 1,
        )


def _seam_edge(name: str, centre: str, path: Path, place: int, half: int) -> Edge:
    """Return a gore's seam: that between it and the next, or the one at the centre."""
    if place in (0, half):
        edge = Edge(centre, path, role=EdgeRole.CENTRE_SEAM)
        return replace(edge, half=Half.BACK if place else Half.FRONT)
    return Edge(name, path, role=EdgeRole.SIDE if 2 * place == half else EdgeRole.PANEL)


def _corner(length: float, lean: float) -> complex:
    """Return the right end of an arc of this length about an upright, its middle at 0, that ends leaning so."""
    if lean < 1e-9:
        return complex(length / 2, 0.0)
    radius = length / 2 / lean
    return complex(radius * math.sin(lean), radius * (1 - math.cos(lean)))


def _arc(corner: complex, lean: float) -> Path:
    """Return the arc from the left corner to the right one, square to seams that lean in by `lean` (radians)."""
    left = -corner.conjugate()
    if lean < 1e-6:
        return line(left, corner)
    radius = corner.real / math.sin(lean)
    return arc(complex(0.0, corner.imag + radius * math.cos(lean)), left, math.degrees(2 * lean))
