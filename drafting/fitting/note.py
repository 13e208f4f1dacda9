"""A note taken at a fitting: on which side, where, what is to be done, by how much, and why.

A note says one thing. Lengths are in mm; left and right are the wearer's.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum

from drafting.reading.given import FilePlace


class NoteSide(StrEnum):
    """Whose side a note is about: the wearer's left or right, or both alike."""

    LEFT = "left"
    RIGHT = "right"
    BOTH = "both"


class Verb(StrEnum):
    """What is to be done; there are no others."""

    TAKE_IN = "take in"
    LET_OUT = "let out"
    LENGTHEN = "lengthen"
    SHORTEN = "shorten"
    RAISE = "raise"
    LOWER = "lower"
    FORWARD = "move forward"
    BACK = "move back"
    TURN = "turn"
    CLIP = "clip"
    EASE_MORE = "ease more"
    EASE_LESS = "ease less"
    LEAVE = "leave"

    @property
    def reverse(self) -> Verb | None:
        """The verb that undoes this one, where one does."""
        return REVERSE.get(self)

    @property
    def done(self) -> str:
        """The verb as it is said of what was carried out."""
        return DONE.get(self, self.value)


_PAIRS = (
    (Verb.TAKE_IN, Verb.LET_OUT),
    (Verb.LENGTHEN, Verb.SHORTEN),
    (Verb.RAISE, Verb.LOWER),
    (Verb.FORWARD, Verb.BACK),
    (Verb.EASE_MORE, Verb.EASE_LESS),
)
REVERSE = {one: other for pair in _PAIRS for one, other in (pair, pair[::-1])}
"""Each verb with the one that undoes it."""


DONE = {
    Verb.TAKE_IN: "taken in",
    Verb.LENGTHEN: "lengthened",
    Verb.SHORTEN: "shortened",
    Verb.RAISE: "raised",
    Verb.LOWER: "lowered",
    Verb.FORWARD: "moved forward",
    Verb.BACK: "moved back",
    Verb.TURN: "turned",
    Verb.CLIP: "clipped",
    Verb.EASE_MORE: "eased more",
    Verb.EASE_LESS: "eased less",
    Verb.LEAVE: "left",
}
"""What is said of a verb once it was carried out, where that is another word."""


class AmountAs(StrEnum):
    """What the amount counts: the finished measure, half the cloth taken up by pins, or one edge."""

    TOTAL = "total"
    PINCH = "pinch"
    SEAM = "seam"


class NoteKind(StrEnum):
    """Who is to remember it: the wearer's file, the costume's, the cloth's, or nobody."""

    BODY = "body"
    STYLE = "style"
    CLOTH = "cloth"
    ACCIDENT = "accident"


class NoteState(StrEnum):
    """How far a note is; the next fitting alone closes it."""

    SEEN = "seen"
    PINNED = "pinned"
    ON_PAPER = "on paper"
    RIGHT = "right"
    TOO_MUCH = "too much"
    STILL_WRONG = "still wrong"


@dataclass(frozen=True, slots=True)
class AtEdge:
    """An edge of a piece, named as the draft of one hand names it (`front`, never `front-left`)."""

    piece: str
    edge: str

    def __str__(self) -> str:
        return f"{self.piece}.{self.edge}"


@dataclass(frozen=True, slots=True)
class AtPiece:
    """A whole piece."""

    piece: str

    def __str__(self) -> str:
        return self.piece


@dataclass(frozen=True, slots=True)
class AtLevel:
    """A level of the body, by the word of its `LevelKind`: bust, waist, hip, knee, elbow, upper arm."""

    level: str

    def __str__(self) -> str:
        return self.level


@dataclass(frozen=True, slots=True)
class AtMeasure:
    """A measure of the body, by the name of its dimension."""

    measure: str

    def __str__(self) -> str:
        return self.measure


NoteWhere = AtEdge | AtPiece | AtLevel | AtMeasure


@dataclass(frozen=True, slots=True)
class FromEnd:
    """A place on an edge: `mm` along it, from the end at which it meets the edge called `end`."""

    mm: float
    end: str


@dataclass(frozen=True, slots=True)
class Note:
    """One note; `amount` is in mm, as the maker said it, and never less than 0.

    `spot` is where it was written; `gives_way` says that it is left out and told where the garment of another
    wearer has no such place.
    """

    garment: str
    side: NoteSide
    where: NoteWhere
    verb: Verb
    amount: float
    counted: AmountAs
    kind: NoteKind
    state: NoteState
    at: FromEnd | None = None
    spot: FilePlace = field(default=FilePlace(), compare=False)
    gives_way: bool = field(default=False, compare=False)

    @property
    def asks(self) -> str:
        """What it asks for, as a sentence begins it: "take in front side"."""
        return f"{self.verb} {str(self.where).replace('_', ' ')}"


@dataclass(frozen=True, slots=True)
class Moved:
    """What an alteration moved, mm before and after, and why: an edge; without a `piece` a measure or a girth."""

    piece: str
    edge: str
    before: float
    after: float
    why: str = ""


@dataclass(frozen=True, slots=True)
class Done:
    """A note with all that it moved, in words too; `carried` says whether it was carried out."""

    note: Note
    moved: tuple[Moved, ...] = ()
    said: str = ""
    carried: bool = True
