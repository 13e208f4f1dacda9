"""Each part of the plan as HTML, by the macros beside it; nothing is drafted here."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from drafting.ground.sources import Sources, printed, works
from drafting.ground.templates import Html, macros
from drafting.making.model import DocketRow, Said, Setting, ShoppingRow, Step, Table, said
from drafting.making.settings import setting_said
from drafting.making.shopping import total_cost
from drafting.making.starting import Start
from drafting.making.words import text

DrawStep = Callable[[Step], Html]

PARTS = macros(__file__)


def titled_section(name: str, body: Html) -> Html:
    """Return one titled titled_section; the title is the text `page.<name>`."""
    return Html(PARTS.section(name, text(f"page.{name}"), body))


def paragraphs(sentences: Iterable[Said], kind: str = "") -> Html:
    return Html(PARTS.paragraphs([text(sentence) for sentence in sentences], kind))


def listed(sentences: Iterable[Said]) -> Html:
    return Html(PARTS.listed([text(sentence) for sentence in sentences]))


@dataclass(frozen=True)
class WornShown:
    """The costume on the wearer's form: a `picture` as a data address, and what is said, by heading."""

    picture: str
    words: tuple[tuple[str, tuple[str, ...]], ...]


def worn_part(shown: WornShown | None) -> Html:
    """Return the picture and the verdict; where nobody asked for them, how to see them."""
    if shown is None:
        return Html(PARTS.paragraphs([text("page.worn_command")]))
    return Html(PARTS.worn(shown.picture, text("page.worn_picture"), shown.words))


def source_list(cited: Sources) -> Html:
    """Return what the plan's figures rest on, then each published work in full."""
    lists = ([*map(printed, cited)], [*works(cited)])
    return Html("").join(Html(PARTS.listed(lines)) for lines in lists if lines)


def docket_table(rows: Iterable[DocketRow], titles: dict[tuple[str, str], str]) -> Html:
    """Return one table a cloth: piece, how many, hand, grain, how it lies, and if it is fused first."""
    by_cloth: dict[str, list[DocketRow]] = {}
    for row in rows:
        by_cloth.setdefault(row.cloth, []).append(row)
    heads = _column_heads(DOCKET_HEADS)
    return Html("").join(
        PARTS.table(cloth, heads, [list(_docket_cells(row, titles)) for row in found])
        for cloth, found in by_cloth.items()
    )


DOCKET_HEADS = ("garment", "piece", "count", "hand", "grain", "lies", "before")


def _docket_cells(row: DocketRow, titles: dict[tuple[str, str], str]) -> Iterator[str]:
    yield row.garment
    yield titles[row.garment, row.piece]
    yield str(row.count)
    yield row.hand
    upright = abs(row.grain % 180 - 90) < 0.05
    yield text("page.upright" if upright else said("page.grain", degrees=row.grain))
    yield row.face
    yield text("page.fused_first") if row.fused_first else ""


def shopping_table(rows: tuple[ShoppingRow, ...]) -> Html:
    """Return the list with a box to tick for each line, and the cost where any is known."""
    heads = _column_heads(("got", "what", "detail", "amount", "cost"))
    table = PARTS.table("", heads, [list(_shopping_cells(row)) for row in rows])
    cost, unknown = total_cost(rows)
    key = "page.cost_partial" if unknown else "page.cost"
    total = text(said(key, cost=cost, unknown=unknown)) if cost else ""
    return Html(PARTS.shopping(table, total))


def _shopping_cells(row: ShoppingRow) -> Iterator[str]:
    yield PARTS.tick(_thing(row), row.what)
    yield row.what
    yield text(row.detail)
    yield text(said(f"amount.{row.unit}", amount=row.amount))
    yield "" if row.cost is None else f"{row.cost:.2f}"


def _thing(row: ShoppingRow) -> str:
    """Return what a row is, whatever amount of it is bought: its sort and kind, no figure of length."""
    facts = dict(row.detail.facts)
    kinds = ("title", "kind", "cloth", "point", "size", "width")
    told = [row.what, row.detail.key.partition(".")[2], *(str(facts[kind]) for kind in kinds if kind in facts)]
    return "-".join(told).replace(" ", "-")


def plan_table(table: Table) -> Html:
    """Return one table of the plan."""
    rows = [[_cell(value) for value in row] for row in table.rows]
    return Html(PARTS.table(text(table.key), [text(head) for head in table.heads], rows))


def _cell(value: Said | str | float) -> str:
    if isinstance(value, Said):
        return text(value)
    return value if isinstance(value, str) else f"{value:g}"


def _column_heads(heads: Iterable[str]) -> list[str]:
    return [text(f"column.{head}") for head in heads]


def start_list(found: Iterable[Start]) -> Html:
    return Html(PARTS.listed([text(s.words(text(f"start.{s.part}"))) for s in found]))


def words_of_stage(stage: str) -> str:
    return text(f"stage.{stage}")


def step_list(steps: Iterable[Step], draw: DrawStep) -> Html:
    """Return the steps as they come; why a seam is sewn so is told once a garment, not each time."""
    told: set[tuple[str, Said]] = set()
    items = []
    for step in steps:
        known = {sentence for garment, sentence in told if garment == step.garment}
        items.append(_step(step, draw, known))
        told |= {(step.garment, sentence) for sentence in _reasons(step.setting)}
    return Html(PARTS.steps(text("page.left"), items))


def _reasons(setting: Setting | None) -> tuple[Said, ...]:
    return (*setting.why, *setting.trials) if setting else ()


def _step(step: Step, draw: DrawStep, known: set[Said]) -> Html:
    repeated = known & set(_reasons(step.setting))
    sewn = setting_said(step.setting, pressed="presses" in step.does)
    return Html(
        PARTS.step(
            n=step.n,
            key=step.key,
            verb=step.verb,
            about=_for(step),
            say=[text(sentence) for sentence in step.say],
            settings=[
                *(text(sentence) for sentence in sewn if sentence not in repeated),
                *map(text, step.by_hand),
            ],
            cautions=[text(sentence) for sentence in step.cautions],
            waits=[text(said("page.waits", hours=step.wait))] if step.wait else [],
            minutes=f"{step.minutes:.0f}",
            minutes_label=text("page.minutes"),
            done_label=text("page.done"),
            drawn=draw(step),
        )
    )


def _for(step: Step) -> str:
    """Return what the step works on: the garment, or the cloth by its role."""
    part = step.garment or step.uses[0].partition(": ")[2]
    return f"{part}, {words_of_stage(step.stage).lower()}"
