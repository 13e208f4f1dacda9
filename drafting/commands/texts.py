"""What the commands print, as text. Prints nothing itself."""

from __future__ import annotations

import textwrap
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from shlex import quote
from typing import TYPE_CHECKING, Any

from drafting.blocks import Block
from drafting.body import Body
from drafting.commands.block_pieces import changes_listed, pieces_listed
from drafting.costume.proportion import LANDMARKS
from drafting.draft.roles import Declared, EdgeRole, PieceRole, SeamKind
from drafting.finish import FinishChoices
from drafting.ground.choices import Choice, choices_of
from drafting.ground.findings import Finding, SaidOnce, said_once
from drafting.ground.lengths import counted, in_unit, told
from drafting.ground.sources import Cited, printed, works
from drafting.ground.units import show_length, shown_unit

if TYPE_CHECKING:
    from drafting.costume.next_measure import Gain
    from drafting.costume.what_changed import Changed

WIDTH, LAST = 100, 44
"""Letters in a line, and those that a table's last column has at least."""
Cells = tuple[str, ...]

CAUTION = (
    "Make a mock-up first: cut these pieces in cheap cloth of like weight and stretch, and fit it, "
    "before you cut the real one. Measure the 100 mm square, or the 4 in one, on a printed piece."
)


IN_PROPORTION = (
    'A length of style may be given in proportion: {share = 0.08, of = "bust_girth"}, or down to a landmark '
    'of the body, {at = "knee", plus = "2 cm"}, where its line says from which it is measured. Landmarks:'
)

GAIN = (
    "Each estimate was moved up and down by what it may be off, what is estimated from it with it, "
    "and {what} drafted again: so far moves the edge that moves most."
)


def new_text(folder: Path, files: Iterable[str]) -> str:
    """Return what `new` says in the end: what was written, and the next steps, as a shell takes them."""
    costume, body, out = (quote(str(folder / name)) for name in ("costume.toml", "wearer.toml", "out"))
    above = "this folder" if folder.parent == Path() else str(folder.parent)
    return "\n".join(
        [
            f"Written: {', '.join(str(folder / name) for name in files)}",
            f"Write your measures into {folder / 'wearer.toml'}, your cloth's into {folder / 'cloth.toml'}. Then:",
            f"  drafting body {body} --costume {costume}",
            f"  drafting make {costume} --out {out}",
            f"To measure, choose and see it with sliders, in {above}: drafting app, or drafting lab",
        ]
    )


def made_text(findings: tuple[Finding, ...], out: Path, unit: str | None = "cm") -> str:
    """Return what `make` says in the end: findings worst first, where the pieces lie, a caution."""
    said = said_once(findings, unit)
    lines = [_count(findings, said), *table_lines(None, [(f.level, f.where, f.sentence) for f in said])]
    lines += ["", f"Pieces:   {out / 'pieces'}", f"To print: {out / 'sheets'}"]
    lines += [f"Overview: {out / 'overview.png'}"]
    lines += [f"Plan:     {out / 'plan.html'}"]
    lines += [f"Record:   {out / 'report.json'}", "", _wrapped(CAUTION)]
    return "\n".join(lines)


def changed_text(changes: Sequence[Changed], unit: str | None = "cm") -> str:
    """Return what is different on this wearer from the costume's own."""
    if not changes:
        return ""
    rows: list[Cells] = [(one.what, in_unit(one.before, unit), in_unit(one.after, unit)) for one in changes]
    return "\n".join(
        ["What changed from the costume's own wearer", *table_lines(("", "there", "on this one"), rows), ""]
    )


def body_text(body: Body, gains: Sequence[Gain] = (), what: str = "a shirt") -> str:
    """Return a wearer's measures in the unit of her file, how each estimate was made, and what is doubtful.

    `gains` are the measures that would bring most if they were taken next, for `what` is drafted.
    """
    over = {"skin": "over the skin", "underlayers": "over the layers beneath"}[body.taken_over]
    about = [f"measured {body.measured_on}" if body.measured_on else "", over, body.posture]
    about += [f"waist: {body.waist_level}", f"{body.figure} charts" if body.figure else ""]
    lines = [body.title, "  " + ", ".join(filter(None, about)), ""]
    lines += table_lines(("measure", "", "", "19 of 20 people"), _measure_rows(body))
    made: list[Cells] = [
        (name, in_unit(m.rule, body.unit)) for name, m in body.measures.items() if m.source == "estimated"
    ]
    lines += ["", "How the estimates are made (formulas in mm)", *table_lines(None, made)] if made else []
    lines += _works(cited for m in body.measures.values() for cited in m.cited)
    if gains:
        lines += ["", "Measure next to gain most", _wrapped(GAIN.format(what=what), indent=2)]
        lines += table_lines(("measure", "may be off by", "so far", "the edge"), _gain_rows(gains, body.unit))
    doubts = said_once(body.findings, body.unit)
    lines += ["", "Doubtful" if doubts else "Nothing doubtful"]
    lines += table_lines(None, [(f.level, f.where, f.sentence) for f in doubts])
    return "\n".join(lines)


def _measure_rows(body: Body) -> list[Cells]:
    rows: list[Cells] = []
    unit = shown_unit(body.unit)
    for name, measure in body.measures.items():
        size = show_length(measure.mm, unit)
        if measure.left is not None and measure.right is not None:
            hands = f"left {show_length(measure.left, unit)}, right {show_length(measure.right, unit)}"
            rows.append((name, size, measure.source, hands))
        elif measure.source == "measured":
            rows.append((name, size, measure.source, ""))
        else:
            off = "not known" if measure.sd is None else show_length(2 * measure.sd, unit)
            rows.append((name, size, measure.source, f"+/- {off}"))
    if body.weight is not None:
        rows.append(("weight", f"{body.weight:g} kg", "measured", ""))
    return rows


def _gain_rows(gains: Sequence[Gain], unit: str | None) -> list[Cells]:
    """Return one row a measure."""
    return [
        (
            gain.measure,
            in_unit(f"+/- {told(gain.step)}" if gain.known else f"not known, {told(gain.step)} tried", unit),
            in_unit(told(gain.moved), unit),
            gain.most,
        )
        for gain in gains
    ]


def blocks_listed(blocks: Iterable[Block]) -> str:
    """Return a line for each block, and how to see one whole."""
    rows: list[Cells] = [(block.name, _after_colon(block.summary)) for block in blocks]
    lines = [
        *table_lines(None, rows),
        "",
        "One with all its choices, pieces and edges: drafting blocks NAME (or: all)",
        "",
    ]
    lines += ["What pieces, edges and seams are, as `role` and `kind` in report.json (all: with meanings)"]
    lines += table_lines(
        None, [(sort, ", ".join(one.value for one in words if one)) for sort, words in DECLARED.items()]
    )
    lines += ["", _wrapped(IN_PROPORTION)]
    lines += table_lines(None, list(LANDMARKS.items()))
    return "\n".join(lines)


def blocks_text(blocks: Iterable[Block], unit: str | None = "mm") -> str:
    """Return what every block says of itself, lengths in `unit`, and in the end the works that they name."""
    every = tuple(blocks)
    cut = choices_of(FinishChoices)
    choices = (*cut, *(choice for block in every for choice in block.choices))
    cited = [cited for choice in choices for cited in choice.source]
    finish = "\n".join([f"every garment: {in_unit(ADDED_AND_MARKED, unit)}", *_choice_lines(cut, unit)])
    return "\n\n".join(
        [
            *(block_text(block, unit, changes=len(every) == 1) for block in every),
            finish,
            "\n".join(_works(cited)[1:]),
        ]
    )


ADDED_AND_MARKED = (
    f"how it is cut; each seam over {told(250)} is notched at waist, hip, knee or elbow, or once off its middle"
)


def _works(cited: Iterable[Cited]) -> list[str]:
    """Return the lines that name each published work in full; none where there is none."""
    found = [_wrapped(work, indent=2, hang=4) for work in works(cited)]
    return ["", "Sources", *found] if found else []


def block_text(block: Block, unit: str | None = "mm", *, changes: bool = True) -> str:
    """Return a block's name and summary, each choice (range, default, meaning, source), its pieces.

    With `changes` (each of them a draft) it says as well which choices give other pieces.
    A block from outside the kit names the file that it is written in.
    """
    lines = [f"{block.name}: {_after_colon(block.summary)}"]
    lines += [f"  written in {block.file}"] if block.file else []
    lines += _choice_lines(block.choices, unit)
    found = list(changes_listed(block)) if changes else []
    found = [CHANGES, *found] if found else []
    lines += [_wrapped(line, hang=8) for line in (*pieces_listed(block), *found)]
    return "\n".join(lines)


CHANGES = "  what a choice by itself changes of them"


def _choice_lines(choices: Iterable[Choice], unit: str | None) -> Iterator[str]:
    for choice in choices:
        yield f"  {choice.name} = {_value(choice, choice.default, unit)}   ({_range(choice, unit)})"
        begins = f"; may end {{at = a landmark}} below the {choice.begins}" if choice.begins else ""
        source = in_unit(printed(*choice.source), unit)
        about = f"{in_unit(choice.meaning, unit).rstrip('.')}{begins}. Source: {source}"
        yield _wrapped(about, indent=6)


DECLARED: dict[str, type[Declared]] = {"pieces": PieceRole, "edges": EdgeRole, "seams": SeamKind}
"""What `report.json` says of things beside their names: `role` of pieces and edges, `kind` of seams."""


def roles_text() -> str:
    """Return what pieces, edges and seams may be, each word with its meaning."""
    lines = ["What pieces, edges and seams are, as `role` and `kind` in report.json:"]
    for sort, values in DECLARED.items():
        lines += [sort, *table_lines(None, [(one.value, one.meaning) for one in values])]
    return "\n".join(lines)


def _count(findings: tuple[Finding, ...], said: Sequence[SaidOnce]) -> str:
    """Return how many lines of each level follow, and how many checks hold."""
    counts: Counter[str] = Counter([*(one.level for one in said), *(f.level for f in findings if f.level == "ok")])
    words = ("error", "errors"), ("warning", "warnings"), ("note", "notes")
    named = [counted(counts[one], one, many) for one, many in words if counts[one]]
    return ", ".join([*named, f"{counted(counts['ok'], 'check holds', 'checks hold')}"])


def _value(choice: Choice, value: Any, unit: str | None) -> str:
    """Return a choice's value with its unit, as a costume file takes it."""
    if choice.unit == "mm" and value is not None:
        return show_length(value, shown_unit(unit), finer=True)
    if choice.unit == "yes/no":
        return "yes" if value else "no"
    if choice.unit in ("ratio", "count") and value is not None:
        return f"{value:g}"
    if choice.unit == "word" or value is None:
        return str(value)
    return f"{value:g} {choice.unit}"


def _range(choice: Choice, unit: str | None) -> str:
    if choice.words:
        return " | ".join(choice.words)
    if choice.low is None and choice.high is None:
        return shown_unit(unit) if choice.unit == "mm" else choice.unit
    ends = ["" if end is None else f"{end:g}" for end in (choice.low, choice.high)]
    if choice.unit == "mm":
        own = shown_unit(unit)
        shown = [show_length(end, own, finer=True) if end is not None else "" for end in (choice.low, choice.high)]
        return f"{shown[0].removesuffix(f' {own}')}..{shown[1]}"
    return f"{ends[0]}..{ends[1]} {choice.unit}"


def _after_colon(summary: str) -> str:
    head, colon, rest = summary.partition(": ")
    return rest if colon and " " not in head else summary


def table_lines(head: Cells | None, rows: list[Cells]) -> list[str]:
    """Return rows as lines, every column but the last padded, the last one wrapped.

    A row whose cells would leave the last one no room has a line of its own for them.
    """
    cells = [head, *rows] if head else rows
    if not rows:
        return []
    wide = [max(len(row[i]) for row in cells) for i in range(len(cells[0]) - 1)]
    while wide and 2 + sum(wide) + 2 * len(wide) > WIDTH - LAST:
        widest = wide.index(max(wide))
        wide[widest] = max(
            (n for row in cells if (n := len(row[widest])) < wide[widest]), default=wide[widest] // 2
        )
    hang = 2 + sum(wide) + 2 * len(wide)
    lines = []
    for row in cells:
        start = "  " + "".join(f"{cell:<{w}}  " for cell, w in zip(row[:-1], wide, strict=True))
        if len(start) > hang:
            lines.append(_wrapped("  ".join(row[:-1]), indent=2, hang=4))
            start = " " * hang
        lines.append(_wrapped(start + row[-1], hang=hang).rstrip())
    return lines


def _wrapped(text: str, indent: int = 0, hang: int = 0) -> str:
    hanging = " " * (hang or indent)
    wrap = textwrap.TextWrapper(WIDTH, " " * indent, hanging, break_on_hyphens=False)
    return wrap.fill(text)
