"""The drawn people are like the surveyed ones, and the far ones lie where they say.

The figures are those of ANSUR II (Gordon et al. 2014, NATICK/TR-15/007); what its report prints
stands beside the check.
"""

from __future__ import annotations

import json

import numpy as np
import pytest

from tests.bodies import TAKEN
from tests.data.build_survey_statistics import STATISTICS, statistics
from tests.drawn_bodies import (
    AXES,
    AXIS_REACH,
    CORNER_REACH,
    CORNERS,
    FIGURES,
    drawn,
    drawn_people,
    far,
    far_scores,
    spread,
)


def test_the_stored_figures_are_those_of_the_survey() -> None:
    assert json.loads(STATISTICS.read_text("utf-8")) == statistics()


@pytest.mark.parametrize(("figure", "mean", "sd"), [("womens", 1628.5, 64.2), ("mens", 1756.2, 68.6)])
def test_the_stored_height_is_that_of_the_report(figure: str, mean: float, sd: float) -> None:
    # NATICK/TR-15/007, stature of 1,986 women and 4,082 men (from memory); ours are half of them,
    # so three standard errors of a mean are allowed.
    known = spread(figure)
    at = known.names.index("height")
    assert known.mean[at] == pytest.approx(mean, abs=3 * sd / known.count**0.5)
    assert known.sd[at] == pytest.approx(sd, rel=3 / (2 * known.count) ** 0.5)


@pytest.mark.parametrize("figure", FIGURES)
def test_drawn_people_have_the_surveys_means_and_correlations(figure: str) -> None:
    known, people = spread(figure), drawn_people()
    own = people[people.figure == figure][list(known.names)]
    assert len(own) == known.count
    assert own.mean().to_numpy() == pytest.approx(np.array(known.mean), abs=1e-6)
    assert own.std().to_numpy() == pytest.approx(np.array(known.sd), abs=1e-6)
    assert own.corr().to_numpy() == pytest.approx(np.array(known.correlations), abs=1e-9)


@pytest.mark.parametrize("figure", FIGURES)
def test_drawn_people_are_spread_as_the_surveyed_ones_to_the_ends(figure: str) -> None:
    # The percentiles take no part in the drawing: a fifth of an sd from 5 to 95 %, half beyond.
    known, people = spread(figure), drawn_people()
    own = people[people.figure == figure]
    for name, sd in zip(known.names, known.sd, strict=True):
        for percent, mm in known.percentiles[name].items():
            off = abs(float(np.percentile(own[name], percent)) - mm) / sd
            assert off <= (0.2 if 5 <= percent <= 95 else 0.5), (name, percent, off)


def test_nobody_drawn_is_refused_and_hardly_anybody_is_asked_again() -> None:
    # Of the 3,034 surveyed people 15 are asked whether a measure is right, 1 in 200; here 1 in 100.
    bodies = (*drawn(), *far())
    asked = [b.title for b in bodies if any(f.level == "warning" for f in b.findings)]
    assert len(asked) <= len(bodies) // 100, asked
    assert all(body.measured(name) for body in bodies for name in TAKEN)


@pytest.mark.parametrize("figure", FIGURES)
def test_far_figures_lie_as_far_out_as_they_say(figure: str) -> None:
    known = spread(figure)
    together = np.array(known.correlations)
    found = far_scores(known)
    assert len(found) == 2 * AXES + len(CORNERS)
    for title, scores in found.items():
        distance = float(np.sqrt(scores @ np.linalg.solve(together, scores)))
        assert distance == pytest.approx(CORNER_REACH if title in CORNERS else AXIS_REACH), title
    for title, pulls in CORNERS.items():
        at = [known.names.index(name) for name in pulls]
        assert np.sign(np.round(found[title][at], 9)) == pytest.approx(list(pulls.values())), title


def test_forty_far_figures_are_all_unlike() -> None:
    bodies = far()
    assert len(bodies) == len({body.title for body in bodies}) == 40
    rows = np.array([[body[name] for name in TAKEN] for body in bodies])
    apart = np.abs(rows[:, None] - rows[None]).max(axis=2) + 1e9 * np.eye(40)
    assert apart.min() > 20  # mm, in the measure that differs most
