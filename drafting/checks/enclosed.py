"""French seams, sewn twice with their raw edges between: which seams are, and are they wide enough?"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator

from drafting.body import Body
from drafting.draft.bias import on_bias
from drafting.draft.by_role import between_yokes
from drafting.draft.draft import Draft, Seam
from drafting.draft.pattern import Pattern
from drafting.draft.roles import SeamKind
from drafting.fabric import Fabric, handling
from drafting.finish.choices import TIGHT, AllowedFor, proposed
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.scale import body_scale

NOTICED = 1.0
"""mm of ease from which it is worth a word (ours): less is taken up by the pins."""

FRENCH = frozenset({SeamKind.SIDE, SeamKind.SHOULDER, SeamKind.SLEEVE, SeamKind.INSEAM, SeamKind.PLAIN})
"""Seams straight enough for a French seam (common practice)."""

STRAIGHT = 0.995
"""Share of its length that an edge's ends lie apart from which it is straight (ours)."""

OUTSIDE, TRIMMED = 7.0, 3.0
"""mm: how far outside the line the first of two rows lies, and to what it is trimmed (common practice: 6 to 7,
and 3)."""


def eased(ease: float) -> bool:
    return abs(ease) > NOTICED


def french(draft: Draft, seam: Seam, fabric: Fabric | None) -> bool:
    """Return whether a seam is a French one: sheer, not eased, clipped, tightly curved, on the bias or in a
    double yoke."""
    if fabric is None or handling(fabric).neatens != "french" or fabric.weave == "knit":
        return False
    if between_yokes(draft, seam) or any(draft.edge(ref).role in TIGHT for ref in (*seam.a, *seam.b)):
        return False
    plain = seam.kind in FRENCH or (seam.kind is SeamKind.PANEL and _straight(draft, seam))
    return plain and not eased(seam.ease) and not on_bias(draft, seam)


def _straight(draft: Draft, seam: Seam) -> bool:
    """Return whether both sides of a seam are straight, neither gathered: a panel's that needs no clipping."""
    edges = [draft.edge(ref) for ref in (*seam.a, *seam.b)]
    return all(e.sewn is None and abs(e.path.end - e.path.start) >= STRAIGHT * e.length for e in edges)


def narrowest(pattern: Pattern, seam: Seam) -> float:
    """Return the least allowance along a seam, mm."""
    cut = {one.piece.name: one.allowances for one in pattern.pieces}
    return min(cut[piece][edge] for piece, edge in (*seam.a, *seam.b))


def first_row(allowance: float) -> float:
    """Return how far outside the line the first row of a French seam lies, mm; half of what there is at most.

    >>> first_row(15.0), first_row(10.0)
    (7.0, 5.0)
    """
    return min(OUTSIDE, allowance / 2)


def enclosed_wide_enough(draft: Draft, pattern: Pattern, body: Body, fabric: Fabric | None) -> Iterator[Finding]:
    """Say where French seams have less allowance than they take; with too little to trim they cannot be sewn."""
    takes = proposed(body_scale(body), AllowedFor(enclosed=True))["seam_allowance"]
    found: dict[float, list[str]] = defaultdict(list)
    for seam in draft.seams:
        if french(draft, seam, fabric) and (own := narrowest(pattern, seam)) < takes - 0.5:
            found[round(own, 1)].append(seam.name)
    for own, seams in found.items():
        names = ", ".join(seams)
        bad = first_row(own) <= TRIMMED + 1.0
        then = (
            "that is too little to sew it twice and trim between"
            if bad
            else f"the first row then lies {told(first_row(own), 'small')} outside the line, and the seam is "
            "harder to sew"
        )
        yield Finding(
            check="French seam",
            level="warning" if bad else "note",
            where=names,
            value=own,
            wanted=takes,
            sentence=f"French seams ({names}) take {told(takes)} of allowance and have {told(own)}: {then}. Leave "
            "`seam_allowance` out, or make it wider.",
        )
