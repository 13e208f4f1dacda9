"""Notes as a maker writes them: what is read, what is refused, what they come to from fitting to fitting."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from drafting.commands.cli import main
from drafting.costume.file import CostumeFile, read_costume
from drafting.fitting.file import read_fitting
from drafting.fitting.note import AmountAs, AtEdge, FromEnd, NoteKind, NoteSide, NoteState, Verb
from drafting.ground.errors import InputError

BODY = """title = "Invented"
unit = "cm"
taken_over = "skin"
waist_level = "natural"
measured_on = 2026-11-02
[measures]
height = 170
bust_girth = 94
waist_girth = 80
hip_girth = 100
upper_arm_girth = 30
shoulder_drop = 4.6
"""

COSTUME = """title = "A shirt"
wearer = "body.toml"
[garments.shirt]
block = "shirt"
fabric = "shell"
[fabrics]
shell = "cloth.toml"
"""

CLOTH = """title = "Calico"
unit = "cm"
width = 150
weave = "woven"
sort = "plain"
pretreated = true
"""

PINCHED = """[[notes]]
side = "both"
where = "waist"
verb = "take in"
amount = "1 cm"
as = "pinch"
kind = "body"
state = "pinned"
"""


def costume(folder: Path, *fittings: str, hers: tuple[str, ...] = (), top: str = "on = 2026-11-09") -> Path:
    """Write a costume with fittings of its own and of its wearer's; return its path."""
    own, body = [], []
    for number, text in enumerate(fittings):
        (folder / f"own-{number}.toml").write_text(f'title = "Fitting"\nunit = "cm"\n{top}\n{text}', "utf-8")
        own.append(f'"own-{number}.toml"')
    for number, text in enumerate(hers):
        (folder / f"hers-{number}.toml").write_text(f'title = "Hers"\nunit = "cm"\n{top}\n{text}', "utf-8")
        body.append(f'"hers-{number}.toml"')
    (folder / "body.toml").write_text((f"fittings = [{', '.join(body)}]\n" if body else "") + BODY, "utf-8")
    (folder / "cloth.toml").write_text(CLOTH, "utf-8")
    path = folder / "costume.toml"
    path.write_text((f"fittings = [{', '.join(own)}]\n" if own else "") + COSTUME, "utf-8")
    return path


def read(folder: Path, *fittings: str, **more: tuple[str, ...]) -> CostumeFile:
    return read_costume(costume(folder, *fittings, **more))


def test_a_fitting_file_is_read_as_it_is_written(tmp_path: Path) -> None:
    path = tmp_path / "first.toml"
    path.write_text(
        'title = "First mock-up"\non = 2026-11-09\nunit = "in"\ncut = true\n[[notes]]\ngarment = "shirt"\n'
        'side = "left"\nwhere = "front.side"\nat = "1 1/2 in from hem"\nverb = "take in"\namount = "1/2 in"\n'
        'as = "seam"\nkind = "style"\nstate = "seen"\n',
        "utf-8",
    )
    fitting = read_fitting(path, ["shirt"])
    (note,) = fitting.notes
    assert (fitting.title, fitting.on, fitting.cut) == ("First mock-up", date(2026, 11, 9), True)
    assert (note.garment, note.side, note.where) == ("shirt", NoteSide.LEFT, AtEdge("front", "side"))
    assert (note.verb, note.amount, note.counted) == (Verb.TAKE_IN, 12.7, AmountAs.SEAM)
    assert (note.at, note.kind, note.state) == (FromEnd(38.1, "hem"), NoteKind.STYLE, NoteState.SEEN)
    assert (note.spot.file, note.spot.line) == (str(path), 5)


def test_a_level_may_begin_with_a_capital(tmp_path: Path) -> None:
    path = tmp_path / "own.toml"
    path.write_text('[[notes]]\ngarment = "shirt"\nwhere = "Upper arm"\nverb = "leave"\nkind = "style"\n', "utf-8")
    assert [str(note.where) for note in read_fitting(path).notes] == ["upper arm"]


@pytest.mark.parametrize(
    ("note", "line", "said"),
    [
        ('where = "waist"\nverb = "take in"\namount = 1\nkind = "body"', 4, "pinch or total?"),
        (
            'where = "waist"\nverb = "take it in"\namount = 1\nas = "pinch"\nkind = "body"',
            6,
            "did you mean take in?",
        ),
        ('where = "waste"\nverb = "take in"\namount = 1\nas = "pinch"\nkind = "body"', 5, "did you mean waist"),
        ('where = "waist"\nverb = "lengthen"\namount = 1\nkind = "body"', 5, "take in or let out"),
        (
            'where = "front.side"\nverb = "take in"\namount = 1\nas = "pinch"\nkind = "body"',
            5,
            "no body dimension",
        ),
        ('where = "waist"\nverb = "take in"\namount = -1\nas = "pinch"\nkind = "body"', 7, "amount"),
        ('where = "waist"\nverb = "take in"\nas = "pinch"\nkind = "body"', 4, "say how much"),
        ('where = "waist"\nverb = "take in"\namount = 1\nas = "pinch"', 4, "body, style, cloth, accident"),
        ('where = "front side"\nverb = "take in"\namount = 1\nas = "pinch"\nkind = "style"', 5, "piece.edge"),
        (
            'garment = "shrt"\nwhere = "waist"\nverb = "take in"\namount = 1\nas = "pinch"\nkind = "style"',
            5,
            "shirt",
        ),
        (
            'where = "waist"\nat = "4 cm"\nverb = "take in"\namount = 1\nas = "pinch"\nkind = "style"',
            6,
            "from hem",
        ),
        ('where = "waist"\nverb = "take in"\namount = 1\nas = "pinch"\nkind = "body"\nsize = 4', 10, "not known"),
        (
            'where = "waist"\nverb = "take in"\namount = 1\nas = "pinch"\nkind = "body"\nstate = "done"',
            10,
            "on paper",
        ),
    ],
)
def test_what_is_wrong_with_a_note_is_said_at_its_line(tmp_path: Path, note: str, line: int, said: str) -> None:
    with pytest.raises(InputError) as refused:
        read(tmp_path, f"[[notes]]\n{note}\n")
    (fault,) = refused.value.faults
    assert (Path(fault.file).name, fault.line) == ("own-0.toml", line), str(fault)
    assert said in f"{fault.field} {fault}"


def test_one_centimetre_pinched_at_each_side_takes_four_off_the_waist(tmp_path: Path) -> None:
    found = read(tmp_path, PINCHED)
    assert found.wearer["waist_girth"] == 760.0
    (done,) = found.fittings.done
    (said,) = [one.said("cm") for one in found.fittings.findings]
    assert said == "1 cm pinched at each side: waist 80 cm to 76 cm"
    assert done.moved[0].before, done.moved[0].after == (800.0, 760.0)
    assert "waist 31 1/2 in to 29 7/8 in" in found.fittings.findings[0].said("in")


@pytest.mark.parametrize(
    ("side", "counted", "waist"),
    [
        ("both", "total", 790),
        ("both", "seam", 760),
        ("left", "pinch", 780),
        ("left", "seam", 780),
        ("left", "total", 790),
    ],
)
def test_a_pinch_a_total_and_a_seam_are_three_amounts(
    tmp_path: Path, side: str, counted: str, waist: float
) -> None:
    """Common practice: a pinch of 1 cm is 2 cm of cloth, and there are a left and a right side."""
    note = PINCHED.replace('"both"', f'"{side}"').replace('"pinch"', f'"{counted}"')
    assert read(tmp_path, note).wearer["waist_girth"] == waist


def test_one_lower_shoulder_is_lower_on_that_side_alone(tmp_path: Path) -> None:
    note = '[[notes]]\nside = "right"\nwhere = "shoulder"\nverb = "lower"\namount = 1.5\nkind = "body"\n'
    body = read(tmp_path, note).wearer
    assert (body.hand("shoulder_drop", "left"), body.hand("shoulder_drop", "right")) == (46.0, 61.0)


def test_an_arm_is_pinched_once_and_has_one_seam(tmp_path: Path) -> None:
    note = PINCHED.replace('"waist"', '"upper arm"').replace("take in", "let out")
    assert read(tmp_path, note).wearer["upper_arm_girth"] == 320.0
    sleeve = PINCHED.replace('"waist"', '"sleeve"').replace("take in", "let out")
    assert read(tmp_path, sleeve).wearer["upper_arm_girth"] == 320.0


@pytest.mark.parametrize(
    ("amount", "counted", "waist", "said"),
    [
        ("0.2 cm", "pinch", 800, "under 0.3 cm"),
        ("0.3 cm", "pinch", 788, "waist 80 cm to 78.8 cm"),
        ("2.6 cm", "pinch", 800, "over 2.5 cm at one seam"),
        ("5.1 cm", "total", 800, "over 5 cm in all"),
        ("1.3 cm", "pinch", 800, "over 5 cm in all"),
        ("5 cm", "total", 750, "waist 80 cm to 75 cm"),
    ],
)
def test_what_is_too_little_is_left_and_what_is_too_much_goes_back_to_the_tape(
    tmp_path: Path, amount: str, counted: str, waist: float, said: str
) -> None:
    found = read(tmp_path, PINCHED.replace("1 cm", amount).replace('"pinch"', f'"{counted}"'))
    assert found.wearer["waist_girth"] == pytest.approx(waist)
    (finding,) = found.fittings.findings
    assert said in finding.said("cm")
    assert (finding.level == "warning") == said.startswith("over")


def test_two_notes_that_undo_each_other_are_refused_with_both_lines(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    other = PINCHED.replace("take in", "let out").replace('"both"', '"left"')
    path = costume(tmp_path, PINCHED + other)
    assert main(["make", str(path), "--out", str(tmp_path / "out")]) == 2
    said = capsys.readouterr().err
    assert "contradict" in said
    assert "lines 4 and 12" in said
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize("other", ['side = "right"', 'kind = "accident"', 'where = "hip"'])
def test_notes_about_other_sides_places_or_files_do_not_contradict(tmp_path: Path, other: str) -> None:
    key = other.partition(" =")[0]
    one = PINCHED.replace('"both"', '"left"') if key == "side" else PINCHED
    rows = [other if row.startswith(f"{key} =") else row for row in one.replace("take in", "let out").splitlines()]
    assert len(read(tmp_path, one + "\n".join(rows) + "\n").fittings.threads) == 2


def test_a_style_note_contradicts_a_note_about_the_same_girth_of_the_body(tmp_path: Path) -> None:
    style = PINCHED.replace('kind = "body"', 'kind = "style"\ngarment = "shirt"').replace("take in", "let out")
    with pytest.raises(InputError, match="contradict"):
        read(tmp_path, PINCHED + style)
