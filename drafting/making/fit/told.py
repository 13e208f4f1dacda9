"""The fit chart in words: tables that the plan and the fitting sheet show alike."""

from __future__ import annotations

from drafting.checks.words import capital, plain
from drafting.costume.garment import MadeGarment
from drafting.costume.make import Made
from drafting.fitting.moving import Movement
from drafting.ground.lengths import told
from drafting.ground.sources import printed
from drafting.making.fit.ease import EaseRow, ease_rows
from drafting.making.fit.moves import MoveRow, MoveUnit, move_rows
from drafting.making.model import Table

HEADS = {
    "table.ease": ("where", "body", "garment", "ease", "band", "cloth", "verdict"),
    "table.moves": ("where", "movement", "there", "asked", "verdict", "source"),
}

ROUND = {
    Movement.ARMS_UP: "hem rises",
    Movement.HUG: "back and sleeves give",
    Movement.BENT_ARM: "stretch left along the arm",
    Movement.SIT: "left at the hip",
    Movement.STAIRS: "left at the thigh",
    Movement.KNEE: "stretch left along the leg",
    Movement.BREATH: "left at the bust",
    Movement.CHANGE: "to get in and close",
}
"""What the number of each movement is."""


def fit_tables(made: Made, garments: tuple[MadeGarment, ...], named: bool = True) -> tuple[Table, ...]:
    """Return the fit chart of these garments: ease by level, then movement; lengths as they are `told`.

    With `named` each row begins with its garment.
    """
    ease = [_ease_cells(row, named) for garment in garments for row in ease_of(made, garment)]
    moves = [_move_cells(row, named) for garment in garments for row in moves_of(made, garment)]
    found = (
        Table(key, tuple(f"head.{head}" for head in HEADS[key]), tuple(cells))
        for key, cells in (("table.ease", ease), ("table.moves", moves))
    )
    return tuple(table for table in found if table.rows)


def ease_of(made: Made, garment: MadeGarment) -> tuple[EaseRow, ...]:
    """Return the ease of a garment on the wearer of its costume."""
    return tuple(ease_rows(garment, made.costume.wearer, made.costume.fabrics.get(garment.fabric)))


def moves_of(made: Made, garment: MadeGarment) -> tuple[MoveRow, ...]:
    """Return how a garment moves with the wearer of its costume."""
    return tuple(move_rows(garment, made.costume.wearer, made.costume.fabrics.get(garment.fabric)))


SEEN = 1.0
"""mm of ease that a tape shows; less is none (common practice: a tape is read to the mm)."""


def _ease_cells(row: EaseRow, named: bool) -> tuple[str, ...]:
    bare = f", {told(row.inside)} of it left bare" if row.inside else ""
    place = capital(f"{row.side} {plain(row.level)}".strip()) + bare
    band = "-" if row.band is None else _from_to(row.band.low, row.band.high)
    gives = f"{100 * row.gives:.0f} %"
    cloth = f"{100 * row.needs:.0f} % of {gives}" if row.needs > 0 else f"gives {gives}"
    source = f" ({printed(row.band.source)})" if row.band else ""
    return (
        f"{row.garment}: {place}" if named else place,
        told(row.body),
        told(row.drawn),
        told(row.ease if abs(row.ease) >= SEEN else 0.0),
        f"{band}{source}",
        cloth,
        row.verdict.value,
    )


def _from_to(low: float, high: float | None) -> str:
    return f"{told(low)} or more" if high is None else f"{told(low)} to {told(high)}"


def _move_cells(row: MoveRow, named: bool) -> tuple[str, ...]:
    move, more = capital(row.movement.value), row.low <= row.high
    asked = (
        f"{_shown(row.low, row.unit)} to {_shown(row.high, row.unit)}"
        if more
        else f"at most {_shown(row.high, row.unit)}"
    )
    return (
        f"{row.garment}: {move}" if named else move,
        ROUND[row.movement],
        _shown(row.have, row.unit),
        asked,
        row.verdict.value,
        printed(*row.sources),
    )


def _shown(value: float, unit: MoveUnit) -> str:
    if unit == "mm":
        return told(value)
    return f"{100 * value:.0f} %" if unit == "share" else f"{value:.0f} s"
