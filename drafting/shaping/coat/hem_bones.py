"""A bone in a casing along the hem of what hangs: a ring where the hem goes all round, else from end to end. mm.

The bone lies in a tape that is sewn on inside, its middle a little above the hem. Where the hem is a ring its two
ends lap side by side and are bound, or pushed into a joining tube (common practice).
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from drafting.draft.draft import Draft, Notion
from drafting.draft.piece import Piece, Placement
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.shaping.coat.bone import BONING, HEM_BONE, ROOM, ROUND, bone_length, channel, flat_bone_said
from drafting.shaping.coat.hem_runs import HemRun, hem_runs
from drafting.shaping.coat.inside import beside_hems, skirted, slit_passed
from drafting.shaping.coat.tail_remarks import DOORWAY

JOINED = 60.0
"""mm by which the ends of a ring lap (common practice: 50 to 100)."""

SOFT = (
    " A {kind} bone holds a small ring; what is wide or heavy draws it into folds, and wants a round rod: look at "
    "it worn before you buy."
)


@dataclass(frozen=True)
class HemBone:
    """What is asked of the bone: its `kind`, `width`, how far above the hem its middle lies (`height`), and how
    much it is shorter than its casing at each end (`short`). mm."""

    kind: str
    width: float
    height: float
    short: float


def with_hem_bones(draft: Draft, hemmed: Sequence[Piece], asked: HemBone) -> Draft:
    """Return the draft with a bone along these hems: its lines, the bones to buy, and what is to be said.

    Raises `DraftError` where a piece is lower than the bone would lie.
    """
    if not hemmed:
        return draft
    passed = [slit_passed(piece, asked.height, 0.0) for piece in hemmed]
    lines = [one.line for one in beside_hems([skirted(piece) for piece in passed], asked.height, "bone_height")]
    channels = [channel(piece.name, line) for piece, line in zip(passed, lines, strict=True)]
    runs = hem_runs(draft, passed, {one.panel: one.length for one in channels})
    marks = {p.name: Placement(HEM_BONE, line, "bone") for p, line in zip(passed, lines, strict=True)}
    marked = [replace(p, placements=(*p.placements, marks[p.name])) for p in draft.pieces if p.name in marks]
    round_it = sum(run.whole * run.count for run in runs)
    return draft.with_pieces(marked) + Draft(
        notions=tuple(_notions(runs, asked)),
        findings=(*flat_bone_said(channels, asked.kind, asked.width), _said(runs, round_it, asked)),
        facts={"hem_bone_channel": round_it},
    )


def _notions(runs: Sequence[HemRun], asked: HemBone) -> Iterator[Notion]:
    """Yield the bones to cut, and a tip for each of their ends."""
    wide = asked.width + ROOM
    for run in runs:
        rest = "its ends lapped and bound" if run.closed else "from end to end of the hem"
        yield Notion(
            BONING,
            "hem" if len(runs) == 1 else f"{run.pieces[0]} hem",
            run.count,
            cut_length=run.whole + JOINED if run.closed else bone_length(run.whole, asked.short),
            note=f"{asked.kind}, {told(asked.width, 'small')} wide, {rest}, in a casing {told(wide, 'small')} "
            "wide inside; cap or file both ends; steel is cut with eye protection",
            kind=asked.kind,
            size=asked.width,
            loop=run.whole if run.closed else None,
            mark=HEM_BONE,
        )
    yield Notion("bone tip", "hem", sum(2 * run.count for run in runs), None, "one at each end of every bone")


def _said(runs: Sequence[HemRun], round_it: float, asked: HemBone) -> Finding:
    across = round_it / math.pi
    ends = f"its ends stop {told(asked.short, 'small')} short of the casing, which is closed there"
    soft = ""
    if all(run.closed for run in runs):
        ends = f"its ends lap by {told(JOINED)} and are bound together, or pushed into a joining tube"
        soft = SOFT.format(kind=asked.kind) if asked.kind != ROUND else ""
    sentence = (
        f"A bone lies along the hem in a casing, its middle {told(asked.height, 'small')} above it: {ends}. Cap "
        f"or file every end, or it works through the cloth and cuts. Held out round the hem is {told(across)} "
        "across"
    )
    if across > DOORWAY:
        sentence += f", and a doorway {told(DOORWAY)}: it has to be tipped, or goes through sideways"
    sentence += (
        f".{soft} It does not fold: for a quick change it goes over the head or is stepped into with room round "
        "it, on a chair it tips up in front, and it swings into what stands beside it: keep it from candles, lamps"
        " and stairs' edges."
    )
    return Finding("boning", "note", "hem", round_it, None, sentence)
