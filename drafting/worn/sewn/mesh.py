"""A garment's draft as one sewn mesh."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from types import MappingProxyType

import numpy as np

from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.frame import BodyFrame, Limb, Straight
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole, Half
from drafting.geometry.curve import Points
from drafting.ground.errors import DraftError
from drafting.worn.nouns import Ply, Reals, SewnMesh, SewnPiece, Truth, Whole
from drafting.worn.sewn.buttoned import button_stops, hand_to_hand, held_by_buttons
from drafting.worn.sewn.chosen import SewnParts, sewn_parts
from drafting.worn.sewn.closed import middle_sides, shut_sides, vent_folds, worn_seams
from drafting.worn.sewn.folds import folded
from drafting.worn.sewn.frames import frames, runs_behind
from drafting.worn.sewn.guides import BACK, FRONT, HOLE, ROLL, inner_lines, marked_ends, with_middle
from drafting.worn.sewn.joined import Merged, all_merged, finer, meshed_piece
from drafting.worn.sewn.layers import added_weight, layers_of, plies_by_triangle
from drafting.worn.sewn.levels import mesh_levels
from drafting.worn.sewn.rings import PieceRing
from drafting.worn.sewn.rods import drafted_rods
from drafting.worn.sewn.stations import NEAR, stations
from drafting.worn.sewn.strung import banded, elastics, free_folds, on_facings, tied
from drafting.worn.sewn.turned_back import caught_to_seams

ROUNDS = 4
"""How often an outline is made finer where two sides of a piece come near each other (ours)."""


NOT_FUSED: Mapping[str, Ply] = MappingProxyType({})


def sewn_mesh(
    draft: Draft, name: str, plies: Mapping[str, Ply], mesh: float = 20.0, *, fused: Mapping[str, Ply] = NOT_FUSED
) -> SewnMesh:
    """Return a garment's draft sewn up as one mesh of about `mesh` mm.

    `plies` are the cloths by the role of their material, "" the garment's own; `fused` the garment's own with
    the interfacing of that role fused to it, as one (else it counts as a loose layer). A garment whose sides
    are alike is halved: its left half, whose middle stays in x = 0. Raises `DraftError` where a piece cannot
    be meshed.
    """
    pieces = sewn_parts(draft)
    rings = {piece.name: folded(piece) for piece in pieces.shell}
    said = frames(pieces.draft, pieces.shell)
    if not pieces.halved:
        said = {name: with_middle(ring, said[name]) for name, ring in rings.items()}
    lines = {name: inner_lines(ring, said[name]) for name, ring in rings.items()}
    whole = _meshed(pieces, rings, lines, mesh, button_stops(pieces, lines))
    sides = middle_sides(pieces, rings)
    front, back = on_middles(pieces, rings, said, whole)
    behind = [layers_of(pieces, ring) for ring in rings.values()]
    stacks, ply = plies_by_triangle(whole, [p.cloth for p in pieces.shell], behind, plies, fused)
    shut = [] if pieces.halved else shut_sides(pieces, rings)
    held = held_by_buttons(pieces, said, whole)
    return SewnMesh(
        garment=name,
        halved=pieces.halved,
        pieces=tuple(_sewn_piece(piece, said[piece.name]) for piece in pieces.shell),
        plies=stacks,
        flat=whole.flat,
        triangles=whole.triangles,
        merged=whole.merged,
        piece=whole.piece,
        ply=ply,
        count=whole.count,
        on_middle=_kept_on_middle(sides, held, whole) if pieces.halved else np.zeros(whole.count, dtype=bool),
        added=added_weight(pieces, rings, whole, behind, plies),
        folds=free_folds(rings, whole, worn_seams(pieces, rings)),
        tied=np.concatenate(
            [tied(pieces, whole, shut), hand_to_hand(pieces, held), caught_to_seams(pieces, whole)]
        ),
        edges={(n, side.name): whole.along((n, side.name)) for n, ring in rings.items() for side in ring.sides},
        levels=mesh_levels(pieces, rings, said, whole, front),
        elastics=(
            *elastics(pieces, rings, said, whole),
            *banded(pieces, rings, whole, stacks, ply),
            *on_facings(pieces, rings, whole),
        ),
        rods=drafted_rods(pieces, rings, whole),
        front=front,
        back=back,
        shoulders=_shoulders(rings, whole),
    )


def _sewn_piece(piece: Piece, frame: BodyFrame) -> SewnPiece:
    rolls = [mark.path for mark in piece.placements if mark.what == ROLL]
    return SewnPiece(
        name=piece.name,
        limb=frame.limb or Limb.TRUNK,
        grain=piece.grain,
        hand=piece.hand,
        role=piece.role,
        frame=frame,
        rolls=tuple((roll.start, roll.end) for roll in rolls),
        material=piece.cut_from,
        holes=next((mark.hand for mark in piece.placements if mark.what == HOLE and mark.hand), ""),
    )


def _meshed(
    pieces: SewnParts,
    rings: Mapping[str, PieceRing],
    lines: Mapping[str, Mapping[str, Points]],
    mesh: float,
    stops: Mapping[str, Mapping[str, Reals]],
) -> Merged:
    """Return the pieces meshed and merged, their outlines made finer where they have to be."""
    marks = marked_ends(rings, lines, NEAR * mesh)
    seams = worn_seams(pieces, rings)
    for _ in range(ROUNDS):
        places = stations(pieces.draft, rings, seams, mesh, marks)
        sheets = [meshed_piece(ring, places, lines[name], mesh, stops[name]) for name, ring in rings.items()]
        more = [found for sheet in sheets for found in finer(sheet)]
        if not more:
            return all_merged(sheets, places)
        for ref, way in more:
            marks.setdefault(ref, []).append(way)
    raise DraftError(
        f"piece {more[0][0][0]} cannot be meshed: two of its sides come too near each other at {more[0][0][1]}",
        turn="choose a finer mesh, or look whether the piece is as it should be",
    )


def _kept_on_middle(sides: Sequence[EdgeRef], held: Mapping[str, Whole], whole: Merged) -> Truth:
    """Return which sewn vertices stay in the plane x = 0: along sides, and where buttons hold a front."""
    on = np.zeros(whole.count, dtype=bool)
    for own in held.values():
        on[own] = True
    for ref in sides:
        on[whole.along(ref)] = True
    return on


def on_middles(
    pieces: SewnParts, rings: Mapping[str, PieceRing], said: Mapping[str, BodyFrame], whole: Merged
) -> tuple[Whole, Whole]:
    """Return the sewn vertices on the middle in front and behind; bands say nothing."""
    found: tuple[list[Whole], list[Whole]] = ([], [])
    for name, edge in (*middle_sides(pieces, rings), *vent_folds(pieces, rings)):
        piece, frame = pieces.draft[name], said[name]
        stated = [line for line in (frame.front, frame.back) if line]
        points = rings[name][edge].points
        if frame.heights and not any(off_line(points, line).max() < ON_LINE for line in stated):
            half = piece[edge].half if edge in piece else Half.NONE
            found[runs_behind(points, half, piece.hand)].append(whole.along((name, edge)))
    for name, frame in said.items():
        for which, line in enumerate((frame.front, frame.back)):
            if line is not None:
                found[which].extend((_on_line(whole, name, line), whole.inner(name, (FRONT, BACK)[which])))
    return tuple(np.unique(np.concatenate([NOBODY, *chains])) for chains in found)  # type: ignore[return-value]


def _shoulders(rings: Mapping[str, PieceRing], whole: Merged) -> Whole:
    """Return the sewn vertices along shoulder seams."""
    sides = [(ring.piece, side.name) for ring in rings.values() for side in ring.sides]
    own = [(p.name, name) for p, name in sides if name in p and p[name].role is EdgeRole.SHOULDER]
    return np.unique(np.concatenate([NOBODY, *(whole.along(ref) for ref in own)]))


def _on_line(whole: Merged, name: str, line: Straight) -> Whole:
    """Return the sewn vertices of a piece that lie on a straight line of it."""
    index = next(i for i, piece in enumerate(whole.pieces) if piece.ring.piece.name == name)
    flat = np.unique(whole.triangles[whole.piece == index])
    spots = whole.flat[flat, 0] + 1j * whole.flat[flat, 1]
    on: Whole = whole.merged[flat[off_line(spots, line) < ON_LINE]]
    return on


def off_line(points: Points, line: Straight) -> Reals:
    """Return how far points lie from a straight between two places, mm."""
    way = line[1] - line[0]
    share = np.clip(((points - line[0]) / way).real, 0.0, 1.0)
    gaps: Reals = np.abs(points - line[0] - share * way)
    return gaps


ON_LINE = 0.5
"""mm: what lies no farther from a stated middle lies on it."""

NOBODY: Whole = np.zeros(0, dtype=np.int64)
"""No vertices."""
