"""Two things that colours tell of a garment: where it pulls, and where it stands off."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from drafting.fabric import Fabric
from drafting.ground.palette import Colour
from drafting.worn.contact import DistanceField
from drafting.worn.nouns import AtRest, Reals
from drafting.worn.picture.scene import channels
from drafting.worn.stands.comfort import gives_at


@dataclass(frozen=True, slots=True)
class Ramp:
    """Colours from 0 to `top`, evenly between its `stops`; what lies beyond has the last.

    `untold` is the colour of what is not known.
    """

    name: str
    top: float
    stops: tuple[Colour, ...]
    untold: Colour = Colour.RULE

    def tints(self, values: Reals) -> Reals:
        """Return (N, 3): the colour of each value, NaN untold."""
        stops = np.array([channels(stop) for stop in self.stops])
        places = np.linspace(0, self.top, len(stops))
        tints = np.column_stack([np.interp(values, places, stops[:, k]) for k in range(3)])
        tints[np.isnan(values)] = channels(self.untold)
        return tints


PULLS = Ramp("pulls", 2.0, (Colour.CLOTH, Colour.OWN_3, Colour.PICK, Colour.STRETCH))
"""Stretch against what the cloth gives in comfort: 1 is all of it."""

STANDS_OFF = Ramp("stands off", 60.0, (Colour.CLOTH, Colour.LINING_3, Colour.HAND, Colour.SEAM, Colour.INK))
"""mm from the form."""


def pull_share(rest: AtRest, fabrics: Mapping[str, Fabric], armhole: float) -> Reals:
    """Return (count,): the greatest stretch at each point as a share of what the cloth gives that way.

    NaN above the height of the `armhole`, where the form is not verified.
    """
    mesh = rest.mesh
    stretch, turned = greatest_stretch(rest)
    grain = np.array([piece.grain for piece in mesh.pieces])[mesh.piece]
    gives = np.empty(len(stretch))
    for number, piece in enumerate(mesh.pieces):
        own = mesh.piece == number
        gives[own] = gives_at(fabrics.get(piece.material), turned[own] - grain[own])
    share = _at_points(rest, np.maximum(stretch, 0) / gives)
    share[rest.points[:, 2] > armhole] = np.nan
    return share


def greatest_stretch(rest: AtRest) -> tuple[Reals, Reals]:
    """Return (T,) of each triangle: its greatest stretch as a fraction, and its way on the flat piece, degrees."""
    flat, worn = rest.mesh.flat[rest.mesh.triangles], rest.points[rest.mesh.sewn]
    drawn = np.stack((flat[:, 1] - flat[:, 0], flat[:, 2] - flat[:, 0]), axis=2)
    moved = np.stack((worn[:, 1] - worn[:, 0], worn[:, 2] - worn[:, 0]), axis=2)
    carried = moved @ np.linalg.inv(drawn)
    metric = np.swapaxes(carried, 1, 2) @ carried
    size, ways = np.linalg.eigh(metric)
    turned = np.degrees(np.arctan2(ways[:, 1, 1], ways[:, 0, 1]))
    return np.sqrt(size[:, 1]) - 1, turned


def _at_points(rest: AtRest, values: Reals) -> Reals:
    """Return (count,): the mean of the triangles round each point, by their area as cut."""
    a, b, c = (rest.mesh.flat[rest.mesh.triangles[:, k]] for k in range(3))
    one, two = b - a, c - a
    area = np.abs(one[:, 0] * two[:, 1] - one[:, 1] * two[:, 0])
    corners, count = rest.mesh.sewn.ravel(), rest.mesh.count
    whole = np.bincount(corners, np.repeat(area, 3), count)
    found: Reals = np.bincount(corners, np.repeat(area * values, 3), count) / np.maximum(whole, 1e-9)
    return found


def distance_off(rest: AtRest, field: DistanceField) -> Reals:
    """Return (count,) mm: how far each point stands off the form; none lies within it."""
    return np.maximum(field.distance(rest.points), 0.0)


def shades(ramp: Ramp, count: int) -> tuple[str, ...]:
    """Return `count` colours of a ramp, evenly from 0 to its top, as #rrggbb."""
    found = (ramp.tints(np.linspace(0, ramp.top, count)) * 255 + 0.5).astype(int)
    return tuple(f"#{r:02x}{g:02x}{b:02x}" for r, g, b in found)
