"""Interfacings laid on before anything is shaped: fused or sewn in, whole or in parts, each hand's in one step.

Common practice: flat and first; those of a flare wait until its panels are joined and have hung.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from drafting.draft.bias import hung_pieces
from drafting.draft.by_role import edges_as
from drafting.draft.pattern import CutPiece
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.fabric import Fabric, handling
from drafting.fabric.handling import has_pile
from drafting.making.docket import interfaced, is_block_fused
from drafting.making.model import Said, said
from drafting.making.order.parts import Bench, base_of, own_each_hand
from drafting.making.order.seam_kinds import kind_of
from drafting.shaping.details.lapped_parts import LAP


def stiffen(bench: Bench, fabric: Fabric | None) -> None:
    """Fuse or baste every interfacing to its piece, but those of a flare, which is joined first."""
    flared = {
        p for s in bench.garment.draft.seams if kind_of(bench.garment.draft, s) == "flare" for p, _ in (*s.a, *s.b)
    }
    hung = hung_pieces(bench.garment.draft)
    groups: dict[tuple[str, str], list[tuple[Piece, CutPiece]]] = {}
    for shell, stiff in interfaced(bench.garment):
        waits = stiff.piece.role is PieceRole.HEM_BAND and shell.piece.name in hung
        if shell.piece.name not in flared and not waits:
            own = "" if edges_as(stiff.piece, EdgeRole.LAP) else base_of(stiff.piece)
            groups.setdefault((base_of(shell.piece), own), []).append((shell.piece, stiff))
    fused = fabric is None or handling(fabric).fuses
    for (base, whole), found in groups.items():
        shells, stiffs = list(dict.fromkeys(s for s, _ in found)), [stiff.piece for _, stiff in found]
        names = whole or " and ".join(dict.fromkeys(base_of(stiff) for stiff in stiffs))
        lapped = [] if whole else [said("do.lapped", lap=LAP)]
        block = "do.fuse_block" if is_block_fused(found[0][1]) else "do.fuse"
        key = block if fused else "do.baste_interfacing"
        bench.do(
            "prepare",
            "fuse",
            f"{base} stiffened",
            list(dict.fromkeys(piece.name for shell, stiff in found for piece in (shell, stiff.piece))),
            [
                *_one_hand(shells, stiffs),
                said(key, piece=base, stiff=names),
                *lapped,
                *own_each_hand(shells if len(shells) > 1 else [stiff for stiff in stiffs if stiff.hand]),
                *_inside(bench, shells[0], fabric),
            ],
            cautions=[said("caution.fumes")] if fused else [],
            count=sum(stiff.count for stiff in stiffs),
            notions=[notion for stiff in stiffs for notion in bench.named("interfacing", stiff.name)],
        )


def _one_hand(shells: Sequence[Piece], stiffs: Sequence[Piece]) -> list[Said]:
    """Return that one hand of a pair alone is stiffened."""
    hands = {stiff.hand for stiff in stiffs}
    if len(hands) > 1 or "" in hands or shells[0].hand:
        return []
    return [said("do.one_hand", hand=hands.pop(), piece=base_of(shells[0]))]


def _inside(bench: Bench, piece: Piece, fabric: Fabric | None) -> Iterator[Said]:
    """Yield how a pile is fused uncrushed, and what a canvas that is sewn in is pad-stitched to."""
    if fabric is not None and handling(fabric).fuses:
        if has_pile(fabric):
            yield said("do.fuse_pile")
        return
    rolls = any(mark.what == "roll line" for mark in piece.placements) and piece.role not in TURNED_OVER
    if fabric is not None and rolls and handling(fabric).holds != "clips" and handling(fabric).neatens != "french":
        yield said("do.pad_stitch", piece=piece.name)


TURNED_OVER = (PieceRole.COLLAR_STAND,)
"""What is folded over on a roll line and never pad-stitched: a wing collar's tips. Nor is sheer cloth, through
which every stitch shows (common practice)."""
