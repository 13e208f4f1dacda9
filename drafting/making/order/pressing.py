"""What is said wherever a seam is joined: ease, gathers, which way it is pressed."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.checks.enclosed import first_row, french, narrowest
from drafting.draft.draft import Draft, Seam
from drafting.draft.gathers import Gathers
from drafting.draft.piece import Edge
from drafting.fabric import Fabric, handling
from drafting.fabric.handling import frays
from drafting.making.model import Said, Setting, said
from drafting.making.order.parts import Bench, base_of
from drafting.making.seam_lengths import has_half
from drafting.making.settings.pressing import encloses, side_pressed
from drafting.making.settings.stitches import OVEREDGE


def overedged(setting: Setting | None) -> bool:
    """Return whether the seam's own stitch neatens it: it is never overcast a second time."""
    return setting is not None and setting.stitch in OVEREDGE


def neatened(bench: Bench, setting: Setting | None) -> bool:
    """Return whether raw allowances are overcast: they fray, and no lining covers them (common practice).

    It is asked of the cloths that meet there: a waistcoat's back is of its lining's.
    """
    if overedged(setting) or bench.fabric is None or bench.lined():
        return False
    how, lies_open = _neatens(bench.fabric, setting), setting is not None and setting.press == "open"
    return how == "overcast" or (how == "french" and lies_open)


def _neatens(fabric: Fabric, setting: Setting | None) -> str:
    """Return how raw edges are neatened: as the cloths of the seam are, else as the garment's."""
    if setting is not None and setting.neatens:
        return setting.neatens
    return handling(fabric).neatens if frays(fabric) else "none"


def narrowed(bench: Bench, seam: Seam) -> Iterator[Said]:
    """Yield how a sheer seam that is no French one is neatened: nothing but its two edges may show through."""
    fabric, draft = bench.fabric, bench.garment.draft
    setting = bench.settings.get((bench.garment.name, seam.name))
    if fabric is None or bench.lined() or overedged(setting) or encloses(draft, seam):
        return
    if _neatens(fabric, setting) == "french" and not french(draft, seam, fabric):
        yield said("do.neaten_narrow")


def raw_edges(bench: Bench, seam: Seam) -> Iterator[Said]:
    """Yield how the raw edges of a seam that is pressed open are neatened, where they have to be."""
    if neatened(bench, bench.settings.get((bench.garment.name, seam.name))):
        yield said("do.neaten_open")


def pressed(bench: Bench, seam: Seam) -> Iterator[Said]:
    """Yield how a seam's allowances are neatened and pressed, as its setting has it."""
    setting = bench.settings.get((bench.garment.name, seam.name))
    if french(bench.garment.draft, seam, bench.fabric):
        row = first_row(narrowest(bench.garment.pattern, seam))
        yield said("do.french", row=row, onto=side_pressed(bench.garment.draft, seam))
        return
    raw = neatened(bench, setting)
    match setting.press if setting else "open":
        case "open":
            yield from raw_edges(bench, seam)
            yield said("do.press_open")
        case "to one side":
            if raw:
                yield said("do.neaten_side")
            yield from narrowed(bench, seam)
            yield said("do.press_side", onto=side_pressed(bench.garment.draft, seam))
        case _:
            if raw:
                yield said("do.neaten_side")
            yield said("do.press_not")


def gathers_on(draft: Draft, seam: Seam, run: Gathers) -> Iterator[Said]:
    """Yield which edge of a seam is gathered, where the other one is what a reader would take it for, and how."""
    on = next(ref for ref in (*seam.a, *seam.b) if gathered_edge(draft.edge(ref)))
    yield said("do.gather_on", piece=base_of(draft[on[0]]), edge=str(draft.edge(on).role))
    yield from gathers(run, whole=has_half(draft, seam))


def gathered_edge(edge: Edge) -> bool:
    """Return whether an edge is drawn up where it is sewn."""
    return edge.length > edge.sewn_length + 1e-9


def gathers(run: Gathers, *, whole: bool = False) -> Iterator[Said]:
    """Yield how a stretch is gathered and held: on one hand, or all of what is drawn a half and sewn `whole`."""
    drawn = 2 * run.drawn if whole else run.drawn
    yield said("do.gather_between" if run.between else "do.gather", ratio=run.ratio, drawn=drawn)
    yield said("do.quarters")


def gathers_of_both(draft: Draft, seam: Seam, both: tuple[Gathers, Gathers]) -> Iterator[Said]:
    """Yield how both edges of a seam are gathered, before they are sewn to each other."""
    for side, run in zip((seam.a, seam.b), both, strict=True):
        yield said("do.gather_piece", piece=base_of(draft[side[0][0]]), ratio=run.ratio, drawn=run.drawn)
    yield said("do.quarters")
