"""A stiff woven braid (crinoline or horsehair braid) set along the inside of the hem of what hangs. mm.

One edge lies on the hem line; the thread woven along the other is drawn up until that lies flat where the hem
curves (common practice). Its cut ends prick, so they are lapped or turned, and bound.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from drafting.draft.draft import Draft, Notion
from drafting.draft.piece import Piece, Placement
from drafting.draft.roles import EdgeRole
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.shaping.coat.hem_runs import HemRun, hem_runs
from drafting.shaping.coat.inside import beside_hems, skirted, slit_passed

HEM_BRAID = "hem braid"
"""What the notion is called, and the mark along the braid's upper edge."""

KIND = "crinoline braid with a thread along one edge"

LAPPED = 30.0
"""mm that a ring's ends lap, or that both ends of a length are turned in by (common practice: 25 to 40)."""

DRAWN = 2.0
"""mm all round from which it is told how much the thread draws up (ours)."""


def with_hem_braid(draft: Draft, hemmed: Sequence[Piece], width: float) -> Draft:
    """Return the draft with a braid `width` mm wide along these hems: its upper edge, what to buy and to say.

    Raises `DraftError` where a piece is lower than the braid.
    """
    if not hemmed:
        return draft
    passed = [slit_passed(piece, width, 0.0) for piece in hemmed]
    upper = [one.line for one in beside_hems([skirted(piece) for piece in passed], width, "hem_braid")]
    low = {piece.name: _hem_length(piece) for piece in passed}
    runs = hem_runs(draft, passed, low)
    above = hem_runs(draft, passed, {p.name: line.length for p, line in zip(passed, upper, strict=True)})
    marks = {p.name: Placement("hem_braid", line, HEM_BRAID) for p, line in zip(passed, upper, strict=True)}
    marked = [replace(p, placements=(*p.placements, marks[p.name])) for p in draft.pieces if p.name in marks]
    long, drawn = (sum(run.whole * run.count for run in found) for found in (runs, above))
    return draft.with_pieces(marked) + Draft(
        notions=tuple(_notions(runs, width)), findings=(_said(long, drawn, width),), facts={"hem_braid": long}
    )


def _hem_length(piece: Piece) -> float:
    return next(edge.length for edge in piece.edges if edge.role is EdgeRole.HEM)


def _notions(runs: Sequence[HemRun], width: float) -> Iterator[Notion]:
    for run in runs:
        ends = "its ends lapped" if run.closed else "both its ends turned in"
        yield Notion(
            HEM_BRAID,
            "hem" if len(runs) == 1 else f"{run.pieces[0]} hem",
            run.count,
            cut_length=run.whole + LAPPED,
            note=f"one edge on the hem line, {ends} and bound",
            kind=KIND,
            size=width,
            loop=run.whole if run.closed else None,
        )


def _said(long: float, drawn: float, width: float) -> Finding:
    sentence = f"A braid {told(width)} wide lies along the inside of the hem, {told(long)} of it in all"
    if long - drawn > DRAWN:
        sentence += f"; the thread along its upper edge is drawn up by {told(long - drawn)}, so that it lies flat"
    elif drawn - long > DRAWN:
        sentence += ", held a little at the hem, as the line above it is longer"
    sentence += (
        ". Cut ends prick: bind them, and bind them again where they show wear. A stiff hem takes more room in "
        "doors and on chairs, and swings into what stands beside it: keep it from candles and lamps, as it melts."
    )
    return Finding("stiff hem", "note", "hem", long, drawn, sentence)
