"""Elastic hem: a sleeve's or trouser leg's hem gathered on elastic in a casing.

The hem is drawn as wide as the block made it; the elastic pulls it up to its loop (limb girth x
factor). The loop, opened, must pass hand or heel; one that cannot is raised, at most to 0.98 of the
limb, then given the least slit (said). The hem's allowance becomes the casing.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.draft.by_role import edge_as, piece_as, pieces_as, the_edge
from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.fabric import Fabric
from drafting.ground.choices import choice
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.sources import practice
from drafting.shaping.flare.elastic import OVERLAP, Elastic, casing_depth, elastic_loop, elastic_notion, tight_said
from drafting.shaping.flare.fullness import bulk_said, gathered
from drafting.shaping.limbs import arm_girth_at, leg_girth_at

PASSES_BY = 10.0
"""mm of flat cloth over the hand or heel that has to pass (common practice)."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the elastic at the hem."""

    elastic_factor: float = choice(
        0.94,
        "ratio",
        "elastic loop over the limb it lies round",
        low=0.7,
        high=1.0,
        step=0.01,
        group="fullness",
        source=practice("3 to 8 % less at limbs, 5 to 12 % at wrist and ankle"),
    )
    elastic_stretch: float = choice(
        1.8,
        "ratio",
        "how many times its length the hem's elastic opens to",
        low=1.1,
        high=4,
        step=0.1,
        group="fullness",
        source=practice("try the elastic you have"),
    )
    elastic_width: float = choice(
        12.0,
        "mm",
        "width of the hem's elastic",
        low=3,
        high=60,
        group="fullness",
        source=practice("⟨6⟩ to ⟨20⟩ at a limb"),
    )


def elastic_hem(draft: Draft, body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the draft with its sleeve or leg hem gathered on elastic.

    Raises `DraftError` where there is no such hem, or no loop can pass.
    """
    legs = [p for p in pieces_as(draft, *HALVES) if edge_as(p, EdgeRole.CROTCH)]
    if (sleeve := piece_as(draft, PieceRole.SLEEVE)) and edge_as(sleeve, EdgeRole.HEM) is None:
        raise DraftError("a sleeve in two tiers takes no elastic at its hem", turn='choose sleeve_style = "plain"')
    if sleeve:
        refs = _hems([sleeve])
        limb, over, where = _arm(sleeve, body), body["hand_girth"], "sleeve hem"
    elif legs:
        refs = _hems(legs)
        limb, over, where = _leg(legs[0], body), body["heel_girth"], "trouser hem"
    else:
        raise DraftError("there is no sleeve and no leg to gather on elastic")
    if any(ref in (*seam.a, *seam.b) for seam in draft.seams for ref in refs):
        return draft  # a cuff or a band closes it
    drawn = sum(draft.edge(ref).length for ref in refs)
    loop = elastic_loop(limb, over, choices.elastic_stretch, factor=choices.elastic_factor, slit=True, where=where)
    held = min(loop.loop, drawn)
    loop = replace(loop, loop=held, cut=held + OVERLAP, passes=held * choices.elastic_stretch)
    if loop.passes < over - 1e-9:
        loop = replace(loop, slit=max(loop.slit, (over - loop.passes) / 2))
    draft = gathered(draft, *refs, sewn=loop.loop)
    thickness = fabric.thickness if fabric and fabric.thickness else 0.0
    draft = _cased(draft, refs, casing_depth(choices.elastic_width, thickness))
    ratio = drawn / loop.loop
    notion = elastic_notion(loop, where, 2, choices.elastic_width, refs)
    return replace(
        draft,
        notions=(*draft.notions, notion),
        findings=(
            *draft.findings,
            *_said(where, loop, limb, over, drawn),
            *bulk_said(where, ratio, fabric.thickness if fabric else None),
        ),
    )


HALVES = (PieceRole.FRONT, PieceRole.BACK)
"""The pieces of a leg, the front first."""


def _hems(pieces: Sequence[Piece]) -> tuple[EdgeRef, ...]:
    return tuple((piece.name, the_edge(piece, EdgeRole.HEM).name) for piece in pieces)


def _arm(sleeve: Piece, body: Body) -> float:
    """The arm's girth where the sleeve ends."""
    hem = the_edge(sleeve, EdgeRole.HEM)
    depth = sleeve.points["crown"].imag - hem.path.at(hem.length / 2).imag
    return arm_girth_at(body, depth)


def _leg(front: Piece, body: Body) -> float:
    """The leg's girth where the trouser ends, from the drawn distance below the crotch."""
    crotch = the_edge(front, EdgeRole.INSEAM).path
    fall = abs(crotch.start.imag - crotch.end.imag)
    return leg_girth_at(body, fall)


def _cased(draft: Draft, refs: tuple[EdgeRef, ...], depth: float) -> Draft:
    for piece, edge in refs:
        cased = replace(draft[piece][edge], allowance=depth)
        draft = draft.with_pieces([draft[piece].with_edges(cased)])
    return draft


def _said(where: str, loop: Elastic, limb: float, over: float, drawn: float) -> list[Finding]:
    ratio = drawn / loop.loop
    found = [
        Finding(
            "elastic",
            "note",
            where,
            loop.cut,
            limb,
            f"Elastic at the {where}: cut {told(loop.cut)}, loop {told(loop.loop)} on a limb of {told(limb)}; "
            f"it opens to {told(loop.passes)} over {told(over)}. "
            + (f"The hem is gathered {ratio:.1f} to one." if ratio > 1.02 else "The hem is not gathered."),
        )
    ]
    if loop.slit:
        found.append(
            Finding(
                "elastic",
                "warning",
                where,
                loop.passes,
                over,
                f"The elastic at the {where} opens to {told(loop.passes)} and does not pass {told(over)}: leave "
                f"{told(loop.slit)} of the seam open above it, or take a softer elastic.",
            )
        )
    if drawn < over + PASSES_BY:
        found.append(
            Finding(
                "elastic",
                "warning",
                where,
                drawn,
                over + PASSES_BY,
                f"The {where} is {told(drawn)} flat and has to pass {told(over)}: {told(over + PASSES_BY)} or "
                "more of cloth is wanted, whatever the elastic does. Draw the hem wider.",
            )
        )
    return [*found, *tight_said(loop, where, limb)]
