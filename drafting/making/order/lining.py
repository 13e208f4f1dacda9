"""The lining: its own seams in an order in which each can be reached, then felled in.

    tails joined and hung -> body joined -> sleeves closed -> body felled in -> sleeves felled round the armhole

Any other lining that hangs on the bias is hung once it is joined. The sleeves' lining is not sewn to the body's:
it is drawn in and felled over the armhole seam, which has to be worn by then (common practice).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from drafting.checks.treatments import iron_limit
from drafting.draft.bias import hung_pieces
from drafting.draft.by_role import edge_as, edges_as
from drafting.draft.draft import Seam
from drafting.draft.openings import hands
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.fabric import Fabric
from drafting.making.model import Needle, Said, Setting, said
from drafting.making.order import fastening
from drafting.making.order.parts import Bench, pieces_of
from drafting.making.order.seam_kinds import is_sleeve, kind_of, order_of_body, panels_first
from drafting.making.seam_lengths import inner_dart_length, seam_lengths
from drafting.making.settings.edges import lining_key
from drafting.making.settings.lining_covers import lined_along
from drafting.making.settings.stitches import CAUGHT
from drafting.making.settings.surface import layers_held

HANG = 24.0
"""hours that bias parts hang before their hem is levelled (common practice: 24 to 48)."""

HUNG = (PieceRole.TAIL, PieceRole.GODET)

FELLING = Setting(
    stitch=CAUGHT, seam_class=2, stitch_length=4.0, needle=Needle("sharp", 70), foot="all-purpose", press="not"
)
"""By hand, 3 to 5 mm apart (common practice)."""


def lining(bench: Bench) -> None:
    """Make the lining by the shell's seams, then fell it in."""
    draft = bench.garment.draft
    behind = {name: p.name for p in draft.pieces if p.material == "lining" for name in p.lines}
    if not behind:
        return
    fastening.looped(bench)
    seams = [seam for seam in draft.seams if lined_along(draft, seam)]
    kinds = {seam.name: kind_of(draft, seam) for seam in seams}
    body = [
        s for s in panels_first(draft, order_of_body(draft, seams)) if kinds[s.name] in ("body", "flare", "dart")
    ]
    hung = [s for s in body if all(draft[piece].role in HUNG for piece in pieces_of(s))]
    _made(bench, "tails' lining", hung, behind, [])
    hanging = [own for own in behind.values() if own in hung_pieces(draft)]
    tails = [behind[name] for name in behind if draft[name].role in HUNG and behind[name] in hanging]
    _hung(bench, tails, "do.hang_lining")
    worn_on_body = any(edge_as(draft[name], EdgeRole.ARMHOLE) for name in behind)
    part = "body lining" if worn_on_body else "lining"
    darted = inner_dart_length(p for p in draft.pieces if p.material == "lining")
    vented = any(edges_as(draft[own], EdgeRole.VENT) for name, own in behind.items() if not is_sleeve(draft[name]))
    more = [*_inner_darts(bench), *_pleat(bench), *([said("do.lining_vent")] if vented else [])]
    _made(bench, part, [s for s in body if s not in hung], behind, more, darted)
    wholes = [own for own in hanging if own not in tails]
    _hung(bench, wholes, "do.hang_lining_whole")
    _made(bench, "sleeve lining", [s for s in seams if kinds[s.name] == "limb"], behind, [])
    sleeves = [own for name, own in behind.items() if is_sleeve(draft[name])]
    bodies = [own for own in behind.values() if own not in sleeves]
    put_in = "do.line" if any(is_sleeve(piece) for piece in draft.pieces) else "do.line_sleeveless"
    taped = ["do.line_taped"] if any(notion.edges for notion in bench.notions("tape")) else []
    put_up = "do.line_hooded" if any(draft[name].role is PieceRole.HOOD for name in behind) else "do.line_hung"
    at_vents = ["do.line_vent"] if vented else []
    how = [put_in, *at_vents, "do.line_loose"] if worn_on_body else [put_up, *taped]
    levelled = [key for key, hung in (("do.level_lining", tails), ("do.level_lining_whole", wholes)) if hung]
    _felled(bench, "lined", bodies, [*levelled, *how])
    _felled(bench, "sleeves lined", sleeves, ["do.line_sleeves"])


def _made(
    bench: Bench,
    name: str,
    seams: Sequence[Seam],
    behind: dict[str, str],
    more: Sequence[Said],
    darts: float = 0.0,
) -> None:
    """Make up a part of the lining by these seams, and mm of `darts` that lie inside its pieces."""
    if not seams:
        return
    lengths = seam_lengths(bench.garment)
    pieces = list(dict.fromkeys(behind[piece] for seam in seams for piece in pieces_of(seam)))
    names = ", ".join(seam.name for seam in seams)
    length = darts + sum(lengths[seam.name] for seam in seams)
    key = "do.lining_cold" if _cold(bench.cloths.get("lining")) else "do.lining"
    bench.do("finish", "join", name, pieces, [said(key, part=name, names=names), *more], length=length)
    found = (bench.settings.get((bench.garment.name, lining_key(seam.name))) for seam in seams)
    if setting := next(filter(None, found), None):
        bench.also(setting=_beside(bench, setting))


def _beside(bench: Bench, setting: Setting) -> Setting:
    """Return a lining's setting as it and the shell allow: no iron, no pin beside a cloth that takes none."""
    if setting.dots == 0:
        setting = replace(setting, press="not")
    if not _cold(bench.fabric):
        return setting
    return replace(setting, press="not", dots=0, why=(), holds=layers_held(bench.fabric))


def _cold(cloth: Fabric | None) -> bool:
    """Return whether a cloth is known to take no iron."""
    return cloth is not None and iron_limit(cloth) == 0


def _pleat(bench: Bench) -> list[Said]:
    lined = (p for p in bench.garment.draft.pieces if p.material == "lining")
    return [said("do.ease_pleat")] if any(edge_as(p, EdgeRole.EASE_PLEAT) for p in lined) else []


def _inner_darts(bench: Bench) -> list[Said]:
    lined = (p for p in bench.garment.draft.pieces if p.material == "lining")
    names = ", ".join(f"{dart.name.replace('_', ' ')} {piece.name}" for piece in lined for dart in piece.darts)
    return [said("do.lining_darts", names=names)] if names else []


def _hung(bench: Bench, pieces: Sequence[str], how: str) -> None:
    """Hang a lining as the shell hangs: that of tails before the body's takes it, any other once it is joined.

    It is levelled by the shell's hem, which is not there before: when it is felled.
    """
    if pieces:
        bench.do("finish", "hang", "lining hung", pieces, [said(how, hours=HANG)], wait=HANG, count=1)


def _felled(bench: Bench, name: str, pieces: Sequence[str], keys: Sequence[str]) -> None:
    if not pieces:
        return
    draft = bench.garment.draft
    length = sum(
        e.length * hands(draft[p]) for p in pieces for e in draft[p].edges if _is_felled(bench, p, e.name)
    )
    bench.do(
        "finish", "fell", name, [*bench.shell(), *pieces], [said(k) for k in keys], length=length, shown=pieces
    )
    bench.also(setting=replace(FELLING, holds=layers_held(bench.fabric)))


def _is_felled(bench: Bench, piece: str, edge: str) -> bool:
    """Return whether an edge of the lining is in no seam of its own: it is felled to the shell.

    Behind a piece that a style line cut in two lies one lining, whose edges are those of both parts.
    """
    draft = bench.garment.draft
    joined = {ref for s in draft.seams for ref in (*s.a, *s.b) if kind_of(draft, s) not in ("set in", "facing")}
    return not any((shell, edge) in joined for shell in draft[piece].lines)
