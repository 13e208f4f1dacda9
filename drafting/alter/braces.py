"""Braces: six buttons along the waistband, where nothing on the body below holds the trousers up.

Half a waistband, from the centre front to the centre back:

      .------.------------------------------.
      |      :        o     o            o  |
      '------'--------'-----'------------'--'
           centre   crease            centre back
           front
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.draft.by_role import piece_as, the_edge
from drafting.draft.draft import Draft, Notion, elastic_in
from drafting.draft.piece import Piece, Placement
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.fabric import Fabric
from drafting.ground.choices import choice
from drafting.ground.findings import Finding, Severity
from drafting.ground.lengths import told
from drafting.ground.scale import allowance_scale, body_scale
from drafting.ground.sources import practice
from drafting.shaping.details.buttons import button_mark
from drafting.shaping.trouser.held import stays_up

BRACE_BUTTON = "brace button"

DIAMETER = 17.0
"""mm on whoever is no doll, as the braces are made for it (common practice: 16 to 18, flat and strong)."""

APART, BEHIND = 75.0, 38.0
"""mm at adult scale: from the button over the front crease to the next one towards the side, and from the centre
back to the one behind (common practice: 70 to 80, and the two behind 70 to 80 apart)."""

CLEAR = 20.0
"""mm at adult scale that the front's second button keeps from the side seam (ours)."""

EACH_HAND = 3


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about braces."""

    brace_buttons: str = choice(
        "by the figure",
        "word",
        "six buttons for braces on the waistband; by the figure: where the hip is no wider than the waist",
        words=("by the figure", "yes", "none"),
        group="waistband",
        source=practice("a waist that is the widest holds no trousers up: they are worn on braces"),
    )


def braces(draft: Draft, body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the draft with brace buttons on its waistband, or as it is where it stays up by itself."""
    girths = {girth.level: girth for girth in draft.girths}
    elastic = elastic_in(draft, draft.chains["waist"][0])
    cloth = girths["waist"].body + girths["waist"].settled_ease
    waist, hip = elastic.loop or cloth if elastic else cloth, girths["hip"].body
    slides = not stays_up(waist, hip)
    band = piece_as(draft, PieceRole.WAISTBAND)
    if band is None or choices.brace_buttons == "none":
        turn = "waist_finish = waistband, and brace_buttons = yes" if elastic else "brace_buttons = yes"
        told_of = _said(waist, hip, f"braces hold it up: choose {turn}", "warning") if slides else ()
        return replace(draft, findings=(*draft.findings, *told_of))
    if choices.brace_buttons != "yes" and not slides:
        return draft
    marked = replace(band, placements=(*band.placements, *_marks(draft, band, body_scale(body))))
    held = "it is worn on braces, and six brace buttons are marked on the waistband"
    said = _said(waist, hip, held, "note") if slides else ()
    return replace(
        draft.with_pieces([marked]),
        notions=(*draft.notions, _notion(band.name, body_scale(body))),
        findings=(*draft.findings, *said),
    )


def _marks(draft: Draft, band: Piece, scale: float) -> Iterator[Placement]:
    """Yield the buttons of one hand: over the front's crease, beside it, and behind, half-way up the band."""
    waist = the_edge(band, EdgeRole.WAIST).path
    across = next(mark.path for mark in band.placements if mark.what == "centre")
    up = (across.end - across.start) / 2
    at_front = abs(waist.start - across.start) < abs(waist.end - across.start)
    path = waist if at_front else waist.reversed()
    refs = draft.chains["waist"]
    front = sum(draft.edge(ref).sewn_length for ref in refs if draft[ref[0]].role is not PieceRole.BACK)
    second = min(front / 2 + APART * scale, max(front - CLEAR * scale, front / 2))
    places = (front / 2, second, path.length - min(BEHIND * scale, (path.length - front) / 2))
    for number, at in enumerate(places, 1):
        mark = button_mark(f"brace button {number}", path.at(at) + up, DIAMETER * allowance_scale(scale))
        yield replace(mark, what=BRACE_BUTTON)


def _notion(band: str, scale: float) -> Notion:
    note = (
        "one over each front crease, one beside it and one on either side of the centre back, six as marked, "
        "on the outside of the band, or inside it where they would show, through all layers, on a thread shank"
    )
    size = DIAMETER * allowance_scale(scale)
    return Notion(BRACE_BUTTON, band, 2 * EACH_HAND, None, note, kind="flat and strong", size=size, piece=band)


def _said(waist: float, hip: float, held: str, level: Severity) -> tuple[Finding, ...]:
    text = (
        f"Nothing on the body below holds it up: its waist is {told(waist)} round, the hip {told(hip)}. "
        f"It would slide down; {held}."
    )
    return (Finding("braces", level, "waist", waist, hip, text),)
