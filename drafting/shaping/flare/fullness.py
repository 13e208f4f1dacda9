"""Gathers: one rule of drawn and sewn length, and the arithmetic around it. mm.

A gathered edge is drawn longer than it is sewn: ratio = drawn / sewn. Poof, elastic and frills all
say it with the same two numbers. Ratios: 1.5 light, 2 standard, 3 full (common practice).
"""

from __future__ import annotations

from dataclasses import replace

from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.piece import Notch
from drafting.draft.roles import NotchKind
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.lengths import told

QUARTERS = (0.25, 0.5, 0.75)

BULKY = 4.0
"""mm: a gathered seam thicker than this before its band is hard to sew and to press (ours; common
practice has 6 mm as too much and chiffon's 1.2 mm as nothing)."""

HEAVY_RATIO = 1.5
"""The most that heavy cloth should be gathered (common practice: not above 1.5-2)."""


def flat_length(sewn: float, ratio: float) -> float:
    """Return the length to cut for an edge that is gathered up to `sewn` at `ratio`.

    >>> flat_length(254.0, 1.5), flat_length(254.0, 3.0)
    (381.0, 762.0)
    """
    if not ratio >= 1:
        raise DraftError(
            "a gathered edge is longer than what it is sewn to", value=f"ratio {ratio:g}", reach="1 or more"
        )
    return sewn * ratio


def ratio_of_percentage(percent: float) -> float:
    """Return the ratio of a theatre's fullness in percent: 100 % is as much again, ratio 2.

    >>> ratio_of_percentage(100), ratio_of_percentage(50)
    (2.0, 1.5)
    """
    return 1 + percent / 100


def gathers_thickness(ratio: float, thickness: float) -> float:
    """Return how thick (mm) the gathers lie at the seam, in both layers of the seam's folds.

    >>> gathers_thickness(3.0, 2.0)
    6.0
    """
    return ratio * thickness


def bulk_said(where: str, ratio: float, thickness: float | None) -> tuple[Finding, ...]:
    """Return a warning where gathers of this cloth are too bulky to sew."""
    if thickness is None or gathers_thickness(ratio, thickness) <= BULKY:
        return ()
    thick = gathers_thickness(ratio, thickness)
    return (
        Finding(
            "bulk",
            "warning",
            where,
            thick,
            BULKY,
            f"Gathered {ratio:.1f} to one, cloth of {told(thickness, 'small')} lies about {told(thick)} thick at "
            f"the seam before the band is sewn on. Gather at most {HEAVY_RATIO:g} to one, or lay pleats.",
        ),
    )


def quarter_marks(length: float) -> tuple[Notch, ...]:
    """Return the notches at the quarters of an edge, mm from its start."""
    return tuple(
        Notch(f"quarter_{i}", share * length, kind=NotchKind.QUARTER) for i, share in enumerate(QUARTERS, 1)
    )


def gathered(draft: Draft, *refs: EdgeRef, sewn: float) -> Draft:
    """Return the draft with these edges gathered up to `sewn` mm in all, quarters marked.

    Raises `DraftError` where they are drawn shorter than that.
    """
    drawn = sum(draft.edge(ref).length for ref in refs)
    if sewn > drawn + 1e-6:
        raise DraftError(
            f"{' and '.join(' '.join(ref) for ref in refs)} cannot be gathered",
            value=f"{told(drawn)} drawn, {told(sewn)} to be sewn to",
            reach=f"up to {told(drawn, 'most')}",
            turn="draw the edge wider, or gather it up to less",
        )
    for ref in refs:
        edge = draft.edge(ref)
        marks = quarter_marks(edge.length)
        kept = tuple(n for n in edge.notches if n.kind is not NotchKind.QUARTER)
        pulled = replace(
            edge, sewn=edge.length * sewn / drawn, notches=tuple(sorted((*kept, *marks), key=lambda n: n.at))
        )
        draft = draft.with_pieces([draft[ref[0]].with_edges(pulled)])
    return draft
