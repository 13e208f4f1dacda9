"""What is done while a piece lies flat, and before a seam crosses it. All is common practice."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from drafting.costume.garment import MadeGarment
from drafting.draft.bias import hung_pieces
from drafting.draft.by_role import edges_beside
from drafting.draft.draft import Draft
from drafting.draft.piece import EdgeKind
from drafting.draft.roles import FACINGS, SeamKind
from drafting.fabric import Fabric
from drafting.making.model import Step
from drafting.making.order.additions import BY_MARK, ON_HEMS
from drafting.making.order.seam_kinds import SeamWork, crossed, is_sleeve, kind_of
from drafting.making.rules.asking import is_hem, pieces_joined, pieces_on, sewn_at, steps_where
from drafting.shaping.coat.hem_braid import HEM_BRAID


def trimmed_in_time(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """A trim lies on before the seams that catch its edge or its ends; along a turned edge it comes after, but for
    piping, along which the edge is turned."""
    draft = garment.draft
    for i, step in enumerate(steps):
        for piece, edge in step.along if step.verb == "trim" else ():
            if draft[piece][edge].kind is EdgeKind.SEAM:
                near = {(piece, edge), *edges_beside(draft, (piece, edge))}
                caught = [s.name for s in draft.seams if near & {*s.a, *s.b} and kind_of(draft, s) != "dart"]
                late = [name for name in caught if sewn_at(steps, name) < i]
                if late:
                    yield f"{step.key} comes after {', '.join(late)}, which catches its ends"
            elif draft[piece][edge].kind in (EdgeKind.HEM, EdgeKind.OPENING):
                turned = any((piece, edge) in s.edges for s in steps[:i])
                if any(one.key.endswith(".trim_turned") for one in step.say):
                    if turned:
                        yield f"{step.key} lies on an edge that is turned already"
                elif not turned:
                    yield f"{step.key} lies on an edge that is not turned yet"


def flat_first(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """Slits lie flat, roll lines are taped, and bands are sewn, before what closes over them."""
    draft = garment.draft
    facing = [s.name for s in draft.seams if kind_of(draft, s) == "facing"]
    for i in steps_where(steps, lambda s: s.verb == "stay"):
        if facing and i > min(sewn_at(steps, name) for name in facing):
            yield f"{steps[i].key} comes after the facing"
    for i, step in enumerate(steps):
        for piece, edge in step.edges:
            closes = [
                s.name for s in draft.seams if s.kind is SeamKind.SLEEVE and piece in pieces_joined(s.a, s.b)
            ]
            opening = is_sleeve(draft[piece]) and draft[piece][edge].kind is EdgeKind.OPENING
            if opening and any(sewn_at(steps, name) < i for name in closes):
                yield f"{step.key} finishes a slit in a closed sleeve"


def hems_stiffened(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """A bone is slid into a hem that is turned up; a stiff braid lies on it before."""
    draft = garment.draft
    hems = _hems_marked(draft, steps, "bone")
    for i in steps_where(steps, lambda s: s.verb == "bone"):
        if hems and i < max(hems):
            yield f"{steps[i].key} comes before the hem that it lies in"
    hems = _hems_marked(draft, steps, HEM_BRAID)
    for i in steps_where(steps, lambda s: any(one.key.endswith(".hem_braid") for one in s.say)):
        if hems and i > min(hems):
            yield f"{steps[i].key} comes after the hem that is turned up over it"


def _hems_marked(draft: Draft, steps: Sequence[Step], what: str) -> list[int]:
    """Return the steps that turn up the hem of a piece with such a mark."""
    marked = {piece.name for piece in draft.pieces if any(mark.what == what for mark in piece.placements)}
    return steps_where(steps, lambda s: any(is_hem(draft, ref) and ref[0] in marked for ref in s.edges))


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


CLOSES: tuple[SeamWork, ...] = ("body", "flare", "limb", "set in", "attach")
"""Seams after which a piece lies flat no longer, or no longer alone."""


def joined_before(draft: Draft, steps: Sequence[Step], piece: str, kinds: Sequence[SeamWork]) -> list[str]:
    """Return the seams of these kinds that some of the steps sew on a piece."""
    sewn = {name for step in steps for name in step.seams}
    return [
        seam.name
        for seam in draft.seams
        if seam.name in sewn and kind_of(draft, seam) in kinds and piece in pieces_joined(seam.a, seam.b)
    ]


def stiffened_flat(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """An interfacing lies on before its piece is darted or joined; the bands of what hangs wait for its hem."""
    draft = garment.draft
    waiting = {*hung_pieces(draft)}
    for i in steps_where(steps, lambda step: step.verb == "fuse"):
        for piece in sorted(pieces_on(steps[i], garment) - waiting):
            late = joined_before(draft, steps[:i], piece, ("dart", "facing", "unit", *CLOSES))
            if late and not draft[piece].material:
                yield f"{steps[i].key} stiffens {piece} after {', '.join(late)}"


def shaped_flat(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """Darts and laid pleats are sewn before a seam runs across their mouth or the piece is closed."""
    draft = garment.draft
    for i in steps_where(steps, lambda step: step.verb == "dart"):
        for piece in sorted(pieces_on(steps[i], garment)):
            if late := joined_before(draft, steps[:i], piece, ("facing", *CLOSES)):
                yield f"{steps[i].key} shapes {piece} after {', '.join(late)}"


def sewn_on_flat(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """Pockets, slits, flaps and straps are sewn on while the piece lies flat; a strap under a foot once the hem it
    hangs from is turned. The parts of one pocket have their order."""
    draft, order = garment.draft, [*BY_MARK]
    done: dict[str, list[int]] = {}
    for i in steps_where(steps, lambda step: step.verb == "trim" and not step.along):
        on = pieces_on(steps[i], garment)
        for piece in sorted(on):
            marks = {mark.what for mark in draft[piece].placements if mark.piece in on}
            if marks & {*ON_HEMS}:
                hems = {(piece, edge.name) for edge in draft[piece].edges if edge.kind is EdgeKind.HEM}
                if hems - {ref for step in steps[:i] for ref in step.edges}:
                    yield f"{steps[i].key} hangs from a hem that is not turned yet"
            elif marks and (late := joined_before(draft, steps[:i], piece, CLOSES)):
                yield f"{steps[i].key} comes after {', '.join(late)}: {piece} lies flat no longer"
            places = [order.index(what) for what in marks if what in order]
            if places and any(max(places) < one for one in done.get(piece, ())):
                yield f"{steps[i].key} comes after a part of a pocket that lies over it"
            done.setdefault(piece, []).extend(places)


def neatened_before(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """The inner edge of a facing is neatened before the facing is sewn on."""
    draft = garment.draft
    for i in steps_where(steps, lambda step: step.say[0].key.endswith(".neaten")):
        for piece in sorted(pieces_on(steps[i], garment)):
            on = [
                name for name in joined_before(draft, steps[:i], piece, ("facing",)) if not _between(draft, name)
            ]
            if on:
                yield f"{steps[i].key} neatens {piece} after {', '.join(on)}"


def _between(draft: Draft, name: str) -> bool:
    """Return whether a seam joins facings alone."""
    return all(draft[p].role in FACINGS for s in draft.seams if s.name == name for p in pieces_joined(s.a, s.b))
