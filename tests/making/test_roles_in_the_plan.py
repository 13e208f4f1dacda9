"""The plan goes by what was declared: an unlined cape, a knee patch, and every name another."""

from __future__ import annotations

import ast
from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import Any

import pytest

from drafting.checks import check_all
from drafting.checks.curves import BENDS
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.costume.make import Made
from drafting.draft.by_role import edges_as
from drafting.draft.draft import Draft
from drafting.draft.openings import ring_of
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.finish import finish
from drafting.finish.choices import FinishChoices
from drafting.geometry import line
from drafting.making.docket import interfaced
from drafting.making.model import Said, Step
from drafting.making.order import sewing_steps
from drafting.making.order.seam_kinds import is_sleeve
from drafting.making.settings import settings
from drafting.making.settings.pulling_on import passed
from drafting.making.tables import tables
from drafting.making.words import plan_sentence as text
from tests.making.figures import made
from tests.making.orders import WOVEN, uneven
from tests.making.renamed import Renamed


def planned_steps(garment: MadeGarment, made_costume: Made) -> tuple[Step, ...]:
    """Return the steps of one garment of a costume, sewn as its settings say."""
    alone = replace(made_costume, garments=(garment,))
    return sewing_steps(garment, made_costume.costume.fabrics, settings(alone, made_costume.costume.workroom))


def garment_of(draft: Draft, name: str) -> MadeGarment:
    """Return a garment of pieces that no block of the kit drew."""
    pattern = finish(draft, name, "shell", FinishChoices())
    return MadeGarment(
        name=name,
        block=name,
        fabric="shell",
        draft=draft,
        pattern=pattern,
        as_sewn=pattern,
        choices={},
        findings=(),
    )


def unhyphened(words: str) -> str:
    """Return words as they are where some names are put in words already and others are not yet."""
    return words.replace("-", " ")


def told(steps: Iterable[Step]) -> str:
    """Return everything that steps say."""
    return "\n".join(text(said) for step in steps for said in step.say)


@pytest.mark.parametrize("lined", ["none", "body", "whole"])
def test_only_what_is_lined_has_a_lining_felled_to_it(lined: str) -> None:
    costume = made("lamplighter")
    coat = draft_garment(costume.costume.wearer, WOVEN, "tailcoat", {"lining": lined})
    said = told(planned_steps(coat, costume))
    front = "the lining is felled to it" in said
    assert ("felling" in said, front) == (lined != "none", lined == "whole")
    assert ("Put the body's lining in" in said) == (lined != "none")
    assert "free front edge (tail 4 front)" in said  # it is finished in any case
    if lined == "none":
        assert "lining" not in said.lower()


def flap(name: str, edges: Sequence[tuple[str, EdgeKind, EdgeRole]], **more: Any) -> Piece:
    """Return a four-sided piece, 400 by 300 mm, its edges from the lower one round."""
    corners = (0j, 400 + 0j, 400 + 300j, 300j)
    sides = zip(edges, corners, (*corners[1:], corners[0]), strict=True)
    ring = tuple(Edge(n, line(a, b), kind, role=role) for (n, kind, role), a, b in sides)
    return Piece(name, ring, **more)


def test_an_unlined_cape_says_nothing_of_a_lining() -> None:
    cape = flap(
        "cape",
        [
            ("hem", EdgeKind.HEM, EdgeRole.HEM),
            ("front", EdgeKind.OPENING, EdgeRole.FRONT_EDGE),
            ("neck", EdgeKind.OPENING, EdgeRole.NECK),
            ("centre", EdgeKind.FOLD, EdgeRole.CENTRE),
        ],
    )
    said = told(planned_steps(garment_of(Draft((cape,)), "cape"), made("kite")))
    assert "lining" not in said
    assert "free front edge (cape front)" in said


def test_what_declares_nothing_is_plain_and_an_edge_called_front_is_no_free_front() -> None:
    plain = [("lining_hem", EdgeKind.HEM), ("front", EdgeKind.OPENING), ("cap", EdgeKind.OPENING)]
    mat = flap("sleeve-mat", [*((*e, EdgeRole.PLAIN) for e in plain), ("fly", EdgeKind.OPENING, EdgeRole.PLAIN)])
    said = told(planned_steps(garment_of(Draft((mat,)), "mat"), made("kite")))
    assert "sleeve mat front, sleeve mat cap, sleeve mat fly" in said
    assert "free front" not in said


def test_a_knee_patch_with_an_edge_called_knee_cap_is_no_sleeve() -> None:
    costume = made("lamplighter")
    breeches = draft_garment(costume.costume.wearer, WOVEN, "breeches", {})
    names = ("knee_cap", "side_left", "hem", "side_right")
    patch = flap("knee-patch", [(n, EdgeKind.HEM, EdgeRole.PLAIN) for n in names], role=PieceRole.APPLIQUE)
    assert not is_sleeve(patch)
    assert passed(breeches.draft, patch, patch["knee_cap"]) == ()
    steps = planned_steps(garment_of(breeches.draft + Draft((patch,)), "breeches"), costume)
    assert "sleeve" not in told(steps) + " ".join(step.makes for step in steps)
    assert patch["knee_cap"].role not in BENDS
    sewn, narrow = (replace(patch["knee_cap"], kind=EdgeKind.SEAM), FinishChoices(curve_allowance=6.0))
    assert narrow.width(sewn, patch) == narrow.seam_allowance != narrow.curve_allowance


def test_pieces_named_by_hand_are_lined_stiffened_and_buttoned_like_any() -> None:
    costume = made("lamplighter")
    body = uneven(costume.costume.wearer)
    coat, shirt = (draft_garment(body, WOVEN, block, {}) for block in ("tailcoat", "shirt"))
    said = told(planned_steps(coat, costume))
    assert "by the same seams as the shell: back panel left, " in said
    buttons = next(t for t in tables(replace(costume, garments=(shirt,))) if t.key == "table.buttons")
    assert all(row[3] != Said("table.places", (("places", "-"),)) for row in buttons.rows)
    stiff = shirt.draft["collar-stand-interfacing"]  # whole, as the stand is
    assert stiff.stiffens == ("collar-stand",)
    assert all(stiff.name not in {ref[0] for ref in (*s.a, *s.b)} for s in shirt.draft.seams)


@pytest.mark.parametrize(
    ("choices", "role", "over"),
    [
        ({"bust_dart": "waist"}, EdgeRole.WAIST, ("hip_girth",)),
        ({"bust_dart": "neck"}, EdgeRole.NECK, ("head_girth",)),
    ],
)
def test_an_edge_in_two_parts_beside_a_dart_passes_over_what_the_whole_one_does(
    choices: dict[str, str], role: EdgeRole, over: tuple[str, ...]
) -> None:
    draft = draft_garment(made("lamplighter").costume.wearer, WOVEN, "bodice", choices).draft
    front = draft["front"]
    parts = edges_as(front, role)
    assert len(parts) == 2
    assert all(passed(draft, front, part) == over for part in parts)
    assert ring_of(draft, front, parts[0]) == ring_of(draft, draft["back"], edges_as(draft["back"], role)[0])


def garments() -> list[tuple[str, MadeGarment]]:
    """Return the lamplighter's garments, and a coat for two sides that differ."""
    lamplighter = made("lamplighter")
    coat = draft_garment(uneven(lamplighter.costume.wearer), WOVEN, "tailcoat", {}, name="coat")
    return [*((g.name, g) for g in lamplighter.garments), ("uneven", coat)]


@pytest.mark.parametrize("name", ["coat", "shirt", "breeches", "uneven"])
def test_with_every_name_another_the_plan_is_the_same_but_for_the_names(name: str) -> None:
    costume, garment = made("lamplighter"), dict(garments())[name]
    renamed = Renamed(seed=20)
    other = renamed.garment(garment)
    assert not {p.name for p in other.draft.pieces} & {p.name for p in garment.draft.pieces}
    one, two = (replace(costume, garments=(g,)) for g in (garment, other))
    room = costume.costume.workroom
    assert unhyphened(renamed.back(planned_steps(other, costume))) == unhyphened(
        repr(planned_steps(garment, costume))
    )
    assert unhyphened(renamed.back(settings(two, room))) == unhyphened(repr(settings(one, room)))
    assert renamed.back(tables(two)) == repr(tables(one))
    assert [(s.piece.name, t.piece.name) for s, t in interfaced(garment)] == [
        tuple(ast.literal_eval(renamed.back((s.piece.name, t.piece.name)))) for s, t in interfaced(other)
    ]


@pytest.mark.parametrize("name", ["coat", "shirt", "breeches", "uneven"])
def test_with_every_name_another_the_checks_find_the_same(name: str) -> None:
    garment = dict(garments())[name]
    other = Renamed(seed=21).garment(garment)
    body = made("lamplighter").costume.wearer

    def found(made_garment: MadeGarment) -> list[str]:
        said = check_all(made_garment.draft, made_garment.as_sewn, body)
        return sorted(f"{f.check} {f.level} {f.value} {f.wanted}" for f in said)

    assert found(other) == found(garment)


@pytest.mark.parametrize("name", ["coat", "shirt", "breeches", "uneven"])
def test_with_every_name_another_the_cut_lines_are_the_same(name: str) -> None:
    garment = dict(garments())[name]
    other = Renamed(seed=22).garment(garment)
    choices = FinishChoices(seam_allowance=12.0, curve_allowance=7.0)
    one, two = (finish(g.draft, "x", "shell", choices).pieces for g in (garment, other))
    assert [cut.cut for cut in two] == [cut.cut for cut in one]
    assert [[*cut.allowances.values()] for cut in two] == [[*cut.allowances.values()] for cut in one]
