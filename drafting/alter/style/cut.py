"""Cut a piece in two along a line from one place of its outline to another, with a seam between the parts."""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.alter.style.places import RingSpot, spot_on, spot_point
from drafting.alter.style.rings import (
    CutSides,
    RingStretch,
    become,
    free_name,
    holds_point,
    named_apart,
    region_within,
    renamed_chains,
    run_between,
)
from drafting.alter.style.stiff_parts import stiffened_apart
from drafting.draft.draft import Corner, Draft, Seam
from drafting.draft.frame import BodyFrame, BodyHeight
from drafting.draft.named import edge_named, piece_named
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole, LevelKind, SeamKind
from drafting.geometry import Path, line
from drafting.geometry.area import is_simple
from drafting.geometry.crossing import crossings, ends_moved
from drafting.geometry.curve import Cubic
from drafting.ground.errors import DraftError
from drafting.reading.style import CutWish

HAIR = 1e-9
"""mm: a bow that is none."""

SHARPEST = 5.0
"""Degrees: the sharpest corner that a cut may make (ours: a sharper one cannot be sewn)."""

LEAST_PART = 100.0
"""mm2: the least that a part of a cut piece may be (ours)."""

AT_ENDS = 0.2
"""mm: a crossing nearer to an end of the line is that end."""

HEIGHTS = {
    LevelKind.BUST: BodyHeight.BUST,
    LevelKind.WAIST: BodyHeight.WAIST,
    LevelKind.HIP: BodyHeight.HIP,
    LevelKind.KNEE: BodyHeight.KNEE,
    LevelKind.ELBOW: BodyHeight.ELBOW,
    LevelKind.UPPER_ARM: BodyHeight.ARMPIT,
}
"""At which height of the body a level lies."""


def cut_line(piece: Piece, wish: CutWish) -> Path:
    """Return the line along which a piece would be cut; raises `DraftError` where it runs off the piece."""
    start, end = spot_on(piece, wish.start), spot_on(piece, wish.end)
    a, b = spot_point(piece, start), spot_point(piece, end)
    if abs(b - a) < 1.0:
        raise DraftError(f"the cut through the {piece.name} begins where it ends")
    path = _drawn(piece, (start, end), wish)
    crossed = [edge.name for edge in piece.edges if _crosses(path, edge.path)]
    legs = [name for name in crossed if piece[name].kind is EdgeKind.DART]
    if legs:
        raise DraftError(
            f"the cut through the {piece.name} runs over its dart ({', '.join(legs)})",
            turn="move the dart first, end the line at its tip with { dart = ... }, or keep clear of it",
        )
    if crossed or not holds_point(piece.outline, path.at(path.length / 2)):
        off = f" over its {' and '.join(crossed)}" if crossed else ""
        raise DraftError(f"the cut leaves the {piece.name}{off}", turn="choose other ends, or less bow")
    for dart in piece.darts:
        if crossings(path, dart.leg_a) or crossings(path, dart.leg_b):
            raise DraftError(
                f"the cut through the {piece.name} runs over its {dart.name.replace('_', ' ')}",
                turn="keep clear of it, or draft the piece without it",
            )
    return path


def cut_apart(draft: Draft, wish: CutWish, along: Path | None = None) -> Draft:
    """Return the draft with a piece cut in two, `along` a line or as drawn; what was sewn stays sewn.

    Raises `DraftError` where the line runs off the piece, over a dart, or leaves too short an edge.
    """
    piece = piece_named(draft, wish.piece)
    if wish.name in draft:
        raise DraftError(f"there is a piece {wish.name} already", turn="give the new one another name")
    if wish.holds:
        edge_named(piece, wish.holds)
    path = cut_line(piece, wish) if along is None else along
    start, end = spot_on(piece, wish.start), spot_on(piece, wish.end)
    one = _Half(tuple(run_between(piece, start, end)), path.reversed(), (end, start))
    two = _Half(tuple(run_between(piece, end, start)), path, (start, end))
    if min(one.ring.area, two.ring.area) < LEAST_PART:
        raise DraftError(f"the cut leaves no cloth on one side of the {piece.name}", turn="choose other ends")
    new, old = (one, two) if _is_new(wish, one, two) else (two, one)
    made = _parted(piece, wish, new, old)
    names = become((p.name, half.run, p.edges) for p, half in zip(made, (new, old), strict=True))
    found = _sewn_on(_with_parts(renamed_chains(draft, piece.name, names), piece, made), wish, new, piece)
    return _shaped_by_dart(stiffened_apart(found, path, made), made)


@dataclass(frozen=True)
class _Half:
    """One part of a cut piece: its run of the old outline, and the cut as it closes it, with its ends."""

    run: tuple[RingStretch, ...]
    cut: Path
    ends: tuple[RingSpot, RingSpot]

    @property
    def closing(self) -> Path:
        """The cut, from exactly where the run ends to where it starts."""
        return ends_moved(self.cut, start=self.run[-1].edge.path.end, end=self.run[0].edge.path.start)

    @property
    def ring(self) -> Path:
        return Path.joined([*(stretch.edge.path for stretch in self.run), self.closing])


def _drawn(piece: Piece, ends: tuple[RingSpot, RingSpot], wish: CutWish) -> Path:
    """Return the line from one place to the other, its middle `bow` mm to the left of the straight one.

    At a fold or a centre it starts square, so that it runs on without a point in the other half.
    """
    a, b = (spot_point(piece, spot) for spot in ends)
    third, out = (b - a) / 3, 1j * (b - a) / abs(b - a) * wish.bow * 4 / 3
    handles = [a + third + out, b - third + out]
    squared = False
    for k, (place, end) in enumerate(((wish.start, a), (wish.end, b))):
        edge = piece[place.edge] if place.edge else None
        if edge is not None and (edge.kind is EdgeKind.FOLD or edge.role is EdgeRole.CENTRE):
            handles[k] = end + 1j * edge.path.leave * abs(third)
            squared = True
    if not squared and abs(wish.bow) < HAIR:
        return line(a, b)
    return Path((Cubic(a, handles[0], handles[1], b),))


def _crosses(path: Path, edge: Path) -> bool:
    ends = (path.start, path.end)
    return any(all(abs(one.point - end) > AT_ENDS for end in ends) for one in crossings(path, edge))


def _is_new(wish: CutWish, one: _Half, two: _Half) -> bool:
    """Return whether the first part is the new piece: the one that holds the edge named, else the smaller."""
    if wish.holds:
        long = [sum(s.edge.length for s in half.run if s.edge.name == wish.holds) for half in (one, two)]
        return long[0] > long[1]
    return one.ring.area < two.ring.area


def _parted(piece: Piece, wish: CutWish, new: _Half, old: _Half) -> tuple[Piece, Piece]:
    """Return the new piece, and what is left of the old."""
    parts = CutSides(new.cut, region_within(new.ring))
    levels, marks, darts = parts.levels(piece.levels), parts.marks(piece.placements), parts.darts(piece.darts)
    label = free_name(wish.edge, (edge.name for edge in piece.edges))
    made = []
    for number, (half, name) in enumerate(((new, wish.name), (old, piece.name))):
        closing = Edge(label, half.closing, role=_role(half.cut))
        edges = named_apart([*(stretch.edge for stretch in half.run), closing])
        on_fold = [edge for edge in edges if edge.kind is EdgeKind.FOLD]
        if len(on_fold) > 1 or not is_simple(Path.joined(edge.path for edge in edges)):
            raise DraftError(f"the cut leaves the {name} in two parts on the fold, or with lines that cross")
        made.append(
            replace(
                piece,
                name=name,
                edges=tuple(edges),
                levels=levels[number],
                placements=marks[number],
                darts=darts[number],
                points={key: p for key, p in piece.points.items() if parts.holds(p) == (number == 0)},
                title=_spoken(name) if number == 0 else piece.title,
                pair=piece.pair or (piece.fold_edge is not None and not on_fold),
                frame=_frame(piece),
            )
        )
    for part in made:
        corners = part.corner(0), part.corner(len(part.edges) - 1)
        if min(min(corner, 360.0 - corner) for corner in corners) < SHARPEST:  # nearly a whole turn lies on itself
            raise DraftError(f"the cut through the {piece.name} runs along its outline", turn="choose other ends")
    return made[0], made[1]


def _spoken(name: str) -> str:
    return name.replace("-", " ").capitalize()


def _role(path: Path) -> EdgeRole:
    way = path.end - path.start
    return EdgeRole.YOKE if abs(way.real) >= abs(way.imag) else EdgeRole.PANEL


def _frame(piece: Piece) -> BodyFrame:
    """Return how a part lies on the body: as the whole did, with the heights that its levels told."""
    own = piece.frame or BodyFrame()
    heights = dict(own.heights)
    for level in piece.levels:
        if level.kind in HEIGHTS:
            middles = [path.at(path.length / 2) for path in level.paths]
            heights.setdefault(HEIGHTS[level.kind], sum(middles) / len(middles))
    crown = piece.points.get(BodyHeight.CROWN.value)
    if crown is not None:
        heights.setdefault(BodyHeight.CROWN, crown)
    return replace(own, heights=tuple(heights.items()))


def _with_parts(draft: Draft, piece: Piece, made: tuple[Piece, Piece]) -> Draft:
    """Return the draft with a piece's two parts in its place; what lies behind it lies behind both."""
    new = made[0].name

    def both(names: tuple[str, ...]) -> tuple[str, ...]:
        return (*names, new) if piece.name in names else names

    pieces: list[Piece] = []
    for one in draft.pieces:
        if one.name == piece.name:
            pieces += [made[1], made[0]]
        elif piece.name in (*one.stiffens, *one.lines):
            pieces.append(replace(one, stiffens=both(one.stiffens), lines=both(one.lines)))
        else:
            pieces.append(one)
    return replace(draft, pieces=tuple(pieces))


def _sewn_on(draft: Draft, wish: CutWish, new: _Half, old: Piece) -> Draft:
    """Return the draft with the seam along the cut; an end within an edge has to run on smoothly."""
    one, two = draft[wish.name].edges[-1], draft[wish.piece].edges[-1]
    corners: list[Corner] = [
        "smooth" if at < old.edges[k].length else None for k, at in ((spot.index, spot.at) for spot in new.ends)
    ]
    seam = Seam(
        free_name(f"{wish.name.replace('-', ' ')} line", (seam.name for seam in draft.seams)),
        ((wish.name, one.name),),
        ((wish.piece, two.name),),
        start=corners[0],
        end=corners[1],
        kind=SeamKind.YOKE if one.role is EdgeRole.YOKE else SeamKind.PANEL,
    )
    return replace(draft, seams=(*draft.seams, seam))


def _shaped_by_dart(draft: Draft, made: tuple[Piece, Piece]) -> Draft:
    """Return the draft with a dart whose legs the cut has parted taken into the seam along the cut."""
    names = {piece.name for piece in made}
    for dart in draft.seams:
        legs = [draft.edge(ref) for ref in (*dart.a, *dart.b)]
        if {name for name, _ in (*dart.a, *dart.b)} == names and all(leg.kind is EdgeKind.DART for leg in legs):
            return _into_seam(draft, dart, draft.seams[-1])
    return draft


def _into_seam(draft: Draft, dart: Seam, line_seam: Seam) -> Draft:
    """Return the draft with the legs of a dart as parts of the seam that runs on from its tip."""
    (new, cut_name), (leg_a, leg_b) = line_seam.a[0], (dart.a[0], dart.b[0])
    mine, other = (leg_a, leg_b) if leg_a[0] == new else (leg_b, leg_a)
    ring = draft[new]
    runs_out = ring.index(mine[1]) == (ring.index(cut_name) + 1) % len(ring.edges)
    bust = draft.edge(mine).role is EdgeRole.BUST_DART
    role, kind = (EdgeRole.PRINCESS, SeamKind.PRINCESS) if bust else (EdgeRole.PANEL, SeamKind.PANEL)

    def plain(piece: Piece) -> Piece:
        here = {ref[1] for ref in (mine, other, *line_seam.a, *line_seam.b) if ref[0] == piece.name}
        edges = (
            replace(e, kind=EdgeKind.SEAM, role=role, dart=None) if e.name in here else e for e in piece.edges
        )
        return replace(piece, edges=tuple(edges))

    seam = replace(
        line_seam,
        a=(line_seam.a[0], mine) if runs_out else (mine, line_seam.a[0]),
        b=(line_seam.b[0], other) if runs_out else (other, line_seam.b[0]),
        start=line_seam.start if runs_out else dart.start,
        end=dart.end if runs_out else line_seam.end,
        kind=kind,
    )
    kept = tuple(one for one in draft.seams if one not in (dart, line_seam))
    return replace(draft.with_pieces(map(plain, (draft[new], draft[other[0]]))), seams=(*kept, seam))
