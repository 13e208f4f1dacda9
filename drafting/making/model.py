"""What a making plan is made of: bare facts. The words stand in `making/words/*.toml`.

    Made + Workroom -> docket, shopping, steps, tables -> Plan -> plan.html, report.json

A step takes *parts* and makes one. A part is a cut piece (`coat.front`: both hands of a pair count
as one, they are worked together) or what an earlier step made (`coat: body`). Each part is used
exactly once, each seam is sewn exactly once, and one part a garment is left at the end. A fitting
takes apart what was only basted for it: its pieces are then parts again.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from drafting.fabric.handling import Neatens
from drafting.ground.frozen import freeze
from drafting.ground.sources import Sources

Stage = Literal["treat", "cut", "prepare", "shape", "join", "fit", "close", "finish"]
"""The stages of the work, in the order a maker meets them; a fitting stands between joins."""


@dataclass(frozen=True, slots=True)
class Said:
    """A sentence of the plan: the key of its text and the facts that go into it.

    Lengths are mm, temperatures degrees C, shares fractions; the text says how each is shown. A fact may
    be words of their own, put into the sentence.
    """

    key: str
    facts: tuple[tuple[str, float | int | str | Said], ...] = ()


def said(key: str, **facts: float | int | str | Said) -> Said:
    """Return the sentence `key` with its facts."""
    return Said(key, tuple(facts.items()))


@dataclass(frozen=True, slots=True)
class Needle:
    """A machine needle: its point (`sharp`, `ball point`, `stretch` ...) and size NM (100 x mm)."""

    point: str
    size: int


@dataclass(frozen=True, slots=True)
class Setting:
    """How one seam is sewn and pressed.

    `stitch` is the type of `Source.ISO_4915`, `seam_class` the class of `Source.ISO_4916` (1-8);
    `stitch_length` and `width` (of a zigzag) in mm; `pressure` of the foot; `lengthens` the fraction
    by which the seam must lengthen on this body, `cause` what lengthens it (`around` the body, `moves`
    as the wearer does, `passes` over a hand or hip, `bias` by its own weight); `press` the way its
    allowances go, `onto` which side that is; `dots` the iron's limit there (None: nothing known, try it;
    0: none). `holds` is what keeps the layers together, `neatens` how raw edges of the cloths that
    meet are neatened ("": nobody described them), `pile` says that one of them has one; `why` and `trials`
    are what a maker should know about the choice.
    """

    stitch: str
    seam_class: int
    stitch_length: float
    needle: Needle
    foot: str
    width: float = 0.0
    pressure: Literal["usual", "lighter"] = "usual"
    lengthens: float = 0.0
    stayed: bool = False
    press: Literal["open", "to one side", "not"] = "open"
    onto: Said | None = None
    dots: int | None = None
    why: tuple[Said, ...] = ()
    trials: tuple[Said, ...] = ()
    cause: Literal["", "around", "moves", "passes", "bias"] = ""
    holds: Literal["pins", "basting", "clips"] = "pins"
    neatens: Neatens | Literal[""] = ""
    pile: bool = False


Deed = Literal["presses", "stays", "trims", "neatens", "levels", "starches", "closes", "turns"]
"""What a step does to cloth besides sewing it. `closes`: after it nothing is reached inside any more."""


@dataclass(frozen=True, slots=True)
class Supply:
    """Something used up in a step: `what` it is, its `kind`, and `amount` in `unit`.

    `cloth` is the role of the cloth that it has to match in colour ("" where that does not matter).
    """

    what: str
    kind: str
    amount: float
    unit: Literal["mm", "piece", "pair"]
    cloth: str = ""


@dataclass(frozen=True)
class Step:
    """One thing to do.

    `verb` is the kind of work (`fuse`, `join`, `gather`, `hang` ...); `say` what to do, its heading
    first; `uses` and `makes` parts (see above; a step on a whole cloth names the cloth's role as
    `cloth: shell`). `pieces` are drawn beside it with `seams` and `edges` (piece, edge) lit, both by
    the garment's own names; `notions` says what is sewn in. `minutes` is a guess of the hands' time,
    `wait` hours that the work then lies or hangs by itself. `holds` is what keeps layers together
    (None: nothing has to be held), `heat` the dots of the iron (None: no iron). `length` is the mm that
    are sewn in it and `count` how many things are; `basted` names the seams that are only basted, with
    long stitches, and `apart` the pieces that are parts again after it; `does` says what else happens to
    the cloth, in the words of `Deed`, and `takes` what is used up besides cloth, thread and
    notions; a trim lies `along` its edges. `by_hand` says how what is sewn by hand beside its `setting` is sewn.
    """

    key: str
    stage: Stage
    verb: str
    garment: str
    say: tuple[Said, ...]
    uses: tuple[str, ...]
    makes: str
    pieces: tuple[str, ...] = ()
    seams: tuple[str, ...] = ()
    setting: Setting | None = None
    cautions: tuple[Said, ...] = ()
    minutes: float = 0.0
    wait: float = 0.0
    edges: tuple[tuple[str, str], ...] = ()
    notions: tuple[str, ...] = ()
    n: int = 0
    holds: Literal["pins", "basting", "clips", "weights"] | None = None
    heat: int | None = None
    length: float = 0.0
    count: int = 0
    basted: tuple[str, ...] = ()
    apart: tuple[str, ...] = ()
    does: tuple[Deed, ...] = ()
    takes: tuple[Supply, ...] = ()
    along: tuple[tuple[str, str], ...] = ()
    by_hand: tuple[Said, ...] = ()


@dataclass(frozen=True, slots=True)
class DocketRow:
    """What is cut from one cloth: `count` pieces of cloth; `hand` and `lie` in words' keys."""

    cloth: str
    garment: str
    piece: str
    count: int
    hand: str
    grain: float
    fold_edge: str
    face: str
    fused_first: bool = False


@dataclass(frozen=True, slots=True)
class ShoppingRow:
    """One thing to buy: `amount` in `unit` (`mm`, `piece`, `pair`, `packet`); `parts` is what it adds up.

    `cost` is None where no price was given.
    """

    what: str
    detail: Said
    amount: float
    unit: str
    parts: tuple[tuple[str, float], ...] = ()
    cost: float | None = None


@dataclass(frozen=True)
class Table:
    """A table of the plan: its key (the title's text), heads (texts' keys), rows of cells."""

    key: str
    heads: tuple[str, ...]
    rows: tuple[tuple[Said | str | float, ...], ...]


@dataclass(frozen=True)
class Plan:
    """Everything between the pattern and the finished costume."""

    title: str
    wearer: str
    docket: tuple[DocketRow, ...] = ()
    shopping: tuple[ShoppingRow, ...] = ()
    steps: tuple[Step, ...] = ()
    tables: tuple[Table, ...] = ()
    keeping: tuple[Said, ...] = ()
    cautions: tuple[Said, ...] = ()
    remarks: tuple[Said, ...] = ()
    settings: Mapping[tuple[str, str], Setting] = field(default_factory=dict)
    sources: Sources = ()

    def __post_init__(self) -> None:
        freeze(self, "settings")
