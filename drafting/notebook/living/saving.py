"""Put what the bench says back into the costume file, its comments and order kept. No widgets."""

from __future__ import annotations

import os
import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

from drafting.costume.file import CostumeFile, read_costume
from drafting.ground.errors import Fault, InputError
from drafting.ground.shipped import INSTALLED
from drafting.ground.units import LENGTH_UNITS, parse_length
from drafting.ground.written_lengths import inches_written, plain_number
from drafting.notebook.living.parts import choice_of, garment_of
from drafting.notebook.whole_files import decoded, put_whole
from drafting.reading.entries import Keys
from drafting.reading.given import Given
from drafting.reading.rewriting import Value, rewritten

FILES = ("wearer", "workroom")


@dataclass(frozen=True)
class Kept:
    """A costume file as it was read: its bytes say later whether somebody else has changed it."""

    path: Path
    raw: bytes


def kept(costume: CostumeFile) -> Kept:
    """Return the file of a costume that was just read; raises `InputError` where it is another now."""
    path = Path(costume.path)
    try:
        raw = path.resolve().read_bytes()
    except OSError:
        raise _refused(path, "this costume was not read from a file that can be read again") from None
    if read_costume(path).garments != costume.garments:
        raise _changed(path)
    return Kept(path, raw)


def changed_values(asked: CostumeFile, file: CostumeFile) -> dict[Keys, Value]:
    """Return what has to be written, by its keys in the file, so that `file` says what is asked.

    A choice that the file need not say is taken out of it (None).
    """
    found: dict[Keys, Value] = {}
    for worn in asked.garments:
        written = garment_of(file, worn.name).choices
        for name in dict.fromkeys((*worn.choices, *written)):
            keys = ("garments", worn.name, "choices", name)
            if name not in worn.choices:
                found[keys] = None
            elif name not in written or worn.choices[name].value != written[name].value:
                old = written[name].value if name in written else None
                unit = choice_of(asked, worn.name, name).unit
                found[keys] = _as_written(worn.choices[name], unit, old, asked.unit)
    return found


def save(asked: CostumeFile, file: CostumeFile, read: Kept) -> tuple[CostumeFile, Kept]:
    """Write the choices of `asked` into the file; return it as it reads now.

    Raises `InputError` where the file has changed since it was `read`, belongs to the kit, or
    cannot be written; nothing is written then.
    """
    place = read.path.resolve()
    if INSTALLED in place.parents:
        raise _refused(read.path, "this file belongs to the kit and is never changed", read)
    if not place.is_file() or place.read_bytes() != read.raw:
        raise _changed(read.path)
    text, writing = decoded(read.raw)
    _put(place, writing.raw(rewritten(text, changed_values(asked, file))), read)
    return _again(read.path)


def save_copy(asked: CostumeFile, file: CostumeFile, read: Kept, to: Path) -> tuple[CostumeFile, Kept]:
    """Write a copy that says what is asked, the files it names followed from its new place.

    Raises `InputError` where something stands there already, or it cannot be written.
    """
    if to.exists():
        raise _refused(to, "stands there already", right="move it away, or give yours another name")
    text, writing = decoded(read.raw)
    moved = dict(_moved_paths(tomllib.loads(text), read.path.resolve().parent, to.resolve().parent))
    to.parent.mkdir(parents=True, exist_ok=True)
    _put(to, writing.raw(rewritten(text, changed_values(asked, file) | moved)), read)
    return _again(to)


def copy_place(read: Kept) -> Path:
    """Return where a copy of a costume file goes: among the maker's, beside the notebooks."""
    folder = Path.cwd().parent / "measurements" / "costumes"
    names = (f"{read.path.stem}{end}.toml" for end in ("", *(f"-{n}" for n in range(2, 1000))))
    return next(folder / name for name in names if not (folder / name).exists())


def _as_written(given: Given, unit: str, old: object, file_unit: str | None) -> Value:
    """Return a value as the file writes its like; what stood in the file before, as it stood."""
    value: Any = given.value
    if unit == "mm" and given.source == "notebook":
        return length_as_written(Decimal(repr(parse_length(value, sign="any"))), old, file_unit)
    return value if isinstance(value, (bool, int, str)) else float(value)


def length_as_written(exact: Decimal, old: object, file_unit: str | None) -> str | float | int:
    """Return a length (mm) in the unit that `old` has in the file, exact to the last digit.

    >>> length_as_written(Decimal(780), "70 cm", "cm"), length_as_written(Decimal("82.55"), "3 in", "cm")
    ('78 cm', '3 1/4 in')
    >>> length_as_written(Decimal(90), 10, "cm"), length_as_written(Decimal("90.5"), None, "in")
    (9, '9.05 cm')
    >>> length_as_written(Decimal("109.22"), None, "in")
    '4.3 in'
    """
    bare = isinstance(old, (int, float)) and file_unit is not None
    name = file_unit if bare or not isinstance(old, str) else _unit_of(old)
    size = LENGTH_UNITS.get(name or "cm", Fraction(10))
    number = Fraction(exact) / size
    text = inches_written(number) if size == LENGTH_UNITS["in"] else _decimal(exact, size)
    if text is None or parse_length(text, name or "cm", sign="any") != float(exact):
        return f"{_decimal(exact, Fraction(10))} cm"
    if bare and " " not in text and "/" not in text:
        return int(number) if number.denominator == 1 else float(number)
    return f"{text} {name or 'cm'}"


def _unit_of(text: str) -> str:
    """Return the unit that a text ends in; cm where it names none."""
    word = text.strip().rpartition(" ")[2].lstrip("0123456789.,/").lower()
    return word if word in LENGTH_UNITS and word not in ("'", '"') else "cm"


def _decimal(exact: Decimal, size: Fraction) -> str | None:
    if size.denominator != 1 or size.numerator not in (1, 10, 1000):
        return None
    return plain_number(exact / size.numerator)


def _moved_paths(data: Mapping[str, Any], old: Path, new: Path) -> Iterator[tuple[Keys, str]]:
    """Yield every file that a costume names, as it is reached from another folder."""
    named: dict[Keys, Any] = {(key,): data[key] for key in FILES if key in data}
    named |= {("fabrics", role): value for role, value in data.get("fabrics", {}).items()}
    for keys, value in named.items():
        yield keys, Path(os.path.relpath(old / str(value), new)).as_posix()


def _put(place: Path, data: bytes, read: Kept) -> None:
    """Write a file whole or not at all; raises `InputError`."""
    try:
        put_whole(place, data)
    except OSError as error:
        raise _refused(place, f"cannot be written ({error.strerror})", read) from None


def _again(path: Path) -> tuple[CostumeFile, Kept]:
    costume = read_costume(path)
    return costume, Kept(path, path.resolve().read_bytes())


def _changed(path: Path) -> InputError:
    what = "this file was changed after it was read, and nothing was written"
    return _refused(path, what, right="run the page again from the top, then set your choices")


def _refused(path: Path, what: str, read: Kept | None = None, right: str = "") -> InputError:
    if read is not None:
        right = f"a copy would go to {copy_place(read)}: press Save a copy"
    return InputError([Fault(f"{path.name}: {what}", right, "", str(path))])
