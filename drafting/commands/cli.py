"""The commands: `drafting new | make | demo | worn | mock-up | cast | body | blocks | lab | app`.

Exit codes: 0 made and every check holds; 1 made, but a check says *error*; 2 refused, with nothing
written; 130 stopped by hand. Refusals go to stderr, all of them at once. Anything else is a fault of ours.
"""

from __future__ import annotations

import argparse
import errno
import os
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

from drafting.commands.arguments import Parser, add_costume, add_out, add_papers, add_unit, add_wearer
from drafting.commands.cast import add_cast_arguments, run_cast
from drafting.commands.collecting import seldom_collected
from drafting.commands.making import HOLDS, HowToMake, make_costume
from drafting.commands.mock_up import add_mock_up_arguments, run_mock_up
from drafting.commands.worn import add_worn_arguments, run_worn
from drafting.ground.errors import DraftError, Fault, InputError
from drafting.ground.names import clean_text

REFUSED, STOPPED = 2, 130

ALL = "all"  # for `blocks`: every one whole

# What the system says when a path cannot be used: the maker's to mend, so a refusal, not a fault.
PATH_ERRORS = frozenset(
    (
        errno.EACCES,
        errno.EDQUOT,
        errno.EFBIG,
        errno.EIO,
        errno.EISDIR,
        errno.ELOOP,
        errno.EMFILE,
        errno.ENAMETOOLONG,
        errno.ENFILE,
        errno.ENOENT,
        errno.ENOSPC,
        errno.ENOTDIR,
        errno.EPERM,
        errno.EROFS,
    )
)


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command and return its exit code."""
    whole = parser()
    if not (sys.argv[1:] if argv is None else argv):
        whole.exit(REFUSED, whole.format_help())
    wanted = whole.parse_args(argv)
    try:
        with seldom_collected():
            code: int = wanted.run(wanted)
        sys.stdout.flush()
    except DraftError as error:
        print(error, file=sys.stderr)
        return REFUSED
    except KeyboardInterrupt:
        print("stopped; what was there is as it was, and nothing half done is left", file=sys.stderr)
        return STOPPED
    except MemoryError:
        print("this takes more memory than there is; nothing was written", file=sys.stderr)
        return REFUSED
    except BrokenPipeError:  # the reader of our lines (a pager, `head`) has seen enough
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return HOLDS
    except OSError as error:
        if error.errno not in PATH_ERRORS:
            raise
        name = "" if error.filename is None else str(error.filename)
        what = f"cannot be used ({error.strerror})" if name else f"a file cannot be written ({error.strerror})"
        right = "check the name, your rights to it, and the room on the disk; what was there is as it was"
        print(Fault(what, right, file=clean_text(name)), file=sys.stderr)
        return REFUSED
    return code


def parser() -> argparse.ArgumentParser:
    """Return the parser of all commands."""
    whole = Parser(
        prog="drafting",
        description="Draft fitted costume pieces from body measures, check them, and write them true to scale.",
    )
    whole.add_argument("--version", action=_Version, nargs=0, help="print the version and stop")
    commands = whole.add_subparsers(title="commands", required=True, metavar="COMMAND")

    _add_new(commands)
    for added in (*_making(commands), *_telling(commands), *_served(commands)):
        added.add_argument(
            "--blocks",
            type=Path,
            metavar="DIR",
            help="a folder of your own blocks, for example my-blocks, one Python file each; their code is run",
        )
    return whole


def _add_new(commands: Any) -> None:
    """Add the command that begins a costume; it drafts nothing, so it takes no blocks."""
    new = _command(commands, "new", _new, "begin a costume: its four files, with remarks, ready for make")
    new.add_argument("folder", type=Path, metavar="FOLDER", help="the folder to write: new or empty")
    add_wearer(new, "take the measures over")
    add_unit(new, "the files")


def _making(commands: Any) -> list[argparse.ArgumentParser]:
    """Add the commands that write a folder; return those that take a maker's own blocks."""
    make = _command(commands, "make", _make, "draft, check and write the pieces of a costume")
    add_costume(make)
    add_wearer(make, "put it on another body")
    make.add_argument(
        "--search",
        type=_seconds,
        default=0.0,
        metavar="SECONDS",
        help="look so long for a shorter lay, for example 60 (else a few seconds, the same lay every time)",
    )
    make.add_argument(
        "--worn",
        action="store_true",
        help="put the costume on the wearer's form too: picture and verdict on the plan (a minute or more)",
    )
    demo = _command(commands, "demo", _demo, "the same for the lamplighter shipped with the kit")
    for writes in (make, demo):
        add_out(writes)
        add_papers(writes)
    worn = _command(commands, "worn", run_worn, "the sewn pieces on the wearer's form, as they come to rest")
    add_worn_arguments(worn)
    mock = _command(
        commands, "mock-up", run_mock_up, "the pieces for a first try in cheap cloth, and fitting sheets"
    )
    add_mock_up_arguments(mock)
    cast = _command(commands, "cast", run_cast, "one costume on many wearers: a folder each, and one list to buy")
    add_cast_arguments(cast)
    return [make, worn, mock, cast]


def _telling(commands: Any) -> list[argparse.ArgumentParser]:
    """Add the commands that only print; return those that take a maker's own blocks."""
    body = _command(commands, "body", _body, "a wearer's measures: measured, estimated, doubtful")
    body.add_argument("body", type=Path, metavar="BODY", help="the body file (.toml or .csv, one wearer or many)")
    body.add_argument(
        "--costume",
        type=Path,
        metavar="COSTUME.toml",
        help="say which measure to take next for this costume (else for a shirt)",
    )
    blocks = _command(
        commands, "blocks", _blocks, "what can be drafted, a line each; one block with all its choices"
    )
    blocks.add_argument(
        "block",
        nargs="?",
        default="",
        metavar="NAME",
        help="one block whole, for example shirt (all: every block whole, and the words of the record)",
    )
    add_unit(blocks, "choices and their ranges")
    return [blocks]


def _served(commands: Any) -> list[argparse.ArgumentParser]:
    """Add the commands that open notebooks; both take a maker's own blocks."""
    lab = _command(commands, "lab", _lab, "open the notebooks in JupyterLab")
    app = _command(commands, "app", _app, "open the start page without its code (extra app)")
    for served in (lab, app):
        served.add_argument("--no-browser", action="store_true", help="print the address only")
        served.add_argument("--port", type=int, metavar="N", help="the port to listen on (else a free one)")
        served.add_argument(
            "--folder",
            type=Path,
            default=Path("drafting-lab"),
            metavar="DIR",
            help="where an installed kit keeps your copy of the notebooks (drafting-lab)",
        )
    return [lab, app]


def _command(commands: Any, name: str, run: Callable[..., int], what: str) -> argparse.ArgumentParser:
    """Return the parser of one command, which says what it does in the list and on its own page."""
    added: argparse.ArgumentParser = commands.add_parser(
        name, help=what, description=f"{what[:1].upper()}{what[1:]}."
    )
    added.set_defaults(run=run)
    return added


class _Version(argparse.Action):
    """Print the installed version, looked up only when it is asked for."""

    def __call__(self, parser: argparse.ArgumentParser, *_: Any) -> None:
        from drafting.ground.shipped import kit_version

        print(f"drafting {kit_version()}")
        parser.exit()


def _new(wanted: argparse.Namespace) -> int:
    from drafting.body import read_body
    from drafting.body.reader import OTHER_WEARERS
    from drafting.commands.texts import new_text
    from drafting.costume.new import new_files
    from drafting.output.fresh import write_fresh

    wearer = read_body(wanted.wearer) if wanted.wearer else None
    texts = new_files(wearer, wanted.unit, wanted.folder.resolve().name)
    write_fresh(wanted.folder, texts)
    print(new_text(wanted.folder, texts))
    for note in [found for found in (wearer.said if wearer else ()) if found.check == OTHER_WEARERS]:
        print(f"note: {note.where}: {note.sentence}")
    return HOLDS


def _make(wanted: argparse.Namespace) -> int:
    from drafting.blocks import use_blocks

    use_blocks(wanted.blocks)
    how = HowToMake(wanted.search, wanted.worn, wanted.papers)
    return make_costume(wanted.costume, wanted.out, wanted.wearer, how)


def _demo(wanted: argparse.Namespace) -> int:
    from drafting.ground.shipped import demo_costume

    return make_costume(demo_costume(), wanted.out, None, HowToMake(papers=wanted.papers))


def _seconds(text: str) -> float:
    """Return a time to search, from nothing to a day."""
    seconds = float(text)
    if not 0 <= seconds <= 86_400:
        raise argparse.ArgumentTypeError(f"{text} is no time to search: 1 to 86400 seconds")
    return seconds


def _body(wanted: argparse.Namespace) -> int:
    from drafting.body import read_bodies, read_body
    from drafting.commands.texts import body_text
    from drafting.costume.file import read_costume
    from drafting.costume.next_measure import garments_of, next_measures

    bodies = (read_body(wanted.body),) if "#" in wanted.body.name else read_bodies(wanted.body)
    costume = read_costume(wanted.costume) if wanted.costume else None
    what = f'"{costume.title}"' if costume else "a shirt"
    if len(bodies) > 1:  # a whole table would take a second for each wearer
        print("\n\n".join(body_text(body) for body in bodies))
        return HOLDS
    garments = garments_of(costume, bodies[0]) if costume else ()
    print(body_text(bodies[0], next_measures(bodies[0], garments=garments), what))
    return HOLDS


def _blocks(wanted: argparse.Namespace) -> int:
    from drafting.blocks import all_blocks, use_blocks
    from drafting.commands.texts import blocks_listed, blocks_text, roles_text
    from drafting.ground.names import clean_text
    from drafting.ground.nearest import meant
    from drafting.ground.units import SHOWN

    use_blocks(wanted.blocks)
    every = all_blocks()
    if not wanted.block:
        print(blocks_listed(every.values()))
    elif wanted.block == ALL:
        print(f"{blocks_text(every.values(), wanted.unit)}\n\n{roles_text()}")
    elif wanted.block in every:
        print(blocks_text([every[wanted.block]], wanted.unit))
    else:
        right = meant(wanted.block, every, "`drafting blocks` lists all")
        raise InputError([Fault(f"no block is called {clean_text(wanted.block, SHOWN)}", right)])
    return HOLDS


def _app(wanted: argparse.Namespace) -> int:
    from drafting.commands.app import open_app

    open_app(wanted.folder, port=wanted.port, browser=not wanted.no_browser, blocks=wanted.blocks)
    return HOLDS


def _lab(wanted: argparse.Namespace) -> int:
    from drafting.commands.lab import open_lab

    open_lab(wanted.folder, port=wanted.port, browser=not wanted.no_browser, blocks=wanted.blocks)
    return HOLDS
