"""What a cloth can take: fusing, heat, easing. Each refusal names cloth, treatment, way out.

Iron settings by fibre are the care label's dots (`Source.ISO_3758`: 110, 150 and 200 degrees C); a blend takes
the lowest fibre's. Always try on a scrap first, and follow the maker of cloth, fusible and iron.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from drafting.draft.draft import Draft
from drafting.fabric import Fabric, handling
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.shaping.sleeve.easing import EASES

DOTS = {
    "acrylic": 1,
    "nylon": 1,
    "polyamide": 1,
    "acetate": 1,
    "elastane": 1,
    "wool": 2,
    "silk": 2,
    "polyester": 2,
    "viscose": 2,
    "rayon": 2,
    "modal": 2,
    "lyocell": 2,
    "cotton": 3,
    "linen": 3,
    "hemp": 3,
}
"""Dots by fibre (common practice); elastane counted with nylon (from memory)."""

FULL, FUSING = 3, 2
"""The most dots on a label, and those that a usual fusible needs (its own instructions decide; common
practice)."""


def iron_limit(fabric: Fabric) -> int | None:
    """Return the hottest setting (1-3 dots) that the cloth takes, 0 for none; None where nothing is known.

    The care label, the lowest fibre of a blend and what sort of cloth it is all count.
    """
    words = fabric.fibre.lower().replace(",", " ").split()
    known = [DOTS[word] for word in words if word in DOTS]
    if fabric.iron_dots is not None:
        known.append(fabric.iron_dots)
    if (most := handling(fabric).iron) < FULL:
        known.append(most)
    return min(known) if known else None


def cannot_fuse(fabric: Fabric, part: str) -> Iterator[Finding]:
    """Yield what a fusible interfacing must be like to hold on this cloth; one that takes none is sewn in."""
    limit = iron_limit(fabric)
    if handling(fabric).fuses and limit is not None and limit < FUSING:
        yield Finding(
            "fusible",
            "warning",
            part,
            float(limit),
            float(FUSING),
            f"{fabric.title} may be ironed at {limit} dot only, and most fusibles want {FUSING}: choose one "
            f"that bonds at {limit} dot, try it on a scrap, and air the room; or sew the interfacing in.",
        )


def cannot_ease(fabric: Fabric, wanted: float, part: str) -> Iterator[Finding]:
    """Yield why this cloth cannot take `wanted` mm of ease in a seam."""
    most = EASES[fabric.eases]
    if wanted > most:
        yield Finding(
            "easing",
            "error",
            part,
            wanted,
            most,
            f"{fabric.title} eases at most {told(most)}, and a cap ease of {told(wanted)} was asked for. "
            f"The {part} is drafted with {told(most)}: choose that, gather the cap, or take another cloth.",
        )


def cloth_cannot_take(draft: Draft, fabric: Fabric | None, typed: Mapping[str, float]) -> tuple[Finding, ...]:
    """Return what is asked of this cloth that it cannot take; `typed` are the maker's own choices.

    A default that is too much for a cloth is settled by the block, with a warning.
    """
    if fabric is None:
        return ()
    eased = tuple(cannot_ease(fabric, typed["cap_ease"], "sleeve")) if "cap_ease" in typed else ()
    return eased + _fused(draft, fabric)


def _fused(draft: Draft, fabric: Fabric) -> tuple[Finding, ...]:
    fused = sorted(p.name for p in draft.pieces if p.material == "interfacing")
    if not fused:
        return ()
    return tuple(cannot_fuse(fabric, fused[0].replace("-", " ")))
