"""One garment put together: stiffen, shape, join flat, try on, close, set in, finish. Layer 5.

Row K24 (common practice): darts and shaping before joining, flat work before rounds are closed,
set-in sleeves after the side seams, hems last; what hangs on the bias rests a day before it is
levelled (trouble FL4).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from drafting.draft import Seam
from drafting.fabric import Fabric
from drafting.garment import MadeGarment
from drafting.making.docket import interfaced, is_block_fused
from drafting.making.handed import hand
from drafting.making.model import Said, Setting, Step, said
from drafting.making.order import finishing, units
from drafting.making.order.bench import Bench
from drafting.making.order.kinds import is_facing, is_sleeve, is_unit, kind_of
from drafting.making.seam_lengths import seam_lengths
from drafting.walk import walk


def sewing_steps(
    garment: MadeGarment, fabric: Fabric | None, settings: Mapping[tuple[str, str], Setting]
) -> tuple[Step, ...]:
    """Return the steps that turn a garment's cut pieces into the garment."""
    bench = Bench(garment, settings)
    kinds = {seam.name: kind_of(garment.draft, seam) for seam in garment.draft.seams}
    seams = {
        kind: [s for s in garment.draft.seams if kinds[s.name] == kind] for kind in kinds.values()
    }
    stiffen(bench, fabric)
    finishing.sewn_on(bench)
    for seam in seams.get("dart", []):
        dart(bench, seam)
    inner_darts(bench)
    flares(bench, seams.get("flare", []), fabric)
    finishing.trims(bench, EARLY)
    units.facings_prepared(bench)
    body(bench, seams.get("body", []))
    units.made_up(bench, seams.get("unit", []))
    try_on_body(bench)
    on_sleeves, elsewhere = units.split_attached(bench, seams.get("attach", []))
    units.attached(bench, elsewhere)
    units.facings(bench, [*seams.get("facing", []), *units.to_facings(seams.get("unit", []))])
    units.sleeves(bench, seams.get("limb", []))
    units.attached(bench, on_sleeves)
    finishing.sleeve_ends(bench)
    set_in(bench, seams.get("set in", []))
    finishing.rest(bench, bool(seams.get("flare")), fabric)
    return tuple(bench.steps)


EARLY = ("piping",)
"""Trims that lie in a seam: they are basted on before it is joined."""


def shell_of(bench: Bench) -> list[str]:
    """Return the pieces of the garment's own cloth."""
    return [p.name for p in bench.garment.draft.pieces if not p.material]


def stiffen(bench: Bench, fabric: Fabric | None) -> None:
    """Fuse or baste every interfacing to its piece, but those of a flare, which is joined first."""
    flared = {p for s in bench.garment.draft.seams if kind_of(bench.garment.draft, s) == "flare"
              for p, _ in (*s.a, *s.b)}  # fmt: skip
    for shell, stiff in interfaced(bench.garment):
        if shell.piece.name in flared:
            continue
        fused = fabric is None or fabric.takes_fusible
        key = (
            "do.fuse_block"
            if is_block_fused(stiff)
            else "do.fuse"
            if fused
            else "do.baste_interfacing"
        )
        fumes = [said("caution.fumes")] if fused else []
        bench.do(
            "prepare", "fuse", f"{shell.piece.name} stiffened", (shell.piece.name, stiff.piece.name),
            [said(key, piece=shell.piece.name, stiff=stiff.piece.name)], cautions=fumes,
            count=stiff.piece.count, notions=bench.named("interfacing", stiff.piece.name),
        )  # fmt: skip


def dart(bench: Bench, seam: Seam) -> None:
    piece = seam.a[0][0]
    bench.do(
        "shape", "dart", f"{piece} shaped", (piece,), [said("do.dart", name=seam.name, piece=piece)],
        seams=(seam.name,), count=2,
    )  # fmt: skip


def inner_darts(bench: Bench) -> None:
    for piece in bench.garment.draft.pieces:
        if piece.darts and not piece.material:
            names = ", ".join(dart.name for dart in piece.darts)
            bench.do(
                "shape", "dart", f"{piece.name} shaped", (piece.name,),
                [said("do.inner_dart", name=names, piece=piece.name)], count=2 * len(piece.darts),
            )  # fmt: skip


def flares(bench: Bench, seams: Sequence[Seam], fabric: Fabric | None) -> None:
    """Join panels on the bias, press open, starch where the cloth takes it, fuse the hem bands."""
    lengths = seam_lengths(bench.garment)
    for seam in seams:
        pieces = pieces_of(seam)
        bench.do(
            "shape", "join", "flare", pieces, [said("do.join_bias", name=seam.name)],
            seams=(seam.name,), length=lengths[seam.name],
        )  # fmt: skip
    if not seams:
        return
    flared = list(dict.fromkeys(p for seam in seams for p in pieces_of(seam)))
    if fabric is not None and fabric.takes_starch:
        bench.do(
            "shape", "starch", "flare starched", flared, [said("do.starch")], wait=4.0, count=1
        )
    bands = [(shell.piece.name, stiff.piece.name) for shell, stiff in interfaced(bench.garment)
             if shell.piece.name in flared]  # fmt: skip
    for part in dict.fromkeys(bench.parts[shell] for shell, _ in bands):
        here = [(shell, stiff) for shell, stiff in bands if bench.parts[shell] == part]
        pieces = [name for pair in here for name in pair]
        bench.do(
            "shape", "fuse", "flare stiffened", pieces, [said("do.fuse_bands", n=len(here))],
            cautions=[said("caution.fumes")], count=len(here),
            notions=[n for _, stiff in here for n in bench.named("interfacing", stiff)],
        )  # fmt: skip


def body(bench: Bench, seams: Sequence[Seam]) -> None:
    """Join the body, what is flat first: a seam that closes a round waits for the others."""
    lengths = seam_lengths(bench.garment)
    left = sorted(seams, key=lambda s: _late(bench, s))
    for seam in left:
        pieces = pieces_of(seam)
        bench.do(
            "join", "join", "body", pieces, list(_joined(bench, seam)), seams=(seam.name,),
            length=lengths[seam.name],
        )  # fmt: skip


def _late(bench: Bench, seam: Seam) -> int:
    """Return how late a body seam is sewn: fly, panels, centres, waist, shoulders, sides, crotch."""
    edges = {edge for _, edge in (*seam.a, *seam.b)}
    words = {word for edge in edges for word in edge.split("_")}
    order = (("fly",), ("panel",), ("yoke",), ("centre", "pleat"), ("waist",), ("shoulder",), ("side",),
             ("inseam",), ("crotch",))  # fmt: skip
    closed = "fly" in bench.garment.draft["front"] if "front" in bench.garment.draft else False
    if closed and "crotch" in words and any(piece == "front" for piece, _ in seam.a):
        return 0  # a fly is made while the front lies flat
    return next((i for i, group in enumerate(order) if words & set(group)), len(order))


def _joined(bench: Bench, seam: Seam) -> Iterator[Said]:
    walked = walk(bench.garment.draft, seam)
    own = seam.a == seam.b
    yield said("do.join_centre" if own else "do.join", name=seam.name, garment=bench.garment.name)
    if walked.gather_ratio:
        yield from gathers(walked.gather_ratio, max(walked.a_length, walked.b_length))
    elif abs(seam.ease) > 1.0:
        yield said("do.ease", ease=abs(seam.ease))


def gathers(ratio: float, drawn: float) -> Iterator[Said]:
    yield said("do.gather", ratio=ratio, drawn=drawn)
    yield said("do.quarters")


def pieces_of(seam: Seam) -> list[str]:
    return list(dict.fromkeys(piece for piece, _ in (*seam.a, *seam.b)))


def try_on_body(bench: Bench) -> None:
    """The first fitting, while every seam can still be changed; nothing is sewn in it."""
    draft = bench.garment.draft
    shell = [n for n in shell_of(bench) if not (is_unit(n) or is_facing(n) or is_sleeve(draft[n]))]
    joined = [p for p in shell if "body" in bench.parts[p] or "flare" in bench.parts[p]]
    if not joined:
        return
    legs = any("crotch" in draft[name] for name in joined)
    biggest = max(
        bench.holding(joined), key=lambda part: sum(bench.parts[p] == part for p in joined)
    )
    held = [p for p in joined if bench.parts[p] == biggest]
    key = "do.fit_legs" if legs else "do.fit_body"
    bench.do("fit", "fit", "body tried on", held, [said(key), said("do.fit_write")], count=1)


def set_in(bench: Bench, seams: Sequence[Seam]) -> None:
    """Set the sleeves in the round, both halves of an armhole in one step."""
    lengths = seam_lengths(bench.garment)
    groups: dict[str, list[Seam]] = {}
    for seam in seams:
        groups.setdefault(hand(seam.a[0][0]), []).append(seam)
    for side, found in groups.items():
        pieces = list(dict.fromkeys(p for seam in found for p in pieces_of(seam)))
        say = [said("do.set_in_hand", hand=side) if side else said("do.set_in")]
        ratios = [r for s in found if (r := walk(bench.garment.draft, s).gather_ratio)]
        ease = sum(abs(seam.ease) for seam in found)
        if ratios:
            drawn = sum(
                max(w.a_length, w.b_length) for w in (walk(bench.garment.draft, s) for s in found)
            )
            say += [*gathers(max(ratios), drawn), said("do.pin_in")]
        elif ease > 1.0:
            say += [said("do.cap_ease", ease=ease), said("do.pin_in")]
        else:
            say += [said("do.pin_flat")]
        bench.do(
            "join", "set in", "body with sleeves", pieces, say, seams=[s.name for s in found],
            length=sum(lengths[s.name] for s in found),
        )  # fmt: skip
    if groups:
        pieces = list(dict.fromkeys(p for seam in seams for p in pieces_of(seam)))
        bench.do(
            "fit",
            "fit",
            "sleeves tried on",
            pieces,
            [said("do.fit_sleeves"), said("do.fit_write")],
            count=1,
        )
