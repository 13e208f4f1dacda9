"""A sleeve set into its armhole: the two halves that its cap is fitted to, and the seams they make."""

from __future__ import annotations

from drafting.draft.chain import Chain
from drafting.draft.draft import EdgeRef, Seam, SeamNotch
from drafting.draft.roles import SeamKind
from drafting.shaping.sleeve.cap import Cap
from drafting.shaping.sleeve.easing import BACK_SHARE
from drafting.shaping.sleeve.half_cap import HalfArmhole

BothHalfArmholes = tuple[HalfArmhole, HalfArmhole]


def half_armholes(front: Chain, back: Chain, ease: float, scale: float) -> BothHalfArmholes:
    """Return front and back half armhole; `ease` (mm) of the whole cap is shared out between them."""
    return (
        HalfArmhole(front.path, ease * (1 - BACK_SHARE), scale),
        HalfArmhole(back.path.reversed(), ease * BACK_SHARE, scale),
    )


def armhole_seams(
    caps: tuple[tuple[EdgeRef, ...], tuple[EdgeRef, ...]],
    chains: tuple[Chain, Chain],
    halves: BothHalfArmholes,
    cap: Cap,
) -> tuple[Seam, Seam]:
    """Return the seams of front and back cap (`caps`: their edges in order) to the armhole `chains`.

    The cap's notches stand as far from the underarm as the armhole's; ease lies above them.
    """
    front, back = halves
    in_front = SeamNotch("front", cap.front.length - front.notch, front.path.length - front.notch)
    return (
        Seam(
            "front armhole",
            caps[0],
            tuple(reversed(chains[0].refs)),
            front.ease,
            start=None,
            end=None,
            eased=(0.0, in_front.a),
            notches=(in_front,),
            kind=SeamKind.SET_IN,
        ),
        Seam(
            "back armhole",
            caps[1],
            tuple(reversed(chains[1].refs)),
            back.ease,
            start=None,
            end=None,
            eased=(back.notch, cap.back.length),
            notches=(SeamNotch("back", back.notch, back.notch, 2),),
            kind=SeamKind.SET_IN,
        ),
    )
