"""The folder of the worn costume: what it holds, its record to the letter, and what it will not overwrite."""

from __future__ import annotations

import json
import math
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from PIL import Image

from drafting.ground.errors import InputError
from drafting.output.folder import swap_in
from drafting.output.worn import not_shown, worn_record, worn_text, write_worn
from drafting.output.worn_plan import worn_findings, worn_shown
from drafting.worn.stands.treated import TreatedHem
from tests.worn.made_up import tube
from tests.worn.standing import RADIUS, worn_post


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    out = tmp_path_factory.mktemp("worn") / "out"
    write_worn(worn_post(treated=True), out)
    return out


def test_the_folder_holds_pictures_page_meshes_and_record(folder: Path) -> None:
    names = {str(path.relative_to(folder)) for path in folder.rglob("*") if path.is_file()}
    pictures = {"front.png", "side.png", "back.png", "above.png", "above.svg", "pulls.png", "stands-off.png"}
    assert names == pictures | {"turn.html", "worn.json", "meshes/shirt.obj"}
    assert not [path for path in folder.parent.iterdir() if path != folder]


def test_the_pictures_are_read_by_another_reader_and_show_something(folder: Path) -> None:
    """Read with Pillow."""
    for name in ("front", "side", "back", "above", "pulls", "stands-off"):
        with Image.open(folder / f"{name}.png") as picture:
            assert picture.width >= 600
            assert len(np.unique(np.asarray(picture.convert("RGB"), np.int64) @ (65536, 256, 1))) > 20
            assert "Software" not in picture.info


KEYS: dict[str, Any] = {
    "girths": {"level": str, "drafted": float, "worn": float, "slack": float},
    "stands_off": {"level": str, "where": str, "mm": float},
    "strain": {"level": str, "mean": float, "p95": float},
}


def test_the_record_has_the_keys_that_others_rely_on(folder: Path) -> None:
    record = json.loads((folder / "worn.json").read_text("utf-8"))
    assert set(record) == {"schema", "form", "garments", "seconds", "files"}
    assert sorted(record["files"]) == sorted(
        path.relative_to(folder).as_posix() for path in folder.rglob("*") if path.is_file()
    )
    assert record["schema"] == 1
    assert record["form"] == [{"name": "waist_girth", "wanted": 942.0, "got": 942.5}]
    (shirt,) = record["garments"]
    assert set(shirt) == {
        "garment",
        "converged",
        "slid",
        "residual",
        "vertices",
        *KEYS,
        "hem",
        "signs",
        "treatments",
        "words",
    }
    assert [row["treatment"] for row in shirt["treatments"]] == ["plain", "boned"]
    assert shirt["converged"] is True
    for name, kinds in KEYS.items():
        assert shirt[name]
        for row in shirt[name]:
            assert {key: type(value) for key, value in row.items()} == kinds
    assert {row["where"] for row in shirt["stands_off"]} == {"front", "side", "back"}
    assert set(shirt["hem"]) == {"width", "back_reach", "range"}
    assert shirt["hem"]["range"][0] <= shirt["hem"]["width"] <= shirt["hem"]["range"][1]


def test_each_treatment_of_a_hem_stands_in_the_record_with_its_numbers() -> None:
    """A tube of a radius of 170 mm on a post of 150: 340 wide, 20 behind."""
    costume = worn_post(treated=True)
    garment = costume.garments[0]
    lost = replace(garment, treated=(*garment.treated, TreatedHem("starched", None, ())))
    (shirt,) = worn_record(replace(costume, garments=(lost,)))["garments"]
    plain, boned, starched = shirt["treatments"]
    assert (plain["treatment"], boned["treatment"], starched["treatment"]) == ("plain", "boned", "starched")
    for one in (plain, boned):
        assert one["converged"] is True
        assert one["width"] == pytest.approx(2 * (RADIUS + 20), abs=1.0)
        assert one["back_reach"] == pytest.approx(20.0, abs=1.0)
        assert one["range"][0] <= one["width"] <= one["range"][1]
    nothing = {"converged": False, "width": None, "back_reach": None, "range": [None, None]}
    assert starched == {"treatment": "starched"} | nothing


def test_a_garment_that_is_not_shown_is_told_under_the_picture_in_the_page_and_in_the_record() -> None:
    """Pictures and record said nothing of it."""
    costume = replace(worn_post(), left_out=(("left-spats", "they go round the ankle alone"),))
    assert not_shown(costume) == ("Not in the picture: left spats. Why is told beside it.",)
    (row,) = worn_record(costume)["not_shown"]
    assert row["garment"] == "left-spats"
    assert row["why"] in worn_text(costume)
    assert row["why"] == "The left spats cannot be shown worn: they go round the ankle alone"
    assert "not_shown" not in worn_record(worn_post())
    assert not not_shown(worn_post())


def test_what_did_not_come_to_rest_has_no_number_and_says_so() -> None:
    costume = worn_post(replace(tube(RADIUS + 20, 800, 1200), settled=False, residual=3.0))
    (shirt,) = worn_record(costume)["garments"]
    assert shirt["converged"] is False
    assert [row["worn"] for row in shirt["girths"]] == [None]
    assert all(row["drafted"] > 0 for row in shirt["girths"])
    assert all(row["mm"] is None for row in shirt["stands_off"])
    assert all(row["mean"] is None and row["p95"] is None for row in shirt["strain"])
    assert shirt["hem"] == {"width": None, "back_reach": None, "range": [None, None]}
    (words,) = shirt["words"]
    assert "shape only" in words
    assert "shape only" in worn_text(costume)


def read_obj(text: str) -> tuple[np.ndarray, dict[str, list[list[int]]]]:
    """A reader of the open format that knows nothing of the kit: vertices, and lines and faces by group."""
    points: list[list[float]] = []
    groups: dict[str, list[list[int]]] = {}
    group = ""
    for row in text.splitlines():
        kind, _, rest = row.partition(" ")
        if kind == "v":
            points.append([float(word) for word in rest.split()[:3]])
        elif kind == "g":
            group = rest.strip()
        elif kind in ("f", "l"):
            groups.setdefault(group, []).append([int(word.split("/")[0]) - 1 for word in rest.split()])
    return np.array(points), groups


def test_the_worn_girth_is_measured_again_from_the_mesh_by_another_reader(folder: Path) -> None:
    points, groups = read_obj((folder / "meshes/shirt.obj").read_text("utf-8"))
    lines = groups["level_waist"]
    again = sum(float(np.linalg.norm(np.diff(points[line], axis=0), axis=1).sum()) for line in lines)
    (row,) = json.loads((folder / "worn.json").read_text("utf-8"))["garments"][0]["girths"]
    assert again == pytest.approx(row["worn"], abs=0.05)
    assert again == pytest.approx(2 * math.pi * (RADIUS + 20), rel=2e-3)
    height = points[lines[0], 2].mean()
    assert cut_round(points, [*groups["body"], *groups["right_body"]], float(height) + 0.1) == pytest.approx(
        again, rel=2e-3
    )


def cut_round(points: np.ndarray, faces: list[list[int]], height: float) -> float:
    """Return the length of the line in which a level plane cuts a mesh."""
    length = 0.0
    for face in faces:
        corners = points[face]
        above = corners[:, 2] > height
        if above.any() and not above.all():
            crossings = [
                a + (height - a[2]) / (b[2] - a[2]) * (b - a)
                for a, b in zip(corners, np.roll(corners, -1, axis=0), strict=True)
                if (a[2] > height) != (b[2] > height)
            ]
            length += float(np.linalg.norm(crossings[0] - crossings[1]))
    return length


def test_words_and_pictures_are_in_the_makers_unit() -> None:
    words = worn_text(worn_post(unit="in"))
    assert "3/4 in in front" in words
    assert " cm" not in words


def test_it_always_says_that_it_is_a_form_and_no_fitting(folder: Path) -> None:
    assert "A form, not a fitting" in (folder / "turn.html").read_text("utf-8")
    assert "A form, not a fitting" in worn_text(worn_post())
    assert "A form, not a fitting" in " ".join(worn_shown(worn_post()).words[0][1])


def test_it_takes_the_place_of_its_like_and_of_nothing_else(folder: Path, tmp_path: Path) -> None:
    made = tmp_path / "made"

    def fill(_: Path) -> Mapping[str, Any]:
        return {"schema": 1, "made_with": {}}

    swap_in(made, fill)
    with pytest.raises(InputError, match="holds what `drafting make` made"):
        write_worn(worn_post(), made)
    with pytest.raises(InputError, match="holds what `drafting worn` made"):
        swap_in(folder, fill)
    mine = tmp_path / "mine"
    mine.mkdir()
    (mine / "diary.txt").write_text("dear diary")
    with pytest.raises(InputError, match="did not make"):
        write_worn(worn_post(), mine)
    assert (mine / "diary.txt").exists()
    write_worn(worn_post(), folder)
    assert not (folder / "above.svg").exists()


def test_the_checks_take_the_verdict_over() -> None:
    tight = worn_post(tube(RADIUS, 800, 1200, stretched=0.04), treated=True)
    found = {finding.check: finding for finding in worn_findings(tight)}
    assert found["worn: pulls"].level == "warning"
    assert "3.9 %" in found["worn: pulls"].message
    treated = [f.message for f in worn_findings(tight) if f.check == "worn: treatment"]
    assert len(treated) == 2  # a tube hangs alike under both: neither stands out farthest
    assert not any("farthest" in message for message in treated)
    assert {f.level for f in worn_findings(worn_post())} == {"note"}
