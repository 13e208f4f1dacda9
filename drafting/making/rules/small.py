"""Small things: made up, turned, joined on, and only then closed. All is common practice."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from drafting.costume.garment import MadeGarment
from drafting.draft.roles import SEWN_ON, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.making.model import Step
from drafting.making.order import revers
from drafting.making.order.seam_kinds import is_unit, kind_of
from drafting.making.rules.asking import chains_of, pieces_joined, pieces_on, roles_of, sewn_at


def made_first(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """What is sewn onto a piece is made up before."""
    draft = garment.draft
    for seam in draft.seams:
        own = pieces_joined(seam.a, seam.b)
        if seam.kind is SeamKind.MADE_UP and all(draft[name].role in SEWN_ON for name in own):
            on = [
                i for i, s in enumerate(steps) if s.verb == "trim" and not s.along and own & pieces_on(s, garment)
            ]
            if on and min(on) < sewn_at(steps, seam.name):
                yield f"{seam.name}: sewn on before it is made up"


def turned_last(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """A small thing is turned only when its own seams are sewn; a collar's fall before the stand takes it."""
    draft = garment.draft
    for i, step in enumerate(steps):
        if "turns" not in step.does or step.verb != "face":
            continue
        turned = {ref for seam in step.seams for chain in chains_of(draft, seam) for ref in chain}
        for later in steps[i + 1 :]:
            for name in later.seams:
                chains = chains_of(draft, name)
                if turned & {ref for chain in chains for ref in chain}:
                    yield f"{later.key} sews {name} after it was turned"
    falls = [
        s.name for s in draft.seams if s.kind is SeamKind.MADE_UP and roles_of(draft, s.name) == {PieceRole.COLLAR}
    ]
    stands = [s.name for s in draft.seams if PieceRole.COLLAR_STAND in roles_of(draft, s.name)]
    if falls and stands and not all(sewn_at(steps, f) < min(sewn_at(steps, s) for s in stands) for f in falls):
        yield "the collar's fall is not turned before its stand takes it"


def closed_last(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """After a band, a cuff, a collar is turned in, nothing is sewn to it any more."""
    draft = garment.draft
    small = {p.name for p in draft.pieces if is_unit(p)}
    for i, step in enumerate(steps):
        if step.verb != "face" or "closes" not in step.does:
            continue
        shut = {piece for piece in pieces_on(step, garment) if piece in small and not draft[piece].material}
        for later in steps[i + 1 :]:
            again = [s for s in later.seams if pieces_joined(*chains_of(draft, s)) & shut]
            if again or (later.verb == "fuse" and pieces_on(later, garment) & shut):
                yield f"{later.key} works on {', '.join(sorted(shut))}, which is closed already"


def made_before_it_is_on(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """A collar, a cuff, a band is made up before it is joined on; what runs on into a facing is sewn last."""
    draft = garment.draft
    units = [seam for seam in draft.seams if kind_of(draft, seam) == "unit"]
    facing = [seam for seam in draft.seams if kind_of(draft, seam) == "facing"]
    round_last = {seam.name for seam in revers.of_revers(draft, units, facing)}
    for seam in draft.seams:
        if kind_of(draft, seam) == "attach":
            small = {name for name in pieces_joined(seam.a, seam.b) if is_unit(draft[name])}
            late = [
                unit.name
                for unit in units
                if unit.name not in round_last
                and small & pieces_joined(unit.a, unit.b)
                and sewn_at(steps, unit.name) > sewn_at(steps, seam.name)
            ]
            if late:
                yield f"{seam.name} joins on what is not made up yet: {', '.join(late)}"
