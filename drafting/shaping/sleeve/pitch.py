"""Where a two-piece sleeve's hind-arm seam begins: at the back pitch of the armhole it is set into."""

from __future__ import annotations

from drafting.draft.chain import Chain
from drafting.draft.roles import PieceRole
from drafting.shaping.sleeve.cap import Cap
from drafting.shaping.sleeve.set_in import BothHalfArmholes
from drafting.shaping.sleeve.two_piece import Pitch

BELOW_SEAM = (20.0, 50.0)
"""mm at adult scale: how far under the back's own seam, along the armhole, the hind-arm seam may begin
(from memory: an inch or so); nearer, two seams would lie on each other."""

LEAST_APART = 14.0
"""mm: two seams with their allowances want so much on the smallest armhole, too (ours)."""

UP_BACK = (0.40, 0.55)
"""The same as shares of the back armhole, for a back without a side body (common practice: about half)."""


def pitch_of(cap: Cap, halves: BothHalfArmholes, back_armhole: Chain, scale: float) -> Pitch:
    """Return where the seams may meet the cap, for the back armhole `halves[1]` was made of."""
    back = halves[1]
    whole = back.path.length
    on_back = sum(
        length
        for length, role in zip(back_armhole.lengths, back_armhole.pieces, strict=True)
        if role is PieceRole.BACK
    )
    own = whole - on_back
    if own > 0.2 * whole:
        near = max(BELOW_SEAM[0] * scale, LEAST_APART)
        band = own - max(BELOW_SEAM[1] * scale, near), own - near
    else:
        band = UP_BACK[0] * whole, UP_BACK[1] * whole

    def on_cap(at: float) -> float:
        """The cap's ease lies above its notch, evenly."""
        if at <= back.notch:
            return at
        return back.notch + (at - back.notch) * (cap.back.length - back.notch) / (whole - back.notch)

    return Pitch(notches=(halves[0].notch, back.notch), back=(on_cap(band[0]), on_cap(band[1])))
