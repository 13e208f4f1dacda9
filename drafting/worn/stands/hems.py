"""Where the lowest hem of a garment hangs: from above, over the floor, and behind the seat."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np

from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.roles import EdgeRole
from drafting.worn.nouns import AtRest, Limb, Reals, SewnMesh
from drafting.worn.stands.model import HemWorn, Hoop

ON_THE_FLOOR = 10.0
"""mm over the floor below which a hem lies on it (by eye)."""


def hems_of(draft: Draft) -> tuple[EdgeRef, ...]:
    """Return the edges that are declared hems."""
    return tuple((p.name, e.name) for p in draft.pieces for e in p.edges if e.role is EdgeRole.HEM)


def body_hems(mesh: SewnMesh, hems: Iterable[EdgeRef]) -> list[EdgeRef]:
    """Return those hems of a garment that no sleeve ends in: of its body, or of its legs."""
    limbs = {piece.name: piece.limb for piece in mesh.pieces}
    return [ref for ref in hems if ref in mesh.edges and limbs.get(ref[0]) is not Limb.ARM]


def hem_lines(rest: AtRest, hems: Iterable[EdgeRef]) -> tuple[Reals, ...]:
    """Return the hem of a garment's body, or of its legs, as lines (N, 3) mm, both hands.

    A sleeve's is none of them: arms held out are as wide as no hem. A top that ends at its waist has none.
    """
    mesh = rest.mesh
    lines = [rest.points[mesh.edges[ref]] for ref in body_hems(mesh, hems)]
    if mesh.halved:
        lines += [line * (-1, 1, 1) for line in lines]
    return tuple(lines)


def hem_worn(
    lines: tuple[Reals, ...], seat_back: float, widths: Iterable[float] = (), hoop: Hoop | None = None
) -> HemWorn | None:
    """Return what a hem measures; `seat_back` is how far back the form's seat lies (y, mm).

    `widths` are those of other runs of the same hem, `hoop` the bone round it. None where there is no hem.
    """
    if not lines:
        return None
    points = np.concatenate(lines)
    width = hem_width(lines)
    every = (width, *widths)
    lowest, highest = float(points[:, 2].min()), float(points[:, 2].max())
    reach = float(points[:, 1].max()) - seat_back
    return HemWorn(
        width=width,
        back_reach=reach,
        lowest=lowest,
        highest=highest,
        range=(min(every), max(every)),
        trails=sum(map(_on_the_floor, lines)),
        hoop=hoop,
    )


def _on_the_floor(line: Reals) -> float:
    """Return how much of a line (N, 3) lies on the floor, mm."""
    low = line[:, 2] < ON_THE_FLOOR
    return float(np.linalg.norm(np.diff(line, axis=0), axis=1)[low[1:] & low[:-1]].sum())


def hem_width(lines: tuple[Reals, ...]) -> float:
    """Return how wide a hem stands from left to right, mm."""
    across = np.concatenate(lines)[:, 0]
    return float(across.max() - across.min())
