"""What hangs on the bias: hung for a day, levelled, and only then firmed, faced or turned along its hem."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.draft.bias import hung_pieces
from drafting.draft.by_role import edge_as
from drafting.draft.roles import EdgeRole
from drafting.fabric import Fabric, handling
from drafting.fabric.handling import has_pile
from drafting.making.docket import interfaced
from drafting.making.model import Said, said
from drafting.making.order.lining import HANG
from drafting.making.order.parts import Bench


def hang(bench: Bench) -> None:
    """Let what lies on the bias drop for a day, and level it."""
    draft = bench.garment.draft
    falls = [name for name, piece in hung_pieces(draft).items() if not piece.material]
    if not (hung := list(dict.fromkeys([*bench.flared, *falls]))):
        return
    by_neck = any(edge_as(draft[name], EdgeRole.NECK) for name in hung)
    bench.do(
        "finish",
        "hang",
        "levelled",
        hung,
        [said("do.hang_neck" if by_neck else "do.hang", hours=HANG), said("do.level"), *_bands_levelled(bench)],
        wait=HANG,
        count=1,
        cautions=[said("caution.trip")],
    )


def _bands_levelled(bench: Bench) -> Iterator[Said]:
    """Yield that the bands which firm a levelled hem are cut to its line, where there are some."""
    if any(shell.piece.name in bench.flared for shell, _ in interfaced(bench.garment)):
        yield said("do.level_bands")


def bands(bench: Bench, fabric: Fabric | None) -> None:
    """Firm the hems of what hung, along the level line; a hem that is cut later would cut its band."""
    found = [
        (shell.piece.name, stiff.piece.name)
        for shell, stiff in interfaced(bench.garment)
        if shell.piece.name in bench.flared
    ]
    for part in dict.fromkeys(bench.parts[shell] for shell, _ in found):
        here = [(shell, stiff) for shell, stiff in found if bench.parts[shell] == part]
        fused = fabric is None or handling(fabric).fuses
        pile = [said("do.fuse_pile")] if fabric is not None and fused and has_pile(fabric) else []
        count = sum(bench.garment.draft[stiff].count for _, stiff in here)
        bench.do(
            "finish",
            "fuse",
            "hem stiffened",
            [name for pair in here for name in pair],
            [said("do.fuse_bands", n=count), *pile],
            cautions=[said("caution.fumes")] if fused else [],
            count=count,
            notions=[n for _, stiff in here for n in bench.named("interfacing", stiff)],
        )
