"""A coat's stand collar: on a front that closes to the neck, its ends meeting at the centre front. Mm.

Half a stand on the fold, drawn as a shirt's: it rises to the front, so that its top is shorter than the neck. The
outer one is sewn to the neck, the inner one to the facings in front, and behind to the lining.

               top
       .----------------.
  front/                | centre
      (________  _______|
      front_neck back_neck
"""

from __future__ import annotations

from dataclasses import replace

from drafting.draft.by_role import the_edge
from drafting.draft.chain import Chain
from drafting.draft.draft import Draft, Notion, Seam, SeamNotch
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.geometry import line
from drafting.ground.findings import Finding
from drafting.shaping.details.collar_lines import Stand, StandEdges, collar_said, stand_for

CAUGHT = 10.0
"""mm: allowance of the inner stand behind, where the lining is felled to it (common practice)."""

HOOK = 12.0
"""mm: size of a coat hook (common practice)."""


def stand_collar(
    neck: tuple[Chain, Chain], facing: Piece | None, height: float, girth: float, ease: float
) -> Draft:
    """Return the stand on a `neck` (front to the centre front, back) for a neck of this `girth` and `ease`, mm.

    Raises `DraftError` where the neckline is too short for it.
    """
    front, back = (chain.path.length for chain in neck)
    lines = stand_for(StandEdges(front + back, back, 0.0, height), (girth + ease) / 2)
    outer = Piece("collar-stand", _ring(lines, front), title="Collar stand", role=PieceRole.COLLAR_STAND)
    inner = _inside(outer)
    seams = [_to_neck(outer, neck), _edge(outer, inner)]
    if facing:
        seams.append(_to_facing(facing, inner))
    hook = Notion(
        what="hook and eye",
        where=outer.name,
        count=2,
        note="inside at the neck seam and at the top, where the ends meet",
        kind="hook and eye",
        size=HOOK,
        piece=outer.name,
    )
    return Draft(
        (outer, inner),
        tuple(seams),
        findings=(collar_said(lines, girth, ease), _meets(height)),
        facts={"collar_top": 2 * lines.top.length, "collar_neck": 2 * lines.neck.length},
        notions=(hook,),
    )


def _ring(lines: Stand, front: float) -> tuple[Edge, ...]:
    before, behind = lines.neck.split(front)
    return (
        Edge("front_neck", before, role=EdgeRole.NECK),
        Edge("back_neck", behind, role=EdgeRole.NECK),
        Edge("centre", line(behind.end, lines.top.start), EdgeKind.FOLD, role=EdgeRole.CENTRE),
        Edge("top", lines.top),
        Edge("front", lines.front, role=EdgeRole.FRONT),
    )


def _inside(outer: Piece) -> Piece:
    """Return the inner stand: the outer one turned over."""
    turned = outer.mirrored()
    free = replace(turned["back_neck"], kind=EdgeKind.FREE, allowance=CAUGHT)
    title = f"{outer.title} inside"
    return replace(turned.with_edges(free), name=f"{outer.name}-inside", title=title, lines=(outer.name,))


def _to_neck(outer: Piece, neck: tuple[Chain, Chain]) -> Seam:
    front, back = neck
    return Seam(
        "collar",
        tuple((outer.name, name) for name in ("front_neck", "back_neck")),
        (*reversed(front.refs), *reversed(back.refs)),
        start=None,
        end=None,
        notches=(SeamNotch("shoulder", front.path.length, front.path.length),),
        kind=SeamKind.ATTACHED,
    )


def _edge(outer: Piece, inner: Piece) -> Seam:
    mine, theirs = (tuple((piece.name, name) for name in ("top", "front")) for piece in (outer, inner))
    return Seam("collar edge", mine, theirs, start=None, end=None, kind=SeamKind.MADE_UP)


def _to_facing(facing: Piece, inner: Piece) -> Seam:
    mine, theirs = the_edge(facing, EdgeRole.NECK), inner["front_neck"]
    chains = ((facing.name, mine.name),), ((inner.name, theirs.name),)
    return Seam("facing to stand", chains[0], chains[1], start=None, end=None, kind=SeamKind.MADE_UP)


def _meets(height: float) -> Finding:
    said = "The stand's ends meet at the centre front, edge to edge, and are hooked; the fronts lap below it."
    return Finding("collar", "note", "collar-stand", height, None, said)
