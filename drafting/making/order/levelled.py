"""What hangs on the bias: hung for a day, levelled, and only then firmed, faced or turned along its hem."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.draft.bias import hung_pieces
from drafting.draft.by_role import edge_as, edges_as
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.fabric import Fabric, handling
from drafting.fabric.handling import has_pile
from drafting.making.docket import interfaced
from drafting.making.model import Said, said
from drafting.making.order.lining import HANG
from drafting.making.order.parts import Bench
from drafting.shaping.details.lapped_parts import LAP


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
    if any(_late(bench)):
        yield said("do.level_bands")


def _late(bench: Bench) -> Iterator[tuple[str, str]]:
    """Yield each piece with the interfacing that waits until it has hung: all of a flare, a band along a hem."""
    hung = hung_pieces(bench.garment.draft)
    for shell, stiff in interfaced(bench.garment):
        band = stiff.piece.role is PieceRole.HEM_BAND and shell.piece.name in hung
        if shell.piece.name in bench.flared or band:
            yield shell.piece.name, stiff.piece.name


def bands(bench: Bench, fabric: Fabric | None) -> None:
    """Firm the hems of what hung, along the level line; a hem that is cut later would cut its band."""
    found = list(_late(bench))
    for part in dict.fromkeys(bench.parts[shell] for shell, _ in found):
        here = [(shell, stiff) for shell, stiff in found if bench.parts[shell] == part]
        fused = fabric is None or handling(fabric).fuses
        pile = [said("do.fuse_pile")] if fabric is not None and fused and has_pile(fabric) else []
        stiffs = [bench.garment.draft[stiff] for _, stiff in here]
        lapped = [said("do.lapped", lap=LAP)] if any(edges_as(one, EdgeRole.LAP) for one in stiffs) else []
        count = sum(one.count for one in stiffs)
        bench.do(
            "finish",
            "fuse",
            "hem stiffened",
            [name for pair in here for name in pair],
            [said("do.fuse_bands", n=count), *lapped, *pile],
            cautions=[said("caution.fumes")] if fused else [],
            count=count,
            notions=[n for _, stiff in here for n in bench.named("interfacing", stiff)],
        )
