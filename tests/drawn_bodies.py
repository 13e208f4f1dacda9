"""People who never lived, drawn from the published spread of measures of those who did.

`tests/data/survey_statistics.json` holds means, standard deviations, skewness and correlations of
the women and the men of ANSUR II (Gordon et al. 2014), and no person's row. `drawn_people` are as
many people as were surveyed, whose means, deviations and correlations are exactly these, so that
least squares on them finds what it finds on the survey. `drawn` makes wearers of them. `far` are
forty figures from the ends of the spread: along its principal axes, and where two measures pull
apart.
"""

from __future__ import annotations

import json
import math
import random
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pandas as pd
from scipy.special import ndtri

from drafting.body import Body
from tests.bodies import ansur, as_wearer
from tests.body.survey import as_taken
from tests.shared_data import SURVEY

STATISTICS = Path(__file__).parent / "data" / "survey_statistics.json"
FIGURES = ("womens", "mens")
SEED = 2014

AXES, AXIS_REACH = 5, 2.5
"""How many principal axes of each group are walked, either way, and how many sd far."""

CORNER_REACH = 3.0
"""How far out a corner lies: its Mahalanobis distance over the measures that name it."""

CORNERS: Mapping[str, Mapping[str, float]] = {
    "large bust, small waist": {"bust_girth": 1, "waist_girth": -1},
    "big belly": {"waist_girth": 1, "bust_girth": 0, "hip_girth": 0},
    "wide hips, small waist": {"hip_girth": 1, "waist_girth": -1},
    "tall and slim": {"height": 1, "waist_girth": -1},
    "short and stout": {"height": -1, "waist_girth": 1},
    "long sloping shoulders": {"shoulder_length": 1, "shoulder_drop": 1},
    "short square shoulders": {"shoulder_length": -1, "shoulder_drop": -1},
    "broad back, small bust": {"across_back_width": 1, "bust_girth": -1},
    "long back, short legs": {"back_waist_length": 1, "inside_leg_length": -1},
    "short back, long legs": {"back_waist_length": -1, "inside_leg_length": 1},
}
"""Figures whose named measures pull this way; all others follow them by least squares."""


@dataclass(frozen=True)
class Spread:
    """What is known of one group: means, standard deviations and percentiles in mm, and their shape."""

    figure: str
    count: int
    names: tuple[str, ...]
    mean: tuple[float, ...]
    sd: tuple[float, ...]
    skew: tuple[float, ...]
    correlations: tuple[tuple[float, ...], ...]
    percentiles: Mapping[str, Mapping[int, float]]

    def at(self, scores: Any) -> Any:
        """Return the measures (mm) at standard scores; one row a person."""
        return np.array(self.mean) + np.array(self.sd) * scores


@cache
def spread(figure: str) -> Spread:
    """Return the derived figures of the survey's women or men."""
    everything = json.loads(STATISTICS.read_text("utf-8"))
    group = everything[figure]
    measures = group["measures"]
    low = np.zeros((len(measures), len(measures)))
    for i, row in enumerate(group["correlations"]):
        low[i, :i] = row
    return Spread(
        figure=figure,
        count=group["count"],
        names=tuple(measures),
        mean=tuple(one["mean"] for one in measures.values()),
        sd=tuple(one["sd"] for one in measures.values()),
        skew=tuple(one["skew"] for one in measures.values()),
        correlations=tuple(map(tuple, low + low.T + np.eye(len(measures)))),
        percentiles={
            name: dict(zip(everything["percent"], one["percentiles"], strict=True))
            for name, one in measures.items()
        },
    )


def correlated(raw: Any, correlations: Any) -> Any:
    """Return the rows moved so that their means are 0, their sd 1, their correlations these, exactly."""
    centred = raw - raw.mean(axis=0)
    alone = np.linalg.solve(np.linalg.cholesky(np.cov(centred.T)), centred.T)
    return (np.linalg.cholesky(np.array(correlations)) @ alone).T


def scores(known: Spread, seed: int) -> Any:
    """Return standard scores, one row a person: skewed as lognormal measures, then correlated.

    A third of its skewness bends a normal score so (first order); the last step hardly changes it.
    Python promises the same `random()` for a seed in every version; other generators do not.
    """
    pick = random.Random(seed)
    even = [[pick.random() for _ in known.names] for _ in range(known.count)]
    normal = correlated(ndtri(even), known.correlations)
    bend = np.array(known.skew) / 3
    return correlated(np.expm1(bend * normal) / bend, known.correlations)


@cache
def drawn_people() -> Any:
    """Return as many women and men as were surveyed, one row each, in mixed order; mm."""
    groups = []
    for i, figure in enumerate(FIGURES):
        known = spread(figure)
        rows = known.at(scores(known, SEED + i))
        place = (np.arange(known.count) + 0.5) / known.count
        groups.append(pd.DataFrame(rows, columns=known.names).assign(figure=figure, place=place))
    mixed = pd.concat(groups).sort_values("place", kind="stable").drop(columns="place")
    return mixed.reset_index(drop=True)


def at_hand(count: int) -> tuple[Body, ...]:
    """Return so many surveyed adults, or drawn ones where the survey is not beside the repository."""
    return ansur(count) if SURVEY.is_file() else drawn(count + 1)[1:]


@cache
def drawn(count: int | None = None) -> tuple[Body, ...]:
    """Return all drawn people as wearers, or `count` of them spread evenly."""
    people = as_taken(drawn_people())
    step = 1 if count is None else len(people) // count
    rows = people.iloc[::step][:count]
    return tuple(
        as_wearer(row, f"drawn {i}, {row['figure']}")
        for i, row in zip(rows.index, rows.to_dict("records"), strict=True)
    )


def axis(known: Spread, which: int, reach: float) -> Any:
    """Return the standard scores `reach` sd along a principal axis; 0 is that of most spread."""
    sizes, ways = np.linalg.eigh(np.array(known.correlations))
    way = ways[:, -1 - which]
    return reach * math.sqrt(sizes[-1 - which]) * way * np.sign(way[np.argmax(np.abs(way))])


def corner(known: Spread, pulls: Mapping[str, float]) -> Any:
    """Return the standard scores of the figure whose named measures lie out this way."""
    at = [known.names.index(name) for name in pulls]
    way = np.array(list(pulls.values()), dtype=float)
    together = np.array(known.correlations)
    weights = np.linalg.solve(together[np.ix_(at, at)], way)
    return together[:, at] @ weights * CORNER_REACH / math.sqrt(way @ weights)


def far_scores(known: Spread) -> dict[str, Any]:
    """Return the standard scores of one group's twenty far figures by their names."""
    along = {
        f"axis {which + 1}, {reach:+} sd": axis(known, which, reach)
        for which in range(AXES)
        for reach in (AXIS_REACH, -AXIS_REACH)
    }
    return along | {title: corner(known, pulls) for title, pulls in CORNERS.items()}


@cache
def far() -> tuple[Body, ...]:
    """Return forty figures from the ends of the spread: women and men by turns."""
    made: list[list[Body]] = []
    for known in map(spread, FIGURES):
        found = far_scores(known)
        table = pd.DataFrame([known.at(one) for one in found.values()], columns=known.names)
        rows = as_taken(table).to_dict("records")
        made.append([as_wearer(row, f"{t}, {known.figure}") for t, row in zip(found, rows, strict=True)])
    return tuple(body for pair in zip(*made, strict=True) for body in pair)
