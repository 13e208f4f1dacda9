"""What is said beside each field, and what the guide asks. Pure; no widgets."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Literal

from drafting.body import Body, Measure, dimension_name
from drafting.body.other_unit import NAMES, Meant, all_meant, girths_meant, other_ways
from drafting.checks.words import capital, plain
from drafting.ground.units import BadValue, ShownUnit, parse_length, show_length, shown_unit, unit_of
from drafting.notebook.measuring.order import ORDER
from drafting.notebook.measuring.state import Taking, read

_NUMBER = re.compile(r"\s*([0-9][0-9 .,/-]*?)\s*(?:[a-zA-Z]*)\s*")


@dataclass(frozen=True, slots=True)
class FieldNote:
    """One sentence beside a field: what must be mended, a doubt, or a note."""

    level: Literal["mend", "needed", "doubt", "note"]
    sentence: str


@dataclass(frozen=True, slots=True)
class Question:
    """Measures that look as if they were in `unit`, and what they would be: never settled silently."""

    measures: tuple[str, ...]
    unit: ShownUnit
    sentence: str


def said_beside(taking: Taking) -> dict[str, list[FieldNote]]:
    """Return what is to be said by measure; under "" what belongs to no field.

    While something must be mended, the doubts about fields that have not changed since stay.
    """
    found: dict[str, list[FieldNote]] = {}
    for fault in taking.faults:
        needed = fault.what == "is missing"
        text = _sentence(f"{fault.what}; {fault.right}" if fault.right else fault.what)
        for name in _measures(fault.field):
            found.setdefault(name, []).append(FieldNote("needed" if needed else "mend", text))
    mended = frozenset(found)
    for finding in () if taking.body is None else taking.body.findings:
        level: Literal["doubt", "note"] = "note" if finding.level == "note" else "doubt"
        for name in _measures(finding.where):
            still = taking.fields.get(name) == taking.read_from.get(name)
            if finding.level != "ok" and name not in mended and still:
                found.setdefault(name, []).append(
                    FieldNote(level, _sentence(finding.said(shown_unit(taking.unit))))
                )
    return found


def question(taking: Taking) -> Question | None:
    """Return what looks like another unit and was not confirmed yet, all of one unit in one question."""
    found = {name: way for name, way in _other_units(taking).items() if name not in taking.sure}
    unit = next((found[name].unit for name in ORDER if name in found), None)
    if unit is None:
        return None
    names = [name for name in ORDER if name in found and found[name].unit == unit]
    given = ", ".join(f"{plain(name)} {' / '.join(taking.fields[name])}" for name in names)
    offered = " / ".join(show_length(found[name].mm, shown_unit(taking.unit)) for name in names)
    words = NAMES[unit]
    if len(names) == 1:
        text = f"This looks like {words}: {given}. Then it would be {offered}. Is it {words}?"
    else:
        text = f"These look like {words}: {given}. Then they would be {offered}. Are they {words}?"
    return Question(tuple(names), unit, text)


def answered(taking: Taking, asked: Question, yes: bool) -> Taking:
    """Return the state after a yes (the fields say the other unit) or a no (they stay as they are)."""
    sure = taking.sure | set(asked.measures)
    if not yes:
        return replace(taking, sure=sure)
    fields = dict(taking.fields)
    for name in asked.measures:
        fields[name] = tuple(_said_in(text, asked.unit) for text in fields[name])
    return read(replace(taking, fields=fields, sure=sure))


def placeholder(taking: Taking, name: str) -> str:
    """Return what an empty field shows: the estimate and how far off it may be."""
    measure = None if taking.body is None else taking.body.measures.get(name)
    if measure is None or measure.source == "measured":
        return ""
    return _estimate(measure, taking.unit)


def _estimate(measure: Measure, unit: str | None) -> str:
    off = "" if measure.sd is None else f" ± {show_length(2 * measure.sd, unit)}"
    return f"about {show_length(measure.mm, unit)}{off}"


def measured_of(body: Body | None, count: int) -> str:
    """Return how many of `count` measures were taken."""
    taken = 0 if body is None else sum(m.source == "measured" for m in body.measures.values())
    return f"{taken} of {count} measures taken"


def _other_units(taking: Taking) -> dict[str, Meant]:
    """Return the measures that another unit would explain, each with what it would be."""
    means = {name: _mm(taking, name) for name in taking.fields if dimension_name(name)}
    means = {name: mm for name, mm in means.items() if mm > 0}
    own = shown_unit(taking.unit)
    plainly = {name: mm for name, mm in means.items() if unit_of(taking.fields[name][0], own) == own}
    if whole := all_meant(plainly, own):
        every = ((name, way) for name, mm in plainly.items() for way in other_ways(mm, own))
        return {name: way for name, way in every if way.unit == whole.unit}
    found = girths_meant(means, taking.unit) if "height" in means else {}
    for name, text in _asked(taking):
        ways = other_ways(means[name], taking.unit) if name in means else ()
        said = next((way for way in ways if f'"{way.written}"' in text), None)
        found |= {name: said} if said else {}
    return {name: way for name, way in found.items() if way.unit}


def _asked(taking: Taking) -> Iterator[tuple[str, str]]:
    """Yield each measure of which a fault or a finding asks whether it was meant another way, and its words."""
    for fault in taking.faults:
        yield from ((name, fault.right) for name in _measures(fault.field)[:1])
    for finding in () if taking.faults or taking.body is None else taking.body.findings:
        if finding.check in ("unit", "girth and height", "adult band"):
            yield finding.where, finding.sentence


def _mm(taking: Taking, name: str) -> float:
    """Return the mean of a field's texts in mm, 0 where they cannot be read."""
    try:
        lengths = [parse_length(text, taking.unit) for text in taking.fields[name]]
    except BadValue:
        return 0.0
    return sum(lengths) / len(lengths)


def _said_in(text: str, unit: ShownUnit) -> str:
    number = _NUMBER.fullmatch(text)
    return f"{number[1]} {unit}" if number else text


def _measures(field: str) -> list[str]:
    """Return the measures that a fault or finding is about, `""` where it is about none."""
    names = [part.strip().split(".")[0] for part in field.split(",")]
    known = [dimension_name(name) or ("weight" if name == "weight" else "") for name in names]
    return list(dict.fromkeys(known))


def _sentence(text: str) -> str:
    words = text.split(": if so write ")[0]  # that is for files; here the guide asks
    words = re.sub(r"\b[a-z]+(?:_[a-z]+)+\b", lambda found: plain(found[0]), words)
    end = "" if words.endswith(("?", ".")) else "."
    return f"{capital(words)}{end}"
