"""The cut line of a piece: each edge's own allowance, corner by corner, resolved to one ring."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import islice

from drafting.draft.pattern import DartCap
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.finish.choices import FinishChoices
from drafting.finish.corners import REACH, corner_of, joined_corner
from drafting.finish.darts import cap_over_mouth, wedge
from drafting.geometry import Path, area, line
from drafting.geometry.crossing import ends_moved
from drafting.geometry.join import Joined, join
from drafting.geometry.offset import line_beside, lines_beside
from drafting.geometry.rings import outer_rings
from drafting.ground import tolerances as tol
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.frozen import freeze
from drafting.ground.names import name_in_words

CRUMB = 1.0
"""mm2: a part this small that an allowance leaves over is dropped without a word."""


NO_LENGTH = 1e-6
"""mm: an edge that is no longer has neither a direction nor a line beside it."""

HAIR = 2e-3
"""mm: by this much widths are made to differ where cut lines would lie on top of each other."""


@dataclass(frozen=True)
class CutLine:
    """The closed cut line, the allowance of each edge, the dart caps, and what was given up."""

    path: Path
    allowances: Mapping[str, float]
    caps: tuple[DartCap, ...]
    findings: tuple[Finding, ...]

    def __post_init__(self) -> None:
        freeze(self, "allowances")


@dataclass(frozen=True)
class _Side:
    """One stitching edge, its allowance, and the dart (two legs) that follows it, if one does."""

    edge: Edge
    width: float
    dart: tuple[Edge, Edge] | None


def allowances_of(piece: Piece, choices: FinishChoices) -> dict[str, float]:
    """Return every edge's allowance, mm, by name."""
    return {edge.name: choices.width(edge, piece) for edge in piece.edges}


def cut_lines(wanted: Sequence[tuple[Piece, FinishChoices]]) -> list[CutLine]:
    """Return the cut line of each piece: one simple anticlockwise ring that holds its outline.

    The allowances of all of them are drawn at once. Raises `DraftError` for an edge of no length.
    """
    sides = [_sides(piece, choices) for piece, choices in wanted]
    lines = iter(lines_beside([(side.edge.path, side.width) for own in sides for side in own]))
    return [
        _around(piece, choices, own, list(islice(lines, len(own))))
        for (piece, choices), own in zip(wanted, sides, strict=True)
    ]


def _around(piece: Piece, choices: FinishChoices, sides: list[_Side], lines: list[Path]) -> CutLine:
    raw, caps = _raw(piece, sides, lines)
    path, findings = _resolved(piece, raw) or _unstuck(piece, sides)
    return CutLine(path, allowances_of(piece, choices), caps, findings)


def _sides(piece: Piece, choices: FinishChoices) -> list[_Side]:
    """Return the edges that are not dart legs; raises `DraftError` where one has no length."""
    edges = piece.edges
    count = len(edges)
    sides = []
    for i, edge in enumerate(edges):
        if edge.kind is EdgeKind.DART:
            continue
        a, b = edges[(i + 1) % count], edges[(i + 2) % count]
        if edge.length < NO_LENGTH:
            raise DraftError(
                f"nothing is left of the {name_in_words(f'{piece.name}.{edge.name}')}",
                turn="its neighbours meet there: give it more length, or ask for less of what cuts it off",
            )
        dart = (a, b) if a.kind is EdgeKind.DART and b.kind is EdgeKind.DART else None
        sides.append(_Side(edge, choices.width(edge, piece), dart))
    return sides


def _raw(piece: Piece, sides: list[_Side], beside_each: Sequence[Path]) -> tuple[Path, tuple[DartCap, ...]]:
    """Return the cut line with its loops, made of the lines beside each side, and the dart caps."""
    lines = list(beside_each)
    bits: list[Path | None] = []
    caps = []
    for i, side in enumerate(sides):
        j = (i + 1) % len(sides)
        found, cap = _corner(piece, side, sides[j], lines[i], lines[j])
        lines[i], lines[j] = found.before, found.after
        bits.append(found.between)
        caps.extend([cap] if cap else [])
    parts = [part for pair in zip(lines, bits, strict=True) for part in pair if part is not None]
    return _closed(parts, 1e-6), tuple(caps)


def _corner(piece: Piece, a: _Side, b: _Side, before: Path, after: Path) -> tuple[Joined, DartCap | None]:
    if a.dart:
        width = max(a.width, b.width)
        return cap_over_mouth(wedge(piece, *a.dart), (a.edge, b.edge), before, after, width)
    return joined_corner(a.edge, b.edge, before, after, (a.width, b.width)), None


def _closed(parts: list[Path], least: float) -> Path:
    """Join the parts to a ring without segments shorter than `least`; ends meet exactly."""
    whole = [segment for part in parts for segment in part.segments]
    segments = [s for s in whole if abs(s.end - s.start) > least or s.length > least]
    ring = []
    at = segments[-1].end
    for segment in segments:
        if segment.start != at:
            segment = ends_moved(Path((segment,)), start=at).segments[0]
        ring.append(segment)
        at = segment.end
    return Path(tuple(ring))


def _resolved(piece: Piece, raw: Path) -> tuple[Path, tuple[Finding, ...]] | None:
    """Return the ring round everything that `raw` winds about, or None where it is not sound."""
    rings = [raw] if area.is_simple(raw) else _simple(outer_rings(raw))
    if not rings or area.outside(piece.outline, rings[0]) > CRUMB:
        return None
    left_over = [abs(ring.area) for ring in rings[1:] if abs(ring.area) >= CRUMB]
    return rings[0], (_parts(piece, left_over),) if left_over else ()


def _simple(rings: list[Path]) -> list[Path]:
    """Return the rings, the largest first, or none where that one still crosses itself."""
    return rings if rings and area.is_simple(rings[0]) else []


def _unstuck(piece: Piece, sides: list[_Side]) -> tuple[Path, tuple[Finding, ...]]:
    """Resolve a cut line whose parts lie on top of each other.

    The widths are made to differ by hairs, so that the parts cross instead; the steps this leaves
    are closed up again. Where even that fails the allowances are united in short straight lines.
    """
    hairs = [replace(s, width=s.width and s.width + HAIR * (i % 5)) for i, s in enumerate(sides)]
    lines = lines_beside([(side.edge.path, side.width) for side in hairs])
    found = _resolved(piece, _raw(piece, hairs, lines)[0])
    if found:
        ring = _closed([found[0]], 5 * HAIR)
        if area.is_simple(ring):
            return ring, found[1]
    parts = [_strip(side) for side in sides if side.width > 0]
    parts += [_patch(a, b) for a, b in zip(sides, [*sides[1:], sides[0]], strict=True)]
    return area.rough_ring([piece.outline, *parts]), (_rough(piece),)


def _strip(side: _Side) -> Path:
    """Return the allowance of one edge as a closed strip."""
    edge, away = side.edge.path, line_beside(side.edge.path, side.width)
    return Path.joined([edge.reversed(), line(edge.start, away.start), away, line(away.end, edge.end)])


def _patch(a: _Side, b: _Side) -> Path:
    """Return what lies between two strips at their common corner (a dart's mouth included)."""
    one, two = line_beside(a.edge.path, a.width), line_beside(b.edge.path, b.width)
    here, there = a.edge.path.end, b.edge.path.start
    if a.dart:
        return Path.polygon(here, one.end, two.start, there)
    found = join(one, two, corner_of(a.edge.path, b.edge.path), REACH * max(a.width, b.width))
    tips = [segment.start for segment in found.between or ()]
    return Path.polygon(here, one.end, *tips, two.start)


def _parts(piece: Piece, areas: list[float]) -> Finding:
    return Finding(
        "allowance",
        "note",
        piece.name,
        sum(areas),
        CRUMB,
        f"the allowances of {piece.name} close over {len(areas)} gap(s) of together "
        f"{sum(areas):.0f} mm2; the cut line runs round the outside of them",
    )


def _rough(piece: Piece) -> Finding:
    return Finding(
        "allowance",
        "warning",
        piece.name,
        None,
        tol.FLAT,
        f"the cut line of {piece.name} could not be kept as smooth curves; it is drawn in short "
        "straight lines, true to the allowance, with plain corners. A smaller allowance mends it",
    )
