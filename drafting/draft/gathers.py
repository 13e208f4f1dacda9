"""Where along a seam its gathers lie: between the notches that hold it plain, else all along."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from drafting.draft.walk import Walk

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


def _run(walked: Walk) -> Gathers:
    """Return one seam's gathers: from the first to the last stretch between notches that is gathered."""
    drawn_first = walked.a_length > walked.a_sewn + 1e-9
    spans = [span if drawn_first else span[::-1] for span in walked.spans if max(span) > END]
    full = [i for i, (drawn, held) in enumerate(spans) if drawn > PLAIN * held]
    run = spans[full[0] : full[-1] + 1] if full else spans
    return Gathers(sum(d for d, _ in run), sum(h for _, h in run), len(run) < len(spans))
