"""Measures that are refused before anything is drafted, each with what would be right."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterable, Mapping

from drafting.body.dimensions import DIMENSIONS, LEAST, dimension_name
from drafting.body.estimates import Measure, estimates
from drafting.body.other_unit import ABOUT, LEAST_GIRTH, WIDEST, asked_of, beyond, likely, strange_girths
from drafting.ground.errors import Fault
from drafting.ground.lengths import told

Taken = float | tuple[float, float]

NEAREST, FARTHEST = 1.0, 10_000.0  # mm: from a pocket doll to a carnival giant
SLIP = 6.0  # times more or less than expected: a decimal point out of place
HANDS = 3.0  # one hand more than three times the other: likewise
MAY_BE_TINY = frozenset({"shoulder_drop"})  # a square shoulder has next to none


def unusable(field: str, value: object, unit: str | None = "cm") -> Fault | None:
    """Return the fault of a measure (mm, written in `unit`) that is no usable number, None when it is one."""
    for mm in value if isinstance(value, tuple) else (value,):
        if isinstance(mm, bool) or not isinstance(mm, (int, float)):
            return Fault(f"{str(mm)[:40]!r} is not a number", "give millimetres", field)
        if not math.isfinite(mm):
            return Fault(f"{mm} is not a number", "give the measure, or leave it out", field)
        if mm <= 0:
            what = "is zero" if mm == 0 else f"{mm:g} is negative"
            return Fault(what, "give the real measure, or leave it out", field)
        if not NEAREST <= mm <= FARTHEST:
            between = f"it lies between {told(NEAREST)} and {told(FARTHEST)}"
            asked = beyond(dimension_name(field) or "", mm, unit)
            return Fault(f"{told(mm)} is beyond any figure", asked or between, field)
    if isinstance(value, tuple) and len(value) != 2:
        return Fault("needs two numbers", "one for the left, one for the right", field)
    return None


def refusals(taken: Mapping[str, Taken], unit: str | None = "cm", stated: Collection[str] = ()) -> list[Fault]:
    """Return every reason not to draft from `taken` (usable numbers, mm), all at once.

    `unit` is the one they were written in, `stated` the measures that have it beside their number.
    """
    faults = missing(taken) + unlikely(taken, unit, stated)
    if not faults:
        means = {name: _mean(value) for name, value in taken.items()}
        faults += _slips(means, unit) + _drop_longer_than_shoulder(taken, unit)
    return faults


def unlikely(taken: Mapping[str, Taken], unit: str | None = "cm", stated: Collection[str] = ()) -> list[Fault]:
    """Return what cannot be of the two hands, and of the girths beside the height (mm)."""
    means = {name: _mean(value) for name, value in taken.items()}
    if "height" not in means:
        return _hands(taken, unit)
    return _hands(taken, unit) + (strange_girths(means, unit, stated) or _too_wide(means))


def missing(names: Iterable[str]) -> list[Fault]:
    """Return a fault for each of the least measures that `names` (old or new) lacks."""
    given = {dimension_name(name) for name in names}
    lacking = [name for name in LEAST if name not in given]
    if not given & {"bust_girth", "high_bust_girth"}:
        lacking.insert(0, "bust_girth")
    other = {"bust_girth": "give it or high_bust_girth"}
    right = "no draft can be made without it; most others can be estimated"
    return [Fault("is missing", other.get(name, right), name) for name in lacking]


def _hands(taken: Mapping[str, Taken], unit: str | None) -> list[Fault]:
    faults = []
    for name, value in taken.items():
        if isinstance(value, tuple) and max(value) > HANDS * min(value):
            left, right = (told(mm) for mm in value)
            what = f"left {left} and right {right} cannot be one person's"
            way = likely(max(value), min(value), unit, ABOUT) or likely(min(value), max(value), unit, ABOUT)
            right = f"is one of them {way.words}?" if way else "is a decimal point out of place?"
            faults.append(Fault(what, right, name))
    return faults


def _too_wide(means: Mapping[str, float]) -> list[Fault]:
    height = means["height"]
    names = [n for n in LEAST_GIRTH if means.get(n, 0.0) > WIDEST * height]
    if not names:
        return []
    what = f"{told(height)} is less than half of {', '.join(names)}"
    return [Fault(what, "check the unit of the height and of the girths", "height")]


def _slips(means: Mapping[str, float], unit: str | None) -> list[Fault]:
    faults = []
    for name, expected in expectations(means).items():
        mm = means[name]
        times = mm / expected
        if name in MAY_BE_TINY or 1 / SLIP < times < SLIP:
            continue
        way = likely(mm, expected, unit, ABOUT)
        other = f"is it {told(mm / 10 if times > 1 else mm * 10)}, or another unit?"
        what = f"{told(mm)} where about {told(expected)} is expected"
        faults.append(Fault(what, asked_of(name, way) if way else other, name))
    return faults


def _drop_longer_than_shoulder(taken: Mapping[str, Taken], unit: str | None) -> list[Fault]:
    drop, length = taken.get("shoulder_drop"), taken.get("shoulder_length")
    if drop is None or length is None:
        return []
    if all(d < line for d, line in zip(_both(drop), _both(length), strict=True)):
        return []
    mm = _mean(drop)
    way = likely(mm, expectations({name: _mean(v) for name, v in taken.items()})["shoulder_drop"], unit, ABOUT)
    right = asked_of("shoulder_drop", way) if way else "are shoulder_drop and shoulder_length swapped?"
    return [Fault(f"{told(mm)} is no less than the shoulder's own length", right, "shoulder_drop")]


def expectations(means: Mapping[str, float]) -> dict[str, float]:
    """Return what the main measures (mm) alone lead one to expect of the others that were taken.

    By the rules where there is one, else the middle of the adult band in proportion to height.
    """
    expected = {name: found.mm for name, found in by_the_main(means).items()}
    for name in means:
        if name not in expected and name not in _main(means) and name in DIMENSIONS:
            band = DIMENSIONS[name]
            expected[name] = (band.low + band.high) / 2 * means["height"] / 1725
    return {name: expected[name] for name in means if name in expected}


def by_the_main(means: Mapping[str, float]) -> dict[str, Measure]:
    """Return the estimate, by the main measures (mm) alone, of each other one that was taken, with its spread."""
    found = estimates({name: means[name] for name in _main(means)}, natural=True)
    return {name: found[name] for name in means if name in found}


def _main(means: Mapping[str, float]) -> tuple[str, ...]:
    return (*LEAST, "bust_girth" if "bust_girth" in means else "high_bust_girth")


def _mean(value: Taken) -> float:
    return (value[0] + value[1]) / 2 if isinstance(value, tuple) else value


def _both(value: Taken) -> tuple[float, float]:
    return value if isinstance(value, tuple) else (value, value)
