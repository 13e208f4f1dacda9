"""What is worked in the round comes after the seams that close it, and what ends in a band before the band.

All is common practice.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from drafting.costume.garment import MadeGarment
from drafting.draft.by_role import edges_beside
from drafting.draft.draft import Draft, Seam
from drafting.draft.piece import EdgeKind
from drafting.draft.roles import SeamKind
from drafting.fabric import Fabric
from drafting.making.model import Step
from drafting.making.order.rounds import edges_faced, in_rounds, of_hems
from drafting.making.order.seam_kinds import SeamWork, is_facing, kind_of
from drafting.making.rules.asking import pieces_joined, sewn_at, steps_where


def set_in_round(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """A sleeve goes into its armhole when both are rounds: sleeve seams, shoulders and sides are sewn."""
    draft = garment.draft
    for seam in draft.seams:
        if kind_of(draft, seam) != "set in":
            continue
        pieces, at = pieces_joined(seam.a, seam.b), sewn_at(steps, seam.name)
        rounds = [s for s in draft.seams if pieces & pieces_joined(s.a, s.b) and _closes(draft, s)]
        late = [s.name for s in rounds if sewn_at(steps, s.name) > at]
        if late:
            yield f"{seam.name} is sewn before {', '.join(late)}, which close its round"


def _closes(draft: Draft, seam: Seam) -> bool:
    return kind_of(draft, seam) == "limb" or seam.kind in (SeamKind.SHOULDER, SeamKind.SIDE)


def ended_in_time(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """A hem, a casing runs across seams that are sewn; a zip, a fly, a slit, a front is finished before a band
    closes over its end."""
    draft = garment.draft
    for i, step in enumerate(steps):
        crossing: tuple[SeamWork, ...] = ("body", "flare", "limb") if step.verb in ("hem", "casing") else ()
        for ref in step.edges:
            beside = edges_beside(draft, ref)
            ends = [s for s in draft.seams if beside & {*s.a, *s.b}]
            late = [s.name for s in ends if kind_of(draft, s) in crossing and sewn_at(steps, s.name) > i]
            if late:
                yield f"{step.key} turns {' '.join(ref)} before {', '.join(late)}, which it crosses"
            opening = draft.edge(ref).kind is EdgeKind.OPENING
            shut = [s.name for s in ends if kind_of(draft, s) == "attach" and sewn_at(steps, s.name) < i]
            if opening and shut:
                yield f"{step.key} finishes {' '.join(ref)} after {', '.join(shut)}, which closes over its end"


def hems_faced_in_time(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """A hem is faced once the seams that end in it are sewn."""
    draft = garment.draft
    for seam in of_hems(draft, [seam for seam in draft.seams if kind_of(draft, seam) == "facing"]):
        at = sewn_at(steps, seam.name)
        beside = {near for ref in edges_faced(draft, seam) for near in edges_beside(draft, ref)}
        ends = [s for s in draft.seams if beside & {*s.a, *s.b} and kind_of(draft, s) in ("body", "flare", "limb")]
        late = [s.name for s in ends if sewn_at(steps, s.name) > at]
        if late:
            yield f"{seam.name} faces a hem before {', '.join(late)}, which ends in it"


def flies_first(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """A fly is made while the fronts lie flat, before their other leg seams and before the band."""
    draft = garment.draft
    for fly in (seam for seam in draft.seams if kind_of(draft, seam) == "fly"):
        fronts, at = pieces_joined(fly.a, fly.b), sewn_at(steps, fly.name)
        late = [
            seam.name
            for seam in draft.seams
            if seam.kind in (SeamKind.SIDE, SeamKind.INSEAM, SeamKind.ATTACHED)
            and fronts & pieces_joined(seam.a, seam.b)
            and sewn_at(steps, seam.name) < at
        ]
        if late:
            yield f"{fly.name} is sewn after {', '.join(late)}: the fronts lie flat no longer"


def faced_whole(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """A facing is turned and pressed only when its whole round is sewn (common practice)."""
    draft = garment.draft
    facing = [seam for seam in draft.seams if kind_of(draft, seam) == "facing"]
    for found in in_rounds(draft, facing):
        names = {seam.name for seam in found}
        sewn = [step for step in steps if names & {*step.seams}]
        for step in sewn[:-1]:
            if "turns" in step.does:
                yield f"{step.key} turns a facing whose round goes on in {sewn[-1].key}"


def facing_ends_last(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """A facing's ends are turned in beside the fastening once it is on: its seams run out over them."""
    draft = garment.draft
    for i in steps_where(steps, lambda step: step.verb == "bind"):
        for piece, edge in steps[i].edges:
            if not is_facing(draft[piece]) or draft[piece][edge].kind is not EdgeKind.OPENING:
                continue
            ends = [s for s in draft.seams if edges_beside(draft, (piece, edge)) & {*s.a, *s.b}]
            late = [s.name for s in ends if kind_of(draft, s) == "facing" and sewn_at(steps, s.name) > i]
            if late:
                yield f"{steps[i].key} turns in the ends of {piece} before {', '.join(late)}"
