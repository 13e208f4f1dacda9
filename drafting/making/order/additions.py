"""What is added to a garment that stands: bones, trims, appliqués, lining, buttons."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.draft.draft import Notion
from drafting.making.model import Said, said
from drafting.making.order.parts import Bench
from drafting.making.seam_lengths import seam_lengths
from drafting.making.tables import trim_length


def bones(bench: Bench) -> None:
    """Sew the casing on and slide the bones in, before it is closed."""
    boning = [*bench.of("boning"), *bench.of("bone tip")]
    if not boning:
        return
    casing = [p.name for p in bench.garment.draft.pieces if "casing" in p.name and not p.material]
    boned = sorted({m[0] for m in _boned(bench)})
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


def _boned(bench: Bench) -> Iterator[tuple[str, str]]:
    for piece in bench.garment.draft.pieces:
        for mark in piece.placements:
            if mark.what == "bone" and not piece.material:
                yield piece.name, mark.name


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
            if mark.what == "appliqué" and mark.name in draft:
                bench.do(
                    "prepare",
                    "trim",
                    f"{piece.name} with {mark.name}",
                    (piece.name, mark.name),
                    [said("do.applique", piece=piece.name)],
                    length=mark.path.length * piece.count,
                )


def lining(bench: Bench) -> None:
    """Make the lining as the shell was made, then put it in."""
    lined = [p.name for p in bench.garment.draft.pieces if p.material == "lining"]
    if not lined:
        return
    names = ", ".join(_shell_seams(bench, lined))
    lengths = seam_lengths(bench.garment)
    length = sum(lengths[seam] for seam in _shell_seams(bench, lined))
    pleat = (
        [said("do.ease_pleat")]
        if any("ease_pleat" in p for p in bench.garment.draft.pieces if p.name in lined)
        else []
    )
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


def _shell_seams(bench: Bench, lined: list[str]) -> list[str]:
    """Return the shell's seams whose pieces are all lined: the lining is joined by the same."""
    stems = {name.removesuffix("-lining") for name in lined}
    return [
        seam.name for seam in bench.garment.draft.seams if all(piece in stems for piece, _ in (*seam.a, *seam.b))
    ]


def buttons(bench: Bench) -> None:
    """Buttonholes through two layers with interfacing between; buttons; then try them."""
    done = {notion for step in bench.steps for notion in step.notions}
    fasteners = [
        n
        for n in bench.garment.draft.notions
        if n.what not in DONE_ELSEWHERE and f"{n.what}: {n.where}" not in done
    ]
    found = [n for n in fasteners if n.what == "button"]
    if found:
        places = (n.where.replace(" ", "-") for n in found)
        pieces = [place for place in places if place in bench.garment.draft]
        bench.do(
            "finish",
            "button",
            "with buttons",
            pieces or bench.shell(),
            [said("do.holes"), said("do.open_holes"), said("do.buttons"), *_shanks([n.kind for n in found])],
            notions=[f"button: {n.where}" for n in found],
            count=sum(n.count for n in found),
        )
    for notion in fasteners:
        if notion.what != "button":
            where = [notion.where] if notion.where in bench.garment.draft else bench.shell()[:1]
            bench.do(
                "finish",
                "button",
                f"with {notion.what}",
                where,
                [_fastener(notion)],
                notions=[f"{notion.what}: {notion.where}"],
                count=notion.count,
            )


def _fastener(notion: Notion) -> Said:
    facts = {"what": notion.what, "where": notion.where}
    if not notion.note:
        return said("do.fastener_plain", **facts)
    return said("do.fastener", **facts, note=notion.note)


DONE_ELSEWHERE = ("interfacing", "elastic", "boning", "bone tip")


def _shanks(kinds: list[str]) -> Iterator[Said]:
    if "flat" in kinds:
        yield said("do.thread_shank")
