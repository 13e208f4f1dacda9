"""Buttons and their holes of two hands that differ, each pair at one height over the waist. Mm."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from drafting.draft.draft import Draft
from drafting.draft.piece import Piece, Placement
from drafting.draft.roles import LevelKind
from drafting.ground.findings import Finding
from drafting.ground.lengths import APART, apart_said, counted

BUTTON, HOLE = "button", "buttonhole"
CLOSES = (BUTTON, HOLE)
"""What of a piece's marks closes it (`Placement.what`)."""


def level_closings(left: Draft, right: Draft) -> tuple[Draft, Draft]:
    """Return two drafts of the left half, what closes one hand over the other moved level, down to the lower of
    the places that each hand alone gives it: there it lies at or below the break of either (ours).

    A piece closes over the other hand's where it has a hole in one hand only. A button that one hand has beyond
    the other's is left out: nothing would meet it.
    """
    left, right = _met(left, right), _met(right, left)
    moves: tuple[dict[str, Mapping[str, float]], ...] = ({}, {})
    for piece in left.pieces:
        if piece.name in right and _closes_over(piece):
            for found, by in zip(moves, _level(piece, right[piece.name]), strict=True):
                found[piece.name] = by
    return _moved(left, moves[0]), _moved(right, moves[1])


def _met(draft: Draft, other: Draft) -> Draft:
    """Return a draft without what would close its pieces and is not marked on the other hand's."""
    pieces, lost = [], dict[str, int]()
    for piece in draft.pieces:
        known = {mark.name for mark in other[piece.name].placements} if piece.name in other else set()
        kept = tuple(m for m in piece.placements if m.what not in CLOSES or m.name in known)
        if known and _closes_over(piece) and len(kept) < len(piece.placements):
            lost[piece.name] = sum(m.what == BUTTON and m not in kept for m in piece.placements)
            piece = replace(piece, placements=kept)
        pieces.append(piece)
    if not lost:
        return draft
    buttons = {n.piece: n.count for n in draft.notions if n.what == BUTTON}
    notions = (replace(n, count=n.count - lost.get(n.piece, 0)) if n.what == BUTTON else n for n in draft.notions)
    findings = (
        _counted_anew(f, buttons.get(f.where, 0), lost[f.where]) if f.where in lost else f for f in draft.findings
    )
    return replace(draft, pieces=tuple(pieces), notions=tuple(notions), findings=tuple(findings))


def _counted_anew(finding: Finding, had: int, lost: int) -> Finding:
    """Return a finding that told how many buttonholes there are, as many as are left."""
    was, now = (counted(number, "buttonhole", "buttonholes") for number in (had, had - lost))
    return replace(finding, sentence=finding.sentence.replace(was, now))


def _closes_over(piece: Piece) -> bool:
    return any(mark.what == HOLE and mark.hand for mark in piece.placements)


def _level(left: Piece, right: Piece) -> tuple[Mapping[str, float], Mapping[str, float]]:
    """Return by how much each mark of either hand rises, by its name."""
    one, two = dict(_heights(left)), dict(_heights(right))
    if one.keys() != two.keys():
        return {}, {}
    rises = {name: two[name] - one[name] for name in one}
    return {name: min(by, 0.0) for name, by in rises.items()}, {name: min(-by, 0.0) for name, by in rises.items()}


def _heights(piece: Piece) -> Iterator[tuple[str, float]]:
    """Yield the name of each mark that closes a piece, and its height over the waist as drawn."""
    waist = drawn_waist(piece)
    for mark in piece.placements:
        if mark.what in CLOSES:
            yield mark.name, _height(mark) - waist


def drawn_waist(piece: Piece) -> float:
    """Return the height y of the waist on a piece as drawn, mm; 0.0 where it states none."""
    waists = (level.paths[0].start.imag for level in piece.levels if level.kind is LevelKind.WAIST)
    return next(waists, 0.0)


def _height(mark: Placement) -> float:
    return mark.path.at(mark.path.length / 2).imag


def _moved(draft: Draft, rises: Mapping[str, Mapping[str, float]]) -> Draft:
    """Return the draft with the named marks of its pieces so much higher."""

    def level(piece: Piece) -> Piece:
        by = rises.get(piece.name, {})
        marks = (replace(m, path=m.path.moved(1j * by.get(m.name, 0.0))) for m in piece.placements)
        return replace(piece, placements=tuple(marks)) if by else piece

    pieces = tuple(level(piece) for piece in draft.pieces)
    rows = {new.name: _row(new) for old, new in zip(draft.pieces, pieces, strict=True) if old is not new}
    findings = tuple(_told_anew(finding, rows.get(finding.where, "")) for finding in draft.findings)
    return replace(draft, pieces=pieces, findings=findings)


def _row(piece: Piece) -> str:
    """Return how far apart the row of a piece stands, as a finding tells it; nothing of one without buttons."""
    buttons = (mark for mark in piece.placements if mark.what == BUTTON)
    heights = sorted({round(_height(mark), 3) for mark in buttons})
    if not heights:
        return ""
    return apart_said(len(heights), (heights[-1] - heights[0]) / max(1, len(heights) - 1))


def _told_anew(finding: Finding, row: str) -> Finding:
    """Return a finding that told how far apart a row stood, as it stands now."""
    return replace(finding, sentence=APART.sub(row, finding.sentence, count=1)) if row else finding
