"""From a costume file to its lays: one a material, wishes read, what sticks out is an error."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from drafting.costume.file import read_costume
from drafting.costume.lays import laid_out, materials
from drafting.costume.make import Made, make
from drafting.ground.errors import InputError
from drafting.ground.shipped import demo_costume, shipped
from drafting.making.shopping import shopping
from drafting.output.report import report
from drafting.output.write import write_output
from tests.layout.figures import breaks

FEW = 30


def costume(tmp_path: Path, more: str = "", cloth: str = "width = 148\nselvedge = 1") -> Path:
    files = shipped("measurements").as_posix()
    (tmp_path / "cloth.toml").write_text(f'title = "Cloth"\nunit = "cm"\n{cloth}\n')
    path = tmp_path / "costume.toml"
    path.write_text(
        f'title = "Test"\nunit = "cm"\nwearer = "{files}/bodies/lamplighter.toml"\n'
        '[fabrics]\nshell = "cloth.toml"\n[garments.shirt]\nblock = "shirt"\nfabric = "shell"\n'
        '[garments.vest]\nblock = "bodice"\nfabric = "shell"\n' + more
    )
    return path


def made_of(path: Path) -> Made:
    return laid_out(make(read_costume(path)), count=FEW)


@pytest.fixture(scope="module")
def demo() -> Made:
    return laid_out(make(read_costume(demo_costume())), count=FEW)


pytestmark = pytest.mark.slow


def test_every_piece_of_the_demo_is_laid_on_its_own_cloth(demo: Made) -> None:
    roles = {cut.piece.material or g.fabric for g in demo.garments for cut in g.pattern.pieces}
    assert {lay.role for lay in demo.lays} == roles
    wanted = {cloth.role: parts for cloth, parts in materials(demo)}
    for lay in demo.lays:
        assert breaks(lay, wanted[lay.role]) == []
        assert lay.left_out == ()


def test_the_record_and_the_folder_hold_the_lays(demo: Made, tmp_path: Path) -> None:
    write_output(demo, tmp_path / "out")
    rows = json.loads((tmp_path / "out" / "report.json").read_text("utf-8"))["layout"]
    assert rows == json.loads(json.dumps(report(demo)["layout"]))
    pieces = {(g.name, c.piece.name): c for g in demo.garments for c in g.pattern.pieces}
    for row in rows:
        assert (tmp_path / "out" / "layout" / f"{row['fabric']}.svg").stat().st_size > 1000
        assert (tmp_path / "out" / "layout" / f"{row['fabric']}.png").stat().st_size > 1000
        # Contract: areas of the pieces over usable width and length; half pieces are drawn half.
        area = sum(
            pieces[p["garment"], p["piece"]].cut.area
            * (2 if p["hand"] == "both" or p["on_fold"] or p["opened"] else 1)
            for p in row["placed"]
        )
        assert row["lower_bound"] == pytest.approx(area / row["cut_for_width"], rel=1e-3)
        assert row["utilisation"] == pytest.approx(row["lower_bound"] / row["length"])
        assert row["buy_length"] % 100 == 0
        assert row["buy_length"] >= row["length"]


def test_the_same_costume_gives_the_same_lays(demo: Made) -> None:
    again = laid_out(make(read_costume(demo_costume())), count=FEW)
    assert report(again)["layout"] == report(demo)["layout"]


def test_two_garments_of_one_cloth_share_a_lay_and_each_keeps_its_pieces(tmp_path: Path) -> None:
    made = made_of(costume(tmp_path))
    (shell,) = (lay for lay in made.lays if lay.role == "shell")
    assert {o.part.garment for o in shell.outlines} == {"shirt", "vest"}


def test_a_material_without_a_cloth_is_laid_on_an_assumed_width_and_that_is_said(tmp_path: Path) -> None:
    made = made_of(costume(tmp_path))
    stiff = [lay for lay in made.lays if lay.role == "interfacing"]
    for lay in stiff:
        assert lay.cloth.width == 900
    said = [f for f in made.findings if f.check == "cloth width"]
    assert {f.where for f in said} == {lay.role for lay in stiff}


def test_a_cloth_too_narrow_is_an_error_of_the_costume(tmp_path: Path) -> None:
    made = made_of(costume(tmp_path, cloth="usable_width = 30"))
    errors = [f for f in made.findings if f.level == "error" and f.check == "fits the cloth"]
    assert errors
    (shell,) = (lay for lay in made.lays if lay.role == "shell")
    assert {f.where for f in errors} == {o.part.name for o in shell.left_out}


def test_shrinkage_is_divided_out_of_what_is_bought_unless_pieces_are_cut_unwashed(tmp_path: Path) -> None:
    cloth = 'usable_width = 146\nshrinkage_along = "10 %"'
    washed = made_of(costume(tmp_path, cloth=cloth)).lays[0]
    assert washed.cloth.shrinkage[0] == pytest.approx(0.1)
    both = (
        costume(tmp_path, cloth=cloth)
        .read_text()
        .replace('fabric = "shell"\n', 'fabric = "shell"\nchoices = {cut_unwashed = true}\n')
    )
    (tmp_path / "costume.toml").write_text(both)
    unwashed = made_of(tmp_path / "costume.toml").lays[0]
    assert unwashed.cloth.shrinkage == (0.0, 0.0)
    assert unwashed.area > washed.area


def test_wishes_of_a_lay_are_read_with_their_units(tmp_path: Path) -> None:
    asked = (
        '[lays.shell]\nlay = "open"\ngap = "8 mm"\nspare = 12\n'
        'faults = [{along = 20, across = 30, length = "60 mm", width = 4}]\n'
    )
    (shell, *_) = made_of(costume(tmp_path, asked)).lays
    assert (shell.lay, shell.cloth.wishes.gap, shell.cloth.wishes.spare) == ("open", 8, 120)
    assert shell.cloth.faults == ((200.0, 300.0, 260.0, 340.0),)
    assert shell.job.strip.gap == 8


def test_wrong_wishes_are_all_named_at_once_with_file_and_line(tmp_path: Path) -> None:
    asked = '[lays.shell]\nlay = "rolled"\ngap = -3\nfaults = [{along = 3}]\n[lays.shel]\ngap = 4\n'
    path = costume(tmp_path, asked)
    with pytest.raises(InputError) as refused:
        read_costume(path)
    said = str(refused.value)
    for field in ("lays.shell.lay", "lays.shell.gap", "lays.shel: "):
        assert field in said
    assert "did you mean shell?" in said
    lines = path.read_text().splitlines()
    line = lines.index('lay = "rolled"') + 1
    assert f"costume.toml:{line}: lays.shell.lay" in said


@pytest.mark.parametrize(("unit", "step"), [("cm", 100.0), ("in", 914.4 / 8)])
def test_cloth_is_bought_by_the_step_of_the_makers_shop_and_costs_what_is_bought(
    tmp_path: Path, unit: str, step: float
) -> None:
    """Common practice: by 10 cm, or by an eighth of a yard. A list in yards was rounded up twice, and its cost was
    that of the metres before the second time."""
    priced = 'width = 148\nselvedge = 1\nprice = "20.00 per yd"'
    path = costume(tmp_path, cloth=priced)
    path.write_text(
        path.read_text("utf-8").replace('title = "Test"\nunit = "cm"', f'title = "Test"\nunit = "{unit}"')
    )
    whole = made_of(path)
    rows = {row.what: row for row in shopping(whole, {})}
    for lay in whole.lays:
        over = lay.buy_length - lay.cloth_length - lay.cloth.wishes.spare
        assert 0.0 <= over < step
        assert lay.buy_length / step == pytest.approx(round(lay.buy_length / step))
    assert rows["shell"].cost == pytest.approx(20.0 * rows["shell"].amount / 914.4, abs=0.005)
