"""Read one fabric file: every fault at once, swatch tests turned into fractions."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import Any

from drafting.fabric.cloth import SELVEDGE, Fabric, dimensional_change, recovery_of, stretch_of
from drafting.fabric.sorts import SORTS
from drafting.ground.findings import Finding
from drafting.ground.names import clean_text
from drafting.ground.units import (
    BadValue,
    as_written,
    parse_length,
    parse_number,
    parse_percent,
    show_length,
    unit_of,
)
from drafting.reading.cursor import TableReader, opened
from drafting.reading.given import one_of, plain_text, truth

LENGTHS = {  # accepted range in mm, ours: wide enough for any cloth, narrow enough for a slip
    "width": (50.0, 6000.0),
    "usable_width": (50.0, 6000.0),
    "selvedge": (0.0, 200.0),
    "thickness": (0.01, 30.0),
    "bending_length_along": (1.0, 300.0),
    "bending_length_across": (1.0, 300.0),
    "bending_length_bias": (1.0, 300.0),
    "repeat_along": (0.5, 5000.0),
    "repeat_across": (0.5, 5000.0),
}
WORDS: dict[str, tuple[str, ...]] = {
    "weave": ("woven", "knit"),
    "sort": SORTS,
    "eases": ("well", "little", "none"),
}
TRUTHS = ("pretreated", "one_way", "faces_alike", "takes_fusible", "takes_starch")
TEXTS = ("title", "fibre", "care", "price")
STRETCHES = ("stretch_along", "stretch_across", "stretch_bias")
SHRINKAGES = ("shrinkage_along", "shrinkage_across")
NUMBERS = {"mass": (1.0, 5000.0), "iron_dots": (0, 3)}
KEYS = (*TEXTS, *LENGTHS, *WORDS, *NUMBERS, *SHRINKAGES, *STRETCHES, "recovery", *TRUTHS)
MOST_STRETCHED = 6.0  # times its length at rest (ours: rubber tears about there)
MOST_SHRINKAGE = 0.40  # a fraction; more is what was left, not what was lost


def read_fabric(path: Path | str) -> Fabric:
    """Return the cloth of a TOML file: lengths in mm, stretch and shrinkage as fractions.

    Raises `InputError` with every fault of the file, each with its line.

    >>> from drafting.ground.shipped import shipped
    >>> cloth = read_fabric(shipped("measurements") / "fabrics" / "velveteen.toml")
    >>> cloth.usable_width, cloth.weave
    (1370.0, 'woven')
    """
    table = opened(Path(path))
    read = {key: table.read(key, _parser(key, table.unit)) for key in KEYS}
    values: dict[str, Any] = {key: value for key, value in read.items() if key in table}
    values.setdefault("title", Path(path).stem.replace("-", " "))
    swatch = _recovery(table)
    if swatch is not None:
        values.setdefault("recovery", swatch)
    findings = _widths(table, values)
    table.close()
    table.refuse()
    cloth = Fabric(**values)
    return replace(cloth, findings=(*findings, *_sort_said(cloth)))


def _parser(key: str, unit: str | None) -> Callable[[object], Any]:
    """Return what reads a key's value in our units."""
    if key in WORDS:
        return partial(one_of, words=WORDS[key])
    if key in LENGTHS:
        return partial(_length, key, unit)
    if key in NUMBERS:
        return partial(_number, key)
    if key in TRUTHS:
        return truth
    if key in STRETCHES:
        return partial(_stretch, unit)
    if key in SHRINKAGES:
        return partial(_shrinkage, unit)
    return _recovered if key == "recovery" else plain_text


def _length(key: str, unit: str | None, value: object) -> float:
    low, high = LENGTHS[key]
    mm = parse_length(value, unit, sign="not negative" if low == 0 else "positive")
    if low <= mm <= high:
        return mm
    shown = unit_of(value, unit)
    reach = f"{_exactly(low, shown)} to {_exactly(high, shown)}"
    raise BadValue(f"{as_written(value, unit)} cannot be", f"it lies within {reach}; name the unit")


def _exactly(mm: float, unit: str | None) -> str:
    """Return an end of a range in the maker's unit, its small decimals kept."""
    tens = {"mm": 1, "cm": 10}.get(unit or "cm")
    return show_length(mm, unit) if tens is None else f"{mm / tens:g} {unit or 'cm'}"


def _number(key: str, value: object) -> float | int:
    low, high = NUMBERS[key]
    text = value.replace("g/m2", "").replace("g/m²", "") if isinstance(value, str) else value
    number = parse_number(text, sign="not negative")
    if not low <= number <= high or (key == "iron_dots" and number != int(number)):
        whole = "a whole number " if key == "iron_dots" else ""
        what = f"{as_written(value)} cannot be"
        raise BadValue(what, f"it is {whole}within {low:g} to {high:g}")
    return int(number) if key == "iron_dots" else number


def _stretch(unit: str | None, value: object) -> float:
    """Return a stretch as a fraction, from a swatch test or from a percentage up to 100."""
    if isinstance(value, dict):
        rest, stretched = _marks(value, unit, ("rest", "stretched"), ("released",))
        if stretched < rest:
            raise BadValue("stretched is shorter than rest", "are the two swapped?")
        if stretched > MOST_STRETCHED * rest:
            what = f"stretched is {stretched / rest:.4g} times rest"
            raise BadValue(what, f"no cloth gives more than {MOST_STRETCHED:g} times: check both")
        return stretch_of(rest, stretched)
    percent = parse_percent(value, sign="not negative")
    if percent > 100:
        raise BadValue(*_two_readings(percent))
    if isinstance(value, float) and 0 < value < 1:
        both = f'"{percent:g} %" or "{100 * percent:g} %"'
        raise BadValue(f"{percent:g} could be {both}", "write the one that is meant")
    return percent / 100


def _two_readings(percent: float) -> tuple[str, str]:
    """Return what is unclear about a stretch above 100 %, and both ways to say it."""
    ends = percent / 10, 10 + percent / 10
    what = f"{percent:g} % could mean 10 to {ends[0]:g} ({percent - 100:g} %) or 10 to {ends[1]:g}"
    forms = " or ".join(f"{{rest = 10, stretched = {end:g}}}" for end in ends)
    return f"{what} ({percent:g} %)", f"write {forms}"


def _shrinkage(unit: str | None, value: object) -> float:
    """Return a shrinkage as a fraction lost, from two marks or from a percentage."""
    if isinstance(value, dict):
        before, after = _marks(value, unit, ("before", "after"))
        lost = -dimensional_change(before, after)
    else:
        lost = parse_percent(value) / 100
    if not -0.15 <= lost <= MOST_SHRINKAGE:
        right = f"shrinkage is what is lost, from -15 % to {100 * MOST_SHRINKAGE:g} %"
        given = "" if isinstance(value, dict) else f" ({as_written(value)})"
        raise BadValue(f"{100 * lost:.4g} %{given} cannot be", right)
    return lost


def _recovered(value: object) -> float:
    percent = parse_percent(value, sign="not negative")
    if percent > 100:
        right = "no more goes back than was stretched: 0 to 100 %"
        raise BadValue(f"{as_written(value, '%')} cannot be", right)
    return percent / 100


def _marks(
    value: Mapping[str, object], unit: str | None, needed: tuple[str, str], further: tuple[str, ...] = ()
) -> tuple[float, float]:
    """Return the two marks of a swatch test in mm (bare numbers without a unit count as cm)."""
    form = f"{{{needed[0]} = 10, {needed[1]} = 12}}"
    strange = [key for key in value if key not in needed + further]
    lacking = [key for key in needed if key not in value]
    if strange or lacking:
        known = f"{clean_text(strange[0], 40)} is not known here" if strange else ""
        what = known or f"{lacking[0]} is missing"
        raise BadValue(what, f"write it like {form}")
    first, second = (parse_length(value[key], unit or "cm") for key in needed)
    return first, second


def _recovery(table: TableReader) -> float | None:
    """Return the least recovery that the swatch tests with `released` gave, None without one."""
    found = []
    for key in STRETCHES:
        test = table.data.get(key)
        if not isinstance(test, dict) or not {"rest", "stretched", "released"} <= set(test):
            continue
        try:
            rest, stretched, released = (
                parse_length(test[mark], table.unit or "cm") for mark in ("rest", "stretched", "released")
            )
        except BadValue as bad:
            table.add(bad.what, bad.right, key)
            continue
        if rest < stretched and rest <= released <= stretched:
            found.append(recovery_of(rest, stretched, released))
        elif rest < stretched:
            table.add("released lies outside rest to stretched", "check the test", key)
    return min(found, default=None)


def _sort_said(cloth: Fabric) -> tuple[Finding, ...]:
    """Warn where a cloth seems to be no plain one and its file does not say which sort it is."""
    sorts = cloth.possible_sorts
    if cloth.sort is not None or sorts == ("plain",):
        return ()
    lines = " or ".join(f'sort = "{sort}"' for sort in sorts)
    text = (
        f"{cloth.title} seems to be {' or '.join(sorts)} by its fibre, lie or care, and is treated as the most "
        f'delicate of them. Add to its file: {lines}; a print that lies one way is sort = "plain".'
    )
    return (Finding("sort of cloth", "warning", cloth.title, None, ", ".join(sorts), text),)


def _widths(table: TableReader, values: dict[str, Any]) -> tuple[Finding, ...]:
    """Settle the usable width; say so where the selvedge had to be assumed."""
    width, usable = values.get("width"), values.get("usable_width")
    if usable is not None and width is not None and usable > width:
        table.add("is wider than the cloth", "leave one of the two out", "usable_width")
    if usable is not None or width is None:
        return ()
    selvedge = values.get("selvedge", SELVEDGE)
    values["usable_width"] = width - 2 * (selvedge or 0.0)
    if values["usable_width"] <= 0:
        table.add("the selvedges are wider than the cloth", "check both", "selvedge")
    if "selvedge" in values:
        return ()
    text = (
        f"no selvedge is given: {show_length(SELVEDGE)} at each side is left uncut, so "
        f"{show_length(width)} cloth counts as {show_length(values['usable_width'])}"
    )
    return (Finding("selvedge", "note", values["title"], SELVEDGE, None, text),)
