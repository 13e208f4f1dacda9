"""Notes about the line: what they name comes out as noted, within 1 mm, and is told from and to."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from drafting.checks.girths import finished_girth
from drafting.commands.cli import main
from drafting.costume.file import read_costume
from drafting.costume.make import Made, make
from drafting.ground.findings import Finding
from tests.fitting.test_fitting_files import PINCHED, costume, read

Said = pytest.CaptureFixture[str]

STYLE = PINCHED.replace('"body"', '"style"')
NEAR = 1.0
"""mm: how near a girth or a length that a note names has to come out."""


@pytest.fixture(scope="module")
def plain(tmp_path_factory: pytest.TempPathFactory) -> Made:
    """The shirt as it is without notes."""
    return make(read(tmp_path_factory.mktemp("plain")))


def girth(made: Made, level: str) -> float:
    found = finished_girth(made.garments[0].draft, level)
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("amount", "counted", "moved"), [("1 cm", "pinch", -40.0), ("3 cm", "total", -30.0), ("1 cm", "seam", -40.0)]
)
def test_the_waist_comes_out_as_it_is_noted(
    tmp_path: Path, plain: Made, amount: str, counted: str, moved: float
) -> None:
    """1 cm pinched at each side is 4 cm of the waist (common practice)."""
    note = STYLE.replace("1 cm", amount).replace('"pinch"', f'"{counted}"')
    made = make(read(tmp_path, note))
    assert girth(made, "waist") - girth(plain, "waist") == pytest.approx(moved, abs=NEAR)
    (done,) = made.garments[0].done
    assert done.carried
    assert any(
        one.edge == "waist" and one.after - one.before == pytest.approx(moved, abs=NEAR) for one in done.moved
    )
    assert any("waist" in finding.said("cm") and " to " in finding.said("cm") for finding in fitting(made))


def fitting(made: Made) -> list[Finding]:
    return [finding for finding in made.findings if finding.check == "fitting"]


def test_one_sleeve_is_longer_by_what_is_noted(tmp_path: Path, plain: Made) -> None:
    note = '[[notes]]\nside = "left"\nwhere = "sleeve"\nverb = "lengthen"\namount = "2 cm"\nkind = "style"\n'
    draft = make(read(tmp_path, note)).garments[0].draft
    sleeve = plain.garments[0].draft["sleeve"]
    tall = {p.name: p.outline.bounds[3] - p.outline.bounds[1] for p in draft.pieces}
    was = sleeve.outline.bounds[3] - sleeve.outline.bounds[1]
    assert tall["sleeve-left"] - was == pytest.approx(20.0, abs=NEAR)
    assert tall["sleeve-right"] - was == pytest.approx(0.0, abs=0.2)


def test_the_piece_of_one_hand_may_be_named_as_it_is_printed(tmp_path: Path, capsys: Said) -> None:
    """`sleeve-left` stands on the paper in her hand; beside `side = "right"` it is refused, not guessed."""
    note = '[[notes]]\nwhere = "sleeve-left"\nverb = "lengthen"\namount = "2 cm"\nkind = "style"\n'
    named, said = (
        make(read(tmp_path, one)).garments[0].draft
        for one in (note, note.replace("sleeve-left", "sleeve").replace("verb", 'side = "left"\nverb'))
    )
    assert named.pieces == said.pieces
    assert any(piece.name == "sleeve-left" for piece in named.pieces)
    path = costume(tmp_path, note.replace("verb", 'side = "right"\nverb'))
    assert main(["make", str(path), "--out", str(tmp_path / "out")]) == 2
    assert "sleeve-left is the left hand's, and side says right; leave side out" in capsys.readouterr().err


def test_a_note_that_moves_a_girth_too_far_goes_back_to_the_tape(tmp_path: Path, plain: Made) -> None:
    made = make(read(tmp_path, STYLE.replace("1 cm", "2 cm")))
    assert girth(made, "waist") == girth(plain, "waist")
    (done,) = made.garments[0].done
    assert not done.carried
    assert "lay the tape again" in done.said


def test_the_record_tells_each_note_and_what_it_moved_from_and_to(tmp_path: Path) -> None:
    path = costume(tmp_path, STYLE + PINCHED.replace('"waist"', '"hip"'))
    assert main(["make", str(path), "--out", str(tmp_path / "out")]) in (0, 1)
    rows = json.loads((tmp_path / "out" / "report.json").read_text("utf-8"))["fitting"]
    assert [(row["where"], row["kind"], row["carried"]) for row in rows] == [
        ("waist", "style", True),
        ("hip_girth", "body", True),
    ]
    body = rows[1]["moved"][0]
    assert (body["what"], body["from"], body["to"]) == ("hip_girth", 1000.0, 960.0)
    assert {one["what"].partition(".")[0] for one in rows[0]["moved"]} >= {"front", "back"}
    assert all(one["from"] != one["to"] for one in rows[0]["moved"] if one["what"].endswith("waist"))


def test_the_shipped_first_fitting_is_carried_out_as_it_says() -> None:
    """The kite, invented: a fuller thigh and a longer crotch of the body, her trousers shortened."""
    root = Path(__file__).resolve().parents[2]
    made = make(read_costume(root / "measurements" / "costumes" / "kite.toml"))
    done = [*made.costume.fittings.done, *(one for garment in made.garments for one in garment.done)]
    assert {str(one.note.where): one.carried for one in done} == {
        "thigh_girth": True,
        "total_crotch_length": True,
        "bust": False,
        "hip": False,
        "back.hem": True,
    }
