"""A yoke's seams: one row over the middle where both its pieces are whole, and what is said of a double yoke."""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Iterator, Sequence

from drafting.checks.enclosed import eased
from drafting.draft.by_role import between_yokes
from drafting.draft.draft import Draft, Seam
from drafting.draft.roles import SeamKind
from drafting.fabric import handling
from drafting.making.model import Said, said
from drafting.making.order.parts import Bench, pieces_of

SAID_OF = {True: ("do.join_yoke", "do.turn_yoke"), False: ("do.join_yoke_front", "do.turn_yoke_front")}
"""How a double yoke is joined and turned, by whether it is to the back, or to a front."""


def seam_rows(draft: Draft, seams: Iterable[Seam]) -> Iterator[tuple[Seam, ...]]:
    """Yield seams by the row that sews them: the two halves of a yoke's seam between whole pieces are one."""
    for _, row in itertools.groupby(seams, key=lambda seam: _over_the_middle(draft, seam) or seam.name):
        yield tuple(row)


def _over_the_middle(draft: Draft, seam: Seam) -> frozenset[str]:
    """Return the pieces of a yoke's seam, none of them divided or of one hand; none for any other seam."""
    pieces = [draft[name] for name in pieces_of(seam)]
    whole = not any(piece.hand or piece.pair or piece.fold_edge for piece in pieces)
    return frozenset(pieces_of(seam)) if seam.kind is SeamKind.YOKE and whole else frozenset()


def row_name(row: Sequence[Seam]) -> str:
    """Return what a row is called: the words that the names of its seams begin with alike.

    >>> row_name([Seam(f"back yoke {hand}", (), ()) for hand in ("left", "right")])
    'back yoke'
    """
    words = zip(*(seam.name.split() for seam in row), strict=False)
    alike = itertools.takewhile(lambda same: len(set(same)) == 1, words)
    return " ".join(same[0] for same in alike) or row[0].name


def doubled(bench: Bench, row: Sequence[Seam], *, gathered: bool) -> Iterator[Said]:
    """Yield how a row between the two layers of a yoke is sewn and pressed; nothing for any other row."""
    if not between_yokes(bench.garment.draft, row[0]):
        return
    join, turn = SAID_OF[row[0].kind is SeamKind.YOKE]
    ease = max(abs(seam.ease) for seam in row)
    if not gathered and eased(ease):
        yield said("do.ease", ease=ease)
    yield said(join, name=row_name(row))
    fabric = bench.fabric
    if fabric is not None and fabric.weave != "knit" and handling(fabric).neatens == "french":
        yield said("do.trim_yoke")
    yield said(turn)
