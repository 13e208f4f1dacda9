"""The fit chart as the records hold it: plain data, mm, fractions, seconds."""

from __future__ import annotations

from typing import Any

from drafting.costume.make import Made, MadeGarment
from drafting.ground.sources import printed
from drafting.making.fit.ease import EaseRow
from drafting.making.fit.moves import MoveRow
from drafting.making.fit.told import ease_of, moves_of


def fit_record(made: Made, garment: MadeGarment) -> dict[str, Any]:
    """Return ease by level and movement of one garment on the wearer of its costume."""
    return {
        "garment": garment.name,
        "ease": [_ease(row) for row in ease_of(made, garment)],
        "movement": [_move(row) for row in moves_of(made, garment)],
    }


def _ease(row: EaseRow) -> dict[str, Any]:
    return {
        "level": row.level,
        "side": row.side,
        "across": row.across,
        "body": row.body,
        "left_bare": row.inside,
        "garment": row.drawn,
        "layer": row.layer,
        "ease": row.ease,
        "band": None if row.band is None else [row.band.low, row.band.high],
        "band_source": None if row.band is None else printed(row.band.source),
        "stretch_needed": row.needs,
        "stretch_given": row.gives,
        "verdict": row.verdict,
    }


def _move(row: MoveRow) -> dict[str, Any]:
    return {
        "movement": row.movement,
        "level": row.level,
        "have": row.have,
        "low": row.low,
        "high": row.high,
        "unit": row.unit,
        "verdict": row.verdict,
        "source": printed(*row.sources),
    }
