"""Armholes measured on points of their curves, by numpy alone: least radius, width, bends.

What is measured is the stitching line of a draft: the front's armhole with its bust dart at the side,
and a coat's as its parts lie end to end.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from drafting.draft.chain import chain
from drafting.draft.draft import Draft
from drafting.geometry import Path
from drafting.geometry.path import cubics

T = np.linspace(0.0, 1.0, 200)[:, None]
ABOVE = 20.0
"""mm over the lowest point, adult scale, at which an armhole's width is judged (ours)."""


@dataclass(frozen=True)
class Judged:
    """One half armhole: least radius (mm), width near its bottom (mm), length (mm), and whether it waves."""

    radius: float
    width: float
    length: float
    waves: bool


def judged(path: Path, scale: float) -> Judged:
    """Return what a half armhole, shoulder point to underarm with the cloth on its left, measures."""
    a, b, c, d = np.array(cubics(path)).T
    s = 1 - T
    place = (s**3 * a + 3 * s * s * T * b + 3 * s * T * T * c + T**3 * d).T.ravel()
    speed = (s * s * (b - a) + 2 * s * T * (c - b) + T * T * (d - c)).T.ravel() * 3
    change = (s * (c - 2 * b + a) + T * (d - 2 * c + b)).T.ravel() * 6
    bend = (speed.conj() * change).imag / np.maximum(abs(speed), 1e-9) ** 3
    low = int(np.argmin(place.imag))
    above = place[: low + 1][::-1]  # from the lowest point up
    over = np.interp(place.imag[low] + ABOVE * scale, above.imag, above.real)
    length = float(abs(np.diff(place)).sum())
    return Judged(1 / bend.max(), float(abs(place[-1].real - over)), length, bool(bend.min() < -1e-4))


def halves(draft: Draft) -> tuple[Path, Path]:
    """Return back and front armhole, shoulder point to underarm, in the half frame (side on +x)."""
    back = chain(draft, "back_armhole").path
    front = chain(draft, "front_armhole").path.reversed()
    return back.mirrored(), front


def both(draft: Draft) -> tuple[Judged, Judged]:
    """Return what back and front armhole measure."""
    scale = draft.facts["scale"]
    back, front = halves(draft)
    return judged(back, scale), judged(front, scale)
