"""Names of pieces that exist for one hand only: `front-left` is the front, of the left."""

from __future__ import annotations

HANDS = ("left", "right")


def stem(piece: str) -> str:
    """Return a piece's name without its hand.

    >>> stem("front-left"), stem("front")
    ('front', 'front')
    """
    return piece.removesuffix(f"-{hand(piece)}") if hand(piece) else piece


def hand(piece: str) -> str:
    """Return the hand a piece's name ends in, `left`, `right` or nothing.

    >>> hand("cuff-interfacing-right"), hand("cuff")
    ('right', '')
    """
    return next((name for name in HANDS if piece.endswith(f"-{name}")), "")
