"""Work that is counted by what it is, whatever its seam: basted, tried in cheap cloth, felled, barred, boned."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterator

from tests.making.stitched import BUTTON, Record, Sewn

Row = tuple[str, str, float, float, float, int]
"""A row of stitches: kind, stitch, mm, stitch length and width in mm, plies."""


def _basted(plan: Sewn, step: Record) -> Iterator[Row]:
    if step["holds"] != "clips":
        long = math.fsum(plan.seam(step["garment"], s) for s in step["basted"])
        if "sleeve" not in step["makes"]:
            shell = (
                n
                for n, p in plan.pieces(step["garment"]).items()
                if not p["lies_behind"] and "sleeve" not in p["role"]
            )
            long += plan.darts(step["garment"], shell)
        yield "basting", "209", long, step["stitch_length"], 0.0, 2


def _toile(plan: Sewn, step: Record) -> Iterator[Row]:
    own = [s for s in plan.record["seams"] if s["garment"] == step["garment"] and s["kind"] != "facing"]
    long = math.fsum(plan.seam(step["garment"], s["seam"]) for s in own)
    shell = (n for n, p in plan.pieces(step["garment"]).items() if not p["lies_behind"])
    yield "mock-up", "301", long + plan.darts(step["garment"], shell), 4.0, 0.0, 2


def _felled(plan: Sewn, step: Record) -> Iterator[Row]:
    """Yield the felling: along each edge of the lining that no seam of the lining joins."""
    garment = step["garment"]
    joined = {
        (p, e)
        for s in plan.record["seams"]
        if s["garment"] == garment and s["kind"] not in ("set in", "facing")
        for p, e in (*s["a"], *s["b"])
    }
    long = 0.0
    for name in _cut_or_made(plan, step):
        (behind,) = plan.pieces(garment)[name]["lies_behind"]
        edges = [e["edge"] for e in plan.pieces(garment)[name]["edges"]]
        long += math.fsum(plan.edge(garment, (name, e)) for e in edges if (behind, e) not in joined)
    yield "lining", "200", long, 4.0, 0.0, 2


def _cut_or_made(plan: Sewn, step: Record) -> list[str]:
    """Return the linings that are felled in: those of sleeves, or all the others."""
    sleeves = "lining of each sleeve" in step["do"]
    own = plan.pieces(step["garment"])
    linings = [n for n, p in own.items() if p["fabric"] == "lining" and p["lies_behind"]]
    return [n for n in linings if ("sleeve" in own[own[n]["lies_behind"][0]]["role"]) == sleeves]


def _barred(plan: Sewn, step: Record) -> Iterator[Row]:
    bars = sum(int(n) for n in re.findall(r"(\d+) bars?(?:, each| of)", step["do"]))
    yield "sewing", "304", 10.0 * bars, 0.4, 2.5, 4
    boxes = sum(int(n) for n in re.findall(r"(\d+) in all, (?:each )?with a rivet", step["do"]))
    yield "sewing", "301", 2 * (10.0 + 5.0) * boxes, 2.5, 0.0, 4


def _holes(plan: Sewn, step: Record) -> Iterator[Row]:
    told = re.findall(r"(\d+) × ([\d.]+) mm", step["do"])
    both = 2 * math.fsum(int(n) * float(mm) for n, mm in told)
    yield "buttonhole", step["stitch"], both, step["stitch_length"], step["stitch_width"], 2


def _buttons(plan: Sewn, step: Record) -> Iterator[Row]:
    yield "sewing", "101", step["count"] * BUTTON / 5.0, 2.5, 0.0, 2


def _bones(plan: Sewn, step: Record) -> Iterator[Row]:
    """Yield both sides of each channel, 6 mm beyond either end of its bone at most."""
    drawn = math.fsum(plan.marks(step["garment"], "bone"))
    yield "sewing", "301", 2 * (drawn - 12.0 * step["count"]), 2.5, 0.0, 2


def _taped(plan: Sewn, step: Record) -> Iterator[Row]:
    """Yield both edges of the tape along each front's longest roll line, 20 mm longer at either end."""
    lines = plan.marks(step["garment"], "roll_line")
    yield "sewing", "200", 2 * 2 * (max(lines) + 40.0), 6.0, 0.0, 2


def _padded(plan: Sewn, step: Record) -> Iterator[Row]:
    """Yield a head's seam of 300 mm and as much for a pad, at both shoulders, by hand."""
    yield "sewing", "200", 2 * 2 * 300.0, 8.0, 0.0, 2


def _fused(plan: Sewn, step: Record) -> Iterator[Row]:
    yield from ()


ALONE: dict[str, Callable[[Sewn, Record], Iterator[Row]]] = {
    "baste": _basted,
    "toile": _toile,
    "fell": _felled,
    "bar": _barred,
    "buttonhole": _holes,
    "button": _buttons,
    "bone": _bones,
    "stay": _taped,
    "pad": _padded,
    "fuse": _fused,
    "fit": _fused,
    "try": _fused,
    "hang": _fused,
    "starch": _fused,
}
"""What is counted by the kind of work, whatever its setting says."""
