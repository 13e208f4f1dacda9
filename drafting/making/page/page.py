"""The whole page: every part of the plan in the order a maker needs it."""

from __future__ import annotations

import html

from drafting.costume.make import Made
from drafting.finish.label import piece_title
from drafting.making.model import Plan, Step
from drafting.making.page.drawing import definitions, drawing, drawn_pieces, lit_edges
from drafting.making.page.looks import SCRIPT, STYLE
from drafting.making.page.sections import (
    docket_table,
    listed,
    paragraphs,
    plan_table,
    section,
    shopping_table,
    source_list,
    start_list,
    step_list,
    words,
)
from drafting.making.times import starts
from drafting.making.words import text

PARTS = ("cautions", "start", "docket", "shopping", "steps", "tables", "keeping", "sources")


def page(plan: Plan, made: Made) -> str:
    """Return `plan.html`: one file, no network."""
    garments = {garment.name: garment for garment in made.garments}
    pieces = drawn_pieces(made)

    def lit(step: Step) -> list[tuple[str, str]]:
        if not step.garment:
            return []
        own = [(f"{step.garment}.{piece}", edge) for piece, edge in step.edges]
        return [*lit_edges(garments[step.garment], step.seams), *own]

    def draw(step: Step) -> str:
        shown = [pieces[name] for name in step.pieces if name in pieces]
        return drawing(shown, lit(step)) if shown else ""

    titles = {(g.name, p.name): piece_title(p) for g in made.garments for p in g.draft.pieces}
    bodies = {
        "cautions": paragraphs(plan.cautions, "caution"),
        "start": start_list(starts(plan.steps, made.costume.worn_on)),
        "docket": docket_table(plan.docket, titles),
        "shopping": shopping_table(plan.shopping),
        "steps": f'<p class="screen">{words("page.left")} <b id="left"></b></p>' + step_list(plan.steps, draw),
        "tables": "".join(plan_table(table) for table in plan.tables),
        "keeping": listed(plan.keeping),
        "sources": source_list(plan.sources),
    }
    drawn = definitions(pieces, [edge for step in plan.steps for edge in lit(step)])
    head = f"<h1>{html.escape(plan.title)}</h1><p>{words('page.about')} {html.escape(plan.wearer)}.</p>"
    links = " ".join(f'<a href="#{name}">{words(f"page.{name}")}</a>' for name in PARTS)
    body = "".join(section(name, bodies[name]) for name in PARTS if bodies[name])
    remarks = section("remarks", listed(plan.remarks)) if plan.remarks else ""
    foot = f"<p>{words('page.scope')}</p>"
    title = html.escape(text("page.title") + " " + plan.title)
    return (
        f'<!doctype html>\n<html lang="en"><head><meta charset="utf-8"><title>{title}</title>'
        '<meta name="viewport" content="width=device-width, initial-scale=1">'
        f"<style>{STYLE}</style></head><body>{drawn}<header>{head}<nav>{links}</nav></header>"
        f"<main>{body}{remarks}{foot}</main><script>{SCRIPT}</script></body></html>\n"
    )
