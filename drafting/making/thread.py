"""Thread: how much a costume takes, by stitch and seam length.

`Source.THREAD_GUIDE` gives thread per length of seam: 301 2.5, 304 5.5, 101 5,
103 4.5. Others are from memory: 401 5.5, 504 14, 514 18 (with all their threads), hand stitches 200 and
202 3 and 4, the three-step zigzag 7.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping

from drafting.costume.garment import MadeGarment
from drafting.costume.make import Made
from drafting.costume.workroom import THREE_STEP
from drafting.making.model import Setting
from drafting.making.seam_lengths import hem_lengths, seam_lengths
from drafting.making.settings.edges import edge_key

RATIOS = {
    "101": 5.0,
    "103": 4.5,
    "200": 3.0,
    "202": 4.0,
    "301": 2.5,
    "304": 5.5,
    THREE_STEP: 7.0,
    "401": 5.5,
    "406": 18.0,
    "504": 14.0,
    "514": 18.0,
}
"""Thread per length of seam (`Source.THREAD_GUIDE`; those not in it from memory)."""

WASTE = 0.25
"""Share added for ends, trials and unpicking (common practice: a quarter)."""

BASTED = 2.0
"""Rows of basting or gathering beside a seam that is eased or gathered, sewn once each."""

BUTTON = 1000.0
"""mm of thread for one buttonhole and its button (from memory)."""


def thread_ratio(stitch: str) -> float:
    """Return thread per length of seam; a stitch that nobody lists counts as the greediest."""
    return RATIOS.get(stitch, max(RATIOS.values()))


def seam_thread(made: Made, settings: Mapping[tuple[str, str], Setting]) -> dict[str, float]:
    """Return mm of thread by stitch: seams, hems and openings, gathers, buttonholes; no waste yet."""
    total: dict[str, float] = defaultdict(float)
    for garment in made.garments:
        for name, length in seam_lengths(garment).items():
            stitch = _stitch(settings, garment.name, name)
            total[stitch] += length * thread_ratio(stitch)
        for (piece, edge), length in hem_lengths(garment).items():
            stitch = _stitch(settings, garment.name, edge_key(piece, edge))
            total[stitch] += length * thread_ratio(stitch)
        total["301"] += BASTED * gathered_length(garment) * thread_ratio("301")
        total["301"] += BUTTON * _buttons(garment)
    return {stitch: length for stitch, length in total.items() if length}


def gathered_length(garment: MadeGarment) -> float:
    """Return the drawn length (mm) of all edges that are gathered or eased, both hands."""
    draft, eased = garment.draft, 0.0
    for seam in draft.seams:
        if seam.eased is not None and seam.ease:
            eased += 2 * abs(seam.eased[1] - seam.eased[0])
    gathers = (
        edge.length * piece.count for piece in draft.pieces for edge in piece.edges if edge.sewn is not None
    )
    return eased + sum(gathers)


def _stitch(settings: Mapping[tuple[str, str], Setting], garment: str, seam: str) -> str:
    setting = settings.get((garment, seam))
    return setting.stitch if setting else "301"


def _buttons(garment: MadeGarment) -> int:
    return sum(notion.count for notion in garment.draft.notions if notion.what == "button")
