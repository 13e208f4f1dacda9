"""The measured people beside the repository; tests about them skip, and say so, where it is absent."""

from __future__ import annotations

from pathlib import Path

import pandas as pd
import pytest

SHARED = Path(__file__).resolve().parent.parent.parent / "shared"


SURVEY = SHARED / "data" / "ansur2_bodies.csv"


def shared(name: str) -> Path:
    """Return a shared file, or skip the test that asks for it."""
    path = SHARED / name
    if not path.is_file():
        pytest.skip(f"the shared file {name} is not beside the repository")
    return path


def survey() -> Path:
    """Return the body survey (ANSUR II, 3,034 adults, mm)."""
    return shared(SURVEY.relative_to(SHARED).as_posix())


def reachable_estimates() -> pd.DataFrame:
    """Return what least squares reaches on people held back, mm: rows `given`, `target`."""
    return pd.read_csv(shared("reference/estimates-reachable.csv"))
