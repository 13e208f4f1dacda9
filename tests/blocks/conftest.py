"""A folder for a maker's own blocks."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from drafting.blocks import use_blocks


@pytest.fixture
def own(tmp_path: Path) -> Iterator[Path]:
    """A folder for a maker's own blocks, still empty; none is in use afterwards."""
    folder = tmp_path / "my-blocks"
    folder.mkdir()
    yield folder
    use_blocks(None)
