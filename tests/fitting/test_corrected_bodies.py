"""A body whose measures were falsified and then corrected by notes drafts as the true body does.

The falsifications are those that a first fitting finds most often (common practice): the waist 3 cm off, one
shoulder 1.5 cm lower, the back 2 cm shorter, the upper arm 2 cm fuller, the front crotch 2 cm longer.
"""

from __future__ import annotations

import itertools
from pathlib import Path

import pytest

from drafting.blocks import all_blocks
from drafting.body import Body
from drafting.costume.garment import draft_garment
from drafting.draft.draft import Draft
from drafting.fitting.file import read_fitting
from drafting.fitting.measures import corrected
from tests.drawn_bodies import drawn

FEW, ALL = 3, 100

NEAR = 2.0
"""mm: how near the corrected draft has to come to the true one, anywhere on an outline."""

NOTES = """
[[notes]]
side = "both"
where = "waist"
verb = "let out"
amount = "0.75 cm"
as = "pinch"
kind = "body"

[[notes]]
side = "right"
where = "shoulder"
verb = "lower"
amount = "15 mm"
kind = "body"

[[notes]]
where = "back_waist_length"
verb = "shorten"
amount = "2 cm"
kind = "body"

[[notes]]
where = "upper_arm_girth"
verb = "let out"
amount = "2 cm"
as = "total"
kind = "body"

[[notes]]
where = "total_crotch_length"
verb = "lengthen"
amount = "2 cm"
kind = "body"
"""


def true_and_false(body: Body) -> tuple[Body, Body]:
    """Return a body as it is, and as the tape had it."""
    drop = body["shoulder_drop"]
    taken = {
        "waist_girth": body["waist_girth"],
        "shoulder_drop": drop,
        "back_waist_length": body["back_waist_length"],
        "upper_arm_girth": body["upper_arm_girth"],
        "total_crotch_length": body["total_crotch_length"],
        "back_crotch_length": body["back_crotch_length"],
    }
    true = body.changed(**{**taken, "shoulder_drop": (drop, drop + 15)})
    wrong = {
        **taken,
        "waist_girth": taken["waist_girth"] - 30,
        "back_waist_length": taken["back_waist_length"] + 20,
        "upper_arm_girth": taken["upper_arm_girth"] - 20,
        "total_crotch_length": taken["total_crotch_length"] - 20,
    }
    return true, body.changed(**wrong)


def farthest(one: Draft, other: Draft) -> float:
    """Return how far apart two drafts' corners and edges' middles lie at most, mm."""
    assert edges_of(one) == edges_of(other)
    return max(
        abs(a.path.at(share * a.length) - b.path.at(share * b.length))
        for p, q in zip(one.pieces, other.pieces, strict=True)
        for a, b in zip(p.edges, q.edges, strict=True)
        for share in (0.0, 0.25, 0.5, 0.75)
    )


def edges_of(draft: Draft) -> list[tuple[str, list[str]]]:
    """Return the pieces of a draft with their edges, by name."""
    return [(piece.name, [edge.name for edge in piece.edges]) for piece in draft.pieces]


def check(body: Body, folder: Path) -> None:
    path = folder / "first.toml"
    path.write_text(f'title = "First"\nunit = "cm"\n{NOTES}', "utf-8")
    true, wrong = true_and_false(body)
    found = corrected(wrong, read_fitting(path).notes)
    assert [one.carried for one in found.done] == [True] * 5
    for block in ("shirt", "trousers"):
        wanted, fitted, before = (draft_garment(who, None, block).draft for who in (true, found.body, wrong))
        assert farthest(wanted, fitted) <= NEAR
        if edges_of(before) == edges_of(
            wanted
        ):  # else the slip has changed what is drafted, which is worth one too
            assert farthest(wanted, before) > NEAR  # the tape's slip is worth a note


@pytest.mark.parametrize("number", range(FEW))
def test_a_falsified_body_that_notes_corrected_drafts_as_the_true_one(number: int, tmp_path: Path) -> None:
    check(drawn(ALL)[number * 33], tmp_path)


@pytest.mark.population
def test_a_hundred_falsified_bodies_that_notes_corrected_draft_as_the_true_ones(tmp_path: Path) -> None:
    for body in itertools.islice(drawn(ALL), ALL):
        check(body, tmp_path)


def test_the_blocks_that_are_compared_read_what_was_falsified() -> None:
    assert {"shirt", "trousers"} <= set(all_blocks())
