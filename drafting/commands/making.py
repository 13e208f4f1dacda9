"""From a costume file to a folder, with what is said on the way: what `make` and `demo` run."""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any

from drafting.commands.progress import Tell, progress, within
from drafting.ground.errors import DraftError, Fault, InputError

if TYPE_CHECKING:
    from drafting.costume.make import Made

HOLDS, CHECK_FAILS = 0, 1
"""Exit codes: every check holds, or one says *error*."""

DRAFTED, LAID = 0.04, 0.35
"""Shares of the time that drafting and then laying out end at, with no search asked for (ours, by the demo)."""


def _laying(made: Made, tell: Tell) -> Callable[[str, Any], None]:
    """Return what hears of each better lay, and tells how many cloths are begun."""
    from drafting.costume.lays import materials

    roles = [cloth.role for cloth, _ in materials(made)]
    return lambda role, _: tell(f"Laying out {role}", roles.index(role) / len(roles))


def make_costume(costume: Path, out: Path, wearer: Path | None, search: float = 0.0) -> int:
    """Make a costume (on another body where `wearer` names one) into `out`; return the exit code.

    Raises `InputError` with every fault of the files and of the folder.
    """
    from drafting.commands.texts import made_text
    from drafting.costume.file import CostumeFile
    from drafting.costume.lays import laid_out
    from drafting.costume.make import make
    from drafting.costume.whole import read_whole_costume
    from drafting.ground.findings import said_once
    from drafting.output.folder import check_out
    from drafting.output.write import write_output

    read: CostumeFile | None = None
    faults: list[Fault] = []
    try:
        read = read_whole_costume(costume, wearer)
    except InputError as error:
        faults += error.faults
    try:
        check_out(out)
    except InputError as error:
        faults += error.faults
    if read is None or faults:
        raise InputError(faults)

    with progress(sys.stderr) as tell:
        try:
            tell("Drafting", 0.0)
            made = make(read)
            made = laid_out(made, search, said=_laying(made, within(tell, DRAFTED, LAID)))
        except InputError:
            raise
        except DraftError as error:
            raise InputError([Fault(error.said(read.told_in), file=str(costume))]) from error
        printed = write_output(made, out, within(tell, LAID, 1.0))
    print(made_text((*made.findings, *printed), out, read.told_in))
    failed = [finding for finding in made.findings if finding.level == "error"]
    for said in said_once(failed, read.told_in):
        print(f"error: {said.where}: {said.sentence}", file=sys.stderr)
    return CHECK_FAILS if failed else HOLDS
