"""What each step of a plan sews, read from its words: rows of (kind, stitch, mm, length, width, plies)."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator

from tests.making.recounted_alone import ALONE, Row
from tests.making.stitched import LONG, OVERCAST, Record, Sewn

ONCE_MORE = {
    "over the curve a second time": 1.0,
    "Make it a French seam": 1.0,
    "turn the outer yoke's edge in along its line": 1.0,
    "turned over the edge, and stitched in the ditch": 1.0,
    "A narrow hem: stitch along its fold line": 1.0,
    "sew the underarm a second time between the notches": 1 / 3,
}
"""Words by which what was sewn is sewn once more, or a third of it: an armhole from notch to notch."""

NO_ROW = (
    "Neaten the inner edge of the",
    "Bind the inner edge of the",
    "to the wrong side along its fold line",
    "Fold the vent of the",
    "fold it along its two lines as its arrow points",
)
"""Words of work along an edge that sews nothing along it."""

OPENED = {
    "Finish the vent": "",
    "Finish the fly": "machine",
    "Finish the waist": "machine twice",
    "Turn in the free front edge": "by hand",
    "Overcast the free front edge": "",
    "Press the free front edge": "",
    "Fold the free front edge": "",
    "Turn in what stays open": "machine",
    "Clip the allowance of": "by hand",
    "Turn the allowance (": "by hand",
    "Bind the raw edge": "machine",
    "Turn in the ends of the facing": "by hand",
}
"""How sentences about an edge that stays open begin, and what they sew along it."""

CAST = {
    "Overcast both allowances together": 1,
    "overcast them together with a fine stitch": 1,
    "Overcast the allowances together": 1,
    "Overcast the raw edge first": 1,
    "Neaten the inner edge of the": 1,
    "neaten the bag": 1,
    "neaten them": 1,
    "Neaten the pocket's top": 1,
    "Overcast each allowance by itself": 2,
    "Neaten each allowance by itself": 2,
}
"""Words by which a raw edge is overcast: once along what is sewn, or on both sides of it."""


def rows(plan: Sewn, step: Record) -> Iterator[Row]:
    """Yield every row of stitches that a step tells of."""
    if step["verb"] in ALONE:
        yield from ALONE[step["verb"]](plan, step)
    elif step["verb"] == "bind" and any(words in step["do"] for words in OPENED):
        yield from _opened(plan, step)
    elif step["stitch"] is not None or step["verb"] in ("join", "face", "dart", "hem", "bind", "trim", "casing"):
        yield from _seam(plan, step, along(plan, step))
    yield from _drawn_up(plan, step)


def along(plan: Sewn, step: Record) -> float:
    """Return the mm that a step sews along: its seams, its edges, or the darts inside its pieces."""
    garment = step["garment"]
    if step["verb"] == "trim" and step["along"]:
        each = [(plan.edge(garment, (p, e)), plan.pieces(garment)[p]["count"]) for p, e in step["along"]]
        return math.fsum(long + 2 * 15.0 * count for long, count in each)  # both ends, as wide as an allowance
    if step["seams"]:
        marks = _on_marks(plan, step) if step["verb"] == "trim" else 0.0
        return marks + math.fsum(plan.seam(garment, name) for name in step["seams"])
    if "zip" in " ".join(step["notions"]) and step["edges"]:
        return _zip(plan, step)
    if step["edges"]:
        return math.fsum(plan.edge(garment, (p, e)) for p, e in step["edges"])
    if "same seams as the shell" in step["do"]:
        return _lining_seams(plan, step)
    if step["verb"] == "dart":
        return plan.darts(garment, iter(_cut(step)))
    return _on_marks(plan, step)


def _zip(plan: Sewn, step: Record) -> float:
    """Return the mm along both edges of a zip: twice the hand that has most of it."""
    own, garment = plan.pieces(step["garment"]), step["garment"]
    return math.fsum(plan.lines[garment, p][e] * (2 if own[p]["mirrored_pair"] else 1) for p, e in step["edges"])


def _cut(step: Record) -> list[str]:
    """Return the pieces that a step takes as they were cut, or stiffened since."""
    return [part.partition(".")[2] or _stiffened(part) for part in step["uses"]]


def _stiffened(part: str) -> str:
    """Return the piece in a part that an earlier step made of it: `shirt: front stiffened [3]`."""
    return part.partition(": ")[2].split(" ")[0]


def _lining_seams(plan: Sewn, step: Record) -> float:
    """Return the mm of the shell's seams that a step names for the lining, and of the darts it names."""
    garment = step["garment"]
    (named,) = re.findall(r"same seams as the shell: (.*?)\. Press", step["do"])
    own = {s["seam"].replace("-", " ").replace("_", " "): s["seam"] for s in plan.record["seams"]}
    long = math.fsum(plan.seam(garment, own[name.strip()]) for name in named.split(", "))
    if "Its darts come first" in step["do"]:
        linings = (n for n, p in plan.pieces(garment).items() if p["fabric"] == "lining" and p["lies_behind"])
        long += plan.darts(garment, linings)
    return long


def _on_marks(plan: Sewn, step: Record) -> float:
    """Return the mm along what is sewn onto a piece: round its outline, or along its longest edge alone."""
    garment, do = step["garment"], step["do"]
    found = re.search(r": (\S+) with ([^[]+) \[", step["makes"])
    if found is None:
        return 0.0
    onto = plan.pieces(garment)[found[1]]
    hands = 1 if "alone:" in do else onto["count"]
    mark = plan.lines[garment, found[1]].get(f"placement.{found[2].replace(' ', '_')}", 0.0)
    times, edge = next((how for words, how in ON.items() if words in do), (1, False))
    return hands * times * (longest(plan, garment, found[2]) if edge else mark)


ON = {
    "sew it on along its lower line": (1, True),
    "top to top, and stitch it down": (1, True),
    "upper line of its outline": (2, True),
    "sew it on along the same line": (2, True),
    "Pull the slit open into one straight line": (4, False),
    "Sew the narrow strip to the edge of the slit": (2, False),
    "Sew the placket to the other edge of the slit": (4, False),
    "along the line of the mouth": (2, True),
    "Slip the back of the pocket behind the mouth": (1, True),
    "its straight edge along the seam's": (1, True),
}
"""How often what is sewn on is sewn along its longest free edge (True), or along its mark; else once round it."""


def longest(plan: Sewn, garment: str, piece: str) -> float:
    """Return the longest edge of a piece that nothing is sewn to, mm."""
    drawn, edges = plan.lines[garment, piece], plan.pieces(garment)[piece]["edges"]
    return max((drawn[edge["edge"]] for edge in edges if edge["kind"] == "free"), default=0.0)


def _seam(plan: Sewn, step: Record, long: float) -> Iterator[Row]:
    """Yield the rows by the stitch of the setting, and whatever the words add to it."""
    do = step["do"]
    stitch = step["stitch"] or "301"
    kind = "overlock" if stitch in ("504", "514") else "sewing"
    thick = 3 if step["edges"] or step["verb"] in ("hem", "casing") else 2
    if not any(words in do for words in NO_ROW):
        times = 1 + math.fsum(more for words, more in ONCE_MORE.items() if words in do)
        yield kind, stitch, times * long, step["stitch_length"] or 2.5, step["stitch_width"] or 0.0, thick
    if "slip-stitch it, or stitch in the ditch" in do or "Catch its raw edge down inside by hand" in do:
        yield "sewing", "200", long, 4.0, 0.0, 2
    if "hold it with clips, and stitch in the ditch" in do:
        yield "sewing", "301", long, 2.5, 0.0, 3
    if "Catch the neatened edge of the facing" in do or "Catch the inner edge of the facing" in do:
        yield "sewing", "200", _inner(plan, step), 4.0, 0.0, 2
    if "Sew the allowances to the facing, close beside the seam" in do:
        yield "sewing", "301", long, 2.5, 0.0, 2
    if "stitch it down close to that fold" in do and "turn the outer yoke's edge in" not in do:
        gives = stitch != "301"
        yield "sewing", "304" if gives else "301", long, 2.5, OVERCAST if gives else 0.0, 4
    if "Hold them with a row of topstitching" in do or "hold the edge with clips and topstitch it" in do:
        yield "sewing", "301", long, 2.5, 0.0, 3
    if step["seams"] and "Bind the raw edges with" in step["how"]:
        yield "sewing", "301", 2 * long, 2.5, 0.0, 2
    yield from _cast(plan, step, long)


def _inner(plan: Sewn, step: Record) -> float:
    """Return the mm of the inner edges of the facings in a step."""
    own = plan.pieces(step["garment"])
    sewn = {name for name in step["pieces"] if name in own}
    inner = ((p, e["edge"]) for p in sewn for e in own[p]["edges"] if e["role"] == "inner" and e["kind"] == "free")
    return math.fsum(plan.edge(step["garment"], ref) for ref in inner)


def _cast(plan: Sewn, step: Record, long: float) -> Iterator[Row]:
    """Yield the overcasting of raw edges that the words ask for."""
    garment = step["garment"]
    bags = [s["seam"] for s in plan.record["seams"] if s["garment"] == garment and s["kind"] == "bag"]
    round_bags = math.fsum(plan.seam(garment, name) for name in step["seams"] if name in bags)
    for words, times in CAST.items():
        if words not in step["do"]:
            continue
        mm = times * (long - round_bags)
        if words in ("neaten the bag", "neaten them"):
            mm = round_bags
        elif words == "Neaten the pocket's top":
            found = re.search(r": (\S+) with ([^[]+) \[", step["makes"])
            assert found
            mm = plan.pieces(garment)[found[1]]["count"] * longest(plan, garment, found[2])
        elif "the facing cut on to the" in step["do"] or "the facing grown on to the" in step["do"]:
            facings = (
                (p, e["edge"])
                for p in _cut(step)
                for e in plan.pieces(garment)[p]["edges"]
                if e["role"] == "facing"
            )
            mm = math.fsum(plan.edge(garment, ref) for ref in facings)
        yield edge_of_cloth(plan, mm)


def edge_of_cloth(plan: Sewn, mm: float) -> Row:
    """Return a row of overcasting: by a machine for it, or by a zigzag over the edge."""
    return ("overlock", "504", mm, 2.5, 0.0, 2) if plan.overedge else ("sewing", "304", mm, 2.5, OVERCAST, 1)


def _opened(plan: Sewn, step: Record) -> Iterator[Row]:
    """Yield what is sewn along edges that stay open, sentence by sentence."""
    edges = {f"{p} {e}".replace("-", " ").replace("_", " "): (p, e) for p, e in step["edges"]}
    starts = sorted(m.start() for words in OPENED for m in re.finditer(re.escape(words), step["do"]))
    for at, end in zip(starts, [*starts[1:], None], strict=True):
        told = step["do"][at:end]
        how = next(how for words, how in OPENED.items() if told.startswith(words))
        found = re.search(r"\(([^)]*)\)|allowance of (.*?) to a hair", told)
        assert found, told
        mm = math.fsum(plan.edge(step["garment"], edges[n]) for n in (found[1] or found[2]).split(", "))
        if "overcast its edges" in told or "Overcast the free front edge" in told:
            yield edge_of_cloth(plan, mm)
        if how == "by hand" and "with a glue" in told:
            continue
        if how == "by hand" and "topstitch" not in told and "stitch it once" not in told:
            yield "sewing", "200", mm, 4.0, 0.0, 2
        elif how:
            times = 2 if how == "machine twice" else 1
            yield "sewing", step["stitch"], times * mm, step["stitch_length"], step["stitch_width"], 3


def _drawn_up(plan: Sewn, step: Record) -> Iterator[Row]:
    """Yield the long rows by which a seam is gathered, as long as it lies flat, or a cap is eased."""
    for drawn in re.findall(r"Gather (?:the )?([\d.]+) cm ", step["do"]):
        own = step["seams"] or step["basted"]
        times = max(plan.rings(step["garment"], s) for s in own)
        yield "sewing", "301", 2 * times * 10 * float(drawn), LONG, 0.0, 1
    if " of long stitches" in step["do"] and "over the cap" in step["do"]:
        caps = math.fsum(plan.seam(step["garment"], s) for s in step["basted"])
        rows_told = 2 if "Two rows" in step["do"] else 1
        yield "sewing", "301", rows_told * caps, LONG, 0.0, 1
