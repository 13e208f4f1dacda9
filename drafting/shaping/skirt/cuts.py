"""The cuts of a skirt, each a whole draft below the waist seam: pieces, seams, girths, its opening. mm."""

from __future__ import annotations

import math

from drafting.draft.draft import Draft, Seam
from drafting.draft.piece import EdgeKind
from drafting.draft.roles import SeamKind
from drafting.ground.findings import Finding
from drafting.ground.lengths import counted, told
from drafting.shaping.flare.fullness import bulk_said
from drafting.shaping.skirt.circle import UPRIGHT, panels_for, ring_panels, waist_ring
from drafting.shaping.skirt.gores import gored_pieces
from drafting.shaping.skirt.opening import OpenCentre, middle_edge, opening_said, with_opening
from drafting.shaping.skirt.plan import SkirtPlan
from drafting.shaping.skirt.straight import straight_pieces
from drafting.shaping.skirt.tiers import tier_pieces, tier_seams, tiers
from drafting.shaping.torso.dart_mouth import dart_seams

LEAST_PAST_HIP = 20.0
"""mm: a part of a circle that leaves less at the hip is opened wider (ours: it would catch there)."""

STRIDE = 1.75
"""Of the kneecap's height: a hem that measures less hinders the step (ours: by eye, 85 cm for an adult)."""

HEM_TO_WALK = "hem_to_walk"
"""The fact that says what a straight skirt's hem measures at least, mm, without a slit."""

BY_THE_HEM = "by the hem"
"""The word that leaves a slit to what the hem measures."""

LEAST_SLIT, ABOVE_KNEE = 150.0, 60.0
"""mm at adult scale: the least slit, and how far above the kneecap it begins (common practice: 150 to 200)."""


def straight_skirt(plan: SkirtPlan, more: float, walking_slit: str) -> Draft:
    """Return a skirt of front and back, its hem `more` mm wider than its hip.

    `walking_slit` is yes or none; by the hem it has one where the hem as drafted here measures less than a step
    asks for. What is let into the hem later is not known here.
    """
    front, back = straight_pieces(plan, more)
    hem, least = 2 * plan.hip + more, _hem_to_walk(plan)
    slits = hem < least if walking_slit == BY_THE_HEM else walking_slit == "yes"
    slit = max(LEAST_SLIT * plan.scale, plan.length - plan.knee + ABOVE_KNEE * plan.scale) if slits else 0.0
    centre = OpenCentre(plan.zip, slit, plan.behind)
    opening, other = (back, front) if plan.behind else (front, back)
    opening, seams = with_opening(opening, centre)
    pieces = (other, opening) if plan.behind else (opening, other)
    side = Seam("side", (("front", "side"),), (("back", "side"),), kind=SeamKind.SIDE)
    return Draft(
        pieces,
        (side, *seams, *(seam for piece in pieces for seam in dart_seams(piece))),
        girths=plan.girths(),
        findings=tuple(plan.said()),
        facts={"skirt_length": plan.length, "hem": hem, HEM_TO_WALK: least},
    ) + opening_said(opening, centre)


def _hem_to_walk(plan: SkirtPlan) -> float:
    """Return what a hem measures at least that lets its wearer walk, mm; 0 where it ends above the knees."""
    above = plan.length <= plan.knee - ABOVE_KNEE * plan.scale
    return 0.0 if above else STRIDE * (plan.length + plan.knee) / 2


def gored_skirt(plan: SkirtPlan, count: int, full: float) -> Draft:
    """Return a skirt of `count` gores, its hem `full` times its hip."""
    sweep = 2 * plan.hip * full
    gores, seams = gored_pieces(plan, count, sweep)
    draft = Draft(
        gores,
        seams,
        girths=plan.girths(),
        findings=tuple(plan.said()),
        facts={"skirt_length": plan.length, "hem": sweep},
    )
    return _opened(draft, plan)


def _opened(draft: Draft, plan: SkirtPlan) -> Draft:
    """Return the draft of panels with the zip in one of its centres and the other sewn, or on the fold."""
    first, last = draft.pieces[0], draft.pieces[-1]
    zipped, plain = (last, first) if plan.behind else (first, last)
    piece, seams = with_opening(zipped, OpenCentre(plan.zip, 0.0, plan.behind))
    draft = draft.with_pieces([piece])
    other = not plan.behind
    if middle_edge(plain, other).kind is EdgeKind.SEAM:
        sewn, more = with_opening(draft[plain.name], OpenCentre(0.0, 0.0, other))
        draft, seams = draft.with_pieces([sewn]), (*seams, *more)
        piece = draft[piece.name]
    return draft + Draft(seams=seams) + opening_said(piece, OpenCentre(plan.zip, 0.0, plan.behind))


def circle_skirt(plan: SkirtPlan, angle: float, edge: bool) -> Draft:
    """Return a part of a circle, opened wider than `angle` degrees where it would catch on the hip."""
    least = plan.body_hip + LEAST_PAST_HIP
    needed = math.degrees((least - 2 * plan.waist) / plan.rise)
    opened_to = max(angle, needed)
    ring = waist_ring(2 * plan.waist, plan.length, opened_to)
    most = UPRIGHT if plan.one_way else math.inf
    parting = panels_for(ring, plan.width, edge=edge, fold=plan.behind, most_angle=most)
    pieces, seams = ring_panels(ring, parting, plan.rise, "panel")
    hip = (ring.inner + plan.rise) * 2 * math.radians(ring.angle)
    said = [_parted_said(2 * parting.panels - parting.fold, plan.width, upright=ring.angle > most)]
    if opened_to > angle:
        said.append(_wider_said(angle, opened_to))
    draft = Draft(
        pieces,
        seams,
        girths=plan.girths(hip),
        findings=tuple(said),
        facts={
            "skirt_length": plan.length,
            "waist_radius": ring.inner,
            "hem": ring.outer * 2 * math.radians(ring.angle),
        },
    )
    return _opened(draft, plan)


def tiered_skirt(plan: SkirtPlan, count: int, full: float, thickness: float | None) -> Draft:
    """Return a skirt of `count` tiers, each `full` times as wide as what it is gathered to."""
    rows = tiers(plan, count, full, full)
    found = tuple(tier_pieces(plan, tier, tier is rows[-1]) for tier in rows)
    hip = next(2 * tier.width for tier in rows if tier.low <= -plan.rise)
    draft = Draft(
        tuple(piece for row in found for piece in row),
        tier_seams(found),
        girths=plan.girths(hip)[1:],  # the band holds the waist: the cloth there is flat
        findings=bulk_said("waist", full, thickness),
        facts={"skirt_length": plan.length, "hem": 2 * rows[-1].width},
    )
    for row in found:
        zipped = plan.zip if row is found[0] else 0.0
        centre = OpenCentre(zipped, 0.0, plan.behind)
        piece, seams = with_opening(row[-1] if plan.behind else row[0], centre)
        draft = draft.with_pieces([piece]) + Draft(seams=seams)
        if zipped:
            draft = draft + opening_said(piece, centre)
    return draft


def _parted_said(count: int, width: float, *, upright: bool) -> Finding:
    why = " and none of it hangs upside down, as this cloth has one right way up" if upright else ""
    return Finding(
        "panels",
        "note",
        "panel",
        float(count),
        None,
        f"The skirt is cut in {counted(count, 'panel', 'panels')}, so that {'each' if count > 1 else 'it'} lies "
        f"on cloth of {told(width)}{why}.",
    )


def _wider_said(angle: float, opened_to: float) -> Finding:
    return Finding(
        "hip of the skirt",
        "note",
        "hip",
        opened_to,
        angle,
        f"A part of a circle of {angle:.0f} degrees would catch on the hip: it is opened to {opened_to:.0f}.",
    )
