"""A sleeve set in 30 mm off its pitch drags: its cloth shears."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from drafting.draft.draft import Draft, Seam
from drafting.draft.frame import BodyHeight
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


def below_cap(rest: AtRest) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Return of the sleeve's triangles from cap to elbow: area, cosine between the two threads, least stretch.

    There a drag is looked for. The cap is sheared over the round of the shoulder at any pitch, and below the elbow
    a bent arm shears the cloth.
    """
    mesh = rest.mesh
    sheet = sheet_of(mesh, np.zeros(mesh.count, dtype=bool), np.inf, np.inf)
    threads = np.einsum("tki,tkc->tic", sheet.slopes, rest.points[mesh.sewn] * 1e-3)
    index = [piece.name for piece in mesh.pieces].index("sleeve")
    elbow = mesh.pieces[index].frame.at(BodyHeight.ELBOW)
    assert elbow is not None
    height = mesh.flat[mesh.triangles][:, :, 1].mean(axis=1)  # the cap starts at 0
    own = (mesh.piece == index) & (height > elbow.imag) & (height < 0.0)
    metric = np.einsum("tic,tjc->tij", threads[own], threads[own])
    least = np.sqrt(np.maximum(np.linalg.eigvalsh(metric)[:, 0], 0.0)) - 1.0
    return sheet.areas[own], (threads[own, 0] * threads[own, 1]).sum(axis=1), least


def shear(rest: AtRest) -> float:
    """Return the root mean square over the cloth from cap to elbow of the cosine between its two threads."""
    area, cosine, _ = below_cap(rest)
    return float(np.sqrt(area @ cosine**2 / area.sum()))


def in_folds(rest: AtRest) -> float:
    """Return how much the cloth from cap to elbow is drawn together into folds on average, a fraction."""
    area, _, least = below_cap(rest)
    return float(area @ np.maximum(-least, 0.0) / area.sum())


def test_a_sleeve_30_mm_off_its_pitch_is_sheared_and_folded_twice_as_much_from_cap_to_elbow() -> None:
    right = dressed("shirt")
    wrong = on_form(turned_sleeve(drafted("shirt", trial_wearer())), "shirt", the_form())
    assert right.settled
    assert wrong.settled
    print(shear(right), shear(wrong), in_folds(right), in_folds(wrong))
    assert shear(wrong) >= 2.0 * shear(right)
    assert in_folds(wrong) >= 2.0 * in_folds(right)
