"""How much of a longer edge a cloth can ease in without tucks."""

from __future__ import annotations

from drafting.fabric import Fabric
from drafting.findings import Finding

EASES: dict[str, float] = {"well": 60.0, "little": 15.0, "none": 4.0}
"""mm: greatest cap ease that a cloth takes, by how it eases (trouble SL4: 0-5 where it does not)."""


def cap_ease_in(fabric: Fabric | None, wanted: float) -> tuple[float, tuple[Finding, ...]]:
    """Return the cap ease in mm: as wanted, or the most that this cloth can ease in, and say so."""
    most = EASES[fabric.eases] if fabric else EASES["well"]
    if wanted <= most or fabric is None:
        return wanted, ()
    said = Finding(
        "cap ease", "warning", "sleeve", most, wanted,
        f"The cap ease is {most:.0f} mm instead of {wanted:.0f}: {fabric.title} eases "
        f"{'hardly' if fabric.eases == 'little' else 'not at all'}, and more would sew in as tucks.",
    )  # fmt: skip
    return most, (said,)
