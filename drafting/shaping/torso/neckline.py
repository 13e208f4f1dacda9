"""The neckline: front and back curves whose every length is proportional to the back neck width.

So the width follows from the wanted neckline length without a search. Unit shape (ours, by eye, held
against published drafts): back 1 wide and 0.32 high, front 0.97 wide and 1.12 deep. Inside corner
at the shoulder: back 100, front 80 degrees, so that the joined neckline runs on smoothly.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.geometry import Path, smooth, solve, turn

BACK_RISE, FRONT_WIDTH, FRONT_DEPTH = 0.32, 0.97, 1.12
BACK_CORNER = 100.0


@dataclass(frozen=True)
class Neckline:
    """Back curve from centre to side neck; front curve from side neck to centre, side neck at y 0.

    `width` is the half width of the back neck, mm.
    """

    width: float
    back: Path
    front: Path


def neckline(length: float, slope_back: float, slope_front: float) -> Neckline:
    """Return the half neckline that is `length` mm long in all for shoulder slopes in degrees."""
    arrive = turn(180 - BACK_CORNER - slope_back)
    leave = turn(-(slope_front + 180 - BACK_CORNER))
    back = smooth(0j, complex(1, BACK_RISE), 1 + 0j, arrive)
    front = smooth(complex(FRONT_WIDTH, 0), complex(0, -FRONT_DEPTH), leave, -1 + 0j)
    width = length / (back.length + front.length)
    return Neckline(width, Path((back,)).mapped(lambda p: p * width), Path((front,)).mapped(lambda p: p * width))


def sided_neckline(length: float, slope_back: float, slope_front: float, depth: float) -> Neckline:
    """Return the half neckline of one side of an uneven body, `depth` mm deep in front.

    Both sides then meet at the centres and are equally long; only the side neck points differ.
    """

    def drawn(width: float) -> Neckline:
        plain = neckline(length, slope_back, slope_front)
        front = smooth(complex(FRONT_WIDTH * width, 0), complex(0, -depth), plain.front.leave, -1 + 0j)
        back = smooth(0j, width * complex(1, BACK_RISE), 1 + 0j, plain.back.arrive)
        return Neckline(width, Path((back,)), Path((front,)))

    def long(width: float) -> float:
        neck = drawn(width)
        return neck.back.length + neck.front.length

    near = depth / FRONT_DEPTH
    return drawn(solve(long, length, (0.7 * near, 1.4 * near), what="neckline of one side"))
