"""A `Pattern`: pieces finished for cutting. A type of its own, so that stages cannot be mixed up."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from drafting.draft.piece import Piece
from drafting.geometry import Path
from drafting.ground.findings import Finding
from drafting.ground.frozen import freeze


@dataclass(frozen=True, slots=True)
class NotchMark:
    """A notch ready to draw: `strokes` run from the cut line inwards (1 front, 2 back)."""

    edge: str
    name: str
    strokes: tuple[Path, ...]

    def mirrored(self) -> NotchMark:
        return replace(self, strokes=tuple(stroke.mirrored() for stroke in self.strokes))

    def turned(self, factor: complex) -> NotchMark:
        return replace(self, strokes=tuple(stroke.turned(0j, factor) for stroke in self.strokes))


@dataclass(frozen=True, slots=True)
class DartCap:
    """What closes over a dart's open mouth, so that the folded dart is caught in the seam.

    `stitch` is the seam's own line across the mouth, a roof from leg end to leg end; `cut` the cut
    line above it; `fold` the crease from the tip to the roof's peak. `edges` names the two legs.
    """

    edges: tuple[str, str]
    stitch: Path
    cut: Path
    fold: Path

    def mirrored(self) -> DartCap:
        """Return the cap of the other hand: reflected, its lines anticlockwise again."""
        return DartCap(
            self.edges[::-1],
            self.stitch.mirrored().reversed(),
            self.cut.mirrored().reversed(),
            self.fold.mirrored(),
        )

    def turned(self, factor: complex) -> DartCap:
        stitch, cut, fold = (path.turned(0j, factor) for path in (self.stitch, self.cut, self.fold))
        return DartCap(self.edges, stitch, cut, fold)


@dataclass(frozen=True)
class CutPiece:
    """One piece with everything that is drawn on it.

    `cut` is the closed cut line, anticlockwise; `allowances` mm by edge name (0 on a fold and along
    dart legs). Where text has room is asked of `finish.label_room`.
    """

    piece: Piece
    number: int
    cut: Path
    allowances: Mapping[str, float]
    notches: tuple[NotchMark, ...] = ()
    grainline: Path | None = None
    stretch_arrow: Path | None = None
    caps: tuple[DartCap, ...] = ()

    def __post_init__(self) -> None:
        freeze(self, "allowances")

    def mirrored(self) -> CutPiece:
        """Return the other hand. Marks are reflected; arrows keep their sense along the piece.

        Text is never reflected: it is set upright on either hand.
        """
        return replace(
            self,
            piece=self.piece.mirrored(),
            cut=self.cut.mirrored().reversed(),
            notches=tuple(notch.mirrored() for notch in self.notches),
            grainline=self.grainline and self.grainline.mirrored(),
            stretch_arrow=self.stretch_arrow and self.stretch_arrow.mirrored(),
            caps=tuple(cap.mirrored() for cap in self.caps),
        )

    def turned(self, degrees: int) -> CutPiece:
        """Return the piece as it lies on paper, turned about 0 by whole quarters, warp and stretch with it."""
        if degrees % 360 == 0:
            return self
        factor = (1, 1j, -1, -1j)[degrees // 90 % 4]
        piece = self.piece.mapped(lambda p: p * factor)
        warp, stretch = (self.piece.grain + degrees) % 360, (self.piece.stretch + degrees) % 180
        return replace(
            self,
            piece=replace(piece, grain=warp, stretch=stretch),
            cut=self.cut.turned(0j, factor),
            notches=tuple(notch.turned(factor) for notch in self.notches),
            grainline=self.grainline and self.grainline.turned(0j, factor),
            stretch_arrow=self.stretch_arrow and self.stretch_arrow.turned(0j, factor),
            caps=tuple(cap.turned(factor) for cap in self.caps),
        )


@dataclass(frozen=True)
class Pattern:
    """All finished pieces of one garment."""

    garment: str
    fabric: str
    pieces: tuple[CutPiece, ...] = ()
    findings: tuple[Finding, ...] = field(default=())

    def __getitem__(self, name: str) -> CutPiece:
        for cut_piece in self.pieces:
            if cut_piece.piece.name == name:
                return cut_piece
        raise KeyError(f"no piece {name!r} in {self.garment}")
