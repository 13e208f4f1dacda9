"""Garments, cloths and sums that the tests of the sewn mesh and of the start points share."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import numpy as np

from drafting.body import Body, wearer
from drafting.costume.garment import draft_garment
from drafting.draft.draft import Draft
from drafting.draft.piece import Piece
from drafting.fabric import Fabric
from drafting.worn.nouns import Ply, Reals, SewnMesh

CLOTH = Ply(along=400.0, across=400.0, shear=100.0, bends_along=1e-5, bends_across=1e-5, weight=1.5, thickness=0.3)
PLIES: Mapping[str, Ply] = {"": CLOTH, "interfacing": CLOTH, "lining": CLOTH}

KNIT = Fabric(
    "Jersey, invented", usable_width=1500.0, weave="knit", stretch_along=0.5, stretch_across=0.6, recovery=0.97
)

SHIPPED = (
    "bodice",
    "close-top",
    "fitted-top",
    "sleeveless-top",
    "puffed-top",
    "shirt",
    "trousers",
    "breeches",
    "tailcoat",
)


def chart_body() -> Body:
    """Return an invented wearer between the sizes of a chart."""
    return wearer({"height": 1700, "bust_girth": 900, "waist_girth": 720, "hip_girth": 970})


def drafted(block: str, body: Body | None = None, choices: Mapping[str, Any] | None = None) -> Draft:
    """Return the draft of a block, in jersey where it is drafted for that."""
    cloth = KNIT if block.startswith(("close", "puffed")) else None
    return draft_garment(body or chart_body(), cloth, block, choices).draft


def corners(mesh: SewnMesh) -> tuple[Reals, Reals, Reals]:
    """Return the three corners of every flat triangle."""
    a, b, c = (mesh.flat[mesh.triangles[:, i]] for i in range(3))
    return a, b, c


def signed(mesh: SewnMesh) -> Reals:
    """Return the area of every flat triangle, above 0 where it lies as drafted."""
    a, b, c = corners(mesh)
    u, v = b - a, c - a
    area: Reals = (u[:, 0] * v[:, 1] - u[:, 1] * v[:, 0]) / 2
    return area


def angles(mesh: SewnMesh) -> Reals:
    """Return the sharpest angle of every flat triangle, degrees."""
    found = []
    points = corners(mesh)
    for i in range(3):
        here, one, two = points[i], points[i - 1], points[i - 2]
        u, v = one - here, two - here
        turn = np.abs(u[:, 0] * v[:, 1] - u[:, 1] * v[:, 0])
        found.append(np.degrees(np.arctan2(turn, (u * v).sum(axis=1))))
    sharpest: Reals = np.min(found, axis=0)
    return sharpest


def least_angle(mesh: SewnMesh) -> float:
    """Return the sharpest angle of all flat triangles, degrees."""
    return float(angles(mesh).min())


def least_angle_but_corners(mesh: SewnMesh, draft: Draft, within: float = 45.0) -> float:
    """Return the sharpest angle away from corners that the pieces have themselves, which are as sharp."""
    found, middles = angles(mesh), mesh.flat[mesh.triangles].mean(axis=1)
    for index, name in enumerate(piece.name for piece in mesh.pieces):
        for at, edge in enumerate(draft[name].edges if name in draft else ()):
            if min(draft[name].corner(at), _as_meshed(draft[name], at)) < 40.0:
                gap = np.hypot(*(middles - [edge.path.start.real, edge.path.start.imag]).T)
                found[(mesh.piece == index) & (gap < within)] = 180.0
    return float(found.min())


def _as_meshed(piece: Piece, at: int, step: float = 20.0) -> float:
    """Return the angle of a corner between the first steps of a mesh, degrees: edges that curve apart start so."""
    before, after = piece.edges[at - 1].path, piece.edges[at].path
    back = before.at(max(0.0, before.length - step)) - before.end
    ahead = after.at(min(step, after.length)) - after.start
    return float(abs(np.degrees(np.angle(ahead / back))))


def uneven_body() -> Body:
    """Return the wearer of the chart with one shoulder lower and one arm longer than the other."""
    body = chart_body()
    drop, arm = body["shoulder_drop"], body["arm_length"]
    return wearer(
        {
            "height": 1700,
            "bust_girth": 900,
            "waist_girth": 720,
            "hip_girth": 970,
            "shoulder_drop": (drop + 8, drop - 8),
            "arm_length": (arm + 6, arm - 6),
        }
    )


def flat_run(mesh: SewnMesh, level: int) -> float:
    """Return the length of a drafted girth on the flat pieces, mm: what lies between two pieces does not count."""
    line = mesh.levels[level]
    places = np.einsum("ij,ijk->ik", line.weights, mesh.flat[mesh.triangles[line.triangles]])
    steps = np.linalg.norm(np.diff(places, axis=0), axis=1)
    same = np.diff(mesh.piece[line.triangles]) == 0
    return float(steps[same & (steps < 9.0)].sum())
