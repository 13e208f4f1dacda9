"""What the fittings of a costume and of its wearer ask for: the body's measures, the lines, or neither.

A note about the body goes with the wearer: it is put into her measures before anything is drafted. A note
of style goes with the costume and moves its lines. A note about the cloth is told of the cloth; an
accident changes nothing. The same fitting named by costume and wearer is followed once.
"""

from __future__ import annotations

import os
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from functools import partial
from pathlib import Path

from drafting.body import Body
from drafting.fitting.file import FittingFile, read_fitting
from drafting.fitting.limits import UNMEASURED, sent_back, under_least
from drafting.fitting.measures import corrected
from drafting.fitting.note import Done, Note, NoteKind
from drafting.fitting.threads import Thread, contradictions, followed
from drafting.ground.errors import Fault, InputError
from drafting.ground.findings import Finding
from drafting.ground.names import clean_text
from drafting.ground.units import SHOWN
from drafting.reading.cursor import TableReader
from drafting.reading.given import FilePlace

FORM = 'fittings = ["first-fitting.toml"]'


@dataclass(frozen=True)
class Fittings:
    """The fittings that a costume stands on, in the order held, and what they come to.

    `threads` is what each place asks for by now; `lines` the notes that move the line of a garment;
    `done` what was done with every other note; `taped` is the wearer as the tape alone has her, and
    `fitted_on_her` says whether the costume was fitted on this wearer.
    """

    held: tuple[FittingFile, ...] = ()
    threads: tuple[Thread, ...] = ()
    lines: tuple[Note, ...] = ()
    done: tuple[Done, ...] = ()
    taped: Body | None = None
    fitted_on_her: bool = True

    def lines_of(self, garment: str) -> tuple[Note, ...]:
        """Return the notes that move the lines of one garment."""
        own = (note for note in self.lines if note.garment == garment)
        return tuple(note if self.fitted_on_her else replace(note, gives_way=True) for note in own)

    @property
    def findings(self) -> tuple[Finding, ...]:
        """What is to be said of the notes that move no line."""
        return tuple(map(finding_of, self.done))


def finding_of(done: Done) -> Finding:
    """Return what was done with a note as a finding; what is sent back to the tape is a warning."""
    last = done.moved[-1] if done.moved else None
    return Finding(
        check="fitting",
        level="warning" if not done.carried and sent_back(done.note) else "note",
        where=str(done.note.where),
        value=last.after if last else None,
        wanted=last.before if last else None,
        sentence=done.said,
    )


def fitted_body(
    table: TableReader, body: Body | None, garments: Sequence[str], *, other: Path | str | None
) -> tuple[Body | None, Fittings]:
    """Return the wearer with what fittings say of her, and the fittings that a costume's `table` stands on.

    `other` is the file of a wearer who was put in the costume in place of its own. What is wrong goes to
    the table's faults.
    """
    folder = Path(table.file.path).parent
    found = table.texts("fittings", FORM) if "fittings" in table else ()
    table.given("fittings")
    costume, faults = _all_read(
        [(os.path.join(folder, str(given.value)), spot) for given, spot in found], garments
    )
    table.faults.found.extend(faults)
    if body is None:
        return None, Fittings()
    own, faults = _all_read(body.fittings, None)
    table.faults.found.extend(faults)
    written = table.data.get("wearer")
    hers = other is None or (isinstance(written, str) and _same_file(folder / written, other))
    try:
        return sorted_out(body, own, costume, fitted_on_her=hers)
    except InputError as refused:
        table.faults.found.extend(refused.faults)
        return None, Fittings()


def _same_file(one: Path | str, other: Path | str) -> bool:
    return os.path.realpath(one) == os.path.realpath(other)


def _all_read(
    named: Sequence[tuple[str, FilePlace]], garments: Sequence[str] | None
) -> tuple[tuple[FittingFile, ...], tuple[Fault, ...]]:
    found: dict[str, FittingFile] = {}
    faults: list[Fault] = []
    for path, spot in named:
        if "\0" in path or not os.path.basename(path) or _same_file(path, spot.file):
            faults.append(
                spot.fault(f"{clean_text(os.path.basename(path), SHOWN)} is no fitting", f"as in {FORM}")
            )
            continue
        if os.path.realpath(path) in found:
            faults.append(spot.fault(f"{os.path.basename(path)} is named twice", "keep it once"))
            continue
        try:
            fitting = read_fitting(Path(path), garments)
        except InputError as refused:
            faults += [_placed(one, path, spot) for one in refused.faults]
            continue
        found[os.path.realpath(path)] = fitting
        faults += contradictions(fitting)
    return tuple(found.values()), tuple(faults)


def _placed(fault: Fault, path: str, spot: FilePlace) -> Fault:
    """Return a fault of a fitting; one that has no line in it (a lost file) stands where it is named."""
    return fault if fault.line is not None else spot.fault(f"{clean_text(path)}: {fault.what}", fault.right)


def sorted_out(
    body: Body, own: Sequence[FittingFile], costume: Sequence[FittingFile], *, fitted_on_her: bool = True
) -> tuple[Body, Fittings]:
    """Return the body with what its notes say, and the fittings sorted out.

    `own` are the wearer's fittings, `costume` the costume's; `fitted_on_her` is False where the costume was
    fitted on somebody else: its notes about the body then are hers no more. Raises `InputError` where a
    note makes a measure that nobody has.
    """
    known = {os.path.realpath(one.path) for one in costume}
    hers = [one for one in own if os.path.realpath(one.path) not in known]
    held = _in_order([*map(_hers, hers), *costume])
    strange = set() if fitted_on_her else known
    others = [note for one in held for note in one.notes if _of_another(note, strange)]
    counted = [replace(one, notes=tuple(n for n in one.notes if not _of_another(n, strange))) for one in held]
    threads = followed(counted, partial(_taped_since, held=held, body=body))
    lines: list[Note] = []
    measures: list[Note] = []
    done: list[Done] = []
    for thread in threads:
        note = thread.note
        why = _left_out(note) if thread.counts else ""
        done += [*thread.left, *([Done(note, said=why, carried=False)] if why else [])]
        if thread.counts and not why:
            (measures if note.kind == NoteKind.BODY else lines).append(note)
    gone = "was seen on another wearer and goes with her"
    done += [Done(note, said=f"{note.asks}: {gone}", carried=False) for note in others]
    new = corrected(body, measures)
    return new.body, Fittings(
        held=held,
        threads=threads,
        lines=tuple(lines),
        done=(*new.done, *done),
        taped=body,
        fitted_on_her=fitted_on_her,
    )


def _of_another(note: Note, files: set[str]) -> bool:
    """Return whether a note is about the body of another wearer, who was fitted in one of these files."""
    return note.kind == NoteKind.BODY and os.path.realpath(note.spot.file) in files


def _in_order(held: Sequence[FittingFile]) -> tuple[FittingFile, ...]:
    """Return fittings by their day, where each has one; else as they are named."""
    if all(one.on for one in held):
        return tuple(sorted(held, key=lambda one: one.on or date.min))
    return tuple(held)


def _hers(fitting: FittingFile) -> FittingFile:
    """Return what a wearer's own fitting says of this costume: of her body, and not that its cloth was cut."""
    return replace(fitting, cut=False, notes=tuple(note for note in fitting.notes if note.kind == NoteKind.BODY))


def _left_out(note: Note) -> str:
    """Return why a note moves neither a measure nor a line, or ""."""
    if note.kind == NoteKind.ACCIDENT:
        return f"{note.asks}: an accident of cutting or sewing; nothing is drafted otherwise"
    if note.kind == NoteKind.CLOTH:
        return f"{note.asks}: lies with the cloth; test the swatch again and put it in the cloth's file"
    if note.verb not in UNMEASURED and not note.amount:
        return f"{note.asks}: is taken back again and lies as it did"
    small = under_least(note)
    return f"{note.asks}: {small}" if small else ""


def _taped_since(note: Note, held: Sequence[FittingFile], body: Body) -> str:
    """Return that the wearer was measured after the fitting at which a note about her was taken, or ""."""
    days = {one.path: one.on for one in held}
    on = days.get(note.spot.file)
    try:
        since = note.kind == NoteKind.BODY and on is not None and date.fromisoformat(body.measured_on) > on
    except ValueError:
        return ""
    return (
        f"the tape was laid again on {body.measured_on}, after this fitting, and holds it already" if since else ""
    )
