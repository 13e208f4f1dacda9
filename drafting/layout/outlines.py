"""From finished pieces to outlines on the cloth: turned to the grain, opened, counted by hand."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from drafting.draft.pattern import CutPiece
from drafting.geometry import Path, turn
from drafting.geometry.area import difference
from drafting.geometry.path import Box
from drafting.ground import tolerances as tol
from drafting.layout.cloth import LENGTHWISE, Cloth, LayName
from drafting.layout.packing.clean import sound_ring
from drafting.layout.packing.model import Copy, Pose, Ring, Spot, box_of

ON_LINE = 0.01
"""mm: the cut line lies on the fold's line within this, or the fold is no straight one."""

DRIFT = 0.17
"""degrees: how far a fold edge may lie off the selvedge's direction (from memory: 0.3 cm a metre)."""

SYMMETRIC = 1e-4
"""Share of its area by which a piece may differ from its mirror image and still be its own."""


@dataclass(frozen=True)
class Part:
    """One piece of one garment that is to be cut; `of` names its wearer where several share a lay."""

    garment: str
    cut: CutPiece
    of: str = ""

    @property
    def name(self) -> str:
        return f"{self.garment}.{self.cut.piece.name}"

    @property
    def worn_as(self) -> tuple[str, str]:
        """Whose garment it is of, and which."""
        return self.of, self.garment


@dataclass(frozen=True)
class Outline:
    """A piece as it is laid: its cut line with the warp along x, and how it came to lie so.

    `fold`: a half piece with its fold edge on y = 0 and the cloth above; `opened`: a half piece drawn
    whole; `flipped`: mirrored across the selvedge's direction from how it is drawn.
    """

    part: Part
    path: Path
    factor: complex
    shift: complex = 0j
    fold: bool = False
    opened: bool = False
    flipped: bool = False

    @cached_property
    def ring(self) -> Ring:
        """The cut line as straight lines, within 0.02 mm."""
        return sound_ring(self.part.name, tuple(self.path.flattened(tol.FLAT)))

    @cached_property
    def box(self) -> Box:
        """The box round the cut line."""
        return box_of(self.ring)

    def base(self, p: complex) -> complex:
        """Return a point of the piece as drawn where it lies on the unturned outline."""
        q = p * self.factor
        return (q.conjugate() if self.flipped else q) + self.shift

    def placed(self, spot: Spot, path: Path) -> Path:
        """Return a path of the outline's plane where the spot puts it."""
        corner = box_of(tuple(spot.pose.of(p) for p in self.ring))[:2]
        by = complex(spot.x, spot.y) - complex(*corner)
        return path.mapped(lambda p: spot.pose.of(p) + by)

    @cached_property
    def symmetric(self) -> bool:
        """Whether the outline is its own mirror image, so that it has no hand."""
        if self.opened:
            return True
        x0, y0, _, _ = self.path.bounds
        other = self.path.mapped(lambda p: p.conjugate()).reversed()
        a0, b0, _, _ = other.bounds
        moved = other.moved(complex(x0 - a0, y0 - b0))
        return difference(self.path, moved) <= SYMMETRIC * abs(self.path.area)


def outline_of(part: Part, lay: LayName) -> Outline:
    """Return a piece as it is laid: half pieces on the fold where the cloth has one, else opened."""
    piece = part.cut.piece
    factor = turn(-piece.grain)
    edge = piece.fold_edge
    path = part.cut.cut.mapped(lambda p: p * factor)
    if edge is None:
        return Outline(part, path, factor)
    start, along = edge.path.start * factor, edge.path.end * factor - edge.path.start * factor
    if lay in LENGTHWISE and fold_on_grain(part):
        below = (path.bounds[1] + path.bounds[3]) / 2 < start.imag
        shift = complex(0, start.imag if below else -start.imag)
        raised = path.mapped(lambda p: (p.conjugate() if below else p) + shift)
        kept = raised.reversed() if below else raised
        return Outline(part, kept, factor, shift, fold=True, flipped=below)
    return Outline(part, _opened(part, path, start, along), factor, opened=True)


def fold_on_grain(part: Part) -> bool:
    """Say whether a half piece's fold edge runs along the warp, as a lengthwise fold does."""
    edge = part.cut.piece.fold_edge
    if edge is None:
        return False
    along = (edge.path.end - edge.path.start) * turn(-part.cut.piece.grain)
    return abs(along.imag) <= abs(along.real) * abs(turn(DRIFT).imag)


def _opened(part: Part, path: Path, start: complex, along: complex) -> Path:
    """Return the whole piece of a half one: its cut line off the fold, and the same mirrored."""
    unit = along / abs(along)

    def off(p: complex) -> float:
        return abs(((p - start) / unit).imag)

    on = [all(off(s.point(t)) < ON_LINE for t in (0.0, 0.5, 1.0)) for s in path.segments]
    if not any(on) or all(on):
        return path
    first = next(i for i, here in enumerate(on) if here and not on[(i + 1) % len(on)]) + 1
    order = [(first + i) % len(on) for i in range(len(on))]
    half = Path(tuple(path.segments[i] for i in order if not on[i]))
    other = half.mapped(lambda p: start + unit * ((p - start) / unit).conjugate()).reversed()
    return Path.joined((half, other))


def copies_of(outline: Outline, number: int, cloth: Cloth, lay: LayName) -> Iterator[Copy]:
    """Yield each outline to lay for a piece: on two layers a pair is cut at once.

    On two layers either face lies up, so an outline may be turned over freely; on one layer only
    where both faces of the cloth are alike.
    """
    piece = outline.part.cut.piece
    plain = tuple(Pose(t) for t in cloth.turns)
    over = tuple(Pose(t, True) for t in cloth.turns)
    if outline.fold:
        # Turned end for end the open piece is its half mirrored along the fold.
        # On a second fold it lies turned over about that fold's line.
        folds = (False, True) if lay == "double" else (False,)
        poses = tuple(Pose(t, (t == 180) != high) for high in folds for t in cloth.turns)
        yield from (Copy(number, poses, "single", n + 1) for n in range(piece.copies))
    elif lay == "open":
        yield from _on_one_layer(outline, number, plain, over, cloth.faces_alike)
    else:
        either = plain if outline.symmetric else plain + over
        alike = piece.pair or outline.symmetric or cloth.faces_alike
        both, single = divmod(piece.count, 2) if alike else (0, piece.count)
        for n in range(both):
            yield Copy(number, either, "both", n + 1)
        hand = piece.hand or "single"
        yield from (Copy(number, either, hand, n + 1) for n in range(single))


def _on_one_layer(
    outline: Outline, number: int, plain: tuple[Pose, ...], over: tuple[Pose, ...], alike: bool
) -> Iterator[Copy]:
    piece = outline.part.cut.piece
    either = plain + over if alike and not outline.symmetric else ()
    for n in range(piece.copies):
        if piece.pair:
            yield Copy(number, either or plain, "left", n + 1)
            yield Copy(number, either or over, "right", n + 1)
        else:
            yield Copy(number, either or plain, piece.hand or "single", n + 1)
