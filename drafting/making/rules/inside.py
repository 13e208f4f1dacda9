"""The lining closes the inside, and what fastens comes last. All is common practice."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from drafting.costume.garment import MadeGarment
from drafting.draft.bias import hung_pieces
from drafting.draft.piece import EdgeKind
from drafting.fabric import Fabric
from drafting.making.model import Step
from drafting.making.order.parts import notion_key
from drafting.making.order.seam_kinds import HUNG, kind_of
from drafting.making.rules.asking import HANGS, chains_of, pieces_joined, pieces_on, sewn_at, steps_where

INSIDE_WORK = ("fuse", "bone", "pad", "hem", "bar", "set in", "bind", "casing", "stay", "dart", "trim", "hang")
"""Work that needs the wrong side of the cloth."""

SEWN_BY_THEN = ("buttonhole", "button", "fell", "trim")
"""Work without a seam or an edge of its own that is done before the whole garment is starched."""


def lined_last(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """The lining closes the inside: seams, bands, hems, bones, pads and bars come first, its own hang too."""
    felled = steps_where(steps, lambda s: s.verb == "fell")
    lined = any(piece.material == "lining" for piece in garment.draft.pieces)
    if lined and not felled:
        yield "its lining is never felled in"
    if not felled:
        return
    for step in steps[felled[0] :]:
        if step.seams or step.verb in INSIDE_WORK:
            yield f"{step.key} comes after the lining has closed the inside"
    draft = garment.draft
    behind = {name for name, piece in hung_pieces(draft).items() if piece.material == "lining"}
    hung = {piece for step in steps[: felled[0]] if step.wait >= HANGS for piece in pieces_on(step, garment)}
    if behind - hung:
        yield f"the lining of its bias panels never hangs: {', '.join(sorted(behind - hung))}"
    padded = steps_where(steps, lambda s: s.verb == "pad")
    if padded and padded[0] < max(steps_where(steps, lambda s: s.verb == "set in"), default=-1):
        yield "its shoulders are padded before the sleeves are in"


def caught_in_time(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """A tape is caught by the seam it hangs from; its hook and loop are on before a lining covers the cloth."""
    felled = next(iter(steps_where(steps, lambda step: step.verb == "fell")), len(steps))
    for notion in garment.draft.notions:
        key = notion_key(notion)
        at = next((i for i, step in enumerate(steps) if key in step.notions), len(steps))
        if notion.what == "hook and eye" and notion.edges and at > felled:
            yield f"{key} is sewn on after the lining"
        caught = [s.name for s in garment.draft.seams if notion.what == "tape" and {*s.a, *s.b} & {*notion.edges}]
        late = [name for name in caught if sewn_at(steps, name) < at]
        if late:
            yield f"{key} comes after {', '.join(late)}, which catches it"


def fastened_last(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """Holes are worked through layers that lie together for good, buttons sewn on to meet them, a lacing drawn in
    when its eyelets are set; the last step tries it all."""
    for i in steps_where(steps, lambda step: step.verb == "buttonhole"):
        for later in steps[i + 1 :]:
            if pieces_on(steps[i], garment) & pieces_on(later, garment) and (later.seams or later.verb == "fuse"):
                yield f"{steps[i].key} works holes before {later.key} has joined their layers"
    for first, then in (("buttonhole", "button: "), ("eyelet: ", "cord: ")):
        made = [i for i, step in enumerate(steps) if step.verb == first or _of(step, first)]
        used = [i for i, step in enumerate(steps) if _of(step, then)]
        if made and used and min(used) < max(made):
            yield f"{steps[min(used)].key} comes before {steps[max(made)].key}"
    if steps and steps[-1].verb != "try":
        yield f"it ends with {steps[-1].key}, and nobody tries it"


def _of(step: Step, what: str) -> bool:
    return any(notion.startswith(what) for notion in step.notions)


def sewn_on_finished(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """A button, a hook, an eyelet sits on a piece whose seams are sewn and whose openings are finished; a tape
    that a seam catches alone comes before it."""
    draft = garment.draft
    for i in steps_where(steps, lambda step: step.verb == "button" and not _of(step, "tape: ")):
        on = {name for name in pieces_on(steps[i], garment) if not draft[name].material}
        for later in steps[i + 1 :]:
            seams = [name for name in later.seams if on & pieces_joined(*chains_of(draft, name))]
            raw = [ref for ref in later.edges if ref[0] in on and draft.edge(ref).kind is EdgeKind.OPENING]
            if seams or raw:
                what = ", ".join((*seams, *(" ".join(ref) for ref in raw)))
                yield f"{steps[i].key} fastens what {later.key} has yet to finish: {what}"


def hung_joined(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """A lining hangs once its own seams are sewn, that of tails before the body's takes it; it is levelled by the
    shell's hem when both have hung."""
    draft = garment.draft
    behind = {piece.name: piece for piece in draft.pieces if piece.material == "lining"}
    for i in steps_where(steps, lambda step: step.verb == "hang"):
        hung = pieces_on(steps[i], garment) & {*behind}
        tails = all(draft[shell].role in HUNG for name in hung for shell in behind[name].lines)
        for later in (step for step in steps[i + 1 :] if step.verb == "join"):
            joined = pieces_on(later, garment)
            if hung & joined and (joined <= hung or not tails):
                yield f"{steps[i].key} hangs a lining before {later.key} has joined it"
    levelled = [i for i, step in enumerate(steps) if _levels_lining(step)]
    for later in steps[min(levelled, default=len(steps)) :]:
        if later.verb == "hang":
            yield f"{steps[levelled[0]].key} levels a lining before {later.key}"


def _levels_lining(step: Step) -> bool:
    return any(one.key.partition(".")[2] in ("level_lining", "level_lining_whole") for one in step.say)


def barred_when_finished(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """A bar goes across an end that is finished."""
    for i in steps_where(steps, lambda step: step.verb == "bar"):
        ends = {ref for ref in steps[i].along if garment.draft.edge(ref).kind is EdgeKind.OPENING}
        raw = ends - {ref for step in steps[:i] for ref in step.edges}
        if raw:
            yield f"{steps[i].key} bars what is not finished yet: {', '.join(sorted(e for _, e in raw))}"


def sleeves_lined_last(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """The sleeves' lining is felled over the armhole on top of the body's."""
    keys = [{one.key.partition(".")[2] for one in step.say} for step in steps]
    sleeves = [i for i, key in enumerate(keys) if "line_sleeves" in key]
    bodies = [i for i, key in enumerate(keys) if key & {"line", "line_sleeveless"}]
    if sleeves and bodies and min(sleeves) < max(bodies):
        yield "its sleeves are lined before its body"


def starched_in_time(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """What is starched as after every wash is whole by then; panels are starched joined, and before they hang."""
    draft = garment.draft
    for i in steps_where(steps, lambda step: "starches" in step.does):
        if steps[i].say[0].key.endswith(".starch_last"):
            late = [s.key for s in steps[i:] if s.seams or s.edges or s.verb in SEWN_BY_THEN]
            if late:
                yield f"{steps[i].key} starches before {', '.join(late)}"
            continue
        own = pieces_on(steps[i], garment)
        flares = [s for s in draft.seams if kind_of(draft, s) == "flare" and pieces_joined(s.a, s.b) <= own]
        raw = [seam.name for seam in flares if sewn_at(steps, seam.name) > i]
        if raw:
            yield f"{steps[i].key} starches before {', '.join(raw)}"
        if any("levels" in step.does and own & pieces_on(step, garment) for step in steps[:i]):
            yield f"{steps[i].key} starches what was levelled already"
