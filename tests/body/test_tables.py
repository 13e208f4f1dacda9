"""Tables of wearers as spreadsheets save them: headings in a maker's words, units, encodings, whole files."""

from __future__ import annotations

from pathlib import Path

import pytest

from drafting.body.headings import column_heading
from drafting.body.reader import read_bodies, read_body, read_wearers
from drafting.commands.cli import main
from drafting.ground.errors import InputError

HEADINGS = {
    "Bust": ("bust", ""),
    "bust_girth": ("bust_girth", ""),
    "Bust Circumference [cm]": ("bust_girth", "cm"),
    "Waist (in)": ("waist", "in"),
    "waist in inches": ("waist", "inches"),
    "Hips, cm": ("hip_girth", "cm"),
    "Nape to waist": ("nape_to_waist", ""),
    "Shoulder L": ("shoulder.left", ""),
    "Left shoulder (cm)": ("shoulder.left", "cm"),
    "shoulder_length.right": ("shoulder_length.right", ""),
    "Inseam": ("inside_leg_length", ""),
    "Weight (kg)": ("weight", "kg"),
    "Layers.bust_girth": ("layers.bust_girth", ""),
    "Measured on": ("measured_on", ""),
    "Played by": ("wearer", ""),
    "Character": ("role", ""),
    "Understudy for": ("understudies", ""),
    "Notes": ("", ""),
    "#Phone": ("", ""),
}


@pytest.mark.parametrize("words", HEADINGS)
def test_a_heading_in_a_makers_words_is_the_measure_she_means(words: str) -> None:
    found = column_heading(words)
    assert (found.name, found.unit) == HEADINGS[words]
    assert found.known


ROWS = [
    ["Spring show, invented"],
    ["Name", "Role", "Height", "Bust", "Waist (in)", "Hips", "Shoulder L", "Shoulder R", "#Phone"],
    ["", "", "cm", "cm", "", "cm", "cm", "cm", ""],
    ["Ann", "Fool", "168", "93,5", "30 1/2", "99", "12,4", "12", "none"],
    [],
    ["Zoë", "", "181", "102", "34", "103", "13,6", "13,6", ""],
]
WANTED = {"Ann": (1680, 935, 774.7, 990, 124, 120), "Zoë": (1810, 1020, 863.6, 1030, 136, 136)}


def measured(path: Path) -> dict[str, tuple[float, ...]]:
    names = ("height", "bust_girth", "waist_girth", "hip_girth")
    return {
        one.title: (*(one[n] for n in names), *(one.hand("shoulder_length", side) for side in ("left", "right")))
        for one in read_bodies(path)
    }


def the_same(found: dict[str, tuple[float, ...]]) -> bool:
    return found == {name: pytest.approx(row) for name, row in WANTED.items()}


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
@pytest.mark.parametrize("ends", ["\n", "\r\n", "\r"])
@pytest.mark.parametrize("mark", [";", "\t"])
def test_a_table_is_read_in_every_way_it_is_saved(tmp_path: Path, encoding: str, ends: str, mark: str) -> None:
    file = tmp_path / "cast.csv"
    file.write_bytes(ends.join(mark.join(row) for row in ROWS).encode(encoding))
    assert the_same(measured(file))


def test_with_commas_between_the_cells_a_decimal_comma_stands_in_quotes(tmp_path: Path) -> None:
    file = tmp_path / "cast.csv"
    rows = [",".join(f'"{cell}"' if "," in cell else cell for cell in row) for row in ROWS]
    file.write_text("\n".join(rows), "utf-8")
    assert the_same(measured(file))


def test_the_whole_file_of_a_spreadsheet_is_read_as_its_csv_is(tmp_path: Path) -> None:
    pytest.importorskip("python_calamine", reason="the extra [cast] is not installed")
    openpyxl = pytest.importorskip("openpyxl")  # another library writes what we read
    book = openpyxl.Workbook()
    second = book.create_sheet("Cast")
    for row in ROWS:  # the first sheet stays empty; numbers are typed as numbers
        plain = [float(cell.replace(",", ".")) if cell.replace(",", "").isdecimal() else cell for cell in row]
        second.append(plain)
    book.save(tmp_path / "cast.xlsx")
    assert the_same(measured(tmp_path / "cast.xlsx"))
    assert read_body(f"{tmp_path / 'cast.xlsx'}#Zoë")["height"] == 1810
    (tmp_path / "cast.ods").write_bytes(b"PK no spreadsheet")
    with pytest.raises(InputError, match=r"cast\.ods.*is no spreadsheet that can be read"):
        read_bodies(tmp_path / "cast.ods")


def test_what_is_wrong_is_told_by_row_and_a_heading_once(tmp_path: Path) -> None:
    file = tmp_path / "cast.csv"
    file.write_text("Name;Height (cm);Waist (cm);Wiast\nAnn;168;74;1\nBo;181;88;2\n", "utf-8")
    with pytest.raises(InputError) as refused:
        read_bodies(file)
    (fault,) = refused.value.faults
    assert (fault.field, fault.line) == ("Wiast", 1)
    assert "did you mean waist" in fault.right
    assert "begin the heading with #" in fault.right
    file.write_text("Name;Bust;bust_girth\nAnn;92;93\n", "utf-8")
    with pytest.raises(InputError, match="heads two columns: Bust says the same"):
        read_bodies(file)


def test_a_bare_number_takes_the_unit_of_whoever_names_the_table(tmp_path: Path) -> None:
    file = tmp_path / "cast.csv"
    file.write_text("Name,Height,Bust,Waist,Hips\nAnn,66,37,30,39\n", "utf-8")
    (ann,) = read_wearers(file, "in")
    assert ann.body is not None
    assert ann.body["height"] == pytest.approx(66 * 25.4)
    (ann,) = read_wearers(file)
    assert {fault.line for fault in ann.faults} == {2}
    assert "has no unit" in ann.faults[0].what


def test_one_wearer_of_a_table_is_told_by_name(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = tmp_path / "cast.csv"
    file.write_text("\n".join(";".join(row) for row in ROWS), "utf-8")
    assert main(["body", f"{file}#ann"]) == 0
    said = capsys.readouterr().out
    assert said.startswith("Ann")
    assert "Zoë" not in said
    assert main(["body", f"{file}#Anna"]) == 2
    assert "holds no wearer called Anna; did you mean Ann?" in capsys.readouterr().err


def test_a_file_that_says_no_unit_is_asked_once(tmp_path: Path) -> None:
    rows = {"height": 168, "bust_girth": 92, "waist_girth": 74, "hip_girth": 98, "arm_length": 58}
    file = tmp_path / "ann.csv"
    file.write_text("name,value\n" + "\n".join(f"{name},{value}" for name, value in rows.items()), "utf-8")
    with pytest.raises(InputError) as refused:
        read_bodies(file)
    (fault,) = refused.value.faults
    assert (fault.field, fault.line) == ("height", 2)
    assert "168 in (426.7 cm) or 168 cm, and 4 more lengths have none" in fault.what
    assert "say it once" in fault.right
    file.write_text("name,value\nunit,cm\n" + "\n".join(f"{n},{value}" for n, value in rows.items()), "utf-8")
    (ann,) = read_bodies(file)
    assert ann["height"] == 1680.0


def test_a_table_of_wearers_without_units_is_asked_once_for_all_of_them(tmp_path: Path) -> None:
    file = tmp_path / "cast.csv"
    head, people = "Name;Height;Bust;Waist;Hip;Arm;Wrist", ["Ann;168;93,5;77;99;58;16", "Bo;181;102;86;103;60;17"]
    file.write_text("\n".join([head, *people]), "utf-8")
    with pytest.raises(InputError) as refused:
        read_wearers(file)
    (fault,) = refused.value.faults
    assert fault.line == 1
    assert "Height, Bust, Waist, Hip and 2 more" in fault.what
    assert len(read_wearers(file, "cm")) == 2
    file.write_text("\n".join([head, ";cm;cm;cm;cm;cm;cm", *people]), "utf-8")
    assert [one.body is not None for one in read_wearers(file)] == [True, True]
    file.write_text("\n".join([head, *people, "Cy;170 cm;90 cm;72 cm;96 cm;;"]), "utf-8")
    assert [one.body is not None for one in read_wearers(file)] == [False, False, True]


def test_a_table_of_which_every_row_is_set_aside_holds_nobody(tmp_path: Path) -> None:
    """Dancers by their numbers: a name that begins with # leaves its row out, and this is told."""
    table = tmp_path / "corps.csv"
    table.write_text("Name,Height (cm),Bust (cm),Waist (cm),Hip (cm)\n#1,168,92,74,98\n#2,171,90,72,97\n", "utf-8")
    for read, named in ((read_bodies, ""), (read_wearers, ""), (read_body, ""), (read_body, "#1")):
        with pytest.raises(InputError, match="each name begins with #, which leaves its row out"):
            read(f"{table}{named}")


def test_a_fault_of_a_row_names_the_makers_own_column(tmp_path: Path) -> None:
    """It named the measure alone, which a maker whose columns have other words had to look up."""
    table = tmp_path / "band.csv"
    rows = [
        "Name;Height (cm);Waist;Hips;bust_girth",
        "Bo;170 cm;7 cm;100 cm;960 cm",
        "Ida;170 cm;76 cm;9 cm;95 cm",
    ]
    table.write_text("\n".join(rows) + "\n", "utf-8")
    bo, ida = (" ".join(map(str, one.faults)) for one in read_wearers(table))
    assert 'waist_girth, column "Waist"' in bo
    assert "Bo, bust_girth:" in bo  # her own word is the kit's
    assert 'hip_girth, column "Hips"' in ida
