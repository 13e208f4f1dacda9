"""Pockets sewn onto pieces: sizes by plain geometry, where they lie by shapely, refusals, the order, a file."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest
from shapely.geometry import Polygon

from drafting.alter.pocket import with_pocket
from drafting.blocks import all_blocks
from drafting.costume.choices import choose
from drafting.costume.file import read_costume
from drafting.costume.garment import MadeGarment, make_garment
from drafting.costume.make import make
from drafting.draft.piece import Piece
from drafting.ground.errors import DraftError, InputError
from drafting.ground.scale import body_scale
from drafting.making.rules import unsound
from drafting.making.stages.drawn import sewn_on_paper
from drafting.reading.given import Given, Origin
from drafting.reading.pockets import PocketWish
from drafting.shaping.details.welt_pocket import Welt, with_welt
from tests.blocks.figures import chart_woman, errors
from tests.making.figures import ROOT
from tests.making.orders import KNIT, WOVEN, costume_of, order_of

PATCH = PocketWish("front", "shoulder", "patch", width=110.0, height=130.0, inside=190.0, corners="pointed")
FLAP = replace(PATCH, kind="flap", height=50.0, inside=180.0, corners="round")
BACK = PocketWish("back", "side", "patch", width=140.0, height=160.0, inside=110.0, along=0.25, corners="round")


@cache
def made(block: str, *wishes: PocketWish, **choices: object) -> MadeGarment:
    kind, body = all_blocks()[block], chart_woman()
    asked = {name: Given(value) for name, value in choices.items()}
    chosen = choose(kind, asked, body_scale(body), Origin())
    return make_garment(body, WOVEN, kind, chosen, name=block, role="shell", pockets=wishes)


def ring(piece: Piece) -> Polygon:
    return Polygon([(p.real, p.imag) for p in piece.outline.flattened(0.05)])


@pytest.mark.parametrize(
    ("corners", "less"),
    [("square", 0.0), ("round", 2 * (1 - math.pi / 4) * (0.18 * 110) ** 2), ("pointed", 0.14 * 110 * 110 / 2)],
)
def test_a_pocket_has_its_size_and_the_area_that_its_corners_leave(corners: str, less: float) -> None:
    """Areas of plain geometry: a rectangle less what is rounded or pointed off its two lower corners."""
    draft = made("shirt").draft
    patch = with_pocket(draft, replace(PATCH, corners=corners), 1)["patch-1"]
    x0, y0, x1, y1 = patch.outline.bounds
    assert (x1 - x0, y1 - y0) == pytest.approx((110.0, 130.0), abs=0.02)
    assert ring(patch).area == pytest.approx(110 * 130 - less, rel=1e-3)


@pytest.mark.parametrize(("block", "wish"), [("shirt", PATCH), ("skirt", BACK), ("fitted-top", FLAP)])
def test_it_lies_level_on_its_piece_and_is_cut_as_often_as_that(block: str, wish: PocketWish) -> None:
    draft = made(block, wish).draft
    piece, pocket = draft[wish.piece], draft[f"{wish.kind}-1"]
    mark = next(m for m in piece.placements if m.piece == pocket.name)
    inner = Polygon([(p.real, p.imag) for p in mark.path.flattened(0.05)])
    assert ring(piece).buffer(0.1).contains(inner)
    assert pocket["top"].path.start.imag == pytest.approx(pocket["top"].path.end.imag)
    edge = piece[wish.edge].path
    middle = (pocket["top"].path.start + pocket["top"].path.end) / 2
    assert abs(middle - edge.at(wish.along * edge.length)) == pytest.approx(wish.inside, abs=1e-6)
    assert pocket.count == (2 if wish.kind == "patch" else 4)  # a flap has two layers
    assert errors(made(block, wish)) == []


def test_the_top_is_turned_in_deep_and_a_flap_is_stiffened_in_one_layer() -> None:
    # Common practice: a patch's top is turned in by 25 to 40 mm, its sides by 10.
    draft = made("shirt", PATCH, FLAP).draft
    assert 25 <= (draft["patch-1"]["top"].allowance or 0) <= 40
    assert draft["flap-2-interfacing"].count == draft["flap-2"].count / 2
    cut = {p.piece.name: p for p in made("shirt", PATCH, FLAP).pattern.pieces}
    assert {"patch-1", "flap-2"} <= set(cut)


@pytest.mark.parametrize("block", ["shirt", "fitted-top"])
def test_pockets_are_made_up_sewn_on_flat_after_the_darts_and_drawn(block: str) -> None:
    wishes = (PATCH, FLAP) if block == "shirt" else (FLAP,)
    garment = made(block, *wishes)
    for fabric in (WOVEN, KNIT):
        costume = costume_of(garment, fabric)
        steps = order_of(costume)
        assert unsound(costume, steps) == ()
        on = [i for i, s in enumerate(steps) if s.verb == "trim"]
        assert len(on) == len(wishes)
        sewn = [i for i, s in enumerate(steps) if any("flap" in name for name in s.seams)]
        darts = [i for i, s in enumerate(steps) if s.verb == "dart"]
        assert max([*sewn, *darts]) < on[-1]
        assert on[-1] < next(i for i, s in enumerate(steps) if s.verb == "join")
        early = (*steps[: sewn[0]], *steps[sewn[0] + 1 :], steps[sewn[0]])
        assert any("sewn on before it is made up" in wrong for wrong in unsound(costume, early))
    drawings = list(sewn_on_paper(costume, steps))
    assert all(drawings[i][2] is not None for i in on)


WELT = PocketWish("front", "hem", "welt", width=115.0, height=22.0, inside=105.0, along=0.45, tilt=9.0)


def test_a_welt_is_cut_double_its_bags_twice_and_its_mouth_is_stayed() -> None:
    # Common practice: a welt is folded, its bags reach 10 to 15 mm past the mouth and lie inside the garment, the
    # stay behind the mouth reaches 15 to 20 mm past it. Areas and turns are plain geometry.
    garment = made("waistcoat", WELT)
    draft = garment.draft
    assert errors(garment) == []
    assert ring(draft["welt-1"]).area == pytest.approx(115 * 2 * 22, rel=1e-3)
    assert [draft[f"welt-1{part}"].count for part in ("", "-bag", "-facing", "-stay")] == [2, 4, 2, 2]
    marks = {m.what: m.path for m in draft["front"].placements}
    welt, bag = (Polygon([(p.real, p.imag) for p in marks[w].flattened(0.05)]) for w in ("welt", "pocket bag"))
    assert welt.area == pytest.approx(115 * 22, rel=1e-3)
    assert ring(draft["front"]).contains(welt.union(bag))
    _, low, _, high = marks["welt"].bounds
    turned = math.radians(9.0)
    assert high - low == pytest.approx(115 * math.sin(turned) + 22 * math.cos(turned), abs=0.01)
    x0, _, x1, _ = draft["welt-1-bag"].outline.bounds
    assert 10 <= (x1 - x0 - 115) / 2 <= 15
    assert (draft["welt-1-bag"].cut_from, draft["welt-1"].cut_from) == ("lining", "")
    assert made("shirt", replace(WELT, edge="shoulder", inside=200.0)).draft["welt-1-bag"].cut_from == ""
    assert ring(draft["front"]).contains(ring(draft["welt-1-stay"]))


def test_a_welt_is_sewn_on_after_the_darts_and_its_bags_last() -> None:
    garment = made("waistcoat", WELT)
    for fabric in (WOVEN, KNIT):
        costume = costume_of(garment, fabric)
        steps = order_of(costume)
        assert unsound(costume, steps) == ()
        said = [[one.key.partition(".")[2] for one in step.say] for step in steps]
        at = [next(i for i, keys in enumerate(said) if key in keys) for key in ("welt_on", "pocket_bag")]
        darts = [i for i, step in enumerate(steps) if step.verb == "dart"]
        made_up = next(i for i, step in enumerate(steps) if "welt-1 left end" in step.seams)
        assert max(*darts, made_up) < at[0] < at[1] < next(i for i, s in enumerate(steps) if s.verb == "join")
        drawings = list(sewn_on_paper(costume, steps))
        assert all(drawings[i][2] is not None for i in at)


def test_a_bag_that_has_no_room_is_shorter_and_told_and_a_dart_it_crosses_is() -> None:
    said = [f.message for f in made("waistcoat", replace(WELT, along=0.25)).findings if f.check == "pocket"]
    assert any("deep, so that it ends inside" in one for one in said)
    assert any("across a dart" in one for one in said)


@pytest.mark.parametrize("off", [57.0, 61.0, 90.0])
def test_a_bag_that_reaches_over_a_seam_is_told_so_and_never_said_to_end_inside(off: float) -> None:
    """Areas by shapely. A bag beside a seam was said to end inside, at 45 mm, while it reached over it."""
    draft = made("trousers").draft
    back = draft["back"]
    side = back.points["side_hip"]
    inwards = math.copysign(off, back.points["centre_hip"].real - side.real)
    welted = with_welt(draft, back, Welt("welt-1", "Welt", side + inwards + 20j, 110.0, 14.0, 0.0), "")
    bag = next(mark.path for mark in welted["back"].placements if mark.what == "pocket bag")
    over = Polygon([(p.real, p.imag) for p in bag.flattened(0.05)]).difference(ring(back)).area
    said = " ".join(f.message for f in welted.findings if f.where == "welt-1")
    assert ("reaches over a stitching line" in said) == (over > 1.0) == (off < 70.0)
    assert not (over > 1.0 and "ends inside" in said)


@pytest.mark.parametrize(
    ("wish", "words"),
    [
        (replace(PATCH, piece="hood"), "no piece hood"),
        (replace(PATCH, edge="tip"), "no edge tip"),
        (replace(PATCH, inside=10.0), "sticks out"),
        (replace(PATCH, width=900.0), "sticks out"),
        (replace(PATCH, kind="welt", height=22.0, inside=5.0), "sticks out"),
    ],
)
def test_what_cannot_be_sewn_on_is_refused_in_words(wish: PocketWish, words: str) -> None:
    with pytest.raises(DraftError, match=words):
        with_pocket(made("shirt").draft, wish, 1)


POCKETS = """
[[garments.shirt.pockets]]
piece = "front"
edge = "shoulder"
along = {along}
inside = "17 cm"
width = "9 cm"
height = "11 cm"
corners = "round"
"""


def costume_file(folder: Path, along: str) -> Path:
    base = ROOT / "measurements"
    text = f'title = "A shirt"\nwearer = "{base}/bodies/lamplighter.toml"\n[fabrics]\n'
    text += (
        f'shell = "{base}/fabrics/striped-shirting.toml"\n[garments.shirt]\nblock = "shirt"\nfabric = "shell"\n'
    )
    path = folder / "costume.toml"
    path.write_text(text + POCKETS.format(along=along), encoding="utf-8")
    return path


def test_a_costume_file_asks_for_pockets(tmp_path: Path) -> None:
    garment = make(read_costume(costume_file(tmp_path, "0.5"))).garments[0]
    assert garment.draft["patch-1"].outline.bounds[2] - garment.draft["patch-1"].outline.bounds[0] == (
        pytest.approx(90, abs=0.02)
    )
    assert errors(garment) == []


def test_a_share_beyond_the_edge_is_refused_at_its_line(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="no share of an edge") as found:
        read_costume(costume_file(tmp_path, "1.5"))
    assert [fault.line for fault in found.value.faults] == [12]


def test_a_welt_too_steep_is_refused_at_its_line(tmp_path: Path) -> None:
    path = costume_file(tmp_path, "0.5")
    path.write_text(path.read_text(encoding="utf-8") + 'kind = "welt"\ntilt = 50\n', encoding="utf-8")
    with pytest.raises(InputError, match="too steep"):
        read_costume(path)


@pytest.mark.parametrize("kind", ["slant", "in-seam"])
def test_what_shapes_a_pocket_on_the_cloth_is_refused_for_one_at_an_edge(kind: str, tmp_path: Path) -> None:
    """It was ignored in silence: a mouth at the edge has no corners of its own, and lies as its edge lies."""
    path = costume_file(tmp_path, "0.5")
    text = path.read_text("utf-8").replace('inside = "17 cm"', f'kind = "{kind}"\ntilt = 8')
    path.write_text(text, encoding="utf-8")
    with pytest.raises(InputError, match=f"not for a pocket of kind {kind}") as found:
        read_costume(path)
    assert {fault.field.split(".")[-1] for fault in found.value.faults} == {"corners", "tilt"}
    assert {fault.line for fault in found.value.faults} == {14, 17}


def test_a_narrow_pocket_is_told_for_a_grown_hand() -> None:
    """A child's hand goes into 7 cm (common practice: its breadth and 20 mm), and was told that none would."""
    small = replace(PATCH, width=70.0, height=80.0)
    told = [f.sentence for f in made("shirt", small).findings if f.check == "pocket"]
    assert told
    assert all("no grown hand" in one for one in told)
