"""Rules of the order: nothing is sewn through, pressed, fused, closed or turned too early.

Each rule reads the steps of one garment in their order and yields what breaks it. All are common practice.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from drafting.costume.garment import MadeGarment
from drafting.costume.make import Made
from drafting.draft.bias import hung_pieces
from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.piece import EdgeKind
from drafting.draft.roles import SEWN_ON, EdgeRole, PieceRole, SeamKind
from drafting.fabric import Fabric, handling
from drafting.fabric.handling import frays
from drafting.making.model import Step
from drafting.making.order.bearers import bearers_first
from drafting.making.order.holes import holes
from drafting.making.order.lacking import nothing_lacking
from drafting.making.order.rounds import faced_whole
from drafting.making.order.seam_kinds import crossed, is_sleeve, is_unit, kind_of
from drafting.making.settings.pressing import french
from drafting.making.settings.stitches import OVEREDGE

OrderRule = Callable[[MadeGarment, Fabric | None, Sequence[Step]], Iterator[str]]

HANGS, LONG = 24.0, (4.0, 5.0)
"""Hours that a bias hangs, at least; mm of a basting stitch (common practice)."""


def out_of_order(made: Made, steps: Sequence[Step]) -> Iterator[str]:
    """Yield every rule that an order of work breaks, garment by garment."""
    for garment in made.garments:
        own = [step for step in steps if step.garment == garment.name and step.verb != "toile"]
        fabric = made.costume.fabrics.get(garment.fabric)
        for rule in RULES:
            yield from (f"{garment.name}: {wrong}" for wrong in rule(garment, fabric, own))


def steps_where(steps: Sequence[Step], holds: Callable[[Step], bool]) -> list[int]:
    """Return where the steps stand for which something holds."""
    return [i for i, step in enumerate(steps) if holds(step)]


def sewn_at(steps: Sequence[Step], seam: str) -> int:
    """Return where a seam is sewn; after all steps where it is not."""
    return next(iter(steps_where(steps, lambda step: seam in step.seams)), len(steps))


def tried_first(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """What a first fitting may change is only basted before it, with long stitches, and nothing is done to it."""
    draft = garment.draft
    wanted = {s.name for s in draft.seams if kind_of(draft, s) in ("body", "flare")}
    if not wanted:
        return
    fits = steps_where(steps, lambda step: step.verb == "fit")
    if not fits:
        yield "is never tried on"
        return
    basted = {seam for step in steps[: fits[0]] for seam in step.basted}
    for seam in sorted(wanted - basted):
        yield f"{seam} is not basted for the first fitting"
    for step in steps[: fits[0]]:
        early = {"presses", "stays", "trims", "neatens"} & set(step.does)
        if early or step.seams:
            yield f"{step.key} comes before the first fitting: {', '.join(sorted(early) or step.seams)}"
        length = step.setting.stitch_length if step.setting else 0.0
        if step.basted and step.holds != "clips" and not LONG[0] <= length <= LONG[1]:
            yield f"{step.key} bastes with stitches of {length:g} mm"


def hung_first(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """What lies on the bias hangs a day and is levelled before its bands are fused and its hem is turned."""
    draft = garment.draft
    flares = [s for s in draft.seams if kind_of(draft, s) == "flare"]
    flared = {name for name, piece in hung_pieces(draft).items() if not piece.material}
    if not flared:
        return
    hung = steps_where(
        steps, lambda s: s.wait >= HANGS and "levels" in s.does and _on(s, garment) & flared != set()
    )
    if not hung:
        yield "its bias panels are never hung and levelled"
        return
    for seam in draft.seams:
        holds = seam in flares or (seam.kind is SeamKind.WAIST and _joins(seam.a, seam.b) & flared)
        if holds and sewn_at(steps, seam.name) > hung[0]:
            yield f"it hangs before {seam.name} is sewn"
    bands = {p.name for p in draft.pieces if p.material == "interfacing" and flared & set(p.stiffens)}
    for i in steps_where(steps[: hung[0]], lambda s: s.verb == "fuse" and bool(_on(s, garment) & bands)):
        yield f"{steps[i].key} fuses a band before its hem is levelled"
    for i in steps_where(
        steps[: hung[0]], lambda s: any(_is_hem(draft, ref) and ref[0] in flared for ref in s.edges)
    ):
        yield f"{steps[i].key} turns a hem before it is levelled"


def closed_last(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """After a band, a cuff, a collar is turned in, nothing is sewn to it any more."""
    draft = garment.draft
    small = {p.name for p in draft.pieces if is_unit(p)}
    for i, step in enumerate(steps):
        if step.verb != "face" or "closes" not in step.does:
            continue
        shut = {piece for piece in _on(step, garment) if piece in small and not draft[piece].material}
        for later in steps[i + 1 :]:
            again = [s for s in later.seams if _joins(*_chains(draft, s)) & shut]
            if again or (later.verb == "fuse" and _on(later, garment) & shut):
                yield f"{later.key} works on {', '.join(sorted(shut))}, which is closed already"


def turned_last(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """A small thing is turned only when its own seams are sewn; a collar's fall before the stand takes it."""
    draft = garment.draft
    for i, step in enumerate(steps):
        if "turns" not in step.does or step.verb != "face":
            continue
        turned = {ref for seam in step.seams for chain in _chains(draft, seam) for ref in chain}
        for later in steps[i + 1 :]:
            for name in later.seams:
                chains = _chains(draft, name)
                if turned & {ref for chain in chains for ref in chain}:
                    yield f"{later.key} sews {name} after it was turned"
    falls = [
        s.name for s in draft.seams if s.kind is SeamKind.MADE_UP and _roles(draft, s.name) == {PieceRole.COLLAR}
    ]
    stands = [s.name for s in draft.seams if PieceRole.COLLAR_STAND in _roles(draft, s.name)]
    if falls and stands and not all(sewn_at(steps, f) < min(sewn_at(steps, s) for s in stands) for f in falls):
        yield "the collar's fall is not turned before its stand takes it"


def trimmed_in_time(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """A trim lies on before the seams that catch its edge or its ends; along a turned edge it comes after."""
    draft = garment.draft
    for i, step in enumerate(steps):
        for piece, edge in step.along if step.verb == "trim" else ():
            if draft[piece][edge].kind is EdgeKind.SEAM:
                near = _neighbours(draft, (piece, edge))
                caught = [s.name for s in draft.seams if near & {*s.a, *s.b} and kind_of(draft, s) != "dart"]
                late = [name for name in caught if sewn_at(steps, name) < i]
                if late:
                    yield f"{step.key} comes after {', '.join(late)}, which catches its ends"
            elif not any((piece, edge) in s.edges for s in steps[:i]) and draft[piece][edge].kind in (
                EdgeKind.HEM,
                EdgeKind.OPENING,
            ):
                yield f"{step.key} lies on an edge that is not turned yet"


def neatened_once(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """Seams of washed cloth that frays are neatened once; an overedge neatens itself; sheer seams are French."""
    if fabric is None:
        return
    takes = handling(fabric)
    lined = any(piece.material == "lining" for piece in garment.draft.pieces)
    for step in steps:
        if step.verb not in ("join", "set in") or not step.setting or not step.seams:
            continue
        overedge, done = step.setting.stitch in OVEREDGE, "neatens" in step.does
        if overedge and done:
            yield f"{step.key} overcasts what is overcast already"
        raw = frays(fabric) and takes.neatens == "overcast" and takes.water and not lined and not overedge
        if raw and not done:
            yield f"{step.key} leaves raw edges in a cloth that is washed"
        seam = next(s for s in garment.draft.seams if s.name == step.seams[0])
        if french(garment.draft, seam, fabric) and not any(one.key.endswith(".french") for one in step.say):
            yield f"{step.key} is no French seam in a sheer cloth"


def starched_once(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """What is starched again after every wash was starched once in the making."""
    if fabric is not None and fabric.takes_starch and not any("starches" in step.does for step in steps):
        yield "is to be starched again, and was never starched"


def holed_as_drawn(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """As many buttonholes are worked as are drawn; their test piece is tried before them."""
    drawn = sum(one.count for one in holes(garment.draft))
    worked = sum(step.count for step in steps if step.verb == "buttonhole")
    if drawn != worked:
        yield f"{worked} buttonholes are worked, {drawn} are drawn"
    for step in steps:
        keys = [one.key for one in step.say]
        if step.verb == "buttonhole" and (keys[0] != "do.holes_tried" or step.setting is None):
            yield f"{step.key} has no test piece or no stitch"


def flat_first(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """Slits lie flat, roll lines are taped, and bands are sewn, before what closes over them."""
    draft = garment.draft
    facing = [s.name for s in draft.seams if kind_of(draft, s) == "facing"]
    for i in steps_where(steps, lambda s: s.verb == "stay"):
        if facing and i > min(sewn_at(steps, name) for name in facing):
            yield f"{steps[i].key} comes after the facing"
    for i, step in enumerate(steps):
        for piece, edge in step.edges:
            closes = [s.name for s in draft.seams if s.kind is SeamKind.SLEEVE and piece in _joins(s.a, s.b)]
            opening = is_sleeve(draft[piece]) and draft[piece][edge].kind is EdgeKind.OPENING
            if opening and any(sewn_at(steps, name) < i for name in closes):
                yield f"{step.key} finishes a slit in a closed sleeve"
    tails = {piece.name for piece in draft.pieces if piece.role is PieceRole.TAIL}
    hems = steps_where(steps, lambda s: any(_is_hem(draft, ref) and ref[0] in tails for ref in s.edges))
    for i in steps_where(steps, lambda s: s.verb == "bone"):
        if hems and i < max(hems):
            yield f"{steps[i].key} comes before the hem that it lies in"


def lined_last(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """The lining closes the inside: seams, bands, hems, bones, pads and bars come first, its own hang too."""
    felled = steps_where(steps, lambda s: s.verb == "fell")
    lined = any(piece.material == "lining" for piece in garment.draft.pieces)
    if lined and not felled:
        yield "its lining is never felled in"
    if not felled:
        return
    for step in steps[felled[0] :]:
        if step.seams or step.verb in ("fuse", "bone", "pad", "hem", "bar", "set in"):
            yield f"{step.key} comes after the lining has closed the inside"
    draft = garment.draft
    behind = {name for name, piece in hung_pieces(draft).items() if piece.material == "lining"}
    hung = {piece for step in steps[: felled[0]] if step.wait >= HANGS for piece in _on(step, garment)}
    if behind - hung:
        yield f"the lining of its bias panels never hangs: {', '.join(sorted(behind - hung))}"
    padded = steps_where(steps, lambda s: s.verb == "pad")
    if padded and padded[0] < max(steps_where(steps, lambda s: s.verb == "set in"), default=-1):
        yield "its shoulders are padded before the sleeves are in"


def made_first(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """What is sewn onto a piece is made up before."""
    draft = garment.draft
    for seam in draft.seams:
        own = _joins(seam.a, seam.b)
        if seam.kind is SeamKind.MADE_UP and all(draft[name].role in SEWN_ON for name in own):
            on = [i for i, s in enumerate(steps) if s.verb == "trim" and not s.along and own & _on(s, garment)]
            if on and min(on) < sewn_at(steps, seam.name):
                yield f"{seam.name}: sewn on before it is made up"


def gathered_whole(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """What is gathered over several pieces is gathered when they are one."""
    draft = garment.draft
    for seam in draft.seams:
        if kind_of(draft, seam) in ("body", "flare"):
            late = [
                other.name
                for other in crossed(draft, seam, draft.seams)
                if sewn_at(steps, other.name) > sewn_at(steps, seam.name)
            ]
            if late:
                yield f"{seam.name} is gathered before {', '.join(late)}, which it runs across"


RULES: tuple[OrderRule, ...] = (
    gathered_whole,
    tried_first,
    hung_first,
    closed_last,
    turned_last,
    trimmed_in_time,
    neatened_once,
    starched_once,
    holed_as_drawn,
    flat_first,
    lined_last,
    nothing_lacking,
    made_first,
    faced_whole,
    bearers_first,
)


def _on(step: Step, garment: MadeGarment) -> set[str]:
    return {piece.removeprefix(f"{garment.name}.") for piece in step.pieces}


def _joins(*chains: Sequence[EdgeRef]) -> set[str]:
    return {piece for chain in chains for piece, _ in chain}


def _chains(draft: Draft, seam: str) -> tuple[Sequence[EdgeRef], Sequence[EdgeRef]]:
    return next(((s.a, s.b) for s in draft.seams if s.name == seam), ((), ()))


def _roles(draft: Draft, seam: str) -> set[PieceRole]:
    return {draft[piece].role for piece in _joins(*_chains(draft, seam))}


def _is_hem(draft: Draft, ref: EdgeRef) -> bool:
    return draft.edge(ref).kind is EdgeKind.HEM and draft.edge(ref).role is EdgeRole.HEM


def _neighbours(draft: Draft, ref: EdgeRef) -> set[EdgeRef]:
    """Return an edge and those on either side of it, which catch the ends of a trim along it."""
    names = [edge.name for edge in draft[ref[0]].edges]
    i = names.index(ref[1])
    return {(ref[0], names[(i + k) % len(names)]) for k in (-1, 0, 1)}
