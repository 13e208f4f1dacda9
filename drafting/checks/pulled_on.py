"""Does the wearer's head get through the neck of a garment that nothing opens?"""

from __future__ import annotations

from collections.abc import Iterator

from drafting.body import Body
from drafting.checks.words import mm
from drafting.draft.draft import Draft
from drafting.draft.openings import bare_neck, opens
from drafting.fabric import Fabric
from drafting.ground.findings import Finding
from drafting.ground.scale import CHILD, body_scale

HEAD, CHILD_HEAD, GROWN = 570.0, 530.0, 1400.0
"""mm: a head that nobody measured, an adult's and, below this height, a child's (from memory: 540 to 600; 510 at
five years, 540 at twelve)."""

FIRM, FINISHED = 0.02, 0.8
"""Stretch from which a cloth is counted on to open, and the share of it that an edge still gives once it is
finished (ours)."""


def head_passes(draft: Draft, body: Body, fabric: Fabric | None) -> Iterator[Finding]:
    """Warn where the neck is a closed ring too small for the head, by how much, and tell the ways out.

    A head that nobody measured is taken as usual, and that is said.
    """
    ring = 0.0 if opens(draft) else bare_neck(draft)
    head, stretch = _head(body), fabric.greatest_stretch if fabric else 0.0
    gives = FINISHED * stretch if stretch > FIRM else 0.0
    if not ring or ring * (1 + gives) >= head:
        return
    whose = "the head" if "head_girth" in body else "a head (nobody measured this one)"
    cloth = f"the cloth opens it to {mm(ring * (1 + gives))}" if gives else "the cloth does not open it"
    yield Finding(
        check="head passes",
        level="warning",
        where="neck",
        value=ring,
        wanted=head,
        sentence=f"The neck is {mm(ring)} round and nothing closes it; {cloth}, and {whose} of {mm(head)} does "
        f"not pass. {mm(head / (1 + gives) - ring)} more `neck_ease` lets it through, or a closing, or a cloth "
        f"that stretches {100 * (head / ring - 1) / FINISHED:.0f} %.",
    )


def _head(body: Body) -> float:
    if "head_girth" in body:
        return body["head_girth"]
    scale = body_scale(body)
    return CHILD_HEAD if body["height"] < GROWN and scale >= CHILD else HEAD * min(1.0, scale)
