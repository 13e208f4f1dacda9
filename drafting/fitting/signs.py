"""Signs that a mock-up shows at the body: their likeliest causes in order, and the note to try for each.

Folds point at their cause. Strain runs out from where it is tight, loose folds hang from what is slack; a level
pull is too tight round, a level loose fold too long, an upright one too wide, a slant both, or a slope. Order and
amounts are those of the trade (`from memory`); the maker's own pins decide.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from drafting.draft.roles import EdgeRole, LevelKind, PieceRole
from drafting.fitting.bands import GarmentSort
from drafting.fitting.note import AmountAs, NoteKind, Verb

BodySpot = tuple[float, float]
"""A place on the drawn figure: 0 neck, 1 armpit, 2 bust, 3 waist, 4 hip, 5 crotch, 6 knee, 7 floor, and parts
between; then how far out, -1 to 1 of half the width there. On an arm: 10 shoulder to 11 wrist, and across it."""


class FoldKind(StrEnum):
    """How a sign is drawn."""

    STRAIN = "strain"
    LOOSE = "loose"
    GAP = "gap"
    TILT = "tilt"


class SignView(StrEnum):
    """From where a sign is seen."""

    FRONT = "front"
    BACK = "back"


class WornNumber(StrEnum):
    """Which number of the worn view shows the same sign."""

    STRAIN = "strain"
    STANDS_OFF = "stands off"
    SLACK = "slack"
    HEM = "hem"


@dataclass(frozen=True, slots=True)
class Fold:
    """One line of a sign, between two places; `both` draws it on the other half as well."""

    start: BodySpot
    end: BodySpot
    kind: FoldKind
    both: bool = True


@dataclass(frozen=True, slots=True)
class ToTry:
    """A note to try: on a measure of the body, a level, an edge of one of these roles, or a piece by its role.

    With edges, `piece` says on which piece they are looked for.
    """

    verb: Verb
    mm: float
    counted: AmountAs = AmountAs.SEAM
    edges: tuple[EdgeRole, ...] = ()
    piece: PieceRole | None = None
    level: LevelKind | None = None
    measure: str = ""

    @property
    def kind(self) -> NoteKind:
        """A measure goes with the wearer; anything else alters the line alone."""
        return NoteKind.BODY if self.measure else NoteKind.STYLE


@dataclass(frozen=True, slots=True)
class LikelyCause:
    """One cause of a sign, and what to try for it; one `above` the waist moves no garment that hangs from it."""

    why: str
    attempt: ToTry
    above: bool = False


@dataclass(frozen=True, slots=True)
class ShownWorn:
    """Where the worn view would show a sign: the number, at which level, and on which face ("" all round)."""

    number: WornNumber
    level: LevelKind | None = None
    face: str = ""


@dataclass(frozen=True, slots=True)
class FitSign:
    """What is seen, on what sort of garment, from where, how it is drawn, and its causes, the likeliest first.

    `sleeved` says that only a garment with sleeves can show it.
    """

    name: str
    seen: str
    sorts: frozenset[GarmentSort]
    view: SignView
    folds: tuple[Fold, ...]
    causes: tuple[LikelyCause, ...]
    worn: ShownWorn | None = None
    sleeved: bool = False
