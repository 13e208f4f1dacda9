"""An overskirt looped up: tapes inside from the waist, each with a hook that catches the cloth farther down.

At each place a tape hangs from the waist seam and a loop is sewn to the skirt so far below that the tape, hooked
in, draws the hem up by what is asked; the cloth between falls in a puff (common practice). Let down, nothing is
changed.

       waist                     waist
    ---.------.---            ---.------.---
       |tape                     |tape  |
       '-o hook                  '-o====' puff
                                   loop
         o loop               ------------- hem, so much higher
    -------------- hem
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType

from drafting.body import Body
from drafting.draft.by_role import edges_as
from drafting.draft.chain import Chain, chain
from drafting.draft.draft import Draft, EdgeRef, Notion
from drafting.draft.piece import NAMED_MARK, Piece, Placement
from drafting.draft.roles import EdgeRole
from drafting.fabric import Fabric
from drafting.geometry import line
from drafting.ground.choices import choice
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.names import name_in_words
from drafting.ground.scale import body_scale
from drafting.ground.sources import practice

PLACES: Mapping[str, tuple[float, ...]] = MappingProxyType(
    {
        "none": (),
        "sides": (0.5,),
        "back": (0.0, 0.25),
        "sides and back": (0.0, 0.5),
        "all round": (0.0, 0.33, 0.67, 1.0),
    }
)
"""Where tapes hang, as shares of half the waist from the centre back; one at a centre stands beside it."""

BESIDE, ENDS, LEAST = 40.0, 25.0, 60.0
"""mm at adult scale: how far from a centre a tape stands, so that both hands have one and the zip none; what a
tape has at each end to be sewn on; and the shortest tape (ours: a hand has to hook it)."""

OFF_SEAM = 0.12
"""Of the waist between two seams or darts: a tape stands so far off either, where a seam bows (ours)."""

TAPE, MARK = 12.0, 8.0
"""mm: width of the tape, and of the cross where a loop is sewn on (common practice: 10 to 15)."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about looping up, in mm."""

    loop_places: str = choice(
        "none",
        "word",
        "where the skirt is looped up by tapes inside",
        words=tuple(PLACES),
        group="style",
        source=practice(),
    )
    loop_up: float = choice(
        220.0,
        "mm",
        "how far the tapes draw the hem up",
        low=40,
        high=800,
        step=10,
        scales=True,
        grows=True,
        group="style",
        source=practice("⟨150⟩ to ⟨300⟩"),
    )
    loop_at: float = choice(
        0.62,
        "ratio",
        "where the cloth is caught, of the length from waist to hem",
        low=0.3,
        high=0.95,
        step=0.01,
        group="style",
        source=practice("about two thirds of the way down: the hem swings free below"),
    )


@dataclass(frozen=True)
class _Loop:
    """One tape on the left half: its piece, the edge that catches it, where tape and loop are sewn, mm."""

    piece: str
    waist: EdgeRef
    top: complex
    down: complex

    @property
    def away(self) -> float:
        """How far the loop lies below the waist."""
        return abs(self.down - self.top)


def loop_up(draft: Draft, body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the skirt with tapes and loops that draw it up, or as it is where none are asked for.

    Raises `DraftError` for a skirt that is not in one from waist to hem, and where it is too short to be raised so
    far.
    """
    shares = PLACES[choices.loop_places]
    if not shares:
        return draft
    scale = body_scale(body)
    waist = chain(draft, "waist")
    loops = [_loop(draft, waist, share, scale, choices.loop_at) for share in shares]
    short = min(loops, key=lambda loop: loop.away)
    if short.away - choices.loop_up < LEAST * scale:
        raise DraftError(
            "the skirt is too short to be looped up so far",
            value=told(choices.loop_up),
            reach=f"up to {told(max(0.0, short.away - LEAST * scale), 'most')}",
            turn="choose a lesser loop_up, a greater loop_at, or a longer skirt",
        )
    marked: dict[str, Piece] = {}
    for number, loop in enumerate(loops, 1):
        piece = marked.get(loop.piece, draft[loop.piece])
        marked[loop.piece] = replace(piece, placements=(*piece.placements, *_marks(number, loop)))
    return draft.with_pieces(marked.values()) + Draft(
        findings=(_said(loops, choices),),
        facts={f"loop_tape_{i}": loop.away - choices.loop_up for i, loop in enumerate(loops, 1)},
        notions=tuple(_notions(loops, choices, scale)),
    )


def _loop(draft: Draft, waist: Chain, share: float, scale: float, at: float) -> _Loop:
    """Return where a tape hangs, and where the cloth is caught: on the way to the same share of the hem."""
    length = sum(waist.drawn)
    beside = min(BESIDE * scale, length / 4)
    ref, along = _on_waist(draft, waist.refs, min(max(share * length, beside), length - beside))
    piece, top = draft[ref[0]], draft.edge(ref).path.at(along)
    waists, hems = edges_as(piece, EdgeRole.WAIST), edges_as(piece, EdgeRole.HEM)
    if len(hems) != 1:
        raise DraftError(
            "only a skirt in one from waist to hem is looped up",
            turn='choose another skirt_cut than tiered, or loop_places = "none"',
        )
    before = sum(e.length for e in waists[: [e.name for e in waists].index(ref[1])])
    across = (before + along) / sum(e.length for e in waists)
    foot = hems[0].path.at((1 - across) * hems[0].length)  # the hem runs against the waist
    return _Loop(piece.name, ref, top, top + at * (foot - top))


def _on_waist(draft: Draft, refs: tuple[EdgeRef, ...], at: float) -> tuple[EdgeRef, float]:
    """Return the edge at a place along the waist from the centre back, and how far along it that is."""
    for ref in refs:
        length = draft.edge(ref).length
        if at <= length or ref == refs[-1]:
            return ref, min(max(at, OFF_SEAM * length), (1 - OFF_SEAM) * length)
        at -= length
    raise AssertionError("a waist has edges")


def _names(number: int) -> tuple[str, str]:
    """Return what the marks of a tape and of its loop are called."""
    return f"tape {number}", f"loop {number}"


def _marks(number: int, loop: _Loop) -> Iterator[Placement]:
    (tape, sewn), half, inwards = _names(number), MARK / 2, (loop.down - loop.top) / loop.away
    yield Placement(tape, line(loop.top, loop.top + 2 * MARK * inwards), NAMED_MARK)
    at = loop.down
    cross = line(at - half, at + half, at, at + 1j * half, at - 1j * half)
    yield Placement(sewn, cross, NAMED_MARK)


def _notions(loops: list[_Loop], choices: Choices, scale: float) -> Iterator[Notion]:
    for number, loop in enumerate(loops, 1):
        tape, sewn = _names(number)
        free = loop.away - choices.loop_up
        note = (
            f"one on each hand at the mark {tape}, {told(free)} from the waist seam to its hook, and "
            f"{told(ENDS * scale)} more at either end: caught in the seam, turned in at the hook"
        )
        yield Notion(
            "tape",
            f"waist seam of the {name_in_words(loop.piece)}, mark {tape}",
            2,
            cut_length=free + 2 * ENDS * scale,
            note=note,
            kind="woven",
            size=TAPE,
            piece=loop.piece,
            edges=(loop.waist,),
            mark=tape,
        )
        seen = (
            f"each with its loop at the mark {sewn}, {told(loop.away)} below the waist seam, through one "
            "thread of the cloth or on a scrap behind it"
        )
        end = f"free end of {tape}, {name_in_words(loop.piece)}"
        kind = "large hook with a thread loop"
        yield Notion("hook and eye", end, 2, None, seen, kind, piece=loop.piece, edges=(loop.waist,), mark=sewn)


def _said(loops: list[_Loop], choices: Choices) -> Finding:
    tapes = ", ".join(told(loop.away - choices.loop_up) for loop in loops)
    return Finding(
        "looping up",
        "note",
        loops[0].piece,
        choices.loop_up,
        None,
        f"{2 * len(loops)} tapes draw the hem up by {told(choices.loop_up)} (from the back: {tapes} long). The "
        "cloth falls in puffs between them; the pieces and the worn view show it let down. Hook every tape before "
        "stairs: a puff or a tape that hangs loose catches a foot.",
    )
