"""The mock-up: its allowances measured in its files by other people's tools, and what it leaves out."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
import shapely
from pypdfium2 import PdfDocument

from drafting import draft_garment
from drafting.costume.file import read_costume
from drafting.costume.lays import laid_out
from drafting.costume.make import Made, make
from drafting.costume.mock_up import MockUp, laid_to_try, mock_length, mock_up, tried_on
from drafting.draft.piece import EdgeKind
from drafting.draft.roles import PieceRole, SeamKind
from drafting.export.svg import svg_text
from drafting.fabric import Fabric
from drafting.finish.label import Label
from drafting.fitting.mock_cloth import mock_cloth
from drafting.fitting.mock_up import tried
from drafting.fitting.signs_below import SIGNS_BELOW
from drafting.fitting.to_write_on import seam_lines
from drafting.fitting.words import order_at_the_body
from drafting.ground.errors import InputError
from drafting.making import planned
from drafting.output.fitting_pages import sheets_to_write_on
from drafting.output.mock_up import write_mock_up
from drafting.sheet.piece import piece_sheet
from tests.drawn_bodies import drawn
from tests.export.reading import point, shapes
from tests.making.figures import made
from tests.making.orders import uneven
from tests.notebook.trials import trial_costumes

# mm by what the seam is, common practice of the trade for a mock-up.
PRACTICE = {
    "shoulder": 25,
    "side": 25,
    "centre seam": 25,
    "crotch": 25,
    "inseam": 25,
    "hem": 40,
    "waist": 40,
    "armhole": 10,
    "neck": 10,
}


@pytest.fixture(scope="module")
def lamplighter() -> MockUp:
    return tried_on(made("lamplighter"))


@pytest.fixture(scope="module")
def shirt() -> MockUp:
    real = made("lamplighter")
    only = replace(real.costume, garments=real.costume.garments[1:2])
    papers = replace(only.prints, papers=only.prints.papers[:1])
    return mock_up(make(replace(only, prints=papers)))


@pytest.fixture(scope="module")
def folder(shirt: MockUp, tmp_path_factory: pytest.TempPathFactory) -> Path:
    out = tmp_path_factory.mktemp("mock") / "out"
    write_mock_up(shirt, out)
    return out


def line_of(shape: Any) -> shapely.LineString:
    """Return a shape that the SVG library read as a fine polyline, mm."""
    points = [point(segment, n / 100) for segment in shape if len(segment) > 1 for n in range(101)]
    return shapely.LineString([(p.real, p.imag) for p in points])


def beyond(edge: shapely.LineString, outer: shapely.LineString) -> float:
    """Return how far the outer line lies from the middle of an edge, square to it."""
    before, middle, after = (edge.interpolate(t, normalized=True) for t in (0.4999, 0.5, 0.5001))
    x, y = after.x - before.x, after.y - before.y
    reach = 300.0 / (x * x + y * y) ** 0.5
    ends = [(middle.x - way * y * reach, middle.y + way * x * reach) for way in (-1, 1)]
    return float(outer.intersection(shapely.LineString(ends)).distance(middle))


@pytest.mark.parametrize("garment", ["coat", "shirt", "breeches"])
def test_allowances_read_off_the_drawing_are_those_of_the_trade(lamplighter: MockUp, garment: str) -> None:
    seen = set()
    for cut in lamplighter.made[garment].pattern.pieces:
        text = svg_text(piece_sheet(cut, Label("The lamplighter", "mock-up", hands=True)))
        outer = line_of(next(iter(shapes(text, "cut-line").values())))
        edges = shapes(text, "stitch-line")
        for edge in cut.piece.edges:
            wide = PRACTICE.get(edge.role)
            if (
                wide is None
                or edge.kind in (EdgeKind.FOLD, EdgeKind.DART)
                or cut.piece.role.startswith(("cu", "co"))
            ):
                continue
            drawn_edge = line_of(edges[f"{cut.piece.name}.{edge.name}"])
            found = beyond(drawn_edge, outer)
            assert found == pytest.approx(wide, abs=0.05), (cut.piece.name, edge.name)
            seen.add(edge.role.value)
    assert len(seen) >= 4


def test_the_pieces_in_the_folder_are_true_to_scale(folder: Path) -> None:
    for file in (folder / "pieces").glob("*.svg"):
        squares = [s.bbox() for s in shapes(file.read_text("utf-8"), "scale-check").values()]
        sides = {round(side, 3) for x0, y0, x1, y1 in squares for side in (x1 - x0, y1 - y0)}
        assert sides == {100.0, 101.6}, file.name


def test_only_one_layer_of_the_shell_is_tried_on(lamplighter: MockUp) -> None:
    for garment in lamplighter.made.garments:
        assert all(not piece.material and not piece.lines for piece in garment.draft.pieces)
    out = {piece.name for piece in lamplighter.without["coat"]}
    assert {"front-facing", "top-collar", "front-interfacing", "back-lining", "bone-casing"} <= out
    stands = lamplighter.made["shirt"].pattern["collar-stand"].piece
    assert (lamplighter.real["shirt"].draft["collar-stand"].copies, stands.copies) == (2, 1)


def test_no_hem_is_turned_up(lamplighter: MockUp) -> None:
    edges = [e for g in lamplighter.made.garments for p in g.draft.pieces for e in p.edges]
    assert all(edge.kind is not EdgeKind.HEM for edge in edges)


def test_stitching_lines_are_those_of_the_real_costume(lamplighter: MockUp) -> None:
    for garment in lamplighter.made.garments:
        real = lamplighter.real[garment.name].draft
        assert all(
            p.outline.points(0.1).tolist() == real[p.name].outline.points(0.1).tolist()
            for p in garment.draft.pieces
        )


def test_lines_to_be_drawn_on_both_faces_end_on_the_cut_edge(lamplighter: MockUp) -> None:
    front = lamplighter.made["coat"].pattern["front"]
    marks = {mark.name: mark for mark in front.piece.placements}
    assert "bust_point" in marks
    runs = [mark.path for mark in front.piece.placements if mark.what == "balance line"]
    assert len(runs) >= 6  # bust, waist, across the front and the roll line
    edge = line_of_path(front.cut)
    assert all(edge.distance(shapely.Point(run.end.real, run.end.imag)) < 0.05 for run in runs)
    back = lamplighter.made["shirt"].pattern["back"].piece
    assert {"blade", "centre back"} <= {mark.name for mark in back.placements}


def line_of_path(path: Any) -> shapely.LinearRing:
    return shapely.LinearRing([(p.real, p.imag) for p in path.points(0.001)])


@pytest.mark.parametrize(
    ("cloth", "bending", "taken"),
    [
        (Fabric("velveteen", sort="pile"), 27.0, "drill"),
        (Fabric("melton", sort="felted"), 32.0, "drill"),
        (Fabric("shirting"), 19.0, "light calico"),
        (Fabric("chiffon", sort="sheer"), 13.0, "voile"),
        (Fabric("vinyl", sort="coated"), 35.0, "felt"),
        (Fabric("denim"), 35.0, "drill"),
    ],
    ids=lambda value: getattr(value, "title", None),
)
def test_the_cloth_to_take_is_as_stiff_as_the_real_one(cloth: Fabric, bending: float, taken: str) -> None:
    assert taken in mock_cloth(cloth, "shell", bending).ask_for


def test_a_knit_is_tried_in_a_knit_within_ten_points() -> None:
    found = mock_cloth(Fabric("jersey", weave="knit", stretch_along=0.05, stretch_across=0.40), "shell", 15.0)
    assert "30 % to 50 % across" in found.ask_for
    assert "up to 15 % along" in found.ask_for
    assert found.fabric.weave == "knit"


def test_a_tenth_more_is_taken_than_its_own_lay_needs(shirt: MockUp) -> None:
    (lay,) = shirt.made.lays
    placed = {outline.part.name for outline in lay.outlines}
    assert placed == {f"shirt.{cut.piece.name}" for cut in shirt.made["shirt"].pattern.pieces}
    assert 1.1 * lay.buy_length <= mock_length(lay) < 1.1 * lay.buy_length + 100.0


def test_the_plan_buys_what_the_mock_up_takes(shirt: MockUp) -> None:
    """Two lists of one purchase name one amount and one cloth."""
    real = laid_out(shirt.real, count=5, table=False)
    rows = [row for row in planned(real, laid_to_try(shirt.real)).shopping if row.what == "mock-up cloth"]
    (lay,) = shirt.made.lays
    assert [row.amount for row in rows] == [mock_length(lay)]
    assert dict(rows[0].detail.facts)["kind"] == shirt.cloths["shirt"].ask_for
    assert not any("no width" in finding.sentence for finding in lay.findings)


def test_the_record_holds_each_allowance_with_its_source(folder: Path, shirt: MockUp) -> None:
    record = json.loads((folder / "mock-up.json").read_text("utf-8"))
    (garment,) = record["garments"]
    assert {piece["piece"] for piece in garment["pieces"]} == {
        "back",
        "front",
        "sleeve",
        "cuff",
        "collar-stand",
        "collar",
    }
    for piece in garment["pieces"]:
        assert (folder / piece["file"]).is_file()
        assert all(edge["source"] for edge in piece["edges"])
    assert {seam["seam"] for seam in garment["seams"]} == {
        line.name for line in seam_lines(shirt.made["shirt"].draft)
    }
    assert record["cloths"][0]["take"] > 0


def test_the_fitting_sheet_has_a_line_for_every_seam_and_prints_on_either_paper(
    folder: Path, shirt: MockUp
) -> None:
    sheet = PdfDocument(folder / "fitting" / "shirt.pdf")
    said = " ".join(page.get_textpage().get_text_range() for page in sheet).lower()
    for line in seam_lines(shirt.made["shirt"].draft):
        assert line.name.replace("-", " ").replace("_", " ") in said, line.name
    assert "2.5 cm, out 1.9 cm" in said
    assert "pinch" in said
    for page in sheet:
        wide, high = (side * 25.4 / 72 for side in page.get_size())
        assert wide <= 210.01
        assert high <= 279.41


def test_a_line_of_one_hand_offers_no_other_side(shirt: MockUp) -> None:
    # A seam of a piece that is cut for one side alone has no other side; a hem that both fronts have has both.
    leaning = replace(shirt.real.costume, wearer=uneven(shirt.real.costume.wearer))
    mock = mock_up(make(leaning))
    ((_, pages),) = sheets_to_write_on(mock)
    said = [row for page in pages for text in page.texts for row in text.lines]
    hands = {line.name: line.hand for line in seam_lines(mock.made["shirt"].draft)}
    assert (hands["side left"], hands["side right"], hands["front hem"]) == ("left", "right", "")
    for word, hand in (("L only", "left"), ("R only", "right"), ("L  R  both", "")):
        assert said.count(word) == list(hands.values()).count(hand) > 0


def test_a_folder_of_another_command_is_left_alone(folder: Path, shirt: MockUp, tmp_path: Path) -> None:
    other = tmp_path / "out"
    other.mkdir()
    (other / "report.json").write_text('{"schema": 1, "made_with": {}}')
    with pytest.raises(InputError, match="drafting make"):
        write_mock_up(shirt, other)
    assert [path.name for path in other.iterdir()] == ["report.json"]
    write_mock_up(shirt, folder)  # its own is replaced


def in_pieces(real: Made) -> None:
    mock = tried_on(real)
    for garment in mock.made.garments:
        assert garment.pattern.pieces, garment.name
        assert not [f for f in garment.pattern.findings if f.level in ("warning", "error")], garment.name
        for cut in garment.pattern.pieces:
            inner, outer = (shapely.Polygon(line_of_path(path)) for path in (cut.piece.outline, cut.cut))
            assert outer.is_valid, (garment.name, cut.piece.name)
            assert inner.difference(outer).area < 1.0, (garment.name, cut.piece.name)


@pytest.mark.parametrize("name", ["inches", "no-coat", "one-trouser"])
def test_invented_costumes_have_a_mock_up(name: str, tmp_path: Path) -> None:
    in_pieces(make(read_costume(trial_costumes(tmp_path)[name])))


@pytest.mark.parametrize("body", drawn(3), ids=lambda body: body.title)
def test_the_lamplighter_can_be_tried_on_anybody(body: Any) -> None:
    in_pieces(make(replace(made("lamplighter").costume, wearer=body)))


ONE_LAYER = {SeamKind.FACING, SeamKind.FLY}
"""Seams that add a layer behind an edge: a mock-up has one (common practice)."""


@pytest.mark.parametrize("fall", [False, True], ids=["fly", "fall"])
@pytest.mark.parametrize("block", ["trousers", "knee-breeches"])
def test_a_mock_up_can_be_closed_as_its_costume_is(block: str, fall: bool) -> None:
    body = made("lamplighter").costume.wearer
    draft = draft_garment(body, None, block, {"fall_front": fall}).draft
    mock = tried(draft)
    shield = {p.name for p in draft.pieces if p.role is PieceRole.FLY_SHIELD}  # pinned shut at a first try
    names = {seam.name for seam in mock.seams}
    for seam in draft.seams:
        own = {piece for piece, _ in (*seam.a, *seam.b)}
        shells = [draft[piece] for piece in own if not draft[piece].material and not draft[piece].lines]
        if shells and seam.kind not in ONE_LAYER and not own & shield:
            assert seam.name in names, seam.name
    marks = [(p.role, m.what) for p in mock.pieces for m in p.placements]
    buttons = [role for role, what in marks if what == "button" and role is PieceRole.BEARER]
    holes = [role for role, what in marks if what == "buttonhole" and role is PieceRole.FRONT]
    assert len(buttons) == len(holes) == (2 if fall else 0)  # of one hand
    assert any("fall" in line for line in order_at_the_body(mock)) is fall


def test_no_sign_of_legs_names_a_fly_that_some_do_not_have() -> None:
    assert not [sign.seen for sign in SIGNS_BELOW if "fly" in sign.seen.split()]
