"""What a wearer who sits is told of a garment that is drafted as for standing."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.body import Body
from drafting.draft.draft import Draft
from drafting.ground.findings import Finding

SITTING = "seated"
"""The check by which a block says that it is drafted for sitting."""

ON_THE_TRUNK = frozenset({"bust", "waist", "hip", "shoulders"})
"""Levels of what a chair and a lap change (common practice of adaptive clothing)."""


def drafted_standing(draft: Draft, body: Body) -> Iterator[Finding]:
    """Yield a note where a seated wearer's garment lies on the trunk and is drafted as for standing."""
    if body.posture != "seated" or any(finding.check == SITTING for finding in draft.findings):
        return
    if any(girth.level in ON_THE_TRUNK for girth in draft.girths):
        yield Finding(
            "drafted standing",
            "note",
            "posture",
            None,
            None,
            "The wearer sits, and this is drafted as for standing: trousers and breeches alone are drafted for "
            "sitting. Try the mock-up in the wearer's own chair: what lies under the seat pushes the back up "
            "to the neck, and what lies in the lap stands in folds. Pin how long it may be in front and behind.",
        )
