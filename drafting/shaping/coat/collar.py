"""The coat collar: its gorge and front neck are the forepart's own edges; the back part is swung.

The back part leaves the side neck point on the neck's own tangent and is as long as the back neck. How
far it is swung is solved: the fall edge must be as long as the path it lies on, which is the closed
neckline moved out by fall - stand + cloth, then taut to the folded collar tip (ours).

Frame: that of the forepart turned over, front at +x; the result is turned so that the centre back
stands upright on x = 0, the neck edge below.
"""

from __future__ import annotations

import cmath
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Any

import numpy as np

from drafting.geometry import Path, line, smooth, unit
from drafting.geometry.brent import brent_zero
from drafting.geometry.curve import Points
from drafting.geometry.offset import offset
from drafting.geometry.solve import root_near, zero_between
from drafting.ground.errors import DraftError

CLOTH = 3.0
"""mm: what the cloth's thickness adds to the way round (ours)."""

SWINGS = (-0.2, 1.4)
"""radians: least and greatest swing that is looked for (ours: 300 people of ANSUR II need 0.30-0.47)."""

USUAL_SWING = 0.39

FALL_BOW = 0.10
"""radians: how much the fall edge bows at the collar's tip (ours)."""


@dataclass(frozen=True)
class NeckLines:
    """What the collar is built on, front at +x: the forepart's `neck` and `gorge`, the back neck
    closed to it (nape to side neck point), the `roll` downwards, the collar's front `tip`; `runs_on` is the
    direction in which a shawl's edge goes on from there, None of a collar that has a front of its own."""

    neck: Path
    gorge: Path
    back_neck: Path
    roll: Path
    tip: complex
    runs_on: complex | None = None


@dataclass(frozen=True)
class CollarShape:
    """Half a collar, upright at the centre back; edges run on anticlockwise from `gorge`. A shawl has no `front`.

    `swing` is how far its back part is swung (radians), `off` by how much (mm) the fall edge is
    longer than the way it lies on: 0 where a swing was found.
    """

    gorge: Path
    front: Path | None
    fall: Path
    centre: Path
    back_neck: Path
    front_neck: Path
    roll: Path
    swing: float
    off: float

    @property
    def ring(self) -> tuple[tuple[str, Path], ...]:
        names = ("gorge", "front", "fall", "centre", "back_neck", "front_neck")
        return tuple((name, getattr(self, name)) for name in names if getattr(self, name))

    def laid_on(self, gorge: Path) -> dict[str, Path]:
        """Return the ring by name, laid so that its gorge falls on this one."""
        turned = unit(gorge.end - gorge.start) / unit(self.gorge.end - self.gorge.start)
        start = self.gorge.start
        return {name: path.mapped(lambda p: gorge.start + (p - start) * turned) for name, path in self.ring}


@lru_cache(maxsize=8)
def collar_shape(lines: NeckLines, stand: float, fall: float) -> CollarShape:
    """Return the collar for a stand and fall (mm) at the centre back."""
    down = unit(lines.roll.end - lines.roll.start)
    wanted = _way_round(lines, down, fall - stand + CLOTH)

    def miss(swing: float) -> float:
        return _back_part(lines, down, swing, stand + fall)[1].length - wanted

    ends = miss(SWINGS[0]), miss(SWINGS[1])
    swing = zero_between(miss, SWINGS, ends, 1e-9) if ends[0] * ends[1] < 0 else USUAL_SWING
    neck_back, edge = _back_part(lines, down, swing, stand + fall)
    along = neck_back.arrive
    roll = Path((smooth(neck_back.end - 1j * stand * along, lines.neck.end, -along, down),))
    shape = CollarShape(
        gorge=lines.gorge,
        front=line(lines.gorge.end, lines.tip) if lines.runs_on is None else None,
        fall=edge.reversed(),
        centre=line(edge.start, neck_back.end),
        back_neck=neck_back.reversed(),
        front_neck=lines.neck,
        roll=roll,
        swing=swing,
        off=miss(swing),
    )
    return _upright(shape)


def _back_part(lines: NeckLines, down: complex, swing: float, height: float) -> tuple[Path, Path]:
    """Return the neck edge from the side neck point to the centre back, and the fall edge."""
    start, leave = lines.neck.start, -lines.neck.leave
    along = -down * cmath.exp(1j * swing)
    length = lines.back_neck.length

    def neck(reach: float) -> Path:
        return Path((smooth(start, start + reach * along, leave, along),))

    def over(reach: float) -> float:
        return neck(reach).length - length

    least, most = 0.3 * length, 1.3 * length
    reach = root_near(over, 0.98 * length, (least, most), 1e-7)
    if reach is None:
        if over(most) < 0:
            raise DraftError("no collar can be drawn for this neckline", turn="choose other neck ease")
        reach = float(brent_zero(over, least, most, within=1e-9))
    edge = neck(reach)
    corner = edge.end - 1j * height * along
    tip = lines.runs_on or unit(lines.tip - corner) * cmath.exp(-1j * FALL_BOW)
    return edge, Path((smooth(corner, lines.tip, -along, tip, may_wave=True),))


def _way_round(lines: NeckLines, down: complex, out: float) -> float:
    """Return how long the fall edge's path is: round the neck, then taut to the folded tip."""
    away = offset(Path((*lines.back_neck.segments, *lines.neck.segments)), out)
    points = np.array(away.flattened(0.005))
    folded = lines.roll.start + down * ((lines.tip - lines.roll.start) / down).conjugate()
    return _taut(points, folded)


def _taut(points: Points, end: complex) -> float:
    """Return the least way that follows the line from its start and leaves it straight for `end`."""
    passed = np.r_[0.0, np.cumsum(np.abs(np.diff(points)))]
    later = passed > passed[-1] / 3
    return float(np.min((passed + np.abs(end - points))[later]))


def _upright(shape: CollarShape) -> CollarShape:
    """Return the collar turned so that its centre back stands on x = 0, the neck edge below."""
    foot = shape.centre.end
    turned = 1j / unit(shape.centre.start - foot)
    parts: dict[str, Any] = {
        name: path.mapped(lambda p: (p - foot) * turned) for name, path in (*shape.ring, ("roll", shape.roll))
    }
    return replace(shape, **parts)


def closed_back_neck(
    back_neck: Path, back_shoulder: complex, front_neck_point: complex, front_shoulder: complex
) -> Path:
    """Return the back neck (nape to side neck point) laid to the forepart with the shoulder closed.

    Both shoulders are given as directions from the neck point outwards, front at +x.
    """
    factor = unit(front_shoulder) / unit(back_shoulder)
    return back_neck.mapped(lambda p: front_neck_point + (p - back_neck.end) * factor)
