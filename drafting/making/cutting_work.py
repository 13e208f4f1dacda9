"""How each cloth is cut: spread, direction, what holds it, which blade; one step a cloth."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.costume.make import Made
from drafting.draft.by_role import edge_as
from drafting.draft.piece import Piece
from drafting.draft.roles import COLLARS, FACINGS, EdgeRole
from drafting.fabric import Fabric, handling
from drafting.fabric.handling import has_pile, is_long_pile
from drafting.fabric.sorts import Sort
from drafting.ground.names import name_in_words
from drafting.layout import Lay
from drafting.layout.cloth import LENGTHWISE
from drafting.layout.on_bars import matched_on
from drafting.making.model import Said, Step, Supply, said
from drafting.making.treating import any_fused

AN_OUTLINE = 6.0
"""minutes to cut one outline with its notches (a guess)."""

SPREAD: dict[Sort, str] = {"sheer": "cut.sheer", "lace": "cut.lace", "sequinned": "cut.sequins"}
"""What a sort of cloth asks for on the table (common practice)."""

SPREADING = 15.0
"""minutes to spread a cloth and weigh or pin the pieces down (a guess)."""


def cutting_steps(made: Made, blade: str = "shears") -> tuple[Step, ...]:
    """Return one step for each lay of `made`: it turns a cloth that is ready into its pieces."""
    return tuple(_cut(made, lay, blade) for lay in made.lays)


def _cut(made: Made, lay: Lay, blade: str) -> Step:
    fabric = made.costume.fabrics.get(lay.role) or Fabric(lay.cloth.title)
    names = tuple(dict.fromkeys(outline.part.name for outline in lay.outlines))
    outlines = len(lay.packing.spots)
    return Step(
        key=f"{lay.role}/cut",
        stage="cut",
        verb="cut",
        garment="",
        say=(*_said(lay, fabric, blade, _title(made, lay)), *_kinds_apart(made, lay)),
        uses=(f"ready: {lay.role}",),
        makes=f"pieces: {lay.role}",
        pieces=names,
        cautions=(said("caution.blade"),),
        holds="weights" if handling(fabric).weighted or blade == "rotary" else "pins",
        minutes=SPREADING + AN_OUTLINE * outlines,
        takes=(Supply("paper", TISSUE, lay.cloth_length, "mm"),) if "sheer" in fabric.possible_sorts else (),
    )


TISSUE = "tissue paper to lay under the cloth, as wide as it"


def _title(made: Made, lay: Lay) -> str:
    """Return what a lay's cloth is called; an interfacing that nobody fuses by the kind that is sewn in."""
    if lay.role != "interfacing" or any_fused(made):
        return lay.cloth.title
    return "the sewn-in interfacing"


def _kinds_apart(made: Made, lay: Lay) -> Iterator[Said]:
    """Yield that interfacings of several kinds, which one drawing shows together, are cut each of its own."""
    found = (n.kind for g in made.garments for n in g.draft.notions if n.what == "interfacing")
    kinds = [kind for kind in dict.fromkeys(found) if kind]
    if lay.role == "interfacing" and len(kinds) > 1:
        yield said("cut.kinds", kinds="; ".join(kinds), n=len(kinds))


def _said(lay: Lay, fabric: Fabric, blade: str, title: str) -> Iterator[Said]:
    takes, sorts = handling(fabric), fabric.possible_sorts
    thread = "_thread" if takes.marks == "thread" else ""
    behind = is_long_pile(fabric) or (takes.weighted and (blade != "rotary" or takes.old_blades))
    out = "_out" if lay.lay in LENGTHWISE and takes.layers == "wrong sides together" else ""
    out = "_down" if behind and lay.lay == "open" else out
    meet = lay.job.strip.meet
    parts = {} if meet is None else {"one": meet, "other": lay.job.strip.width - meet}
    n = len(lay.packing.spots)
    yield said(f"cut.{lay.lay}{out}", title=title, length=lay.cloth_length, role=lay.role, n=n, **parts)
    yield said("cut.selvedge")
    along = "cut.same_way" if fabric.repeat_along else "cut.grain"
    yield said("cut.one_way" if fabric.one_way else along)
    yield from _on_repeat(lay)
    if has_pile(fabric):
        yield said("cut.pile")
    if is_long_pile(fabric):
        yield said("cut.long_pile")
    yield from (said(key) for sort, key in SPREAD.items() if sort in sorts)
    if fabric.greatest_stretch >= 0.1:
        yield said("cut.stretch")
    if lay.lay != "open":
        yield said("cut.pairs")
    if any(outline.fold for outline in lay.outlines):
        yield said("cut.on_fold")
    weights = "cut.weights_old" if takes.old_blades else "cut.weights"
    by_hand = f"cut.{blade}{thread if blade == 'shears' else ''}"
    if takes.weighted or not behind:
        yield said(weights if behind else by_hand)
    yield said("cut.notches_paper" if takes.marks == "paper" else f"cut.notches{thread}")
    curved = any(_has_neck(outline.part.cut.piece) for outline in lay.outlines)
    if curved and fabric.weave == "woven" and takes.marks != "paper":
        yield said("cut.stay_neck")
    yield said("cut.bundle")


def _on_repeat(lay: Lay) -> Iterator[Said]:
    """Yield how the pieces lie on what the cloth repeats, as the lay was made."""
    matched = matched_on(lay.outlines, lay.cloth.wishes.level)
    if lay.cloth.repeat_along and matched.levels:
        levels = " or ".join(name_in_words(name) for name in matched.levels)
        yield said("cut.repeat_along", every=lay.cloth.repeat_along, levels=levels)
        if matched.notched:
            yield said("cut.repeat_sleeve")
    elif lay.cloth.repeat_along:
        yield said("cut.repeat_rest", every=lay.cloth.repeat_along)
    if lay.cloth.repeat_across:
        open_out = lay.lay == "open"
        yield said("cut.repeat_across" if open_out else "cut.repeat_folded", every=lay.cloth.repeat_across)


def _has_neck(piece: Piece) -> bool:
    """Return whether a piece has the garment's own neck, which is curved and grows when handled."""
    own = not piece.material and piece.role not in COLLARS | FACINGS
    return own and edge_as(piece, EdgeRole.NECK) is not None
