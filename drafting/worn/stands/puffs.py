"""How far a puffed sleeve stands: by the arch of its cross-section, as gathers are finer than the mesh."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from drafting.draft.draft import Draft
from drafting.draft.roles import SLEEVES, EdgeRole, LevelKind
from drafting.ground.names import name_in_words
from drafting.worn.hang import puff
from drafting.worn.nouns import AtRest, Limb, Ply, Whole
from drafting.worn.stands.words import Remark, remark

GATHERED = 0.97
"""An edge that is sewn to less than this share of its length is gathered, not eased (ours)."""

SPARE = 1.03
"""A sleeve puffs where it has so many times the way from its crown to its hem in cloth (ours)."""


def puffs_told(rest: AtRest, draft: Draft) -> Iterator[Remark]:
    """Yield how far each gathered sleeve stands off the straight way from its crown to where it is close again.

    That is at a hem that is gathered, else at the elbow, as in a leg-of-mutton sleeve; one that hangs open stands
    off nowhere.
    """
    mesh = rest.mesh
    for number, piece in enumerate(mesh.pieces):
        if piece.limb is not Limb.ARM or piece.hand == "right" or not is_gathered(draft, piece.name):
            continue
        crown, close = _ends(rest, draft, number)
        if close is None:
            continue
        cloth = float(np.linalg.norm(mesh.flat[crown] - mesh.flat[close]))
        span = float(np.linalg.norm(rest.points[mesh.merged[crown]] - rest.points[mesh.merged[close]]))
        if cloth > SPARE * span:
            found = puff(_ply_of_piece(rest, number), cloth, span)
            facts = {"off": found.stands_off, "widest": found.widest_at}
            yield remark("puff.stands", garment=name_in_words(mesh.garment), **facts)


def is_gathered(draft: Draft, name: str) -> bool:
    """Return whether a piece is a sleeve with an edge that is gathered or drawn up by elastic."""
    piece = next((p for p in draft.pieces if p.name == name and p.role in SLEEVES), None)
    return piece is not None and any(e.sewn_length < GATHERED * e.length for e in piece.edges)


def _ends(rest: AtRest, draft: Draft, number: int) -> tuple[int, int | None]:
    """Return the flat vertices at a sleeve's highest place, and straight below it where it is close again."""
    mesh, piece = rest.mesh, draft[rest.mesh.pieces[number].name]
    own: Whole = np.unique(mesh.triangles[mesh.piece == number])
    flat = mesh.flat[own]
    crown = int(own[flat[:, 1].argmax()])
    hems = [edge for edge in piece.edges if edge.role is EdgeRole.HEM]
    if hems and not any(edge.sewn_length < GATHERED * edge.length for edge in hems):
        elbow = next((level for level in piece.levels if level.kind is LevelKind.ELBOW and level.paths), None)
        if elbow is None:
            return crown, None
        path = elbow.paths[0]
        aside = np.abs(flat - (mesh.flat[crown, 0], path.at(path.length / 2).imag)).max(axis=1)
        return crown, int(own[aside.argmin()])
    ends = [mesh.edges[piece.name, edge.name] for edge in hems]
    low = own[np.isin(mesh.merged[own], np.concatenate(ends))] if ends else own[flat[:, 1] < flat[:, 1].min() + 30]
    aside = np.abs(mesh.flat[low, 0] - mesh.flat[crown, 0])
    return crown, int(low[aside.argmin()])


def _ply_of_piece(rest: AtRest, number: int) -> Ply:
    first = int(np.flatnonzero(rest.mesh.piece == number)[0])
    return rest.mesh.plies[int(rest.mesh.ply[first])]
