"""What a step would do, drawn on the pieces before it is done: its lines and its places, by piece. Pure."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from drafting.alter.pocket import pocket_line
from drafting.alter.style.apply import styled
from drafting.alter.style.cut_over_dart import lines_to_cut
from drafting.alter.style.godet import slash_line
from drafting.alter.style.places import leg_into, spot_on, spot_point
from drafting.alter.style.pleat import pleat_lines
from drafting.draft.draft import Draft
from drafting.draft.named import edge_named, piece_named
from drafting.draft.piece import EdgeKind, Piece
from drafting.geometry import Path as Line
from drafting.geometry import line
from drafting.notebook.style.state import AnyStep
from drafting.reading.pockets import PocketWish
from drafting.reading.style import CutWish, DartWish, JoinWish, PleatWish, ShiftWish
from drafting.reading.style_made import CornerWish, EdgingWish, GodetWish
from drafting.reading.style_places import OutlinePlace

PieceLines = Mapping[str, tuple[Line, ...]]


def shown_piece(draft: Draft, name: str) -> Piece:
    """Return the piece that a step names: where each hand has one, the left; raises `UnknownNameError`."""
    hands = [piece for piece in draft.pieces if name == piece.base and piece.hand == "left"]
    return hands[0] if hands and name not in draft else piece_named(draft, name)


def lines_of(draft: Draft, step: AnyStep) -> PieceLines:
    """Return the lines along which a step would change its pieces, by their names on the page.

    What is whole over the middle, its halves uneven, shows none. Raises `DraftError` where they run off.
    """
    if isinstance(step, EdgingWish):
        return _of_edges(draft, step.edges)
    piece = shown_piece(draft, step.piece)
    if over_the_middle(piece):
        return {}
    own: Any = step if piece.name == step.piece else replace(step, piece=piece.name)
    return {piece.name: _lines(draft, piece, own)}


def _of_edges(draft: Draft, refs: tuple[tuple[str, str], ...]) -> PieceLines:
    found: dict[str, tuple[Line, ...]] = {}
    for name, edge in refs:
        piece = shown_piece(draft, name)
        if not over_the_middle(piece):
            found[piece.name] = (*found.get(piece.name, ()), edge_named(piece, edge).path)
    return found


def _lines(draft: Draft, piece: Piece, step: AnyStep) -> tuple[Line, ...]:
    if isinstance(step, CutWish):
        return lines_to_cut(draft, step)
    if isinstance(step, PleatWish):
        return pleat_lines(piece, step)
    if isinstance(step, DartWish):
        leg = piece.edges[leg_into(piece, step.dart)]
        return (line(_point(piece, step.to), leg.path.end),) if step.to else (leg.path,)
    if isinstance(step, JoinWish):
        return (edge_named(piece, step.edge).path,)
    if isinstance(step, GodetWish):
        return (slash_line(piece, step),) if step.at else _opened(piece, step)
    if isinstance(step, CornerWish):
        return tuple(styled(draft, step)[piece.name][name].path for name in (step.edge, step.beside))
    if isinstance(step, ShiftWish):
        return (styled(draft, step)[piece.name][step.edge].path,)
    if isinstance(step, PocketWish):
        return (pocket_line(draft, piece, step),)
    return ()


def _opened(piece: Piece, step: GodetWish) -> tuple[Line, ...]:
    """Return the part of a seam that would be opened, from the end that lies at a hem."""
    edge = edge_named(piece, step.edge)
    after = piece.edges[(piece.index(edge.name) + 1) % len(piece.edges)]
    high = min(step.height, edge.length)
    at_end = after.kind in (EdgeKind.HEM, EdgeKind.FREE)
    return (edge.path.part(edge.length - high, edge.length) if at_end else edge.path.part(0.0, high),)


def over_the_middle(piece: Piece) -> bool:
    """Return whether a piece was opened out over the middle for two hands that differ."""
    return any(edge.base for edge in piece.edges)


def ends_of_step(draft: Draft, step: AnyStep) -> tuple[tuple[str, complex], ...]:
    """Return the places that a step names, each with its piece."""
    piece = shown_piece(draft, step.piece)
    if over_the_middle(piece):
        return ()
    places: tuple[OutlinePlace | None, ...] = ()
    if isinstance(step, CutWish | PleatWish):
        places = (step.start, step.end)
    elif isinstance(step, GodetWish):
        places = (step.at,)
    elif isinstance(step, PocketWish):
        places = (OutlinePlace(step.edge, share=step.along),)
    return tuple((piece.name, _point(piece, place)) for place in places if place)


def _point(piece: Piece, place: OutlinePlace) -> complex:
    return spot_point(piece, spot_on(piece, place))
