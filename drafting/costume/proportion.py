"""Style in proportion: lengths that a maker gave as a share of a measure, or down to a landmark of the body.

[garments.coat.choices]
lapel_width = {share = 0.08, of = "bust_girth"}
tail_length = {at = "knee", plus = "2 cm"}
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from functools import partial
from typing import Any

from drafting.body import Body
from drafting.body.dimensions import dimension_name, names_offered
from drafting.body.landmarks import ARM, TRUNK, down_to, places_beside
from drafting.ground.choices import Choice
from drafting.ground.errors import InputError
from drafting.ground.nearest import meant
from drafting.ground.units import BadValue, as_written, parse_length, parse_number
from drafting.reading.given import Faults, Given, Origin

FORMS = 'as in {share = 0.08, of = "bust_girth"} or {at = "knee", plus = "2 cm"}'


def in_proportion(
    choices: Iterable[Choice], given: Mapping[str, Given], body: Body, origin: Origin
) -> Mapping[str, Given]:
    """Return raw values with each that was given in proportion as this body has it, in mm.

    What belongs to the hand (an allowance, a button) takes none. Raises `InputError` with every fault.
    """
    tables = {name: raw for name, raw in given.items() if isinstance(raw.value, dict)}
    if not tables:
        return given
    known, faults = {choice.name: choice for choice in choices}, Faults(origin.file)
    found = dict(given)
    for name, raw in tables.items():
        if name in known:
            mm = faults.value(partial(_length, known[name], body, origin.unit), raw, origin.field(name))
            found[name] = replace(raw, value=f"{mm or 0.0:.3f} mm")
    if faults.found:
        raise InputError(faults.found)
    return found


def _length(choice: Choice, body: Body, unit: str | None, value: object) -> float:
    """Return what a table says of a choice on this body, mm; raises `BadValue`."""
    table: Mapping[str, Any] = value if isinstance(value, dict) else {}
    if choice.unit != "mm" or choice.of_hand:
        why = "belongs to the hand, and is one size" if choice.of_hand else "is no length"
        raise BadValue(f"{choice.name} {why} on every body", "write the value itself")
    if table.keys() == {"share", "of"}:
        return parse_number(table["share"]) * _measure(table["of"], body)
    if "at" in table and table.keys() <= {"at", "plus"}:
        plus = parse_length(table["plus"], unit, sign="any") if "plus" in table else 0.0
        return _reach(choice, table["at"], body) + plus
    raise BadValue(f"{as_written(value)} is no proportion", FORMS)


def _measure(of: object, body: Body) -> float:
    name = dimension_name(of) if isinstance(of, str) else None
    if name is None:
        raise BadValue(f"{as_written(of)} is no measure of the body", names_offered(str(of)[:40]))
    if name not in body:
        raise BadValue(f"{name} is not among the wearer's measures", "take a share of one that is, or measure it")
    return body[name]


def _reach(choice: Choice, at: object, body: Body) -> float:
    places = places_beside(choice.begins)
    if not places:
        raise BadValue(f"{choice.name} is not measured down the body", "give a share of a measure instead")
    if not isinstance(at, str) or at not in places:
        right = meant(str(at)[:40], places, f"landmarks: {', '.join(places)}")
        raise BadValue(f"{as_written(at)} is no landmark that it may end at", right)
    return down_to(body, at, choice.begins)


LANDMARKS = {**TRUNK, **ARM}
"""Every landmark with its meaning, as `drafting blocks` lists them."""
