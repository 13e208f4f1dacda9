"""What changed since the last setting, in numbers: the largest changes first."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from drafting.checks.girths import finished_girth
from drafting.checks.words import capital, edge_words, plain
from drafting.costume.choices import block_named, garment_choices
from drafting.costume.garment import MadeGarment
from drafting.ground.templates import Html, macros
from drafting.ground.units import LengthUnit
from drafting.notebook.bench.controls import label, value_shown
from drafting.notebook.bench.figures import length

ROWS = 8
"""Changes shown; how many more there are is said below (ours)."""

NAMED = 3
"""Changes named in the line under the picture (ours)."""

LEAST = 0.5
"""mm: what moved by less reads the same on a tape."""


NONE = ("0", "-0", "0.0")
"""How a length reads that is none."""


class Change(NamedTuple):
    """One figure before and after, mm; 0 stands for a figure that there is not."""

    what: str
    was: float
    now: float

    @property
    def by(self) -> float:
        return self.now - self.was


def changes(before: MadeGarment, now: MadeGarment) -> list[Change]:
    """Return every girth, sewn edge and cut piece that changed, the largest change first."""
    was, new = dict(_figures(before)), dict(_figures(now))
    rows = (Change(name, was.get(name, 0.0), new.get(name, 0.0)) for name in {**was, **new})
    return sorted((c for c in rows if abs(c.by) >= LEAST), key=lambda c: -abs(c.by))


def _seen(before: MadeGarment, now: MadeGarment, unit: LengthUnit) -> list[Change]:
    """Return the changes that a tape in `unit` shows: an eighth of an inch is coarser than a millimetre."""
    return [change for change in changes(before, now) if length(change.by, unit) not in NONE]


def changes_html(before: MadeGarment | None, now: MadeGarment, unit: LengthUnit = "cm") -> Html:
    """Return the table of what changed; a sentence where nothing did."""
    said = macros(__file__)
    if before is None:
        return Html(said.nothing("Nothing has been changed yet."))
    found = _seen(before, now, unit)
    if not found:
        return Html(said.nothing("No length of the pieces has changed."))
    rows = [(change.what, *_lengths(change, unit)) for change in found[:ROWS]]
    return Html(said.table(rows, len(found) - ROWS))


def changed_html(before: MadeGarment | None, now: MadeGarment, unit: LengthUnit = "cm") -> Html:
    """Return one line: which choices were changed, and the largest changes that this made."""
    said = macros(__file__)
    if before is None:
        return Html(said.line("Move a slider: what it changes is told here.", ()))
    asked = ", ".join(_asked(before, now, unit))
    found = _seen(before, now, unit)
    rows = [f"{change.what} {_lengths(change, unit)[2]} {unit}" for change in found[:NAMED]]
    more = [f"{len(found) - NAMED} more below"] if len(found) > NAMED else []
    return Html(said.line(asked, (*rows, *more) or ("no length has changed",)))


def _asked(before: MadeGarment, now: MadeGarment, unit: LengthUnit) -> Iterator[str]:
    known = {choice.name: choice for choice in garment_choices(block_named(now.block))}
    for name, (value, _) in now.choices.items():
        was, _ = before.choices.get(name, (value, ""))
        if was != value and name in known:
            shown = (value_shown(known[name], each, unit) for each in (was, value))
            yield f"{label(known[name])} {' to '.join(shown)}"


def _lengths(change: Change, unit: LengthUnit) -> tuple[str, str, str]:
    was, now = (length(mm, unit) if mm else "none" for mm in (change.was, change.now))
    by = length(change.by, unit)
    return was, now, by if by.startswith("-") else f"+{by}"


def _figures(garment: MadeGarment) -> Iterator[tuple[str, float]]:
    """Yield the name and length (mm) of all that is told of a garment; linings follow the cloth."""
    draft = garment.draft
    for girth in draft.girths:
        drawn = finished_girth(draft, girth.level, girth.side)
        if drawn is not None:
            yield f"{capital(f'{girth.side} {plain(girth.level)}'.strip())}, girth", drawn
    for piece in (piece for piece in draft.pieces if not piece.material):
        for edge in piece.edges:
            yield f"{capital(edge_words((piece.name, edge.name)))}, edge", edge.sewn_length
    for cut in (cut for cut in garment.pattern.pieces if not cut.piece.material):
        x0, y0, x1, y1 = cut.cut.bounds
        name = capital(plain(cut.piece.name))
        yield f"{name}, cut width", x1 - x0
        yield f"{name}, cut height", y1 - y0
