"""From where a worn garment is looked at: parallel to the eye, so that lengths compare across a picture.

x to the wearer's left, y to the back, z up, mm; a picture's x runs right, its y down, depth away from the eye.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from drafting.worn.nouns import Point, Reals

HEADROOM = 0.04
"""Share of a picture left free round what stands in it (ours)."""


@dataclass(frozen=True, slots=True)
class Eye:
    """`turned`: degrees round the wearer, 0 from the front, 90 from her left; `raised`: degrees from above."""

    name: str
    turned: float
    raised: float

    @property
    def axes(self) -> tuple[Reals, Reals, Reals]:
        """Unit vectors to the picture's right, its top, and away from the eye."""
        a, e = math.radians(self.turned), math.radians(self.raised)
        right = np.array([math.cos(a), math.sin(a), 0.0])
        eye = np.array([math.sin(a) * math.cos(e), -math.cos(a) * math.cos(e), math.sin(e)])
        return right, np.cross(eye, right), -eye


FRONT = Eye("front", 0.0, 4.0)
SIDE = Eye("side", 90.0, 4.0)
BACK = Eye("back", 180.0, 4.0)
ABOVE = Eye("above", 0.0, 90.0)
THREE_QUARTERS = Eye("three quarters", 40.0, 8.0)


@dataclass(frozen=True, slots=True)
class PictureFrame:
    """What part of the room a picture shows: its middle (mm), pixels for each mm, and its size in pixels."""

    middle: Point
    scale: float
    width: int
    height: int

    def seen(self, points: Reals, view: Eye) -> Reals:
        """Return (N, 3): pixels right, pixels down, and mm away from the eye."""
        right, up, away = view.axes
        off = points - np.asarray(self.middle)
        across = off @ right * self.scale + self.width / 2
        down = self.height / 2 - off @ up * self.scale
        return np.column_stack((across, down, off @ away))

    def larger(self, times: int) -> PictureFrame:
        """Return the same part of the room on so many times the pixels each way."""
        return PictureFrame(self.middle, self.scale * times, self.width * times, self.height * times)


def frame_for(points: Reals, width: int, height: int) -> PictureFrame:
    """Return the frame that holds `points` from every side, at one scale for all views."""
    low, high = points.min(axis=0), points.max(axis=0)
    middle = (low + high) / 2
    round_it = 2 * float(np.linalg.norm(points[:, :2] - middle[:2], axis=1).max())
    tall = float(high[2] - low[2])
    scale = (1 - 2 * HEADROOM) * min(width / max(round_it, 1.0), height / max(tall, 1.0))
    return PictureFrame((float(middle[0]), float(middle[1]), float(middle[2])), scale, width, height)
