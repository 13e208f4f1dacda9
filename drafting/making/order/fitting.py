"""Where the work stops to be tried on: the toile, the body, the sleeves basted in, then sewn."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from drafting.costume.make import Made
from drafting.draft.by_role import edge_as
from drafting.draft.draft import Seam
from drafting.draft.roles import EdgeRole
from drafting.draft.walk import walk
from drafting.making.model import Said, Step, said
from drafting.making.order.parts import Bench, pieces_in
from drafting.making.order.pressing import eased, gathers
from drafting.making.order.seam_kinds import is_facing, is_sleeve, is_unit
from drafting.making.seam_lengths import seam_lengths

TOILE_SHARE = 0.5
"""A toile takes about half of the seams' time: long stitches, no finishing (a guess)."""


def toile_steps(made: Made, steps: Sequence[Step]) -> Iterator[Step]:
    """Yield a toile to try on for each garment, before good cloth is cut (common practice)."""
    for garment in made.garments:
        sewn = [s for s in steps if s.garment == garment.name and s.seams]
        shown = tuple(f"{garment.name}.{p.name}" for p in garment.draft.pieces if not p.material)
        yield Step(
            key=f"{garment.name}/toile",
            stage="fit",
            verb="toile",
            garment=garment.name,
            say=(said("do.toile", garment=garment.name), said("do.toile_write")),
            uses=(),
            makes=f"toile: {garment.name}",
            pieces=shown,
            minutes=TOILE_SHARE * sum(step.minutes for step in sewn) + 45.0,
        )


JOINED = ("body", "flare", "flare starched", "flare stiffened")
"""What steps call the parts of a body that hang together already."""


def try_on_body(bench: Bench) -> None:
    """The first fitting, while every seam can still be changed; nothing is sewn in it."""
    draft = bench.garment.draft
    shell = [p for p in draft.pieces if not p.material and not is_sleeve(p)]
    body = [p.name for p in shell if not (is_unit(p) or is_facing(p))]
    joined = [p for p in body if bench.called.get(bench.parts[p]) in JOINED]
    if not joined:
        return
    held = [[p for p in joined if bench.parts[p] == part] for part in bench.holding(joined)]
    legs = any(edge_as(draft[name], EdgeRole.CROTCH) for name in joined)
    key = "do.fit_legs" if legs else "do.fit_body"
    bench.do("fit", "fit", "body tried on", max(held, key=len), [said(key), said("do.fit_write")], count=1)


def set_in(bench: Bench, seams: Sequence[Seam]) -> None:
    """Baste each sleeve in, try both on, then sew them in the round: one step an arm."""
    groups: dict[str, list[Seam]] = {}
    for seam in seams:
        groups.setdefault(bench.garment.draft[seam.a[0][0]].hand, []).append(seam)
    for side, found in groups.items():
        bench.do(
            "join",
            "baste",
            "sleeves basted in",
            pieces_in(found),
            list(_basted(bench, side, found)),
            length=_length(bench, found),
        )
    if groups:
        bench.do(
            "fit",
            "fit",
            "sleeves tried on",
            pieces_in(seams),
            [said("do.fit_sleeves"), said("do.fit_write")],
            count=1,
        )
    for side, found in groups.items():
        bench.do(
            "join",
            "set in",
            "body with sleeves",
            pieces_in(found),
            list(_set(bench, side)),
            seams=[s.name for s in found],
            length=_length(bench, found),
        )


def _length(bench: Bench, seams: Sequence[Seam]) -> float:
    lengths = seam_lengths(bench.garment)
    return sum(lengths[seam.name] for seam in seams)


def _basted(bench: Bench, side: str, seams: Sequence[Seam]) -> Iterator[Said]:
    walks = [walk(bench.garment.draft, seam) for seam in seams]
    ratios = [walked.gather_ratio for walked in walks if walked.gather_ratio]
    ease = sum(abs(seam.ease) for seam in seams)
    if ratios:
        yield from gathers(max(ratios), sum(max(w.a_length, w.b_length) for w in walks))
    elif eased(ease):
        yield said("do.cap_ease", ease=ease)
    else:
        yield said("do.cap_flat")
    yield said("do.baste_in_hand", hand=side) if side else said("do.baste_in")


def _set(bench: Bench, side: str) -> Iterator[Said]:
    yield said("do.set_in_hand", hand=side) if side else said("do.set_in")
    lined = any(piece.material == "lining" for piece in bench.garment.draft.pieces)
    yield said("do.set_press_coat" if lined else "do.set_press")
