"""The alterations of the line as tests take them: a draft of one hand, and for each what it must not move."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from drafting.blocks import all_blocks
from drafting.body import Body
from drafting.costume.choices import block_named, choose
from drafting.draft.chain import chain
from drafting.draft.draft import Draft
from drafting.draft.roles import EdgeRole as Role
from drafting.draft.walk import notched
from drafting.fitting.lines import (
    armhole,
    balance,
    bust,
    cap,
    dart,
    lengths,
    neck,
    pitch,
    rise,
    shoulder,
    waist,
    wedge,
)
from drafting.fitting.lines.altered import Altered
from drafting.ground.scale import body_scale
from drafting.reading.given import Origin


def upto(block: str, last: str, body: Body) -> Draft:
    """Return one hand of a garment with its parts up to `last`, as a note finds it; drafted once a body."""
    key = (block, last, body.title)
    if key not in _DRAFTED:
        _DRAFTED[key] = drafted_upto(block, last, body)
    return _DRAFTED[key]


_DRAFTED: dict[tuple[str, str, str], Draft] = {}


def drafted_upto(block: str, last: str, body: Body) -> Draft:
    """Return the same drafted anew, for a body that has its title in common with others."""
    kind = block_named(block)
    chosen = choose(kind, {}, body_scale(body), Origin())
    draft = Draft()
    for name, own in chosen.parts.items():
        part = all_blocks()[name]
        assert part.draft is not None
        chains = {needed: chain(draft, needed) for needed in part.needs}
        if part.alters:
            draft = part.draft(draft, body, None, own, **chains)
        else:
            draft += part.draft(body, None, own, **chains)
        if name == last:
            break
    return notched(draft)


@dataclass(frozen=True)
class Case:
    """One alteration: what it is done to, by how much (its usual start), and the edges that must stay."""

    alter: Callable[[Draft, float], Altered]
    by: float
    stays: frozenset[Role] = frozenset()
    on: tuple[tuple[str, str], ...] = (("shirt", "bodice"), ("tailcoat", "coat-body"))


TOPS = (("shirt", "bodice"), ("tailcoat", "coat-body"))
SHIRT = (("shirt", "bodice"),)
COAT = (("tailcoat", "coat-body"),)
WAIST = (("bodice", "bodice"),)
SLEEVES = (("fitted-top", "sleeve"), ("tailcoat", "two-piece-sleeve"))
LEGS = (("trousers", "trouser"),)
UPPER = frozenset({Role.NECK, Role.SHOULDER})
CAPS = frozenset({Role.CAP, Role.CAP_PART})
BODY = frozenset({Role.ARMHOLE, Role.SHOULDER, Role.SIDE, Role.NECK, Role.PANEL})

CASES: dict[str, Case] = {
    "1 waist in": Case(waist.waist, 10.0, UPPER, (*TOPS, *WAIST)),
    "1 waist out": Case(waist.waist, -10.0, UPPER, (*TOPS, *WAIST)),
    "2 sleeve length": Case(lengths.sleeve_length, 15.0, CAPS, SLEEVES),
    "3 leg length": Case(lengths.leg_length, 15.0, frozenset({Role.WAIST, Role.WAIST_DART}), LEGS),
    "4 waist level": Case(lengths.waist_level, 12.0, frozenset({*UPPER, Role.ARMHOLE}), (*TOPS, *WAIST)),
    "4 length below": Case(lengths.body_length, 15.0, frozenset({*UPPER, Role.ARMHOLE}), SHIRT),
    "5 slope": Case(shoulder.shoulder_slope, 7.0, frozenset({Role.CENTRE, Role.HEM}), TOPS),
    "6 shoulder length": Case(shoulder.shoulder_length, 8.0, frozenset({Role.SIDE, Role.CENTRE}), TOPS),
    "7 bust fuller": Case(dart.fuller_bust, -7.0, UPPER, TOPS),
    "7 bust at the sides": Case(armhole.bust_width, -7.0, frozenset({*UPPER, Role.CENTRE}), SHIRT),
    "8 bust point": Case(bust.bust_point, 10.0, frozenset({*UPPER, Role.CENTRE}), SHIRT),
    "9 armhole base": Case(armhole.armhole_base, 6.0, frozenset({*UPPER, Role.CENTRE, Role.HEM}), TOPS),
    "10 armhole scooped": Case(
        lambda d, by: armhole.armhole_scoop(d, ("front", "armhole"), by),
        3.0,
        frozenset({Role.CENTRE, Role.HEM}),
        TOPS,
    ),
    "11 front armhole gapes": Case(
        lambda d, by: dart.armhole_fold(d, False, by), 7.0, frozenset({Role.CENTRE, Role.HEM}), TOPS
    ),
    "11 back armhole gapes": Case(
        lambda d, by: dart.armhole_fold(d, True, by), 7.0, frozenset({Role.CENTRE, Role.HEM}), TOPS
    ),
    "12 neck lower": Case(
        lambda d, by: neck.neck_depth(d, False, by), 6.0, frozenset({Role.ARMHOLE, Role.SIDE, Role.HEM}), SHIRT
    ),
    "12 neck wider": Case(neck.neck_width, 5.0, frozenset({Role.SIDE, Role.HEM}), TOPS),
    "13 round back": Case(wedge.blades_wedge, 8.0, frozenset({Role.SIDE, Role.HEM, Role.WAIST}), TOPS),
    "14 sway back": Case(lambda d, by: wedge.waist_wedge(d, True, by), -8.0, UPPER, (*COAT, *WAIST)),
    "15 forward shoulder": Case(
        shoulder.shoulder_forward, 7.0, frozenset({Role.SIDE, Role.CENTRE, Role.HEM}), TOPS
    ),
    "16 across back": Case(lambda d, by: armhole.across_width(d, True, by), 4.0, frozenset({Role.HEM}), TOPS),
    "16 across front": Case(lambda d, by: armhole.across_width(d, False, by), 3.0, frozenset({Role.HEM}), TOPS),
    "17 sleeve forward": Case(pitch.sleeve_turned, 10.0, frozenset({*BODY, Role.UNDERARM, Role.HEM}), SLEEVES),
    "17 sleeve back": Case(pitch.sleeve_turned, -10.0, frozenset({*BODY, Role.UNDERARM, Role.HEM}), SLEEVES),
    "18 cap eased": Case(lambda d, by: cap.cap_ease(d, True, by), 4.0, frozenset({*BODY, Role.HEM}), SLEEVES),
    "18 cap height": Case(cap.cap_height, 6.0, BODY, SLEEVES),
    "19 upper arm": Case(cap.arm_width, 12.0, BODY, SLEEVES),
    "20 crotch length": Case(lambda d, by: rise.crotch_length(d, True, by), 8.0, frozenset({Role.HEM}), LEGS),
    "20 rise": Case(rise.rise_depth, 8.0, frozenset({Role.HEM, Role.INSEAM}), LEGS),
    "21 seat": Case(rise.fuller_seat, 8.0, frozenset({Role.HEM}), LEGS),
    "22 thigh": Case(lambda d, by: rise.leg_width(d, -30.0, by), -12.0, frozenset({Role.HEM}), LEGS),
    "23 centre of the waist": Case(
        lambda d, by: rise.centre_waist(d, True, by), 8.0, frozenset({Role.HEM, Role.INSEAM}), LEGS
    ),
    "24 abdomen": Case(lambda d, by: wedge.waist_wedge(d, False, by), 8.0, UPPER, WAIST),
    "25 balance": Case(balance.front_balance, 7.0, frozenset({Role.SIDE, Role.HEM, Role.WAIST}), TOPS),
}
"""The list by its numbers; amounts are where a maker starts (common practice)."""
