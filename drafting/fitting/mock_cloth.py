"""Which cheap cloth stands in for the real one at a first try: as stiff, and with as much give.

A mock-up in cloth that hangs or gives otherwise tells lies; so what counts is how far the real cloth
stands out by itself (its bending length) and how far it stretches, not what it is made of.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.fabric import Fabric
from drafting.fabric.cloth import STRETCHES
from drafting.fabric.sorts import Sort
from drafting.ground.sources import Cited, practice

LIMP, STIFF = 15.0, 24.0
"""mm of bending length: below the first a cloth falls as voile does, above the second as drill or heavier
(from memory: chiffon 10 to 15, shirting 16 to 22, denim and canvas 30 to 45)."""

GIVE = 0.10
"""How far the stretch of a knit may differ from that of the real cloth, as a fraction (common practice)."""

WIDTH, EDGES = 1400.0, 30.0
"""mm: the narrower of the widths that calico is sold in (from memory: 140 to 160 cm), and both selvedges."""

NEVER_PIERCED: frozenset[Sort] = frozenset({"coated", "foiled"})
"""Cloth in which every needle hole stays."""

THICK: frozenset[Sort] = frozenset({"pile", "napped", "felted"})


@dataclass(frozen=True)
class MockCloth:
    """The cloth of a mock-up: its `key` in the lay, what to ask for, why that one, and as a `Fabric`."""

    key: str
    ask_for: str
    why: str
    source: Cited
    fabric: Fabric


def mock_cloth(real: Fabric, role: str, bending: float) -> MockCloth:
    """Return what to take for a mock-up of `real`, whose bending length is `bending` mm.

    >>> mock_cloth(Fabric("Velveteen", sort="pile"), "shell", 27.0).ask_for
    'cotton drill or heavy calico'
    >>> mock_cloth(Fabric("Jersey", weave="knit", stretch_across=0.4), "shell", 15.0).ask_for
    'a cheap knit that stretches 30 % to 50 % across and up to 10 % along'
    """
    if real.weave == "knit" or real.greatest_stretch >= STRETCHES:
        return _stretching(real, role)
    sorts = set(real.possible_sorts)
    if sorts & NEVER_PIERCED:
        why = "as stiff, and needle holes stay in the real cloth for good: it is never the mock-up"
        return _woven("felt", "felt or cotton drill", why, practice("felt or drill for vinyl, never the vinyl"))
    if sorts & THICK or bending >= STIFF:
        why = f"the real cloth stands out as drill does (its bending length is {bending:.0f} mm)"
        return _woven(
            "drill", "cotton drill or heavy calico", why, practice("drill or heavy calico for velveteen")
        )
    if bending <= LIMP or "sheer" in sorts:
        why = f"the real cloth falls as voile does (its bending length is {bending:.0f} mm)"
        return _woven("voile", "cheap voile", why, practice("voile for chiffon"))
    why = f"it falls as the real cloth does (its bending length is {bending:.0f} mm)"
    return _woven("calico", "light calico", why, practice("light calico for shirting"))


def _woven(key: str, ask_for: str, why: str, source: Cited) -> MockCloth:
    return MockCloth(
        key,
        ask_for,
        why,
        source,
        Fabric(f"mock-up: {ask_for}", width=WIDTH, usable_width=WIDTH - EDGES, pretreated=True),
    )


def _stretching(real: Fabric, role: str) -> MockCloth:
    kind = "knit" if real.weave == "knit" else "stretch woven"
    across, along = _range(real.stretch_across), _range(real.stretch_along)
    ask_for = f"a cheap {kind} that stretches {across} across and {along} along"
    why = "fit in a cloth that stretches is all in its stretch: within 10 points of the real one, tried on a strip"
    fabric = Fabric(
        f"mock-up: cheap {kind}",
        width=WIDTH,
        usable_width=WIDTH - EDGES,
        weave=real.weave,
        stretch_along=real.stretch_along,
        stretch_across=real.stretch_across,
        pretreated=True,
    )
    source = practice("a knit for a knit, its stretch within 10 percentage points")
    return MockCloth(f"stretch-{role}", ask_for, why, source, fabric)


def _range(stretch: float) -> str:
    low, high = (round(100 * max(0.0, stretch + by)) for by in (-GIVE, GIVE))
    return f"{low} % to {high} %" if low else f"up to {high} %"
