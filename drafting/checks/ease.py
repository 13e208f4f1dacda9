"""Is there room enough in cloth that does not give? Ease against the least that the trade leaves."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.body import Body
from drafting.checks.words import capital, mm, plain
from drafting.draft.draft import Draft, Girth
from drafting.draft.roles import EdgeRole
from drafting.fabric import Fabric
from drafting.ground.findings import Finding
from drafting.ground.scale import body_scale

GIVES = 0.10
"""Cloth that stretches as much round the body is no longer bound to the least ease (project design)."""

LEAST_EASE = {"bust": 38.0, "waist": 19.0, "hip": 51.0, "upper_arm": 50.0}
"""mm at adult scale, all round, for garments of the body above the legs: bust, waist and hip by
`Source.EASE_IN_CLOTHING`, the arm common practice."""

LEAST_BELOW = {**LEAST_EASE, "waist": 13.0}
"""mm: the same of a garment that hangs from the waist, a skirt (`Source.EASE_IN_CLOTHING`)."""

UNSEEN = 0.05
"""mm: less than a maker is shown."""


def ease_enough(draft: Draft, body: Body, fabric: Fabric | None) -> Iterator[Finding]:
    """Does every girth of a torso or sleeve have the least ease, where the cloth does not give?

    The layers worn beneath are taken off first. Garments with legs, and cloth that stretches 10 % or
    more round the body, are not asked.
    """
    if _legs(draft) or (fabric is not None and fabric.stretch_across >= GIVES):
        return
    scale = body_scale(body)
    leasts = LEAST_EASE if _above_waist(draft) else LEAST_BELOW
    for girth in draft.girths:
        if girth.level in leasts and not girth.width:
            least = leasts[girth.level] * scale
            ease = girth.settled_ease - body.layer(f"{girth.level}_girth")
            if ease < least - UNSEEN:
                yield _tight(girth, ease, least)


def _legs(draft: Draft) -> bool:
    return any(edge.role is EdgeRole.CROTCH for piece in draft.pieces for edge in piece.edges)


ABOVE = frozenset({EdgeRole.SHOULDER, EdgeRole.ARMHOLE, EdgeRole.CAP, EdgeRole.CAP_PART, EdgeRole.NECK})
"""Edges of what is worn above the waist."""


def _above_waist(draft: Draft) -> bool:
    """Return whether the garment goes over the chest or an arm."""
    return any(edge.role in ABOVE for piece in draft.pieces for edge in piece.edges)


def _tight(girth: Girth, ease: float, least: float) -> Finding:
    name = capital(f"{girth.side} {plain(girth.level)}".strip())
    where = f"{girth.level}.{girth.side}" if girth.side else girth.level
    none = ease <= UNSEEN
    ruled = "nobody can get in or move" if none else "it binds when the wearer breathes, bends or lifts an arm"
    return Finding(
        "least ease",
        "error" if none else "warning",
        where,
        ease,
        least,
        f"{name}: {mm(max(ease, 0.0)) if not none else 'no'} ease in cloth that stretches less than "
        f"{100 * GIVES:.0f} %: {ruled}. The trade leaves at least {mm(least)}; give more ease, or take a cloth "
        "that stretches.",
    )
