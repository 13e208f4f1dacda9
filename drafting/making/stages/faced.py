"""Facings and what is turned inside: right sides together along the edge, then turned in, hidden behind it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from drafting.draft.draft import Seam
from drafting.draft.roles import SeamKind
from drafting.geometry.moves import Motion
from drafting.geometry.polylines import left_of
from drafting.making.stages.joined import right_sides_together
from drafting.making.stages.laid import cloth, name_on
from drafting.making.stages.own_twin import to_its_twin
from drafting.making.stages.pairing import Pairing, paired
from drafting.making.stages.picture import Ink, InkLine, Panel, StageDrawing, closer, drawn_panel
from drafting.making.stages.rows import in_rows
from drafting.making.stages.shapes import CHORD, laid_edges
from drafting.making.stages.so_far import SoFar, with_seam


def facing_turned(so_far: SoFar, seams: Sequence[Seam]) -> StageDrawing | None:
    """Return each seam right sides together, and the last of them turned in; None where none can be laid."""
    scenes: list[list[Ink]] = []
    first: tuple[Seam, Pairing] | None = None
    for seam in seams:
        if seam.a == seam.b:
            scenes.append(list(to_its_twin(so_far, seam).panels[0].inks))
            continue
        pairing = paired(so_far, seam)
        if pairing is not None:
            scenes.append(list(right_sides_together(so_far, seam, pairing)))
            first = first or (seam, pairing)
        so_far = with_seam(so_far, seam)
    if first is None:
        return None
    turned = topstitched(so_far, *first) if any(s.kind is SeamKind.FLY for s in seams) else None
    return StageDrawing("faced", (*grouped(scenes), turned or closer(drawn_panel(_turned_in(so_far, *first)))))


def grouped(scenes: Sequence[Sequence[Ink]]) -> list[Panel]:
    """Return one panel for the first scene and one for all others, each as near as its work."""
    rest = scenes[1:]
    found = [closer(drawn_panel(scenes[0]))] if scenes else []
    return [*found, closer(drawn_panel(in_rows(rest)))] if rest else found


def topstitched(so_far: SoFar, seam: Seam, pairing: Pairing) -> Panel | None:
    """Return a part right side up with the stitching that its draft marks, the zip behind its edge."""
    shapes = so_far.goods.shapes
    inks: list[Ink] = []
    for name, placing in pairing.lower.items():
        marks = [mark for mark in shapes[name].piece.placements if mark.what == "stitching"]
        inks.append(cloth(shapes[name], placing))
        inks += [InkLine("sewing", placing(mark.path.points(CHORD)), mark.name) for mark in marks]
    if len(inks) == len(pairing.lower):
        return None
    edges = laid_edges(so_far.goods, pairing.lower_chain, pairing.lower)
    inks += [InkLine("hidden", left_of(line, by)) for line in edges for by in (5.0, 16.0)]
    inks += [InkLine("sewn", line, seam.name) for line in edges]
    return closer(drawn_panel(inks))


def _turned_in(so_far: SoFar, seam: Seam, pairing: Pairing) -> Iterator[Ink]:
    """Yield the part right side up, what was turned behind it as a hidden line, the edge between them firm."""
    shapes = so_far.goods.shapes
    for name, placing in pairing.upper.items():
        yield cloth(shapes[name], placing)
    for name, placing in pairing.lower.items():
        yield cloth(shapes[name], placing)
    for name, placing in pairing.upper.items():
        yield InkLine("hidden", placing(shapes[name].outline))
    yield from (
        InkLine("sewn", line, seam.name) for line in laid_edges(so_far.goods, pairing.lower_chain, pairing.lower)
    )
    for name, placing in pairing.lower.items():
        if isinstance(placing, Motion):
            yield name_on(shapes[name], placing(shapes[name].outline))
