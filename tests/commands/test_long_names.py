"""What is printed stays a table where a name is longer than any column should be."""

from __future__ import annotations

from drafting.commands.texts import WIDTH, table_lines


def test_a_long_name_has_a_line_of_its_own_and_the_words_keep_their_room() -> None:
    """One check at eleven tails pushed all words past the edge: a letter a line, 7,500 lines."""
    words = "The tails hang 0 mm to 3 mm beside their own lengths when they are sewn together, a hand each."
    tails = ", ".join(f"tail-{number}-left" for number in range(9))
    rows = [("note", "coat: tail left", words), ("note", f"coat: {tails}", words)]
    lines = "\n".join(table_lines(None, rows)).splitlines()
    assert max(map(len, lines)) <= WIDTH
    assert len(lines) < 10
    assert " ".join(" ".join(lines).split()).count(words) == 2
    assert table_lines(("level", "where", "said"), []) == []
