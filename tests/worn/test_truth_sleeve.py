"""A sleeve set in 30 mm off its pitch drags: its cloth shears."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from drafting.draft.draft import Draft, Seam
from drafting.draft.piece import Edge, Piece
from drafting.worn.nouns import AtRest
from drafting.worn.settled.sheet import sheet_of
from tests.worn.dressed import dressed, on_form, the_form, trial_wearer
from tests.worn.garments import drafted

OFF = 30.0


def divided(piece: Piece, name: str, at: float, names: tuple[str, str]) -> Piece:
    """Return the piece with one edge made two, `at` mm along it."""
    edges: list[Edge] = []
    for edge in piece.edges:
        if edge.name != name:
            edges.append(edge)
            continue
        parts = zip(names, edge.path.split(at), strict=True)
        edges += [replace(edge, name=new, path=path, notches=(), sewn=None) for new, path in parts]
    return replace(piece, edges=tuple(edges))


def turned_sleeve(draft: Draft) -> Draft:
    """Return the shirt with its sleeve turned forward in the armhole by `OFF`.

    The cap runs from the back underarm to the front one; the armhole of the front up from the side.
    """
    sleeve, front = draft["sleeve"], draft["front"]
    sleeve = divided(sleeve, "cap_back", OFF, ("cap_low", "cap_back"))
    sleeve = divided(sleeve, "cap_front", OFF, ("cap_top", "cap_front"))
    front = divided(front, "armhole", OFF, ("armhole_low", "armhole"))
    seams = [seam for seam in draft.seams if "armhole" not in seam.name]
    seams += [
        Seam("front armhole", (("sleeve", "cap_front"),), (("front", "armhole"),)),
        Seam("back armhole", (("sleeve", "cap_back"), ("sleeve", "cap_top")), (("back", "armhole"),)),
        Seam("low armhole", (("sleeve", "cap_low"),), (("front", "armhole_low"),)),
    ]
    changed = {"sleeve": sleeve, "front": front}
    return replace(draft, pieces=tuple(changed.get(p.name, p) for p in draft.pieces), seams=tuple(seams))


def shear(rest: AtRest) -> float:
    """Return what 95 of 100 parts of the sleeve's area stay under: the cosine between its two threads."""
    mesh = rest.mesh
    sheet = sheet_of(mesh, np.zeros(mesh.count, dtype=bool), np.inf, np.inf)
    threads = np.einsum("tki,tkc->tic", sheet.slopes, rest.points[mesh.sewn] * 1e-3)
    sleeve = mesh.piece == [piece.name for piece in mesh.pieces].index("sleeve")
    found = np.abs((threads[sleeve, 0] * threads[sleeve, 1]).sum(axis=1))
    order = np.argsort(found)
    passed = np.cumsum(sheet.areas[sleeve][order])
    return float(found[order][np.searchsorted(passed, 0.95 * passed[-1])])


def test_a_loose_sleeve_30_mm_off_its_pitch_is_sheared_by_a_third_more() -> None:
    """Twice as much was hoped for; a shirt's wide sleeve turns round the arm and gives most of it back."""
    right = dressed("shirt")
    wrong = on_form(turned_sleeve(drafted("shirt", trial_wearer())), "shirt", the_form())
    assert right.settled
    assert wrong.settled
    assert shear(wrong) >= 4 / 3 * shear(right)
