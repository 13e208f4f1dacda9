"""Whether what is seen or pulled at is cut from a cloth that shows through or tears: a back of a sheer lining."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from drafting.draft.draft import Draft
from drafting.fabric import Fabric
from drafting.ground.findings import Finding

THIN = frozenset({"sheer", "lace"})
"""Sorts that show what lies beneath, and tear where they are pulled at (common practice)."""


def cut_from_thin(draft: Draft, cloths: Mapping[str, Fabric]) -> Iterator[Finding]:
    """Yield a warning for each cloth beside the garment's own that is thin, with the outside parts cut from it."""
    found: dict[str, dict[str, None]] = {}
    for piece in draft.pieces:
        if piece.cloth in cloths and THIN.intersection(cloths[piece.cloth].possible_sorts):
            found.setdefault(piece.cloth, {})[(piece.base or piece.name).replace("-", " ")] = None
    for role, names in found.items():
        title = cloths[role].title
        yield Finding(
            "thin cloth",
            "warning",
            ", ".join(names),
            None,
            None,
            f"It is cut from the cloth of the role {role}, and {title} is thin: it shows what lies beneath, and "
            "tears where it is pulled at. Name a close cloth for that role.",
        )
