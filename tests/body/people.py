"""The people that rules are tried on: drawn from the survey's spread, and the measured ones."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from tests.body.survey import survey_people
from tests.drawn_bodies import drawn_people

DRAWN = pytest.param(drawn_people, id="drawn")
"""As many people as were surveyed, with the survey's means and correlations; in every run."""

MEASURED = pytest.param(survey_people, id="measured", marks=pytest.mark.population)
"""The surveyed people themselves, where the survey lies beside the repository."""

ALSO_MEASURED = pytest.param(survey_people, id="measured")
"""The same in every run: for what rests on how people really are spread. Skips without them."""


def who(request: pytest.FixtureRequest, fixture: str = "people") -> str:
    """Return what to call the people that a test was given, for what it prints."""
    given: str = request.node.callspec.params[fixture].__name__
    return given.replace("_", " ")


def fitted(people: Any, some: Any, target: Any, given: tuple[str, ...]) -> Any:
    """Return `target` of some people by least squares on all of them, from what was `given`."""
    table = np.column_stack([np.ones(len(people)), people[list(given)]])
    best, *_ = np.linalg.lstsq(table, target, rcond=None)
    return np.column_stack([np.ones(len(some)), some[list(given)]]) @ best
