"""Read bodies from TOML and CSV: every fault of a file at once, each with its line."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import partial
from pathlib import Path
from typing import Any

from drafting.body.body import Body
from drafting.body.dimensions import dimension_name, nearest
from drafting.body.refusals import Taken, missing, unusable
from drafting.body.wearer import wearer
from drafting.ground.errors import Fault, InputError
from drafting.ground.findings import Finding
from drafting.ground.units import BadValue, parse_length, parse_weight
from drafting.reading.given import Faults, Given, plain_text
from drafting.reading.toml import TomlFile, read_toml

WORDS = {
    "taken_over": ("skin", "underlayers"),
    "waist_level": ("natural", "navel"),
    "posture": ("standing", "seated"),
    "figure": ("womens", "mens"),
}
ASSUMED = {"taken_over": "skin", "waist_level": "natural"}
TEXTS = ("title", "measured_on")
KEYS = (*TEXTS, "unit", *WORDS, "heel", "layers", "measures")


@dataclass(slots=True)
class RawBody:
    """One wearer as the file gave it: raw values with their lines, a pair for two hands."""

    about: dict[str, Given] = field(default_factory=dict)
    layers: dict[str, Given] = field(default_factory=dict)
    measures: dict[str, Given | tuple[Given, Given]] = field(default_factory=dict)


def read_toml_body(path: Path) -> Body:
    """Return the wearer of a TOML file; raises `InputError`."""
    file = read_toml(path)
    faults = Faults(file.path, list(file.faults))
    raw = RawBody()
    for key, value in file.data.items():
        line = file.line(key)
        if key in ("layers", "measures"):
            if isinstance(value, dict):
                _table(raw, faults, file, key, value)
            else:
                faults.add("must be a table", f"begin it with a line [{key}]", key, line)
        elif key in KEYS:
            raw.about[key] = Given(value, line)
        elif dimension_name(key) or key == "weight":
            faults.add("stands outside [measures]", "write it below the line [measures]", key, line)
        else:
            faults.unknown(key, KEYS, key, line)
    return body_of(raw, faults, default_title=path.stem)


def _table(raw: RawBody, faults: Faults, file: TomlFile, key: str, value: Mapping[str, Any]) -> None:
    for name, one in value.items():
        line = file.line(key, name)
        if key == "layers":
            raw.layers[name] = Given(one, line)
        elif not isinstance(one, dict):
            raw.measures[name] = Given(one, line)
        elif set(one) == {"left", "right"}:
            raw.measures[name] = (Given(one["left"], line), Given(one["right"], line))
        else:
            faults.add("needs both hands", "write {left = 12.5, right = 12}", name, line)


def body_of(raw: RawBody, faults: Faults, default_title: str = "") -> Body:
    """Return the `Body` of one wearer's raw values, or raise all `faults` found on the way."""
    unit = faults.unit(raw.about.get("unit"))
    about, said = _about(raw, faults, unit)
    about.setdefault("title", default_title)
    weight = raw.measures.pop("weight", None)
    if isinstance(weight, Given):
        about["weight"] = faults.value(parse_weight, weight, "weight")
    layers = {
        dimension_name(name) or name: faults.value(_layer(unit), given, f"layers.{name}")
        for name, given in raw.layers.items()
        if _known(faults, name, given, "layers.")
    }
    taken = _taken(raw, faults, unit)
    if faults.found:
        faults.found += [replace(f, file=faults.file) for f in missing(raw.measures)]
        raise InputError(faults.found)
    try:
        return wearer(taken, layers={k: v or 0.0 for k, v in layers.items()}, said=said, **about)
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


def _measure(given: Given | tuple[Given, Given], faults: Faults, name: str, unit: str | None) -> Taken | None:
    parse = partial(_usable, name, unit)
    if isinstance(given, Given):
        return faults.value(parse, given, name)
    left = faults.value(parse, given[0], f"{name}.left")
    right = faults.value(parse, given[1], f"{name}.right")
    return None if left is None or right is None else (left, right)


def _usable(name: str, unit: str | None, value: object) -> float:
    if isinstance(value, (dict, list)):
        raise BadValue("is a table", "write one number, or {left = 12.5, right = 12}")
    mm = parse_length(value, unit)
    fault = unusable(name, mm)
    if fault:
        raise BadValue(fault.what, fault.right)
    return mm


def _layer(unit: str | None) -> Any:
    return partial(parse_length, unit=unit, sign="not negative")


def _known(faults: Faults, name: str, given: Given, head: str = "") -> bool:
    if dimension_name(name) is None:
        faults.add("is no body dimension", nearest(name), head + name, given.line)
    return dimension_name(name) is not None


def _placed(raw: RawBody, file: str, fault: Fault) -> Fault:
    """Return a fault of the finished body with the line of the first measure it is about."""
    first = fault.field.split(",")[0]
    for name, given in raw.measures.items():
        if dimension_name(name) == first:
            line = given[0].line if isinstance(given, tuple) else given.line
            return replace(fault, file=file, line=line)
    return replace(fault, file=file)
