"""A cap and what hangs from it made to agree: the cap fitted until it starts square to the seams below. mm."""

from __future__ import annotations

import math
from collections.abc import Callable

from drafting.draft.draft import Draft
from drafting.geometry.area import is_simple
from drafting.geometry.turning import inflections
from drafting.ground import tolerances as tol
from drafting.ground.errors import DraftError
from drafting.shaping.sleeve.below_cap import SleeveSeams
from drafting.shaping.sleeve.cap import Cap

SQUARE, CAP_ROUNDS = 0.25, 8
"""degrees within which the cap starts square to the seams, and how often it is fitted for that (ours)."""

OFF_SQUARE = 1.0
"""degrees that each side may start off square: both together are what the checks of seams let pass (ours)."""

CAP_UNDERARM, SETTLES = 15.0, 6
"""mm at adult scale of underarm seam that a cap sleeve keeps (common practice: it runs out to next to nothing
under the arm), and the rounds in which its hem is found."""


def cut_below_cap(
    below: Callable[..., tuple[SleeveSeams, float]], cap: Cap, width: float, scale: float
) -> SleeveSeams:
    """Return the seams of a sleeve cut off right below its cap, leaning as the cap was told."""
    lean, run = math.radians(cap.lean), CAP_UNDERARM * scale
    widens = lean / math.sin(lean) if abs(lean) > 1e-9 else 1.0
    down = run
    for _ in range(SETTLES):
        hem = (width - 2 * down * math.tan(lean)) * widens
        seams, _ = below(cap, width, hems=(hem, hem), length=cap.height + run)
        down = seams.front.length * math.cos(lean)
    return seams


def squared(
    below: Callable[[Cap, float], tuple[SleeveSeams, float]],
    refit: Callable[..., tuple[Cap, float]],
    cap: Cap,
    width: float,
) -> tuple[Cap, float, SleeveSeams, float]:
    """Return the cap fitted until it starts square to its seams, the width, the seams and the slit.

    `below` draws what hangs from a cap this wide, `refit` fits it anew. A bent forearm, and seams bowed out, lean
    otherwise than the cap was told.
    """
    seams, slit = below(cap, width)
    more, last = 0.0, (0.0, 0.0)
    for _ in range(CAP_ROUNDS):
        if abs(off := seams.lean - cap.lean) <= SQUARE:
            break
        more, last = _nearer((more, off), last), (more, off)
        cap, width = refit(width=width, more=more)
        seams, slit = below(cap, width)
    return cap, width, seams, slit


def refuse_styled(style: str, cap: Cap, seams: SleeveSeams, draft: Draft) -> None:
    """Raise `DraftError` where a cap is none, or a styled sleeve starts off square to it or crosses itself."""
    if any(inflections(half, tol.TURN_MATTERS) != 1 for half in (cap.front, cap.back)):
        raise DraftError(
            "no sleeve cap fits: it would be too flat to bend into its armhole",
            turn="choose less arm_ease, or a deeper armhole_drop",
        )
    if style == "plain":
        return
    if abs(seams.lean - cap.lean) > OFF_SQUARE:
        raise DraftError(
            f"no cap of a {style} sleeve starts square to its seams on this arm",
            turn='choose sleeve_style = "plain", less arm_ease, or a tier farther down',
        )
    if not all(is_simple(piece.outline) for piece in draft.pieces):
        raise DraftError(
            f"the outline of the {style} sleeve would cross itself",
            turn='choose a longer sleeve_length, or sleeve_style = "plain"',
        )


def _nearer(now: tuple[float, float], last: tuple[float, float]) -> float:
    """Return how much more the cap is to be told that its seams lean, degrees.

    `now` and `last` are what it was told, and by how much the seams then leant more. Between two that miss on
    either side it lies where a straight line would be right.
    """
    (more, off), (before, was) = now, last
    return more + off if off * was >= 0 else more + off * (more - before) / (was - off)
