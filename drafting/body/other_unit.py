"""Measures that look as if their number were meant in another unit: asked about, both ways.

A number read in the file's unit may be meant in another, or have a decimal point out of place. What
it would be then is held against what the wearer's other measures lead one to expect.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass

from drafting.body.dimensions import DIMENSIONS
from drafting.body.estimates import ADULT_HIGH
from drafting.ground.errors import Fault
from drafting.ground.lengths import told
from drafting.ground.units import FARTHEST, LENGTH_UNITS, ShownUnit, parse_length, show_length, shown_unit

NAMES: dict[ShownUnit, str] = {"cm": "centimetres", "in": "inches", "mm": "millimetres"}
NEAR = 1.15
"""A value within this factor of what is expected looks meant (ours)."""

ABOUT = 1.35
"""The same of a value that cannot be as it stands: other units lie farther apart than that (ours)."""

WIDEST = 2.0
"""Girth / height; beyond it one of the two is a slip (survey greatest .82)."""

LEAST_GIRTH = {"bust_girth": 0.38, "high_bust_girth": 0.38, "hip_girth": 0.38, "waist_girth": 0.25}
"""Of the height, below which a girth is asked about. Survey least: bust .47, hip .46, waist .38; bust
and hip at .38 leave room for a doll, the waist at .25 for a laced corset (ours)."""

MOST_GIRTH = 1.15
"""Of the height, above which a girth is asked about: far more than anybody in the survey (.82; ours)."""

TODDLER = 850.0
"""mm, the height of a child of two (from memory): wearers are mostly between it and the tallest of the survey."""

TALLEST = 2720.0
"""mm; the tallest man known (from memory): a file that makes anybody taller is asked before it is drafted."""


@dataclass(frozen=True, slots=True)
class Meant:
    """What a number may have been meant as: in words, as a file takes it, in mm.

    `unit` is None where no unit explains it.
    """

    words: str
    written: str
    mm: float
    unit: ShownUnit | None


def other_ways(mm: float, unit: str | None) -> Iterator[Meant]:
    """Yield the ways to read a number that was read as `mm` in `unit`: other units, then other decimals."""
    own = shown_unit(unit)
    number = mm / float(LENGTH_UNITS[own])
    for other, words in NAMES.items():
        if other != own:
            text = f"{_number(mm, own)} {other}"
            yield Meant(words, text, number * float(LENGTH_UNITS[other]), other)
    for times, text in ((10.0, f"{10 * number:.4g} {own}"), (0.1, f"{number / 10:.4g} {own}")):
        yield Meant("a decimal point out of place", text, mm * times, None)


def both_slips(mm: float, unit: str | None) -> Iterator[Meant]:
    """Yield the ways to read a number that is in another unit *and* has its decimal point out of place.

    >>> [way.written for way in both_slips(38.0, "cm")]  # it said 3.8
    ['38 in', '0.38 in']
    """
    own = shown_unit(unit)
    number = mm / float(LENGTH_UNITS[own])
    for other in ("cm", "in") if own != "mm" else ("in",):
        for times in (10.0, 0.1) if other != own else ():
            words = f"{NAMES[other]} with a decimal point out of place"
            size = float(LENGTH_UNITS[other])
            yield Meant(words, f"{times * number:.4g} {other}", times * number * size, None)


def meant_as(mm: float, low: float, high: float, unit: str | None) -> Meant | None:
    """Return the first other way to read `mm` that lies between `low` and `high` mm.

    >>> meant_as(2286.0, 700, 1400, "in").written, meant_as(360.0, 700, 1400, "cm").written
    ('90 cm', '36 in')
    """
    return next((way for way in other_ways(mm, unit) if low <= way.mm <= high), None)


def likely(mm: float, expected: float, unit: str | None, near: float = NEAR) -> Meant | None:
    """Return the other way to read `mm` that comes `near` what is expected, None where none does."""
    return meant_as(mm, expected / near, expected * near, unit)


def beyond(name: str, mm: float, unit: str | None) -> str:
    """Return the question whether a measure beyond any figure was meant another way, "" where none explains it."""
    band = DIMENSIONS.get(name)
    tried = (meant_as(mm, band.low / near, band.high * near, unit) for near in (1.0, ABOUT)) if band else ()
    way = next(filter(None, tried), None)
    return asked_of(name, way) if way else ""


def all_meant(means: Mapping[str, float], unit: str | None) -> Meant | None:
    """Return what the height is in the unit that all measures (mm) look meant in, None where none looks so.

    Measures that go together in one unit go together in any: only their size tells that all are in another.
    """
    height = means.get("height", TODDLER)
    girths = [name for name in LEAST_GIRTH if name in means]
    together = all(LEAST_GIRTH[name] <= means[name] / height <= MOST_GIRTH for name in girths)
    if TODDLER <= height <= ADULT_HIGH or len(girths) < 2 or not together:
        return None
    way = meant_as(height, TODDLER, ADULT_HIGH, unit)
    return way if way and way.unit else None


def all_asked(height: float, way: Meant, unit: str | None, *, may_be: bool) -> Fault:
    """Return the question whether all measures of a file are in another unit.

    `may_be` says that the height (mm) may be somebody's as it stands. Lengths are as `told` writes them.
    """
    own = shown_unit(unit)
    right = f'if they are, the height is {told(way.mm)}: write unit = "{way.unit}" at the top of the file'
    if may_be:
        right += f", else height = {_toml(f'{_number(height, own)} {own}')}"
    what = f"all measures look like {way.words}: as they stand the height is {both_units(height, own)}"
    return Fault(what, right, "unit")


def girths_meant(means: Mapping[str, float], unit: str | None) -> dict[str, Meant]:
    """Return the girths (mm) far too small or great beside the height that another way would explain."""
    height = means["height"]
    great = any(means.get(name, 0.0) > MOST_GIRTH * height for name in LEAST_GIRTH)
    most = height if great else MOST_GIRTH * height  # beside one that is too great, so is a stout one
    found = {}
    for name, least in LEAST_GIRTH.items():
        mm = means.get(name)
        if mm is not None and not least * height <= mm <= most:
            within = (least * height, MOST_GIRTH * height)
            way = meant_as(mm, *within, unit)
            if way is None and mm < least * height:
                slips = both_slips(mm, unit)
                way = next((slip for slip in slips if within[0] <= slip.mm <= within[1]), None)
            if way:
                found[name] = way
    return found


def strange_girths(means: Mapping[str, float], unit: str | None, stated: Collection[str] = ()) -> list[Fault]:
    """Return a fault for the girths (mm) that cannot be beside the height, those of one kind together.

    `stated` are measures whose unit their maker wrote beside the number: a great one is then believed.
    """
    height, meant = means["height"], girths_meant(means, unit)
    small = [n for n, least in LEAST_GIRTH.items() if n in means and means[n] < least * height]
    great = {n for n, way in meant.items() if way.unit and means[n] > height} - set(stated)
    if not any(means[name] > MOST_GIRTH * height for name in great):
        great = set()
    great |= {name for name in meant if means[name] > WIDEST * height}
    asked = sorted({*small, *great}, key=list(DIMENSIONS).index)
    wide = any(means.get(name, 0.0) > WIDEST * height for name in LEAST_GIRTH)
    if (wide or asked) and (tall := _height_meant(means, unit)):
        what = f"{both_units(height, shown_unit(unit))} is no height for these girths: it looks like {tall.words}"
        right = (
            f"that would be {both_units(tall.mm, shown_unit(unit))}: if so write height = {_toml(tall.written)}"
        )
        return [Fault(what, right, "height")]
    kinds: dict[str, list[str]] = {}
    for name in asked:
        kinds.setdefault(meant[name].words if name in meant else "", []).append(name)
    return [_fault(means, names, meant, unit) for names in kinds.values()]


def _height_meant(means: Mapping[str, float], unit: str | None) -> Meant | None:
    """Return the other way to read the height that all girths (two or more) would go with."""
    girths = {name: means[name] for name in LEAST_GIRTH if name in means}
    if len(girths) < 2:
        return None
    most = min(mm / LEAST_GIRTH[name] for name, mm in girths.items())
    return meant_as(means["height"], max(girths.values()) / MOST_GIRTH, most, unit)


def _fault(means: Mapping[str, float], names: list[str], meant: Mapping[str, Meant], unit: str | None) -> Fault:
    own = shown_unit(unit)
    height, first = means["height"], means[names[0]]
    given = " / ".join(both_units(means[name], own) for name in names)
    what = f"{given} on a height of {show_length(height, own)} ({first / height:.2f} of it)"
    way = meant.get(names[0])
    if way is None:
        reach = " and ".join(show_length(share * height, own) for share in (LEAST_GIRTH[names[0]], MOST_GIRTH))
        right = f"between {reach} goes with that height: check both, and the unit of the file"
        return Fault(f"{what} is nobody's", right, ", ".join(names))
    offered = " / ".join(both_units(meant[name].mm, own) for name in names)
    would = f"{way.words} would be" if way.unit else "in its place it would be"
    right = f"{would} {offered}: if so write {names[0]} = {_toml(way.written)}"
    if way.unit and first > height:
        right += f", else {_toml(f'{_number(first, own)} {own}')}"
    return Fault(f"{what} looks like {way.words}", right, ", ".join(names))


def asked_of(name: str, way: Meant) -> str:
    """Return the question whether a measure was meant another way, its lengths as `told` writes them."""
    told_as = "has a decimal point out of place" if way.unit is None else f"is in {way.words}"
    return f"if it {told_as}, it is {told(way.mm)}: if so write {name} = {_toml(way.written)}"


def both_units(mm: float, unit: ShownUnit) -> str:
    """Return a length in `unit`, and in brackets in the other that tapes have.

    >>> both_units(2286.0, "in"), both_units(360.0, "cm")
    ('90 in (228.6 cm)', '36 cm (14 1/8 in)')
    """
    return f"{show_length(mm, unit)} ({show_length(mm, 'cm' if unit == 'in' else 'in')})"


def _number(mm: float, unit: ShownUnit) -> str:
    """Return the number that was written, with the fraction of an inch where there was one."""
    if abs(mm) > FARTHEST:
        return f"{mm / float(LENGTH_UNITS[unit]):.6g}"
    shown = show_length(mm, unit, finer=True)
    exact = abs(parse_length(shown, sign="any") - mm) < 1e-6
    return shown.removesuffix(f" {unit}") if exact else f"{mm / float(LENGTH_UNITS[unit]):.6g}"


def _toml(written: str) -> str:
    return f'"{written}"'
