"""`drafting make` and `demo`: read, draft, check, lay out, write, and say what was found."""

from __future__ import annotations

import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from drafting.commands.progress import progress
from drafting.costume.telling import Tell, within
from drafting.ground.errors import DraftError, Fault, InputError

if TYPE_CHECKING:
    from drafting.costume.file import CostumeFile
    from drafting.costume.make import Made
    from drafting.costume.wearing.worn import Worn
    from drafting.costume.what_changed import Changed
    from drafting.printing.paper import Paper

HOLDS, CHECK_FAILS = 0, 1
"""Exit codes: made and every check holds; made, but a check says error."""

DRAFTED, LAID, DRESSED = 0.04, 0.35, 0.8
"""Shares of the time that drafting, laying out, dressing end at, with no search asked for (ours, by the demo)."""


@dataclass(frozen=True)
class HowToMake:
    """What a run asks beside its files: seconds to look for a shorter lay, the form too, which papers.

    Papers asked for here win over the costume file's.
    """

    search: float = 0.0
    worn: bool = False
    papers: tuple[Paper, ...] = ()


def _laying(made: Made, tell: Tell) -> Callable[[str, Any], None]:
    """Return what hears of each better lay, and tells how many cloths are begun."""
    from drafting.costume.lays import materials

    roles = [cloth.role for cloth, _ in materials(made)]
    return lambda role, _: tell(f"Laying out {role}", roles.index(role) / len(roles))


def _on_form(made: Made, tell: Tell) -> Worn:
    from drafting.costume.wearing.worn import worn

    return worn(made, tell)


def _changes(costume: Path, made: Made) -> tuple[Changed, ...]:
    """Return what is different from the costume on its own wearer; nothing where that cannot be made."""
    from drafting.costume.lays import laid_out
    from drafting.costume.make import finished
    from drafting.costume.what_changed import what_changed
    from drafting.costume.whole import read_whole_costume

    try:
        return what_changed(laid_out(finished(read_whole_costume(costume))), made)
    except DraftError:
        return ()


def make_costume(costume: Path, out: Path, wearer: Path | None, how: HowToMake | None = None) -> int:
    """Make a costume file, or its costume on another body, and return the exit code."""
    from drafting.commands.texts import changed_text, made_text
    from drafting.costume.file import on_papers
    from drafting.costume.lays import laid_out
    from drafting.costume.make import make
    from drafting.costume.whole import read_whole_costume
    from drafting.ground.findings import said_once
    from drafting.output.folder import check_out
    from drafting.output.write import write_output

    how = how or HowToMake()
    read: CostumeFile | None = None
    faults: list[Fault] = []
    try:
        read = read_whole_costume(costume, wearer)
    except InputError as error:
        faults += error.faults
    try:
        check_out(out, inputs=(costume, wearer))
    except InputError as error:
        faults += error.faults
    if read is None or faults:
        raise InputError(faults)

    read = on_papers(read, how.papers)
    with progress(sys.stderr) as tell:
        try:
            tell("Drafting", 0.0)
            made = make(read)
            made = laid_out(made, how.search, said=_laying(made, within(tell, DRAFTED, LAID)))
            on_form = _on_form(made, within(tell, LAID, DRESSED)) if how.worn else None
        except InputError:
            raise
        except DraftError as error:
            raise InputError([Fault(error.said(read.told_in), file=str(costume))]) from error
        printed = write_output(made, out, within(tell, DRESSED if how.worn else LAID, 1.0), on_form)
    if wearer is not None:
        print(changed_text(_changes(costume, made), read.told_in))
    print(made_text((*made.findings, *printed), out, read.told_in))
    failed = [finding for finding in made.findings if finding.level == "error"]
    for said in said_once(failed, read.told_in):
        print(f"error: {said.where}: {said.sentence}", file=sys.stderr)
    return CHECK_FAILS if failed else HOLDS
