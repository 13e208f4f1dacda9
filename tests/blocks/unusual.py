"""Torsos of measured people drafted alone, for what must hold on every body; and the survey's profiles."""

from __future__ import annotations

import csv
from collections.abc import Mapping, Sequence
from functools import cache
from typing import Any

import numpy as np

from drafting.blocks import all_blocks
from drafting.body import Body
from drafting.costume.choices import Origin, block_named, choose
from drafting.draft.draft import Draft
from drafting.fabric import Fabric
from drafting.ground.scale import body_scale
from drafting.reading.given import Given
from tests.bodies import ansur, as_wearer, bdims
from tests.body.survey import as_taken, survey_people
from tests.shared_data import survey

SAMPLE = 120
"""People spread evenly over the survey that every run looks at; `-m population` looks at all."""


@cache
def some() -> tuple[Body, ...]:
    return ansur(SAMPLE)


@cache
def everybody() -> tuple[Body, ...]:
    return (*ansur(), *bdims())


def torso(body: Body, block: str = "bodice", fabric: Fabric | None = None, **choices: Any) -> Draft:
    """Return one part of a garment drafted alone, without finish and checks."""
    kind = block_named(block)
    given = {name: Given(value) for name, value in choices.items()}
    part = all_blocks()[block]
    assert part.draft is not None
    return part.draft(body, fabric, choose(kind, given, body_scale(body), Origin()).parts[block])


@cache
def rows() -> tuple[Mapping[str, str], ...]:
    with survey().open(encoding="utf-8", newline="") as file:
        return tuple(csv.DictReader(file))


def column(people: Sequence[Mapping[str, str]], name: str) -> Any:
    return np.array([float(row[name]) for row in people])


def bellies(count: int) -> list[Mapping[str, str]]:
    """Return the people whose waist is largest over their chest."""
    return sorted(rows(), key=lambda r: float(r["waistcircumference"]) - float(r["chestcircumference"]))[-count:]


def quarter(wide: float, deep: float) -> float:
    """Return a quarter of an ellipse's girth, mm, by its two half axes."""
    t = np.linspace(0, np.pi / 2, 400)
    return float(abs(np.diff(wide * np.cos(t) + 1j * deep * np.sin(t))).sum())


@cache
def own_waist(name: str, sex: str) -> Any:
    """Return the survey's least squares of a waist's `name` (depth, breadth) on waist and what it has
    over 0.80 of the chest, chest, hip and stature."""
    own = [row for row in rows() if row["Gender"] == sex]
    waist, chest = column(own, "waistcircumference"), column(own, "chestcircumference")
    over = np.maximum(0.0, waist - 0.8 * chest)
    table = [np.ones_like(waist), waist, over, chest, column(own, "buttockcircumference"), column(own, "stature")]
    return np.linalg.lstsq(np.column_stack(table), column(own, name), rcond=None)[0]


def front_of_growth(row: Mapping[str, str]) -> float:
    """Return the share of a belly that lies in front, by this person's own waist depth and breadth.

    The waist is two half ellipses about the plane in which it would have its middle without the belly;
    the back keeps its depth.
    """
    chest, hip, height = (float(row[n]) for n in ("chestcircumference", "buttockcircumference", "stature"))
    lean = np.array([1.0, 0.8 * chest, 0.0, chest, hip, height])
    deep, wide = (float(lean @ own_waist(n, row["Gender"])) for n in ("waistdepth", "waistbreadth"))
    now_deep, now_wide = float(row["waistdepth"]), float(row["waistbreadth"])
    before = quarter(wide / 2, deep / 2)
    back = quarter(now_wide / 2, deep / 2) - before
    front = quarter(now_wide / 2, now_deep - deep / 2) - before
    return front / (front + back)


@cache
def _taken() -> Any:
    return as_taken(survey_people())


def body_of(row: Mapping[str, str], **mm: float) -> Body:
    """Return a surveyed person, with these measures (mm) in place of the own."""
    person = as_wearer(_taken().loc[row["body"]].to_dict(), f"ANSUR {row['body']}")
    return person.changed(**mm) if mm else person
