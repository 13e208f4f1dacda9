"""How long drafting, checking, finishing and drawing take: python -m tests.benchmarks.draft_speed

The processor's time, not the clock's, of bodice and sleeve (and of the whole shirt) for 60 adults of
`bdims` (Heinz et al. 2003), one after the other: nothing is drafted twice, so nothing that the kit
remembers helps. One round that is not counted fills the caches that every run shares.
"""

from __future__ import annotations

import itertools
import statistics
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from drafting.blocks import Block
from drafting.body import Body
from drafting.checks import check_draft, check_pattern
from drafting.costume.choices import block_named, choose
from drafting.costume.garment import drafted
from drafting.draft.walk import notched
from drafting.export.svg import svg_text
from drafting.finish import finish
from drafting.geometry.brent import brent_zero
from drafting.ground.scale import body_scale
from drafting.reading.given import Origin
from drafting.sheet.overview import overview_sheet
from tests.blocks.figures import pair_block
from tests.bodies import bdims

BODIES = 60
STAGES = ("draft", "check of the draft", "finish", "check of the cut", "sheet", "svg")


class Solving:
    """Adds up the time spent in Brent's method; a solver within another counts once."""

    def __init__(self) -> None:
        self.seconds = 0.0
        self._depth = 0

    def __call__(self, *args: Any, **kwargs: Any) -> Any:
        start, self._depth = time.process_time(), self._depth + 1
        try:
            return brent_zero(*args, **kwargs)
        finally:
            self._depth -= 1
            if self._depth == 0:
                self.seconds += time.process_time() - start


@contextmanager
def watched() -> Iterator[Solving]:
    """Have every module of the kit solve through one `Solving`."""
    solving = Solving()
    users = [
        m
        for name, m in sys.modules.items()
        if name.startswith("drafting.") and vars(m).get("brent_zero") is brent_zero
    ]
    for module in users:
        setattr(module, "brent_zero", solving)  # noqa: B010
    try:
        yield solving
    finally:
        for module in users:
            setattr(module, "brent_zero", brent_zero)  # noqa: B010


def times(body: Body, block: Block) -> list[float]:
    """Return the ms that each of the `STAGES` takes for one body."""
    chosen = choose(block, {}, body_scale(body), Origin())
    at = [time.process_time()]
    draft = notched(drafted(body, None, block, chosen))
    at.append(time.process_time())
    check_draft(draft, body)
    at.append(time.process_time())
    pattern = finish(draft, block.name, "shell", chosen.finish)
    at.append(time.process_time())
    check_pattern(pattern)
    at.append(time.process_time())
    sheet = overview_sheet([pattern], "speed")
    at.append(time.process_time())
    svg_text(sheet, fit=True)
    at.append(time.process_time())
    return [1e3 * (b - a) for a, b in itertools.pairwise(at)]


def report(block: Block) -> Iterator[str]:
    """Yield the lines that tell one block's medians and the share of solving in its draft."""
    bodies = bdims(BODIES)
    for body in bodies[:3]:
        times(body, block)
    with watched() as solving:
        rows = [times(body, block) for body in bodies]
    by_stage = dict(zip(STAGES, zip(*rows, strict=True), strict=True))
    share = 1e3 * solving.seconds / sum(by_stage["draft"])
    yield f"{block.name}, median ms a body of {len(bodies)}:"
    for stage, spent in by_stage.items():
        yield f"  {stage:<20}{statistics.median(spent):6.1f}"
    stood = statistics.median(row[0] + row[1] for row in rows)
    yield f"  draft and its check {stood:6.1f}; {100 * share:.0f} % of the draft is solving by Brent's method"


def main() -> None:
    for block in (pair_block(), block_named("shirt")):
        print("\n".join(report(block)))


if __name__ == "__main__":
    main()
