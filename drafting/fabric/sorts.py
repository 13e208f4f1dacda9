"""What sort of cloth it is: as its file says, or what is left once fibre, lie, faces and care have spoken."""

from __future__ import annotations

from typing import Literal, get_args

Sort = Literal["plain", "pile", "napped", "satin", "sheer", "coated", "sequinned", "lace", "felted", "foiled"]
SORTS: tuple[Sort, ...] = get_args(Sort)

SHADING: frozenset[Sort] = frozenset({"pile", "napped", "satin"})
"""Sorts that look lighter or darker as their warp is turned (common practice)."""

CARE: tuple[tuple[str, tuple[Sort, ...]], ...] = (
    ("needle board", ("pile",)),
    ("velvet board", ("pile",)),
    ("wipe clean", ("coated", "foiled")),
    ("do not iron", ("coated", "sequinned", "foiled")),
)
"""What a care text says of the sort, the surest first (common practice). "Dry clean" and "do not wash"
are said of any sort."""

FIBRE: tuple[tuple[str, tuple[Sort, ...]], ...] = (
    ("pvc", ("coated",)),
    ("vinyl", ("coated",)),
    ("polyurethane", ("coated",)),
)
"""Fibres that no plain cloth is made of (common practice)."""

ONE_WAY: tuple[Sort, ...] = ("pile", "napped", "satin")
"""What a cloth that has to lie one way may be, besides a one-way print."""


def possible_sorts(sort: Sort | None, fibre: str, care: str, one_way: bool, faces_alike: bool) -> tuple[Sort, ...]:
    """Return what a cloth can be: the sort that is named, else what its other facts leave.

    >>> possible_sorts(None, "cotton", "", False, True)
    ('plain',)
    >>> possible_sorts(None, "cotton", "steam on a needle board", True, False)
    ('pile',)
    """
    if sort is not None:
        return (sort,)
    for said, words in ((care, CARE), (fibre, FIBRE)):
        for word, sorts in words:
            if word in said.lower():
                return sorts
    return ONE_WAY if one_way and not faces_alike else ("plain",)
