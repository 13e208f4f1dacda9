"""The people that rules are refitted on: drawn in every run, measured by `-m population`."""

from __future__ import annotations

import pytest

from tests.body.survey import survey_people
from tests.drawn_bodies import drawn_people

DRAWN = pytest.param(drawn_people, id="drawn")
MEASURED = pytest.param(survey_people, id="measured", marks=pytest.mark.population)
