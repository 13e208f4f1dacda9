"""Sleeves and collars as a cutter measures them: off the drawn paths, by sampling, with no code of the kit's."""

from __future__ import annotations

import cmath
import math
from collections.abc import Mapping
from functools import cache
from typing import Any

from shapely.geometry import LineString

from drafting.body import Body, wearer
from drafting.costume.choices import Origin, block_named, choose
from drafting.costume.garment import drafted
from drafting.draft.draft import Draft
from drafting.draft.piece import Piece
from drafting.draft.walk import notched
from drafting.fabric import Fabric
from drafting.geometry import Path
from drafting.ground.scale import body_scale
from drafting.reading.given import Given
from tests.blocks.figures import chart_man, chart_woman, full_bust

SAMPLES = 400


def draft_of(body: Body, block: str, fabric: Fabric | None = None, **choices: Any) -> Draft:
    """Return the block's draft with its notches, unfinished and unchecked."""
    kind = block_named(block)
    given = {name: Given(value) for name, value in choices.items()}
    return notched(drafted(body, fabric, kind, choose(kind, given, body_scale(body), Origin())))


def chosen_value(body: Body, block: str, name: str, **choices: Any) -> float:
    """Return what a choice is for this body: typed, or the default at its scale."""
    kind = block_named(block)
    given = {key: Given(value) for key, value in choices.items()}
    return float(choose(kind, given, body_scale(body), Origin()).values[name][0])


def polyline(path: Path) -> LineString:
    points = [path.at(path.length * i / SAMPLES) for i in range(SAMPLES + 1)]
    return LineString([(p.real, p.imag) for p in points])


def middle_line(sleeve: Piece, hem: str) -> float:
    """Return how far (mm) the hem lies straight below the crown."""
    crown = sleeve.points["crown"]
    plumb = LineString([(crown.real, crown.imag), (crown.real, crown.imag - 5000)])
    met = plumb.intersection(polyline(sleeve[hem].path))
    return math.inf if met.is_empty else crown.imag - met.centroid.y


def bow(path: Path) -> float:
    """Return how far (mm) a path lies off its chord at most."""
    chord = path.end - path.start
    unit = chord / abs(chord)
    return max(abs(((path.at(path.length * i / 50) - path.start) / unit).imag) for i in range(51))


def turned(path: Path) -> float:
    """Return through how many degrees a path turns from its start to its end."""
    return math.degrees(abs(cmath.phase(path.arrive / path.leave)))


@cache
def odd_bodies() -> Mapping[str, Body]:
    """Return twelve bodies as different as they come; all but the two charts' are invented."""

    def of(**mm: float) -> Body:
        return wearer(mm)

    return {
        "chart woman": chart_woman(),
        "chart man": chart_man(),
        "child of 116": of(height=1160.0, bust_girth=600.0, waist_girth=550.0, hip_girth=640.0),
        "child of 104": of(height=1040.0, bust_girth=560.0, waist_girth=530.0, hip_girth=590.0),
        "doll": of(height=400.0, bust_girth=200.0, waist_girth=160.0, hip_girth=210.0),
        "160 round": of(height=1700.0, bust_girth=1600.0, waist_girth=1650.0, hip_girth=1600.0),
        "thin": of(height=1850.0, bust_girth=800.0, waist_girth=620.0, hip_girth=830.0),
        "tall": of(height=2050.0, bust_girth=1050.0, waist_girth=900.0, hip_girth=1050.0),
        "short and round": of(height=1450.0, bust_girth=1000.0, waist_girth=900.0, hip_girth=1080.0),
        "belly": of(height=1750.0, bust_girth=1100.0, waist_girth=1250.0, hip_girth=1120.0),
        "full arm": full_bust(1000.0, upper_arm_girth=380.0),
        "thin arm": full_bust(1000.0, upper_arm_girth=240.0),
    }
