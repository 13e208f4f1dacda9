"""Before it is tried on and has hung, nothing is done that could not be changed. All is common practice."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from drafting.costume.garment import MadeGarment
from drafting.draft.bias import hung_pieces
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.making.model import Step
from drafting.making.order.rounds import edges_faced
from drafting.making.order.seam_kinds import is_sleeve, kind_of
from drafting.making.rules.asking import HANGS, is_hem, pieces_joined, pieces_on, sewn_at, steps_where

LONG = (4.0, 5.0)
"""mm of a basting stitch (common practice)."""


def tried_first(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """What a first fitting may change is only basted before it, with long stitches, and nothing is done to it."""
    draft = garment.draft
    shaping = (s for s in draft.seams if not any(is_sleeve(draft[name]) for name, _ in (*s.a, *s.b)))
    wanted = {s.name for s in shaping if kind_of(draft, s) in ("body", "flare")}
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
        if step.verb != "baste":
            what = sorted({"presses", "stays", "trims", "neatens"} & {*step.does}) or step.seams or (step.verb,)
            yield f"{step.key} comes before the first fitting: {', '.join(what)}"
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
        steps, lambda s: s.wait >= HANGS and "levels" in s.does and pieces_on(s, garment) & flared != set()
    )
    if not hung:
        yield "its bias panels are never hung and levelled"
        return
    for seam in draft.seams:
        holds = seam in flares or (seam.kind is SeamKind.WAIST and pieces_joined(seam.a, seam.b) & flared)
        if holds and sewn_at(steps, seam.name) > hung[0]:
            yield f"it hangs before {seam.name} is sewn"
    bands = {p.name for p in draft.pieces if p.material == "interfacing" and flared & {*p.stiffens} and _hems(p)}
    for i in steps_where(steps[: hung[0]], lambda s: s.verb == "fuse" and bool(pieces_on(s, garment) & bands)):
        yield f"{steps[i].key} fuses a band before its hem is levelled"
    for seam in draft.seams:
        own = {piece for piece, edge in edges_faced(draft, seam) if draft[piece][edge].role is EdgeRole.HEM}
        if kind_of(draft, seam) == "facing" and own & flared and sewn_at(steps, seam.name) < hung[0]:
            yield f"{seam.name} faces a hem before it is levelled"
    for i in steps_where(
        steps[: hung[0]], lambda s: any(is_hem(draft, ref) and ref[0] in flared for ref in s.edges)
    ):
        yield f"{steps[i].key} turns a hem before it is levelled"


def _hems(interfacing: Piece) -> bool:
    """Return whether an interfacing reaches the hem; what stays a pocket's mouth does not."""
    return interfacing.role is PieceRole.HEM_BAND or any(e.role is EdgeRole.HEM for e in interfacing.edges)


def sleeves_tried(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """A sleeve is basted in and tried on before it is sewn in."""
    for i in steps_where(steps, lambda step: step.verb == "set in"):
        basted = [n for n, step in enumerate(steps[:i]) if {*step.basted} & {*steps[i].seams}]
        if not basted or not any(step.verb == "fit" for step in steps[basted[-1] : i]):
            yield f"{steps[i].key} sews a sleeve in that was not tried on"
