"""The shared figures and body data beside the repository; tests skip where they are absent."""

from __future__ import annotations

import csv
from functools import cache
from pathlib import Path

import pytest

SHARED = Path(__file__).resolve().parent.parent.parent / "shared"


def shared(name: str) -> Path:
    """Return a shared file, or skip the test that asks for it."""
    path = SHARED / name
    if not path.is_file():
        pytest.skip(f"the shared file {name} is not beside the repository")
    return path


@cache
def _rows(path: Path) -> dict[str, dict[str, str]]:
    with path.open(newline="", encoding="utf-8-sig") as file:
        return {row["id"]: row for row in csv.DictReader(file)}


def check_value(row: str) -> str:
    """Return the value of one shared figure, as text."""
    return _rows(shared("reference/check-values.csv"))[row]["value"]


def check_values(row: str) -> dict[str, float]:
    """Return a row of the form name=number;name=number as numbers."""
    pairs = (pair.split("=") for pair in check_value(row).split(";"))
    return {name.strip(): float(number) for name, number in pairs}


def survey() -> Path:
    """Return the body survey (ANSUR II, 3,034 adults, mm)."""
    return shared("data/ansur2_bodies.csv")
