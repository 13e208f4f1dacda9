"""The small picture of a choice, against two drafts of one's own; and when it is made."""

from __future__ import annotations

import re
from pathlib import Path
from types import SimpleNamespace

import pytest
from svgelements import Path as SvgPath

from drafting.costume.choices import block_named, garment_choices
from drafting.costume.file import read_costume
from drafting.ground.shipped import demo_costume
from drafting.notebook.bench import state as st
from drafting.notebook.bench.fields import Knobs
from drafting.notebook.bench.sample import sample
from drafting.notebook.bench.sampling import Sampling
from tests.notebook.trials import trial_costumes

SHIRT = st.begin_standing(read_costume(demo_costume()), "shirt")
CHOICES = {choice.name: choice for choice in garment_choices(block_named("shirt"))}


def outlines(svg: str) -> dict[str, SvgPath]:
    return {kind: SvgPath(d) for kind, d in reversed(re.findall(r'class="(was|now)" d="([^"]+)"', svg))}


def widths(svg: str) -> dict[str, float]:
    boxes = {kind: path.bbox() for kind, path in outlines(svg).items()}
    return {kind: x1 - x0 for kind, (x0, _, x1, _) in boxes.items()}


def test_more_ease_at_the_bust_is_a_wider_outline_and_the_words_say_which_is_which() -> None:
    svg = str(sample(SHIRT.made, CHOICES["bust_ease"]))
    wide = widths(svg)
    assert wide["now"] > wide["was"] + 5  # drafted low, dashed; drafted high, full
    (words,) = re.findall(r'aria-label="([^"]+)"', svg)
    low, high = (float(cm) for cm in re.findall(r"([\d.]+) cm", words))
    assert low < 10 < high  # what the lamplighter's shirt has, by default
    assert "cm" not in re.findall(r'aria-label="([^"]+)"', str(sample(SHIRT.made, CHOICES["bust_ease"], "in")))[0]


@pytest.mark.parametrize(("name", "piece"), [("flare", "tail"), ("panels", "tail"), ("bone_width", "bone casing")])
def test_a_strip_that_only_follows_an_edge_is_shown_where_nothing_else_moves(name: str, piece: str) -> None:
    coat = st.begin_standing(read_costume(demo_costume()), "coat")
    known = {choice.name: choice for choice in garment_choices(block_named("tailcoat"))}
    assert f", on the {piece}" in str(sample(coat.made, known[name]))


@pytest.mark.parametrize("name", ["bust_dart", "collar"])
def test_a_word_is_shown_beside_another_word(name: str) -> None:
    svg = sample(SHIRT.made, CHOICES[name])
    assert svg is not None
    assert {"was", "now"} & set(outlines(str(svg)))


def test_every_choice_of_a_shirt_has_a_picture_or_moves_no_outline() -> None:
    """What has none changes marks, counts or words only; these are they."""
    bare = {name for name, choice in CHOICES.items() if sample(SHIRT.made, choice) is None}
    assert len(CHOICES) - len(bare) > len(CHOICES) / 2
    assert not bare & {"bust_ease", "waist_ease", "arm_ease", "cap_ease", "cuff_depth", "sleeve_length"}


def test_a_choice_that_can_move_one_way_only_is_drawn_from_where_it_stands(tmp_path: Path) -> None:
    """A waist of firm cloth cannot be smaller than the body's; what gives nothing has no stretch to share."""
    standing = st.begin_standing(read_costume(trial_costumes(tmp_path)["child"]), "legs")
    choices = {choice.name: choice for choice in garment_choices(block_named("trousers"))}
    wide = widths(str(sample(standing.made, choices["waist_ease"])))
    assert wide["now"] > wide["was"]
    assert sample(standing.made, choices["stretch_share"]) is None


def test_only_what_is_in_sight_is_drawn_once_and_for_the_garment_that_stands() -> None:
    bench = SimpleNamespace(garment="shirt", controls=CHOICES, standing=SHIRT, unit="cm")
    knobs = Knobs()
    sampling = Sampling(bench, knobs)
    knobs.wanted = ["waist_ease", "no_such_choice"]
    assert knobs.samples == {}  # not while the hand may still be moving
    sampling._next()
    assert set(knobs.samples) == {"waist_ease"}
    drawn = knobs.samples["waist_ease"]
    sampling._next()
    assert knobs.samples["waist_ease"] is drawn
    bench.garment = "coat"
    knobs.wanted = []
    sampling._next()
    assert knobs.samples == {}
