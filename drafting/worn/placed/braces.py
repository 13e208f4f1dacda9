"""Whether a garment that hangs from the waist stays up by itself, how far it sinks before the body holds it, and
what holds it up where nothing does.

Trousers stay up where the body below is wider than their waist. Where a belly is the widest, they slide down
as far as the floor, however well they are cut: such a wearer has always worn braces (common practice).
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from drafting.draft.frame import BodyHeight
from drafting.shaping.trouser.held import stays_up
from drafting.worn.form import tape
from drafting.worn.form.form import Form
from drafting.worn.nouns import AtRest, Limb, MeshLevel, Reals, SewnMesh

_HOLD = (Limb.TRUNK, Limb.HANGS)

ABOVE = 20.0
"""mm over the crotch at which the trunk is in one."""

TRIED = 9
"""Heights between crotch and waist at which the body is measured (ours)."""

BESIDE = 80.0
"""mm: an elastic no farther from the waist draws it in (ours)."""


@dataclass(frozen=True)
class Slides:
    """A garment that slides down: its `waist` is not narrower than the body's greatest girth below it, mm.

    Braces hold one that has `legs`, at `level`; where they were `chosen`, they hold one that would stay up too.
    """

    level: str
    waist: float
    widest: float
    legs: bool
    chosen: bool = False


SINKS = 20.0
"""mm by which a garment settles that is not called sunk (ours)."""


@dataclass(frozen=True)
class Sunk:
    """A garment that sank `by` mm before the body held it by its waist, `waist` mm round.

    Braces hold one that has `legs`.
    """

    waist: float
    by: float
    legs: bool


def sunk(mesh: SewnMesh, start: Reals, rest: AtRest, form: Form) -> Sunk | None:
    """Return how far a garment sank below the body's waist, or below its `start` (of `mesh`) if that was lower.

    None where it stayed, and where its waist is narrower than the body there: that is too tight, and holds it.
    """
    first = _waist(mesh, start)
    if first is None:
        return None
    last = _named(rest.mesh, first.name)
    high = min(_height(mesh, start, first), form.levels["waist"])
    by = high - _height(rest.mesh, rest.points, last)
    if by <= SINKS or first.drafted < tape.girth(form.contour(high)):
        return None
    return Sunk(last.drafted, by, _has_legs(mesh))


def slides_down(mesh: SewnMesh, points: Reals, form: Form, *, braced: bool = False) -> Slides | None:
    """Return why a garment would slide down from where its `points` (count, 3) start; None where it stays up.

    One that is `braced` hangs from its braces either way.

    What hangs from the shoulders, or goes over the chest or an arm, does not slide.
    """
    waist = _waist(mesh, points)
    if waist is None:
        return None
    round_it = min([waist.drafted, *_drawn_in(mesh, points, waist)])
    heights = np.linspace(form.levels["crotch"] + ABOVE, _height(mesh, points, waist), TRIED)
    widest = max(tape.girth(form.contour(float(height))) for height in heights)
    stays = stays_up(round_it, widest)
    chosen = stays and braced
    return Slides(waist.name, round_it, widest, _has_legs(mesh), chosen) if chosen or not stays else None


def held_up(mesh: SewnMesh, slides: Slides) -> SewnMesh:
    """Return the garment with the vertices along the level that should hold it kept at their heights."""
    waist = _named(mesh, slides.level)
    nearest = waist.weights.argmax(axis=1)
    return replace(mesh, hung=np.unique(mesh.sewn[waist.triangles, nearest]))


def _has_legs(mesh: SewnMesh) -> bool:
    return any(piece.limb is Limb.LEG for piece in mesh.pieces)


def _waist(mesh: SewnMesh, points: Reals) -> MeshLevel | None:
    """Return the girth of trousers or a skirt that lies uppermost where its `points` (count, 3) start.

    It is one of pieces that reach up to the waist and no higher. What is gathered to a band is drafted at no
    waist, and is held by the band. (As cut, the hip of a circle lies no lower than its waist.)
    """
    if any(piece.frame.at(height) is not None for piece in mesh.pieces for height in HIGHER):
        return None
    lines = [
        level
        for level in mesh.levels
        if level.limb in _HOLD and all(_held(mesh, i, level) for i in _pieces(mesh, level))
    ]
    return max(lines, key=lambda level: _height(mesh, points, level), default=None)


def _named(mesh: SewnMesh, name: str) -> MeshLevel:
    return next(level for level in mesh.levels if level.name == name and level.limb in _HOLD)


HIGHER = (BodyHeight.NAPE, BodyHeight.BUST, BodyHeight.ARMPIT, BodyHeight.CROWN)
"""Heights that say of a piece that its garment goes on above the waist."""


def _pieces(mesh: SewnMesh, level: MeshLevel) -> list[int]:
    return [int(index) for index in np.unique(mesh.piece[level.triangles])]


def _held(mesh: SewnMesh, index: int, level: MeshLevel) -> bool:
    """Return whether a level of a piece can hold its garment: a leg's, or one that lies on the piece's waist."""
    piece = mesh.pieces[index]
    waist = piece.frame.at(BodyHeight.WAIST)
    if piece.limb is Limb.LEG or waist is None:
        return piece.limb is Limb.LEG
    corners = mesh.flat[mesh.triangles[level.triangles[mesh.piece[level.triangles] == index]]]
    return piece.limb is Limb.HANGS or bool(abs(corners[:, :, 1].mean() - waist.imag) < BESIDE)


def _height(mesh: SewnMesh, points: Reals, level: MeshLevel) -> float:
    """Return the mean height of a level over the floor."""
    return float(points[mesh.sewn[level.triangles], 2].mean())


def _drawn_in(mesh: SewnMesh, points: Reals, waist: MeshLevel) -> list[float]:
    """Return the lengths, mm round, of elastics that lie about the height of the waist."""
    high, twice = _height(mesh, points, waist), 2.0 if mesh.halved else 1.0
    return [
        twice * one.rest for one in mesh.elastics if abs(float(points[one.vertices, 2].mean()) - high) < BESIDE
    ]
