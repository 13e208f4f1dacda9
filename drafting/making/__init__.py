"""The making plan: everything between the pattern and a finished costume, as bare facts. Layer 5.

    Made (with its lays) -> settings -> docket, shopping, steps, tables, keeping, cautions -> Plan

`plan_page` turns a `Plan` into one printable page; `report` puts its steps on record.
"""

from __future__ import annotations

from dataclasses import replace

from drafting.costume import Made
from drafting.making.cautions import cautions
from drafting.making.cutting_work import cutting_steps
from drafting.making.docket import docket
from drafting.making.keeping import keeping
from drafting.making.model import Plan, Step
from drafting.making.shopping import shopping
from drafting.making.tables import tables
from drafting.making.treating import treating_steps

__all__ = ["Plan", "Step", "planned"]


def planned(made: Made) -> Plan:
    """Return the plan of a costume whose lays are worked out already."""
    steps = (*treating_steps(made), *cutting_steps(made))
    return Plan(
        made.costume.title,
        made.costume.wearer.title,
        docket=docket(made),
        shopping=shopping(made, {}),
        steps=tuple(replace(step, n=n) for n, step in enumerate(steps, 1)),
        tables=tables(made),
        keeping=keeping(made),
        cautions=cautions(made),
    )
