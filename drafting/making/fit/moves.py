"""Does the garment let its wearer move? Each movement as numbers: what it asks, what is there."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from drafting.body import Body
from drafting.body.body import SIDES
from drafting.checks.ease import GIVES
from drafting.costume.garment import MadeGarment
from drafting.draft.by_role import pieces_as
from drafting.draft.draft import Draft, Girth
from drafting.draft.roles import SLEEVES
from drafting.fabric import Fabric
from drafting.fitting.bands import GarmentSort, sort_of_garment
from drafting.fitting.moving import (
    CHANGE,
    MAY_RISE,
    PULLED_ON,
    RAISED,
    ROOM,
    SECONDS,
    SKIN,
    SLEEVES_GIVE,
    TIMED,
    Demand,
    Enough,
    Movement,
    judged,
)
from drafting.ground.sources import Cited, ours
from drafting.making.fit.ease import drawn_girth, layer_beneath
from drafting.making.settings.lengthening import SHORTER, around
from drafting.shaping.stretch import PULL

MoveUnit = Literal["mm", "share", "s"]

RISE = ours("the armhole's base swings about the armpit once the sleeve's lift is spent")


@dataclass(frozen=True, slots=True)
class MoveRow:
    """One movement in one garment: what is there and what is asked, in `unit` ("share" is a fraction)."""

    garment: str
    movement: Movement
    level: str
    have: float
    low: float
    high: float
    unit: MoveUnit
    verdict: Enough
    sources: tuple[Cited, ...]


@dataclass(frozen=True)
class _Asked:
    """What all movements of one garment are asked of."""

    garment: MadeGarment
    body: Body
    gives: float
    along: float

    @property
    def draft(self) -> Draft:
        return self.garment.draft

    def facts(self, name: str) -> list[float]:
        """Return what the draft measured under this name, for both hands or for each."""
        facts = self.draft.facts
        return [facts[key] for key in (name, *(f"{name}_{side}" for side in SIDES)) if key in facts]

    def girth(self, *levels: str) -> Girth | None:
        """Return the tightest of these levels: the one with the least ease of both hands."""
        found = [girth for girth in self.draft.girths if girth.level in levels]
        return min(found, key=lambda girth: girth.settled_ease, default=None)

    @property
    def worn_along(self) -> float:
        """The stretch that is worn already along the body, a fraction."""
        return SHORTER * around(self.draft)

    def room(self, girth: Girth) -> float:
        """Return what is left at a level, mm, over the layers beneath, the cloth stretched for a moment."""
        return (
            drawn_girth(self.draft, girth) * (1 + PULL * self.gives)
            + girth.inside
            - girth.body
            - layer_beneath(self.body, girth)
        )

    def row(
        self, movement: Movement, level: str, have: float, wanted: Demand, unit: MoveUnit, *more: Cited
    ) -> MoveRow:
        return MoveRow(
            garment=self.garment.name,
            movement=movement,
            level=level,
            have=have,
            low=wanted.low,
            high=wanted.high,
            unit=unit,
            verdict=judged(have, wanted),
            sources=(wanted.source, *more),
        )


def move_rows(garment: MadeGarment, body: Body, fabric: Fabric | None) -> Iterator[MoveRow]:
    """Yield a row for each movement that this garment can hinder."""
    gives = fabric.greatest_stretch if fabric else 0.0
    along = min(fabric.stretch_along, fabric.stretch_across) if fabric else 0.0
    asked = _Asked(garment, body, gives, along)
    if sort_of_garment(garment.draft) is not GarmentSort.LEGS:
        yield from _arms_up(asked)
        yield from _hug(asked)
        yield from _breath(asked)
    yield from _sit(asked)
    yield from _stairs(asked)
    yield from _change(asked)


def _sleeved(draft: Draft) -> bool:
    return bool(pieces_as(draft, *SLEEVES))


def _arms_up(asked: _Asked) -> Iterator[MoveRow]:
    """Yield how far the hem rises: the armhole's base swings about the armpit once the sleeve's lift is spent."""
    lifts, below = asked.facts("arm_lift"), _below_armpit(asked)
    if not lifts or below is None or not _sleeved(asked.draft):
        return
    swing = math.radians(max(0.0, RAISED - min(lifts)))
    rise = 2 * below * math.sin(swing / 2)
    coat = sort_of_garment(asked.draft) is GarmentSort.COAT
    give = PULL * asked.along * asked.body["back_waist_length"] if asked.gives >= GIVES else 0.0
    yield asked.row(Movement.ARMS_UP, "hem", max(0.0, rise - give), MAY_RISE[coat], "mm", RISE)


def _below_armpit(asked: _Asked) -> float | None:
    """Return how far the armhole's base lies below the wearer's armpit, mm, or None where nobody says."""
    drops, depths = asked.facts("armhole_drop"), asked.facts("scye_depth")
    if drops:
        return max(drops)
    return max(0.0, max(depths) - asked.body["axilla_depth"]) if depths else None


def _hug(asked: _Asked) -> Iterator[MoveRow]:
    back, arm = asked.girth("across_back"), asked.girth("upper_arm")
    if back is not None:
        sleeves = SLEEVES_GIVE * max(0.0, asked.room(arm)) if arm is not None else 0.0
        skin = SKIN[Movement.HUG]
        wanted = Demand(skin.low * back.body, skin.high * back.body, skin.source)
        yield asked.row(Movement.HUG, back.level, asked.room(back) + sleeves, wanted, "mm")
    if arm is not None and arm.settled_ease < 0:
        yield asked.row(
            Movement.BENT_ARM, arm.level, _left(asked.along, asked.worn_along), SKIN[Movement.BENT_ARM], "share"
        )


def _breath(asked: _Asked) -> Iterator[MoveRow]:
    bust = asked.girth("bust")
    if bust is not None:
        yield asked.row(Movement.BREATH, bust.level, asked.room(bust), ROOM[Movement.BREATH], "mm")


def _sit(asked: _Asked) -> Iterator[MoveRow]:
    hip = asked.girth("hip")
    if hip is None:
        return
    if asked.gives >= GIVES and hip.settled_ease < 0:
        left = _left(asked.gives, hip.body / drawn_girth(asked.draft, hip) - 1)
        yield asked.row(Movement.SIT, hip.level, left, SKIN[Movement.SIT], "share")
    else:
        yield asked.row(Movement.SIT, hip.level, asked.room(hip), ROOM[Movement.SIT], "mm")


def _stairs(asked: _Asked) -> Iterator[MoveRow]:
    thigh, knee = asked.girth("thigh"), asked.girth("knee")
    if thigh is not None and asked.body.posture != "seated":
        yield asked.row(Movement.STAIRS, thigh.level, asked.room(thigh), ROOM[Movement.STAIRS], "mm")
    if knee is not None and knee.settled_ease < 0:
        yield asked.row(
            Movement.KNEE, knee.level, _left(asked.along, asked.worn_along), SKIN[Movement.KNEE], "share"
        )


def _left(stretch: float, worn: float) -> float:
    """Return what stretch is left in cloth that is worn stretched by `worn` already."""
    return (1 + stretch) / (1 + max(0.0, worn)) - 1


def _change(asked: _Asked) -> Iterator[MoveRow]:
    """Yield how long it takes to get in: pulled on, and each closing shut (a zip is one however long)."""
    seconds = PULLED_ON
    for notion in asked.draft.notions:
        each = SECONDS.get(notion.what, 0.0)
        seconds += each * notion.count
    yield asked.row(Movement.CHANGE, "closing", seconds, CHANGE, "s", TIMED)
