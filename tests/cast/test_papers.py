"""`drafting cast --papers`: what is asked on the command line is printed on for everybody."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from drafting.commands.cli import parser
from drafting.costume.cast import costume_for, read_cast
from drafting.output.cast.key import key_of
from tests.cast.troupe import troupe_in


def test_papers_of_the_command_line_are_printed_on_for_everybody(tmp_path: Path) -> None:
    cast = troupe_in(tmp_path)
    asked = parser().parse_args(["cast", str(cast), "--out", "out", "--papers", "letter,a3"]).papers
    own = read_cast(cast)
    other = replace(own, papers=asked)
    for wearer in (one for one in own.wearers if one.body):
        costume, printed = costume_for(own, wearer), costume_for(other, wearer)
        assert [paper.name for paper in costume.prints.papers] == ["a4"]
        assert [paper.name for paper in printed.prints.papers] == ["letter", "a3"]
        assert printed.prints.pieces == costume.prints.pieces
        assert key_of(costume, None) != key_of(printed, None)  # so a folder on other papers is made anew
