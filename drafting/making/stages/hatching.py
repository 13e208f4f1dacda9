"""Lines that fill a face: real lines, as a pattern's fill is lost in a black and white print."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from drafting.geometry.curve import Points
from drafting.making.stages.picture import FaceLook


class Hatch(NamedTuple):
    """How a face is filled: the lines' angle (degrees) and pitch (units of paper)."""

    angle: float
    pitch: float


HATCHES: dict[FaceLook, Hatch] = {
    "right": Hatch(45, 13),
    "lining": Hatch(0, 20),
    "interfacing": Hatch(30, 10),
    "elastic": Hatch(90, 6),
}

LEAST = 3.0
"""Units: a shorter line is left out."""


def hatched(ring: Points, hatch: Hatch) -> str:
    """Return the path of parallel lines that fill a ring (units of paper), by the even-odd rule."""
    turn = np.exp(-1j * np.radians(hatch.angle))
    turned = ring * turn
    after = np.roll(turned, -1)
    first, last = np.ceil(turned.imag.min() / hatch.pitch), np.floor(turned.imag.max() / hatch.pitch)
    found: list[str] = []
    for row in range(int(first), int(last) + 1):
        level = row * hatch.pitch + 1e-4
        cut = (turned.imag > level) != (after.imag > level)
        if cut.any():
            p, q = turned[cut], after[cut]
            across = np.sort(p.real + (level - p.imag) / (q.imag - p.imag) * (q.real - p.real))
            found += _row(across[::2], across[1::2], level, complex(1 / turn))
    return "".join(found)


def _row(starts: np.ndarray, ends: np.ndarray, level: float, back: complex) -> list[str]:
    found = []
    for low, high in zip(starts.tolist(), ends.tolist(), strict=False):
        if high - low > LEAST:
            u, v = complex(low, level) * back, complex(high, level) * back
            x, y = round(u.real), round(u.imag)
            found.append(f"M{x} {y}l{round(v.real) - x} {round(v.imag) - y}".replace(" -", "-"))
    return found
