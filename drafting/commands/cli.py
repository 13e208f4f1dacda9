"""The commands: `drafting make | demo | body | blocks | lab | app`.

Exit codes: 0 made and every check holds; 1 made, but a check says *error*; 2 refused, with nothing
written. Refusals go to stderr, all of them at once. Anything else is a fault of ours.
"""

from __future__ import annotations

import argparse
import errno
import os
import sys
from collections.abc import Sequence
from pathlib import Path

from drafting.ground.errors import DraftError, Fault, InputError

HOLDS, CHECK_FAILS, REFUSED = 0, 1, 2

# What the system says when a path cannot be used: the maker's to mend, so a refusal, not a fault.
PATH_ERRORS = frozenset(
    (
        errno.EACCES,
        errno.EISDIR,
        errno.ELOOP,
        errno.ENAMETOOLONG,
        errno.ENOENT,
        errno.ENOSPC,
        errno.ENOTDIR,
        errno.EPERM,
        errno.EROFS,
    )
)


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command and return its exit code."""
    wanted = parser().parse_args(argv)
    try:
        code: int = wanted.run(wanted)
        sys.stdout.flush()
    except DraftError as error:
        print(error, file=sys.stderr)
        return REFUSED
    except BrokenPipeError:  # the reader of our lines (a pager, `head`) has seen enough
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return HOLDS
    except OSError as error:
        if error.errno not in PATH_ERRORS:
            raise
        name = "" if error.filename is None else str(error.filename)
        print(Fault(f"cannot be used ({error.strerror})", file=name), file=sys.stderr)
        return REFUSED
    return code


def parser() -> argparse.ArgumentParser:
    """Return the parser of all commands."""
    whole = argparse.ArgumentParser(
        prog="drafting",
        description="Draft fitted costume pieces from body measures, check them, and write them true to scale.",
    )
    commands = whole.add_subparsers(title="commands", required=True, metavar="COMMAND")

    make = commands.add_parser("make", help="draft, check and write the pieces of a costume")
    make.add_argument("costume", type=Path, metavar="COSTUME.toml")
    make.add_argument("--out", type=Path, required=True, metavar="DIR")
    make.add_argument("--wearer", type=Path, metavar="BODY", help="put it on another body")
    make.add_argument(
        "--search",
        type=_seconds,
        default=0.0,
        metavar="SECONDS",
        help="look so long for a shorter lay (else a few seconds, the same lay every time)",
    )
    make.set_defaults(run=_make)

    demo = commands.add_parser("demo", help="the same for the lamplighter shipped with the kit")
    demo.add_argument("--out", type=Path, required=True, metavar="DIR")
    demo.set_defaults(run=_demo)

    body = commands.add_parser("body", help="a wearer's measures: measured, estimated, doubtful")
    body.add_argument("body", type=Path, metavar="BODY")
    body.set_defaults(run=_body)

    blocks = commands.add_parser("blocks", help="every block with its choices")
    blocks.set_defaults(run=_blocks)

    lab = commands.add_parser("lab", help="open the notebooks in JupyterLab")
    lab.set_defaults(run=_lab)
    app = commands.add_parser("app", help="open the start page without its code (extra app)")
    app.set_defaults(run=_app)
    for served in (lab, app):
        served.add_argument("--no-browser", action="store_true", help="print the address only")
        served.add_argument("--port", type=int, help="the port to listen on (else a free one)")
        served.add_argument(
            "--folder",
            type=Path,
            default=Path("drafting-lab"),
            metavar="DIR",
            help="where an installed kit keeps your copy of the notebooks (drafting-lab)",
        )
    return whole


def _make(wanted: argparse.Namespace) -> int:
    return _make_costume(wanted.costume, wanted.out, wanted.wearer, wanted.search)


def _demo(wanted: argparse.Namespace) -> int:
    from drafting.ground.shipped import demo_costume

    return _make_costume(demo_costume(), wanted.out, None)


def _seconds(text: str) -> float:
    """Return a time to search, from nothing to a day."""
    seconds = float(text)
    if not 0 <= seconds <= 86_400:
        raise argparse.ArgumentTypeError(f"{text} is no time to search: 1 to 86400 seconds")
    return seconds


def _make_costume(costume: Path, out: Path, wearer: Path | None, search: float = 0.0) -> int:
    from drafting.commands.texts import made_text
    from drafting.costume.file import CostumeFile
    from drafting.costume.lays import laid_out
    from drafting.costume.make import make
    from drafting.output.folder import check_out
    from drafting.output.write import write_output
    from drafting.whole_costume import read_whole_costume

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

    try:
        made = laid_out(make(read), search)
    except InputError:
        raise
    except DraftError as error:
        raise InputError([Fault(str(error), file=str(costume))]) from error
    printed = write_output(made, out)
    print(made_text((*made.findings, *printed), out))
    failed = [finding for finding in made.findings if finding.level == "error"]
    for finding in failed:
        print(f"error: {finding.where}: {finding.message}", file=sys.stderr)
    return CHECK_FAILS if failed else HOLDS


def _body(wanted: argparse.Namespace) -> int:
    from drafting.body import read_bodies
    from drafting.commands.texts import body_text
    from drafting.costume.next_measure import next_measures

    bodies = read_bodies(wanted.body)
    alone = len(bodies) == 1  # a whole table would take a second for each wearer
    print("\n\n".join(body_text(b, next_measures(b) if alone else ()) for b in bodies))
    return HOLDS


def _blocks(_: argparse.Namespace) -> int:
    from drafting.blocks import all_blocks
    from drafting.commands.texts import block_text

    print("\n\n".join(block_text(block) for block in all_blocks().values()))
    return HOLDS


def _app(wanted: argparse.Namespace) -> int:
    from drafting.commands.app import open_app

    open_app(wanted.folder, port=wanted.port, browser=not wanted.no_browser)
    return HOLDS


def _lab(wanted: argparse.Namespace) -> int:
    from drafting.commands.lab import open_lab

    open_lab(wanted.folder, port=wanted.port, browser=not wanted.no_browser)
    return HOLDS
