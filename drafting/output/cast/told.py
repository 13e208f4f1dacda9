"""What a record keeps of a wearer who was made: bare facts, from which every page over all is drawn."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import asdict
from itertools import islice
from typing import Any

from drafting.body import Body
from drafting.costume.file import CostumeFile
from drafting.costume.garment import MadeGarment, drafted
from drafting.costume.make import Made
from drafting.costume.mock_up import laid_to_try
from drafting.costume.next_measure import BETTER, garments_of, those_that_move
from drafting.costume.watched import watched
from drafting.ground.errors import Fault
from drafting.ground.findings import Finding, said_once
from drafting.making import planned
from drafting.output.cast.let_out import let_out

MADE, REFUSED = "made", "refused"

TO_TAKE = 5
"""Estimates named that should be taken (ours: as many as `drafting body` names)."""


def told_of(made: Made, findings: tuple[Finding, ...], key: str) -> dict[str, Any]:
    """Return what is kept of a wearer who was made; `findings` are all that were found, printing included.

    Lengths in mm, sentences in the costume's unit. `made` has its lays.
    """
    costume, unit = made.costume, made.costume.told_in
    body = costume.wearer
    said = said_once(findings, unit)
    bought = planned(made, laid_to_try(made)).shopping if made.lays else ()
    return {
        "schema": 1,
        "key": key,
        "status": MADE,
        "reasons": [],
        "measured_on": body.measured_on,
        "measures": {name: _measure(body, name) for name in body.measures},
        "doubted": [[one.where, one.sentence] for one in said_once(body.findings, unit) if one.level != "note"],
        "take": list(_to_take(costume)),
        "checks": [[one.level, one.where, one.sentence] for one in said if one.level in ("warning", "error")],
        "garments": [_garment(made, garment) for garment in made.garments],
        "lays": {lay.role: {"lay": lay.lay, "length": lay.cloth_length} for lay in made.lays},
        "shopping": [asdict(row) | {"parts": []} for row in bought],
    }


def told_why(faults: tuple[Fault, ...], key: str = "") -> dict[str, Any]:
    """Return what is kept of a wearer who cannot be made."""
    return {
        "schema": 1,
        "key": key,
        "status": REFUSED,
        "reasons": [str(fault) for fault in faults],
        "measured_on": "",
        "measures": {},
        "doubted": [],
        "take": [],
        "checks": [],
        "garments": [],
        "lays": {},
        "shopping": [],
    }


def _measure(body: Body, name: str) -> dict[str, Any]:
    measure = body.measures[name]
    hands = {} if measure.left is None else {"left": measure.left, "right": measure.right}
    return {"mm": measure.mm, "source": measure.source, **hands}


def _to_take(costume: CostumeFile) -> Iterator[dict[str, Any]]:
    """Yield the estimates that move an outline and that may be farthest off, the farthest first.

    How far each of them would move it is what `drafting body --costume` reckons, in seconds a wearer.
    """
    asked: set[str] = set()
    garments = garments_of(costume, costume.wearer)
    body = watched(costume.wearer, asked)
    for one in garments:
        drafted(body, one.fabric, one.block, one.chosen)
    measures = costume.wearer.measures
    guessed = [name for name in measures if name in asked and measures[name].source == "estimated"]
    off = {name: 2 * (measures[name].sd or 0.0) for name in guessed if BETTER.get(name) not in guessed}
    ranked = sorted(off, key=lambda name: (-off[name], name))
    for name in islice(those_that_move(costume.wearer, ranked, garments), TO_TAKE):
        yield {"measure": name, "mm": measures[name].mm, "off": off[name]}


def _garment(made: Made, garment: MadeGarment) -> dict[str, Any]:
    fabric = made.costume.fabrics.get(garment.fabric)
    return {
        "garment": garment.name,
        "block": garment.block,
        "cloth": fabric.title if fabric else garment.fabric,
        "pieces": len(garment.pattern.pieces),
        "girths": [
            [" ".join(filter(None, (girth.level, girth.side))), girth.body, girth.body + girth.settled_ease]
            for girth in garment.draft.girths
            if not girth.width
        ],
        "let_out": let_out(garment),
    }
