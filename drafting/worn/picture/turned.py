"""`turn.html`: the costume on the form, turned by mouse or keyboard; one file, no network, no library."""

from __future__ import annotations

import base64
import json
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from typing import Any

import numpy as np
from numpy.typing import DTypeLike

from drafting.ground import palette
from drafting.ground.palette import Colour
from drafting.ground.templates import Html, beside, macros, page_policy
from drafting.ground.units import LengthUnit, show_length
from drafting.worn.nouns import Reals, Surface, Truth, Whole
from drafting.worn.picture.dressed import LAP, LAPEL_LAPS, LAYER, Look, behind, button_traces, raised, thinner
from drafting.worn.picture.laps import hand_over, under_other
from drafting.worn.picture.maps import PULLS, STANDS_OFF, Ramp, shades
from drafting.worn.picture.scene import LIES_ON
from drafting.worn.picture.view import ABOVE, BACK, FRONT, SIDE, THREE_QUARTERS, Eye

PER_MM = 10
"""Points are kept to 0.1 mm, in whole numbers of two bytes."""

SHADES = 48
"""Steps of a scale of colours; more are not told apart (by eye)."""

THINNED = 21.0
"""mm: the form's points within a cell so wide become one, which keeps the file small."""

VIEWS: tuple[tuple[str, Eye, str], ...] = (
    ("Front", FRONT, "from the front"),
    ("Three quarters", THREE_QUARTERS, "from the left front"),
    ("Side", SIDE, "from the left"),
    ("Back", BACK, "from behind"),
    ("Above", ABOVE, "from above"),
)

PlainShape = dict[str, Any]

POINTS, PLACES = (np.dtype(kind).newbyteorder("little") for kind in (np.int16, np.uint16))


def turned_page(
    surface: Surface,
    looks: Sequence[Look],
    *,
    title: str,
    caution: str,
    unsettled: Sequence[str],
    told: Sequence[tuple[str, Sequence[str]]],
    unit: LengthUnit,
) -> str:
    """Return the page. `told` are a heading and sentences for each garment; `unsettled` warn of shapes only."""
    shape = json.dumps(shape_of(surface, looks), separators=(",", ":"), allow_nan=False)
    return str(
        macros(__file__).page(
            title=title,
            policy=page_policy(beside(__file__, ".js")),
            style=Html(palette.css() + beside(__file__, ".css")),
            script=Html(beside(__file__, ".js")),
            shape=Html(shape.replace("<", "\\u003c")),
            views=[name for name, _, _ in VIEWS],
            covers=[look.name for look in looks],
            scales=scales(unit),
            told=told,
            caution=caution,
            unsettled=unsettled,
        )
    )


def scales(unit: LengthUnit) -> tuple[dict[str, Any], ...]:
    """Return both scales of colours with the words beside them."""
    off = [show_length(share * STANDS_OFF.top, unit) for share in (0, 1 / 3, 2 / 3)]
    far = f"{show_length(STANDS_OFF.top, unit)} and more"
    pull = ("not at all", "half", "all it gives in comfort", "twice")
    return (
        {
            "words": "where it pulls",
            "shades": shades(PULLS, SHADES),
            "ends": (pull[0], pull[1], pull[2], "one and a half", pull[3]),
            "note": "Stretch against what this cloth gives in comfort. Grey above the armhole: untrusted.",
        },
        {
            "words": "where it stands off",
            "shades": shades(STANDS_OFF, SHADES),
            "ends": (*off, far),
            "note": "How far the cloth stands off the form. Palest where it touches.",
        },
    )


def shape_of(surface: Surface, looks: Sequence[Look]) -> PlainShape:
    """Return everything that the page's script draws, as plain values."""
    points = surface.points
    low, high = points.min(axis=0), points.max(axis=0)
    tints: list[str] = [Colour.SKIN]
    for look in looks:
        tints += [face for face in look.faces.values() if face not in tints]
    return {
        "per_mm": PER_MM,
        "tints": tints,
        "ink": Colour.INK,
        "paper": Colour.PAPER,
        "middle": [round(float(v), 1) for v in (low + high) / 2],
        "lies_on": LIES_ON,
        "lap": LAP,
        "lapel_laps": LAPEL_LAPS,
        "tall": round(float(high[2] - low[2]), 1),
        "ramps": [{"shades": shades(ramp, SHADES), "untold": ramp.untold} for ramp in (PULLS, STANDS_OFF)],
        "views": [{"turned": v.turned, "raised": v.raised, "words": words} for _, v, words in VIEWS],
        "covers": [_body(surface, looks), *(_cloth(look, layer, tints) for layer, look in enumerate(looks))],
    }


def _body(surface: Surface, looks: Sequence[Look]) -> PlainShape:
    points, triangles = thinned(thinner(surface, looks), THINNED)
    tint = np.zeros(len(triangles))
    return _cover(points, triangles, tint) | {
        "nearer": -behind(looks),
        "closed": True,
        "halved": False,
        "on_top": "left",
        "under": "",
        "over": "",
        "raised": [],
        "rings": [],
    }


def _cloth(look: Look, layer: int, tints: Sequence[str]) -> PlainShape:
    rest, mesh = look.rest, look.rest.mesh
    by_piece = np.array([tints.index(look.faces[piece.material]) for piece in mesh.pieces])
    points = np.where(mesh.on_middle[:, None] & (np.arange(3) == 0) & mesh.halved, 0.0, rest.points)
    none = np.zeros(len(mesh.sewn), bool)
    over, kept = none if look.over is None else look.over, ~none if look.hidden is None else ~look.hidden
    triangles = np.where(over[:, None], mesh.sewn[:, [0, 2, 1]], mesh.sewn)[kept]
    maps = [_steps(PULLS, look.pull), _steps(STANDS_OFF, look.off)]
    lines = [_packed(mesh.edges[ref], PLACES) for ref in look.lines]
    return _cover(points, triangles, by_piece[mesh.piece[kept]], maps, lines) | {
        "nearer": layer * LAYER,
        "closed": False,
        "halved": mesh.halved,
        "on_top": hand_over(mesh),
        "under": _packed(under_other(rest), "u1"),
        "over": _packed(over[kept], "u1"),
        "raised": [raised(look, ref) for ref in look.lines],
        "rings": list(_rings(look, layer)),
    }


def _rings(look: Look, layer: int) -> Iterator[PlainShape]:
    """Yield buttons' rings: how many mm nearer than it lies each is drawn, and whether other cloth lies over it.

    What lies over it may be taken off, on the page.
    """
    open_ = [trace.points.tobytes() for trace in button_traces(look, layer)]
    for trace in button_traces(replace(look, under=None), layer):
        points = _packed(np.round(trace.points * PER_MM), POINTS)
        yield {"points": points, "nearer": trace.nearer, "under": trace.points.tobytes() not in open_}


def _cover(
    points: Reals, triangles: Whole, tints: Whole | Reals, maps: Iterable[str] = (), lines: Iterable[str] = ()
) -> PlainShape:
    return {
        "points": _packed(np.round(points * PER_MM), POINTS),
        "triangles": _packed(triangles, PLACES),
        "tints": _packed(tints, "u1"),
        "maps": list(maps),
        "lines": list(lines),
    }


def _steps(ramp: Ramp, values: Reals) -> str:
    """Return values as steps of the ramp, packed; what is not told is one beyond the last."""
    share = np.clip(np.nan_to_num(values / ramp.top, nan=0.0), 0, 1) * (SHADES - 1)
    return _packed(np.where(np.isnan(values), SHADES, share), "u1")


def _packed(values: Reals | Whole | Truth, kind: DTypeLike) -> str:
    return base64.b64encode(np.ascontiguousarray(values, kind).tobytes()).decode("ascii")


def thinned(surface: Surface, cell: float) -> tuple[Reals, Whole]:
    """Return a surface whose points within one cell of so many mm are drawn together into their mean."""
    keys = np.round(surface.points / cell).astype(np.int64)
    _, group = np.unique(keys, axis=0, return_inverse=True)
    group = group.ravel()
    count = np.bincount(group)
    points = np.column_stack([np.bincount(group, surface.points[:, k]) / count for k in range(3)])
    faces = group[surface.triangles]
    a, b, c = faces.T
    faces = faces[(a != b) & (b != c) & (a != c)]
    _, kept = np.unique(np.sort(faces, axis=1), axis=0, return_index=True)
    return points, faces[np.sort(kept)]
