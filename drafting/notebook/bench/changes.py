"""What changed since the last setting, in numbers: the largest changes first."""

from __future__ import annotations

import html
from collections.abc import Iterator
from typing import NamedTuple

from drafting.checks.girths import finished_girth
from drafting.checks.words import capital, edge_words, plain
from drafting.costume.garment import MadeGarment
from drafting.ground.units import LengthUnit
from drafting.notebook.bench.figures import length

ROWS = 8
"""Changes shown; how many more there are is said below (ours)."""

LEAST = 0.5
"""mm: what moved by less reads the same on a tape."""


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


def changes_html(before: MadeGarment | None, now: MadeGarment, unit: LengthUnit = "cm") -> str:
    """Return the table of what changed; a sentence where nothing did."""
    if before is None:
        return '<p class="changes">Nothing has been changed yet.</p>'
    found = changes(before, now)
    if not found:
        return '<p class="changes">No length of the pieces has changed.</p>'
    rows = "".join(_row(change, unit) for change in found[:ROWS])
    more = len(found) - ROWS
    rest = f"<p>and {more} smaller {'change' if more == 1 else 'changes'}</p>" if more > 0 else ""
    heads = "".join(f'<th scope="col">{name}</th>' for name in ("changed", "was", "is", "by"))
    return f'<table class="changes"><thead><tr>{heads}</tr></thead><tbody>{rows}</tbody></table>{rest}'


def _row(change: Change, unit: LengthUnit) -> str:
    was, now = (length(mm, unit) if mm else "none" for mm in (change.was, change.now))
    by = length(change.by, unit)
    by = by if by.startswith("-") else f"+{by}"
    cells = "".join(f"<td>{cell}</td>" for cell in (was, now, by))
    return f'<tr><th scope="row">{html.escape(change.what)}</th>{cells}</tr>'


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
