"""Is a strip of piping that is cut from the cloth wide enough for its cord and for both its allowances?"""

from __future__ import annotations

import math
from collections.abc import Iterable

from drafting.draft.pattern import Pattern
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.reading.trimming import TrimWish

THINNEST, USUAL_CORD = 1.0, 3.0
"""mm: the thinnest cord that piping is made round, and the usual one (common practice: 2 to 4)."""


def piping_wide_enough(pattern: Pattern, trims: Iterable[TrimWish]) -> tuple[Finding, ...]:
    """Warn of each strip, `TrimWish.width` mm as it is cut, that cannot be folded round a cord and reach its seam.

    A strip is as wide as what goes round the cord and the allowance of its edge twice (plane geometry).
    """
    deep = {(cut.piece.name, edge): wide for cut in pattern.pieces for edge, wide in cut.allowances.items()}
    narrow: dict[tuple[float, float], TrimWish] = {}
    for trim in trims:
        both = 2 * min(deep.get((trim.piece, trim.edge), 0.0), SEAM)
        if trim.kind == "piping" and trim.bias and trim.width < both + math.pi * THINNEST:
            narrow.setdefault((trim.width, both), trim)
    return tuple(_said(trim, both) for (_, both), trim in narrow.items())


SEAM = 10.0
"""mm: what of a deeper allowance the strip has to reach into (common practice)."""


def _said(trim: TrimWish, both: float) -> Finding:
    wanted = math.ceil(both + math.pi * USUAL_CORD)
    text = (
        f"A bias strip {told(trim.width, 'small')} wide goes round no cord: piping takes what goes "
        f"round the cord and {told(both, 'small')} for its two allowances. Write the width of the strip as it is "
        f"cut: {told(wanted, 'small')} for a cord {told(USUAL_CORD, 'small')} thick."
    )
    return Finding("piping", "warning", f"{trim.piece}.{trim.edge}", trim.width, wanted, text)
