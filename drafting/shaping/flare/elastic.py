"""Elastic in a casing: the loop that holds, and whether it passes over what it is pulled over. mm.

Loop = girth x factor, cut = loop + overlap; pulled open it must pass the widest part below (the
reference's arithmetic of elastic). A loop that cannot is first raised, at most to 0.98 of the girth,
then given the least slit; it is refused only where the maker fixed the loop and forbade a slit.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from drafting.draft.draft import EdgeRef, Notion
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.lengths import told

OVERLAP = 25.0
"""mm by which the ends of a loop are lapped and sewn (common practice)."""

LOOSEST = 0.98
"""A loop longer than this share of the girth no longer holds (ours)."""

TIGHT = 0.85
"""A loop shorter than this share of a neck, arm or leg is warned of (from memory)."""

CASING_ROOM, TURN_IN = 3.0, 8.0
"""mm: play of the elastic in its casing, and what is turned under at its edge (ours)."""


SOLD = (6.0, 8.0, 10.0, 12.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0)
"""mm: widths that elastic is sold in (from memory)."""


@dataclass(frozen=True, slots=True)
class Elastic:
    """A finished `loop` and the length to `cut`, mm; `passes` is what it opens to; `slit` its help.

    `raised` says that the loop was made longer than asked so that it passes.
    """

    loop: float
    cut: float
    passes: float
    raised: bool = False
    slit: float = 0.0


def elastic_loop(
    girth: float,
    over: float,
    opens: float,
    *,
    factor: float = 0.92,
    fixed: float | None = None,
    overlap: float = OVERLAP,
    slit: bool = False,
    where: str = "waist",
) -> Elastic:
    """Return the elastic that holds `girth` and passes `over` when it opens to `opens` times itself.

    `fixed` is a loop the maker insists on. Raises `DraftError` where it cannot pass and no `slit` is
    allowed, naming the least loop and the softer elastic that would do.

    >>> loop = elastic_loop(720, 980, 1.8, factor=0.85)
    >>> round(loop.loop), round(loop.cut), round(loop.passes)
    (612, 637, 1102)
    """
    loop = girth * factor if fixed is None else fixed
    raised = False
    if loop * opens < over and fixed is None:
        loop, raised = max(loop, min(over / opens, LOOSEST * girth)), True
    passes = loop * opens
    if passes >= over - 1e-9:
        return Elastic(loop, loop + overlap, passes, raised)
    if not slit:
        raise DraftError(
            f"the elastic at the {where} opens to {told(passes)} and cannot pass {told(over)}",
            value=f"a loop of {told(loop)} that opens to {opens:g} times its length",
            reach=f"a loop of {told(over / opens, 'least')} or more, or elastic that opens to "
            f"{math.ceil(100 * over / loop - 1e-9) / 100:g} times",
            turn="choose one of the two, or leave an opening",
        )
    return Elastic(loop, loop + overlap, passes, raised, (over - passes) / 2)


def sold_width(width: float) -> float:
    """Return the width (mm) that elastic is sold in nearest to this one; as it is, where none is so narrow.

    >>> sold_width(25.0), sold_width(16.7), sold_width(2.5)
    (25.0, 15.0, 2.5)
    """
    return width if width < SOLD[0] else min(SOLD, key=lambda sold: abs(sold - width))


def casing_depth(width: float, thickness: float) -> float:
    """Return the allowance (mm) that is turned over elastic of this width, its edge turned in."""
    return width + CASING_ROOM + 2 * thickness + TURN_IN


def elastic_notion(elastic: Elastic, where: str, count: int, width: float, edges: tuple[EdgeRef, ...]) -> Notion:
    """Return what to buy: `count` times this elastic, `width` mm wide, for the casing at `where`.

    `edges` are those that it is drawn through.
    """
    note = (
        f"{told(width, 'small')} wide, finished loop {told(elastic.loop)}, opens to {told(elastic.passes)}; ends "
        f"lapped {told(elastic.cut - elastic.loop)} and sewn; quarter it and pin quarter to quarter"
    )
    return Notion("elastic", where, count, elastic.cut, note, size=width, edges=edges, loop=elastic.loop)


def tight_said(elastic: Elastic, where: str, limb: float) -> tuple[Finding, ...]:
    """Warn of a loop that is more than 15 % shorter than the limb (girth, mm) it lies round."""
    if elastic.loop >= TIGHT * limb:
        return ()
    return (
        Finding(
            "elastic",
            "warning",
            where,
            elastic.loop,
            TIGHT * limb,
            f"The loop at the {where} is {told(elastic.loop)}, {100 * (1 - elastic.loop / limb):.0f} % shorter "
            f"than the limb: less than {told(TIGHT * limb)} (more than {100 * (1 - TIGHT):.0f} %) can hinder the "
            "blood. Loosen it, and never wear marks into the skin.",
        ),
    )
