"""Arguments that several commands ask for, each declared once."""

from __future__ import annotations

import argparse
from pathlib import Path

UNITS = ("cm", "mm", "in")


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
