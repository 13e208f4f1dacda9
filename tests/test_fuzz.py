"""The fuzzer for a few seconds; `python -m tests.fuzz 100000` runs it longer."""

from __future__ import annotations

import pytest

from drafting.ground.units import BadValue, parse_length
from tests.fuzz import run


def test_whatever_stands_in_a_file_is_read_or_refused_in_words() -> None:
    ended, found = run(1800)
    assert found == []
    assert {"number read", "number refused"} <= ended.keys()
    for kind in ("costume", "wearer", "cloth", "workroom", "table", "styled", "cast"):
        assert {f"{kind} read", f"{kind} refused"} <= ended.keys()


@pytest.mark.parametrize("text", ["',3,\x1bfE_", "'',%\u202e", "',. ,\x1b1{"])
def test_a_number_that_cannot_be_read_is_told_without_its_control_characters(text: str) -> None:
    """Found by the fuzzer: what has two separators was told as it stood."""
    with pytest.raises(BadValue) as refused:
        parse_length(text, "cm")
    assert refused.value.what.isprintable()
