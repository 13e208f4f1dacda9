"""A shirt's yoke: of two layers in plain woven cloth, with the seams between them, else of one.

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

THICK, HEAVY = 0.6, 270.0
"""mm, and g/m2 where nobody measured the thickness (0.6 mm at some 0.45 g/cm3, from memory): above it two layers
and their seams are too bulky on a shoulder (common practice)."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about a yoke's layers."""

    yoke_layers: str = choice(
        BY_CLOTH,
        "word",
        "layers of a yoke: double encloses its seams; by the cloth: double in plain woven cloth, else single",
        words=(BY_CLOTH, DOUBLE, SINGLE),
        group="style",
        source=practice("a tailored shirt's yoke is double"),
    )


def shirt_yoke(draft: Draft, body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the draft with its yoke cut twice, where it has one and is to have two layers."""
    yokes = [p for p in draft.pieces if edge_as(p, EdgeRole.YOKE) and edge_as(p, EdgeRole.SHOULDER)]
    if not yokes or choices.yoke_layers == SINGLE or (choices.yoke_layers == BY_CLOTH and not takes_two(fabric)):
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


def takes_two(fabric: Fabric | None) -> bool:
    """Return whether a yoke of this cloth is double where nobody says: plain, woven, not thick (common practice).

    What is sequinned, coated, sheer, napped or of pile shows through, walks or is too bulky in two layers.

    >>> takes_two(Fabric("poplin", thickness=0.25)), takes_two(Fabric("tweed", mass=400.0))
    (True, False)
    """
    if fabric is None:
        return True
    thin = (fabric.mass or 0.0) <= HEAVY if fabric.thickness is None else fabric.thickness <= THICK
    return fabric.weave == "woven" and fabric.sort in (None, "plain") and thin
