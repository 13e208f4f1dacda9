"""What the whole survey says of a measure nobody took, from all that were taken together.

`survey_table.json` holds means and covariances of 3,034 adults of `Source.ANSUR_II`, women and men
apart; `tests/data/build_survey_table.py` remakes it. A measure is the mean, and its spread the sd, of
the normal distribution conditioned on what was taken (any textbook of multivariate statistics): least
squares on whatever there is, so that each further measure sharpens the others.
"""

from __future__ import annotations

import json
import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache, lru_cache
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from drafting.body.sightings import Sighting, sightings

Array = NDArray[np.float64]
TABLE = Path(__file__).with_name("survey_table.json")

BUILD = ("height", "bust_girth", "hip_girth")
"""What everybody's size and shape is first told by."""

SLIP = 4.0
"""sd: how far a measure may lie from what the build lets expect before the others follow it no more (ours)."""

TWO_TAPES = 2.0
"""mm: what the maker's own tape would differ from the survey's at best (ours); it widens every spread."""

WORTH_SAYING = 0.05
"""By what share of an estimate's spread a further measure must sharpen it to be named (ours)."""


@dataclass(frozen=True)
class Spread:
    """Means (n,) in mm and covariance (n, n) in mm^2 of `names`, survey measures at adult height."""

    names: tuple[str, ...]
    mean: Array
    covariance: Array

    def weights(self, sighting: Sighting) -> Array:
        """Return (n,): how a sighting sums up the survey's measures."""
        found = np.zeros(len(self.names))
        for factor, name in sighting.terms:
            found[self.names.index(name)] += factor
        return found


@dataclass(frozen=True)
class Told:
    """One survey measure from those taken: its `sd` in mm, and in words where it comes from.

    `leaning` are the measures it rests on most, the first most; `sharper` is the one that would help
    it most besides itself, and `sharpened` the sd with it.
    """

    sd: float
    leaning: tuple[str, ...]
    sharper: str = ""
    sharpened: float = 0.0


@dataclass(frozen=True)
class Usual:
    """What the build alone lets one expect of each sighting: `start` + `slopes` @ all, give or take `reach` mm.

    A measure that lies outside is a slip, or a limb unlike the rest of the body: the others do not follow it
    any farther (ours). The build itself and the shoulder drop, which has its own bounds, are taken as they are.
    """

    start: Array
    slopes: Array
    reach: Array

    def bounded(self, taken: Array) -> Array:
        """Return the sightings (mm) kept within what is usual."""
        expected = self.start + self.slopes @ taken
        return np.clip(taken, expected - self.reach, expected + self.reach)


@dataclass(frozen=True)
class FromAll:
    """All survey measures from one set of taken ones: values are `constant` + `factors` @ seen."""

    seen: tuple[Sighting, ...]
    names: tuple[str, ...]
    constant: Array
    factors: Array
    told: Mapping[str, Told]
    usual: Usual

    def values(self, known: Mapping[str, float]) -> dict[str, float]:
        """Return every measure of the survey in mm, from the taken ones in `known`."""
        taken = self.usual.bounded(np.array([sighting.of(known) for sighting in self.seen]))
        return dict(zip(self.names, (self.constant + self.factors @ taken).tolist(), strict=True))


@cache
def spread(figure: str) -> Spread:
    """Return the spread of a figure's adults, of all of them for ""."""
    found = json.loads(TABLE.read_text(encoding="utf-8"))
    groups = [found[figure]] if figure else [found["womens"], found["mens"]]
    counts = np.array([group["count"] for group in groups], float)
    means = np.array([group["mean"] for group in groups])
    share = counts / counts.sum()
    mean = share @ means
    apart = means - mean
    within = sum(part * _square(group["covariance"]) for part, group in zip(share, groups, strict=True))
    return _with_rise(tuple(found["measures"]), mean, within + (apart.T * share) @ apart)


def _with_rise(names: tuple[str, ...], mean: Array, covariance: Array) -> Spread:
    """Return the spread with the standing rise: waist height less crotch height."""
    also = np.vstack([np.eye(len(names)), np.zeros(len(names))])
    also[-1, names.index("outside_leg_length")], also[-1, names.index("inside_leg_length")] = 1.0, -1.0
    return Spread((*names, "standing_rise"), also @ mean, also @ covariance @ also.T)


def _square(rows: list[list[float]]) -> Array:
    """Return the whole matrix of what stands on and below its diagonal."""
    lower = np.zeros((len(rows), len(rows)))
    for i, row in enumerate(rows):
        lower[i, : i + 1] = row
    return lower + np.tril(lower, -1).T


@lru_cache(maxsize=256)
def from_all(measured: frozenset[str], figure: str, natural: bool) -> FromAll:
    """Return how every survey measure follows from the `measured` ones."""
    people, seen = spread(figure), sightings(measured, natural)
    constant, factors, rest = _conditioned(people, seen)
    told = {}
    for i, name in enumerate(people.names):
        told[name] = _told(people, seen, factors[i], rest, i)
    if "shoulder_drop" in measured:
        _axilla_by_drop(people, seen, constant, factors, told)
    return FromAll(seen, people.names, constant, factors, told, _usual(people, seen))


def _usual(people: Spread, seen: tuple[Sighting, ...]) -> Usual:
    """Return what height, bust and hip let one expect of every sighting."""
    build = [k for k, sighting in enumerate(seen) if sighting.name in BUILD]
    constant, factors, rest = _conditioned(people, tuple(seen[k] for k in build))
    looked = np.array([people.weights(sighting) for sighting in seen])
    slopes = np.zeros((len(seen), len(seen)))
    slopes[:, build] = looked @ factors
    own = np.einsum("ki,ij,kj->k", looked, rest, looked)
    reach = SLIP * np.sqrt(np.maximum(own, 0.0) + [sighting.sd**2 for sighting in seen])
    reach[[sighting.name in (*BUILD, "shoulder_drop") for sighting in seen]] = np.inf
    return Usual(looked @ constant, slopes, reach)


def _conditioned(people: Spread, seen: tuple[Sighting, ...]) -> tuple[Array, Array, Array]:
    """Return constant (n,), factors (n, seen) and the covariance (n, n) that is left."""
    looked = np.array([people.weights(sighting) for sighting in seen])
    noise = np.diag([sighting.sd**2 for sighting in seen])
    across = people.covariance @ looked.T
    factors = np.linalg.solve(looked @ across + noise, across.T).T
    constant = people.mean - factors @ (looked @ people.mean)
    return constant, factors, people.covariance - factors @ across.T


def _told(people: Spread, seen: tuple[Sighting, ...], factors: Array, rest: Array, i: int) -> Told:
    sd = math.sqrt(max(float(rest[i, i]), 0.0) + TWO_TAPES**2)
    pull = np.array([abs(f) * _sd(people, sighting) for f, sighting in zip(factors, seen, strict=True)])
    order = [int(k) for k in np.argsort(-pull, kind="stable")]
    leaning = tuple(seen[k].name for k in order if pull[k] > 0.1 * max(pull.max(), 1e-9))
    own = np.maximum(np.diag(rest), 1.0)
    gain = np.where(np.diag(rest) > 4.0, rest[i] ** 2 / own, 0.0)
    gain[i] = 0.0
    best = int(np.argmax(gain))
    left = math.sqrt(max(sd**2 - float(gain[best]), 0.0))
    if left > (1 - WORTH_SAYING) * sd:
        return Told(sd, leaning)
    return Told(sd, leaning, people.names[best], left)


def _sd(people: Spread, sighting: Sighting) -> float:
    weights = people.weights(sighting)
    return float(np.sqrt(weights @ people.covariance @ weights))


def _axilla_by_drop(
    people: Spread, seen: tuple[Sighting, ...], constant: Array, factors: Array, told: dict[str, Told]
) -> None:
    """Let the armpit follow a measured shoulder drop one to one, and all else as the survey has it.

    Ours: a shoulder that slopes more carries its armhole lower by as much. What the survey conditions is
    the armpit below the shoulder, on everything but the drop.
    """
    names = people.names
    axilla, drop = names.index("axilla_depth"), names.index("shoulder_drop")
    others = tuple(sighting for sighting in seen if sighting.name != "shoulder_drop")
    start, slopes, rest = _conditioned(people, others)
    below = np.zeros(len(names))
    below[axilla], below[drop] = 1.0, -1.0
    constant[axilla] = below @ start
    row = dict(zip((s.name for s in others), below @ slopes, strict=True))
    factors[axilla] = [1.0 if s.name == "shoulder_drop" else row[s.name] for s in seen]
    sd = math.sqrt(max(float(below @ rest @ below), 0.0) + TWO_TAPES**2)
    told["axilla_depth"] = Told(sd, ("shoulder_drop", *told["axilla_depth"].leaning))
