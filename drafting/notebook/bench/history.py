"""Undo and redo: the earlier states of the bench are kept, as they never change. No widgets."""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.notebook.bench.state import Standing

STEPS = 60
"""States kept each way; one takes a fraction of a megabyte (ours)."""


@dataclass(frozen=True)
class History:
    """What stands `now`, what stood before it (the latest last), and what was undone (nearest first)."""

    now: Standing
    past: tuple[Standing, ...] = ()
    coming: tuple[Standing, ...] = ()

    def moved(self, new: Standing) -> History:
        """Return the history with a new state; a stroke that goes on is one step."""
        if new.moving is not None and new.moving == self.now.moving:
            return History(new, self.past)
        return History(new, (*self.past, self.now)[-STEPS:])

    def turned(self, new: Standing) -> History:
        """Return the history with another garment shown, which is no step."""
        return replace(self, now=new)

    def undone(self) -> History:
        """Return the history one step back; itself where there is none."""
        if not self.past:
            return self
        return History(_from(self.now, self.past[-1]), self.past[:-1], (self.now, *self.coming)[:STEPS])

    def redone(self) -> History:
        """Return the history with the last step back taken again."""
        if not self.coming:
            return self
        past = (*self.past, self.now)[-STEPS:]
        return History(_from(self.now, self.coming[0]), past, self.coming[1:])


def _from(now: Standing, then: Standing) -> Standing:
    """Return `then` as it is come back to: what stood a moment ago is its ghost, no stroke goes on."""
    before = now.made if now.garment == then.garment else None
    return replace(then, before=before, moving=None)
