"""Where along a seam its gathers lie: between the notches that hold it plain, else all along."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from drafting.draft.draft import Draft, EdgeRef, Seam
from drafting.draft.walk import Walk, walk

PLAIN = 1.05
"""Drawn over held length of a stretch between two notches up to which it is eased, not gathered (ours)."""

END = 0.01
"""mm between a notch and the end that it marks: no stretch of a seam (ours)."""


@dataclass(frozen=True, slots=True)
class Gathers:
    """How long the gathered stretch is as drawn and as held, mm; `between`: notches bound it."""

    drawn: float
    held: float
    between: bool

    @property
    def ratio(self) -> float:
        return self.drawn / self.held


def gathers_along(walks: Iterable[Walk]) -> Gathers | None:
    """Return the gathers of seams that are drawn up together, as those of one cap; None where there are none."""
    found = [_run(walked) for walked in walks if walked.gather_ratio is not None]
    if not found:
        return None
    return Gathers(sum(r.drawn for r in found), sum(r.held for r in found), any(r.between for r in found))


def both_gathered(walked: Walk) -> tuple[Gathers, Gathers] | None:
    """Return the gathers of both edges of a seam, drawn up all along; None where one of them lies flat."""
    sides = (walked.a_length, walked.a_sewn), (walked.b_length, walked.b_sewn)
    if any(drawn <= sewn + 1e-9 for drawn, sewn in sides):
        return None
    a, b = (Gathers(drawn, sewn, between=False) for drawn, sewn in sides)
    return a, b


def gathered_stretches(draft: Draft, seams: Iterable[Seam]) -> dict[EdgeRef, tuple[float, float]]:
    """Return from where to where each gathered edge of these seams is drawn up, mm from its start.

    Between notches, or all of it.
    """
    found: dict[EdgeRef, tuple[float, float]] = {}
    for walked in (walk(draft, seam) for seam in seams):
        if walked.gather_ratio is None:
            continue
        if both_gathered(walked):
            refs = (*walked.seam.a, *walked.seam.b)
            found |= {ref: (0.0, draft.edge(ref).length) for ref in refs}
            continue
        on_a = walked.a_length > walked.a_sewn + 1e-9
        spans, run = _full(walked)
        start, end = (sum(d for d, _ in spans[:i]) for i in (run.start, run.stop))
        along = 0.0
        for ref in walked.seam.a if on_a else walked.seam.b:
            long = draft.edge(ref).length
            low, high = max(0.0, start - along), min(long, end - along)
            if high > low:
                found[ref] = (low, high) if on_a else (long - high, long - low)
            along += long
    return found


def _full(walked: Walk) -> tuple[list[tuple[float, float]], range]:
    """Return the spans of a gathered seam, drawn and held, and which lie from first to last gathered one."""
    drawn_first = walked.a_length > walked.a_sewn + 1e-9
    spans = [span if drawn_first else span[::-1] for span in walked.spans if max(span) > END]
    full = [i for i, (drawn, held) in enumerate(spans) if drawn > PLAIN * held]
    return spans, range(full[0], full[-1] + 1) if full else range(len(spans))


def _run(walked: Walk) -> Gathers:
    """Return one seam's gathers: from the first to the last stretch between notches that is gathered.

    Where both edges are drawn up, those of the first.
    """
    if both := both_gathered(walked):
        return both[0]
    spans, full = _full(walked)
    run = [spans[i] for i in full]
    return Gathers(sum(d for d, _ in run), sum(h for _, h in run), len(run) < len(spans))
