"""The fuzzer for a few seconds; `python -m tests.fuzz 100000` runs it longer."""

from __future__ import annotations

from tests.fuzz import run


def test_whatever_stands_in_a_file_is_read_or_refused_in_words() -> None:
    ended, found = run(1000)
    assert found == []
    assert {"number read", "number refused"} <= ended.keys()
    for kind in ("costume", "wearer", "cloth", "workroom", "table"):
        assert {f"{kind} read", f"{kind} refused"} <= ended.keys()
