"""Outlines made fit for packing: cleaned, or refused with the reason.

No polygon reaches an engine unseen: a crossing outline would be packed wrongly by one engine, and
the other would die of it.
"""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import pairwise

from drafting.geometry.area import ring_is_simple
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.ground.remembered import remembered
from drafting.layout.packing.model import Job, Kind, Ring, Strip, box_of, ring_area

NEAR = 1e-6
"""Share of an outline's box: corners nearer than this are one (ours)."""

THIN = 1e-9
"""Share of its box: an outline with less area has none (ours)."""

NARROWER = (
    "on a figure so small its allowances leave no room: write narrower ones under the garment's choices, as in "
    'seam_allowance = "2 mm" and curve_allowance = "2 mm", or change what makes the piece so narrow'
)
"""What helps where a cut line meets itself."""

FAR = 1e6
"""mm: no outline and no cloth is a kilometre long (ours)."""


def sound_ring(name: str, points: Ring) -> Ring:
    """Return the outline cleaned: anticlockwise, open, no corner twice.

    Raises `DraftError`, naming the piece, for an outline that is none: not numbers, too few
    corners, no area, or a line that crosses or touches itself.
    """
    for p in points:
        if not (math.isfinite(p.real) and math.isfinite(p.imag)):
            raise _refused(name, f"has a corner at ({p.real}, {p.imag}), which is no place")
    if len(set(points)) < 3:
        raise _refused(name, f"has {len(set(points))} different corners: an outline needs three")
    x0, y0, x1, y1 = box_of(points)
    size = max(x1 - x0, y1 - y0)
    if size > FAR:
        raise _refused(name, f"is {size / 1000:.3g} m large; was a unit mistaken?")
    # About its own corner: far away from 0 the last digits of a number are lost.
    ring = _no_twins(tuple(p - complex(x0, y0) for p in points), NEAR * size)
    if len(ring) < 3 or _on_one_line(ring, size):
        raise _refused(name, "has no area: its corners lie on one line")
    if not ring_is_simple(ring):
        raise _refused(name, "has a cut line that crosses or touches itself", NARROWER)
    ring = ring if ring_area(ring) > 0 else ring[::-1]
    return tuple(p + complex(x0, y0) for p in ring)


def sound_strip(strip: Strip) -> Strip:
    """Return the cloth, or refuse one that nothing can be laid on."""
    if not (math.isfinite(strip.width) and 0 < strip.width <= FAR):
        raise DraftError(
            "the cloth has no width to lay pieces on",
            value=f"{told(strip.width, 'fine')} usable",
            turn="give usable_width, or width and selvedge, in the fabric's file",
        )
    if not 0 <= strip.gap <= strip.width:
        raise DraftError(
            "the gap between pieces cannot be less than none",
            value=told(strip.gap, "fine"),
            reach=f"0 to {told(50.0)}",
            turn=f"{told(5.0)} leaves room for the blade",
        )
    for repeat in (strip.repeat, strip.repeat_across):
        if repeat is not None and not 0 < repeat <= FAR:
            raise DraftError("a repeat has a length", value=told(repeat, "fine"))
    return strip


def checked_job(job: Job) -> Job:
    """Return the job with every outline and the cloth made sound; raises `DraftError`."""
    kinds = tuple(_at_corner(kind) for kind in job.kinds)
    for copy in job.copies:
        if not copy.poses:
            raise _refused(job.kinds[copy.kind].name, "may not lie any way up at all")
    return Job(kinds, job.copies, sound_strip(job.strip))


def _on_one_line(ring: Ring, size: float) -> bool:
    far = max(ring, key=lambda p: abs(p - ring[0])) - ring[0]
    off = max(abs(((p - ring[0]) * far.conjugate()).imag) for p in ring)
    return off <= THIN * size * size


@remembered(600)
def _at_corner(kind: Kind) -> Kind:
    """Return a kind with a sound ring, the lower left corner of its box at 0."""
    ring = sound_ring(kind.name, kind.ring)
    x0, y0, _, _ = box_of(ring)
    level = None if kind.level is None else kind.level - x0
    line = None if kind.line is None else kind.line - y0
    return replace(kind, ring=tuple(p - complex(x0, y0) for p in ring), level=level, line=line)


def _no_twins(ring: Ring, near: float) -> Ring:
    kept = [ring[0], *(b for a, b in pairwise(ring) if abs(b - a) > near)]
    while len(kept) > 1 and abs(kept[-1] - kept[0]) <= near:
        kept.pop()
    return tuple(kept)


def _refused(name: str, what: str, turn: str = "draft the piece again") -> DraftError:
    return DraftError(f"{name} cannot be laid out: it {what}", turn=turn)
