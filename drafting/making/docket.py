"""The docket: what is cut from which cloth, how often, for which hand, how it lies."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.alter.stiffening import BLOCK_FUSE
from drafting.costume.garment import MadeGarment
from drafting.costume.lays import materials
from drafting.costume.make import Made
from drafting.draft.pattern import CutPiece
from drafting.draft.piece import Piece
from drafting.fabric import Fabric, handling
from drafting.layout import Lay
from drafting.making.model import DocketRow

FACES = {
    "open": "right side up",
    "folded": "right sides together",
    "crosswise": "right sides together",
    "double": "right sides together",
}


def docket(made: Made) -> tuple[DocketRow, ...]:
    """Return one row a piece, cloth by cloth, in the order the garments name them."""
    return tuple(_rows(made))


def _rows(made: Made) -> Iterator[DocketRow]:
    lays = {lay.role: lay for lay in made.lays}
    fused = {
        (g.name, shell.piece.name)
        for g in made.garments
        for shell, stiff in interfaced(g)
        if is_block_fused(stiff) and fuses(made, g)
    }
    for cloth, parts in materials(made):
        for part in parts:
            piece = part.cut.piece
            yield DocketRow(
                cloth=cloth.role,
                garment=part.garment,
                piece=piece.name,
                count=piece.count,
                hand=hand_of(piece),
                grain=piece.grain,
                fold_edge=piece.fold_edge.name if piece.fold_edge else "",
                face=_face(lays.get(cloth.role), made.costume.fabrics.get(cloth.role)),
                fused_first=(part.garment, piece.name) in fused,
            )


def fuses(made: Made, garment: MadeGarment) -> bool:
    """Return whether a garment's own cloth takes a fusible; one that nobody described is taken to."""
    fabric = made.costume.fabrics.get(garment.fabric)
    return fabric is None or handling(fabric).fuses


def hand_of(piece: Piece) -> str:
    """Return `on the fold`, `pair`, `left`, `right` or `single`."""
    if piece.fold_edge is not None:
        return "on the fold"
    if piece.pair:
        return "pair"
    return piece.hand or "single"


def _face(lay: Lay | None, fabric: Fabric | None) -> str:
    if lay is None or lay.lay == "open" or fabric is None:
        return FACES[lay.lay] if lay else FACES["open"]
    layers = handling(fabric).layers
    return FACES[lay.lay] if layers == "single" else layers


def interfaced(garment: MadeGarment) -> Iterator[tuple[CutPiece, CutPiece]]:
    """Yield each piece that is stiffened with its interfacing."""
    shells = {cut.piece.name: cut for cut in garment.pattern.pieces if not cut.piece.material}
    for cut in garment.pattern.pieces:
        if cut.piece.material == "interfacing":
            yield from ((shells[name], cut) for name in cut.piece.stiffens if name in shells)


def is_block_fused(stiff: CutPiece) -> bool:
    """Return whether an interfacing reaches into the seams, so that it is fused before cutting."""
    return max(stiff.allowances.values(), default=0.0) > BLOCK_FUSE
