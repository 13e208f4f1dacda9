"""The folder that a costume is written to, read back by other people's tools."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from svgelements import SVG
from svgelements import Path as SvgPath

from drafting.costume.file import read_costume
from drafting.costume.make import Made, make
from drafting.ground.shipped import demo_costume
from drafting.output.report import report
from drafting.output.write import write_output


@pytest.fixture(scope="module")
def demo() -> Made:
    return make(read_costume(demo_costume()))


@pytest.fixture(scope="module")
def record(demo: Made) -> dict[str, Any]:
    return report(demo)


@pytest.fixture(scope="module")
def folder(demo: Made, tmp_path_factory: pytest.TempPathFactory) -> Path:
    out = tmp_path_factory.mktemp("demo") / "out"
    write_output(demo, out)
    return out


def test_the_folder_holds_the_record_the_overview_and_one_file_a_piece(folder: Path) -> None:
    written = json.loads((folder / "report.json").read_text("utf-8"))
    files = {path.relative_to(folder).as_posix() for path in folder.rglob("*") if path.is_file()}
    pieces = {p["file"] for p in written["pieces"]}
    assert {name for name in files if name.startswith("pieces/")} == pieces
    garments = {p["garment"] for p in written["pieces"]}
    assert {f"sheets/{g}-a4-or-letter.pdf" for g in garments} <= files
    assert {f"exchange/{g}.dxf" for g in garments} <= files
    rest = {name for name in files if "/" not in name}
    assert rest == {"report.json", "overview.png"}


def test_the_buttonholes_told_are_those_drawn_in_the_files(folder: Path, record: dict[str, Any]) -> None:
    """Counted and measured in the SVG by another library; a piece cut in a pair has each mark twice unless a
    hand is named."""
    told = {(b["garment"], b["piece"]): b for b in record["buttonholes"]}
    assert len(told) == len(record["buttonholes"]) >= 4
    drawn: dict[tuple[str, str], list[SvgPath]] = {}
    for piece in record["pieces"]:
        for shape in SVG.parse(folder / piece["file"], ppi=25.4).elements():
            if isinstance(shape, SvgPath) and ".placement.buttonhole" in str(shape.id):
                drawn.setdefault((piece["garment"], piece["piece"]), []).append(shape)
    pairs = {(p["garment"], p["piece"]): p["mirrored_pair"] for p in record["pieces"]}
    assert drawn.keys() == told.keys()
    for place, marks in drawn.items():
        times = 2 if pairs[place] and not told[place]["hand"] else 1
        assert told[place]["count"] == times * len(marks), place
        assert [mark.length() for mark in marks] == pytest.approx([told[place]["length"]] * len(marks), abs=0.06)


def test_the_same_costume_gives_the_same_bytes(folder: Path, tmp_path: Path) -> None:
    again = tmp_path / "again"
    write_output(make(read_costume(demo_costume())), again)
    for path in sorted(folder.rglob("*")):
        other = again / path.relative_to(folder)
        if path.name == "report.json":
            one, two = (json.loads(p.read_text("utf-8")) for p in (path, other))
            assert one.pop("timings").keys() == two.pop("timings").keys()
            assert json.dumps(one) == json.dumps(two)
        elif path.is_file():
            assert path.read_bytes() == other.read_bytes(), path.name


def test_i14_the_written_outline_has_the_drafted_area_and_lengths(folder: Path, record: dict[str, Any]) -> None:
    # Read back by a general SVG library; within 0.05 cm2 = 5 mm2.
    for piece in record["pieces"]:
        lines = {
            e.id: e for e in SVG.parse(str(folder / piece["file"]), ppi=25.4).elements() if isinstance(e, SvgPath)
        }
        for edge in piece["edges"]:
            found = _path(lines, f"{piece['piece']}.{edge['edge']}").length(error=1e-6)
            assert found == pytest.approx(edge["length"], abs=0.02), (piece["piece"], edge["edge"])
        cut = next(p for p in lines.values() if "cut-line" in p.values.get("class", ""))
        assert _area(cut) == pytest.approx(piece["cut_area"], abs=5)


def _path(lines: dict[str, SvgPath], name: str) -> SvgPath:
    return next(path for key, path in lines.items() if key and key.endswith(name))


def _area(path: SvgPath) -> float:
    """Return the area inside a closed path, by the shoelace rule on a thousand points a segment."""
    share = np.arange(1000) / 1000
    drawn = [s for s in path.segments() if type(s).__name__ in ("Line", "Close", "CubicBezier")]
    x, y = np.concatenate([segment.npoint(share) for segment in drawn]).T
    return abs(float(np.sum(x * np.roll(y, -1) - np.roll(x, -1) * y))) / 2
