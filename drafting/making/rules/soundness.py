"""Is an order of work sound? Every part, seam, hem and notion used once, nothing before its time."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from drafting.costume.make import Made
from drafting.making.model import Step
from drafting.making.rules.too_early import out_of_order
from drafting.making.seam_lengths import turned_edges


def unsound(made: Made, steps: Sequence[Step]) -> tuple[str, ...]:
    """Return what is wrong with an order, in words; nothing where it is sound. Never raises.

    >>> from drafting.costume.make import make
    >>> from drafting.costume.file import read_costume
    >>> from drafting.ground.shipped import demo_costume
    >>> bool(unsound(make(read_costume(demo_costume())), ()))  # nothing is sewn yet
    True
    """
    return (*_parts(made, steps), *_seams(made, steps), *_things(made, steps), *out_of_order(made, steps))


def _parts(made: Made, steps: Sequence[Step]) -> Iterator[str]:
    there: set[str] = set()
    cut = {name for step in steps if step.stage == "cut" for name in step.pieces}
    raw = {f"{g.name}.{p.name}" for g in made.garments for p in g.draft.pieces}
    if not cut:
        there |= raw
    for step in steps:
        for part in step.uses:
            if part.startswith("cloth: "):
                continue
            if part not in there:
                yield f"{step.key} needs {part}, which is not made or used already"
            there.discard(part)
        there |= set(step.pieces) & raw if step.stage == "cut" else set(step.apart) or {step.makes}
    for garment in made.garments:
        own = [p for p in there if p.startswith((f"{garment.name}.", f"{garment.name}: "))]
        if len(own) != 1:
            yield f"{garment.name} ends as {len(own)} parts: {', '.join(sorted(own))}"


def _seams(made: Made, steps: Sequence[Step]) -> Iterator[str]:
    sewn = Counter((step.garment, seam) for step in steps for seam in step.seams)
    wanted = Counter((g.name, seam.name) for g in made.garments for seam in g.draft.seams)
    for key in sorted(set(sewn) | set(wanted)):
        if sewn[key] != wanted[key]:
            yield f"seam {key} is sewn {sewn[key]} times, wanted {wanted[key]}"


def _things(made: Made, steps: Sequence[Step]) -> Iterator[str]:
    used = Counter((step.garment, notion) for step in steps for notion in step.notions)
    for garment in made.garments:
        for what in {f"{n.what}: {n.where}" for n in garment.draft.notions}:
            if used[garment.name, what] != 1:
                yield f"{garment.name}: {what} is used {used[garment.name, what]} times"
        edges = Counter(edge for step in steps if step.garment == garment.name for edge in step.edges)
        for piece, edge in turned_edges(garment):
            if edges[piece.name, edge.name] != 1:
                yield f"{garment.name}: {piece.name} {edge.name} is finished {edges[piece.name, edge.name]} times"
