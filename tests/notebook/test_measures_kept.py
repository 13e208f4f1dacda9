"""What is typed into the measuring guide is kept as it is typed: no reload, restart or crash loses a measure."""

from __future__ import annotations

import json
import tomllib
from pathlib import Path

import pytest

from drafting.notebook import MeasuringGuide
from drafting.notebook.measuring import kept
from tests.notebook.trials import trial_costumes


@pytest.fixture
def file(tmp_path: Path) -> Path:
    """A wearer in inches, shoulders uneven, invented."""
    return trial_costumes(tmp_path)["inches"].with_name("wearer.toml")


def write(guide: MeasuringGuide, name: str, *texts: str) -> None:
    for box, text in zip(guide.fields[name].boxes, texts, strict=False):
        box.value = text


def texts(guide: MeasuringGuide, name: str) -> tuple[str, ...]:
    return tuple(box.value for box in guide.fields[name].boxes if box.value)


def test_what_is_typed_stands_again_and_is_written_on_a_word_only(file: Path) -> None:
    before = file.read_bytes()
    guide = MeasuringGuide(file)
    assert not guide.message.value or "Not saved" not in guide.message.value
    write(guide, "calf_girth", "14 5/8")
    write(guide, "shoulder_drop", "1 1/4", "2 1/4")
    write(guide, "hip_girth", "")
    write(guide, "knee_girth", "sixteen")  # a slip stays in its field too
    assert file.read_bytes() == before

    again = MeasuringGuide(file)  # the page after a reload, a restart or a crash
    assert texts(again, "calf_girth") == ("14 5/8",)
    assert texts(again, "shoulder_drop") == ("1 1/4", "2 1/4")
    assert texts(again, "hip_girth") == ()
    assert texts(again, "knee_girth") == ("sixteen",)
    assert "cannot be read" in again.fields["knee_girth"].said.value

    write(again, "knee_girth", "")
    write(again, "hip_girth", "40 in")
    assert "Not saved yet, kept in wearer.taking: " in again.message.value
    assert "shoulder drop" in again.message.value
    again.save()
    assert not file.with_suffix(".taking").exists()
    measures = tomllib.loads(file.read_text())["measures"]
    assert (measures["calf_girth"], measures["shoulder_drop"]) == ("14 5/8", {"left": "1 1/4", "right": "2 1/4"})
    assert "Not saved" not in MeasuringGuide(file).message.value


def test_a_value_typed_back_to_what_the_file_says_is_kept_no_longer(file: Path) -> None:
    guide = MeasuringGuide(file)
    stood = texts(guide, "bust_girth")
    write(guide, "bust_girth", "38 in")
    assert file.with_suffix(".taking").exists()
    write(guide, "bust_girth", *stood)
    assert not file.with_suffix(".taking").exists()


def test_two_pages_keep_what_each_was_told(file: Path) -> None:
    one, two = MeasuringGuide(file), MeasuringGuide(file)
    write(one, "calf_girth", "14 in")
    write(two, "ankle_girth", "9 in")
    both = MeasuringGuide(file)
    assert (texts(both, "calf_girth"), texts(both, "ankle_girth")) == (("14 in",), ("9 in",))


@pytest.mark.parametrize(
    "torn",
    [
        b"",
        b'{"calf_girth": ["14 in"',
        b"[1]",
        b"\xff\xfe",
        b"[" * 100_000,
        json.dumps({"calf_girth": "14", "no such": ["1"], "hip_girth": [1], "knee_girth": ["9" * 9_000]}).encode(),
    ],
)
def test_what_is_torn_or_strange_is_passed_over(file: Path, torn: bytes) -> None:
    place = kept.taking_place(file)
    place.write_bytes(torn)
    guide = MeasuringGuide(file)
    assert "Not saved" not in guide.message.value
    write(guide, "calf_girth", "14 in")
    assert texts(MeasuringGuide(file), "calf_girth") == ("14 in",)


def test_where_it_cannot_be_kept_that_is_said_and_the_figure_follows_all_the_same(
    file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(*_: object) -> None:
        raise OSError(28, "No space left on device", "wearer.taking")

    guide = MeasuringGuide(file)
    monkeypatch.setattr(kept, "put_whole", full)
    write(guide, "calf_girth", "14 in")
    assert "No space left on device" in guide.message.value
    assert guide.body is not None
    assert guide.body["calf_girth"] == pytest.approx(355.6)
