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
    levels = np.arange(int(first), int(last) + 1) * hatch.pitch + 1e-4
    row, edge = np.nonzero((turned.imag > levels[:, None]) != (after.imag > levels[:, None]))
    p, q, level = turned[edge], after[edge], levels[row]
    across = p.real + (level - p.imag) / (q.imag - p.imag) * (q.real - p.real)
    order = np.lexsort((across, row))  # each row is crossed in and out, in and out
    across, level = across[order], level[order]
    seen = across[1::2] - across[::2] > LEAST
    back = complex(1 / turn)
    starts, ends = (
        (np.column_stack([x, y]).view(np.complex128)[:, 0] * back)
        for x, y in ((across[::2][seen], level[::2][seen]), (across[1::2][seen], level[1::2][seen]))
    )
    whole = np.rint(np.column_stack([starts.real, starts.imag, ends.real, ends.imag])).astype(int)
    return "".join(f"M{x} {y}l{u - x} {v - y}" for x, y, u, v in whole.tolist()).replace(" -", "-")
