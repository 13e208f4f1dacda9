"""A sleeve in two tiers: what is sewn below a first tier that widens, flared back or gathered. mm.

The lower tier is a part of a ring: its sides run to one point, so that each tier meets its seam square and both
edges of the seam have exactly the length asked for (plane geometry).

        a lantern                    two puffs
          .-'-.                        .-'-.
         /     \\    flared             |     |    gathered below
        /_______\\                     '~~~~~'
        \\       /    flared back       .~~~~~.    gathered above
         \\_____/                        \\___/
"""

from __future__ import annotations

import cmath
import math
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.draft.by_role import edges_as, the_edge
from drafting.draft.draft import Draft, EdgeRef, Seam, SeamNotch
from drafting.draft.frame import BodyFrame, BodyHeight, Limb
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole, Half, NotchKind, PieceRole, SeamKind
from drafting.geometry import Path, line
from drafting.geometry.arc import arc
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.shaping.flare.fullness import bulk_said, gathered
from drafting.shaping.limbs import arm_girth_at
from drafting.shaping.sleeve.cap import WIDEST_HEM

LEAST_TIER = 60.0
"""mm at adult scale: no tier is shorter (ours: room for its seam and its fullness)."""

STEEPEST = 18.0
"""degrees: a first tier's sides lean out no farther (ours: at 28 the cap of 30 of 300 people of ANSUR II started
up to 10 degrees off square to short sides)."""

STRAIGHT_SIDES = 1e-6
"""radians: a tier whose sides lean less is a straight strip."""

SHARES = (("quarter", 0.25), ("half", 0.5), ("three quarters", 0.75))


@dataclass(frozen=True)
class Tiers:
    """Two tiers: `upper` on the middle line from the crown, then `lower`; the seam is drawn `above` long on the
    upper and `below` long on the lower, and sewn `sewn` long where both are gathered (None: they are flared)."""

    upper: float
    lower: float
    above: float
    below: float
    sewn: float | None


def tiers_for(
    body: Body, style: str, *, length: float, width: float, cap: float, at: float, full: float, scale: float
) -> Tiers | None:
    """Return the tiers of a sleeve `length` mm long from its crown and `width` mm wide; None where it has none.

    Its cap is about `cap` mm high. The seam lies at a share `at` of the length and is `full` times as wide as the
    sleeve, or as the arm there.
    """
    if style not in ("lantern", "two puffs"):
        return None
    upper = min(max(at * length, 0.0), length - LEAST_TIER * scale)
    wide = min(min(full, WIDEST_HEM) * width, _widest(width, upper - cap))
    if style == "lantern":
        return Tiers(upper, length - upper, wide, wide, None)
    held = arm_girth_at(body, upper) + (width - body["upper_arm_girth"]) / 2
    return Tiers(upper, length - upper, wide, full * held, held)


def _widest(width: float, run: float) -> float:
    """Return how wide the first tier may be at its seam, where its sides are `run` mm long.

    >>> round(_widest(330.0, 200.0))
    460
    """
    return width + 2 * run * math.tan(math.radians(STEEPEST))


def with_lower_tier(
    draft: Draft, tiers: Tiers, hem: tuple[float, float], slit: float, thickness: float | None, gives: bool = False
) -> Draft:
    """Return a one-piece sleeve, drafted to the first tier, with the second one sewn to it.

    `hem` is the lower hem as sewn and as drawn, `slit` what of the underarm seam stays open at it; it `gives`
    where the arm stretches the sleeve.
    """
    above = draft["sleeve"]
    hem_edge = the_edge(above, EdgeRole.HEM)
    seam_edge = replace(hem_edge, name="tier", kind=EdgeKind.SEAM, role=EdgeRole.PANEL)
    above = replace(above, edges=tuple(seam_edge if e is hem_edge else e for e in above.edges))
    # where the cap could not be had as wide, the seam is as long as it is drawn there
    below = seam_edge.length if tiers.sewn is None else tiers.below
    lower = _lower(replace(tiers, below=below), hem[1], slit, tiers.upper - draft.facts["cap_height"])
    marks = tuple(
        SeamNotch(name, share * seam_edge.length, share * below, kind=NotchKind.QUARTER) for name, share in SHARES
    )
    seam = Seam(
        "tiers",
        ((above.name, "tier"),),
        ((lower.name, "top"),),
        start=None,
        end=None,
        notches=marks,
        kind=SeamKind.SLEEVE,
    )
    grown = replace(
        draft,
        pieces=(above, lower),
        seams=(seam, *(_run_on(s, lower, slit) for s in draft.seams)),  # joined flat, then closed in one
        chains={**draft.chains, "sleeve_hem": ((lower.name, "hem"),)},
        findings=(*draft.findings, _said(tiers, seam_edge.length, below, gives)),
    )
    if tiers.sewn is not None:
        held = min(tiers.sewn, seam_edge.length, below)
        grown = gathered(gathered(grown, (above.name, "tier"), sewn=held), (lower.name, "top"), sewn=held)
        full = max(seam_edge.length, below) / held
        grown = replace(grown, findings=(*grown.findings, *bulk_said("sleeve tiers", full, thickness)))
    return gathered(grown, (lower.name, "hem"), sewn=hem[0]) if hem[1] > hem[0] + 1e-6 else grown


def _said(tiers: Tiers, above: float, below: float, gives: bool) -> Finding:
    if tiers.sewn is None:
        text = f"The lantern's seam is {told(above)} round, {told(tiers.upper)} below the crown."
    else:
        over = "a soft elastic, which gives where the arm does," if gives else "a stay tape"
        text = (
            f"Both puffs are gathered to {told(tiers.sewn)}, {told(tiers.upper)} below the crown, from "
            f"{told(above)} above and {told(below)} below: sew them over {over} of that length."
        )
    return Finding("sleeve tiers", "note", "sleeve", above, None, text)


def _run_on(seam: Seam, lower: Piece, slit: float) -> Seam:
    """Return the underarm seam run on down the lower tier; any other as it is."""
    if seam.kind is not SeamKind.SLEEVE:
        return seam
    front, back = (_side(lower, half) for half in (Half.FRONT, Half.BACK))
    return replace(seam, a=(*seam.a, front), b=(*seam.b, back), end=None if slit else "smooth")


def _side(lower: Piece, half: Half) -> EdgeRef:
    return lower.name, next(e.name for e in edges_as(lower, EdgeRole.UNDERARM) if e.half is half)


def _lower(tiers: Tiers, hem: float, slit: float, armpit: float) -> Piece:
    """Return the lower tier as the left one lies, seen from outside, its front to -x, its seam's middle at 0.

    The armpit lies `armpit` mm above its seam.
    """
    low, high = _arcs(tiers.below, hem, tiers.lower)
    edges = (
        Edge("hem", low, EdgeKind.HEM, role=EdgeRole.HEM),
        *_sided(Half.BACK, line(low.end, high.start), slit),
        Edge("top", high, role=EdgeRole.PANEL),
        *_sided(Half.FRONT, line(high.end, low.start), slit),
    )
    frame = BodyFrame(limb=Limb.ARM, heights=((BodyHeight.ARMPIT, complex(0.0, armpit)),))
    return Piece(
        "sleeve-lower", edges, pair=True, title="Lower sleeve", role=PieceRole.SLEEVE, place=2, frame=frame
    )


def _arcs(top: float, hem: float, long: float) -> tuple[Path, Path]:
    """Return the hem from front to back and the top from back to front, parts of one ring `long` mm across."""
    angle = (top - hem) / long  # radians: positive where the ring's middle lies below
    if abs(angle) < STRAIGHT_SIDES:
        half = top / 2
        return (line(complex(-half, -long), complex(half, -long)), line(complex(half, 0.0), complex(-half, 0.0)))
    outer = top / angle
    middle = -1j * outer
    ray = cmath.exp(1j * angle / 2) * 1j
    degrees = math.degrees(angle)
    high = arc(middle, middle + outer * ray.conjugate() * -1, degrees)
    low = arc(middle, middle + (outer - long) * ray, -degrees)
    return low, high


def _sided(half: Half, side: Path, slit: float) -> tuple[Edge, ...]:
    """Return a side of the tier, running up behind and down in front; its end at the hem stays open."""
    name = f"side_{half}"
    if slit <= 0:
        return (Edge(name, side, role=EdgeRole.UNDERARM, half=half),)
    slit = min(slit, 0.5 * side.length)
    low, high = side.split(slit) if half is Half.BACK else side.split(side.length - slit)[::-1]
    sewn = Edge(name, high, role=EdgeRole.UNDERARM, half=half)
    open_end = Edge(f"slit_{half}", low, EdgeKind.OPENING, role=EdgeRole.SLIT, half=half)
    return (open_end, sewn) if half is Half.BACK else (sewn, open_end)
