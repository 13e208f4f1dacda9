"""The whole page: every part of the plan in the order a maker needs it."""

from __future__ import annotations

from zlib import crc32

from drafting.costume.make import Made
from drafting.finish.label import piece_title
from drafting.ground import palette
from drafting.ground.lengths import in_unit
from drafting.ground.templates import Html, macros, page_policy
from drafting.making.model import Plan, Step
from drafting.making.page.looks import SCRIPT, STYLE
from drafting.making.page.sections import (
    WornShown,
    docket_table,
    listed,
    paragraphs,
    plan_table,
    shopping_table,
    source_list,
    start_list,
    step_list,
    titled_section,
    worn_part,
)
from drafting.making.stages import drawings
from drafting.making.starting import starts
from drafting.making.words import text

PARTS = ("cautions", "worn", "start", "docket", "shopping", "steps", "tables", "keeping", "sources")


def _kept(plan: Plan, made: Made) -> str:
    """Return under what name a browser keeps the ticks: wearer, costume, and this draft of it."""
    drawn = "".join(f"{g.name}.{c.piece.name} {c.cut.area:.1f};" for g in made.garments for c in g.pattern.pieces)
    return f"{plan.wearer} / {plan.title} / {crc32(drawn.encode()):08x}"


def page(plan: Plan, made: Made, worn: WornShown | None = None) -> str:
    """Return `plan.html`: one file, no network, in her unit; `worn` is the costume on the wearer's form."""
    drawn = drawings(made, plan.steps)

    def draw(step: Step) -> Html:
        return Html(drawn[step.key].svg if step.key in drawn else "")

    titles = {
        (garment.name, cut.piece.name): f"{cut.number} {piece_title(cut.piece)}"
        for garment in made.garments
        for cut in garment.pattern.pieces
    }
    bodies = {
        "cautions": paragraphs(plan.cautions, "caution"),
        "worn": worn_part(worn),
        "start": start_list(starts(plan.steps, made.costume.worn_on)),
        "docket": docket_table(plan.docket, titles),
        "shopping": shopping_table(plan.shopping),
        "steps": step_list(plan.steps, draw),
        "tables": Html("").join(plan_table(table) for table in plan.tables),
        "keeping": listed(plan.keeping),
        "sources": source_list(plan.sources),
    }
    sections = [titled_section(name, bodies[name]) for name in PARTS if bodies[name]]
    if plan.remarks:
        sections.append(titled_section("remarks", listed(plan.remarks)))
    whole = macros(__file__)
    written = str(
        whole.page(
            title=f"{text('page.title')} {plan.title}",
            kept=_kept(plan, made),
            policy=page_policy(SCRIPT),
            style=Html(palette.css() + STYLE),
            head=whole.head(plan.title, text("page.about"), plan.wearer),
            parts=[(name, text(f"page.{name}")) for name in PARTS],
            sections=sections,
            foot=text("page.scope"),
            script=Html(SCRIPT),
        )
    )
    return in_unit(written, made.costume.told_in)
