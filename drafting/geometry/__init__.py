"""Pure plane geometry that knows no cloth.

Points and directions are complex numbers (x + yj, mm, y up): adding moves, multiplying by
`turn(degrees)` turns, and `conj` mirrors. Curves stay lines and cubics to the end.
"""

from drafting.geometry.construct import Directed, curve_through, smooth, unit
from drafting.geometry.curve import Cubic, Line, Segment, turn
from drafting.geometry.path import Path, line
from drafting.geometry.solve import solve

__all__ = [
    "Cubic",
    "Directed",
    "Line",
    "Path",
    "Segment",
    "curve_through",
    "line",
    "smooth",
    "solve",
    "turn",
    "unit",
]
