"""Notes followed from fitting to fitting, from costume to costume, and told where they move nothing."""

from __future__ import annotations

from pathlib import Path

import pytest

from drafting.costume.file import read_costume
from drafting.costume.make import make
from drafting.fitting.note import AtMeasure
from drafting.ground.errors import InputError
from drafting.output.report_fitting import fitting_rows
from drafting.output.strips import strips_of_last_fitting
from tests.fitting.test_fitting_files import BODY, PINCHED, costume, read


@pytest.mark.parametrize(
    ("state", "amount", "waist"),
    [
        ("right", "1 cm", 760),
        ("on paper", "1 cm", 760),
        ("seen", "1 cm", 760),
        ("still wrong", "0.5 cm", 740),
        ("pinned", "0.5 cm", 740),
        ("too much", "0.5 cm", 780),
        ("too much", "1.5 cm", 820),
    ],
)
def test_a_note_is_followed_from_fitting_to_fitting_and_never_applied_twice(
    tmp_path: Path, state: str, amount: str, waist: float
) -> None:
    later = PINCHED.replace("1 cm", amount).replace('"pinned"', f'"{state}"')
    found = read(tmp_path, PINCHED, later)
    if waist < 750:
        assert found.wearer["waist_girth"] == 760  # 6 cm round in all: the second goes back to the tape
        assert any("over 5 cm" in one.said("cm") for one in found.fittings.findings)
    else:
        assert found.wearer["waist_girth"] == waist
    (thread,) = found.fittings.threads
    assert [note.spot.file.rpartition("/")[2] for note in thread.said] == ["own-0.toml", "own-1.toml"]
    assert thread.closed == (state == "right")


def test_fittings_with_days_are_followed_in_their_order(tmp_path: Path) -> None:
    path = costume(tmp_path, PINCHED.replace("1 cm", "0.3 cm").replace("pinned", "too much"), PINCHED)
    first = tmp_path / "own-0.toml"
    first.write_text(first.read_text("utf-8").replace("2026-11-09", "2026-11-16"), "utf-8")
    assert read_costume(path).wearer["waist_girth"] == 772


def test_the_same_fitting_of_costume_and_wearer_is_applied_once(tmp_path: Path) -> None:
    path = costume(tmp_path, PINCHED)
    body = tmp_path / "body.toml"
    body.write_text('fittings = ["./own-0.toml"]\n' + body.read_text("utf-8"), "utf-8")
    assert read_costume(path).wearer["waist_girth"] == 760


def test_notes_about_the_body_go_with_the_wearer_and_those_of_style_stay(tmp_path: Path) -> None:
    style = PINCHED.replace('"body"', '"style"\ngarment = "cape"').replace('"waist"', '"front.side"')
    found = read(tmp_path, hers=(PINCHED + style,))
    assert found.wearer["waist_girth"] == 760
    assert found.fittings.lines == ()
    assert [thread.note.where for thread in found.fittings.threads] == [AtMeasure("waist_girth")]


def test_on_another_wearer_the_notes_about_the_first_body_are_left_out(tmp_path: Path) -> None:
    path = costume(tmp_path, PINCHED)
    (tmp_path / "other.toml").write_text(BODY.replace("waist_girth = 80", "waist_girth = 70"), "utf-8")
    found = read_costume(path, tmp_path / "other.toml")
    assert found.wearer["waist_girth"] == 700
    assert "goes with her" in found.fittings.findings[0].said("cm")
    assert read_costume(path, tmp_path / "body.toml").wearer["waist_girth"] == 760


def test_a_tape_laid_after_the_fitting_holds_the_note_already(tmp_path: Path) -> None:
    found = read_costume(costume(tmp_path, PINCHED, top="on = 2026-11-01"))
    assert found.wearer["waist_girth"] == 800
    assert "laid again on 2026-11-02" in found.fittings.findings[0].said("cm")


@pytest.mark.parametrize("kind", ["cloth", "accident"])
def test_what_lies_with_the_cloth_or_the_shears_changes_no_draft(tmp_path: Path, kind: str) -> None:
    note = PINCHED.replace('"body"', f'"{kind}"\ngarment = "shirt"')
    (tmp_path / "plain").mkdir()
    plain, noted = make(read(tmp_path / "plain")), make(read(tmp_path, note))
    assert noted.garments[0].draft == plain.garments[0].draft
    assert any(kind in finding.message for finding in noted.findings if finding.check == "fitting")


def test_a_name_that_no_draft_has_is_refused_at_the_line_of_its_note(tmp_path: Path) -> None:
    note = PINCHED.replace('"waist"', '"front.sied"').replace('"body"', '"style"\ngarment = "shirt"')
    with pytest.raises(InputError) as refused:
        make(read(tmp_path, note))
    (fault,) = refused.value.faults
    assert (Path(fault.file).name, fault.line) == ("own-0.toml", 4)
    assert "side" in str(fault)


LOWERED = """[[notes]]
garment = "shirt"
side = "both"
where = "front.shoulder"
verb = "lower"
amount = "1 cm"
kind = "style"
state = "pinned"
"""


def drops(folder: Path, *fittings: str) -> list[float]:
    """Return how far each hand's shoulder tip lies below its neck point on the front, mm, left first."""
    folder.mkdir(exist_ok=True)
    draft = make(read(folder, *fittings)).garments[0].draft
    fronts = [piece for piece in draft.pieces if (piece.base or piece.name) == "front"]
    found = [abs((one["shoulder"].path.end - one["shoulder"].path.start).imag) for one in fronts]
    return found * (2 if len(found) == 1 else 1)


@pytest.mark.parametrize(
    ("first", "later", "left", "right"),
    [
        ({}, {"side": "left", "state": "right"}, 10, 10),
        ({}, {"side": "left", "state": "too much", "amount": "0.4 cm"}, 6, 10),
        ({"side": "left"}, {"where": "front-left.shoulder", "side": None, "state": "right"}, 10, 0),
        ({"side": "left"}, {"where": "back-left.shoulder", "side": None, "state": "on paper"}, 10, 0),
        ({}, {"where": "back.shoulder", "state": "seen"}, 10, 10),
        ({}, {"where": "back.shoulder", "state": "too much", "amount": "0.4 cm"}, 6, 6),
        ({}, {"where": "back.shoulder", "state": "still wrong", "amount": "0.4 cm"}, 14, 14),
        ({}, {"state": "too much", "amount": "1 cm"}, 0, 0),
        ({"side": "left"}, {"side": "left", "verb": "raise"}, 0, 0),
    ],
)
def test_a_place_that_is_said_of_one_hand_or_by_its_other_name_is_the_same_place(
    tmp_path: Path, first: dict[str, str], later: dict[str, str | None], left: float, right: float
) -> None:
    """It was drafted a second time, and too much of one hand lowered it further."""
    plain = drops(tmp_path / "plain")
    found = drops(tmp_path / "fitted", _with(first), _with(later))
    assert [now - was for now, was in zip(found, plain, strict=True)] == pytest.approx([left, right], abs=0.2)


def _with(changed: dict[str, str] | dict[str, str | None]) -> str:
    rows = {key: value.strip('"') for key, _, value in (row.partition(" = ") for row in LOWERED.splitlines()[1:])}
    kept = {key: value for key, value in {**rows, **changed}.items() if value is not None}
    return "[[notes]]\n" + "".join(f'{key} = "{value}"\n' for key, value in kept.items())


def test_notes_that_undo_each_other_by_two_names_are_refused_with_both_lines(tmp_path: Path) -> None:
    raised = _with({"where": "back-left.shoulder", "side": None, "verb": "raise"})
    with pytest.raises(InputError) as refused:
        make(read(tmp_path, _with({"side": "left"}) + raised))
    assert "contradict each other" in str(refused.value)
    assert "lines 4 and 12" in str(refused.value)


def test_what_a_later_fitting_asks_too_much_of_leaves_what_stood_there(tmp_path: Path) -> None:
    """It was undone with it: the second mock-up had been made with the first fitting's waist."""
    seam = _with({"where": "front.side", "verb": "take in", "as": "seam"})
    more = seam.replace("1 cm", "1.8 cm")
    (tmp_path / "once").mkdir()
    once, twice = make(read(tmp_path / "once", seam)), make(read(tmp_path, seam, more))
    assert twice.garments[0].draft == once.garments[0].draft
    (told,) = (one for one in twice.findings if one.level == "warning" and one.check == "fitting")
    assert "stays as it was" in told.said("cm")
    assert [row["carried"] for row in fitting_rows(twice)] == [True, False]


def test_what_was_pinned_since_the_tape_was_laid_counts_whatever_lies_before_it(tmp_path: Path) -> None:
    path = costume(tmp_path, PINCHED, PINCHED.replace("1 cm", "0.5 cm"))
    first = tmp_path / "own-0.toml"
    first.write_text(first.read_text("utf-8").replace("2026-11-09", "2026-10-20"), "utf-8")
    found = read_costume(path)
    assert found.wearer["waist_girth"] == 780
    assert [row["carried"] for row in fitting_rows(make(found))] == [False, True]


def test_a_place_that_was_pinned_before_the_tape_and_is_right_since_asks_for_nothing(tmp_path: Path) -> None:
    path = costume(tmp_path, PINCHED, PINCHED.replace("pinned", "right"))
    first = tmp_path / "own-0.toml"
    first.write_text(first.read_text("utf-8").replace("2026-11-09", "2026-10-20"), "utf-8")
    found = read_costume(path)
    assert found.wearer["waist_girth"] == 800
    assert [thread.closed for thread in found.fittings.threads] == [True]


def test_another_wearer_keeps_what_she_was_pinned_in_herself(tmp_path: Path) -> None:
    """Hers and the first wearer's note of one place were summed, or left out together."""
    path = costume(tmp_path, PINCHED)
    (tmp_path / "hers.toml").write_text(f'unit = "cm"\non = 2026-11-20\n{PINCHED}', "utf-8")
    other = tmp_path / "other.toml"
    other.write_text('fittings = ["hers.toml"]\n' + BODY.replace("waist_girth = 80", "waist_girth = 70"), "utf-8")
    for day in ("2026-11-20", "2026-11-05"):
        hers = tmp_path / "hers.toml"
        hers.write_text(hers.read_text("utf-8").replace("2026-11-20", day), "utf-8")
        assert read_costume(path, other).wearer["waist_girth"] == 660


def test_what_was_cut_for_another_costume_was_not_cut_for_this(tmp_path: Path) -> None:
    costume(tmp_path, hers=(PINCHED,))
    hers = tmp_path / "hers-0.toml"
    hers.write_text("cut = true\n" + hers.read_text("utf-8"), "utf-8")
    made = make(read_costume(tmp_path / "costume.toml"))
    assert [one for one in made.findings if one.check == "cut already"] == []


def test_one_hand_alone_closes_its_own_half(tmp_path: Path) -> None:
    half = _with({"side": "left", "state": "right"})
    (tmp_path / "half").mkdir()
    (thread,) = read(tmp_path / "half", LOWERED, half).fittings.threads
    assert not thread.closed
    (thread,) = read(tmp_path, LOWERED, half, _with({"side": "right", "state": "right"})).fittings.threads
    assert thread.closed


def test_a_clip_without_an_amount_says_that_nothing_is_drawn(tmp_path: Path) -> None:
    clip = _with({"where": "front.armhole", "verb": "clip", "amount": None})
    (row,) = fitting_rows(make(read(tmp_path, clip)))
    assert "nothing drawn" in row["said"]


def test_a_note_of_style_whose_place_another_wearer_lacks_stops_nobody(tmp_path: Path) -> None:
    """A bust dart parts the side of one and not of the other: the other was refused."""
    note = _with({"where": "front.side_lower", "verb": "take in", "as": "seam"})
    path = costume(tmp_path, note + LOWERED)
    (tmp_path / "other.toml").write_text(BODY, "utf-8")
    made = make(read_costume(path, tmp_path / "other.toml"))
    assert [row["carried"] for row in fitting_rows(made)] == [False, True]
    assert any("another wearer" in one.sentence and one.level == "warning" for one in made.findings)
    with pytest.raises(InputError, match="no edge side_lower"):
        make(read_costume(path))


def test_what_was_cut_for_the_wearer_fitted_was_not_cut_for_another(tmp_path: Path) -> None:
    """A cast was told that her allowance reaches, and given strips for paper that nobody has."""
    path = costume(tmp_path, LOWERED, top="on = 2026-11-09\ncut = true")
    (tmp_path / "other.toml").write_text(BODY.replace("waist_girth = 80", "waist_girth = 90"), "utf-8")
    hers, others = make(read_costume(path)), make(read_costume(path, tmp_path / "other.toml"))
    assert [row["carried"] for row in fitting_rows(others)] == [True]
    told = [{one.check for one in made.findings} for made in (hers, others)]
    assert ["cut already" in checks for checks in told] == [True, False]
    assert [bool(list(strips_of_last_fitting(made))) for made in (hers, others)] == [True, False]


@pytest.mark.parametrize(("verb", "by"), [("raise", -10), ("lower", 10)])
def test_a_waist_that_lies_higher_does_so_in_front_and_over_the_hip_as_well(
    tmp_path: Path, verb: str, by: float
) -> None:
    """The back alone was shortened: the front gained a belly, and the hip went up with the waist."""
    taped = "front_waist_length = 44\nback_waist_length = 41\nwaist_to_hip = 20\nbody_rise = 27\n"
    path = costume(tmp_path, f'[[notes]]\nwhere = "waist"\nverb = "{verb}"\namount = "1 cm"\nkind = "body"\n')
    body = tmp_path / "body.toml"
    plain, _ = body.read_text("utf-8"), body.write_text(body.read_text("utf-8") + taped, "utf-8")
    found = read_costume(path)
    assert [found.wearer[name] for name in ("back_waist_length", "front_waist_length")] == [410 + by, 440 + by]
    assert [found.wearer[name] for name in ("waist_to_hip", "body_rise")] == [200 - by, 270 - by]
    assert "front waist length" in found.fittings.findings[0].said("cm")
    body.write_text(plain, "utf-8")
    named = read_costume(path).fittings.done[0].moved
    assert [one.edge for one in named] == ["back_waist_length"], "estimates follow by themselves"
