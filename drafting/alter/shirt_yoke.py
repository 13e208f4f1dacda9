"""A shirt's yoke: of two layers in woven cloth, with the seams between them, of one in a knit.

The inner yoke is the outer one once more, cut from the same cloth: the back lies between the two, and the inner
one's edges are turned in over the shoulder seams, so that nothing is left raw inside.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.draft.by_role import edge_as
from drafting.draft.draft import Draft
from drafting.draft.roles import EdgeRole
from drafting.fabric import Fabric
from drafting.ground.choices import choice
from drafting.ground.findings import Finding
from drafting.ground.sources import practice

BY_CLOTH, DOUBLE, SINGLE = "by the cloth", "double", "single"


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about a yoke's layers."""

    yoke_layers: str = choice(
        BY_CLOTH,
        "word",
        "layers of a yoke: double encloses its seams; by the cloth: double in woven cloth, single in a knit",
        words=(BY_CLOTH, DOUBLE, SINGLE),
        group="style",
        source=practice("a tailored shirt's yoke is double"),
    )


def shirt_yoke(draft: Draft, body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the draft with its yoke cut twice, where it has one and is to have two layers."""
    knit = fabric is not None and fabric.weave == "knit"
    yokes = [p for p in draft.pieces if edge_as(p, EdgeRole.YOKE) and edge_as(p, EdgeRole.SHOULDER)]
    if not yokes or choices.yoke_layers == SINGLE or (choices.yoke_layers == BY_CLOTH and knit):
        return draft
    said = Finding(
        "yoke",
        "note",
        yokes[0].name,
        2,
        None,
        "The yoke is double: it is cut twice, and the back and the fronts are sewn between its two layers.",
    )
    doubled = draft.with_pieces([replace(piece, copies=2) for piece in yokes])
    return replace(doubled, findings=(*doubled.findings, said))
