"""What is done to a draft once all its parts stand: seams made of what was left for a later part."""

from __future__ import annotations

from dataclasses import replace

from drafting.blocks import all_blocks
from drafting.draft.draft import Draft
from drafting.draft.piece import EdgeKind, Piece
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding


def refuse_unread_girths(draft: Draft) -> None:
    """Refuse a girth that no piece draws a level line for: nobody could read it off or check it."""
    drawn = {level.name for piece in draft.pieces for level in piece.levels}
    for girth in draft.girths:
        if girth.level not in drawn:
            raise DraftError(
                f"a girth is stated for the {girth.level}, but no piece draws that level",
                turn=f'give a piece levels=(Level("{girth.level}", (path,)),), the line across it '
                "where this girth is read off, or leave the Girth out",
            )


def sewn_up(draft: Draft) -> Draft:
    """Return the draft with hems and openings that a later part is sewn to (a cuff) made seams."""
    sewn = {ref for seam in draft.seams for ref in (*seam.a, *seam.b)}

    def joined(piece: Piece) -> Piece:
        waiting = [e for e in piece.edges if e.kind in UNSEWN and (piece.name, e.name) in sewn]
        if not waiting:
            return piece  # the same object: what is remembered of it stays
        return piece.with_edges(*(replace(e, kind=EdgeKind.SEAM, allowance=None) for e in waiting))

    return draft.with_pieces(joined(piece) for piece in draft.pieces)


UNSEWN = (EdgeKind.HEM, EdgeKind.OPENING)


def left_open(draft: Draft) -> Draft:
    """Return the draft with edges that wait for a further part (a sleeve) turned into openings."""
    sewn = {ref for seam in draft.seams for ref in (*seam.a, *seam.b)}
    loose = {name: [r for r in refs if r not in sewn] for name, refs in draft.chains.items()}
    loose = {name: [r for r in refs if draft.edge(r).kind is EdgeKind.SEAM] for name, refs in loose.items()}
    if any(loose.values()):  # which blocks there are is asked only then: it loads them all
        needs = {needed for block in all_blocks().values() for needed in block.needs}
        lone = sorted({ref for name, refs in loose.items() if name in needs for ref in refs})
    else:
        lone = []
    for piece, edge in lone:
        opened = replace(draft[piece][edge], kind=EdgeKind.OPENING)
        draft = draft.with_pieces([draft[piece].with_edges(opened)])
    said = tuple(
        Finding(
            "left open",
            "note",
            f"{piece}.{edge}",
            None,
            None,
            f"Nothing is sewn into the {piece} {edge}: it is drafted as an opening, to be bound or faced.",
        )
        for piece, edge in lone
    )
    return replace(draft, findings=draft.findings + said)
