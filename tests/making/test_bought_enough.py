"""Thread, bones, elastic, tape and buttonholes, reckoned anew from the steps and the drawn pieces.

Nothing here reads a constant of the kit: the figures are those of the trade, written down again, and lengths are
those of the drawn paths.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import cache

import pytest

from drafting.costume.make import Made
from drafting.making import planned
from drafting.making.model import Plan, Step
from drafting.making.seam_lengths import seam_lengths
from drafting.making.thread import rows_of, thread_ratio
from drafting.making.words import plan_sentence as text
from tests.making.figures import laid

DEMOS = ("lamplighter", "kite")


@cache
def plan_of(name: str) -> Plan:
    return planned(laid(name))


def bought(name: str, what: str, word: str = "") -> float:
    rows = [r for r in plan_of(name).shopping if r.what == what and word in text(r.detail)]
    return math.fsum(row.amount for row in rows)


def steps_of(name: str, verb: str) -> Iterator[Step]:
    return (step for step in plan_of(name).steps if step.verb == verb)


@pytest.mark.parametrize(
    ("stitch", "length", "width", "through", "least"),
    [
        ("301", 2.5, 0.0, 1.1 * 2, 2 * (2.5 + 2.2) / 2.5),  # two plies of velveteen: 3.76
        ("301", 2.5, 0.0, 0.0, 2.5),  # a thread maker's guide
        ("304", 2.5, 3.0, 1.0, 2 * (math.hypot(2.5, 3.0) + 1.0) / 2.5),
        ("209", 4.5, 0.0, 2.2, (4.5 + 2.2) / 4.5),
        ("304", 0.4, 2.5, 1.0, 2 * (math.hypot(0.4, 2.5) + 1.0) / 0.4),  # a buttonhole's bar
    ],
)
def test_a_stitch_takes_at_least_the_way_its_thread_goes(
    stitch: str, length: float, width: float, through: float, least: float
) -> None:
    """Geometry of the stitch: along both faces, and through the cloth."""
    assert thread_ratio(stitch, length, width, through) >= least - 1e-9
    assert thread_ratio(stitch, length, width, through) <= max(1.6 * least, 5.6)


@pytest.mark.parametrize(
    ("stitch", "guide"),
    [("301", 2.5), ("304", 5.5), ("101", 5.0), ("103", 4.5), ("401", 5.5), ("504", 14.0), ("514", 18.0)],
)
def test_a_stitch_through_thin_cloth_takes_what_a_thread_makers_guide_says(stitch: str, guide: float) -> None:
    """301, 304, 101 and 103 by the guide, the others from memory."""
    assert thread_ratio(stitch) == pytest.approx(guide)


def least_seam_thread(made: Made, plan: Plan) -> float:
    """Return what the seams alone take by their geometry: 2 (l + T) / l of each, T two plies."""
    total = 0.0
    for garment in made.garments:
        fabric = made.costume.fabrics[garment.fabric]
        through = 2 * (fabric.thickness or 0.0)
        for name, length in seam_lengths(garment).items():
            setting = plan.settings[garment.name, name]
            total += length * 2 * (setting.stitch_length + through) / setting.stitch_length
    return total


@pytest.mark.parametrize("name", DEMOS)
def test_thread_is_bought_for_more_than_the_seams_and_a_quarter_besides(name: str) -> None:
    made, plan = laid(name), plan_of(name)
    sewn = bought(name, "thread", "polyester") + bought(name, "thread", "overlock")
    assert sewn >= 1.25 * least_seam_thread(made, plan)
    assert sewn <= 1.25 * 10.0 * least_seam_thread(made, plan)  # overedge takes most, 18 to 1


@pytest.mark.parametrize("name", DEMOS)
def test_basting_thread_covers_every_seam_that_is_basted(name: str) -> None:
    """A running stitch of 4.5 mm takes the seam and a way through it for each stitch, and a quarter for ends."""
    made, wanted = laid(name), 0.0
    for garment in made.garments:
        lengths, thick = seam_lengths(garment), made.costume.fabrics[garment.fabric].thickness or 0.5
        own = [s for s in plan_of(name).steps if s.garment == garment.name and s.verb == "baste"]
        assert own
        assert own[0].basted
        for step in own:
            darts = step.length - math.fsum(lengths[seam] for seam in step.basted)
            assert darts >= -1e-6
            wanted += (math.fsum(lengths[seam] for seam in step.basted) + darts) * (4.5 + 2 * thick) / 4.5
    assert bought(name, "thread", "basting") == pytest.approx(1.25 * wanted, rel=0.02)


def test_the_lining_has_thread_of_its_own_for_seams_and_felling() -> None:
    """Hand felling takes three times its way (from memory); machine seams two and a half at least."""
    made, plan = laid("lamplighter"), plan_of("lamplighter")
    coat = made["coat"]
    lined = {name for piece in coat.draft.pieces if piece.material == "lining" for name in piece.lines}
    lengths = seam_lengths(coat)
    joined = [
        s
        for s in coat.draft.seams
        if all(piece in lined for piece, _ in (*s.a, *s.b)) and s.kind.value not in ("set in",)
    ]
    seams = math.fsum(lengths[s.name] for s in joined)
    felled = math.fsum(step.length for step in plan.steps if step.verb == "fell")
    caps = math.fsum(lengths[s.name] for s in coat.draft.seams if s.kind.value == "set in")
    assert felled >= 2 * caps  # round both armholes, body's lining and sleeves'
    assert bought("lamplighter", "thread", "lining") == pytest.approx(
        1.25 * (2.5 * seams + 3.0 * felled), rel=0.15
    )


@pytest.mark.parametrize("name", DEMOS)
def test_overcasting_follows_what_the_steps_say(name: str) -> None:
    """Both edges apart take twice the seam, together once; an overedge seam none."""
    made = laid(name)
    for step in plan_of(name).steps:
        if step.verb != "join" or not step.seams:
            continue
        garment = made[step.garment]
        keys = {one.key for one in step.say}
        rows = rows_of(step, garment, made.costume.workroom)
        length = math.fsum(seam_lengths(garment)[seam] for seam in step.seams)
        extra = math.fsum(r.length for r in rows[1:] if r.stitch in ("304", "504") and r.stitch_length == 2.5)
        wanted = 2 * length if "do.neaten_open" in keys else length if "do.neaten_side" in keys else 0.0
        assert extra == pytest.approx(wanted), step.key
        assert rows[0].stitch == (step.setting.stitch if step.setting else "301")


def test_the_lining_is_felled_round_its_open_edges_on_both_hands() -> None:
    """The body's neck, armholes, front, vents, hem and free front of the skirt; the sleeves' caps, vents, hems."""
    made = laid("lamplighter")
    open_edges = {"neck", "armhole", "inner", "vent", "hem", "cap part", "front"}
    wanted = 2 * math.fsum(
        edge.length
        for piece in made["coat"].draft.pieces
        for edge in piece.edges
        if piece.material == "lining"
        and edge.role.value in open_edges
        and (edge.role.value != "front" or piece.name == "tail-4-lining")  # the others are joined panel to panel
    )
    told = math.fsum(step.length for step in steps_of("lamplighter", "fell"))
    assert told == pytest.approx(wanted, rel=0.01)


@pytest.mark.parametrize("name", ["coat", "shirt"])
def test_each_button_has_half_a_metre_of_thread(name: str) -> None:
    """From memory: four to six passes through a shank button or four holes, the shank wound, and both ends."""
    made = laid("lamplighter")
    for step in (s for s in steps_of("lamplighter", "button") if s.garment == name):
        rows = rows_of(step, made[name], made.costume.workroom)
        each = math.fsum(row.length * thread_ratio(row.stitch) for row in rows) / step.count
        assert 350.0 <= each <= 700.0
        assert step.count == sum(n.count for n in made[name].draft.notions if n.what == "button")


def test_thread_for_bones_goes_down_both_sides_of_every_bone() -> None:
    made = laid("lamplighter")
    (step,) = steps_of("lamplighter", "bone")
    whole = math.fsum(length * hands for length, hands in drawn(made, "coat", "bone"))
    bones = 2  # one a hand, through all four tails
    (row,) = rows_of(step, made["coat"], made.costume.workroom)
    assert 2 * (whole - 15.0 * bones) <= row.length <= 2 * whole
    assert step.count == bones


def drawn(made: Made, garment: str, what: str) -> list[tuple[float, int]]:
    """Return every mark of a kind in a garment's pieces: its length, and how many hands it comes on."""
    found = []
    for piece in made[garment].draft.pieces:
        if not piece.material:
            for mark in piece.placements:
                if mark.what == what:
                    hands = 1 if mark.hand or piece.hand else 2 if piece.pair else 1
                    found.append((mark.path.length, hands))
    return found


def test_bones_are_bought_for_every_line_drawn_less_what_their_ends_stop_short() -> None:
    """A bone stops 5 to 7.5 mm short at each end (common practice); cutting loses 10 mm a bone at most."""
    made = laid("lamplighter")
    marks = drawn(made, "coat", "bone")
    whole = math.fsum(length * hands for length, hands in marks)
    bones = sum(n.count for n in made["coat"].draft.notions if n.what == "boning")
    amount = bought("lamplighter", "boning")
    assert whole - bones * 15.0 <= amount <= whole + bones * 10.0 + 100.0


@pytest.mark.parametrize("name", DEMOS)
def test_elastic_is_bought_for_its_loops_and_their_laps(name: str) -> None:
    made = laid(name)
    by_width: dict[float, float] = {}
    for garment in made.garments:
        for notion in garment.draft.notions:
            if notion.what == "elastic":
                assert notion.loop is not None
                by_width[notion.size or 0.0] = by_width.get(notion.size or 0.0, 0.0) + notion.count * (
                    notion.loop + 20.0
                )
    for width, least in by_width.items():
        amount = bought(name, "elastic", f"{width:g} mm")
        assert least <= amount <= least + 200.0


def test_tape_is_bought_for_both_roll_lines_and_for_every_seam_that_is_stayed() -> None:
    made = laid("lamplighter")
    stayed = math.fsum(
        seam_lengths(made[step.garment])[name]
        for step in plan_of("lamplighter").steps
        if step.setting and step.setting.stayed
        for name in step.seams
    )
    assert stayed > 0  # tails on the bias hang from a straight waist
    fronts = [p for p in made["coat"].draft.pieces if p.role.value == "front" and not p.material]
    lines = math.fsum(m.path.length * p.count for p in fronts for m in p.placements if m.what == "roll line")
    assert lines + stayed < bought("lamplighter", "tape") <= lines + stayed + 2 * 40.0 + 100.0


@pytest.mark.parametrize("garment", ["coat", "shirt", "breeches"])
def test_holes_told_are_holes_drawn_times_hands(garment: str) -> None:
    """Buttons of a piece without a hole are for show: none is worked for them."""
    made = laid("lamplighter")
    wanted = sum(hands for _, hands in drawn(made, garment, "buttonhole"))
    told = [s for s in steps_of("lamplighter", "buttonhole") if s.garment == garment]
    facts = [dict(one.facts) for step in told for one in step.say if "n" in dict(one.facts)]
    assert sum(int(one["n"]) for one in facts) == wanted
    assert sum(step.count for step in told) == wanted
    assert (wanted == 0) == (garment == "breeches")
    if garment == "coat":
        keys = {one.key for s in steps_of("lamplighter", "button") if s.garment == "coat" for one in s.say}
        assert "do.buttons_shown" in keys


def test_a_thicker_cloth_takes_more_thread() -> None:
    thin, thick = (thread_ratio("301", 2.5, thickness=2 * t) for t in (0.2, 1.1))
    assert thick > 1.4 * thin


def test_a_row_nobody_buys_for_is_none() -> None:
    """Every step with a setting, and every step that sews, has a row."""
    made = laid("lamplighter")
    for step in plan_of("lamplighter").steps:
        if step.garment and (step.setting or step.verb in ("bone", "bar", "stay", "fell", "button", "toile")):
            assert rows_of(step, made[step.garment], made.costume.workroom), step.key


def test_the_mock_ups_cloth_holds_their_pieces() -> None:
    made = laid("lamplighter")
    area = math.fsum(
        c.cut.area * c.piece.count * (2 if c.piece.fold_edge else 1)
        for g in made.garments
        for c in g.pattern.pieces
        if not c.piece.material
    )
    assert bought("lamplighter", "mock-up cloth") * 1400.0 >= area / 0.85


def test_buttons_are_told_in_mm_and_ligne() -> None:
    """40 ligne are an inch (common practice): 20 mm are 31.5 of them, and 11 mm 17.3."""
    texts = [text(r.detail) for r in plan_of("lamplighter").shopping if r.what == "button"]
    assert any("20 mm (31 ligne)" in t for t in texts)
    assert any("11 mm (17 ligne)" in t for t in texts)


def test_starch_is_bought_where_something_is_starched() -> None:
    assert bought("lamplighter", "starch") >= 1
    assert bought("kite", "starch") == 0
