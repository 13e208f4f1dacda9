"""What a cast is made of."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from drafting.body import Body
from drafting.body.refusals import Taken
from drafting.ground.errors import Fault
from drafting.ground.frozen import freeze
from drafting.ground.units import ShownUnit, shown_unit
from drafting.printing.paper import Paper
from drafting.reading.given import Given


@dataclass(frozen=True)
class Changes:
    """What a cast file says of one wearer in her table `[wearer.NAME]`; "" and empty where it says nothing.

    `measures` in mm replace those of her own file; `choices` go by garment; `let_out` is the choice of that
    name for every garment. `line` is where her table stands.
    """

    role: str = ""
    understudies: str = ""
    measures: Mapping[str, Taken] = field(default_factory=dict)
    choices: Mapping[str, Mapping[str, Given]] = field(default_factory=dict)
    let_out: Given | None = None
    line: int | None = None

    def __post_init__(self) -> None:
        freeze(self, "measures", "choices")


@dataclass(frozen=True)
class CastWearer:
    """One wearer of a cast: her name, the name of her folder, and what `--wearer` would name her by (`source`).

    `body` has what differs in it already; it is None where `faults` say why she cannot be read. `role` and
    `understudies` are those of the cast file, else of her row.
    """

    name: str
    folder: str
    source: str
    body: Body | None
    faults: tuple[Fault, ...] = ()
    role: str = ""
    understudies: str = ""
    changes: Changes = Changes()


@dataclass(frozen=True)
class Cast:
    """A cast as its maker wrote it: a costume file, the wearers in their order, cloths to be laid `together`.

    `unit` is what bare numbers of the cast file are in; `told_in` what its maker reads. `papers` are printed on
    where there are any, else those of the costume.
    """

    title: str
    costume: str
    wearers: tuple[CastWearer, ...]
    together: tuple[str, ...]
    path: str
    unit: str | None
    told_in: ShownUnit
    papers: tuple[Paper, ...] = ()

    def beside(self, wearer: CastWearer) -> CastWearer | None:
        """Return whom a wearer is compared with: the one she understudies, else the first who can be read."""
        if wearer.understudies:
            return next((one for one in self.wearers if one.name == wearer.understudies), None)
        return next((one for one in self.wearers if one.body is not None), None)


def told_unit(unit: str | None, wearers: tuple[CastWearer, ...]) -> ShownUnit:
    """Return the unit that a cast is told in: its file's, else that of the first body that says one."""
    return shown_unit(unit or next((one.body.unit for one in wearers if one.body), None))
