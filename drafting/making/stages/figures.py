"""Which drawing a step gets, by what it declares: its seams and their kinds, its edges, notions and pieces."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from drafting.draft.draft import EdgeRef, Notion, Seam
from drafting.draft.piece import NAMED_MARK, EdgeKind
from drafting.draft.roles import SeamKind
from drafting.making.model import Step
from drafting.making.order.parts import notion_key
from drafting.making.settings.pressing import encloses, pressed_towards
from drafting.making.stages.alone import alone
from drafting.making.stages.darts import dart_sewn, inner_darts_sewn, shaped, takes_dart
from drafting.making.stages.details import barred, clipped_curves, hung, pad_stitched, padded, taped_roll
from drafting.making.stages.faced import facing_turned
from drafting.making.stages.fused import interfacing_laid
from drafting.making.stages.joined import seam_joined
from drafting.making.stages.lined import lining_felled, lining_joined
from drafting.making.stages.own_twin import to_its_twin, to_itself
from drafting.making.stages.picture import Ink, InkMark, StageDrawing
from drafting.making.stages.sections import band_section
from drafting.making.stages.set_in import sleeve_set_in
from drafting.making.stages.sewn_on import applied, bones_drawn_in, marked_work, trimmed, zipped_in
from drafting.making.stages.shapes import pieces_along
from drafting.making.stages.small import small_thing_made
from drafting.making.stages.so_far import SoFar, with_seam, with_shape
from drafting.making.stages.standing import as_it_stands
from drafting.making.stages.stripped import strip_sewn
from drafting.making.stages.turned import edges_neatened, edges_turned


def figure(so_far: SoFar, step: Step) -> StageDrawing | None:
    """Return the drawing of one step of sewing, as the garment is when it begins; None where words suffice."""
    seams, own = step_seams(so_far, step), _pieces(so_far, step)
    if not own:
        return None
    found = _of_seams(so_far, seams, step) if seams else _of_pieces(so_far, own, step)
    if found and "trims" in step.does:
        found = clipped_curves(found)
    lit = [*_lit(seams), *((ref, ".".join(ref)) for ref in step.edges)]
    drawing = found or alone(so_far.goods, own, lit)
    return clipped(drawing) if "clips" in (step.holds, step.setting and step.setting.holds) else drawing


def clipped(drawing: StageDrawing) -> StageDrawing:
    """Return the drawing with a clip wherever it has a pin, for cloth in which every hole stays."""
    return replace(drawing, panels=tuple(replace(p, inks=tuple(map(_unpinned, p.inks))) for p in drawing.panels))


def _unpinned(ink: Ink) -> Ink:
    return replace(ink, kind="clip") if isinstance(ink, InkMark) and ink.kind == "pin" else ink


def _of_seams(so_far: SoFar, seams: Sequence[Seam], step: Step) -> StageDrawing | None:
    """Return the drawing of a step that sews seams: one alone, a sleeve set in, a small thing, a facing."""
    kinds = {seam.kind for seam in seams}
    if kinds == {SeamKind.SET_IN}:
        return sleeve_set_in(so_far, seams, basted=False)
    if kinds <= {SeamKind.MADE_UP} and not _one_between(seams):
        return small_thing_made(so_far, seams)
    if kinds == {SeamKind.FACING} and (bound := strip_sewn(so_far, seams)):
        return bound
    if kinds <= {SeamKind.FACING, SeamKind.FLY, SeamKind.MADE_UP} and (len(seams) > 1 or SeamKind.FACING in kinds):
        return facing_turned(so_far, seams)
    return seam_figure(so_far, seams[0], step) if len(seams) == 1 else None


def _one_between(seams: Sequence[Seam]) -> bool:
    """Return whether there is one seam only, between two pieces or of a piece to its twin."""
    pieces = pieces_along((*seams[0].a, *seams[0].b))
    return len(seams) == 1 and (len(pieces) > 1 or seams[0].a == seams[0].b)


def seam_figure(so_far: SoFar, seam: Seam, step: Step) -> StageDrawing | None:
    """Return the drawing of one seam."""
    press = step.setting.press if step.setting else "not"
    pieces = pieces_along((*seam.a, *seam.b))
    shape = so_far.goods.shapes[pieces[0]]
    if takes_dart(seam, shape) and len(pieces) == 1:
        return dart_sewn(shape, seam)
    if seam.a == seam.b:
        return to_its_twin(so_far, seam)
    if len(pieces) == 1:
        return to_itself(so_far, seam, press)
    draft = so_far.goods.garment.draft
    found = seam_joined(so_far, seam, press, pressed_towards(draft, seam))
    if found and encloses(draft, seam):
        return replace(found, panels=(*found.panels, band_section()))
    return found


# --------------------------------------------------------------------------------- without a seam


def _of_pieces(so_far: SoFar, own: Sequence[str], step: Step) -> StageDrawing | None:
    """Return the drawing of a step that sews no seam: by what lies in it, then by its edges and marks."""
    goods = so_far.goods
    shapes = {name: goods.shapes[name] for name in own}
    stiff = [(s, n) for n, shape in shapes.items() for s in shape.piece.stiffens if s in shapes]
    linings = [name for name, shape in shapes.items() if shape.piece.material == "lining"]
    darted = [shape for shape in shapes.values() if shape.piece.darts]
    if step.verb in STANDING:
        return STANDING[step.verb](so_far, own)
    if stiff:
        laid = interfacing_laid(goods, stiff, fused="presses" in step.does)
        shell, canvas = (shapes[name] for name in stiff[0])
        padded = any(one.key.endswith(".pad_stitch") for one in step.say)
        return replace(laid, panels=(*laid.panels[:1], pad_stitched(shell, canvas))) if padded else laid
    if linings:
        return (lining_felled if step.verb == "fell" else lining_joined)(so_far, linings)
    if step.verb == "dart" and darted:
        return inner_darts_sewn(darted[0])
    if step.edges:
        return _of_edges(so_far, step)
    if step.verb == "baste" and (sleeves := _set_in_between(so_far, own)):
        return sleeve_set_in(so_far, sleeves, basted=True)
    return _of_marks(so_far, own, step) or as_it_stands(so_far, own)


def _of_edges(so_far: SoFar, step: Step) -> StageDrawing:
    notions = _notions(so_far, step)
    kinds = {so_far.goods.drafted(ref).kind for ref in step.edges}
    if any(notion.what == "zip" for notion in notions):
        return zipped_in(so_far.goods, step.edges)
    if kinds == {EdgeKind.FREE}:
        return edges_neatened(so_far, step.edges)
    return edges_turned(so_far, step.edges, elastic=any(notion.what == "elastic" for notion in notions))


def _toile(so_far: SoFar, own: Sequence[str]) -> StageDrawing:
    """Return what is tried on in cheap cloth: its pieces as all their seams leave them."""
    for seam in so_far.goods.seams.values():
        if set(pieces_along((*seam.a, *seam.b))) <= set(own):
            so_far = with_seam(so_far, seam)
    return as_it_stands(so_far, own, over=True)


STANDING: dict[str, Callable[[SoFar, Sequence[str]], StageDrawing]] = {
    "toile": _toile,
    "starch": as_it_stands,
    "hang": hung,
    "pad": padded,
}
"""Work on the garment as it stands, or hangs."""


MARKED = {
    "button": ("button", "buttonhole"),
    "buttonhole": ("buttonhole",),
    "trim": ("appliqué", "pocket", "strap"),
}
"""Marks of the draft that a kind of work goes by."""


def _of_marks(so_far: SoFar, own: Sequence[str], step: Step) -> StageDrawing | None:
    goods = so_far.goods
    if step.verb == "bar":
        return barred(goods, step.along)
    if step.verb == "stay":
        return taped_roll(goods, own)
    if step.verb == "bone":
        return bones_drawn_in(so_far, own)
    if step.verb == "trim":
        for name in own:
            if marks := [m for m in goods.shapes[name].piece.placements if m.piece and m.piece in own]:
                return applied(goods, name, marks)
        return trimmed(goods, step.along) if step.along else None
    notions = {notion.what for notion in _notions(so_far, step)}
    if "elastic" in notions:
        refs = [ref for notion in _notions(so_far, step) for ref in notion.edges]
        return edges_turned(so_far, refs, elastic=True)
    if step.verb not in MARKED:
        return None
    usual = MARKED[step.verb]
    whats = (*usual, *sorted(notions), "eyelet")
    if own_marks := marked_work(goods, own, tuple(sorted(notions - set(usual)))):
        return own_marks
    named = {notion.mark for notion in _notions(so_far, step)}
    return marked_work(goods, own, whats) or marked_work(goods, own, (NAMED_MARK,), named)


def _notions(so_far: SoFar, step: Step) -> list[Notion]:
    return [n for n in so_far.goods.garment.draft.notions if notion_key(n) in step.notions]


def _set_in_between(so_far: SoFar, own: Sequence[str]) -> list[Seam]:
    """Return the seams that set a sleeve of these pieces into an armhole of them."""
    return [
        seam
        for seam in so_far.goods.seams.values()
        if seam.kind is SeamKind.SET_IN and set(pieces_along((*seam.a, *seam.b))) <= set(own)
    ]


# ------------------------------------------------------------------------------------- what stands


def after(so_far: SoFar, step: Step) -> SoFar:
    """Return the garment as it is when a step is done."""
    for seam in step_seams(so_far, step):
        shape = so_far.goods.shapes[seam.a[0][0]]
        so_far = with_shape(so_far, shaped(shape, seam)) if takes_dart(seam, shape) else with_seam(so_far, seam)
    return so_far


def step_seams(so_far: SoFar, step: Step) -> list[Seam]:
    return [so_far.goods.seams[name] for name in step.seams]


def _pieces(so_far: SoFar, step: Step) -> list[str]:
    """Return the garment's own names of the step's pieces."""
    named = {f"{step.garment}.{name}": name for name in so_far.goods.shapes}
    return [named[piece] for piece in step.pieces if piece in named]


def _lit(seams: Sequence[Seam]) -> Iterator[tuple[EdgeRef, str]]:
    for seam in seams:
        yield from ((ref, seam.name) for ref in dict.fromkeys((*seam.a, *seam.b)))
