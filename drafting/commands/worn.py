"""`drafting worn`: what it asks for, and what it does."""

from __future__ import annotations

import argparse
import sys

from drafting.commands.arguments import add_costume, add_out, add_wearer
from drafting.commands.making import CHECK_FAILS, HOLDS
from drafting.commands.progress import progress
from drafting.costume.telling import within
from drafting.ground.errors import DraftError, Fault, InputError

ARMS = ("out", "hanging", "raised")
"""How the arms are held."""


def add_worn_arguments(command: argparse.ArgumentParser) -> None:
    """Add what `drafting worn` asks for."""
    add_costume(command)
    add_wearer(command, "put it on another body")
    command.add_argument(
        "--arms", choices=ARMS, default="out", help="held a little out (as set), hanging, or raised level"
    )
    add_out(command)


def run_worn(wanted: argparse.Namespace) -> int:
    """Put a costume on its wearer's form and write the folder; 1 where something did not come to rest."""
    from drafting.blocks import use_blocks
    from drafting.costume.make import make
    from drafting.costume.wearing.raised import worn_so
    from drafting.costume.whole import read_whole_costume
    from drafting.output.folder import WORN, check_out
    from drafting.output.worn import worn_text, write_worn
    from drafting.worn.form import HANGING, RAISED, STANDING

    stances = dict(zip(ARMS, (STANDING, HANGING, RAISED), strict=True))
    use_blocks(wanted.blocks)
    check_out(wanted.out, WORN, (wanted.costume, wanted.wearer))
    read = read_whole_costume(wanted.costume, wanted.wearer)
    with progress(sys.stderr) as tell:
        try:
            costume = worn_so(make(read), stances[wanted.arms], within(tell, 0.0, 0.98))
        except InputError:
            raise
        except DraftError as error:
            raise InputError([Fault(error.said(read.told_in), file=str(wanted.costume))]) from error
        tell("Drawing", 0.98)
        write_worn(costume, wanted.out)
    print(f"{worn_text(costume)}\n\nPictures: {wanted.out}\nTurn it:  {wanted.out / 'turn.html'}")
    unsettled = [garment.name for garment in costume.garments if not garment.found.settled]
    lost = [name for name, _ in costume.left_out]
    for name, what in (*((one, SHAPE_ONLY) for one in unsettled), *((one, NOT_SHOWN) for one in lost)):
        print(f"error: {name}: {what}", file=sys.stderr)
    return CHECK_FAILS if unsettled or lost else HOLDS


SHAPE_ONLY = "it did not come to rest, and is shown as a shape only, without numbers"
NOT_SHOWN = "it is not in the picture; why is told above"
