"""What lies on the lay table, as plain data: a lay for each cloth, and the way back. No widgets."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from drafting.ground.frozen import freeze
from drafting.ground.lengths import told
from drafting.layout import Lay, OtherWay, moved, next_pose
from drafting.layout.moved import SNAP
from drafting.layout.packing.job import Kit

STEP = 10.5
"""mm: an arrow key moves no farther (ours)."""

DEPTH = 100
"""Steps back that are kept for each cloth (ours)."""


@dataclass(frozen=True)
class Lays:
    """The lay of each cloth as it stands, those before it and those taken back, and the one found."""

    now: Mapping[str, Lay]
    found: Mapping[str, Lay]
    before: Mapping[str, tuple[Lay, ...]] = field(default_factory=dict)
    after: Mapping[str, tuple[Lay, ...]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        freeze(self, "now", "found", "before", "after")

    def with_lay(self, lay: Lay) -> Lays:
        """Return the table after a change to one cloth's lay."""
        role = lay.role
        past = (*self.before.get(role, ()), self.now[role])[-DEPTH:]
        return Lays({**self.now, role: lay}, self.found, {**self.before, role: past}, {**self.after, role: ()})

    def renewed(self, lay: Lay) -> Lays:
        """Return the table after one cloth was laid anew: what was before no longer fits it."""
        role = lay.role
        return Lays(
            {**self.now, role: lay}, {**self.found, role: lay}, {**self.before, role: ()}, {**self.after, role: ()}
        )

    def bettered(self, lay: Lay, ask: bool) -> Lays:
        """Return the table after a search found a lay for one cloth; a longer one changes nothing.

        Where the search was not asked for (`ask` false), a lay that a hand has changed stays, and
        nothing is added to the way back.
        """
        role = lay.role
        old, best = self.found[role], better_lay(self.found[role], lay)
        if best is old:
            return self
        table = replace(self, found={**self.found, role: best})
        if self.now[role] is old and not ask:
            return replace(table, now={**self.now, role: best})
        return table.with_lay(best) if ask and best.length < self.now[role].length else table

    def undone(self, role: str) -> Lays:
        """Return the table one step back; itself where there is none."""
        past = self.before.get(role, ())
        if not past:
            return self
        return Lays(
            {**self.now, role: past[-1]},
            self.found,
            {**self.before, role: past[:-1]},
            {**self.after, role: (self.now[role], *self.after.get(role, ()))},
        )

    def redone(self, role: str) -> Lays:
        """Return the table with the last step back taken again."""
        coming = self.after.get(role, ())
        if not coming:
            return self
        return Lays(
            {**self.now, role: coming[0]},
            self.found,
            {**self.before, role: (*self.before.get(role, ()), self.now[role])},
            {**self.after, role: coming[1:]},
        )


def lays_of(lays: tuple[Lay, ...]) -> Lays:
    """Return the table as the search has filled it."""
    by_role = {lay.role: lay for lay in lays}
    return Lays(by_role, by_role)


def shifted(lay: Lay, outline: str, dx: float, dy: float, turn: bool = False, kit: Kit | None = None) -> Lay:
    """Return the lay with an outline moved by (dx, dy) mm, or turned; raises `DraftError`.

    A step of an arrow key does not snap: it would go back to where it came from. On cloth with a
    repeat it goes a whole repeat.
    """
    spot = next((s for s in lay.packing.spots if lay.id(s) == outline), None)
    if math.hypot(dx, dy) <= STEP:
        dx, dy = _to_repeat(dx, lay.job.strip.repeat), _to_repeat(dy, lay.job.strip.repeat_across)
    x, y = (spot.x + dx, spot.y + dy) if spot else (dx, dy)
    pose = next_pose(lay, outline) if turn and spot else None
    return moved(lay, outline, x, y, pose, SNAP if math.hypot(dx, dy) > STEP else 0.0, kit)


def _to_repeat(by: float, repeat: float | None) -> float:
    return math.copysign(repeat, by) if repeat and by else by


def better_lay(lay: Lay, other: Lay) -> Lay:
    """Return the shorter of two lays of one cloth, and the table of widths that either has.

    The table's rows for this width and wider ones are never longer than the lay itself.
    """
    others = other.others or lay.others
    best = lay if other.length >= lay.length - 1e-9 else other
    rows = tuple(_no_longer(row, best) for row in others)
    return lay if best is lay and rows == lay.others else replace(best, others=rows)


def _no_longer(row: OtherWay, lay: Lay) -> OtherWay:
    fits = row.lay == lay.lay and row.width >= lay.cloth.width and not lay.left_out
    if fits and row.length is not None and row.length > lay.cloth_length:
        return replace(row, length=lay.cloth_length)
    return row


def lay_words(lay: Lay, found: Lay) -> str:
    """Return length, buying length and what a hand has changed; its lengths as they are `told`."""
    said = (
        f"The pieces take {told(lay.cloth_length)}; buy {told(lay.buy_length, 'bought')}. "
        f"{100 * lay.utilisation:.0f} % of the cloth is used, {lay.words}."
    )
    apart = lay.length - found.length
    if abs(apart) < 0.05:
        return said
    way = "longer" if apart > 0 else "shorter"
    return f"{said} That is {told(abs(apart))} {way} than the lay that was found."
