"""What the whole survey says of a measure nobody took, from all that were taken together.

`survey_table.json` holds means and covariances of 3,034 adults of `Source.ANSUR_II`, women and men
apart; `tests/data/build_survey_table.py` remakes it. A measure is the mean, and its spread the sd, of
the normal distribution conditioned on what was taken, one measure after the other (any textbook of
multivariate statistics): least squares on whatever there is, so that each further measure sharpens
the others. Rows and matrices are tuples, as they are small, kept, and read before numpy is needed.
"""

from __future__ import annotations

import json
import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache, lru_cache
from operator import mul
from pathlib import Path

from drafting.body.sightings import Sighting, sightings
from drafting.ground.frozen import freeze

Figures = tuple[float, ...]
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
    """Means in mm and covariances in mm^2 (n rows of n) of `names`, survey measures at adult height."""

    names: tuple[str, ...]
    mean: Figures
    covariance: tuple[Figures, ...]

    def at(self, sighting: Sighting) -> tuple[tuple[float, int], ...]:
        """Return the terms of a sighting as factors and places among `names`."""
        return tuple((factor, self.names.index(name)) for factor, name in sighting.terms)


@dataclass(frozen=True)
class Leant:
    """One survey measure from those taken: its `sd` in mm, and where it comes from.

    `leaning` are the measures it rests on most, the first most; `sharper` is the one that would help
    it most besides itself, and `sharpened` the sd with it.
    """

    sd: float
    leaning: tuple[str, ...]
    sharper: str = ""
    sharpened: float = 0.0


@dataclass(frozen=True)
class Conditioned:
    """Every survey measure as `constant` + `factors` (a row each) times what was seen, and what is left to
    know: the covariance `rest`."""

    constant: Figures
    factors: tuple[Figures, ...]
    rest: tuple[Figures, ...]


@dataclass(frozen=True)
class Usual:
    """What the build alone lets one expect of a sighting: `start` + `slopes` times all, give or take `reach` mm.

    A measure that lies outside is a slip, or a limb unlike the rest of the body: the others do not follow it
    any farther (ours). The build itself and the shoulder drop, which has its own bounds, are taken as they are.
    """

    start: float
    slopes: Figures
    reach: float

    def bounded(self, value: float, taken: Figures) -> float:
        """Return one sighting (mm) kept within what is usual."""
        expected: float = self.start + sum(map(mul, self.slopes, taken))
        low, high = expected - self.reach, expected + self.reach
        return min(max(value, low), high)


@dataclass(frozen=True)
class FromAll:
    """All survey measures (`names`) from one set of taken ones, `seen`."""

    seen: tuple[Sighting, ...]
    names: tuple[str, ...]
    constant: Figures
    factors: tuple[Figures, ...]
    usual: tuple[Usual, ...]
    told: Mapping[str, Leant]

    def __post_init__(self) -> None:
        freeze(self, "told")

    def values(self, known: Mapping[str, float]) -> dict[str, float]:
        """Return every measure of the survey in mm, from the taken ones in `known`."""
        taken = tuple(sighting.of(known) for sighting in self.seen)
        kept = tuple(usual.bounded(mm, taken) for usual, mm in zip(self.usual, taken, strict=True))
        found = zip(self.names, self.constant, self.factors, strict=True)
        return {name: start + sum(map(mul, row, kept)) for name, start, row in found}


@cache
def spread(figure: str) -> Spread:
    """Return the spread of a figure's adults, of all of them for ""."""
    table = json.loads(TABLE.read_text(encoding="utf-8"))
    groups = [table[figure]] if figure else [table["womens"], table["mens"]]
    people = sum(group["count"] for group in groups)
    shares = [group["count"] / people for group in groups]
    mean = [sum(map(mul, shares, at)) for at in zip(*(group["mean"] for group in groups), strict=True)]
    whole = [[0.0] * len(mean) for _ in mean]
    for share, group in zip(shares, groups, strict=True):
        off = [own - mm for own, mm in zip(group["mean"], mean, strict=True)]
        for i, row in enumerate(group["covariance"]):
            for j, within in enumerate(row):
                whole[i][j] += share * (within + off[i] * off[j])
                whole[j][i] = whole[i][j]
    return _with_rise(tuple(table["measures"]), mean, whole)


def _with_rise(names: tuple[str, ...], mean: list[float], whole: list[list[float]]) -> Spread:
    """Return the spread with the standing rise: waist height less crotch height."""
    waist, crotch = names.index("outside_leg_length"), names.index("inside_leg_length")
    rise = [row[waist] - row[crotch] for row in whole]
    rows = [(*row, own) for row, own in zip(whole, rise, strict=True)]
    rows.append((*rise, rise[waist] - rise[crotch]))
    return Spread((*names, "standing_rise"), (*mean, mean[waist] - mean[crotch]), tuple(rows))


@lru_cache(maxsize=256)
def from_all(measured: frozenset[str], figure: str, natural: bool) -> FromAll:
    """Return how every survey measure follows from the `measured` ones."""
    people, seen = spread(figure), sightings(measured, natural)
    found = conditioned(people, seen)
    constant, factors = list(found.constant), list(found.factors)
    told = {name: _told(people, seen, found, i) for i, name in enumerate(people.names)}
    if "shoulder_drop" in measured:
        axilla = people.names.index("axilla_depth")
        constant[axilla], factors[axilla], sd = _below_the_drop(people, seen)
        told["axilla_depth"] = Leant(sd, ("shoulder_drop", *told["axilla_depth"].leaning))
    return FromAll(seen, people.names, tuple(constant), tuple(factors), _usual(people, seen), told)


def conditioned(people: Spread, seen: tuple[Sighting, ...]) -> Conditioned:
    """Return what the people's measures are once the sightings are known, taken in one after the other."""
    rest = [list(row) for row in people.covariance]
    constant, factors = list(people.mean), [[0.0] * len(seen) for _ in people.mean]
    for k, sighting in enumerate(seen):
        terms = people.at(sighting)
        across = [sum(f * row[at] for f, at in terms) for row in rest]
        own = sum(f * across[at] for f, at in terms) + sighting.sd**2
        expected = sum(f * constant[at] for f, at in terms)
        leant = [sum(f * factors[at][i] for f, at in terms) for i in range(k)]
        for row, line, pull, i in zip(rest, factors, across, range(len(rest)), strict=True):
            gain = pull / own
            constant[i] -= gain * expected
            line[:k] = [was - gain * lean for was, lean in zip(line, leant, strict=False)]
            line[k] = gain
            row[:] = [was - gain * other for was, other in zip(row, across, strict=True)]
    return Conditioned(tuple(constant), tuple(map(tuple, factors)), tuple(map(tuple, rest)))


def _told(people: Spread, seen: tuple[Sighting, ...], found: Conditioned, i: int) -> Leant:
    """Return the spread of the i-th measure, what it leans on, and what would sharpen it."""
    left = found.rest[i]
    sd = math.sqrt(max(left[i], 0.0) + TWO_TAPES**2)
    pull = [abs(f) * _sd(people, sighting) for f, sighting in zip(found.factors[i], seen, strict=True)]
    order = sorted(range(len(seen)), key=lambda k: -pull[k])
    leaning = tuple(seen[k].name for k in order if pull[k] > 0.1 * pull[order[0]])
    gains = [
        left[j] ** 2 / found.rest[j][j] if j != i and found.rest[j][j] > TWO_TAPES**2 else 0.0
        for j in range(len(left))
    ]
    best = max(range(len(gains)), key=gains.__getitem__)
    sharpened = math.sqrt(max(sd**2 - gains[best], TWO_TAPES**2))
    if sharpened > (1 - WORTH_SAYING) * sd:
        return Leant(sd, leaning)
    return Leant(sd, leaning, people.names[best], sharpened)


def _sd(people: Spread, sighting: Sighting) -> float:
    """Return how far people differ in a sighting, mm."""
    return math.sqrt(_variance(people.covariance, people.at(sighting)))


def _variance(covariance: tuple[Figures, ...], terms: tuple[tuple[float, int], ...]) -> float:
    return sum((f * g * covariance[i][j] for f, i in terms for g, j in terms), 0.0)


def _usual(people: Spread, seen: tuple[Sighting, ...]) -> tuple[Usual, ...]:
    """Return what height, bust and hip let one expect of every sighting."""
    build = [k for k, sighting in enumerate(seen) if sighting.name in BUILD]
    by_build = conditioned(people, tuple(seen[k] for k in build))
    found = []
    for sighting in seen:
        terms = people.at(sighting)
        slopes = [0.0] * len(seen)
        for place, k in enumerate(build):
            slopes[k] = sum(f * by_build.factors[at][place] for f, at in terms)
        reach = SLIP * math.sqrt(max(_variance(by_build.rest, terms), 0.0) + sighting.sd**2)
        free = sighting.name in (*BUILD, "shoulder_drop")
        start = sum(f * by_build.constant[at] for f, at in terms)
        found.append(Usual(start, tuple(slopes), math.inf if free else reach))
    return tuple(found)


def _below_the_drop(people: Spread, seen: tuple[Sighting, ...]) -> tuple[float, Figures, float]:
    """Return constant, factors and sd of an armpit that follows a measured shoulder drop one to one.

    Ours: a shoulder that slopes more carries its armhole lower by as much. What the survey conditions is
    the armpit below the shoulder, on everything but the drop.
    """
    axilla, drop = people.names.index("axilla_depth"), people.names.index("shoulder_drop")
    at = [sighting.name for sighting in seen].index("shoulder_drop")
    found = conditioned(people, (*seen[:at], *seen[at + 1 :]))
    row = [a - b for a, b in zip(found.factors[axilla], found.factors[drop], strict=True)]
    sd = math.sqrt(max(_variance(found.rest, ((1.0, axilla), (-1.0, drop))), 0.0) + TWO_TAPES**2)
    return found.constant[axilla] - found.constant[drop], (*row[:at], 1.0, *row[at:]), sd
