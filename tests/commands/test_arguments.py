"""A word of the command line that is not known."""

from __future__ import annotations

import pytest

from drafting.commands.cli import main, parser
from drafting.costume.file import on_papers, read_costume
from drafting.ground.shipped import demo_costume
from drafting.printing.paper import PAPERS


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        (["maek", "x.toml"], "there is no maek; did you mean make?"),
        (["new", "x", "--unit", "inn"], "there is no inn; did you mean in?"),
    ],
)
def test_a_word_that_is_not_known_is_answered_with_the_nearest(
    typed: list[str], said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(SystemExit) as stopped:
        main(typed)
    assert stopped.value.code == 2
    assert said in capsys.readouterr().err


def test_papers_are_a_list_with_commas_each_once() -> None:
    asked = parser().parse_args(["demo", "--out", "out", "--papers", "A4,letter,roll 61,5 cm,50 x 70 cm,a4"])
    assert [paper.name for paper in asked.papers] == ["a4", "letter", "roll-615", "500x700"]
    assert parser().parse_args(["make", "my.toml", "--out", "out"]).papers == ()


def test_a_paper_that_is_none_is_refused_with_what_would_be_right(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as stopped:
        main(["demo", "--out", "out", "--papers", "a4,leter"])
    assert stopped.value.code == 2
    assert "did you mean letter" in capsys.readouterr().err


def test_papers_of_the_command_replace_those_of_the_file() -> None:
    costume = read_costume(demo_costume())
    assert on_papers(costume, (PAPERS["roll"],)).prints.papers == (PAPERS["roll"],)
    assert on_papers(costume, ()) is costume
