"""Invented tails for the tests of flare, and how their panels are measured. mm."""

from __future__ import annotations

import math

from hypothesis import strategies as st

from drafting.geometry import Cubic, Path, line
from drafting.shaping.flare.plain_tail import PlainTail, plain_tail
from drafting.shaping.flare.tail_bend import TailPanel, bent_panels, even_cuts


def straight(width: float, drop: float) -> PlainTail:
    """Return a plain tail whose waist and hem are level lines, its rulings upright."""
    return plain_tail(line(0j, width + 0j), line(-1j * drop, width - 1j * drop))


@st.composite
def plain_tails(draw: st.DrawFn) -> PlainTail:
    """Tails with a curved waist, a narrower hem that rises, and a spring for the seat: invented."""
    width, drop = draw(st.floats(200, 420)), draw(st.floats(350, 900))
    low = draw(st.floats(0.5, 0.9)) * width
    rise, wave, spring = (draw(st.floats(0, 40)), draw(st.floats(-15, 15)), draw(st.floats(0, 17)))
    waist = Cubic(0j, complex(width / 3, wave), complex(2 * width / 3, wave), complex(width, -wave / 2))
    hem = Cubic(
        -1j * drop, complex(low / 3, -drop), complex(2 * low / 3, rise * 0.6 - drop), complex(low, rise - drop)
    )
    return plain_tail(Path((waist,)), Path((hem,)), spring)


flares = st.lists(st.floats(0, 400), min_size=0, max_size=5)


def bent(tail: PlainTail, flare: list[float]) -> tuple[tuple[float, ...], tuple[TailPanel, ...]]:
    amounts = (0.0, *flare, 0.0)
    return amounts, bent_panels(tail, even_cuts(tail, len(flare) + 1), amounts)


def outline(panels: tuple[TailPanel, ...]) -> Path:
    """Return the closed outline of all panels joined: their seams left out."""
    hem = Path.joined(p.hem for p in panels)
    waist = Path.joined(p.waist for p in panels)
    return Path.joined([panels[0].back, hem, panels[-1].front.reversed(), waist.reversed()])


def radius_of(path: Path) -> float:
    """Return the radius of the circle through the start, middle and end of a path."""
    a, b, c = path.start, path.at(path.length / 2), path.end
    area = abs(((b - a).conjugate() * (c - a)).imag) / 2
    return abs(b - a) * abs(c - b) * abs(a - c) / (4 * area)


def apart(a: Path, b: Path) -> float:
    """Return the greatest distance between points at the same share of two paths' lengths."""
    shares = [i / 60 for i in range(61)]
    return max(abs(a.at(a.length * s) - b.at(b.length * s)) for s in shares)


def corner(before: Path, after: Path) -> float:
    """Return by how many degrees one path's end and the next one's start are off a straight line."""
    factor = after.leave / before.arrive
    return abs(math.degrees(math.atan2(factor.imag, factor.real)))
