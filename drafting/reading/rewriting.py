"""New values in a maker's own TOML file: comments, order and every other line stay.

`tomlkit` puts a value where one stood; a key that is new goes on a line of its own below the last
one of its table, which takes knowing where a statement ends (`reading.toml.statements`).
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Mapping
from typing import Any

import tomlkit
from tomlkit.exceptions import TOMLKitError

from drafting.ground.errors import Fault, InputError
from drafting.reading.entries import Keys
from drafting.reading.toml import headers, statements

Plain = str | float | int | bool
Value = Plain | Mapping[str, Plain] | list[str] | None
"""What a key is given; mappings and lists are written on one line, and None takes the key out."""


def rewritten(text: str, values: Mapping[tuple[str, ...], Value]) -> str:
    """Return a TOML `text` with `values` in it, by their keys from the top; None takes a key out.

    What is not named stays byte for byte. A key that is new stands last in its table, and a table
    that is new comes after the one it belongs to. Raises `InputError` where a key cannot be had
    without rewriting more than that (a value stands where a table is wanted, or the other way
    round). The result is read again before it is handed back.

    >>> print(rewritten('[coat]  # winter\\ntails = "70 cm"\\n', {("coat", "tails"): "78 cm"}))
    [coat]  # winter
    tails = "78 cm"
    """
    wanted = _wanted(text, values)
    known = tomllib.loads(text)
    try:
        new = text
        for keys, value in values.items():
            new = _changed(new, keys, value, known)
            known = tomllib.loads(new)
    except (TOMLKitError, tomllib.TOMLDecodeError) as trouble:
        raise _refused((), f"this file cannot be rewritten ({trouble})") from None
    if known != wanted:
        raise _refused((), "this file is written in a way that cannot be changed safely")
    return new


def _wanted(text: str, values: Mapping[Keys, Value]) -> dict[str, Any]:
    """Return what the new text must read as; raises `InputError`."""
    data = tomllib.loads(text)
    for keys, value in values.items():
        table = data
        for key in keys[:-1]:
            table = table.setdefault(key, {}) if value is not None else table.get(key, {})
            if not isinstance(table, dict):
                raise _refused(keys, f"{key} is a value in this file, not a table")
        if value is None:
            table.pop(keys[-1], None)
        else:
            table[keys[-1]] = dict(value) if isinstance(value, Mapping) else value
    return data


def _changed(text: str, keys: Keys, value: Value, known: dict[str, Any]) -> str:
    """Return the text with one key changed, put in, or taken out."""
    there = list(_tables(known, keys))
    if value is None:
        return _edited(text, keys, value) if len(there) == len(keys) else text
    if len(there) == len(keys) and keys[-1] in there[-1]:
        old = there[-1][keys[-1]]
        same = type(old) is type(value) and old == value
        return text if same else _edited(text, keys, value)
    sections = headers(text)
    if keys[:-1] in sections or len(keys) == 1:
        return _inserted(text, keys[:-1], [_line(keys[-1:], value)])
    if len(there) == len(keys):  # an inline or a dotted table
        return _edited(text, keys, value)
    return _inserted(
        text, _above(sections, keys[: len(there) - 1]), ["", f"[{_dotted(keys[:-1])}]", _line(keys[-1:], value)]
    )


def _above(sections: Mapping[Keys, int], parent: Keys) -> Keys | None:
    """Return the section that a new table comes after, or None for the end of the file."""
    if parent in sections:
        return parent
    if parent and not any(header[: len(parent)] == parent for header in sections):
        raise _refused(parent, "is written on one line here, and has no room for a table")
    return None


def _tables(data: Any, keys: Keys) -> Iterator[dict[str, Any]]:
    """Yield the table at the top and each that there is on the way to the last key."""
    yield data
    for key in keys[:-1]:
        data = data.get(key)
        if not isinstance(data, dict):
            return
        yield data


def _edited(text: str, keys: Keys, value: Value) -> str:
    """Return the text with a value put in its table by `tomlkit`, which keeps what stands round it."""
    document = tomlkit.parse(text)
    table: Any = document
    for key in keys[:-1]:
        table = table[key]
    if isinstance(table.get(keys[-1]), tomlkit.items.Table):
        raise _refused(keys, "is a table in this file, not a value")
    if value is None:
        table.pop(keys[-1], None)
    else:
        table[keys[-1]] = _item(value)
    return tomlkit.dumps(document)


def _inserted(text: str, table: Keys | None, lines: list[str]) -> str:
    """Return the text with lines below the last statement of a section (None: of the file)."""
    rows = text.split("\n")
    end = _end(text, table)
    ending = "\r" if "\r\n" in text else ""
    if end == len(rows):  # the last line has no line end
        rows[-1:] = [rows[-1] + ending, ""] if rows[-1] else [""]
        end = len(rows) - 1
    rows[end:end] = [line + ending for line in lines]
    return "\n".join(rows)


def _end(text: str, table: Keys | None) -> int:
    """Return how many lines stand above the place for something new in a section."""
    sections = headers(text)
    first = sections.get(table or (), 0)
    later = [line for line in sections.values() if line > first]
    limit = min(later) if later and table is not None else text.count("\n") + 2
    return max((s.last for s in statements(text) if first <= s.first < limit), default=0)


def _line(keys: Keys, value: Value) -> str:
    return f"{_dotted(keys)} = {_item(value).as_string()}"


def _item(value: Value) -> Any:
    if not isinstance(value, Mapping):
        return tomlkit.item(value)
    table = tomlkit.inline_table()
    table.update(value)
    return table


def _dotted(keys: Keys) -> str:
    return ".".join(tomlkit.key(key).as_string() for key in keys)


def _refused(keys: Keys, what: str) -> InputError:
    return InputError([Fault(what, "change this line by hand", ".".join(keys))])
