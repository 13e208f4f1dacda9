"""Where the work stops to be tried on: the toile, the basted body, the sleeves basted in, then sewn."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from drafting.alter.braces import BRACE_BUTTON
from drafting.checks.enclosed import eased
from drafting.costume.garment import MadeGarment
from drafting.costume.make import Made
from drafting.draft.by_role import edge_as, is_shell
from drafting.draft.draft import Draft, Seam
from drafting.draft.frame import Limb
from drafting.draft.gathers import gathers_along
from drafting.draft.piece import Edge, InnerDart
from drafting.draft.roles import EdgeRole
from drafting.draft.walk import walk
from drafting.fitting.mock_up import is_tried
from drafting.making.model import Needle, Said, Setting, Step, said
from drafting.making.order.parts import Bench, pieces_in
from drafting.making.order.pressing import gathered_edge, gathers, gathers_on, overedged
from drafting.making.order.seam_kinds import is_sleeve, kind_of, order_of_body
from drafting.making.seam_lengths import inner_dart_length, seam_lengths
from drafting.making.settings.feet import BASTED
from drafting.making.settings.surface import layers_held

TOILE_SHARE = 0.5
"""A toile takes about half of the seams' time: long stitches, no finishing (a guess)."""


def toile_steps(made: Made, steps: Sequence[Step]) -> Iterator[Step]:
    """Yield a toile to try on for each garment, before good cloth is cut (common practice)."""
    for garment in made.garments:
        sewn = [s for s in steps if s.garment == garment.name and s.seams]
        shown = tuple(f"{garment.name}.{p.name}" for p in garment.draft.pieces if is_tried(p))
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
            length=_toile_length(garment),
        )


def _toile_length(garment: MadeGarment) -> float:
    """Return the mm of seam that a toile is sewn with: its shell's seams and darts, no facings or linings."""
    lengths = seam_lengths(garment)
    seams = [seam.name for seam in garment.draft.seams if kind_of(garment.draft, seam) != "facing"]
    return sum(lengths[name] for name in seams) + inner_dart_length(filter(is_shell, garment.draft.pieces))


BASTING = Setting(
    stitch=BASTED, seam_class=1, stitch_length=4.5, needle=Needle("sharp", 80), foot="all-purpose", press="not"
)
"""A running stitch of 4 to 5 mm by hand (common practice; the number of `Source.ISO_4915` from memory)."""


def try_on_body(bench: Bench, seams: Sequence[Seam]) -> None:
    """The first fitting: all that shapes the body is basted, tried on, and taken apart again.

    Nothing is fused, pressed, stayed, trimmed or overcast yet, so that every seam can be changed.
    """
    draft = bench.garment.draft
    darted = [p.name for p in draft.pieces if p.darts and not p.material and not is_sleeve(p)]
    seams = [seam for seam in seams if not any(is_sleeve(draft[piece]) for piece in pieces_in([seam]))]
    pieces = list(dict.fromkeys([*pieces_in(seams), *darted]))
    if not any(kind_of(draft, seam) != "dart" for seam in seams):
        return
    before = dict(bench.parts)
    inner = (f"{name} {dart.name}" for name, dart in _inner(bench, darted))
    names = ", ".join([*inner, *(seam.name for seam in _in_order(draft, seams))])
    length = _length(bench, seams) + inner_dart_length(draft[name] for name in darted)
    garment = bench.garment.name
    bench.do(
        "fit", "baste", "basted", pieces, [said("do.baste_body", names=names, garment=garment)], length=length
    )
    basted_as(bench, seams)
    braced = any(notion.what == BRACE_BUTTON for notion in draft.notions)
    held = [said("do.fit_braces")] if braced else []
    tried = [*held, said(_looked_at(draft, pieces)), _written_down(draft), said("do.take_apart")]
    bench.do("fit", "fit", "body tried on", pieces, tried, count=1)
    bench.take_apart(before)


def _in_order(draft: Draft, seams: Sequence[Seam]) -> list[Seam]:
    """Return seams as they are basted: darts, then the rest in the order in which they are sewn afterwards."""
    darts = [seam for seam in seams if kind_of(draft, seam) == "dart"]
    return [*darts, *order_of_body(draft, [seam for seam in seams if seam not in darts])]


def _looked_at(draft: Draft, pieces: Sequence[str]) -> str:
    """Return what is said to be looked at: of legs, of what hangs from the waist, of a body."""
    if any(edge_as(draft[name], EdgeRole.CROTCH) for name in pieces):
        return "do.fit_legs"
    if any(p.frame and p.frame.limb is Limb.HANGS and edge_as(p, EdgeRole.NECK) for p in draft.pieces):
        return "do.fit_cape"
    if all((frame := draft[name].frame) and frame.limb is Limb.LEG for name in pieces):
        return "do.fit_spats"
    shoulders = any(edge_as(piece, EdgeRole.SHOULDER) for piece in draft.pieces)
    return "do.fit_body" if shoulders else "do.fit_skirt"


def _written_down(draft: Draft) -> Said:
    """Return how it is written down: pinned on one side and carried over, or where the sides differ on each."""
    return said("do.fit_write_apart" if draft.uneven else "do.fit_write")


def basted_as(bench: Bench, seams: Sequence[Seam]) -> None:
    """Say of the last step what it bastes, and how: with thread, or without a stitch where every hole stays."""
    holds, names = layers_held(bench.fabric), [seam.name for seam in seams]
    if holds == "clips":
        bench.also(basted=names, holds=holds)
    else:
        bench.also(basted=names, setting=replace(BASTING, holds=holds))


def _inner(bench: Bench, pieces: Sequence[str]) -> Iterator[tuple[str, InnerDart]]:
    for name in pieces:
        yield from ((name, dart) for dart in bench.garment.draft[name].darts)


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
        basted_as(bench, found)
    if groups:
        bench.do(
            "fit",
            "fit",
            "sleeves tried on",
            pieces_in(seams),
            [said("do.fit_sleeves"), _written_down(bench.garment.draft)],
            count=1,
        )
    for side, found in groups.items():
        bench.do(
            "join",
            "set in",
            "body with sleeves",
            pieces_in(found),
            list(_set(bench, side, found)),
            seams=[s.name for s in found],
            length=_length(bench, found),
        )


def _length(bench: Bench, seams: Sequence[Seam]) -> float:
    lengths = seam_lengths(bench.garment)
    return sum(lengths[seam.name] for seam in seams)


def _basted(bench: Bench, side: str, seams: Sequence[Seam]) -> Iterator[Said]:
    draft = bench.garment.draft
    armholes = [seam for seam in seams if any(gathered_edge(e) for e in _armhole_edges(draft, seam))]
    for seam in armholes:
        if drawn := gathers_along([walk(draft, seam)]):
            yield from gathers_on(draft, seam, drawn)
    if run := gathers_along(walk(draft, seam) for seam in seams if seam not in armholes):
        yield from gathers(run)
    elif eased(ease := sum(abs(seam.ease) for seam in seams)):
        yield said("do.cap_ease", ease=ease)
    else:
        yield said("do.cap_flat")
    yield said("do.baste_in_hand", hand=side) if side else said("do.baste_in")


def _armhole_edges(draft: Draft, seam: Seam) -> list[Edge]:
    edges = map(draft.edge, (*seam.a, *seam.b))
    return [edge for edge in edges if edge.role is EdgeRole.ARMHOLE]


def _set(bench: Bench, side: str, seams: Sequence[Seam]) -> Iterator[Said]:
    yield said("do.set_in_hand", hand=side) if side else said("do.set_in")
    setting = bench.settings.get((bench.garment.name, seams[0].name))
    lined = any(piece.material == "lining" for piece in bench.garment.draft.pieces)
    if _long_stitched(bench, seams):
        yield said("do.long_stay" if lined else "do.long_out")
    if lined:
        yield said("do.set_press_coat")
    else:
        yield said("do.set_press_neat" if overedged(setting) else "do.set_press")


def _long_stitched(bench: Bench, seams: Sequence[Seam]) -> bool:
    """Return whether long stitches draw the cap up: it is gathered, or eased in."""
    run = gathers_along(walk(bench.garment.draft, seam) for seam in seams)
    return bool(run) or eased(sum(abs(seam.ease) for seam in seams))
