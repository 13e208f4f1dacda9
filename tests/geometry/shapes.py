"""Invented curves and outlines for the geometry and finish tests."""

from __future__ import annotations

import cmath
import math

from hypothesis import assume
from hypothesis import strategies as st

from drafting.geometry import Cubic, Line, Path, smooth


def arc(centre: complex, radius: float, start: float, end: float) -> Path:
    """Return an arc between two angles (degrees) as cubics of at most 22.5 degrees.

    Handles of 4/3 tan(angle / 4) radii: the well-known arc rule; radial error 1e-9 of the radius.
    """
    count = max(1, math.ceil(abs(end - start) / 22.5 - 1e-9))
    step = math.radians((end - start) / count)
    handle = 4 / 3 * math.tan(step / 4)
    parts = []
    for i in range(count):
        p = cmath.exp(1j * (math.radians(start) + i * step))
        q = p * cmath.exp(1j * step)
        points = (p, p * (1 + 1j * handle), q * (1 - 1j * handle), q)
        parts.append(Cubic(*(centre + radius * z for z in points)))
    return Path(tuple(parts))


coordinate = st.integers(-300, 300)
point = st.builds(complex, coordinate, coordinate)
lines = st.builds(Line, point, point).filter(lambda s: s.length > 1)
cubics = st.builds(Cubic, point, point, point, point).filter(lambda s: s.length > 1)


@st.composite
def paths(draw: st.DrawFn) -> Path:
    """A path of 1 to 4 lines and cubics, laid end to end."""
    segments = draw(st.lists(st.one_of(lines, cubics), min_size=1, max_size=4))
    whole, at = [], 0j
    for segment in segments:
        whole.append(type(segment)(*(p - segment.start + at for p in segment)))
        at = whole[-1].end
    return Path(tuple(whole))


@st.composite
def outlines(draw: st.DrawFn) -> tuple[Path, ...]:
    """The sides of a star-shaped outline about 0, anticlockwise: straight, bulging or hollow.

    Radii of 60 to 150 mm at 4 to 9 evenly spread corners; each side leaves and arrives up to 25
    degrees off its chord. Never two sides that leave a corner along one another: they would cross at once.
    """
    radii = draw(st.lists(st.integers(60, 150), min_size=4, max_size=9))
    corners = [r * cmath.exp(2j * math.pi * i / len(radii)) for i, r in enumerate(radii)]
    bends = draw(st.lists(st.integers(-25, 25), min_size=len(radii), max_size=len(radii)))
    ring = zip(corners, [*corners[1:], corners[0]], bends, strict=True)
    sides = tuple(side(a, b, bend) for a, b, bend in ring)
    assume(
        all(
            abs(cmath.phase(b.leave / a.arrive)) < SPIKE
            for a, b in zip(sides, [*sides[1:], sides[0]], strict=True)
        )
    )
    return sides


SPIKE = math.radians(170.0)
"""A corner that turns by more has next to no inside, or none."""


def side(a: complex, b: complex, bend: float) -> Path:
    """Return a side that bulges to the right by `bend` degrees at both ends (0: straight)."""
    if not bend:
        return Path((Line(a, b),))
    lean = cmath.exp(1j * math.radians(bend))
    return Path((smooth(a, b, (b - a) / lean, (b - a) * lean),))
