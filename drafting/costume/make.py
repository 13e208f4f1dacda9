"""READ FIRST: from a costume file to checked pieces. The whole flow is `make`.

    CostumeFile -> choose -> draft -> notches -> finish (`finished`) -> check (`checked`) -> Made

The cutting layouts come after (`lays.laid_out`), then what is written to disk
(`output.write.write_output`); one garment without files is `garment.draft_garment`.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from datetime import date

from drafting.body.circumstances import day_of
from drafting.checks.layers import over_one_another
from drafting.checks.outside import cut_from_thin
from drafting.costume.choices import Chosen, block_named, garment_choices
from drafting.costume.cut_already import as_cut, reaches, said_of
from drafting.costume.file import CostumeFile, Garment
from drafting.costume.garment import MadeGarment, checked_garment, draft_garment, finished_garment
from drafting.costume.idle_choices import idle_choices
from drafting.costume.proportion import in_proportion
from drafting.costume.refused import chosen_on_wearer, refused_besides
from drafting.draft.named import called
from drafting.ground.errors import DraftError, Fault, InputError
from drafting.ground.findings import Finding
from drafting.ground.frozen import freeze
from drafting.ground.remembered import remembered
from drafting.layout import Lay
from drafting.printing.wishes import unprinted
from drafting.reading.given import Given, Origin

__all__ = ["Made", "MadeGarment", "checked", "draft_garment", "finished", "make"]


@dataclass(frozen=True)
class Made:
    """A costume made: its garments, every finding about it, and seconds by stage.

    `lays` holds a cutting layout for each cloth once `lays.laid_out` has worked them out.
    """

    costume: CostumeFile
    garments: tuple[MadeGarment, ...]
    findings: tuple[Finding, ...]
    lays: tuple[Lay, ...] = ()
    timings: Mapping[str, float] = field(default_factory=dict, compare=False)

    def __getitem__(self, name: str) -> MadeGarment:
        """Return the garment of this name; a KeyError names those there are."""
        for garment in self.garments:
            if garment.name == name:
                return garment
        raise KeyError(f"no garment {name!r}; there are {[g.name for g in self.garments]}")

    def __post_init__(self) -> None:
        freeze(self, "timings")


def make(costume: CostumeFile) -> Made:
    """Return the costume drafted, finished and checked; raises what `finished` does.

    Pieces that are asked for in print and that there are not are refused as well.

    >>> from drafting.costume.file import read_costume
    >>> from drafting.ground.shipped import demo_costume
    >>> [garment.name for garment in make(read_costume(demo_costume())).garments]
    ['coat', 'shirt', 'breeches']
    """
    faults: list[Fault] = []
    garments = _all_made(costume, faults)
    pieces = {g.name: [name for cut in g.pattern.pieces for name in called(cut.piece)] for g in garments}
    faults += unprinted(costume.prints, pieces)
    if faults:
        raise InputError(faults)
    return checked(_made_up(costume, garments))


def finished(costume: CostumeFile) -> Made:
    """Return the costume drafted and finished: what a picture needs. Nothing is checked yet.

    Raises `InputError` with every fault of every garment: choices that are not known or out of
    range first, then garments that these measures and choices cannot give.

    >>> from drafting.costume.file import read_costume
    >>> from drafting.ground.shipped import demo_costume
    >>> made = finished(read_costume(demo_costume()))
    >>> made.garments[1].pattern.pieces[0].piece.name, "check" in made.timings
    ('back', False)
    """
    faults: list[Fault] = []
    garments = _all_made(costume, faults)
    if faults:
        raise InputError(faults)
    return _made_up(costume, garments)


def _all_made(costume: CostumeFile, faults: list[Fault]) -> tuple[MadeGarment, ...]:
    """Return the garments that can be made; none where the choices of one are at fault."""
    chosen = {g.name: choices for g in costume.garments if (choices := chosen_for(costume, g, faults))}
    if faults:
        return ()
    made = [made_garment(costume, g, chosen[g.name], faults) for g in costume.garments]
    return tuple(garment for garment in made if garment)


@remembered(8)
def checked(made: Made) -> Made:
    """Return what was made with what the checks find in it; never raises.

    >>> from drafting.costume.file import read_costume
    >>> from drafting.ground.shipped import demo_costume
    >>> made = finished(read_costume(demo_costume()))
    >>> len(checked(made).findings) > len(made.findings)
    True
    """
    costume, wearer = made.costume, made.costume.wearer
    garments = (checked_garment(g, wearer, costume.fabrics.get(g.fabric)) for g in made.garments)
    return _made_up(costume, tuple(_reaching(costume, _asked_for(costume, _layered(tuple(garments))))))


def _asked_for(costume: CostumeFile, garments: tuple[MadeGarment, ...]) -> tuple[MadeGarment, ...]:
    """Return garments with what is to be said of choices that nothing follows from."""
    wishes = {garment.name: garment for garment in costume.garments}
    used = {g.name: {name: value for name, (value, _) in g.choices.items()} for g in garments}
    found = {g.name: tuple(idle_choices(costume, wishes[g.name], used[g.name])) for g in garments}
    return tuple(replace(g, findings=(*g.findings, *found[g.name])) if found[g.name] else g for g in garments)


def _layered(garments: tuple[MadeGarment, ...]) -> tuple[MadeGarment, ...]:
    """Return garments with what is to be said of those that go over others."""
    found = list(over_one_another({garment.name: garment.draft for garment in garments}))
    notes = {garment.name: tuple(one for name, one in found if name == garment.name) for garment in garments}
    return tuple(replace(g, findings=(*g.findings, *notes[g.name])) if notes[g.name] else g for g in garments)


def _reaching(costume: CostumeFile, garments: tuple[MadeGarment, ...]) -> Iterator[MadeGarment]:
    """Yield garments with what is to be said of those that were cut before a fitting."""
    try:
        before = as_cut(costume)
        cut = finished(before) if before else None
    except DraftError:  # choices that were made since: what was cut cannot be told any more
        cut = None
    earlier = {one.name: one for one in cut.garments} if cut else {}
    for garment in garments:
        found = tuple(reaches(earlier[garment.name], garment)) if garment.name in earlier else ()
        yield replace(garment, findings=(*garment.findings, *said_of(found))) if found else garment


def _made_up(costume: CostumeFile, garments: tuple[MadeGarment, ...]) -> Made:
    timings: Counter[str] = Counter()
    for garment in garments:
        timings.update(garment.seconds)  # seconds add up like counts
    return Made(costume, garments, tuple(_findings(costume, garments)), timings=dict(timings))


def chosen_for(costume: CostumeFile, garment: Garment, faults: list[Fault]) -> Chosen | None:
    """Return the choices of a garment, or None with what is wrong put among the `faults`."""
    field_name = f"garments.{garment.name}"
    origin = Origin(costume.path, costume.unit, f"{field_name}.choices")
    try:
        block = block_named(garment.block, f"{field_name}.block", costume.path, garment.block_line or garment.line)
    except InputError as error:
        faults.extend(error.faults)
        return None
    found: list[Fault] = []
    given: Mapping[str, Given] = garment.choices
    try:
        given = in_proportion(garment_choices(block), given, costume.wearer, origin)
    except InputError as error:
        found.extend(error.faults)
        given = {name: raw for name, raw in given.items() if not isinstance(raw.value, dict)}
    try:
        chosen = chosen_on_wearer(costume, garment, block, given, origin)
    except InputError as error:
        found.extend(error.faults)
    faults.extend(found)
    return None if found else chosen


def made_garment(
    costume: CostumeFile, garment: Garment, chosen: Chosen, faults: list[Fault]
) -> MadeGarment | None:
    """Return a garment finished, or None with what is wrong put among the `faults`."""
    block, cloth = block_named(garment.block), costume.fabrics.get(garment.fabric)
    try:
        return finished_garment(
            costume.wearer,
            cloth,
            block,
            chosen,
            style=garment.style,
            fullness=garment.fullness,
            trims=garment.trims,
            appliques=garment.appliques,
            pockets=garment.pockets,
            cloths=costume.fabrics,
            notes=costume.fittings.lines_of(garment.name),
            name=garment.name,
            role=garment.fabric,
        )
    except InputError as error:
        faults.extend(fault.in_unit(costume.told_in) for fault in error.faults)
    except DraftError as error:
        where = f"garments.{garment.name}"
        for one in (error, *refused_besides(costume, garment, error)):
            faults.append(Fault(one.said(costume.told_in), "", where, costume.path, garment.line))
    return None


def _day_doubted(costume: CostumeFile, today: date) -> Iterator[Finding]:
    """Say where the day that a costume has to be ready for is past, or lies before its wearer was measured."""
    day, taken = costume.worn_on, day_of(costume.wearer.measured_on)
    if day is not None and (day < today or (taken is not None and day < taken)):
        past = "is past" if day < today else f"lies before the measures were taken ({taken})"
        yield Finding("day", "warning", "worn_on", None, None, f"{day} {past}: is the date right?")


def _findings(costume: CostumeFile, garments: tuple[MadeGarment, ...]) -> Iterator[Finding]:
    """Yield what is to be said of the wearer, the cloths in use, and each garment by name; of several once."""
    yield from costume.wearer.findings
    yield from _day_doubted(costume, date.today())
    yield from costume.fittings.findings
    for role in dict.fromkeys(garment.fabric for garment in garments):
        if role in costume.fabrics:
            yield from costume.fabrics[role].findings
    found: dict[tuple[Finding, str], dict[str, None]] = {}
    for garment in garments:
        for finding in (*garment.findings, *cut_from_thin(garment.draft, costume.fabrics)):
            own = garment.name if finding.level == "ok" else ""
            found.setdefault((finding, own), {})[garment.name] = None
    for (finding, _), whose in found.items():
        where = f"{', '.join(whose)}: {finding.where}" if len(garments) > 1 else finding.where
        yield replace(finding, where=where)
