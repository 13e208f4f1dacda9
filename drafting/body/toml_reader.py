"""Read bodies from TOML and CSV: every fault of a file at once, each with its line."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from contextlib import suppress
from dataclasses import dataclass, field, replace
from functools import partial
from pathlib import Path
from typing import Any

from drafting.body.body import Body
from drafting.body.dimensions import dimension_name, meant_by, names_offered
from drafting.body.other_unit import TALLEST, all_asked, all_meant, beyond
from drafting.body.refusals import FARTHEST, NEAREST, Taken, missing, unlikely
from drafting.body.wearer import MOST_WORN, wearer
from drafting.ground.errors import Fault, InputError
from drafting.ground.findings import Finding
from drafting.ground.lengths import in_unit, told
from drafting.ground.units import (
    BadValue,
    as_written,
    parse_length,
    parse_weight,
    show_length,
    shown_unit,
    unit_of,
)
from drafting.reading.cursor import TableReader, opened
from drafting.reading.given import MOST_FAULTS, Faults, FilePlace, Given, plain_text
from drafting.reading.kinds import FileKind

WORDS = {
    "taken_over": ("skin", "underlayers"),
    "waist_level": ("natural", "navel"),
    "posture": ("standing", "seated"),
    "figure": ("womens", "mens"),
}
ASSUMED = {"taken_over": "skin", "waist_level": "natural"}
TEXTS = ("title", "measured_on")
KEYS = (*TEXTS, "unit", *WORDS, "heel", "layers", "measures", "fittings")


@dataclass(slots=True)
class RawBody:
    """One wearer as the file gave it: raw values with their lines, a pair for two hands.

    `line` is where her measures begin.
    """

    about: dict[str, Given] = field(default_factory=dict)
    layers: dict[str, Given] = field(default_factory=dict)
    measures: dict[str, Given | tuple[Given, Given]] = field(default_factory=dict)
    fittings: list[tuple[str, FilePlace]] = field(default_factory=list)
    line: int | None = None


def read_toml_body(path: Path) -> Body:
    """Return the wearer of a TOML file; raises `InputError`."""
    table = opened(path, FileKind.BODY)
    layers, measures = table.table("layers"), table.table("measures")
    raw = RawBody(line=measures.spot().line)
    raw.layers.update(layers.every())
    _taken_from(measures, raw)
    for key in ("unit", *TEXTS, *WORDS, "heel"):
        given = table.given(key)
        if given is not None:
            raw.about[key] = given
    if "fittings" in table:
        found = table.texts("fittings", 'fittings = ["first-fitting.toml"]')
        raw.fittings += [(str(path.parent / str(given.value)), spot) for given, spot in found]
    outside = [key for key in table.data if key not in KEYS and (dimension_name(key) or key == "weight")]
    for key in outside:
        table.given(key)
    if outside:
        others = len(outside) - 1
        more = ("", ", and so does one more", f", and so do {others} more measures")[min(others, 2)]
        right = "write it below the line [measures]" if "measures" in table else "write a line [measures] above it"
        table.add(f"stands outside [measures]{more}", right, outside[0])
    table.close()
    return body_of(raw, table.faults, default_title=path.stem, outside=outside)


def _taken_from(measures: TableReader, raw: RawBody) -> None:
    """Put the measures of a file into `raw`."""
    for name, given in measures.every():
        if not isinstance(given.value, dict):
            raw.measures[name] = given
            continue
        hands = measures.table(name)
        left, right = hands.given("left"), hands.given("right")
        if left is not None and right is not None and len(given.value) == 2:
            raw.measures[name] = (left, right)
        else:
            form = f"write {name} = {{left = 12.5, right = 12}}"
            measures.faults.add("needs both hands, and nothing else", form, name, given.line)


def read_measures(table: TableReader) -> dict[str, Taken]:
    """Return measures (mm, or both hands) that a table of another file gives; what is wrong goes to its faults."""
    raw = RawBody()
    _taken_from(table, raw)
    return _taken(raw, table.faults, table.unit)


def body_of(raw: RawBody, faults: Faults, default_title: str = "", outside: Sequence[str] = ()) -> Body:
    """Return the `Body` of one wearer's raw values, or raise all `faults` found on the way.

    Measures that the file gives `outside` their place are told already, and not missing besides.
    """
    unit = faults.unit(raw.about.get("unit"))
    about, said = _about(raw, faults, unit)
    about.setdefault("title", default_title)
    weight = raw.measures.pop("weight", None)
    if isinstance(weight, tuple):
        faults.add("has no hands", "write one number, as in weight = 62", "weight", weight[0].line)
    elif weight is not None:
        about["weight"] = faults.value(parse_weight, weight, "weight")
    layers = {
        dimension_name(name) or name: faults.value(_layer(unit), given, f"layers.{name}")
        for name, given in raw.layers.items()
        if _known(faults, name, given, "layers.")
    }
    before = len(faults.found)
    asked = _all_asked(raw, faults, unit)
    taken = {} if len(faults.found) > before else _taken(raw, faults, unit)
    stated = frozenset(dimension_name(name) or name for name, given in raw.measures.items() if _stated(given))
    if faults.found:
        strange = [name for name in raw.measures if dimension_name(name) is None]
        misspelt = [near for name in strange[:MOST_FAULTS] for near in meant_by(name)]
        further = [*missing([*raw.measures, *misspelt, *outside]), *unlikely(taken, unit, stated)]
        raise InputError([*faults.found, *(_placed(raw, faults.file, one.in_unit(unit)) for one in further)])
    try:
        return wearer(
            taken,
            layers={k: v or 0.0 for k, v in layers.items()},
            said=(*said, asked) if asked else said,
            unit=unit,
            stated=stated,
            fittings=tuple(raw.fittings),
            **about,
        )
    except InputError as refused:
        raise InputError([_placed(raw, faults.file, fault) for fault in refused.faults]) from None


def _about(raw: RawBody, faults: Faults, unit: str | None) -> tuple[dict[str, Any], tuple[Finding, ...]]:
    """Return what the file says beside its measures, and a note for each thing assumed."""
    about: dict[str, Any] = {}
    for key, given in raw.about.items():
        if key in WORDS:
            about[key] = faults.word(given, WORDS[key], key)
        elif key == "heel":
            about[key] = faults.value(_layer(unit), given, key)
        elif key in TEXTS:
            about[key] = faults.value(plain_text, given, key)
    said = tuple(
        Finding("assumed", "note", key, word, None, f"the file does not say {key}: {word} is taken")
        for key, word in ASSUMED.items()
        if key not in raw.about
    )
    return about, said


def _taken(raw: RawBody, faults: Faults, unit: str | None) -> dict[str, Taken]:
    """Return the measures in mm; a fault for every one that cannot be used."""
    taken: dict[str, Taken] = {}
    lines: dict[str, int | None] = {}
    for given_name, given in raw.measures.items():
        first = given[0] if isinstance(given, tuple) else given
        if not _known(faults, given_name, first):
            continue
        name = dimension_name(given_name) or given_name
        if name in lines:
            what = f"says again what line {lines[name]} says of {name}"
            faults.add(what, "keep one of the two", given_name, first.line)
        lines[name] = first.line
        value = _measure(given, faults, given_name, unit)
        if value is not None:
            taken[name] = value
    return taken


def _all_asked(raw: RawBody, faults: Faults, unit: str | None) -> Finding | None:
    """Return a warning that asks whether all measures that say no unit are in another than the file's.

    Where nobody is so tall as they make the wearer, a fault asks it too.
    """
    means = _in_the_file_s_unit(raw, unit)
    way = all_meant(means, unit)
    if way is None:
        return None
    height = means["height"]
    asked = all_asked(height, way, unit, may_be=height <= FARTHEST).in_unit(unit)
    if height > TALLEST:
        faults.add(asked.what, asked.right, asked.field, raw.about["unit"].line)
    return Finding("unit", "warning", "height", height, None, f"{asked.what}; {asked.right}")


def _in_the_file_s_unit(raw: RawBody, unit: str | None) -> dict[str, float]:
    """Return the known measures (mm) that can be read and say no unit beside their number."""
    means = {}
    for name, given in raw.measures.items():
        hands = given if isinstance(given, tuple) else (given,)
        known = dimension_name(name)
        with suppress(BadValue):
            if known and not _stated(given):
                lengths = [parse_length(one.value, unit) for one in hands]
                means[known] = sum(lengths) / len(lengths)
    return means


def _measure(given: Given | tuple[Given, Given], faults: Faults, name: str, unit: str | None) -> Taken | None:
    parse = partial(_usable, name, unit)
    if isinstance(given, Given):
        return faults.value(parse, given, name)
    left = faults.value(parse, given[0], f"{name}.left")
    right = faults.value(parse, given[1], f"{name}.right")
    return None if left is None or right is None else (left, right)


def _stated(given: Given | tuple[Given, Given]) -> bool:
    """Return whether a measure has its unit of length beside its number."""
    return all(unit_of(one.value) for one in (given if isinstance(given, tuple) else (given,)))


def _usable(name: str, unit: str | None, value: object) -> float:
    if isinstance(value, (dict, list)):
        right = f"write one number, or {name} = {{left = 12.5, right = 12}}"
        raise BadValue(f"is {as_written(value)}", right)
    mm = parse_length(value, unit)
    if not NEAREST <= mm <= FARTHEST:
        what = f"{as_written(value, unit)} is beyond any figure"
        asked = beyond(dimension_name(name) or name, mm, unit_of(value, unit))
        raise BadValue(what, in_unit(asked or f"it lies between {told(NEAREST)} and {told(FARTHEST)}", unit))
    return mm


def _layer(unit: str | None) -> Callable[[object], float]:
    """Return the reader of what is worn beneath, or of a heel."""

    def parse(value: object) -> float:
        mm = parse_length(value, unit, sign="not negative")
        if mm > MOST_WORN:
            what = f"{as_written(value, unit)} cannot be"
            raise BadValue(what, f"it must lie between 0 and {show_length(MOST_WORN, shown_unit(unit))}")
        return mm

    return parse


def _known(faults: Faults, name: str, given: Given, head: str = "") -> bool:
    if dimension_name(name) is None and not faults.full:
        faults.add("is no body dimension", names_offered(name), head + name, given.line)
    return dimension_name(name) is not None


def _placed(raw: RawBody, file: str, fault: Fault) -> Fault:
    """Return a fault of the finished body with the line of the first thing it is about."""
    first = fault.field.split(",")[0]
    for name, given in raw.measures.items():
        if dimension_name(name) == first:
            line = given[0].line if isinstance(given, tuple) else given.line
            return replace(fault, file=file, line=line)
    for head, table in (("", raw.about), ("layers.", raw.layers)):
        for name, one in table.items():
            if head + name == first:
                return replace(fault, file=file, line=one.line)
    return replace(fault, file=file, line=raw.line)
