"""`--help`: every argument of every command is explained, and what can be typed is what is shown."""

from __future__ import annotations

import argparse
import re
from collections.abc import Iterator

import pytest

from drafting.commands.cli import main, parser


def parsers(
    whole: argparse.ArgumentParser, name: str = "drafting"
) -> Iterator[tuple[str, argparse.ArgumentParser]]:
    """Yield a parser and all those below it, by what is typed for them."""
    yield name, whole
    for action in whole._actions:
        if isinstance(action, argparse._SubParsersAction):
            for command, below in action.choices.items():
                yield from parsers(below, f"{name} {command}")


ALL = dict(parsers(parser()))
ARGUMENTS = [
    pytest.param(name, action, id=f"{name} {'/'.join(action.option_strings) or action.dest}")
    for name, found in ALL.items()
    for action in found._actions
    if not isinstance(action, argparse._SubParsersAction)
]


def test_every_command_says_in_a_sentence_what_it_does() -> None:
    assert len(ALL) == 11
    for name, found in ALL.items():
        assert re.match(r"[A-Z].{15,}\.$", found.description or "", re.DOTALL), name


@pytest.mark.parametrize(("name", "action"), ARGUMENTS)
def test_every_argument_is_explained(name: str, action: argparse.Action) -> None:
    assert action.help
    assert len(action.help.split()) >= 3
    typed = action.metavar or action.option_strings
    shown = " ".join(ALL[name].format_help().split())
    assert typed
    assert " ".join(action.help.split()) in shown.replace("- ", "-")


@pytest.mark.parametrize("name", [name for name in ALL if name != "drafting"])
def test_help_is_printed_and_ends_well(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as stopped:
        main([*name.split()[1:], "--help"])
    assert stopped.value.code == 0
    assert capsys.readouterr().out.startswith(f"usage: {name} ")
