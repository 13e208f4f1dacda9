"""Lining of what hangs: a skirt or a cape lined by its own pieces, shorter, its hem free.

The lining takes the shell's seams and darts, is felled to waist or neck and to what opens, and ends above the hem,
so that it never shows and never holds the shell up (common practice).
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.draft.by_role import edge_as, is_shell, pieces_as
from drafting.draft.draft import Draft
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.fabric import Fabric
from drafting.ground.choices import choice
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.scale import allowance_scale, body_scale
from drafting.ground.sources import practice
from drafting.shaping.coat.inside import loose_edges, second_layer, shorter_panels, slit_passed

SEAM, LEAST_SEAM, WIDER = 10.0, 6.0, 1.5
"""mm, a child's too: what the lining is sewn at, its least, and what is cut beyond that for ease (common
practice)."""

COVERS = 10.0
"""mm by which a hood's lining covers the raw edge of what is turned in at its face (common practice)."""

HEMMED = 20.0
"""mm turned up along the lining's own hem (common practice: 15 to 25)."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the lining of what hangs, in mm."""

    lining: str = choice(
        "none", "word", "what is lined", words=("none", "whole"), group="lining", source=practice()
    )
    lining_shorter: float = choice(
        25.0,
        "mm",
        "how far the lining ends above the hem",
        low=5,
        high=300,
        scales=True,
        group="lining",
        source=practice("⟨20⟩ to ⟨30⟩; a straight skirt's may end at the knee"),
    )


def hung_lining(draft: Draft, body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the draft with a lining behind every piece with a hem, and a hood; as it is where none is asked for.

    What is gathered in tiers is left unlined, and told. Raises `DraftError` where a piece is not so long.
    """
    if choices.lining == "none":
        return draft
    if any(edge.sewn is not None for piece in draft.pieces for edge in piece.edges):
        return replace(draft, findings=(*draft.findings, TIERED))
    shell = [piece for piece in draft.pieces if is_shell(piece) and edge_as(piece, EdgeRole.HEM)]
    cut = max(LEAST_SEAM, SEAM * allowance_scale(body_scale(body))) + WIDER
    sewn_up = [slit_passed(piece, choices.lining_shorter, HEMMED) for piece in shell]
    outlines = shorter_panels(sewn_up, choices.lining_shorter, "lining_shorter")
    linings = tuple(_lining(piece, edges, cut) for piece, edges in zip(shell, outlines, strict=True))
    linings += tuple(_in_hood(piece, cut) for piece in pieces_as(draft, PieceRole.HOOD))
    return draft + Draft(linings, findings=(_said(choices, cut),))


def _lining(piece: Piece, edges: tuple[Edge, ...], cut: float) -> Piece:
    """Return the lining of a piece: its darts as in the shell, its hem turned up by itself."""

    def own(edge: Edge, loose: Edge) -> Edge:
        if edge.role is EdgeRole.CENTRE and edge.kind is not EdgeKind.FOLD:
            return replace(loose, role=EdgeRole.PLAIN)
        return replace(loose, allowance=HEMMED) if edge.role is EdgeRole.HEM else loose

    made = tuple(own(*pair) for pair in zip(edges, loose_edges(edges, cut), strict=True))
    return replace(second_layer(piece, "lining", made, "lining"), darts=piece.darts, cloth="", frame=None)


def _in_hood(hood: Piece, cut: float) -> Piece:
    """Return the lining of a hood: it ends on what is turned in along the face, and covers its edge."""
    face = next(edge for edge in hood.edges if edge.role is EdgeRole.FRONT)
    turned = tuple(replace(edge, role=EdgeRole.HEM) if edge is face else edge for edge in hood.edges)
    back = (face.allowance or 0.0) - COVERS
    (edges,) = shorter_panels([replace(hood, edges=turned)], back, "lining")
    loose = loose_edges(edges, cut)
    own = tuple(replace(edge, role=EdgeRole.FRONT) if edge.name == face.name else edge for edge in loose)
    own = tuple(replace(e, role=EdgeRole.PLAIN) if e.role is EdgeRole.CENTRE_SEAM else e for e in own)
    return replace(second_layer(hood, "lining", own, "lining"), cloth="", frame=None)


def _said(choices: Choices, cut: float) -> Finding:
    sentence = (
        f"The lining is cut with {told(cut, 'fine')} of allowance and sewn at {told(cut - WIDER)}, so that it is "
        f"{told(2 * WIDER)} wider at every seam. It ends {told(choices.lining_shorter)} above the hem and hangs"
        " free."
    )
    return Finding("lining", "note", "lining", choices.lining_shorter, None, sentence)


TIERED = Finding(
    "lining",
    "warning",
    "lining",
    None,
    None,
    "What is gathered in tiers gets no lining of its own shape: line it with a plain skirt, a garment by itself.",
)
