"""`drafting mock-up`: what it asks for, and what it does."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from drafting.commands.making import HOLDS
from drafting.commands.progress import progress
from drafting.costume.telling import within
from drafting.ground.errors import DraftError, Fault, InputError

DRAWN = 0.5
"""Share of the time after which everything is laid out (ours)."""


def add_mock_up_arguments(command: argparse.ArgumentParser) -> None:
    """Add what `drafting mock-up` asks for."""
    command.add_argument(
        "costume",
        type=Path,
        metavar="COSTUME.toml",
        help="the costume file: wearer, cloths, garments and their choices",
    )
    command.add_argument(
        "--wearer", type=Path, metavar="BODY", help="try it on another body (FILE.csv#NAME names one of a table)"
    )
    command.add_argument(
        "--out",
        type=Path,
        required=True,
        metavar="DIR",
        help="a folder of its own: made new, and put in place whole",
    )


def run_mock_up(wanted: argparse.Namespace) -> int:
    """Make a costume's mock-up and write its folder; a refusal leaves what was there."""
    from drafting.blocks import use_blocks
    from drafting.costume.make import make
    from drafting.costume.mock_up import mock_up
    from drafting.costume.whole import read_whole_costume
    from drafting.output.folder import MOCK_UP, check_out
    from drafting.output.mock_up import mock_up_text, write_mock_up

    use_blocks(wanted.blocks)
    check_out(wanted.out, MOCK_UP)
    read = read_whole_costume(wanted.costume, wanted.wearer)
    with progress(sys.stderr) as tell:
        try:
            tell("Drafting", 0.0)
            mock = mock_up(make(read), within(tell, 0.05, DRAWN))
        except InputError:
            raise
        except DraftError as error:
            raise InputError([Fault(error.said(read.told_in), file=str(wanted.costume))]) from error
        write_mock_up(mock, wanted.out, within(tell, DRAWN, 1.0))
    print(mock_up_text(mock, wanted.out))
    return HOLDS
