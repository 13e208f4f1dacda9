"""What the page of style lines knows: the step being written, as the fields say it. No widgets."""

from __future__ import annotations

import json
import re
import tempfile
from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from drafting.alter.style.cut import cut_line
from drafting.alter.style.places import leg_into, spot_on, spot_point
from drafting.alter.style.pleat import pleat_lines
from drafting.costume.file import CostumeFile
from drafting.costume.make import Made, finished
from drafting.draft.draft import Draft
from drafting.draft.named import piece_named
from drafting.draft.piece import Piece
from drafting.geometry import Path as Line
from drafting.geometry import line
from drafting.ground.errors import Fault, InputError
from drafting.ground.frozen import freeze
from drafting.ground.units import ShownUnit
from drafting.notebook.bench.state import only_garment
from drafting.reading.cursor import opened
from drafting.reading.style import CutWish, DartWish, PleatWish, StyleWish, read_style
from drafting.reading.style_places import OutlinePlace

PLACE = re.compile(
    r"(?P<edge>[\w-]+)\s+(?:(?P<share>[\d.]+\s*%)|(?P<distance>-?[\d./ ]+\s*(?:mm|cm|in)?)|at\s+(?P<level>\w+))"
    r"(?:\s+from\s+(?P<beside>[\w-]+))?"
)
"""How a place is typed: `armhole 50 %`, `centre 11 cm from neck`, `side at waist`, or `dart bust_dart`."""

HOW = 'write it like "armhole 50 %", "centre 11 cm from neck", "side at waist" or "dart bust_dart"'


@dataclass(frozen=True)
class StepTyped:
    """A step as the fields of the page have it, by the keys of the costume file: every value a text."""

    garment: str
    values: Mapping[str, str]

    def __post_init__(self) -> None:
        freeze(self, "values")

    def toml(self, unit: ShownUnit) -> str:
        """Return the step as it stands in a costume file; raises `InputError` for a place that names none."""
        rows = [f"[[garments.{self.garment}.style]]"]
        for key, value in self.values.items():
            if not value.strip():
                continue
            if key in ("from", "to"):
                rows.append(f"{key} = {_place(value.strip(), key, unit)}")
            elif key == "number":
                rows.append(f"number = {value.strip()}")
            else:
                text = (
                    f"{value.strip()} {unit}" if key in LENGTHS and value.strip()[-1].isdigit() else value.strip()
                )
                rows.append(f"{key} = {json.dumps(text, ensure_ascii=False)}")
        return "\n".join(rows) + "\n"


LENGTHS = frozenset({"bow", "depth", "apart", "stitched", "start", "end"})
"""Keys whose values are lengths."""


def _place(text: str, key: str, unit: ShownUnit) -> str:
    if text.startswith("dart "):
        return f"{{ dart = {json.dumps(text.split(maxsplit=1)[1])} }}"
    found = PLACE.fullmatch(text)
    if found is None:
        raise InputError([Fault(f"{text} names no place", HOW, key)])
    parts = [("edge", found["edge"])]
    for name in ("share", "distance", "level", "beside"):
        if found[name]:
            bare = name == "distance" and found[name].strip()[-1].isdigit()
            parts.append((name, f"{found[name].strip()} {unit}" if bare else found[name].strip()))
    return "{ " + ", ".join(f"{name} = {json.dumps(value)}" for name, value in parts) + " }"


def typed_step(typed: StepTyped, unit: ShownUnit) -> StyleWish:
    """Return the step that the fields say, read as a file is; raises `InputError` with what is wrong."""
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder) / "step.toml"
        place.write_text(f'unit = "{unit}"\n{typed.toml(unit)}', "utf-8")
        table = opened(place)
        wishes = read_style(table.table("garments").table(typed.garment))
        table.refuse()
    return wishes[0]


def with_steps(costume: CostumeFile, garment: str, more: tuple[StyleWish, ...]) -> Made:
    """Return one garment of a costume drafted, with steps beyond those it has; raises `DraftError`."""
    asked = only_garment(costume, garment)
    worn = replace(asked.garments[0], style=(*asked.garments[0].style, *more))
    return finished(replace(asked, garments=(worn,)))


def shown_piece(draft: Draft, name: str) -> Piece:
    """Return the piece that a step names: where each hand has one, the left; raises `UnknownNameError`."""
    hands = [piece for piece in draft.pieces if name == piece.base and piece.hand == "left"]
    return hands[0] if hands and name not in draft else piece_named(draft, name)


def lines_of(draft: Draft, wish: StyleWish) -> Mapping[str, tuple[Line, ...]]:
    """Return the lines along which a step would cut or open its piece, by its name on the page.

    What is whole over the middle, its halves uneven, shows none. Raises `DraftError` where they run off.
    """
    piece = shown_piece(draft, wish.piece)
    if over_the_middle(piece):
        return {}
    if isinstance(wish, CutWish):
        return {piece.name: (cut_line(piece, wish),)}
    if isinstance(wish, PleatWish):
        return {piece.name: pleat_lines(piece, wish)}
    if isinstance(wish, DartWish) and wish.to is not None:
        tip = piece.edges[leg_into(piece, wish.dart)].path.end
        return {piece.name: (line(spot_point(piece, spot_on(piece, wish.to)), tip),)}
    return {}


def over_the_middle(piece: Piece) -> bool:
    """Return whether a piece was opened out over the middle for two hands that differ."""
    return any(edge.base for edge in piece.edges)


def ends_of_step(draft: Draft, wish: StyleWish) -> tuple[tuple[str, complex], ...]:
    """Return the places that a step names, each with its piece."""
    piece = shown_piece(draft, wish.piece)
    if isinstance(wish, CutWish | PleatWish) and not over_the_middle(piece):
        return tuple((piece.name, _point(piece, place)) for place in (wish.start, wish.end))
    return ()


def _point(piece: Piece, place: OutlinePlace) -> complex:
    return spot_point(piece, spot_on(piece, place))
