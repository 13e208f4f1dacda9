"""Read what a strip of cloth did: pulled between two marks, hung with a load, slid over an edge."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import partial
from typing import Any, TypeVar

from drafting.fabric.cloth import TreatedStrip, stretch_of
from drafting.fabric.overhang import ANGLES, SLOPE, bending_length
from drafting.ground.names import clean_text
from drafting.ground.units import (
    BadValue,
    as_written,
    parse_angle,
    parse_length,
    parse_percent,
    parse_weight,
    show_length,
    unit_of,
)

T = TypeVar("T")

GRAVITY = 9.80665  # N/kg, standard gravity
MOST_STRETCHED = 4.0  # times its length at rest: 300 %, beyond any cloth for clothes (ours)
LOADS = (0.001, 20.0)  # kg that a strip is hung with (ours)
STRIPS = (5.0, 500.0)  # mm that a test strip is wide (ours)
BENDING_LENGTHS = (1.0, 300.0)  # mm (ours: wide enough for any cloth, narrow enough for a slip)
TREATMENTS = ("starched_light", "starched_heavy", "fused_light", "fused_medium", "fused_heavy")
"""What a test strip can be treated with, by the key of a cloth's file."""


@dataclass(frozen=True)
class StretchTest:
    """A stretch as a fraction, and the load in N per metre of the strip's width (None: by hand)."""

    stretch: float
    load: float | None = None


def stretch_test(unit: str | None, value: object) -> StretchTest:
    """Return a stretch from a swatch test, or from a percentage up to 100; raises `BadValue`."""
    if isinstance(value, dict):
        return _pulled(unit, value)
    percent = parse_percent(value, sign="not negative")
    if percent > 100:
        raise BadValue(*_two_readings(percent))
    if isinstance(value, float) and 0 < value < 1:
        both = f'"{percent:g} %" or "{100 * percent:g} %"'
        raise BadValue(f"{percent:g} could be {both}", "write the one that is meant")
    return StretchTest(percent / 100)


def _pulled(unit: str | None, value: Mapping[str, object]) -> StretchTest:
    rest, stretched = marks(value, unit, ("rest", "stretched"), ("released", "load", "strip"))
    if stretched < rest:
        raise BadValue("stretched is shorter than rest", "are the two swapped?")
    if stretched > MOST_STRETCHED * rest:
        what = f"stretched is {stretched / rest:.4g} times rest"
        raise BadValue(what, f"no cloth gives more than {MOST_STRETCHED:g} times: check both")
    return StretchTest(stretch_of(rest, stretched), _load(value, unit))


def _load(value: Mapping[str, object], unit: str | None) -> float | None:
    """Return what a strip was hung with, N per metre of its width; None where nothing is said."""
    if "load" not in value and "strip" not in value:
        return None
    lacking = next((key for key in ("load", "strip") if key not in value), None)
    if lacking is not None:
        raise BadValue(f"{lacking} is missing", 'a load has its strip beside it: load = "500 g", strip = "5 cm"')
    if not isinstance(value["load"], str):
        raise BadValue(f"load {as_written(value['load'])} names no unit", 'write it like load = "500 g"')
    mass = _entry(value, "load", partial(parse_weight, unit=None))
    wide = _entry(value, "strip", partial(parse_length, unit=unit or "cm"))
    if not LOADS[0] <= mass <= LOADS[1]:
        raise BadValue(f"a load of {as_written(value['load'])} cannot be", "hang 1 g to 20 kg on it, as in 500 g")
    _within(wide, STRIPS, value["strip"], unit, "a strip is cut")
    return GRAVITY * mass / (wide / 1000)


def _two_readings(percent: float) -> tuple[str, str]:
    """Return what is unclear about a stretch above 100 %, and both ways to say it."""
    ends = percent / 10, 10 + percent / 10
    what = f"{percent:g} % could mean 10 to {ends[0]:g} ({percent - 100:g} %) or 10 to {ends[1]:g}"
    forms = " or ".join(f"{{rest = 10, stretched = {end:g}}}" for end in ends)
    return f"{what} ({percent:g} %)", f"write {forms}"


def marks(
    value: Mapping[str, object], unit: str | None, needed: tuple[str, str], further: tuple[str, ...] = ()
) -> tuple[float, float]:
    """Return the two marks of a swatch test in mm (bare numbers without a unit count as cm)."""
    _keys(value, needed, further, f"{{{needed[0]} = 10, {needed[1]} = 12}}")
    first, second = (parse_length(value[key], unit or "cm") for key in needed)
    return first, second


def _keys(value: Mapping[str, object], needed: tuple[str, ...], further: tuple[str, ...], form: str) -> None:
    strange = [key for key in value if key not in needed + further]
    lacking = [key for key in needed if key not in value]
    if strange or lacking:
        known = f"{clean_text(strange[0], 40)} is not known here" if strange else ""
        raise BadValue(known or f"{lacking[0]} is missing", f"write it like {form}")


def _entry(value: Mapping[str, object], key: str, parse: Callable[[object], T]) -> T:
    """Return an entry of a test, a fault of it named with its key."""
    try:
        return parse(value[key])
    except BadValue as bad:
        raise BadValue(f"{key} {bad.what}", bad.right) from None


OVERHANG = f'{{overhang = "11.2 cm", angle = {SLOPE}}}'


def strip_bends(unit: str | None, value: object) -> float:
    """Return a bending length in mm, given as it is or as an overhang test; raises `BadValue`."""
    if not isinstance(value, dict):
        length = parse_length(value, unit)
        _within(length, BENDING_LENGTHS, value, unit, "a bending length lies")
        return length
    _keys(value, ("overhang",), ("angle",), OVERHANG)
    over = _entry(value, "overhang", partial(parse_length, unit=unit or "cm"))
    angle = _entry({"angle": SLOPE, **value}, "angle", parse_angle)
    if not ANGLES[0] <= angle <= ANGLES[1]:
        right = f"it lies within {ANGLES[0]:g} to {ANGLES[1]:g} degrees; slide the strip down to {SLOPE:g}"
        raise BadValue(f"an angle of {as_written(value['angle'])} cannot be", right)
    length = bending_length(over, angle)
    _within(length, BENDING_LENGTHS, value["overhang"], unit, "the bending length it says lies")
    return length


def treated_strip(treatment: str, unit: str | None, mass: Callable[[object], Any], value: object) -> TreatedStrip:
    """Return a strip tried after its treatment, as an overhang test (with its mass) or a bending length."""
    if not isinstance(value, dict):
        return TreatedStrip(treatment, strip_bends(unit, value))
    _keys(value, ("overhang",), ("angle", "mass"), OVERHANG)
    length = strip_bends(unit, {key: entry for key, entry in value.items() if key != "mass"})
    return TreatedStrip(treatment, length, _entry(value, "mass", mass) if "mass" in value else None)


def _within(mm: float, reach: tuple[float, float], value: object, unit: str | None, what: str) -> None:
    if reach[0] <= mm <= reach[1]:
        return
    shown = unit_of(value, unit)
    low, high = (exactly(end, shown) for end in reach)
    raise BadValue(f"{as_written(value, unit)} cannot be", f"{what} within {low} to {high}; name the unit")


def exactly(mm: float, unit: str | None) -> str:
    """Return an end of a range in the maker's unit, its small decimals kept."""
    tens = {"mm": 1, "cm": 10}.get(unit or "cm")
    return show_length(mm, unit) if tens is None else f"{mm / tens:g} {unit or 'cm'}"
