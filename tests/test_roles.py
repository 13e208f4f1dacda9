"""What a thing is stands declared: nothing outside the block that drew it reads it out of a name."""

from __future__ import annotations

import ast
from pathlib import Path
from typing import Any

import pytest

from drafting.alter.fullness import Wish, fuller
from drafting.body import Body
from drafting.costume.garment import draft_garment
from drafting.draft.by_role import dart_legs
from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole, Half, PieceRole
from drafting.geometry import line
from tests.making.figures import made
from tests.making.orders import WOVEN, uneven
from tests.names_read import DRAWN, OTHER_NAMES, readings, reads, walked

PACKAGE = Path(__file__).resolve().parent.parent / "drafting"


def sources() -> list[tuple[str, str]]:
    """Return every module of the kit: where it stands in the package, and its code."""
    return [
        (path.relative_to(PACKAGE).as_posix(), path.read_text(encoding="utf-8"))
        for path in sorted(PACKAGE.rglob("*.py"))
    ]


def test_nothing_reads_meaning_out_of_a_name() -> None:
    found = [line for file, code in sources() for line in readings(code, file)]
    assert found == [], "\n".join(["declare it where it is drawn (drafting/draft/roles.py):", *found])


def test_every_function_that_is_let_off_still_takes_names_apart() -> None:
    found = {
        f"{file} {function}"
        for file, code in sources()
        for function, node in walked(ast.parse(code), "")
        if reads(node, file.startswith(DRAWN))
    }
    assert set(OTHER_NAMES) == found


@pytest.mark.parametrize(
    "line",
    [
        'any("cap" in edge.name.split("_") for edge in piece.edges)',
        'piece.name.startswith("tail")',
        'edge.name.endswith("_in")',
        'edge.name.removesuffix("_in")',
        '"casing" in piece.name',
        'edge.name == "neck"',
        '"waist" != edge.name',
        'e.name in ("neck", "gorge")',
        'name.rpartition("_")',
        'stem(piece).startswith("fly-")',
        'stem(piece) == "collar"',
        'seam.name == "back panel"',
        '"crotch" in edge',
        '"inseam" in piece',
        '"fly" not in draft["front"]',
        '"waistband" in draft',
        'draft["front"]["crotch"]',
        'piece["hem"].length',
        'piece[f"{dart}_out"]',
        'piece.name in (name, f"{name}-left")',
        'piece.name.endswith(f"-{hand}")',
        'piece.index("hem")',
        'BENDS.get(edge.name.split("_")[0])',
        "ALLOWANCES[edge.name]",
        "edge.name in TIGHT",
        're.match("cap_.*", edge.name)',
        'ref[1].startswith("cap")',
        'ref[1] == "fly"',
        'seam.a[0][1].startswith("armhole")',
        'waist.refs[0][0].startswith("back")',
        'mark.name == "pleat_fold"',
        'any("quarter" in n.name for n in seam.notches)',
        'level.name == "upper_arm"',
        'girth.level.startswith("across")',
        '"sleeve" in notion.where',
        'notion.where.replace(" ", "-") == "cuff-left"',
        'step.makes.startswith("coat: flare")',
        'f"{name}_inner" in names',
        'a.split("_")',
    ],
)
def test_the_usual_ways_to_read_a_name_are_found(line: str) -> None:
    found = [*readings(f"x = 1\ny = {line}\n", "making/x.py")]
    assert found
    assert all(place.startswith("making/x.py:2: ") for place in found)


def test_a_match_on_a_name_is_found() -> None:
    assert list(readings("match edge.name:\n    case 'neck':\n        pass\n"))


@pytest.mark.parametrize(
    "line",
    [
        "edge.role is EdgeRole.NECK",
        "piece.role in SLEEVES",
        "edge.name == other.name",
        "edge.name in piece",
        "draft[seam.a[0][0]]",
        "piece[edge.name]",
        'notion.what == "button"',
        'finding.level == "error"',
        'view.edge.partition(".")',
        "side.split(0.5 * side.length)",
        'facts["fly"]',
        'said("do.join", name=seam.name)',
    ],
)
def test_what_was_declared_may_be_read_and_names_may_be_looked_up_and_printed(line: str) -> None:
    assert not list(readings(line, "making/x.py"))


def test_a_drawing_may_look_up_the_edges_it_drew_itself() -> None:
    assert not list(readings('front["shoulder"].path', "shaping/x.py"))
    assert list(readings('front["shoulder"].path', "alter/x.py"))
    assert list(readings('edge.name.split("_")', "blocks/x.py"))


# ------------------------------------------------------------------- what was declared stays so


def drafted(block: str, body: Body, **choices: Any) -> Draft:
    return draft_garment(body, WOVEN, block, choices).draft


def declared(piece: Piece) -> list[tuple[EdgeRole, Half]]:
    """Return what the edges of a piece are, in no order."""
    return sorted((edge.role, edge.half) for edge in piece.edges)


@pytest.mark.parametrize("block", ["tailcoat", "shirt", "breeches", "trousers"])
def test_every_piece_of_the_kit_says_what_it_is(block: str) -> None:
    draft = drafted(block, made("lamplighter").costume.wearer)
    assert [p.name for p in draft.pieces if p.role is PieceRole.PLAIN] == []
    stiff = [p for p in draft.pieces if p.material == "interfacing"]
    assert all(name in draft for p in stiff for name in p.stiffens)
    assert all(p.stiffens for p in stiff)
    assert all(p.lines for p in draft.pieces if p.material == "lining")


@pytest.mark.parametrize("block", ["tailcoat", "shirt", "bodice"])
def test_named_by_hand_pieces_and_seams_are_what_they_were(block: str) -> None:
    body = made("lamplighter").costume.wearer
    one, two = drafted(block, body), drafted(block, uneven(body))
    for piece in two.pieces:
        half = one[piece.base or piece.name]
        hands = 1 if piece.hand else 2  # a whole piece has both halves, and no fold
        kept = [(e.role, e.half) for e in half.edges if piece.hand or e.kind is not EdgeKind.FOLD]
        assert (piece.role, piece.place, declared(piece)) == (half.role, half.place, sorted(hands * kept))
        named = [f"{name}-{piece.hand}" for name in (*half.stiffens, *half.lines)] if piece.hand else []
        if piece.hand:
            assert [*piece.stiffens, *piece.lines] == named
        assert all(name in two for name in (*piece.stiffens, *piece.lines))
    kinds = {seam.name: seam.kind for seam in one.seams}
    for seam in two.seams:
        assert seam.kind is kinds[seam.name if seam.name in kinds else seam.name.rsplit(" ", 1)[0]]


@pytest.mark.parametrize(
    ("block", "edge"), [("shirt", ("back", "hem")), ("shirt", ("sleeve", "hem")), ("tailcoat", ("tail-2", "hem"))]
)
def test_opened_like_a_fan_a_piece_is_what_it_was(block: str, edge: EdgeRef) -> None:
    draft = drafted(block, made("lamplighter").costume.wearer)
    full = fuller(draft, Wish(edge, cuts=3, amount=20.0))
    piece, before = full[edge[0]], draft[edge[0]]
    assert piece.area > before.area
    assert (piece.role, declared(piece)) == (before.role, declared(before))


def test_in_the_mirror_the_legs_of_a_dart_change_names_and_still_run_to_the_tip() -> None:
    front = drafted("bodice", made("lamplighter").costume.wearer)["front"]
    darts = {(a.name, b.name) for a, b in dart_legs(front)}
    assert darts
    for piece in (front, front.mirrored(), front.mirrored().mirrored()):
        for into, out in dart_legs(piece):
            assert into.dart
            assert out.dart
            assert (into.dart.inward, out.dart.inward) == (True, False)
            assert (into.dart.other, out.dart.other) == (out.name, into.name)
            assert into.path.end == pytest.approx(out.path.start)
        assert {(a.name, b.name) for a, b in dart_legs(piece)} == darts


def test_two_legs_that_declare_no_dart_make_one_all_the_same() -> None:
    corners = (0j, 100 + 0j, 110 + 40j, 120 + 0j, 130 + 40j, 140 + 0j, 200 + 0j, 100 + 200j)
    legs = (1, 2, 3, 4)
    edges = tuple(
        Edge(f"e{i}", line(a, b), EdgeKind.DART if i in legs else EdgeKind.SEAM)
        for i, (a, b) in enumerate(zip(corners, (*corners[1:], corners[0]), strict=True))
    )
    found = [(a.name, b.name) for a, b in dart_legs(Piece("own", edges))]
    assert found == [("e1", "e2"), ("e3", "e4")]
