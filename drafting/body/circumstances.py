"""Doubts about what a body file says beside the measures: weight, heel, the day."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from drafting.body.estimates import ADULT_LOW
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.names import clean_text
from drafting.ground.units import SHOWN

LEAN, HEAVY = 11.0, 60.0
"""kg for each square metre of the height; the 3,034 people of `Source.ANSUR_II` lie between 15.3 and 41.6."""

HIGHEST_HEEL = 300.0
"""mm; the highest platforms of the stage (from memory). Stilts are no heel."""

DAYS_AHEAD = 3 * 366
"""A day so far ahead is doubted (ours: clocks of computers go wrong by a year, pens by a century)."""

DAYS_BACK = 100 * 366
"""A day so far back is doubted (ours)."""


def circumstances_doubted(
    height: float | None, weight: float | None, heel: float, measured_on: str, today: date
) -> Iterator[Finding]:
    """Yield what is doubtful of a weight in kg beside a height in mm, a heel in mm, and the day."""
    if weight is not None and height is not None and height >= ADULT_LOW:
        share = weight / (height / 1000) ** 2
        if not LEAN <= share <= HEAVY:
            text = f"{weight:g} kg at a height of {told(height)}: is it in another unit?"
            yield Finding("weight", "warning", "weight", weight, None, text)
    if heel > HIGHEST_HEEL:
        text = f"a heel of {told(heel)} lifts no shoe: is it in another unit?"
        yield Finding("heel", "warning", "heel", heel, None, text)
    yield from _day_doubted(measured_on, today)


def _day_doubted(measured_on: str, today: date) -> Iterator[Finding]:
    if not measured_on:
        return
    said = clean_text(measured_on, SHOWN)
    day = day_of(measured_on)
    if day is None:
        text = f"{said} is no day that can be read: write it like measured_on = 2026-11-02"
        yield Finding("day", "note", "measured_on", None, None, text)
    elif not -DAYS_BACK <= (day - today).days <= DAYS_AHEAD:
        ahead = "ahead of us" if day > today else "long past"
        text = f"{said} is {ahead}: is the year right?"
        yield Finding("day", "warning", "measured_on", None, None, text)


def day_of(measured_on: str) -> date | None:
    """Return the day that a text begins with, as in 2026-11-02; None where it does not.

    >>> day_of("2026-11-02 10:00:00"), day_of("yesterday-ish")
    (datetime.date(2026, 11, 2), None)
    """
    try:
        return date.fromisoformat(measured_on[:10])
    except ValueError:
        return None
