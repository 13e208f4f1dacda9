"""A maker reads the names of pieces and edges as words: `tail-1` and `front.cap_front` are for files."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest

from drafting.costume.file import read_costume
from drafting.costume.make import Made, make
from drafting.ground.names import name_in_words
from drafting.notebook import costume_path
from drafting.notebook.bench.findings import findings_html


def written_names(made: Made) -> Iterator[str]:
    """Yield each name that no sentence would hold: one with a hyphen, an underscore, or a point."""
    pieces = [cut.piece for garment in made.garments for cut in garment.pattern.pieces]
    edges = [f"{piece.name}.{edge.name}" for piece in pieces for edge in piece.edges]
    names = [*(piece.name for piece in pieces), *edges, *(edge.rpartition(".")[2] for edge in edges)]
    yield from (name for name in dict.fromkeys(names) if name_in_words(name) != name)


@pytest.mark.parametrize("costume", ["lamplighter", "kite"])
def test_no_sentence_of_a_check_holds_a_name_as_files_write_it(costume: str) -> None:
    made = make(read_costume(costume_path(costume)))
    said = [*(f.said("cm") for f in made.findings), re.sub(r"<[^>]*>", " ", str(findings_html(made.findings)))]
    names = sorted(written_names(made), key=len, reverse=True)
    assert len(names) > 3
    written = re.compile(rf"(?<![\w.-])({'|'.join(map(re.escape, names))})(?![\w-])", re.IGNORECASE)
    assert [text for text in said if written.search(text)] == []
