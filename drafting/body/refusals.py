"""Measures that are refused before anything is drafted, each with what would be right."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping

from drafting.body.dimensions import DIMENSIONS, LEAST, dimension_name
from drafting.body.estimates import estimates
from drafting.ground.errors import Fault
from drafting.ground.units import show_length

Taken = float | tuple[float, float]

NEAREST, FARTHEST = 1.0, 10_000.0  # mm: from a pocket doll to a carnival giant
INCH = 25.4 / 10  # what a girth grows by when centimetres turn out to be inches
# Smallest girth / height before "inches?" is asked. Survey least: bust .47, hip .46, waist .38;
# bust and hip at .38 leave room for a doll, the waist at .25 for a laced corset (ours).
GIRTH_TO_HEIGHT = {"bust_girth": 0.38, "high_bust_girth": 0.38, "hip_girth": 0.38, "waist_girth": 0.25}
WIDEST = 2.0  # girth / height; beyond it one of the two is a slip (survey greatest .82)
SLIP = 6.0  # times more or less than expected: a decimal point out of place
HANDS = 3.0  # one hand more than three times the other: likewise
MAY_BE_TINY = frozenset({"shoulder_drop"})  # a square shoulder has next to none


def unusable(field: str, value: object) -> Fault | None:
    """Return the fault of a measure (mm) that is no usable number, None when it is one."""
    for mm in value if isinstance(value, tuple) else (value,):
        if isinstance(mm, bool) or not isinstance(mm, (int, float)):
            return Fault(f"{str(mm)[:40]!r} is not a number", "give millimetres", field)
        if not math.isfinite(mm):
            return Fault(f"{mm} is not a number", "give the measure, or leave it out", field)
        if mm <= 0:
            what = "is zero" if mm == 0 else f"{mm:g} is negative"
            return Fault(what, "give the real measure, or leave it out", field)
        if not NEAREST <= mm <= FARTHEST:
            return Fault(
                f"{show_length(mm, 'cm')} is beyond any figure", "it lies between 0.1 cm and 1000 cm", field
            )
    if isinstance(value, tuple) and len(value) != 2:
        return Fault("needs two numbers", "one for the left, one for the right", field)
    return None


def refusals(taken: Mapping[str, Taken]) -> list[Fault]:
    """Return every reason not to draft from `taken` (usable numbers, mm), all at once."""
    faults = missing(taken) + unlikely(taken)
    if not faults:
        means = {name: _mean(value) for name, value in taken.items()}
        faults += _slips(means) + _drop_longer_than_shoulder(taken)
    return faults


def unlikely(taken: Mapping[str, Taken]) -> list[Fault]:
    """Return what cannot be of the two hands, and of the girths beside the height (mm)."""
    means = {name: _mean(value) for name, value in taken.items()}
    return _hands(taken) + (_inches(means) + _too_wide(means) if "height" in means else [])


def missing(names: Iterable[str]) -> list[Fault]:
    """Return a fault for each of the least measures that `names` (old or new) lacks."""
    given = {dimension_name(name) for name in names}
    lacking = [name for name in LEAST if name not in given]
    if not given & {"bust_girth", "high_bust_girth"}:
        lacking.insert(0, "bust_girth")
    other = {"bust_girth": "give it or high_bust_girth"}
    right = "no draft can be made without it; most others can be estimated"
    return [Fault("is missing", other.get(name, right), name) for name in lacking]


def _hands(taken: Mapping[str, Taken]) -> list[Fault]:
    faults = []
    for name, value in taken.items():
        if isinstance(value, tuple) and max(value) > HANDS * min(value):
            left, right = (show_length(mm) for mm in value)
            what = f"left {left} and right {right} cannot be one person's"
            faults.append(Fault(what, "is a decimal point out of place?", name))
    return faults


def like_inches(means: Mapping[str, float]) -> list[str]:
    """Return the girths (mm) so small for the height that they look like inches read as cm."""
    height = means["height"]
    return [n for n, share in GIRTH_TO_HEIGHT.items() if means.get(n, height) < share * height]


def _inches(means: Mapping[str, float]) -> list[Fault]:
    """Return one fault for all girths so small for the height that they look like inches."""
    height, small = means["height"], like_inches(means)
    if not small:
        return []
    small.sort(key=list(DIMENSIONS).index)
    given = " / ".join(f"{means[name] / 10:g}" for name in small)
    offered = " / ".join(f"{means[name] * INCH / 10:.2f}" for name in small)
    example = f'{small[0]} = "{means[small[0]] / 10:g} in"'
    ratio = means[small[0]] / height
    what = f"{given} cm on a height of {height / 10:g} cm ({ratio:.2f} of it) looks like inches"
    return [Fault(what, f"inches would be {offered} cm: if so write {example}", ", ".join(small))]


def _too_wide(means: Mapping[str, float]) -> list[Fault]:
    height = means["height"]
    names = [n for n in GIRTH_TO_HEIGHT if means.get(n, 0.0) > WIDEST * height]
    if not names:
        return []
    what = f"{show_length(height)} is less than half of {', '.join(names)}"
    return [Fault(what, "check the unit of the height and of the girths", "height")]


def _slips(means: Mapping[str, float]) -> list[Fault]:
    faults = []
    for name, expected in expectations(means).items():
        mm = means[name]
        times = mm / expected
        if name in MAY_BE_TINY or 1 / SLIP < times < SLIP:
            continue
        other = show_length(mm / 10 if times > 1 else mm * 10)
        what = f"{show_length(mm)} where about {show_length(expected)} is expected"
        faults.append(Fault(what, f"is it {other}, or another unit?", name))
    return faults


def _drop_longer_than_shoulder(taken: Mapping[str, Taken]) -> list[Fault]:
    drop, length = taken.get("shoulder_drop"), taken.get("shoulder_length")
    if drop is None or length is None:
        return []
    if all(d < line for d, line in zip(_both(drop), _both(length), strict=True)):
        return []
    what = f"{show_length(_mean(drop))} is no less than the shoulder's own length"
    return [Fault(what, "are shoulder_drop and shoulder_length swapped?", "shoulder_drop")]


def expectations(means: Mapping[str, float]) -> dict[str, float]:
    """Return what the main measures (mm) alone lead one to expect of the others that were taken.

    By the rules where there is one, else the middle of the adult band in proportion to height.
    """
    main = (*LEAST, "bust_girth" if "bust_girth" in means else "high_bust_girth")
    ruled = estimates({name: means[name] for name in main}, natural=True)
    expected = {}
    for name in means:
        if name in ruled:
            expected[name] = ruled[name].mm
        elif name not in main and name in DIMENSIONS:
            band = DIMENSIONS[name]
            expected[name] = (band.low + band.high) / 2 * means["height"] / 1725
    return expected


def _mean(value: Taken) -> float:
    return (value[0] + value[1]) / 2 if isinstance(value, tuple) else value


def _both(value: Taken) -> tuple[float, float]:
    return value if isinstance(value, tuple) else (value, value)
