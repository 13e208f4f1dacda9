"""The fittings of a costume on record: each note, what became of it, what it moved."""

from __future__ import annotations

from typing import Any

from drafting.costume.make import Made
from drafting.fitting.note import Done, Moved, Note
from drafting.ground.lengths import in_unit
from drafting.ground.units import ShownUnit


def fitting_rows(made: Made) -> list[dict[str, Any]]:
    """Return a row for every note of every fitting, in the order taken; lengths in mm.

    Notes that say the same place again share what they moved, which stands once, at the first that counts.
    """
    fittings, unit = made.costume.fittings, made.costume.told_in
    done = (*fittings.done, *(one for garment in made.garments for one in garment.done))
    by_spot = {one.note.spot: one for one in done}
    first = {note.spot: thread.note.spot for thread in fittings.threads for note in thread.said}
    days = {one.path: one for one in fittings.held}
    rows = []
    for note in (note for fitting in fittings.held for note in fitting.notes):
        held = days[note.spot.file]
        row = _row(note) | {"fitting": held.title, "on": held.on.isoformat() if held.on else None}
        own = by_spot.get(note.spot)
        again = own is None
        found = own or by_spot.get(first.get(note.spot, note.spot))
        rows.append(
            row | ({"carried": False, "said": "", "moved": []} if found is None else _became(found, unit, again))
        )
    return rows


def _row(note: Note) -> dict[str, Any]:
    return {
        "line": note.spot.line,
        "garment": note.garment,
        "side": note.side.value,
        "where": str(note.where),
        "at": {"mm": note.at.mm, "from": note.at.end} if note.at else None,
        "verb": note.verb.value,
        "amount": note.amount,
        "as": note.counted.value,
        "kind": note.kind.value,
        "state": note.state.value,
    }


def _became(done: Done, unit: ShownUnit, again: bool) -> dict[str, Any]:
    moved = [] if again else [_moved(one) for one in done.moved]
    return {"carried": done.carried, "said": in_unit(done.said, unit), "moved": moved}


def _moved(moved: Moved) -> dict[str, Any]:
    what = f"{moved.piece}.{moved.edge}" if moved.piece else moved.edge
    return {"what": what, "from": moved.before, "to": moved.after, "why": moved.why}
