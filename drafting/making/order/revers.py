"""A collar that runs on into the facing (a coat's): under side to the body, upper side to the facing.

Where a seam of the draft joins a collar to a facing, the collar cannot be made up by itself: the under
collar is sewn to the neck, the top collar to the facings, and both layers are sewn together round the
edge in one line. A shawl's upper side is one with the facing: its two hands are joined at the centre back instead.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from drafting.draft.draft import Draft, Seam
from drafting.draft.roles import PieceRole
from drafting.making.model import Said, Stage, said
from drafting.making.order.parts import Bench, pieces_in, pieces_of, told_together
from drafting.making.order.seam_kinds import is_facing, sewn_unit_of
from drafting.making.seam_lengths import seam_lengths


def to_facings(draft: Draft, seams: Sequence[Seam]) -> list[Seam]:
    """Return the seams that join a small thing to a facing."""
    return [seam for seam in seams if any(is_facing(draft[piece]) for piece in pieces_of(seam))]


def of_revers(draft: Draft, seams: Sequence[Seam], facing: Sequence[Seam]) -> list[Seam]:
    """Return the seams of every collar that somewhere meets a facing, as a small thing or by its edge."""
    met = [
        seam for seam in facing if any(draft[piece].role is PieceRole.UNDER_COLLAR for piece in pieces_of(seam))
    ]
    units = {sewn_unit_of(draft, seam) for seam in (*to_facings(draft, seams), *met)}
    return [seam for seam in seams if sewn_unit_of(draft, seam) in units]


def under_made(bench: Bench, unit: Sequence[Seam]) -> None:
    """Join what the under collar is cut in: its seam at the centre back."""
    for seam in _own(bench.garment.draft, unit):
        _do(bench, "prepare", [seam], [said("do.under_collar", name=seam.name), said("do.press_open")])


def _own(draft: Draft, unit: Sequence[Seam]) -> list[Seam]:
    """Return the seams inside one layer: a piece to itself, or the under collar's two hands."""
    outer = {piece for seam in to_facings(draft, unit) for piece in pieces_of(seam)}
    return [seam for seam in unit if not outer & set(pieces_of(seam))]


def put_on(bench: Bench, unit: Sequence[Seam], attach: Sequence[Seam], facing: Sequence[Seam]) -> None:
    """Join the under collar to the neck, the top collar to the facings, then both along the edge."""
    draft = bench.garment.draft
    stands = any(draft[piece].role is PieceRole.COLLAR_STAND for piece in pieces_in(attach))
    to_neck = "do.stand_to_neck" if stands else "do.under_to_neck"
    to_facing = "do.stand_to_facing" if stands else "do.top_to_facing"
    for key, seams in ((to_neck, attach), (to_facing, to_facings(draft, unit))):
        if seams:
            _do(bench, "join", seams, [said(key, name=told_together(seams)), said("do.press_neck")])
    joints = [seam for seam in facing if all(is_facing(draft[piece]) for piece in pieces_of(seam))]
    for seam in joints:
        _do(bench, "join", [seam], [said("do.facing", name=seam.name), said("do.press_open")])
    facing = [seam for seam in facing if seam not in joints]
    kept = {seam.name for seam in (*_own(draft, unit), *to_facings(draft, unit))}
    edges = [*(seam for seam in unit if seam.name not in kept), *facing]
    lined = bool(bench.lined() & set(pieces_in(attach)))
    key = "do.coat_stand" if stands else "do.shawl" if joints else "do.revers"
    _do(bench, "join", edges, list(_edge(edges, key, lined)))


def _edge(seams: Sequence[Seam], key: str, lined: bool) -> Iterator[Said]:
    yield said(key, names=", ".join(seam.name for seam in seams))
    yield said("do.turn_out")
    yield said(INSIDE[key, lined])


INSIDE = {
    ("do.revers", True): "do.revers_inside",
    ("do.revers", False): "do.revers_inside_unlined",
    ("do.shawl", True): "do.shawl_inside",
    ("do.shawl", False): "do.shawl_inside_unlined",
    ("do.coat_stand", True): "do.coat_stand_inside",
    ("do.coat_stand", False): "do.coat_stand_inside_unlined",
}
"""How the neck is held inside, by how the edge was sewn and whether a lining is felled to it."""


def _do(bench: Bench, stage: Stage, seams: Sequence[Seam], say: Sequence[Said]) -> None:
    lengths = seam_lengths(bench.garment)
    name = "under collar" if stage == "prepare" else "body with collar and facings"
    bench.do(
        stage,
        "face",
        name,
        pieces_in(seams),
        say,
        seams=[seam.name for seam in seams],
        length=sum(lengths[seam.name] for seam in seams),
    )
