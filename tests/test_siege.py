"""What hostile or hasty hands do: answered in words, quickly, in little memory, and nothing of theirs is lost."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

import pytest

from drafting.body import read_body
from drafting.commands.cli import REFUSED, main
from drafting.costume.file import read_costume
from drafting.costume.make import finished
from drafting.costume.workroom import read_workroom
from drafting.fabric import read_fabric
from drafting.ground.errors import InputError
from drafting.making.model import Step
from drafting.making.starting import starts
from drafting.notebook.measuring.state import begin_measuring
from tests.hostile import HOSTILE_TABLES, costume_in
from tests.test_hostile_files import changed, pairs, refused


def with_line(path: Path, key: str, value: str) -> Path:
    """Write another value behind a key of a file, or the line below its title."""
    text = path.read_text("utf-8")
    rows = [n for n in pairs(text) if text.split("\n")[n].split("=")[0].strip() == key]
    new = changed(text, rows[0], value) if rows else text.replace("\nunit", f"\n{key} = {value}\nunit", 1)
    path.write_text(new, "utf-8")
    return path


def doubts(path: Path) -> dict[str, tuple[str, str]]:
    """Return level and sentence of what is doubtful of a wearer, by what it is about."""
    return {found.where: (found.level, found.sentence) for found in read_body(path).findings}


def test_a_costume_in_the_folder_it_is_to_be_written_to_is_refused_and_stays(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "out"
    files = costume_in(out)
    before = files["costume"].read_bytes()
    assert main(["make", str(files["costume"]), "--out", str(out)]) == REFUSED
    said = capsys.readouterr().err
    assert "holds kite.toml, which is read for it" in said
    assert "nothing was touched" in said
    assert files["costume"].read_bytes() == before


@pytest.mark.parametrize(
    ("key", "value", "level"),
    [
        ("inside_leg_length", "140", "warning"),
        ("shoulder_length", "60", "warning"),
        ("heel", "90", "warning"),
        ("measured_on", "2099-01-01", "warning"),
        ("measured_on", "1820-01-01", "warning"),
        ("measured_on", '"yesterday-ish"', "note"),
    ],
)
def test_nonsense_of_a_wearer_is_doubted(tmp_path: Path, key: str, value: str, level: str) -> None:
    path = costume_in(tmp_path)["wearer"]
    assert key not in doubts(path)
    found, said = doubts(with_line(path, key, value))[key]
    assert found == level
    assert said.endswith("?") or "write it like" in said


@pytest.mark.parametrize(("weight", "doubted"), [('"1 kg"', True), ("999", True), ("999000", True), ("52", False)])
def test_a_weight_that_nobody_has_is_doubted(tmp_path: Path, weight: str, doubted: bool) -> None:
    path = costume_in(tmp_path)["wearer"]
    path.write_text(path.read_text("utf-8") + f"weight = {weight}\n", "utf-8")
    assert ("weight" in doubts(path)) == doubted


@pytest.mark.parametrize(("stretched", "said"), [(24.9, ""), (25.1, "few cloths do"), (40, "few cloths do")])
def test_a_stretch_over_150_per_cent_is_doubted(tmp_path: Path, stretched: float, said: str) -> None:
    path = with_line(costume_in(tmp_path)["cloth"], "stretch_across", f"{{rest = 10, stretched = {stretched}}}")
    found = [
        finding.sentence for finding in read_fabric(path).findings if "is said to stretch" in finding.sentence
    ]
    assert len(found) == bool(said)
    assert said in " ".join(found)


@pytest.mark.parametrize(
    "value",
    ["{rest = 10, stretched = 40.1}", "{rest = 10, stretched = 100}", '"301 %"', '"900 %"', "900", '"160 %"'],
)
def test_a_stretch_over_300_per_cent_is_refused_by_either_entry_and_a_large_percentage_is_asked_about(
    tmp_path: Path, value: str
) -> None:
    path = with_line(costume_in(tmp_path)["cloth"], "stretch_across", value)
    with pytest.raises(InputError, match=r"no cloth gives more than 4 times|could mean"):
        read_fabric(path)


@pytest.mark.parametrize(("written", "dots"), [("1.0", 1), ("2", 2), ("3.0", 3)])
def test_an_iron_setting_may_be_written_with_a_point(tmp_path: Path, written: str, dots: int) -> None:
    path = with_line(costume_in(tmp_path)["workroom"], "iron_dots", written)
    assert read_workroom(path).iron_dots == dots


@pytest.mark.parametrize("written", ["1.5", "0", "4", "true", '"1"', "nan", "1e400"])
def test_an_iron_setting_that_no_iron_has_is_refused(tmp_path: Path, written: str) -> None:
    path = with_line(costume_in(tmp_path)["workroom"], "iron_dots", written)
    with pytest.raises(InputError, match="no iron setting"):
        read_workroom(path)


@pytest.mark.parametrize("key", ["height", "weight", "hip_girth"])
def test_the_measuring_page_opens_a_file_with_a_number_of_6000_digits(tmp_path: Path, key: str) -> None:
    path = costume_in(tmp_path)["wearer"]
    text = "\n".join(row for row in path.read_text("utf-8").split("\n") if not row.startswith(key))
    path.write_text(f"{text}{key} = 0x{'f' * 4_900}\n", "utf-8")
    taking = begin_measuring(path)
    assert taking.faults
    assert all(str(fault).isprintable() for fault in taking.faults)


def test_a_day_at_the_edge_of_the_calendar_breaks_no_plan() -> None:
    cut = Step(key="a", stage="cut", verb="cut", garment="", say=(), uses=(), makes="", minutes=600.0, wait=48.0)
    steps = [cut]
    (first,) = starts(steps, date.min)
    assert first.on is None
    (last,) = starts(steps, date.max)
    assert last.on is not None
    assert last.on < date.max


def test_a_day_that_is_past_or_before_the_measures_is_doubted(tmp_path: Path) -> None:
    costume = read_costume(costume_in(tmp_path)["costume"])
    costume = replace(costume, garments=costume.garments[:1])
    today = date.today()
    for day, doubted in {today - timedelta(1): True, today: False, date.min: True, date.max: False}.items():
        taken = replace(costume.wearer, measured_on="")
        found = finished(replace(costume, wearer=taken, worn_on=day)).findings
        assert ("worn_on" in [finding.where for finding in found]) == doubted, day
    later = replace(costume.wearer, measured_on=str(today + timedelta(9)))
    found = finished(replace(costume, wearer=later, worn_on=today)).findings
    assert ["before the measures" in f.sentence for f in found if f.where == "worn_on"] == [True]


@pytest.mark.parametrize("piece", ["top.nosuch", "nosuch.front", "top", "top.", ".front", "top.front "])
def test_a_piece_to_print_that_there_is_not_is_refused(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], piece: str
) -> None:
    files = costume_in(tmp_path)
    text = files["costume"].read_text("utf-8")
    files["costume"].write_text(f'{text}[print]\npieces = ["{piece}"]\n', "utf-8")
    (said,) = refused(files, tmp_path / "out", capsys)
    assert f"kite.toml:{text.count(chr(10)) + 2}: print.pieces: " in said
    assert "no piece" in said


def table(name: str, count: int) -> str:
    fault = "[[lays.jersey.faults]]\nalong = 120\nacross = 30\nlength = 6\nwidth = 4\n"
    trim = '[[garments.top.trims]]\nedge = "front.neck"\nkind = "braid"\nwidth = "12 mm"\ncut = "bought"\n'
    return {
        "faults": fault * count,
        "faults in a row": "[lays.jersey]\nfaults = ["
        + "{along = 1, across = 3, length = 6, width = 4},\n" * count
        + "]\n",
        "trims": trim * count,
        "garments": "".join(f'[garments.g{n}]\nblock = "shirt"\nfabric = "jersey"\n' for n in range(count)),
        "cloths": "".join(f'[fabrics]\nc{n} = "../fabrics/stretch-jersey.toml"\n' for n in range(1))
        + "".join(f'c{n} = "../fabrics/stretch-jersey.toml"\n' for n in range(1, count)),
    }[name]


@pytest.mark.parametrize(
    ("name", "count"),
    [("faults", 2000), ("faults in a row", 2000), ("trims", 1500), ("garments", 60), ("cloths", 3000)],
)
def test_more_than_anybody_makes_is_refused_with_how_much_is_taken(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], name: str, count: int
) -> None:
    files = costume_in(tmp_path)
    text = files["costume"].read_text("utf-8")
    if name == "cloths":
        text = text.replace("[fabrics]\n", "", 1)
        text = text.replace('jersey = "../fabrics/stretch-jersey.toml"\n', "")
    files["costume"].write_text(text + table(name, count), "utf-8")
    said = refused(files, tmp_path / "out", capsys)
    most = {"garments": 20, "cloths": 40}.get(name, 100)
    assert any(f"{most} are taken at most" in row for row in said), said


LIMITED = """
import json, resource, sys
from drafting.commands.cli import main
resource.setrlimit(resource.RLIMIT_CPU, (30, 30))
before = resource.getrusage(resource.RUSAGE_SELF).ru_utime
codes = [main(["body", path]) for path in sys.argv[1:]]
used = resource.getrusage(resource.RUSAGE_SELF)
status = open("/proc/self/status").read()  # ru_maxrss holds what the tests' own process had taken before
peak = int(status.split("VmHWM:")[1].split()[0])
print(json.dumps([codes, peak // 1024, used.ru_utime - before]))
"""


def test_no_table_pipe_or_device_takes_long_or_much_memory(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe.toml")
    os.mkfifo(tmp_path / "pipe.csv")
    (tmp_path / "zero.toml").symlink_to("/dev/zero")
    (tmp_path / "zero.csv").symlink_to("/dev/zero")
    for number, raw in enumerate(HOSTILE_TABLES.values()):
        (tmp_path / f"table-{number}.csv").write_bytes(raw)
    paths = sorted(str(path) for path in tmp_path.iterdir())
    ran = subprocess.run([sys.executable, "-c", LIMITED, *paths], capture_output=True, text=True, timeout=250)
    assert ran.returncode == 0, ran.stderr[-2000:]
    codes, megabytes, seconds = json.loads(ran.stdout.splitlines()[-1])
    assert codes == [REFUSED] * len(paths)
    assert megabytes < 500
    assert seconds < 5 * len(paths)
