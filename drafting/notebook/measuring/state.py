"""What stands in the measuring guide, as plain data: the fields, the body read from them. No widgets.

The fields hold what a maker typed. Every change is read by the reader of body files, so that a field
and a file say the same of the same text.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from drafting.body import Body, dimension_name
from drafting.body.toml_reader import RawBody, body_of
from drafting.ground.errors import DraftError, Fault, InputError
from drafting.ground.frozen import freeze
from drafting.ground.units import as_written
from drafting.notebook.whole_files import decoded, put_whole
from drafting.reading.given import Faults, Given
from drafting.reading.rewriting import rewritten
from drafting.reading.text import read_text
from drafting.reading.toml import parse_toml

Hands = tuple[str, ...]
"""What the field of a measure holds: one text, or one for the left and one for the right."""


@dataclass(frozen=True)
class Taking:
    """One state of the guide; every change gives a new one.

    `text` is the file as it was read, `about` and `layers` what it holds beside the measures,
    `keys` the names that it uses. `fields` holds the texts by today's names. `body` is the last one
    that could be read; `faults` say why the fields cannot be read now, and are empty where `body`
    is made of them; `read_from` is what the fields held when it was read. `sure` holds the measures
    whose unit the maker has confirmed.
    """

    path: Path
    text: str
    about: Mapping[str, Any]
    layers: Mapping[str, Any]
    keys: Mapping[str, str]
    fields: Mapping[str, Hands]
    body: Body | None = None
    read_from: Mapping[str, Hands] = field(default_factory=dict)
    faults: tuple[Fault, ...] = ()
    sure: frozenset[str] = field(default=frozenset())

    def __post_init__(self) -> None:
        freeze(self, "about", "layers", "keys", "fields", "read_from")

    @property
    def unit(self) -> str | None:
        """The unit of a bare number, None where the file names none."""
        unit = self.about.get("unit")
        return unit if isinstance(unit, str) else None


def begin_measuring(path: Path | str) -> Taking:
    """Return a body file as it stands; one that cannot be drafted yet is not refused.

    Raises `InputError` for a file that is missing or no TOML.
    """
    path = Path(path)
    if path.suffix.lower() != ".toml":
        right = "copy measurements/bodies/lamplighter.toml, and put your figures in"
        raise InputError([Fault("is no TOML file of one wearer", right, "", str(path))])
    text = read_text(path)
    file = parse_toml(text, str(path))
    if file.faults:
        raise InputError(file.faults)
    tables = {name: _table(file.data, name, path) for name in ("measures", "layers")}
    about = {key: value for key, value in file.data.items() if key not in tables}
    keys = {dimension_name(key) or key: key for key in tables["measures"]}
    unit = about.get("unit") if isinstance(about.get("unit"), str) else None
    fields = {
        name: _texts(tables["measures"][key], "kg" if name == "weight" else unit) for name, key in keys.items()
    }
    return read(Taking(path, text, about, tables["layers"], keys, fields))


def typed(taking: Taking, name: str, texts: Hands) -> Taking:
    """Return what stands once the field of a measure holds `texts`; an empty one is left out."""
    full = tuple(text.strip() for text in texts if text.strip())
    fields = {key: value for key, value in taking.fields.items() if key != name}
    if full:
        fields[name] = full
    return read(replace(taking, fields=fields, sure=taking.sure - {name}))


def typed_again(taking: Taking, texts: Mapping[str, Hands]) -> Taking:
    """Return what stands once each of these fields holds its texts; one that is empty is left out."""
    fields = {name: hands for name, hands in {**taking.fields, **texts}.items() if hands}
    return read(replace(taking, fields=fields)) if texts else taking


def read(taking: Taking) -> Taking:
    """Return the state with the body, or the faults, that its fields give."""
    raw = RawBody(
        {key: Given(value) for key, value in taking.about.items()},
        {key: Given(value) for key, value in taking.layers.items()},
        {name: _given(texts) for name, texts in taking.fields.items()},
    )
    try:
        body = body_of(raw, Faults(str(taking.path)), default_title=taking.path.stem)
    except InputError as refused:
        return replace(taking, faults=refused.faults)
    return replace(taking, body=body, read_from=taking.fields, faults=())


def saved(taking: Taking) -> Taking:
    """Write the changed measures into the file, comments and all other lines kept.

    Raises `DraftError` where the fields cannot be read, or the file has changed since.
    """
    if taking.faults:
        raise DraftError("nothing was written", turn="mend what is marked at the fields first")
    if read_text(taking.path) != taking.text:
        raise DraftError(
            f"{taking.path.name} has changed since this page read it, so nothing was written",
            turn="run the page again",
        )
    text, writing = decoded(taking.path.read_bytes())
    data = writing.raw(_with_changes(taking, text))
    try:
        put_whole(taking.path, data)
    except OSError as error:
        what = f"{taking.path.name} cannot be written ({error.strerror}), and stays as it was"
        raise DraftError(what, turn="see that you may write to it and that the disk is not full") from None
    return replace(begin_measuring(taking.path), sure=taking.sure)


def changed(taking: Taking) -> tuple[str, ...]:
    """Return the measures that the fields give otherwise than the file."""
    before = parse_toml(taking.text).data.get("measures", {})
    unit = taking.unit
    stood = {name: _texts(before[key], "kg" if name == "weight" else unit) for name, key in taking.keys.items()}
    names = dict.fromkeys([*stood, *taking.fields])
    return tuple(name for name in names if stood.get(name) != taking.fields.get(name))


def _with_changes(taking: Taking, text: str) -> str:
    """Return the file's `text`, line ends its own, with the changed fields in it."""
    before = parse_toml(taking.text).data.get("measures", {})
    for name in changed(taking):
        key = taking.keys.get(name, name)
        new = taking.fields.get(name, ())
        if key in before and isinstance(before[key], dict) != (len(new) == 2):
            text = rewritten(text, {("measures", key): None})
        if len(new) == 2:
            for side, one in zip(("left", "right"), new, strict=True):
                text = rewritten(text, {("measures", key, side): _value(one, taking.unit)})
        else:
            value = _value(new[0], taking.unit) if new else None
            text = rewritten(text, {("measures", key): value})
    return text


def _value(text: str, unit: str | None) -> str | float | int:
    """Return a field as a file holds it: a number where it is one in the file's own unit."""
    bare = text.removesuffix(unit or "").strip() if unit else ""
    for kind in (int, float):
        try:
            return kind(bare)
        except ValueError:
            continue
    return text


def _texts(value: Any, unit: str | None) -> Hands:
    """Return a value of the file as its field shows it, the unit beside a bare number."""
    if isinstance(value, dict):
        return tuple(_text(value.get(side, ""), unit) for side in ("left", "right"))
    return (_text(value, unit),)


def _text(value: Any, unit: str | None) -> str:
    bare = isinstance(value, (int, float)) and not isinstance(value, bool)
    if isinstance(value, int) and not isinstance(value, bool):
        value = as_written(value)  # beyond some digits Python will not write a number out
    return f"{value} {unit}" if bare and unit else str(value)


def _given(texts: Hands) -> Given | tuple[Given, Given]:
    return (Given(texts[0]), Given(texts[1])) if len(texts) == 2 else Given(texts[0])


def _table(data: Mapping[str, Any], name: str, path: Path) -> dict[str, Any]:
    table = data.get(name, {})
    if not isinstance(table, dict):
        right = f"begin it with a line [{name}]"
        raise InputError([Fault("must be a table", right, name, str(path))])
    return table
