"""What the page of style lines knows: the step being written, as the fields say it. No widgets."""

from __future__ import annotations

import json
import re
import tempfile
from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from drafting.costume.file import CostumeFile
from drafting.costume.make import Made, finished
from drafting.ground.errors import Fault, InputError
from drafting.ground.frozen import freeze
from drafting.ground.lengths import told
from drafting.ground.units import ShownUnit
from drafting.notebook.bench.state import only_garment
from drafting.notebook.style.fields import LENGTHS, POCKET
from drafting.reading.cursor import opened
from drafting.reading.pockets import ON_EDGE, PocketWish, read_pockets
from drafting.reading.style import StyleWish, read_style

AnyStep = StyleWish | PocketWish

PLACE = re.compile(
    r"(?P<edge>[\w-]+)\s+(?:(?P<share>[\d.]+\s*%)|(?P<distance>-?[\d./ ]+\s*(?:mm|cm|in)?)|at\s+(?P<level>\w+))"
    r"(?:\s+from\s+(?P<beside>[\w-]+))?"
)
"""How a place is typed: `armhole 50 %`, `centre 11 cm from neck`, `side at waist`, or `dart bust_dart`."""

HOW = f'write it like "armhole 50 %", "centre {told(110.0)} from neck", "side at waist" or "dart bust_dart"'


@dataclass(frozen=True)
class StepTyped:
    """A step as the fields of the page have it, by the keys of the costume file: every value a text."""

    garment: str
    values: Mapping[str, str]

    def __post_init__(self) -> None:
        freeze(self, "values")

    @property
    def table(self) -> str:
        """The table that it stands in."""
        return "pockets" if self.values["do"] == POCKET else "style"

    def toml(self, unit: ShownUnit) -> str:
        """Return the step as it stands in a costume file; raises `InputError` for a place that names none."""
        rows = [f"[[garments.{self.garment}.{self.table}]]"]
        for key, value in self.values.items():
            if value.strip() and not (self.table == "pockets" and (key == "do" or self._at_edge(key))):
                rows += _written(key, value.strip(), unit, pocket=self.table == "pockets")
        return "\n".join(rows) + "\n"

    def _at_edge(self, key: str) -> bool:
        """Return whether a key has no meaning for a pocket whose mouth lies at its edge."""
        return key in ("inside", "corners") and self.values.get("pocket") in ON_EDGE


def _written(key: str, value: str, unit: ShownUnit, *, pocket: bool) -> list[str]:
    """Return the rows that say one field in a costume file."""
    if key == "from" and pocket:
        found = PLACE.fullmatch(value)
        if found is None or not found["share"]:
            raise InputError([Fault(f"{value} names no place", 'write it like "style_line 50 %"', key)])
        share = float(found["share"].rstrip("% ")) / 100
        return [f"edge = {_quoted(found['edge'])}", f"along = {share:.4g}"]
    if key in ("from", "to"):
        return [f"{key} = {_place(value, key, unit)}"]
    if key == "number":
        return [f"number = {value}"]
    if key == "interfacing":
        return [] if value == "yes" else ["interfacing = false"]
    if key == "edges":
        names = [one.strip() for one in value.split(",") if one.strip()]
        return (
            [f"edge = {_quoted(names[0])}"] if len(names) == 1 else [f"edges = [{', '.join(map(_quoted, names))}]"]
        )
    text = f"{value} {unit}" if key in LENGTHS and value[-1].isdigit() else value
    return [f"{'kind' if key == 'pocket' else key} = {_quoted(text)}"]


def _quoted(text: str) -> str:
    return json.dumps(text, ensure_ascii=False)


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


def typed_step(typed: StepTyped, unit: ShownUnit) -> AnyStep:
    """Return the step that the fields say, read as a file is; raises `InputError` with what is wrong."""
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder) / "step.toml"
        place.write_text(f'unit = "{unit}"\n{typed.toml(unit)}', "utf-8")
        table = opened(place)
        garment = table.table("garments").table(typed.garment)
        wishes: tuple[AnyStep, ...] = (
            read_pockets(garment, ()) if typed.table == "pockets" else read_style(garment)
        )
        table.refuse()
    return wishes[0]


def with_steps(costume: CostumeFile, garment: str, more: tuple[AnyStep, ...]) -> Made:
    """Return one garment of a costume drafted, with steps beyond those it has; raises `DraftError`."""
    asked = only_garment(costume, garment)
    own = asked.garments[0]
    style = (*own.style, *(one for one in more if not isinstance(one, PocketWish)))
    pockets = (*own.pockets, *(one for one in more if isinstance(one, PocketWish)))
    return finished(replace(asked, garments=(replace(own, style=style, pockets=pockets),)))
