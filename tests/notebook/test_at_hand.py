"""Which costumes are at hand, which one the pages open, and what a page says where it has nothing to show."""

from __future__ import annotations

import json
import os
from collections.abc import Callable
from pathlib import Path

import pytest

from drafting.costume.file import read_costume
from drafting.ground.errors import DraftError, InputError
from drafting.ground.lengths import told
from drafting.ground.shipped import demo_costume
from drafting.notebook.living.chosen import REMEMBERED, costumes_at_hand, opens_with, remember
from drafting.notebook.living.living import living_costume
from drafting.notebook.page import gallery as gallery_page
from drafting.notebook.page import named
from drafting.notebook.page.gallery import Gallery, card
from drafting.notebook.page.page import CostumePage
from drafting.notebook.page.ruler import PrintedSquare
from drafting.notebook.page.told import TOLD
from tests.notebook.trials import trial_costumes


@pytest.fixture
def files(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> dict[str, Path]:
    (tmp_path / "notebooks").mkdir()
    monkeypatch.chdir(tmp_path / "notebooks")
    return trial_costumes(tmp_path)


def test_hers_come_first_then_the_shipped_ones_and_other_toml_files_are_no_costumes(
    files: dict[str, Path], tmp_path: Path
) -> None:
    found = costumes_at_hand(tmp_path)
    assert {at.path for at in found[: len(files)]} == set(files.values())
    shipped = {"lamplighter", "kite", "ferrywoman", "toll-keeper", "bell-ringer", "clock-mender"}
    assert {at.path.stem for at in found[len(files) :]} == shipped
    assert len({at.words for at in found}) == len(found)  # told from each other by title or place
    broken = next(at for at in found if at.path == files["faulty"])
    assert broken.title == "costume"  # its title cannot be read; it is offered all the same


def test_the_pages_open_with_what_was_chosen_else_with_hers_else_with_the_demo(
    files: dict[str, Path], tmp_path: Path
) -> None:
    nothing: dict[str, str] = {}
    for age, name in enumerate(("faulty", "child", "no-coat", "one-trouser", "inches")):
        os.utime(files[name], (1_700_000_000 + age, 1_700_000_000 + age))
    assert opens_with(tmp_path, nothing) == files["inches"]  # written last
    assert opens_with(tmp_path, {"DRAFTING_COSTUME": "kite"}).stem == "kite"
    remember(tmp_path, files["no-coat"], nothing)
    assert opens_with(tmp_path, nothing).resolve() == files["no-coat"].resolve()
    assert json.loads((tmp_path / REMEMBERED).read_text())["costume"] == "no-coat/costume.toml"
    assert opens_with(tmp_path, {"DRAFTING_COSTUME": "kite"}).stem == "kite"  # chosen over something else
    files["no-coat"].unlink()
    assert opens_with(tmp_path, nothing) == files["inches"]
    assert opens_with(tmp_path / "notebooks", nothing).stem == "lamplighter"
    (tmp_path / REMEMBERED).write_text("[]")
    assert opens_with(tmp_path, nothing) == files["inches"]


def test_the_chooser_keeps_its_order_while_costumes_are_chosen(files: dict[str, Path], tmp_path: Path) -> None:
    """A page tells its kernel a place in the list: were the list sorted anew, two quick choices would miss."""
    remember(tmp_path, files["no-coat"])
    page = CostumePage()
    before = page.chooser.options
    assert before[0][1] == files["no-coat"]
    for name in ("inches", "child"):
        page.chooser.index = next(n for n, (_, path) in enumerate(before) if path == files[name])
        assert page.path == files[name]
        assert page.chooser.options == before
    page.close()


def test_a_card_that_was_pressed_stays_and_is_marked(files: dict[str, Path], tmp_path: Path) -> None:
    gallery = Gallery(costumes_at_hand(tmp_path), files["inches"], lambda at: None)
    gallery.close()
    assert gallery.chose(files["no-coat"])
    assert gallery.view.chosen == str(files["no-coat"])
    assert not gallery.chose(tmp_path / "elsewhere.toml")
    places = [card["place"] for card in gallery.view.cards]
    assert len(set(places)) == len(places)


def test_a_refusal_on_card_and_page_is_told_in_her_unit(
    files: dict[str, Path], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuses(*_: object) -> None:
        raise DraftError(f"the cap is {told(254.0)} too long")

    remember(tmp_path, files["inches"])
    page = CostumePage()
    view = page._view(refuses)
    assert "10 in too long" in view.box.children[0].value
    monkeypatch.setattr(gallery_page, "finished", refuses)
    at = next(one for one in costumes_at_hand(tmp_path) if one.path == files["inches"])
    assert "10 in too long" in card(at)["said"]
    page.close()


def test_a_page_knows_which_garments_it_is_for_and_what_there_is_instead() -> None:
    costume = read_costume(demo_costume())
    assert named.garments_with(costume, ("bust_ease",), ()) == ("coat", "shirt")
    assert named.garments_with(costume, (), ("trouser",)) == ("breeches",)
    assert named.garments_with(costume, ("flare",), ("bodice",)) == ()
    assert named.known_choices(costume, ("shirt",), ("cuff_depth", "flare")) == ("cuff_depth",)
    words = named.nothing_words(costume, (), ("close-torso",))
    assert "has no close torso" in words
    assert "breeches (breeches)" in words
    words = named.nothing_words(costume, (), ("puff-cap", "cuff", "casing"))
    assert "has no puff cap, cuff or casing, so" in words
    words = named.nothing_words(costume, ("hem_bone", "flare"), ("breeches",))  # her breeches have none
    assert "has no breeches with hem bone, so" in words


@pytest.mark.parametrize(("name", "girth"), [("child", "hip of 66 cm"), ("no-coat", "bust of 96 cm")])
def test_the_swatch_test_tells_a_girth_that_the_costume_covers_in_her_unit(
    files: dict[str, Path], name: str, girth: str, tmp_path: Path
) -> None:
    remember(tmp_path, files[name])
    page = CostumePage()
    assert f"For a {girth}, cut" in page.swatch().shown.said.value
    page.close()


def test_the_files_that_a_costume_names_are_found_though_it_has_faults(tmp_path: Path) -> None:
    files = trial_costumes(tmp_path)
    assert named.wearer_file(files["inches"]) == tmp_path / "inches" / "wearer.toml"
    assert set(named.cloth_files(files["inches"])) == {"shell", "knit"}
    bare = tmp_path / "bare.toml"
    bare.write_text('title = "bare"\n')
    with pytest.raises(InputError, match="names no wearer"):
        named.wearer_file(bare)
    with pytest.raises(InputError, match="names no cloth"):
        named.cloth_files(bare)


def test_a_printed_square_is_true_only_once_both_sides_are_measured() -> None:
    square = PrintedSquare(977.9, "in")
    assert "true" not in square.said.value
    square.across.value = "97"
    assert "true" not in square.said.value
    square.up.value = "97"
    assert "97.0 %" in square.said.value
    assert "38 1/2 in would come out as 37 3/8 in" in square.said.value  # 977.9 mm, and 0.97 of it
    square.across.value, square.up.value = "100", "100"
    assert "The print is true" in square.said.value
    square.across.value, square.up.value = "4", "3 7/8"  # the square in inches, on every page beside the other
    assert "stretched up the page only" in square.said.value
    square.across.value, square.up.value = "4", "4"
    assert "The print is true" in square.said.value
    square.across.value, square.up.value = "100 mm", "100 mm"
    assert "The print is true" in square.said.value
    square.up.value = "much"
    assert "much" in square.refused.value


@pytest.mark.parametrize(("name", "unit"), [("inches", " in"), ("no-coat", " cm")])
def test_what_a_page_tells_is_told_in_her_unit(files: dict[str, Path], name: str, unit: str) -> None:
    living = living_costume(files[name])
    said = [sentence for tells in TOLD.values() for sentence in tells(living)]
    assert any(unit in sentence for sentence in said)
    assert not [sentence for sentence in said if "⟨" in sentence]


def test_the_start_page_and_the_worn_page_bring_every_garment(tmp_path: Path, files: dict[str, Path]) -> None:
    """A cape has none of the choices that most garments have: it was missing from the list without a word."""
    path = files["no-coat"]
    more = path.read_text("utf-8") + '[garments.cape]\nblock = "cape"\nfabric = "shell"\n'
    path.write_text(more + '[garments.spats]\nblock = "spats"\nfabric = "shell"\n', "utf-8")
    remember(tmp_path, path)
    page = CostumePage()
    for shown in (page.bench("bust_ease", every=True).shown, page.bench(every=True).shown):
        assert shown.widgets.names == ("shirt", "legs", "cape", "spats")
    bench = page.bench("bust_ease", "hip_ease", "cape_ends", every=True).shown
    for garment, controls in (("shirt", {"bust_ease", "hip_ease"}), ("cape", {"cape_ends"})):
        bench.show_garment(garment)
        assert set(bench.controls) == controls
    bench.show_garment("spats")
    assert {"spat_height", "shoe_ease"} <= set(bench.controls)
    worn = page.worn("bust_ease", every=True).shown
    assert worn.dress.options == ("shirt", "legs", "cape", "spats")
    page.close()


def moved_away(path: Path) -> None:
    path.parent.rename(path.parent.with_name("moved"))


def emptied(path: Path) -> None:
    path.write_bytes(b"")


def a_folder(path: Path) -> None:
    path.unlink()
    path.mkdir()


@pytest.mark.parametrize("spoil", [moved_away, emptied, a_folder])
def test_a_costume_that_is_no_costume_any_more_is_told_and_stands_again_when_it_is_back(
    spoil: Callable[[Path], None], tmp_path: Path, files: dict[str, Path]
) -> None:
    """The page said that this was a fault of the kit."""
    path = files["inches"]
    written = path.read_bytes()
    remember(tmp_path, path)
    page = CostumePage()
    spoil(path)
    page.read_again()
    assert page.chooser.value == page.path
    assert page.refused.value == ""  # what was last read stays, and the bar tells why
    assert "cannot be read as it stands now" in page.living.trouble
    if path.is_dir():
        path.rmdir()
    path.parent.mkdir(exist_ok=True)
    path.write_bytes(written)
    if spoil is moved_away:
        for file in path.parent.with_name("moved").iterdir():
            (path.parent / file.name).write_bytes(file.read_bytes())
    page.read_again()
    assert page.refused.value == page.living.trouble == ""
    page.close()


def test_a_costume_saved_with_two_bytes_a_letter_is_offered(tmp_path: Path, files: dict[str, Path]) -> None:
    path = files["inches"]
    text = path.read_text("utf-8")
    path.write_text(text, "utf-16")
    found = {at.path: at.title for at in costumes_at_hand(tmp_path)}
    assert found[path] in text
