"""Workroom files, and needle, stitch, foot and heat of every seam; sources beside each check."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drafting.blocks import all_blocks, names
from drafting.costume.file import read_costume
from drafting.costume.garment import draft_garment
from drafting.costume.workroom import STITCHES, THREE_STEP, Workroom, read_workroom
from drafting.fabric import Fabric
from drafting.ground.errors import InputError
from drafting.making.model import Setting
from drafting.making.order.seam_kinds import kind_of
from drafting.making.seam_lengths import turned_edges
from drafting.making.settings import edge_key, setting_said, settings
from drafting.making.settings.feet import BY_HAND
from drafting.making.settings.inner_darts import inner_dart_key
from drafting.making.settings.lengthening import Cause, Gives
from drafting.making.settings.more_tools import easier
from drafting.making.settings.needles import needle_for, point_for, size_for, sold_as
from drafting.making.settings.stitches import BACKSTITCH, CAUGHT, stitch_for
from drafting.making.shopping import shopping
from drafting.making.thread import thread_ratio
from drafting.making.words import plan_sentence as text
from tests.making.figures import NYLON, ROOT, laid, made, on_the_bias, with_cloth

PLAIN = Workroom()
STORE = read_workroom(ROOT / "measurements" / "workrooms" / "theatre-store.toml")
ATTIC = read_workroom(ROOT / "measurements" / "workrooms" / "attic-room.toml")
KNIT = Fabric(
    "Jersey, invented",
    usable_width=1500.0,
    weave="knit",
    fibre="polyamide, elastane",
    mass=200.0,
    stretch_along=0.5,
    stretch_across=0.6,
    recovery=0.97,
)


def words_of(setting: Setting) -> str:
    return " ".join(text(sentence) for sentence in setting_said(setting))


@pytest.mark.parametrize(
    ("mass", "size"), [(40, (60, 65)), (90, (70,)), (140, (80,)), (290, (90,)), (400, (100,)), (600, (110,))]
)
def test_needle_sizes_follow_the_cloth(mass: float, size: tuple[int, ...]) -> None:
    """Needle charts: sheer 60-65, blouse 70, shirting 80, trouser 90, denim 100, canvas 110."""
    assert size_for(replace(NYLON, mass=mass)) in size
    assert size_for(replace(NYLON, mass=mass)) in (60, 70, 80, 90, 100, 110, 120)


@pytest.mark.parametrize(
    "packet", ["60/8", "65/9", "70/10", "80/12", "90/14", "100/16", "110/18", "120/19"], ids=lambda packet: packet
)
def test_a_packet_of_needles_says_its_size_twice(packet: str) -> None:
    """Needle size guides (common practice): hundredths of a mm of the blade, and the older number beside it."""
    assert sold_as(int(packet.split("/")[0])) == packet


def test_the_list_names_the_packet_as_it_is_sold() -> None:
    costume = laid("lamplighter")
    rows = [row for row in shopping(costume, settings(costume, PLAIN)) if row.what == "needle"]
    assert rows
    assert all(
        re.search(r" (60/8|65/9|70/10|80/12|90/14|100/16|110/18|120/19)\)", text(row.detail)) for row in rows
    )


def test_needle_points_follow_the_cloth() -> None:
    """Needle charts: woven sharp, knit ball point, high elastane stretch, microfibre microtex, leather wedge."""
    assert point_for(replace(KNIT, fibre="cotton", stretch_along=0.1, stretch_across=0.2)) == "ball point"
    assert point_for(KNIT) == "stretch"
    assert point_for(NYLON) == "sharp"
    assert point_for(replace(NYLON, fibre="polyester microfibre")) == "microtex"
    assert point_for(replace(NYLON, fibre="leather")) == "leather"


def own(key: str) -> bool:
    """Return whether a setting is of the garment's own seams and edges alone."""
    return not key.startswith(("lining: ", "buttonhole", "zip", "sewn on", "bars", "overcast"))


def test_a_universal_needle_only_stands_in() -> None:
    needle, stands_in = needle_for(NYLON, replace(PLAIN, needles=("universal",)))
    assert (needle.point, stands_in) == ("universal", True)
    assert needle_for(NYLON, PLAIN) == (needle_for(NYLON, PLAIN)[0], False)
    room = replace(made("lamplighter").costume.workroom, needles=("universal",))
    words = [text(why) for s in settings(made("lamplighter"), room).values() for why in s.why]
    assert any("Second choice of needle" in line for line in words)


@given(
    st.floats(0.0, 0.6),
    st.sampled_from(["around", "moves", "passes", "bias"]),
    st.booleans(),
    st.sets(st.sampled_from(sorted(STITCHES)), min_size=0),
)
def test_a_seam_that_stretches_is_never_a_plain_lockstitch(
    share: float, cause: Cause, knit: bool, stitches: set[str]
) -> None:
    """Stitch-type teaching pages (common practice): 304, 401, 504, 514 for seams that must stretch
    (knit, negative ease), never 301."""
    room = Workroom(stitches=tuple(sorted(stitches)))
    stitch = stitch_for(Gives(share, cause), knit, room)
    assert stitch.number in (*stitches, "202")  # only what she has, or by hand
    if cause != "bias" or knit:
        assert stitch.number in ("304", "401", "504", "514", THREE_STEP, "202")
    assert 2.0 <= stitch.length <= 3.5  # common practice: seams 2.2 to 2.8, topstitching to 3.5


def test_velveteen_is_never_pressed_hard_and_stretch_is_sewn_with_less_pressure() -> None:
    costume = made("lamplighter")
    coat = {s: v for (g, s), v in settings(costume, costume.costume.workroom).items() if g == "coat" and own(s)}
    assert all("needle board, never hard" in words_of(s) for s in coat.values())
    assert {s.dots for s in coat.values()} == {2}
    kite = settings(made("kite"), ATTIC)
    assert {s.pressure for s in kite.values()} == {"lighter"}
    assert {s.pressure for s in settings(made("kite"), replace(ATTIC, foot_pressure=False)).values()} == {"usual"}


def test_pile_is_pressed_on_its_own_pile_where_there_is_no_needle_board() -> None:
    """Nothing is asked for that the room has not (the work itself: only what she has)."""
    bare = replace(ATTIC, pressing=())
    coat = [s for (g, key), s in settings(made("lamplighter"), bare).items() if g == "coat" and own(key)]
    for words in map(words_of, coat):
        assert "scrap of the same pile, never hard" in words
        assert "needle board" not in words
        assert "steam" not in words


def test_bias_panels_are_sewn_with_some_give_and_their_waist_is_stayed() -> None:
    costume = on_the_bias()
    found = settings(costume, costume.costume.workroom)
    coat = costume.garments[0].draft
    flares = [s.name for s in coat.seams if kind_of(coat, s) == "flare"]
    assert len(flares) == 3
    assert all(found["coat", name].stitch == "304" for name in flares)
    assert found["coat", "coat waist"].stayed
    assert not found["shirt", "side"].stayed


def test_a_knits_shoulder_is_stayed() -> None:
    assert settings(made("kite"), STORE)["top", "shoulder"].stayed


def test_nylon_gets_a_cool_iron() -> None:
    """Common practice: nylon one dot."""
    shirt = settings(with_cloth("lamplighter", "shirting", fibre="nylon", iron_dots=None), PLAIN)
    assert {s.dots for (g, key), s in shirt.items() if g == "shirt" and own(key)} == {1}


def test_the_plan_says_what_would_be_easier_with_more() -> None:
    plain = " ".join(text(s) for s in easier(made("lamplighter"), PLAIN))
    assert "overlock" in plain
    assert "needle board" in plain
    assert "walking foot" in plain
    assert easier(made("kite"), STORE) == ()


def test_every_stitch_a_room_may_have_has_a_thread_ratio_of_its_own_or_the_greediest() -> None:
    assert all(thread_ratio(stitch) >= 2.5 for stitch in STITCHES)


def test_a_workroom_file_names_every_fault_at_once(tmp_path: Path) -> None:
    file = tmp_path / "room.toml"
    file.write_text(
        'title = "x"\nstitches = [301, 999]\nfeet = "walking"\nblade = "sword"\niron_dots = 7\n'
        "wheels = 3\n[prices]\nthread = -1\ngold = 3\n"
    )
    with pytest.raises(InputError) as refused:
        read_workroom(file)
    lines = {(fault.field, fault.line) for fault in refused.value.faults}
    assert lines == {
        ("stitches", 2),
        ("feet", 3),
        ("blade", 4),
        ("iron_dots", 5),
        ("wheels", 6),
        ("prices.thread", 8),
        ("prices.gold", 9),
    }


def test_a_slip_of_the_pen_in_a_workroom_is_answered_with_what_was_meant(tmp_path: Path) -> None:
    file = tmp_path / "room.toml"
    file.write_text('stitches = ["three step zigzag"]\nfeet = ["walkng"]\nneedle = ["sharp"]\n')
    with pytest.raises(InputError) as refused:
        read_workroom(file)
    rights = {fault.field: fault.right for fault in refused.value.faults}
    assert "did you mean three-step zigzag?" in rights["stitches"]
    assert "did you mean walking?" in rights["feet"]
    assert "did you mean needles?" in rights["needle"]
    assert {fault.file for fault in refused.value.faults} == {str(file)}


def test_a_costume_names_its_workroom_and_every_fault_of_it_is_told(tmp_path: Path) -> None:
    shipped = (ROOT / "measurements" / "costumes" / "kite.toml").read_text("utf-8")
    costume, room = tmp_path / "kite.toml", tmp_path / "room.toml"
    home = (ROOT / "measurements").as_posix()
    told = shipped.replace("../workrooms/theatre-store.toml", "room.toml").replace("../", f"{home}/")
    costume.write_text(told, "utf-8")
    room.write_text("stitches = [301]\nneedles = ['sharp']\n", "utf-8")
    assert read_costume(costume).workroom == Workroom("room", ("301",), needles=("sharp",))
    room.write_text("blade = 'axe'\niron_dots = 0\n", "utf-8")
    with pytest.raises(InputError) as refused:
        read_costume(costume)
    assert {(f.field, f.line, f.file) for f in refused.value.faults} == {
        ("blade", 1, str(room)),
        ("iron_dots", 2, str(room)),
    }


def test_the_shipped_workrooms_can_be_read_and_differ() -> None:
    assert ATTIC.has("514", "504") == ""
    assert STORE.has("514", "504") == "514"
    assert ATTIC.prices["thread"] > 0


STRETCHY = {
    name: known
    for name in names(alone=True)
    if "stretch_share" in (known := {choice.name for choice in all_blocks()[name].choices})
}
"""Every block that can be drafted in stretch cloth, with the names of its choices."""


@pytest.mark.parametrize("room", [PLAIN, STORE], ids=["plain", "store"])
@pytest.mark.parametrize("block", STRETCHY)
def test_every_stretch_garment_gets_a_setting_for_every_seam(block: str, room: Workroom) -> None:
    body = made("kite").costume.wearer
    wanted = {"stretch_share": 0.25, "waist_finish": "casing"}
    choices = {name: value for name, value in wanted.items() if name in STRETCHY[block]}
    garment = draft_garment(body, KNIT, block, choices)
    costume = replace(
        made("kite"), garments=(garment,), costume=replace(made("kite").costume, fabrics={garment.fabric: KNIT})
    )
    found = settings(costume, room)
    seams = {seam.name for seam in garment.draft.seams}
    edges = {edge_key(piece.name, edge.name) for piece, edge in turned_edges(garment)}
    inner = {inner_dart_key(piece.name) for piece in garment.draft.pieces if piece.darts}
    assert {key for key in found if own(key[1])} == {(garment.name, name) for name in seams | edges | inner}
    assert all(s.stitch != "301" for (_, key), s in found.items() if key != "zip")  # whose tape gives nothing


def test_a_back_that_is_cut_from_lining_has_its_darts_sewn_and_pressed_as_lining() -> None:
    """A waistcoat's satin back was ironed at the flannel's two dots."""
    garment = draft_garment(made("kite").costume.wearer, Fabric("flannel"), "waistcoat", {})
    fabrics = {garment.fabric: Fabric("flannel", iron_dots=2), "lining": Fabric("satin", iron_dots=1)}
    costume = replace(made("kite"), garments=(garment,), costume=replace(made("kite").costume, fabrics=fabrics))
    found = settings(costume)
    (back,) = [piece for piece in garment.draft.pieces if piece.darts and piece.cloth]
    assert found[garment.name, inner_dart_key(back.name)].dots == 1


def test_stitch_numbers_are_the_standards() -> None:
    """ISO 4915 as it is taught: 301, 304, 401, 504, 514."""
    names = {
        "301": "lockstitch",
        "304": "zigzag",
        "401": "two-thread chain",
        "504": "three-thread overedge",
        "514": "four-thread overedge",
    }
    assert all(name in STITCHES[number] for number, name in names.items())
    # 100 chain, 200 hand, 300 lock, 400 several chains, 500 overedge; no home machine sews the 600.
    classes = {"1": "chain", "3": "lock zigzag", "4": "chain cover", "5": "overedge"}
    assert all(number in BY_HAND for number in (BACKSTITCH, CAUGHT))
    assert {number[0] for number in BY_HAND if number.isdigit()} == {"2"}
    for number, name in STITCHES.items():
        if number != THREE_STEP:  # that goes by its name
            assert any(word in name for word in classes[number[0]].split()), number


def test_seam_classes_are_the_standards() -> None:
    """ISO 4916:1991: superimposed 1, lapped 2, bound 3, flat 4, ornamental 5, edge 6, added 7, single 8."""
    found = settings(made("lamplighter"), PLAIN)
    assert {s.seam_class for s in found.values()} <= set(range(1, 9))
    assert found["shirt", "side"].seam_class == 1
