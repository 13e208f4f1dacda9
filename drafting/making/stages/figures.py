"""Which drawing a step gets, by what it declares: its seams and their kinds, its edges, notions and pieces."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.draft.draft import EdgeRef, Seam
from drafting.making.model import Step
from drafting.making.settings.pressing import pressed_towards
from drafting.making.stages.alone import alone
from drafting.making.stages.darts import dart_sewn, inner_darts_sewn, shaped, takes_dart
from drafting.making.stages.joined import seam_joined
from drafting.making.stages.own_twin import to_its_twin, to_itself
from drafting.making.stages.picture import StageDrawing
from drafting.making.stages.shapes import pieces_along
from drafting.making.stages.so_far import SoFar, with_seam, with_shape


def figure(so_far: SoFar, step: Step) -> StageDrawing | None:
    """Return the drawing of one step of sewing, as the garment is when it begins; None where words suffice."""
    seams = _seams(so_far, step)
    own = _pieces(so_far, step)
    if len(seams) == 1:
        found = seam_figure(so_far, seams[0], step)
        if found:
            return found
    if step.verb == "dart" and not seams and own:
        return inner_darts_sewn(so_far.goods.shapes[own[0]])
    lit = [*_lit(seams), *((ref, ".".join(ref)) for ref in step.edges)]
    return alone(so_far.goods, own, lit) if own else None


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
    return seam_joined(so_far, seam, press, pressed_towards(so_far.goods.garment.draft, seam))


def after(so_far: SoFar, step: Step) -> SoFar:
    """Return the garment as it is when a step is done."""
    for seam in _seams(so_far, step):
        shape = so_far.goods.shapes[seam.a[0][0]]
        so_far = with_shape(so_far, shaped(shape, seam)) if takes_dart(seam, shape) else with_seam(so_far, seam)
    return so_far


def _seams(so_far: SoFar, step: Step) -> list[Seam]:
    return [so_far.goods.seams[name] for name in step.seams]


def _pieces(so_far: SoFar, step: Step) -> list[str]:
    """Return the garment's own names of the step's pieces."""
    named = {f"{step.garment}.{name}": name for name in so_far.goods.shapes}
    return [named[piece] for piece in step.pieces if piece in named]


def _lit(seams: list[Seam]) -> Iterator[tuple[EdgeRef, str]]:
    for seam in seams:
        yield from ((ref, seam.name) for ref in dict.fromkeys((*seam.a, *seam.b)))
