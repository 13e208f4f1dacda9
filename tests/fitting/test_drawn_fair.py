"""Notes that bend a line to and fro: it is drawn fair again, as long as it was, and that is told.

Source: common practice: a line whose points were moved is drawn again in one sweep, and what is taken at the
centre of a waist runs out past the side seam. Each was an error before, on invented bodies of plain measures.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from drafting.costume.choices import block_named, choose
from drafting.costume.file import read_costume
from drafting.costume.garment import checked_garment, finished_garment
from drafting.costume.make import Made, make
from drafting.ground.scale import body_scale
from drafting.reading.given import Origin
from tests.bodies import ansur, bdims
from tests.fitting.test_fitting_files import costume
from tests.fitting.test_followers import note

NOTE = """[[notes]]
garment = "shirt"
where = "{}"
verb = "{}"
amount = "{} mm"
as = "seam"
kind = "style"
state = "pinned"
"""

SLIM, TALL, STOUT = (165, 92, 70, 98), (190, 92, 70, 98), (190, 120, 110, 125)
NARROW = (165, 92, 70, 73)
NAMES = ("height", "bust_girth", "waist_girth", "hip_girth")


def noted(folder: Path, body: tuple[int, ...], block: str, *notes: str) -> Made:
    path = costume(folder, *notes)
    path.write_text(path.read_text("utf-8").replace('block = "shirt"', f'block = "{block}"'), "utf-8")
    top = (folder / "body.toml").read_text("utf-8").partition("[measures]")[0]
    measures = "".join(f"{name} = {value}\n" for name, value in zip(NAMES, body, strict=True))
    (folder / "body.toml").write_text(f"{top}[measures]\n{measures}", "utf-8")
    return make(read_costume(path))


@pytest.mark.parametrize(
    ("body", "block", "where", "verb", "amount"),
    [
        (SLIM, "bodice", "back.neck", "raise", 12),
        (TALL, "bodice", "back.neck", "raise", 12),
        (TALL, "breeches", "back.waist", "shorten", 10),
        (STOUT, "breeches", "back.waist", "shorten", 10),
        (NARROW, "breeches", "back.waist", "shorten", 10),
        (NARROW, "trousers", "back.waist", "shorten", 10),
        (NARROW, "trousers", "front.waist", "shorten", 10),
    ],
)
def test_a_line_that_a_note_waved_is_fair(
    tmp_path: Path, body: tuple[int, ...], block: str, where: str, verb: str, amount: int
) -> None:
    made = noted(tmp_path, body, block, NOTE.format(where, verb, amount))
    assert [f.said("cm") for f in made.findings if f.level == "error"] == []
    told = [f.said("cm") for f in made.findings if f.check == "fitting" and f.level == "note"]
    assert any("drawn fair" in one or "in one line" in one for one in told) or block == "trousers"


def test_what_no_note_moved_is_not_drawn_anew(tmp_path: Path) -> None:
    made = noted(tmp_path, SLIM, "bodice", NOTE.format("front.side_lower", "take in", 5))
    assert not any("drawn fair" in f.said("cm") for f in made.findings)


def test_a_note_that_would_cross_an_outline_is_refused_in_words(tmp_path: Path) -> None:
    # A bust dart closed by more than it has: the front's outline crossed itself, and was cut so.
    made = noted(tmp_path, SLIM, "shirt", NOTE.format("front.armhole", "lengthen", 24))
    assert [f.said("cm") for f in made.findings if f.level == "error"] == []
    assert any("would cross itself" in f.said("cm") for f in made.findings if f.level == "warning")


@pytest.mark.parametrize(
    ("where", "verb"), [("back.neck", "take in"), ("back.neck", "let out"), ("front.shoulder", "lower")]
)
@pytest.mark.parametrize("body", [SLIM, TALL, STOUT])
def test_the_v_of_a_waistcoat_stays_one_line(tmp_path: Path, body: tuple[int, ...], where: str, verb: str) -> None:
    """A V is nearly straight: 9 mm at the neck of one hand bent it to and fro. Common practice: a V is drawn
    again from its neck point, straight or in one slight curve."""
    made = noted(tmp_path, body, "waistcoat", NOTE.format(where, verb, 9).replace("as =", 'side = "right"\nas ='))
    assert [f.said("cm") for f in made.findings if f.level == "error"] == []


@pytest.mark.parametrize(
    ("index", "block", "where", "verb", "amount", "side"),
    [
        (301, "waistcoat", "front.shoulder", "raise", 9.0, "both"),
        (20, "coat", "back.neck", "take in", 11.0, "right"),
        (410, "coat", "front.neck", "take in", 11.0, "right"),
        (1500, "waistcoat", "back.shoulder", "raise", 11.0, "both"),
        (1500, "sleeveless-top", "front.shoulder", "raise", 11.0, "right"),
    ],
)
def test_measured_people_keep_fair_lines(
    index: int, block: str, where: str, verb: str, amount: float, side: str
) -> None:
    """Interfacing has no dart of its own, and what a dart's mouth may turn was an error of the interfacing alone.

    A neck, drawn as long as could be, bent back at the gorge where it was taken in; a straight armhole under
    a raised shoulder was hollowed by a degree.
    """
    body, kind = (ansur() if index > 506 else bdims())[index], block_named(block)
    chosen = choose(kind, {}, body_scale(body), Origin())
    told = note(where, verb, amount, side)
    made = finished_garment(body, None, kind, chosen, name=block, role="shell", notes=(told,))
    assert [f.message for f in checked_garment(made, body, None).findings if f.level == "error"] == []
