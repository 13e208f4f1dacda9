"""Arguments that several commands ask for, each declared once."""

from __future__ import annotations

import argparse
import re
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

from drafting.ground.errors import InputError
from drafting.ground.nearest import meant

if TYPE_CHECKING:
    from drafting.printing.paper import Paper

UNITS = ("cm", "mm", "in")

UNKNOWN = re.compile(r"invalid choice: '(?P<word>.*)' \(choose from (?P<known>.*)\)")
"""What `argparse` says of a word that it does not know."""


class Parser(argparse.ArgumentParser):
    """A parser that answers a word that is not known with the few that are like it."""

    def error(self, message: str) -> NoReturn:
        """Print what is wrong and what would be right, and stop with the code of a refusal."""
        told = UNKNOWN.search(message)
        if told:
            near = meant(told["word"], re.findall(r"[\w-]+", told["known"]))
            message = f"{message[: told.start()]}there is no {told['word']}; {near}"
        super().error(message)


def add_costume(command: argparse.ArgumentParser) -> None:
    """Add the costume file."""
    command.add_argument(
        "costume",
        type=Path,
        metavar="COSTUME.toml",
        help="the costume file: wearer, cloths, garments and their choices",
    )


def add_wearer(command: argparse.ArgumentParser, what: str) -> None:
    """Add a wearer's body; `what` says what is done with it."""
    command.add_argument(
        "--wearer", type=Path, metavar="BODY", help=f"{what} (a body file, or FILE.csv#NAME of a table)"
    )


def add_out(command: argparse.ArgumentParser) -> None:
    """Add the folder that is written."""
    command.add_argument(
        "--out",
        type=Path,
        required=True,
        metavar="DIR",
        help="a folder of its own to write, for example out: made new, and put in place whole",
    )


def add_unit(command: argparse.ArgumentParser, what: str) -> None:
    """Add the unit of length; `what` says of what."""
    command.add_argument("--unit", choices=UNITS, default="cm", help=f"the unit of {what} (else cm)")


def add_papers(command: argparse.ArgumentParser) -> None:
    """Add the papers to print on."""
    command.add_argument(
        "--papers",
        type=_papers,
        default=(),
        metavar="PAPERS",
        help="papers to print on, for example a4,letter,roll, or 'roll 61 cm,50 x 70 cm' (else what the "
        "costume file says, else a4-or-letter: one file that prints true on either)",
    )


def _papers(text: str) -> tuple[Paper, ...]:
    """Return the papers of a list with commas, each once; a comma between two digits is a decimal's."""
    from drafting.printing.paper import paper_named

    try:
        return tuple(dict.fromkeys(paper_named(name) for name in re.split(r",(?!(?<=\d,)\d)", text)))
    except InputError as refused:
        fault = refused.faults[0]
        raise argparse.ArgumentTypeError(f"{fault.what}; {fault.right}") from refused
