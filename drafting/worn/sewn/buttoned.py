"""Fronts that lap over each other and are held by buttons alone: middle on middle at each, free elsewhere."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from drafting.draft.frame import BodyFrame
from drafting.draft.level_closings import drawn_waist
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole
from drafting.geometry.curve import Points
from drafting.ground import tolerances as tol
from drafting.worn.nouns import Reals, Whole
from drafting.worn.sewn.chosen import SewnParts
from drafting.worn.sewn.guides import BUTTON, FRONT, HOLE, ROLL
from drafting.worn.sewn.joined import Merged
from drafting.worn.sewn.rings import fine


def held_by_buttons(pieces: SewnParts, said: Mapping[str, BodyFrame], whole: Merged) -> dict[str, Whole]:
    """Return for each front that laps over the middle its sewn vertices there, one at each of `closing_heights`.

    A garment whose middle in front is cut there is shut all along and has none.
    """
    found = {}
    for piece in pieces.shell:
        chain = whole.flat_inner(piece.name, FRONT) if said[piece.name].front else NONE
        heights = closing_heights(piece)
        if len(chain) and heights:
            gaps = np.abs(whole.flat[chain, 1][:, None] - heights)
            found[piece.name] = whole.merged[chain[gaps.argmin(axis=0)]]
    return found


def button_stops(
    pieces: SewnParts, lines: Mapping[str, Mapping[str, Points]]
) -> Mapping[str, Mapping[str, Reals]]:
    """Return for each piece where on its middle in front, mm along it, the buttons hold it."""
    found: dict[str, dict[str, Reals]] = {}
    for piece in pieces.shell:
        line, heights = lines[piece.name].get(FRONT), closing_heights(piece)
        found[piece.name] = {}
        if line is not None and heights and (fall := (line[0] - line[-1]).imag):
            shares = (line[0].imag - np.array(heights)) / fall
            found[piece.name][FRONT] = shares * abs(line[-1] - line[0])
    return found


def closing_heights(piece: Piece) -> list[float]:
    """Return the heights y on a piece of the buttons that close it, mm: none above the break of a lapel.

    Buttons above it stand on cloth that is turned over, or are for show (common practice). A hand that has holes
    alone is closed at these.
    """
    if not any(edge.role is EdgeRole.FRONT_EDGE for edge in piece.edges):
        return []
    breaks = [min(m.path.start.imag, m.path.end.imag) for m in piece.placements if m.what == ROLL]
    buttons, holes = ([m for m in piece.placements if m.what == what] for what in (BUTTON, HOLE))
    middles = [fine(mark.path).imag.mean() for mark in buttons or holes]
    return [float(y) for y in middles if y <= min(breaks, default=np.inf) + tol.CLOSED]


def hand_to_hand(pieces: SewnParts, held: Mapping[str, Whole]) -> Whole:
    """Return the pairs (K, 2) of a whole garment's fronts that are buttoned together: by height over the waist."""
    pairs = [np.zeros((0, 2), dtype=np.int64)]
    for name, own in held.items():
        left = pieces.draft[name]
        for other, theirs in held.items():
            right = pieces.draft[other]
            if (left.hand, right.hand) == ("left", "right") and left.base == right.base:
                a, b = level_pairs(_over_waist(left), _over_waist(right))
                pairs.append(np.column_stack([own[a], theirs[b]]))
    return np.concatenate(pairs)


def level_pairs(left: Reals, right: Reals) -> tuple[Whole, Whole]:
    """Return which heights of two hands are buttoned together, by their numbers: each other's nearest."""
    apart = np.abs(left[:, None] - right)
    near = apart.argmin(axis=1)
    own = np.flatnonzero(apart.argmin(axis=0)[near] == np.arange(len(left)))
    return own, near[own]


def _over_waist(piece: Piece) -> Reals:
    return np.array(closing_heights(piece)) - drawn_waist(piece)


NONE: Whole = np.zeros(0, dtype=np.int64)
"""No vertices."""
