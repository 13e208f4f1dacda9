"""One side of a wearer whose left and right differ."""

from __future__ import annotations

from dataclasses import replace

from drafting.body.body import Body, Side
from drafting.body.estimates import Measure
from drafting.ground.remembered import remembered

TWO_SIDED = 3.0
"""mm: left and right this near each other are one measure, their mean (project contracts)."""

AXILLA_PER_DROP = 0.758
"""mm of axilla depth per mm of shoulder drop: the estimate's own coefficient (survey fit)."""


def differing_measures(body: Body) -> tuple[str, ...]:
    """Return the measures whose left and right lie more than 3 mm apart."""
    return tuple(
        name
        for name, m in body.measures.items()
        if m.left is not None and m.right is not None and abs(m.left - m.right) > TWO_SIDED
    )


@remembered(8)
def one_side(body: Body, side: Side) -> Body:
    """Return `body` with every differing measure as it is on `side`.

    What was estimated stays, so that both sides meet in one centre line; only an estimated axilla
    depth follows its side's shoulder drop.
    """
    changed: dict[str, Measure] = {
        name: replace(body.measures[name], mm=body.hand(name, side)) for name in differing_measures(body)
    }
    if "shoulder_drop" in changed and not (body.measured("axilla_depth") or body.measured("scye_depth")):
        axilla = body.measures["axilla_depth"]
        lower = changed["shoulder_drop"].mm - body["shoulder_drop"]
        changed["axilla_depth"] = replace(axilla, mm=axilla.mm + AXILLA_PER_DROP * lower)
    return replace(body, measures={**body.measures, **changed})
