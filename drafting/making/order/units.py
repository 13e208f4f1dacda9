"""Small things made up flat, sleeves, facings: made, then joined to what they belong to. Layer 5."""

from __future__ import annotations

from collections.abc import Sequence

from drafting.draft import Seam
from drafting.making.model import said
from drafting.making.order.bench import Bench
from drafting.making.order.kinds import is_facing, is_sleeve, unit_of
from drafting.making.seam_lengths import seam_lengths
from drafting.piece import EdgeKind
from drafting.walk import walk

CLOSED = {"collar": "do.collar", "cuff": "do.cuff"}


def _pieces(seams: Sequence[Seam]) -> list[str]:
    return list(dict.fromkeys(piece for seam in seams for piece, _ in (*seam.a, *seam.b)))


def facings_prepared(bench: Bench) -> None:
    """Neaten the inner edge of every facing before it is joined on."""
    for piece in bench.garment.draft.pieces:
        inner = [e.name for e in piece.edges if e.kind is EdgeKind.FREE]
        if not piece.material and is_facing(piece.name) and inner:
            length = sum(piece[name].length for name in inner) * piece.count
            bench.do(
                "prepare", "face", f"{piece.name} neatened", (piece.name,),
                [said("do.neaten", piece=piece.name)], edges=[(piece.name, name) for name in inner],
                length=length,
            )  # fmt: skip


def made_up(bench: Bench, seams: Sequence[Seam]) -> None:
    """Sew each small thing together, turn it and press it; one step for each."""
    lengths = seam_lengths(bench.garment)
    groups: dict[str, list[Seam]] = {}
    for seam in seams:
        if seam in to_facings(seams):
            continue
        groups.setdefault(unit_of(seam), []).append(seam)
    for unit, found in groups.items():
        bench.do(
            "prepare", "face", unit, _pieces(found),
            [said(CLOSED.get(unit, "do.band"), unit=unit), said("do.turn_out")],
            seams=[s.name for s in found], length=sum(lengths[s.name] for s in found),
        )  # fmt: skip


def to_facings(seams: Sequence[Seam]) -> list[Seam]:
    """Return the seams that join a small thing to a facing: sewn when the facing is."""
    return [seam for seam in seams if any(is_facing(piece) for piece in _pieces([seam]))]


def facings(bench: Bench, seams: Sequence[Seam]) -> None:
    """Join the facings, with the collar between where its edge meets the facing."""
    lengths = seam_lengths(bench.garment)
    for seam in seams:
        bench.do(
            "join", "face", "body faced", _pieces([seam]),
            [said("do.facing", name=seam.name), said("do.turn_out")],
            seams=(seam.name,), length=lengths[seam.name],
        )  # fmt: skip


def sleeves(bench: Bench, seams: Sequence[Seam]) -> None:
    """Close the sleeves into tubes; a slit or vent is finished while the sleeve lies flat."""
    draft, lengths = bench.garment.draft, seam_lengths(bench.garment)
    for piece in draft.pieces:
        slits = [e.name for e in piece.edges if e.kind is EdgeKind.OPENING]
        if is_sleeve(piece) and not piece.material and slits:
            bench.do(
                "prepare", "bind", f"{piece.name} opening finished", (piece.name,),
                [said("do.slit", piece=piece.name)], edges=[(piece.name, name) for name in slits],
                length=sum(piece[name].length for name in slits) * piece.count,
            )  # fmt: skip
    for seam in seams:
        eased = [said("do.ease", ease=abs(seam.ease))] if abs(seam.ease) > 1.0 else []
        bench.do(
            "close", "join", "sleeves", _pieces([seam]), [said("do.close_sleeve", name=seam.name), *eased],
            seams=(seam.name,), length=lengths[seam.name],
        )  # fmt: skip


def split_attached(bench: Bench, seams: Sequence[Seam]) -> tuple[list[Seam], list[Seam]]:
    """Return the seams that join something to a sleeve, and the others."""
    draft = bench.garment.draft
    on = [s for s in seams if any(is_sleeve(draft[piece]) for piece in _pieces([s]))]
    return on, [s for s in seams if s not in on]


def attached(bench: Bench, seams: Sequence[Seam]) -> None:
    """Join cuffs, bands and collars on, gathers first where there are some."""
    lengths = seam_lengths(bench.garment)
    for seam in seams:
        unit = unit_of(seam)
        walked = walk(bench.garment.draft, seam)
        say = [said("do.attach", unit=unit, name=seam.name)]
        if walked.gather_ratio:
            drawn = max(walked.a_length, walked.b_length)
            say += [said("do.gather", ratio=walked.gather_ratio, drawn=drawn), said("do.quarters")]
        say += [said("do.inside", unit=unit)]
        bench.do(
            "close", "face", f"with {unit}", _pieces([seam]), say, seams=(seam.name,),
            length=2 * lengths[seam.name],
        )  # fmt: skip
