"""The texts of a new costume's files: a body, a cloth, a workroom, the costume that names them.

They can be made as they stand: on a wearer who was measured, or on an invented figure that the maker
writes over.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from drafting.body import Body
from drafting.body.dimensions import DIMENSIONS
from drafting.ground.names import clean_text
from drafting.ground.templates import toml_macros
from drafting.ground.units import LENGTH_UNITS, parse_length, show_length

INVENTED = {
    "cm": {"height": 168.0, "bust_girth": 92.0, "high_bust_girth": 88.0, "waist_girth": 75.0, "hip_girth": 99.0},
    "in": {"height": 66.0, "bust_girth": 36.25, "high_bust_girth": 34.75, "waist_girth": 29.5, "hip_girth": 39.0},
}
"""An invented figure, in the unit of the file."""

EXACT = 0.002
"""mm within which an inch and its sixteenths write down what was measured."""

WIDTHS = {"cm": "140", "mm": "1400", "in": "55"}
"""An invented cloth's width between the selvedges."""


def new_files(wearer: Body | None, unit: str, name: str = "") -> Mapping[str, str]:
    """Return each file's text by its name; lengths in `unit` ("cm", "mm", "in"), `name` the costume's.

    What `wearer` measured is written down within 0.002 mm; without one an invented figure stands there.
    """
    form = toml_macros(__file__)
    named = " ".join(clean_text(name, 60).replace("-", " ").replace("_", " ").split())
    own = f"{named[:1].upper()}{named[1:]}" or "A new costume"
    title = f"A costume for {clean_text(wearer.title, 60)}" if wearer else own
    body = form.body(
        wearer=wearer is not None,
        unit=unit,
        facts=tuple(_facts(wearer, unit)),
        measures=tuple(_measures(wearer, unit)),
        layers=tuple(_layers(wearer, unit)),
    )
    texts = {
        "wearer.toml": body,
        "cloth.toml": form.cloth(unit=unit, width=WIDTHS[unit]),
        "workroom.toml": form.workroom(),
        "costume.toml": form.costume(title=_text(title), unit=unit),
    }
    return {name: text.strip() + "\n" for name, text in texts.items()}


def _facts(wearer: Body | None, unit: str) -> Iterator[str]:
    """Yield the lines above the measures: what they are, and how they were taken."""
    yield f"title = {_text(wearer.title if wearer else 'A figure, invented')}"
    yield f'unit = "{unit}"'
    over = wearer.taken_over if wearer else "skin"
    yield f'taken_over = "{over}"    # or "underlayers": over what is worn beneath'
    level = wearer.waist_level if wearer else "natural"
    yield f'waist_level = "{level}"    # or "navel": one level for every waist measure'
    sits = wearer is not None and wearer.posture == "seated"
    yield f'{"" if sits else "# "}posture = "seated"    # of who sits: trousers and breeches are drafted for it'
    figure = wearer.figure if wearer else ""
    mark = "" if figure else "# "
    yield f'{mark}figure = "{figure or "womens"}"    # or "mens": whose size charts come nearer, if you like'
    if wearer and wearer.measured_on:
        yield f"measured_on = {_text(wearer.measured_on)}"
    heel = wearer.heel if wearer else 0.0
    yield f"heel = {_number(heel, unit)}    # of the shoe that is worn with the costume"


def _measures(wearer: Body | None, unit: str) -> Iterator[str]:
    """Yield a line for every dimension: measured ones as values, the others as remarks to fill in."""
    for name, dimension in DIMENSIONS.items():
        value = _value(wearer, name, unit)
        yield f"{name} = {value}    # {dimension.how}" if value else f"# {name} =     # {dimension.how}"
    weight = wearer.weight if wearer else None
    yield f'weight = "{weight:.6g} kg"' if weight else '# weight = "68 kg"'


def _value(wearer: Body | None, name: str, unit: str) -> str:
    """Return what stands behind the = of a measure, "" for one that nobody took."""
    if wearer is None:
        own = "in" if unit == "in" else "cm"
        figure = INVENTED[own]
        return _number(figure[name] * float(LENGTH_UNITS[own]), unit) if name in figure else ""
    if not wearer.measured(name):
        return ""
    left, right = wearer.hand(name, "left"), wearer.hand(name, "right")
    if left == right:
        return _number(left, unit)
    return f"{{ left = {_number(left, unit)}, right = {_number(right, unit)} }}"


def _layers(wearer: Body | None, unit: str) -> Iterator[str]:
    layers = wearer.layers if wearer else {}
    for name, mm in layers.items():
        yield f"{name} = {_number(mm, unit)}"
    if not layers:
        yield f"# bust_girth = {_number(15.0, 'mm') if unit == 'mm' else '0.5' if unit == 'in' else '1.5'}"


def _number(mm: float, unit: str) -> str:
    """Return a length as a number in `unit`, no digits lost that a tape could read.

    >>> _number(920.75, "in"), _number(920.75, "cm"), _number(920.0, "in")
    ('"36 1/4 in"', '92.075', '36.2205')
    """
    fraction = show_length(mm, "in", finer=True)
    if unit == "in" and " " in fraction.removesuffix(" in") and abs(parse_length(fraction, "in") - mm) < EXACT:
        return f'"{fraction}"'
    return f"{mm / float(LENGTH_UNITS[unit]):.4f}".rstrip("0").rstrip(".")


def _text(text: str) -> str:
    """Return a text as a TOML string on one line."""
    clean = clean_text(text, 200)
    escaped = clean.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'
