"""The making plan: everything between the pattern and a finished costume, as bare facts.

    Made (with its lays) -> settings -> docket, shopping, steps, tables, keeping, cautions -> Plan

`making.page` turns a `Plan` into one printable page; `report` puts its steps on record.
"""

from __future__ import annotations

from drafting.costume.make import Made
from drafting.costume.mock_up import MockUp
from drafting.ground.names import clean_text
from drafting.making.cautions import cautions
from drafting.making.docket import docket
from drafting.making.fit.told import fit_tables
from drafting.making.keeping import keeping
from drafting.making.model import Plan, Step
from drafting.making.plan_sources import PLAN
from drafting.making.settings import easier, settings
from drafting.making.shopping import shopping
from drafting.making.tables import tables
from drafting.making.whole_order import work_order

__all__ = ["Plan", "Step", "planned", "work_order"]


def planned(made: Made, mock: MockUp | None = None) -> Plan:
    """Return the plan of a costume whose lays are worked out already (`costume.lays.laid_out`).

    With its `mock` laid out (`costume.mock_up.laid_to_try`) the cheap cloth is told as that takes it.

    Lengths are in mm, times in minutes; every sentence is a `Said`, which `words.text` puts in words.

    >>> from dataclasses import replace
    >>> from drafting.costume.make import make
    >>> from drafting.costume.file import read_costume
    >>> from drafting.costume.lays import laid_out
    >>> from drafting.ground.shipped import demo_costume
    >>> costume = read_costume(demo_costume())
    >>> shirt = make(replace(costume, garments=costume.garments[1:2]))
    >>> plan = planned(laid_out(shirt, count=5))
    >>> [step.n for step in plan.steps] == list(range(1, len(plan.steps) + 1))
    True
    """
    costume, room = made.costume, made.costume.workroom
    sewn = settings(made, room)
    steps = work_order(made, sewn)
    return Plan(
        costume.title,
        clean_text(costume.wearer.title),
        docket=docket(made),
        shopping=shopping(made, sewn, room.prices, steps, mock),
        steps=steps,
        tables=(*fit_tables(made, made.garments), *tables(made)),
        keeping=keeping(made),
        cautions=cautions(made),
        remarks=easier(made, room),
        settings=sewn,
        sources=PLAN,
    )
