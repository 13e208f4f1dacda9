"""Small things made up flat, sleeves, facings: made, then joined to what they belong to."""

from __future__ import annotations

from collections.abc import Sequence

from drafting.draft.by_role import edges_as
from drafting.draft.draft import Draft, Seam
from drafting.draft.piece import EdgeKind, Piece
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.draft.walk import walk
from drafting.making.model import Said, said
from drafting.making.order.parts import Bench, pieces_in, pieces_of
from drafting.making.order.pressing import eased, gathers, pressed
from drafting.making.order.seam_kinds import is_facing, is_sleeve, sewn_unit_of
from drafting.making.seam_lengths import seam_lengths

CLOSED = {"collar": "do.collar", "cuff": "do.cuff"}


def facings_prepared(bench: Bench, attach: Sequence[Seam]) -> None:
    """Neaten the inner edge of every facing before it is joined on; fold back those cut on."""
    collared = set(pieces_in(attach))
    for piece in bench.garment.draft.pieces:
        if piece.material:
            continue
        inner = [e.name for e in piece.edges if e.kind is EdgeKind.FREE]
        if is_facing(piece) and inner:
            facing(bench, piece, inner, [said("do.neaten", piece=piece.name)])
        necks = [e.name for e in edges_as(piece, EdgeRole.FACING_NECK) if e.kind is EdgeKind.OPENING]
        if piece.name in collared and necks:
            facing(bench, piece, necks, [said("do.fold_back", piece=piece.name)])


def facing(bench: Bench, piece: Piece, edges: Sequence[str], say: Sequence[Said]) -> None:
    bench.do(
        "prepare",
        "face",
        f"{piece.name} neatened",
        (piece.name,),
        say,
        edges=[(piece.name, name) for name in edges],
        length=sum(piece[name].length for name in edges) * piece.count,
    )


def made_up(bench: Bench, seams: Sequence[Seam]) -> None:
    """Sew each small thing together, turn it and press it; one step for each."""
    lengths = seam_lengths(bench.garment)
    groups: dict[str, list[Seam]] = {}
    for seam in seams:
        groups.setdefault(sewn_unit_of(bench.garment.draft, seam), []).append(seam)
    for unit, found in groups.items():
        found = sorted(found, key=lambda seam: _stands(bench.garment.draft, seam))
        names = ", ".join(seam.name for seam in found)
        bench.do(
            "prepare",
            "face",
            unit,
            pieces_in(found),
            [said(CLOSED.get(unit, "do.band"), unit=unit, names=names), said("do.turn_out")],
            seams=[s.name for s in found],
            length=sum(lengths[s.name] for s in found),
        )


def _stands(draft: Draft, seam: Seam) -> int:
    """Return when a seam of a collar is sewn: the fall's own, the fall to the stand, the stand's own."""
    pieces = [draft[piece].role for piece in pieces_of(seam)]
    return 2 * pieces.count(PieceRole.COLLAR_STAND) - (len(pieces) > 1)


def join_facings(bench: Bench, seams: Sequence[Seam]) -> None:
    """Join the facings, with the collar between where its edge meets the facing."""
    lengths = seam_lengths(bench.garment)
    for seam in sorted(seams, key=lambda seam: _on_garment(bench.garment.draft, seam)):
        bench.do(
            "join",
            "face",
            "body faced",
            pieces_in([seam]),
            [said("do.facing", name=seam.name), said("do.turn_out")],
            seams=(seam.name,),
            length=lengths[seam.name],
        )


def _on_garment(draft: Draft, seam: Seam) -> bool:
    """Return whether a seam joins a facing to the garment; those between facings come first."""
    return not all(is_facing(draft[piece]) for piece in pieces_of(seam))


def sleeves(bench: Bench, seams: Sequence[Seam]) -> None:
    """Close the sleeves into tubes; a slit or vent is finished while the sleeve lies flat."""
    draft, lengths = bench.garment.draft, seam_lengths(bench.garment)
    for piece in draft.pieces:
        slits = [e.name for e in piece.edges if e.kind is EdgeKind.OPENING]
        if is_sleeve(piece) and not piece.material and slits:
            bench.do(
                "prepare",
                "bind",
                f"{piece.name} opening finished",
                (piece.name,),
                [said("do.slit", piece=piece.name)],
                edges=[(piece.name, name) for name in slits],
                length=sum(piece[name].length for name in slits) * piece.count,
            )
    for seam in seams:
        full = [said("do.ease", ease=abs(seam.ease))] if eased(seam.ease) else []
        bench.do(
            "close",
            "join",
            "sleeves",
            pieces_in([seam]),
            [said("do.close_sleeve", name=seam.name), *full, pressed(bench, seam), said("do.press_round")],
            seams=(seam.name,),
            length=lengths[seam.name],
        )


def split_attached(bench: Bench, seams: Sequence[Seam]) -> tuple[list[Seam], list[Seam]]:
    """Return the seams that join something to a sleeve, and the others."""
    draft = bench.garment.draft
    on = [s for s in seams if any(is_sleeve(draft[piece]) for piece in pieces_in([s]))]
    return on, [s for s in seams if s not in on]


def attached(bench: Bench, seams: Sequence[Seam]) -> None:
    """Join cuffs, bands and collars on, gathers first where there are some."""
    lengths = seam_lengths(bench.garment)
    for seam in seams:
        unit = sewn_unit_of(bench.garment.draft, seam)
        walked = walk(bench.garment.draft, seam)
        say = [said("do.attach", unit=unit, name=seam.name)]
        if walked.gather_ratio:
            drawn = max(walked.a_length, walked.b_length)
            say = [*gathers(walked.gather_ratio, drawn), *say]
        say += [said("do.inside", unit=unit)]
        bench.do(
            "close",
            "face",
            f"with {unit}",
            pieces_in([seam]),
            say,
            seams=(seam.name,),
            length=2 * lengths[seam.name],
        )
