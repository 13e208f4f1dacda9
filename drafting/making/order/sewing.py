"""One garment put together: baste and try on, stiffen, shape, join flat, close, set in, finish.

Common practice: darts and shaping before joining, flat work before rounds are closed,
set-in sleeves after the side seams, hems last; what hangs on the bias rests a day before it is
levelled.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import takewhile

from drafting.alter.edge_pocket import SEAM_BACK
from drafting.checks.enclosed import eased, french
from drafting.costume.garment import MadeGarment
from drafting.draft.draft import Draft, Seam
from drafting.draft.gathers import gathers_along
from drafting.draft.openings import hands
from drafting.draft.piece import EdgeKind
from drafting.draft.roles import EdgeRole, SeamKind
from drafting.draft.walk import walk
from drafting.fabric import Fabric
from drafting.making.model import Said, Setting, Step, said
from drafting.making.order import additions as adding
from drafting.making.order import (
    attaching,
    closings,
    fastening,
    finishing,
    fitting,
    inside,
    revers,
    stiffening,
    units,
    yokes,
)
from drafting.making.order.by_hand import told_as_sewn
from drafting.making.order.open_edges import finish_ends
from drafting.making.order.parts import Bench, base_of, pieces_of
from drafting.making.order.pressing import gathers, narrowed, pressed, raw_edges
from drafting.making.order.rounds import of_hems
from drafting.making.order.seam_kinds import (
    CENTRES,
    SeamWork,
    below_fly,
    kind_of,
    late,
    order_of_body,
    sewn_unit_of,
)
from drafting.making.seam_lengths import has_half, inner_dart_length, seam_lengths, times_sewn
from drafting.making.settings.inner_darts import inner_dart_key
from drafting.making.settings.pressing import side_pressed


def sewing_steps(
    garment: MadeGarment, cloths: Mapping[str, Fabric], settings: Mapping[tuple[str, str], Setting]
) -> tuple[Step, ...]:
    """Return the steps that turn a garment's cut pieces into the garment, in the cloths of these roles."""
    fabric = cloths.get(garment.fabric)
    bench = Bench(garment, settings, fabric, cloths)
    kinds = {seam.name: kind_of(garment.draft, seam) for seam in garment.draft.seams}
    seams = {kind: [s for s in garment.draft.seams if kinds[s.name] == kind] for kind in kinds.values()}
    tried = [*seams.get("dart", []), *seams.get("flare", []), *seams.get("body", [])]
    fitting.try_on_body(bench, tried)
    stiffening.stiffen(bench, fabric)
    inside.roll_line(bench)
    adding.sewn_on(bench)
    for seam in seams.get("dart", []):
        dart(bench, seam)
    inner_darts(bench)
    small, flaps = units.split_sewn_on(garment.draft, seams.get("unit", []))
    adding.caught_trims(bench, small=True)
    units.made_up(bench, flaps)
    adding.pockets(bench)
    adding.slits(bench)
    adding.caught_trims(bench, small=False)
    units.facings_prepared(bench, seams.get("attach", []), seams.get("facing", []))
    flares(bench, seams.get("flare", []), fabric)
    body(bench, seams.get("body", []), seams.get("fly", []))
    turned = revers.of_revers(garment.draft, small, seams.get("facing", []))
    units.made_up(bench, [seam for seam in small if seam not in turned])
    revers.under_made(bench, turned)
    fastening.caught(bench)
    closed(bench, seams, turned)
    fitting.set_in(bench, seams.get("set in", []))
    on_sleeves, _ = attaching.split_attached(bench, seams.get("attach", []))
    attaching.attached(bench, on_sleeves)
    finishing.sleeve_ends(bench)
    finishing.rest(bench, fabric, of_hems(garment.draft, seams.get("facing", [])))
    return tuple(told_as_sewn(step, settings) for step in bench.steps)


def closed(bench: Bench, seams: Mapping[SeamWork, list[Seam]], turned: Sequence[Seam]) -> None:
    """Join collars, bands and facings to the body, and close the sleeves into tubes."""
    hems = of_hems(bench.garment.draft, seams.get("facing", []))
    facing = [seam for seam in seams.get("facing", []) if seam not in hems]
    _, elsewhere = attaching.split_attached(bench, seams.get("attach", []))
    if turned:
        draft = bench.garment.draft
        its_own = {sewn_unit_of(draft, seam) for seam in turned}
        collar = [seam for seam in elsewhere if sewn_unit_of(draft, seam) in its_own]
        elsewhere = [seam for seam in elsewhere if seam not in collar]
        revers.put_on(bench, turned, collar, facing)
        facing = []
    fronts = units.of_fronts(bench.garment.draft, facing, elsewhere)
    units.face_fronts(bench, fronts)
    facing = [seam for seam in facing if seam not in fronts]
    finish_ends(bench, elsewhere)
    finishing.bearers(bench)
    attaching.attached(bench, elsewhere)
    units.join_facings(bench, facing)
    closings.fold_back(bench)
    units.sleeves(bench, seams.get("limb", []))


def dart(bench: Bench, seam: Seam) -> None:
    piece = seam.a[0][0]
    laid = seam.kind is SeamKind.LAID_PLEAT
    onto = "" if laid else side_pressed(bench.garment.draft, seam)
    bench.do(
        "shape",
        "dart",
        f"{piece} shaped",
        (piece,),
        [
            said("do.lay_pleat" if laid else "do.dart", name=seam.name, piece=piece, onto=onto),
            *([] if laid else narrowed(bench, seam)),
        ],
        seams=(seam.name,),
        count=times_sewn(bench.garment.draft, seam),
        length=seam_lengths(bench.garment)[seam.name],
    )


def inner_darts(bench: Bench) -> None:
    for piece in bench.garment.draft.pieces:
        if piece.darts and not piece.material:
            names = ", ".join(dart.name for dart in piece.darts)
            bench.do(
                "shape",
                "dart",
                f"{piece.name} shaped",
                (piece.name,),
                [said("do.inner_dart", name=names, piece=piece.name)],
                count=hands(piece) * len(piece.darts),
                length=inner_dart_length([piece]),
            )
            bench.also(setting=bench.settings.get((bench.garment.name, inner_dart_key(piece.name))))


def flares(bench: Bench, seams: Sequence[Seam], fabric: Fabric | None) -> None:
    """Join panels on the bias, press open, starch where the cloth takes it; bands wait for the levelled hem."""
    lengths = seam_lengths(bench.garment)
    for seam in seams:
        pieces = pieces_of(seam)
        say = [said("do.join_bias", name=seam.name), *_bagged(bench, seam), *raw_edges(bench, seam)]
        narrow = list(narrowed(bench, seam))
        press = said("do.press_bias_side", onto=side_pressed(bench.garment.draft, seam)) if narrow else BIAS_OPEN
        bench.do(
            "shape",
            "join",
            "flare",
            pieces,
            [*say, *narrow, press],
            seams=(seam.name, *(bag.name for bag in adding.bags_between(bench, seam))),
            length=lengths[seam.name],
        )
    if not seams:
        return
    flared = list(dict.fromkeys(p for seam in seams for p in pieces_of(seam)))
    bench.flared.extend(flared)
    if fabric is not None and fabric.takes_starch:
        bench.do("shape", "starch", "flare starched", flared, [said("do.starch")], wait=4.0, count=1)
        bench.also(finishing.STARCH)


BIAS_OPEN = said("do.press_bias")


def body(bench: Bench, seams: Sequence[Seam], flies: Sequence[Seam] = ()) -> None:
    """Join the body, what is flat first: a seam that closes a round waits for the others."""
    lengths = seam_lengths(bench.garment)
    left = order_of_body(bench.garment.draft, seams)
    for row in yokes.seam_rows(bench.garment.draft, left):
        seam = row[0]
        if late(bench.garment.draft, seam) >= CENTRES:
            closings.zipped(bench, seam_sewn=False)
        pieces = pieces_of(seam)
        bench.do(
            "join",
            "join",
            "body",
            pieces,
            list(_joined(bench, row)),
            seams=(*(one.name for one in row), *(bag.name for bag in adding.bags_between(bench, seam))),
            length=sum(lengths[one.name] for one in row),
        )
        if below_fly(bench.garment.draft, seam):
            finishing.sew_fly(bench, flies)
        if seam.kind is SeamKind.CENTRE:
            closings.zipped(bench, seam_sewn=True)
    closings.zipped(bench, seam_sewn=True)


def _joined(bench: Bench, row: Sequence[Seam]) -> Iterator[Said]:
    seam = row[0]
    if run := gathers_along([walk(bench.garment.draft, one) for one in row]):
        yield from gathers(run, whole=has_half(bench.garment.draft, seam))
    if double := list(yokes.doubled(bench, row, gathered=run is not None)):
        yield from double
        return
    enclosed = french(bench.garment.draft, seam, bench.fabric)
    yield said("do.join_french" if enclosed else _how(bench.garment.draft, seam), name=yokes.row_name(row))
    yield from _bagged(bench, seam)
    if not run and eased(seam.ease):
        yield said("do.ease", ease=abs(seam.ease))
    if seam.kind is SeamKind.PLEAT:
        yield from raw_edges(bench, seam)
        yield said("do.press_pleat")
    else:
        yield from pressed(bench, seam)
    if seam.kind in CURVED:
        yield said("do.clip_curve")


def _bagged(bench: Bench, seam: Seam) -> list[Said]:
    """Return how a seam with a pocket in it is sewn: the mouth stays open, the bag is closed in one go."""
    if not adding.bags_between(bench, seam):
        return []
    draft = bench.garment.draft
    behind = (p for p in pieces_of(seam) if any(m.what == SEAM_BACK for m in draft[p].placements))
    return [said("do.seam_pocket", behind=base_of(draft[next(behind)]))]


CURVED = (SeamKind.PRINCESS,)
"""Seams whose allowances are clipped and notched before they lie flat (common practice); a crotch is sewn twice
instead."""


def _how(draft: Draft, seam: Seam) -> str:
    """Return the sentence for a body seam: between the legs, left to right, or any other."""
    if seam.kind is SeamKind.CROTCH:
        return "do.join_crotch_fly" if below_fly(draft, seam) else "do.join_crotch"
    if seam.a != seam.b and seam.kind is not SeamKind.CENTRE:
        return "do.join"
    return CENTRE_JOINED[frozenset(_opens_at(draft, seam))]


CENTRE_JOINED = {
    frozenset[str](): "do.join_centre_whole",
    frozenset(("above",)): "do.join_centre_below",
    frozenset(("below",)): "do.join_centre",
    frozenset(("above", "below")): "do.join_centre_between",
}
"""How a centre seam is joined, by where its edge goes on open."""


OPENS = (EdgeRole.CENTRE, EdgeRole.CENTRE_SEAM, EdgeRole.VENT, EdgeRole.SLIT, EdgeRole.FLY)
"""What a centre edge that stays open is."""


def _opens_at(draft: Draft, seam: Seam) -> Iterator[str]:
    """Yield where a centre seam's own edge goes on open: above it at a zip, below it at a vent or a slit."""
    chain = {*seam.a, *seam.b}
    for piece, edge in chain:
        ring, at = draft[piece].edges, draft[piece].index(edge)
        for onwards in (1, -1):
            run = [ring[(at + onwards * i) % len(ring)] for i in range(1, len(ring))]
            opened = list(takewhile(lambda one: one.kind is EdgeKind.OPENING, run))
            if any(one.role in OPENS for one in opened):
                yield "below" if run[len(opened)].role is EdgeRole.HEM else "above"
