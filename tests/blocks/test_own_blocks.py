"""A block of a maker's own, from one file to a cut, planned garment: nothing of the kit is touched.

The whole way by the commands; `measurements/blocks/pelerine.py` is the example that the kit ships.
"""

from __future__ import annotations

import json
import math
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from svgelements import SVG  # a general reader of SVG
from svgelements import Path as SvgPath

from drafting.blocks import all_blocks, names, use_blocks
from drafting.commands.cli import main
from drafting.commands.lab import hand_on_blocks
from drafting.costume.file import read_costume
from drafting.costume.garment import draft_garment
from drafting.ground.shipped import OWN_BLOCKS
from drafting.notebook import Bench
from tests.blocks.figures import chart_woman
from tests.blocks.own import EXAMPLE, ROOT, SKIRT

COSTUME = f"""
title = "Own blocks, invented"
wearer = "{ROOT}/measurements/bodies/lamplighter.toml"
unit = "cm"

[fabrics]
shell = "{ROOT}/measurements/fabrics/velveteen.toml"

[garments.pelerine]
block = "pelerine"
fabric = "shell"

[garments.pelerine.choices]
cape_length = 45

[garments.skirt]
block = "wrap-skirt"
fabric = "shell"
"""


@pytest.fixture
def folder(own: Path) -> Path:
    """A folder with the shipped example, as it stands, and an invented skirt."""
    (own / "pelerine.py").write_text((EXAMPLE / "pelerine.py").read_text("utf-8"), "utf-8")
    (own / "wrap_skirt.py").write_text(SKIRT, "utf-8")
    return own


@pytest.fixture
def costume(tmp_path: Path) -> Path:
    path = tmp_path / "costume.toml"
    path.write_text(COSTUME, "utf-8")
    return path


def test_a_file_in_a_folder_is_drafted_checked_laid_printed_and_planned(
    folder: Path, costume: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "out"
    assert main(["make", str(costume), "--blocks", str(folder), "--out", str(out)]) == 0
    assert "error" not in capsys.readouterr().out
    report: dict[str, Any] = json.loads((out / "report.json").read_text("utf-8"))
    assert report["choices"]["pelerine"]["cape_length"] == {"value": 450.0, "source": "file"}
    assert report["choices"]["skirt"]["skirt_ease"] == {"value": 60.0, "source": "default"}
    assert {c["level"] for c in report["checks"]} <= {"ok", "note", "warning"}
    assert {g["garment"]: g["level"] for g in report["girths"]} == {"pelerine": "bust", "skirt": "hip"}
    laid = {(p["garment"], p["piece"]) for lay in report["layout"] for p in lay["placed"]}
    assert laid == {("pelerine", "pelerine"), ("pelerine", "pelerine-stand"), ("skirt", "skirt")}
    done = " ".join(step["do"] for step in report["steps"])
    assert "Gather" in done
    assert "Sew on the hook and eye" in done
    used = [step["seams"] for step in report["steps"] if step["seams"]]
    assert sorted(seam for seams in used for seam in seams) == ["dart", "neck"]
    for garment in ("pelerine", "skirt"):
        assert (out / "sheets" / f"{garment}-a4-or-letter.pdf").read_bytes().startswith(b"%PDF")
        assert (out / "exchange" / f"{garment}.dxf").exists()
    assert "hook and eye" in (out / "plan.html").read_text("utf-8")
    assert "hook and eye" in (out / "shopping.csv").read_text("utf-8")


def test_the_example_has_the_girth_asked_for_on_the_paper(folder: Path, costume: Path, tmp_path: Path) -> None:
    """Half a ring: the level line is an arc; twice its length is body + ease (lamplighter's bust)."""
    main(["make", str(costume), "--blocks", str(folder), "--out", str(tmp_path / "out")])
    drawing = SVG.parse(tmp_path / "out" / "pieces" / "pelerine.pelerine.svg", ppi=25.4)
    (level,) = [e for e in drawing.elements() if e.id == "pelerine.level.bust"]
    body = json.loads((tmp_path / "out" / "report.json").read_text("utf-8"))["body"]
    assert 2 * SvgPath(level).length(error=1e-4) == pytest.approx(body["bust_girth"]["mm"] + 700.0, abs=1.0)


def test_blocks_lists_its_choices_and_where_it_is_written(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["blocks", "pelerine", "--blocks", str(folder)]) == 0
    said = " ".join(capsys.readouterr().out.split())
    assert "pelerine: half a ring of cloth" in said
    assert main(["blocks", "all", "--blocks", str(folder)]) == 0
    said += " ".join(capsys.readouterr().out.split())
    assert f"written in {folder / 'pelerine.py'}" in said
    assert "skirt_length = 60 cm (30..120 cm) waist to hem." in said
    assert main(["blocks"]) == 0
    assert "wrap-skirt" not in capsys.readouterr().out


def test_a_bench_has_a_slider_for_each_of_its_choices(folder: Path, costume: Path) -> None:
    use_blocks(folder)
    bench = Bench(read_costume(costume), "pelerine")
    own = {choice.name for choice in all_blocks()["pelerine"].choices}
    assert own <= set(bench.controls)
    bench.ask("cape_ease", 900.0)
    (girth,) = bench.made.garments[0].draft.girths
    assert girth.settled_ease == 900.0
    bench.ask("cape_ease", 2500.0)  # no ring any more: the last picture stays
    assert "no ring" in bench.knobs.states["cape_ease"]["refusal"]
    assert bench.made.garments[0].draft.girths == (girth,)


def test_a_file_changed_and_read_anew_is_drafted_anew(folder: Path) -> None:
    """What is remembered of a part is told apart by the code that drew it."""
    use_blocks(folder)
    before = draft_garment(chart_woman(), None, "wrap-skirt").draft["skirt"].area
    (folder / "wrap_skirt.py").write_text(SKIRT.replace("-1j * choices", "-2j * choices"), "utf-8")
    use_blocks(folder)
    after = draft_garment(chart_woman(), None, "wrap-skirt").draft["skirt"].area
    assert after > 1.8 * before


def test_the_lab_hands_the_folder_on_to_its_notebooks_and_to_nothing_else(
    folder: Path, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setenv(OWN_BLOCKS, "/nowhere")
    hand_on_blocks(folder)
    code = "import drafting.notebook; from drafting.blocks import names; print('pelerine' in names())"
    kernel = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, cwd=ROOT)
    assert kernel.stdout == "True\n", kernel.stderr
    assert main(["blocks"]) == 0  # a command takes --blocks alone
    assert "pelerine:" not in capfd.readouterr().out
    hand_on_blocks(None)
    assert OWN_BLOCKS not in os.environ


@pytest.mark.parametrize(
    "asked",
    [
        'block = "pelerine"',
        'block = "blocks/pelerine.py"',
        'block = "blocks.pelerine"',
        'block = "shirt"\nblocks = "blocks"',
        'block = "shirt"\nimport = "blocks/pelerine.py"',
    ],
)
def test_a_costume_file_never_loads_code(asked: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "blocks").mkdir()
    for place in (tmp_path / "blocks" / "pelerine.py", tmp_path / "pelerine.py"):
        place.write_text(f"open({str(tmp_path / 'ran')!r}, 'w')\n", "utf-8")
    (tmp_path / "costume.toml").write_text(
        f'wearer = "{ROOT}/measurements/bodies/lamplighter.toml"\nblocks = "blocks"\n[fabrics]\n'
        f'shell = "{ROOT}/measurements/fabrics/velveteen.toml"\n[garments.pelerine]\n{asked}\n',
        "utf-8",
    )
    asked_for = ["make", str(tmp_path / "costume.toml"), "--out", str(tmp_path / "out")]
    assert main(asked_for) == 2
    assert "costume.toml:2: blocks" in capsys.readouterr().err
    assert not (tmp_path / "ran").exists()
    assert not (tmp_path / "out").exists()
    assert "pelerine" not in names()


def test_an_unknown_block_is_refused_with_the_way_to_ones_own(
    costume: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["make", str(costume), "--out", str(tmp_path / "out")]) == 2
    said = capsys.readouterr().err
    assert "there is no block 'wrap-skirt'" in said
    assert "--blocks DIR" in said


def test_the_sweep_of_the_example_is_that_of_a_ring(folder: Path) -> None:
    """A sector of angle s grows by s x depth: hem - neck = s x length, by plane geometry."""
    use_blocks(folder)
    draft = draft_garment(chart_woman(), None, "pelerine").draft
    sweep = math.radians(draft.facts["cape_sweep"]) / 2
    hem, neck = draft["pelerine"]["hem"].length, draft["pelerine"]["neck"].length
    assert hem - neck == pytest.approx(sweep * draft["pelerine"]["centre"].length, abs=0.01)
