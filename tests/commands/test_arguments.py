"""A word of the command line that is not known."""

from __future__ import annotations

import pytest

from drafting.commands.cli import main


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
