"""Read one fabric file: every fault at once, swatch tests turned into fractions."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import Any

from drafting.fabric.cloth import SELVEDGE, Fabric, TreatedStrip, dimensional_change, recovery_of
from drafting.fabric.sorts import SORTS
from drafting.fabric.strip_tests import TREATMENTS, exactly, marks, stretch_test, strip_bends, treated_strip
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.names import clean_text
from drafting.ground.palette import DYES
from drafting.ground.prices import parse_price
from drafting.ground.units import BadValue, as_written, parse_length, parse_number, parse_percent, unit_of
from drafting.reading.cursor import TableReader, opened
from drafting.reading.given import one_of, plain_text, truth
from drafting.reading.kinds import FileKind

LENGTHS = {  # accepted range in mm, ours: wide enough for any cloth, narrow enough for a slip
    "width": (50.0, 6000.0),
    "usable_width": (50.0, 6000.0),
    "selvedge": (0.0, 200.0),
    "thickness": (0.01, 30.0),
    "repeat_along": (0.5, 5000.0),
    "repeat_across": (0.5, 5000.0),
}
WORDS: dict[str, tuple[str, ...]] = {
    "weave": ("woven", "knit"),
    "sort": SORTS,
    "eases": ("well", "little", "none"),
}
TRUTHS = ("pretreated", "one_way", "faces_alike", "takes_fusible", "takes_starch")
TEXTS = ("title", "fibre", "care")
DIRECTIONS = ("along", "across", "bias")
STRETCHES = tuple(f"stretch_{direction}" for direction in DIRECTIONS)
BENDINGS = tuple(f"bending_length_{direction}" for direction in DIRECTIONS)
SHRINKAGES = ("shrinkage_along", "shrinkage_across")
NUMBERS = {"mass": (1.0, 5000.0), "iron_dots": (0, 3)}
KEYS = (*TEXTS, "colour", *LENGTHS, *WORDS, *NUMBERS, *SHRINKAGES, *BENDINGS, "recovery", "price", *TRUTHS)
NOTED = 'noted = ["at the first fitting: take in 1 cm at the waist, it gives more than its swatch"]'
COLOURS_LISTED = f"it is one of {', '.join(DYES)}, or the figures of one, as a screen has them"
DOUBTED = 1.5  # a stretch as a fraction; few cloths give more (ours)
MOST_SHRINKAGE = 0.40  # a fraction; more is what was left, not what was lost


def read_fabric(path: Path | str) -> Fabric:
    """Return the cloth of a TOML file: lengths in mm, stretch and shrinkage as fractions.

    Raises `InputError` with every fault of the file, each with its line.

    >>> from drafting.ground.shipped import shipped
    >>> cloth = read_fabric(shipped("measurements") / "fabrics" / "velveteen.toml")
    >>> cloth.usable_width, cloth.weave
    (1370.0, 'woven')
    """
    table = opened(Path(path), FileKind.CLOTH)
    read = {key: table.read(key, _parser(key, table.unit)) for key in KEYS}
    values: dict[str, Any] = {key: value for key, value in read.items() if key in table}
    values["title"] = clean_text(values.get("title") or Path(path).stem.replace("-", " "))
    values.update(_stretches(table), treated=_treated(table))
    swatch = _recovery(table)
    if swatch is not None:
        values.setdefault("recovery", swatch)
    noted = table.texts("noted", NOTED) if "noted" in table else ()
    values["noted"] = tuple(str(given.value) for given, _ in noted)
    findings = _widths(table, values)
    table.close()
    table.refuse()
    cloth = Fabric(**values)
    return replace(cloth, findings=(*findings, *_sort_said(cloth), *_doubted(cloth), *_noted(cloth)))


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
    if key in BENDINGS:
        return partial(strip_bends, unit)
    if key in SHRINKAGES:
        return partial(_shrinkage, unit)
    if key == "price":
        return partial(parse_price, unit=unit)
    if key == "colour":
        return _coloured
    return _recovered if key == "recovery" else plain_text


def _length(key: str, unit: str | None, value: object) -> float:
    low, high = LENGTHS[key]
    mm = parse_length(value, unit, sign="not negative" if low == 0 else "positive")
    if low <= mm <= high:
        return mm
    shown = unit_of(value, unit)
    reach = f"{exactly(low, shown)} to {exactly(high, shown)}"
    raise BadValue(f"{as_written(value, unit)} cannot be", f"it lies within {reach}; name the unit")


def _number(key: str, value: object) -> float | int:
    low, high = NUMBERS[key]
    text = value.replace("g/m2", "").replace("g/m²", "") if isinstance(value, str) else value
    bare = PER_YARD.sub("", text) if key == "mass" and isinstance(text, str) else text
    number = parse_number(bare, sign="not negative") * (1.0 if bare == text else OUNCE_PER_YARD)
    if not low <= number <= high or (key == "iron_dots" and number != int(number)):
        whole = "a whole number " if key == "iron_dots" else ""
        what = f"{as_written(value)} cannot be"
        raise BadValue(what, f"it is {whole}within {low:g} to {high:g}")
    return int(number) if key == "iron_dots" else number


PER_YARD = re.compile(r"\s*oz\.?\s*(?:/|per)\s*(?:yd2|yd²|sq\.?\s*yd|square yard)\s*$", re.IGNORECASE)
OUNCE_PER_YARD = 28.349523125 / 0.9144**2
"""g/m2 of an ounce to the square yard (the international pound and yard of 1959)."""


def _coloured(value: object) -> str:
    """Return a colour as #rrggbb, from a plain name or from its figures."""
    written = value.strip().lower() if isinstance(value, str) else as_written(value)
    if re.fullmatch(r"#[0-9a-f]{6}", written):
        return written
    return DYES[one_of(written, DYES, COLOURS_LISTED)]


def _shrinkage(unit: str | None, value: object) -> float:
    """Return a shrinkage as a fraction lost, from two marks or from a percentage."""
    if isinstance(value, dict):
        before, after = marks(value, unit, ("before", "after"))
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


def _stretches(table: TableReader) -> dict[str, float | None]:
    """Return each stretch that is given, and what pulled at it."""
    found: dict[str, float | None] = {}
    for direction, key in zip(DIRECTIONS, STRETCHES, strict=True):
        test = table.read(key, partial(stretch_test, table.unit))
        if test is not None:
            found |= {key: test.stretch, f"load_{direction}": test.load}
    return found


def _treated(table: TableReader) -> tuple[TreatedStrip, ...]:
    """Return each test strip that was starched or fused."""
    mass = partial(_number, "mass")
    strips = (table.read(name, partial(treated_strip, name, table.unit, mass)) for name in TREATMENTS)
    return tuple(strip for strip in strips if strip is not None)


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


def _doubted(cloth: Fabric) -> tuple[Finding, ...]:
    """Doubt a stretch that few cloths have."""
    found = []
    for direction in DIRECTIONS:
        stretch = getattr(cloth, f"stretch_{direction}")
        if stretch > DOUBTED:
            way = {"bias": "on the bias"}.get(direction, direction)
            text = (
                f"{cloth.title} is said to stretch by {100 * stretch:.4g} % {way}, from 10 to "
                f"{10 + 10 * stretch:.4g}: few cloths do. Check which of the two lengths is which."
            )
            found.append(Finding("stretch", "warning", cloth.title, stretch, DOUBTED, text))
    return tuple(found)


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
        f"no selvedge is given: {told(SELVEDGE)} at each side is left uncut, so "
        f"{told(width)} cloth counts as {told(values['usable_width'])}"
    )
    return (Finding("selvedge", "note", values["title"], SELVEDGE, None, text),)


def _noted(cloth: Fabric) -> tuple[Finding, ...]:
    """Repeat what was noted of the cloth at fittings of any costume."""
    said = (
        f"{cloth.title}, noted at a fitting: {clean_text(note)}. Test its swatch again." for note in cloth.noted
    )
    return tuple(Finding("cloth noted", "note", cloth.title, None, None, text) for text in said)
