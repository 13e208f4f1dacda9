"""What follows when an edge is altered, as data: how the other side of each kind of seam is made right.

An alteration is carried out on the part of a garment that draws its place, before anything that hangs on
that part is drafted; so most followers need no rule of their own but are drawn as they always are.
"""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from types import MappingProxyType

from drafting.draft.roles import SeamKind


class How(StrEnum):
    """How the other side of a seam follows."""

    TRUED = "trued"
    """Both sides are moved alike, and what is left is made equal at the seam's free end."""
    ANEW = "drawn anew"
    """It is drafted after the change, from the length that it finds."""
    ALIKE = "moved alike"
    """It lies behind the altered piece, and each of its places goes where that piece's place goes."""


FOLLOWERS: Mapping[SeamKind, How] = MappingProxyType(
    {
        SeamKind.PLAIN: How.TRUED,
        SeamKind.DART: How.TRUED,
        SeamKind.PANEL: How.TRUED,
        SeamKind.PRINCESS: How.TRUED,
        SeamKind.YOKE: How.TRUED,
        SeamKind.CENTRE: How.TRUED,
        SeamKind.PLEAT: How.TRUED,
        SeamKind.SHOULDER: How.TRUED,
        SeamKind.SIDE: How.TRUED,
        SeamKind.INSEAM: How.TRUED,
        SeamKind.CROTCH: How.TRUED,
        SeamKind.SLEEVE: How.TRUED,
        SeamKind.MADE_UP: How.TRUED,
        SeamKind.SET_IN: How.ANEW,
        SeamKind.ATTACHED: How.ANEW,
        SeamKind.WAIST: How.ANEW,
        SeamKind.FLY: How.ANEW,
        SeamKind.LAID_PLEAT: How.ANEW,
        SeamKind.BAG: How.ANEW,
        SeamKind.FACING: How.ALIKE,
    }
)
"""Every kind of seam, and how what is sewn there follows: a sleeve after its armhole, a collar, a cuff, a
band after what they are attached to, tails after the waist, a pleat of style, a facing after its front."""
