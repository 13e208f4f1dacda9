"""Each part of the plan as HTML: plain text goes in escaped, nothing is drafted here."""

from __future__ import annotations

import html
from collections.abc import Callable, Iterable, Iterator

from drafting.ground.sources import Sources, printed, works
from drafting.making.model import DocketRow, Said, Setting, ShoppingRow, Step, Table, said
from drafting.making.settings import setting_said
from drafting.making.shopping import total_cost
from drafting.making.times import Start
from drafting.making.words import text

Drawing = Callable[[Step], str]


def section(name: str, body: str) -> str:
    """Return one titled section; the title is the text `page.<name>`."""
    return f'<section id="{name}"><h2>{words(f"page.{name}")}</h2>{body}</section>'


def words(sentence: Said | str) -> str:
    """Return a sentence of the plan, escaped."""
    return html.escape(text(sentence))


def paragraphs(sentences: Iterable[Said], kind: str = "") -> str:
    mark = f' class="{kind}"' if kind else ""
    return "".join(f"<p{mark}>{words(sentence)}</p>" for sentence in sentences)


def listed(sentences: Iterable[Said]) -> str:
    return f"<ul>{''.join(f'<li>{words(sentence)}</li>' for sentence in sentences)}</ul>"


def source_list(cited: Sources) -> str:
    """Return what the plan's figures rest on, then each published work in full."""
    lists = (tuple(map(printed, cited)), works(cited))
    return "".join(f"<ul>{''.join(map(_item, lines))}</ul>" for lines in lists if lines)


def _item(line: str) -> str:
    return f"<li>{html.escape(line)}</li>"


def docket_table(rows: Iterable[DocketRow], titles: dict[tuple[str, str], str]) -> str:
    """Return one table a cloth: piece, how many, hand, grain, how it lies, and if it is fused first."""
    by_cloth: dict[str, list[DocketRow]] = {}
    for row in rows:
        by_cloth.setdefault(row.cloth, []).append(row)
    return "".join(
        f"<h3>{html.escape(cloth)}</h3>{_grid(DOCKET_HEADS, (_docket_cells(r, titles) for r in found))}"
        for cloth, found in by_cloth.items()
    )


DOCKET_HEADS = ("garment", "piece", "count", "hand", "grain", "lies", "before")


def _docket_cells(row: DocketRow, titles: dict[tuple[str, str], str]) -> Iterator[str]:
    yield html.escape(row.garment)
    yield html.escape(titles[row.garment, row.piece])
    yield str(row.count)
    yield html.escape(row.hand)
    upright = abs(row.grain % 180 - 90) < 0.05
    yield words("page.upright" if upright else said("page.grain", degrees=row.grain))
    yield html.escape(row.face)
    yield words("page.fused_first") if row.fused_first else ""


def shopping_table(rows: tuple[ShoppingRow, ...]) -> str:
    """Return the list with a box to tick for each line, and the cost where any is known."""
    cells = (_shopping_cells(i, row) for i, row in enumerate(rows))
    cost, unknown = total_cost(rows)
    total = words(said("page.cost", cost=cost, unknown=unknown)) if cost else ""
    return f'<div class="shopping">{_grid(("got", "what", "detail", "amount", "cost"), cells)}</div><p>{total}</p>'


def _shopping_cells(i: int, row: ShoppingRow) -> Iterator[str]:
    yield f'<input type="checkbox" id="buy-{i}" aria-label="{html.escape(row.what)}">'
    yield html.escape(row.what)
    yield words(row.detail)
    yield words(said(f"amount.{row.unit}", amount=row.amount))
    yield "" if row.cost is None else f"{row.cost:.2f}"


def plan_table(table: Table) -> str:
    """Return one table of the plan."""
    rows = (map(_cell, row) for row in table.rows)
    heads = "".join(f"<th scope='col'>{words(head)}</th>" for head in table.heads)
    return f"<h3>{words(table.key)}</h3><table><tr>{heads}</tr>{_rows(rows)}</table>"


def _cell(value: Said | str | float) -> str:
    if isinstance(value, Said):
        return words(value)
    return html.escape(value if isinstance(value, str) else f"{value:g}")


def _grid(heads: tuple[str, ...], rows: Iterable[Iterable[str]]) -> str:
    named = "".join(f"<th scope='col'>{words(f'column.{head}')}</th>" for head in heads)
    return f"<table><tr>{named}</tr>{_rows(rows)}</table>"


def _rows(rows: Iterable[Iterable[str]]) -> str:
    return "".join(f"<tr>{''.join(f'<td>{cell}</td>' for cell in row)}</tr>" for row in rows)


def start_list(found: Iterable[Start]) -> str:
    lines = (f"<li>{html.escape(text(s.words(words_of_stage(s.stage))))}</li>" for s in found)
    return f"<ul>{''.join(lines)}</ul>"


def words_of_stage(stage: str) -> str:
    return text(f"stage.{stage}")


def step_list(steps: Iterable[Step], draw: Drawing) -> str:
    """Return the steps as they come; why a seam is sewn so is told once a garment, not each time."""
    told: set[tuple[str, Said]] = set()
    items = []
    for step in steps:
        known = {sentence for garment, sentence in told if garment == step.garment}
        items.append(_step(step, draw, known))
        told |= {(step.garment, sentence) for sentence in _reasons(step.setting)}
    return f'<ol class="steps">{"".join(items)}</ol>'


def _reasons(setting: Setting | None) -> tuple[Said, ...]:
    return (*setting.why, *setting.trials) if setting else ()


def _step(step: Step, draw: Drawing, known: set[Said]) -> str:
    label = html.escape(text("page.done"))
    guess = (
        f'<p class="time screen"><label>{words("page.minutes")} <input type="number" min="0" '
        f'id="min-{html.escape(step.key)}" value="{step.minutes:.0f}"></label></p>'
    )
    waits = paragraphs([said("page.waits", hours=step.wait)]) if step.wait else ""
    repeated = known & set(_reasons(step.setting))
    lines = [s for s in setting_said(step.setting) if s not in repeated]
    setting = paragraphs(lines, "set")
    return (
        f'<li id="step-{step.n}"><div class="no">{step.n}<input type="checkbox" id="done-{html.escape(step.key)}" '
        f'aria-label="{label} {step.n}"></div><div class="do"><p class="for">{_for(step)}</p>'
        f"{paragraphs(step.say)}{setting}"
        f'{paragraphs(step.cautions, "caution")}{waits}{guess}</div><div class="see">{draw(step)}</div></li>'
    )


def _for(step: Step) -> str:
    """Return what the step works on: the garment, or the cloth by its role."""
    part = step.garment or step.uses[0].partition(": ")[2]
    return html.escape(f"{part}, {words_of_stage(step.stage).lower()}")
