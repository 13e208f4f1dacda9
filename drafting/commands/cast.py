"""`drafting cast`: one costume on many wearers, a folder each, and what stands over all of them."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from drafting.commands.arguments import add_papers
from drafting.commands.making import CHECK_FAILS, HOLDS
from drafting.commands.progress import progress

if TYPE_CHECKING:
    from drafting.output.cast import CastMade
    from drafting.output.cast.engines import Engine

NAMED = 6
"""Wearers that a line names (ours)."""


def add_cast_arguments(command: argparse.ArgumentParser) -> None:
    """Add what `cast` asks for."""
    command.add_argument(
        "cast",
        type=Path,
        metavar="CAST.toml",
        help="the cast file: a costume, its wearers (a folder, a table or a list), and what differs for each",
    )
    command.add_argument(
        "--out",
        type=Path,
        required=True,
        metavar="DIR",
        help="its folder, for example cast-out: a folder a wearer in it; what is done and unchanged stays",
    )
    command.add_argument(
        "--jobs",
        type=_count,
        metavar="N",
        help="wearers drafted at once on this computer, for example 2 (else as many as it has cores)",
    )
    command.add_argument(
        "--scheduler",
        default="",
        metavar="ADDRESS",
        help="draft on the workers of a Dask scheduler, for example tcp://192.168.1.5:8786 (extra cast)",
    )
    add_papers(command)


def _count(text: str) -> int:
    if not text.isdecimal() or not 1 <= int(text) <= 256:
        raise argparse.ArgumentTypeError(f"{text} is no number of wearers at once: 1 to 256")
    return int(text)


def run_cast(wanted: argparse.Namespace) -> int:
    """Make a cast; a wearer who cannot be drafted is named and stops nobody."""
    from drafting.blocks import use_blocks
    from drafting.costume.cast import read_cast
    from drafting.output.cast import write_cast

    use_blocks(wanted.blocks)
    cast = replace(read_cast(wanted.cast), papers=wanted.papers)
    engine = _engine(wanted, len(cast.wearers))
    with progress(sys.stderr) as tell:
        made = write_cast(cast, wanted.out, engine, tell, wanted.blocks)
    names = {one.folder: one.name for one in cast.wearers}
    print(cast_text(made, wanted.out, names))
    for folder in made.refused:
        for reason in made.records[folder]["reasons"]:
            print(f"not drafted: {names[folder]}: {reason}", file=sys.stderr)
    for folder, record in made.records.items():
        for level, where, sentence in record["checks"]:
            if level == "error":
                print(f"error: {names[folder]}: {where}: {sentence}", file=sys.stderr)
    return HOLDS if made.holds else CHECK_FAILS


def _engine(wanted: argparse.Namespace, wearers: int) -> Engine:
    from drafting.ground.errors import Fault, InputError
    from drafting.output.cast.engines import cores, engine_of

    if not wanted.scheduler:
        return engine_of(min(wanted.jobs or cores(), max(1, wearers)), wanted.blocks)
    if wanted.blocks or wanted.jobs:
        what = "is for this computer alone, and --scheduler has others do the work"
        right = (
            "install your blocks as a package on every machine" if wanted.blocks else "leave one of the two out"
        )
        raise InputError([Fault(what, right, "--blocks" if wanted.blocks else "--jobs")])
    from drafting.output.cast.cluster import cluster_engine

    return cluster_engine(wanted.scheduler)


def cast_text(made: CastMade, out: Path, names: Mapping[str, str]) -> str:
    """Return what `cast` says in the end: how many were made, who was not (`names` by folder), where it lies."""
    count, lost, now = len(made.records), len(made.refused), len(set(made.made_now) - set(made.refused))
    lines = [f"{count - lost} of {count} wearers drafted: {now} now, {count - lost - now} as they stood"]
    lines += [f"Not drafted: {_named([names.get(one, one) for one in made.refused])}"] if lost else []
    stale = [name for name in made.refused if (out / name).is_dir()]
    lines += [f"Of an earlier run, not of these measures: {_named(stale)}"] if stale else []
    lines += [f"No longer in the cast, left as it was: {_named(made.left)}"] if made.left else []
    lines += ["", f"For all:     {out / 'cast.html'}", f"Call sheets: {out / 'call-sheets'}"]
    lines += [f"To buy:      {out / 'shopping.csv'}", f"Record:      {out / 'cast.json'}"]
    return "\n".join(lines)


def _named(names: tuple[str, ...] | list[str]) -> str:
    more = f" and {len(names) - NAMED} more" if len(names) > NAMED else ""
    return ", ".join(names[:NAMED]) + more
