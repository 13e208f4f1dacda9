"""What is asked of the wearer's form to place a garment on it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Protocol

from drafting.draft.frame import Limb
from drafting.worn.contact import DistanceField
from drafting.worn.nouns import Point, Reals


class Wearable(Protocol):
    """A form: heights of its levels (mm over the floor), sections, axes of arm and leg, and its distance."""

    @property
    def levels(self) -> Mapping[str, float]: ...

    @property
    def arm(self) -> tuple[Point, Point, Point]: ...

    @property
    def leg(self) -> tuple[Point, Point, Point]: ...

    @property
    def distance(self) -> DistanceField: ...

    def contour(self, height: float, limb: Limb = Limb.TRUNK) -> Reals: ...
