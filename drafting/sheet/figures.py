"""A figure small, from one side, to be drawn and written on."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.geometry import Path
from drafting.geometry.path import Box


@dataclass(frozen=True)
class SmallFigure:
    """The figure from one side, mm, y up from the floor: its outlines, and light lines within.

    `hands` names what stands at the left and at the right of the picture, "" where neither does.
    """

    name: str
    outlines: tuple[Path, ...]
    details: tuple[Path, ...]
    box: Box
    hands: tuple[str, str] = ("", "")
