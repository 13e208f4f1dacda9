"""Small things made up flat, sleeves, facings: made, then joined to what they belong to."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from drafting.checks.enclosed import eased, french
from drafting.draft.by_role import edges_as
from drafting.draft.draft import Draft, EdgeRef, Seam
from drafting.draft.gathers import both_gathered, gathers_along
from drafting.draft.openings import hands
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import SEWN_ON, EdgeRole, PieceRole
from drafting.draft.walk import walk
from drafting.fabric.handling import frays
from drafting.ground.lengths import told
from drafting.making.model import Said, Supply, said
from drafting.making.order.parts import Bench, base_of, own_each_hand, pieces_in, pieces_of
from drafting.making.order.pressing import gathers_of_both, gathers_on, pressed
from drafting.making.order.rounds import in_rounds, of_hems, on_garment
from drafting.making.order.seam_kinds import is_facing, is_sleeve, sewn_unit_of
from drafting.making.order.strips import stripped, strips_sewn_on
from drafting.making.order.used_up import STAY
from drafting.making.seam_lengths import seam_lengths, times_sewn

HELD_ENDS = 10.0
"""mm of a tape or an elastic in a seam that either end of it has to spare: the next seam catches it (ours)."""

NARROW = f"soft, {told(6.0, 'small')}"

CLOSED = {"collar": "do.collar_whole", "cuff": "do.cuff"}


def facings_prepared(bench: Bench, attach: Sequence[Seam], facings: Sequence[Seam]) -> None:
    """Neaten the inner edge of every facing before it is joined on; fold back those cut on whose neck a collar or
    a strip will close. Both hands in one."""
    closed = dict.fromkeys(stripped(bench.garment.draft, facings), "strip")
    closed |= dict.fromkeys(pieces_in(attach), "collar")
    groups: dict[tuple[str, str], list[tuple[Piece, list[str]]]] = {}
    for piece in bench.garment.draft.pieces:
        if not piece.material:
            for key, edges in _prepared(bench, piece, collared=piece.name in closed):
                groups.setdefault((key, base_of(piece)), []).append((piece, edges))
    for (key, base), found in groups.items():
        pieces = [piece for piece, _ in found]
        inner = sum(hands(p) * edge.length for p in pieces for edge in edges_as(p, EdgeRole.FACING))
        neatened = {} if key == "do.neaten" else {"neatened": inner, "closer": closed[pieces[0].name]}
        bench.do(
            "prepare",
            "face",
            f"{base} neatened",
            [piece.name for piece in pieces],
            [said(key, piece=base, **neatened), *own_each_hand(pieces)],
            edges=[(piece.name, name) for piece, edges in found for name in edges],
            length=sum(piece[name].length * hands(piece) for piece, edges in found for name in edges),
        )


def _prepared(bench: Bench, piece: Piece, *, collared: bool) -> Iterator[tuple[str, list[str]]]:
    """Yield how a facing is made ready, with the edges that this is about."""
    inner = [e.name for e in piece.edges if e.kind is EdgeKind.FREE]
    ravels = bench.fabric is None or frays(bench.fabric)
    if is_facing(piece) and inner and piece.role is not PieceRole.BINDING and ravels:
        yield "do.neaten", inner
    necks = [e.name for e in edges_as(piece, EdgeRole.FACING_NECK) if e.kind is EdgeKind.OPENING]
    beyond = [e.name for e in edges_as(piece, EdgeRole.STAND_NECK) if e.kind is EdgeKind.OPENING]
    if collared and necks:
        yield "do.fold_back_stand" if beyond else "do.fold_back", [*necks, *beyond]


def made_up(bench: Bench, seams: Sequence[Seam]) -> None:
    """Sew each small thing together, turn it and press it; a collar's fall before its stand."""
    groups: dict[str, list[Seam]] = {}
    for seam in seams:
        groups.setdefault(sewn_unit_of(bench.garment.draft, seam), []).append(seam)
    for unit, found in groups.items():
        late = sorted(found, key=lambda seam: _stands(bench.garment.draft, seam))
        fall = [seam for seam in late if _stands(bench.garment.draft, seam) == 0]
        if unit == "collar" and fall and len(fall) < len(late):
            _unit(bench, "collar fall", fall, [said("do.collar", names=_names(fall)), said("do.turn_fall")])
            late = [seam for seam in late if seam not in fall]
            say = [said("do.collar_stand", names=_names(late)), said("do.turn_out")]
        else:
            key = "do.stand_made" if _stand_alone(bench.garment.draft, late) else CLOSED.get(unit, "do.band")
            say = [said(key, unit=unit, names=_names(late)), said("do.turn_out")]
        _unit(bench, unit, late, say)


def _stand_alone(draft: Draft, seams: Sequence[Seam]) -> bool:
    """Return whether a collar is nothing but its stand."""
    return all(draft[piece].role is PieceRole.COLLAR_STAND for piece in pieces_in(seams))


def _names(seams: Sequence[Seam]) -> str:
    return ", ".join(seam.name for seam in seams)


def _unit(bench: Bench, unit: str, seams: Sequence[Seam], say: Sequence[Said]) -> None:
    lengths = seam_lengths(bench.garment)
    length = sum(lengths[seam.name] for seam in seams)
    bench.do("prepare", "face", unit, pieces_in(seams), say, seams=[s.name for s in seams], length=length)


def _stands(draft: Draft, seam: Seam) -> int:
    """Return when a seam of a collar is sewn: the fall's own, the fall to the stand, the stand's own."""
    pieces = [draft[piece].role for piece in pieces_of(seam)]
    return 2 * pieces.count(PieceRole.COLLAR_STAND) - (len(pieces) > 1)


def join_facings(bench: Bench, seams: Sequence[Seam]) -> None:
    """Join the facings, with the collar between where its edge meets the facing."""
    lengths, draft = seam_lengths(bench.garment), bench.garment.draft
    strips: dict[str, list[Seam]] = {}
    own: list[Seam] = []
    for seam in seams:
        if strip := next((name for name in pieces_of(seam) if draft[name].role is PieceRole.BINDING), ""):
            strips.setdefault(strip, []).append(seam)
        else:
            own.append(seam)
    for found in in_rounds(draft, own):
        bench.do(
            "join",
            "face",
            "body faced",
            pieces_in(found),
            list(_faced(bench, found)),
            seams=[seam.name for seam in _most_first(bench, found)],
            length=sum(lengths[seam.name] for seam in found),
        )
    strips_sewn_on(bench, strips)


def of_fronts(draft: Draft, seams: Sequence[Seam], attach: Sequence[Seam]) -> list[Seam]:
    """Return the seams of facings cut apart from a front whose neck a collar closes: they come before the collar,
    as its seam catches their neck edge (common practice)."""
    collared = set(pieces_in(attach))
    return [s for s in seams if collared & {*pieces_of(s)} and any(_neck_open(draft, n) for n in pieces_of(s))]


def _neck_open(draft: Draft, name: str) -> list[EdgeRef]:
    """Return the neck edges of a facing of its own that no seam of the draft closes."""
    necks = edges_as(draft[name], EdgeRole.FACING_NECK) if is_facing(draft[name]) else ()
    return [(name, edge.name) for edge in necks if edge.kind is EdgeKind.OPENING]


def face_fronts(bench: Bench, seams: Sequence[Seam]) -> None:
    """Face the fronts, before the collar is sewn on; across the neck as far as the centre, where it ends there."""
    draft, lengths = bench.garment.draft, seam_lengths(bench.garment)
    for seam in seams:
        pieces = pieces_of(seam)
        necks = [ref for name in pieces for ref in _neck_open(draft, name)]
        beyond = [
            (name, edge.name)
            for name in pieces
            for edge in edges_as(draft[name], EdgeRole.STAND_NECK)
            if edge.kind is EdgeKind.OPENING
        ]
        bench.do(
            "join",
            "face",
            "body faced",
            pieces,
            [
                said("do.facing_across" if beyond else "do.facing", name=seam.name),
                said("do.turn_out"),
                said("do.facing_to_neck"),
            ],
            seams=(seam.name,),
            edges=[*necks, *beyond],
            length=lengths[seam.name],
        )


def _most_first(bench: Bench, seams: Sequence[Seam]) -> list[Seam]:
    """Return the seams of one row, the one that has to lengthen most first: the whole row is sewn as it is."""
    known = {seam.name: bench.settings.get((bench.garment.name, seam.name)) for seam in seams}
    return sorted(seams, key=lambda seam: -(found.lengthens if (found := known[seam.name]) else 0.0))


def _faced(bench: Bench, seams: Sequence[Seam]) -> Iterator[Said]:
    """Yield how a facing is joined: one that joins facings alone is pressed open, the others turned."""
    for seam in seams:
        if run := gathers_along([walk(bench.garment.draft, seam)]):
            yield from gathers_on(bench.garment.draft, seam, run)
    if len(seams) > 1:
        yield said("do.facing_round", names=_names(seams))
    else:
        yield said("do.facing", name=seams[0].name)
    draft = bench.garment.draft
    if on_garment(draft, seams[0]):
        yield from (said("do.turn_out"), said("do.understitch"))
        if of_hems(draft, seams):
            inner = sum(hands(p) * edge.length for p in _facings_of(draft, seams) for edge in _inner(p))
            yield said("do.facing_caught", sewn=inner)
    else:
        yield said("do.press_open")


def _facings_of(draft: Draft, seams: Sequence[Seam]) -> list[Piece]:
    return [piece for piece in map(draft.__getitem__, pieces_in(seams)) if is_facing(piece)]


def _inner(piece: Piece) -> list[Edge]:
    """Return the edge of a facing that is neither sewn nor beside what opens."""
    return [edge for edge in edges_as(piece, EdgeRole.INNER) if edge.kind is EdgeKind.FREE]


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
                [said(_opening(piece, slits), piece=piece.name)],
                edges=[(piece.name, name) for name in slits],
                length=sum(piece[name].length for name in slits) * hands(piece),
            )
    for seam in seams:
        full = [said("do.ease", ease=abs(seam.ease))] if eased(seam.ease) else []
        both = both_gathered(walk(draft, seam))
        drawn = [*gathers_of_both(draft, seam, both)] if both else []
        held = [_held_up(bench, seam, both[0].held)] if both else []
        bench.do(
            "close",
            "join",
            "sleeves",
            pieces_in([seam]),
            [*drawn, _closing(bench, seam), *held, *full, *pressed(bench, seam), said("do.press_round")],
            seams=(seam.name,),
            length=lengths[seam.name],
        )
        if both:
            gives, cut = _gives(bench, seam), both[0].held + 2 * HELD_ENDS
            what, kind = ("elastic", NARROW) if gives else ("tape", STAY)
            bench.also(Supply(what, kind, times_sewn(draft, seam) * cut, "mm"))


def _held_up(bench: Bench, seam: Seam, held: float) -> Said:
    """Return what holds two gathered tiers to their length: a tape, or where the arm stretches them an elastic."""
    how = "do.tiers_elastic" if _gives(bench, seam) else "do.tiers_taped"
    return said(how, held=held, cut=held + 2 * HELD_ENDS)


def _gives(bench: Bench, seam: Seam) -> bool:
    setting = bench.settings.get((bench.garment.name, seam.name))
    return setting is not None and setting.lengthens > 0


def _closing(bench: Bench, seam: Seam) -> Said:
    """Return how a seam closes the sleeves, or the one of its hand; a French one begins wrong sides together."""
    draft = bench.garment.draft
    enclosed, hand = french(draft, seam, bench.fabric), draft[seam.a[0][0]].hand
    if hand:
        return said(
            "do.close_sleeve_french_hand" if enclosed else "do.close_sleeve_hand", name=seam.name, hand=hand
        )
    return said("do.close_sleeve_french" if enclosed else "do.close_sleeve", name=seam.name)


def _opening(piece: Piece, slits: Sequence[str]) -> str:
    """Return how a sleeve's opening is finished: a coat's vent lies over its underlap, on the under sleeve."""
    if not all(piece[name].role is EdgeRole.VENT for name in slits):
        return "do.slit"
    if piece.role is PieceRole.UNDER_SLEEVE:
        return "do.slit_underlap"
    hemmed = any(edge.kind is EdgeKind.HEM for edge in piece.edges)
    return "do.slit_vent" if hemmed else "do.slit_vent_seam"


def split_sewn_on(draft: Draft, seams: Sequence[Seam]) -> tuple[list[Seam], list[Seam]]:
    """Return the seams inside other small things, and those inside a pocket or a strap."""
    own = [s for s in seams if all(draft[piece].role in SEWN_ON for piece in pieces_in([s]))]
    return [s for s in seams if s not in own], own
