"""A sleeve's pitch: turned in its armhole, so that it hangs as the arm does."""

from __future__ import annotations

from drafting.draft.draft import Draft
from drafting.fitting.lines.altered import Altered, moves
from drafting.fitting.note import Moved
from drafting.shaping.sleeve.turned import turned, turned_by


def sleeve_turned(draft: Draft, forward: float) -> Altered:
    """Return a sleeve turned forward by `forward` mm along the seam of its armhole (less than 0: back).

    Its outline stays; where front and back cap begin and end, and its notches, move. What is told of each of
    its edges is how far the place that meets the shoulder lies behind the crown.
    """
    now = turned_by(draft)
    after = turned(draft, now + forward)
    why = f"sleeve turned {'forward' if forward > 0 else 'back'}: the shoulder seam behind its crown"
    edges = {(one.piece, one.edge) for one in moves(draft, after, why)}
    return Altered(after, tuple(Moved(piece, edge, now, now + forward, why) for piece, edge in sorted(edges)))
