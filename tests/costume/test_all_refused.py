"""All that a garment cannot have is told at once: what a file says wrong, and what a draft cannot do."""

from __future__ import annotations

from pathlib import Path

import pytest

from drafting.costume.file import read_costume
from drafting.costume.make import make
from drafting.ground.errors import InputError
from tests.costume.test_make import costume


def test_every_choice_that_cannot_be_drafted_is_told_and_a_bad_proportion_hides_none(tmp_path: Path) -> None:
    head = '[garments.legs]\nblock = "trousers"\nfabric = "shell"\n[garments.legs.choices]\n'
    garment = f"{head}waist_ease = -3\nknee_ease = -5\nhip_ease = 6\n"
    with pytest.raises(InputError) as refused:
        make(read_costume(costume(tmp_path, garment)))
    said = [fault.what for fault in refused.value.faults]
    assert [word in line for word, line in zip(("finished waist", "finished knee"), said, strict=True)] == [
        True
    ] * 2
    faulty = f'{head}waist_ease = {{share = 0.1, of = "wiast"}}\nleg = "flaired"\nhip_ease = -900\n'
    with pytest.raises(InputError) as refused:
        make(read_costume(costume(tmp_path, faulty)))
    assert [fault.field.rpartition(".")[2] for fault in refused.value.faults] == ["waist_ease", "leg", "hip_ease"]
