"""What is joined onto a garment: cuffs, bands and collars, and how they are closed inside."""

from __future__ import annotations

from collections.abc import Sequence

from drafting.draft.draft import Draft, Seam
from drafting.draft.gathers import gathers_along
from drafting.draft.roles import PieceRole
from drafting.draft.walk import walk
from drafting.making.model import said
from drafting.making.order.parts import Bench, base_of, pieces_in, pieces_of, told_together
from drafting.making.order.pressing import gathers
from drafting.making.order.seam_kinds import is_sleeve, is_unit, sewn_unit_of
from drafting.making.seam_lengths import has_half, seam_lengths


def split_attached(bench: Bench, seams: Sequence[Seam]) -> tuple[list[Seam], list[Seam]]:
    """Return the seams that join something to a sleeve, and the others."""
    draft = bench.garment.draft
    on = [s for s in seams if any(is_sleeve(draft[piece]) for piece in pieces_in([s]))]
    return on, [s for s in seams if s not in on]


def attached(bench: Bench, seams: Sequence[Seam]) -> None:
    """Join cuffs, bands and collars on, gathers first where there are some.

    A thing is turned in inside only once the last of its own seams is sewn: a band takes the fly's shield first.
    Each hand's cuff is a thing of its own.
    """
    groups: dict[str, list[Seam]] = {}
    for seam in seams:
        groups.setdefault(sewn_unit_of(bench.garment.draft, seam), []).append(seam)
    for unit, found in groups.items():
        rows = _of_both_hands(bench.garment.draft, found)
        things = [_things(bench.garment.draft, row) for row in rows]
        for n, row in enumerate(rows):
            _attach(bench, unit, row, last=not things[n] & set().union(*things[n + 1 :]))


def _things(draft: Draft, seams: Sequence[Seam]) -> set[str]:
    """Return the small things that seams join on, by piece; where none is named as one, all that they join."""
    joined = pieces_in(seams)
    return {name for name in joined if is_unit(draft[name])} or set(joined)


def _of_both_hands(draft: Draft, seams: Sequence[Seam]) -> list[list[Seam]]:
    """Return seams, those together that join the same things on the left and on the right; gathered ones apart."""
    groups: dict[tuple[str, ...], list[Seam]] = {}
    for seam in seams:
        apart = (seam.name,) if gathers_along([walk(draft, seam)]) else ()
        key = *apart, *sorted(base_of(draft[piece]) for piece in pieces_of(seam))
        groups.setdefault(key, []).append(seam)
    return list(groups.values())


def _attach(bench: Bench, unit: str, seams: Sequence[Seam], *, last: bool) -> None:
    draft, lengths, seam = bench.garment.draft, seam_lengths(bench.garment), seams[0]
    walked = walk(draft, seam)
    turned = _is_turned(draft, seam)
    key = "do.attach_stand" if _is_stand(draft, seam) else "do.attach_turned" if turned else "do.attach"
    say = [said(key, unit=unit, name=told_together(seams))]
    if run := gathers_along([walked]):
        say = [*gathers(run, whole=has_half(draft, seam)), *say]
    if last:
        inner = "stand" if key == "do.attach_stand" else unit
        say.append(said("do.turned_back" if turned else "do.inside", unit=inner))
    length = (2 if last else 1) * sum(lengths[one.name] for one in seams)
    names = [one.name for one in seams]
    bench.do("close", "face", f"with {unit}", pieces_in(seams), say, seams=names, length=length)


def _is_turned(draft: Draft, seam: Seam) -> bool:
    """Return whether a seam joins on a cuff that is turned back over its roll line."""
    cuffs = [draft[piece] for piece in pieces_of(seam) if draft[piece].role is PieceRole.CUFF]
    return any(mark.what == "roll line" for piece in cuffs for mark in piece.placements)


def _is_stand(draft: Draft, seam: Seam) -> bool:
    return any(draft[piece].role is PieceRole.COLLAR_STAND for piece in pieces_of(seam))
