"""Which garments of a costume a view is for, and what is said where there is none. No widgets."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from drafting.checks.words import plain
from drafting.costume.choices import block_named, parts_of
from drafting.costume.file import CostumeFile, Garment
from drafting.costume.make import Made
from drafting.ground.errors import Fault, InputError
from drafting.notebook.living.parts import choices_in
from drafting.reading.text import read_text
from drafting.reading.toml import parse_toml


def garments_with(
    costume: CostumeFile, choices: tuple[str, ...], parts: tuple[str, ...], *, every: bool = False
) -> tuple[str, ...]:
    """Return the names of the garments that have one of the parts and one of the choices (all, where none is
    named); `every` asks for no choice."""
    wanted = () if every else choices
    return tuple(g.name for g in costume.garments if _has(costume, g, wanted, parts))


def _has(costume: CostumeFile, garment: Garment, choices: tuple[str, ...], parts: tuple[str, ...]) -> bool:
    try:
        block = block_named(garment.block)
    except InputError:
        return False
    made_of = {*parts_of(block), block.name}
    known = choices_in(costume, garment.name)
    return (not parts or not made_of.isdisjoint(parts)) and (not choices or any(c in known for c in choices))


def known_choices(costume: CostumeFile, garments: tuple[str, ...], choices: tuple[str, ...]) -> tuple[str, ...]:
    """Return those of the choices that one of the garments has."""
    known = {name for garment in garments for name in choices_in(costume, garment)}
    return tuple(name for name in choices if name in known)


def nothing_words(costume: CostumeFile, choices: tuple[str, ...], parts: tuple[str, ...]) -> str:
    """Return why there is nothing to move, and what the costume has instead."""
    wanted = _or(parts) if parts else ", ".join(map(plain, choices[:2]))
    has = ", ".join(f"{plain(g.name)} ({plain(g.block)})" for g in costume.garments)
    wanted = wanted.replace("-", " ")
    if (
        parts and choices and any(plain(part) in has for part in parts)
    ):  # one of that name, without what is moved here
        wanted = f"{wanted} with {plain(choices[0])}"
    return f"{costume.title} has no {wanted}, so there is nothing to move here. It has: {has}."


def _or(names: tuple[str, ...]) -> str:
    *most, last = map(plain, names)
    return f"{', '.join(most)} or {last}" if most else last


def not_drawn(made: Made, picture: str) -> str:
    """Return which pieces of the garment shown are missing from its picture; empty where none is."""
    garment = made.garments[0]
    names = (piece.piece.name for piece in garment.pattern.pieces)
    missing = [name for name in names if f'id="{garment.name}.{name}.cut-line"' not in picture]
    return f"{garment.name}: {', '.join(missing)} is not in the picture." if missing else ""


def wearer_file(costume: Path) -> Path:
    """Return the body file that a costume names; raises `InputError` where it names none."""
    wearer = _named_in(costume).get("wearer")
    if not isinstance(wearer, str):
        raise InputError([Fault("names no wearer", 'write wearer = "my-wearer.toml"', "wearer", str(costume))])
    return costume.parent / wearer


def cloth_files(costume: Path) -> dict[str, Path]:
    """Return the cloth files that a costume names, by role; raises `InputError` where it names none."""
    fabrics = _named_in(costume).get("fabrics")
    found = fabrics.items() if isinstance(fabrics, dict) else ()
    files = {role: costume.parent / file for role, file in found if isinstance(file, str)}
    if not files:
        right = 'write shell = "my-cloth.toml" under [fabrics]'
        raise InputError([Fault("names no cloth", right, "fabrics", str(costume))])
    return files


def _named_in(costume: Path) -> Mapping[str, object]:
    """Return what can be read of a costume file, though it may have faults; raises `InputError`."""
    return parse_toml(read_text(costume), str(costume)).data
