"""What is added to a garment that stands: bones, trims, appliqués, lining, buttons."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.draft.by_role import edge_as, pieces_as
from drafting.draft.draft import Notion
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.making.model import Said, said
from drafting.making.order.parts import Bench, notion_key
from drafting.making.seam_lengths import seam_lengths
from drafting.making.tables import trim_length


def bones(bench: Bench) -> None:
    """Sew the casing on and slide the bones in, before it is closed."""
    boning = [*bench.of("boning"), *bench.of("bone tip")]
    if not boning:
        return
    casing = [p.name for p in pieces_as(bench.garment.draft, PieceRole.BONE_CASING)]
    boned = _boned(bench)
    bench.do(
        "finish",
        "bone",
        "boned",
        [*boned, *casing],
        [said("do.bone"), said("do.bone_short"), said("do.bone_closed")],
        notions=boning,
        cautions=[said("caution.bones")],
        count=len(boned),
    )


def _boned(bench: Bench) -> list[str]:
    """Return the pieces that bones are marked on, those of one role by their places."""
    marked = [
        piece
        for piece in bench.garment.draft.pieces
        if not piece.material and any(mark.what == "bone" for mark in piece.placements)
    ]
    return [piece.name for piece in sorted(marked, key=lambda p: (p.role, p.place, p.hand))]


def trims(bench: Bench, kinds: tuple[str, ...]) -> None:
    """Sew trims of these kinds along their edges."""
    for trim in bench.garment.trims:
        if trim.kind in kinds:
            count, each = trim_length(bench.garment, trim)
            key = TRIMMED.get(trim.kind, "do.trim_on")
            bench.do(
                "finish",
                "trim",
                f"with {trim.kind}",
                (trim.piece,),
                [said(key, kind=trim.kind, piece=trim.piece, edge=trim.edge)],
                length=count * each,
            )


TRIMMED = {"piping": "do.trim_in", "binding": "do.trim_bind"}


def sewn_on(bench: Bench) -> None:
    """Sew every appliqué onto its piece while that lies flat."""
    draft = bench.garment.draft
    for piece in draft.pieces:
        for mark in piece.placements:
            if mark.what == "appliqué" and mark.piece in draft:
                bench.do(
                    "prepare",
                    "trim",
                    f"{piece.name} with {mark.name}",
                    (piece.name, mark.piece),
                    [said("do.applique", piece=piece.name)],
                    length=mark.path.length * piece.count,
                )


def lining(bench: Bench) -> None:
    """Make the lining as the shell was made, then put it in."""
    lined = [p.name for p in bench.garment.draft.pieces if p.material == "lining"]
    if not lined:
        return
    names = ", ".join(_shell_seams(bench))
    lengths = seam_lengths(bench.garment)
    length = sum(lengths[seam] for seam in _shell_seams(bench))
    pleated = any(edge_as(bench.garment.draft[name], EdgeRole.EASE_PLEAT) for name in lined)
    pleat = [said("do.ease_pleat")] if pleated else []
    bench.do("finish", "join", "lining", lined, [said("do.lining", names=names), *pleat], length=length)
    bench.do(
        "finish",
        "fell",
        "lined",
        [*bench.shell(), lined[0]],
        [said("do.line"), said("do.line_loose")],
        length=length / 2,
        shown=lined,
    )


def _shell_seams(bench: Bench) -> list[str]:
    """Return the shell's seams whose pieces are all lined: the lining is joined by the same."""
    lined = bench.lined()
    return [
        seam.name for seam in bench.garment.draft.seams if all(piece in lined for piece, _ in (*seam.a, *seam.b))
    ]


def buttons(bench: Bench) -> None:
    """Buttonholes through two layers with interfacing between; buttons; then try them."""
    done = {notion for step in bench.steps for notion in step.notions}
    fasteners = [
        n for n in bench.garment.draft.notions if n.what not in DONE_ELSEWHERE and notion_key(n) not in done
    ]
    found = [n for n in fasteners if n.what == "button"]
    if found:
        pieces = [n.piece for n in found if n.piece in bench.garment.draft]
        bench.do(
            "finish",
            "button",
            "with buttons",
            pieces or bench.shell(),
            [said("do.holes"), said("do.open_holes"), said("do.buttons"), *_shanks([n.kind for n in found])],
            notions=[notion_key(n) for n in found],
            count=sum(n.count for n in found),
        )
    for notion in fasteners:
        if notion.what != "button":
            where = [notion.piece] if notion.piece in bench.garment.draft else bench.shell()[:1]
            bench.do(
                "finish",
                "button",
                f"with {notion.what}",
                where,
                [_fastener(notion)],
                notions=[notion_key(notion)],
                count=notion.count,
            )


def _fastener(notion: Notion) -> Said:
    facts = {"what": notion.what, "where": notion.where}
    if notion.what in FASTENED:
        return said(FASTENED[notion.what], **facts)
    if not notion.note:
        return said("do.fastener_plain", **facts)
    return said("do.fastener", **facts, note=notion.note)


FASTENED = {"eyelet": "do.eyelets", "cord": "do.lace"}
"""Fasteners that are not sewn on."""

DONE_ELSEWHERE = ("interfacing", "elastic", "boning", "bone tip")


def _shanks(kinds: list[str]) -> Iterator[Said]:
    if "flat" in kinds:
        yield said("do.thread_shank")
