"""How long each step takes, as a guess.

Minutes are guesses of a practised hand at home (from memory); the page lets a maker put her own in.
"""

from __future__ import annotations

SETTLING = 4.0
"""minutes to pin, baste the ends and thread for one seam (a guess)."""

A_METRE = {
    "join": 9.0,
    "press": 4.0,
    "gather": 12.0,
    "set in": 30.0,
    "hem": 20.0,
    "fell": 40.0,
    "face": 14.0,
    "bind": 16.0,
    "casing": 14.0,
    "baste": 6.0,
    "topstitch": 7.0,
}
"""minutes for a metre of seam by the kind of work (guesses); others as `join`."""

A_PIECE = {"button": 12.0, "fuse": 6.0, "bone": 15.0, "dart": 8.0, "fit": 45.0, "try": 15.0}
"""minutes for each by the kind of work (guesses)."""


def minutes(verb: str, length: float = 0.0, count: int = 0) -> float:
    """Return a guess for a step of this kind on `length` mm of seam, or on `count` things.

    >>> minutes("join", 1000), minutes("button", count=6)
    (13.0, 72.0)
    """
    if count:
        return A_PIECE.get(verb, SETTLING) * count
    return SETTLING + A_METRE.get(verb, A_METRE["join"]) * length / 1000
