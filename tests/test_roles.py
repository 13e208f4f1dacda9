"""What a thing is stands declared; nothing outside the blocks reads it out of a name.

The first half reads the sources as a syntax tree and names the line of every such reading. A block
may look up the edges it drew itself by the names it gave them, and so may the shapes it draws with.
"""

from __future__ import annotations

import ast
import random
import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from drafting.checks import check_all
from drafting.checks.curves import BENDS
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.costume.make import Made
from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.pattern import CutPiece
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.finish import finish
from drafting.finish.allowance import allowances_of
from drafting.finish.choices import FinishChoices
from drafting.geometry import line
from drafting.making.docket import interfaced
from drafting.making.model import Step
from drafting.making.order import sewing_steps
from drafting.making.order.seam_kinds import is_sleeve
from drafting.making.settings import settings
from drafting.making.settings.pulling_on import passed
from drafting.making.tables import tables
from drafting.making.words import text
from tests.making.figures import made
from tests.making.orders import WOVEN, uneven

PACKAGE = Path(__file__).resolve().parent.parent / "drafting"

DRAWN = ("blocks/", "shaping/")
"""Folders that draw: what they gave a name they may look up by it, though not take the name apart."""

NAMED = {"name", "where", "level", "base", "makes"}
"""Attributes that tell one thing from another."""

THINGS = {
    "draft",
    "piece",
    "pieces",
    "edge",
    "edges",
    "seam",
    "seams",
    "front",
    "back",
    "sleeve",
    "band",
    "facing",
    "collar",
    "facings",
    "other",
    "shell",
    "stiff",
    "garment",
    "name",
    "names",
    "words",
    "notion",
    "part",
    "where",
    "stem",
}
"""What pieces, edges, seams and their names are called in the code."""

TAKES_APART = {
    "startswith",
    "endswith",
    "split",
    "rsplit",
    "partition",
    "rpartition",
    "removeprefix",
    "removesuffix",
    "index",
    "find",
    "count",
}

JOINTS = ("_", "-")
"""How words of a name are put together."""

KEYS = (".", ": ", ",")
"""What parts a key of two names, as a maker writes it (`front.lapel`): that is no meaning."""

ANSWERS = {"ok", "note", "warning", "error"}
"""What the level of a finding may be: that is declared."""

OTHER_NAMES = {
    "blocks/__init__.py _modules": "names of modules",
    "body/dimensions.py _read": "a range of ages",
    "body/estimates.py estimates": "names of measures",
    "body/tables.py _put": "names of measures",
    "export/cover.py _map": "titles of pages",
    "export/folder.py _sync": "the system's name",
    "export/svg.py _groups": "a dict of attributes",
    "finish/choices.py proposed": "names of choices",
    "label.py estimated_line": "names of measures",
    "making/order/sound.py _parts": "keys of parts, as the bench makes them",
    "making/words/__init__.py texts": "names of files",
    "notebook/changes_view.py _row": "a number's sign",
    "notebook/measuring_fields.py _labels": "names of measures",
    "notebook/measuring_fields.py show_hands": "names of measures",
    "notebook/swatch.py sentences": "names of measures",
    "print_wishes.py wants": "keys as a maker writes them",
    "printout.py _printed": "names of papers",
    "report.py _is_about": "a finding's place, as the checks write it",
    "sheet/wearer/levels.py falling": "names of fields",
}
"""Functions that take other names apart than those of pieces, edges and seams: file and function."""


def readings(code: str, file: str = "x.py") -> Iterator[str]:
    """Yield `file:line` and the words of each place where `code` reads meaning out of a name."""
    for function, node in _walked(ast.parse(code), ""):
        if f"{file} {function}" not in OTHER_NAMES and _reads(node, file.startswith(DRAWN)):
            yield f"{file}:{node.lineno}: {ast.unparse(node)}"


def _walked(node: ast.AST, function: str) -> Iterator[tuple[str, ast.expr]]:
    """Yield every expression with the function it stands in; a `match` on a name as a comparison."""
    for child in ast.iter_child_nodes(node):
        inner = child.name if isinstance(child, ast.FunctionDef) else function
        if isinstance(child, ast.expr):
            yield inner, child
        if isinstance(child, ast.Match) and (_is_name(child.subject) or _is_apart(child.subject)):
            yield (inner, ast.Compare(ast.Name("edge"), [ast.Eq()], [ast.Constant("case")], lineno=child.lineno))
        yield from _walked(child, inner)


def _reads(node: ast.expr, drawn: bool) -> bool:
    match node:
        case ast.Call(ast.Attribute(ast.Name("re"), _), args):
            return any(_is_name(arg) for arg in args)
        case ast.Call(ast.Attribute(ast.Name(table), "get"), [key, *_]) if table.isupper():
            return _is_looked_up(key)
        case ast.Call(ast.Attribute(held, method), args) if method in TAKES_APART:
            return _takes_apart(held, method, args)
        case ast.Subscript(ast.Name(table), key) if table.isupper():
            return _is_looked_up(key)
        case ast.Subscript(held, key):
            return not drawn and _is_thing(held) and _is_text(key)
        case ast.Compare(left, [ast.In() | ast.NotIn()], [right]):
            return _is_inside(left, right, drawn)
        case ast.Compare(left, [ast.Eq() | ast.NotEq()], [right]):
            return _is_told(left, right) or _is_told(right, left)
    return False


def _is_looked_up(key: ast.expr) -> bool:
    """Say whether a name, or a part of one, is looked up in a table of words."""
    return _is_apart(key) or (_is_name(key) and getattr(key, "attr", "") != "level")


def _takes_apart(held: ast.expr, method: str, args: list[ast.expr]) -> bool:
    """Say whether a method takes a name apart: by what it is called on, or by what joins names."""
    texts = [text for arg in args for text in _texts(arg)]
    if method in ("index", "find", "count"):
        return bool(texts) and _is_thing(held)
    if any(text.startswith(JOINTS) or text.endswith(JOINTS) for text in texts):
        return True
    parts = bool(texts) and not any(text in KEYS for text in texts)
    return parts and (_is_name(held) or _is_thing(held))


def _is_apart(node: ast.expr) -> bool:
    """Say whether an expression is a part of a name that was taken apart."""
    match node:
        case ast.Subscript(held, _):
            return _is_apart(held)
        case ast.Call(ast.Attribute(held, method), args):
            return method in TAKES_APART and _takes_apart(held, method, args)
    return False


def _is_inside(left: ast.expr, right: ast.expr, drawn: bool) -> bool:
    """Say whether `left in right` finds a word in a name, a named edge, or a name in a list of words."""
    if isinstance(right, ast.Attribute) and right.attr in NAMED:
        return True
    if _is_text(left) and _is_thing(right) and not (drawn and _holds_edges(right)):
        return True
    if isinstance(right, ast.Name) and right.id.isupper():
        return _is_looked_up(left)
    return _is_told(left, right)


def _holds_edges(node: ast.expr) -> bool:
    """Say whether an expression is a piece in whose ring a drawing may look for an edge it drew."""
    return isinstance(node, ast.Name) and node.id in ("front", "back", "piece")


def _is_told(one: ast.expr, other: ast.expr) -> bool:
    """Say whether a name is compared with words."""
    texts = _texts(other)
    return _is_name(one) and bool(texts) and not set(texts) <= ANSWERS


def _is_name(node: ast.expr) -> bool:
    """Say whether an expression is the name of a thing: `edge.name`, `ref[1]`, `seam.a[0][1]`."""
    match node:
        case ast.Attribute(_, attribute):
            return attribute in NAMED
        case ast.Name(name):
            return name in ("edge", "seam", "stem")
        case ast.Subscript(held, ast.Constant(int())):
            return _is_ref(held)
        case ast.Call(ast.Name(helper), _):
            return helper in ("stem", "hand", "base_name")
        case ast.Call(ast.Attribute(held, "lower" | "casefold" | "replace"), _):
            return _is_name(held)
        case ast.Set([item]) | ast.SetComp(item):
            return _is_name(item)
    return False


def _is_ref(node: ast.expr) -> bool:
    match node:
        case ast.Name(name):
            return name.rstrip("s") == "ref"
        case ast.Subscript(ast.Attribute(_, "a" | "b" | "refs"), _):
            return True
    return False


def _is_thing(node: ast.expr) -> bool:
    match node:
        case ast.Name(name):
            return name in THINGS
        case ast.Attribute(_, attribute):
            return attribute in {"draft", "piece", "edges", "pieces", "seams"} | NAMED
        case ast.Subscript(held, ast.Constant(int())) if _is_ref(held):
            return True
        case ast.Subscript(held, _):
            return _is_thing(held)
        case ast.Call(ast.Attribute(held, "split" | "lower" | "replace"), _):
            return _is_name(held) or _is_thing(held)
    return False


def _is_text(node: ast.expr) -> bool:
    return bool(_texts(node))


def _texts(node: ast.expr) -> list[str]:
    """Return the texts that an expression consists of: one, or those of a tuple, list or set."""
    match node:
        case ast.Constant(str() as text):
            return [text] if text else []
        case ast.JoinedStr(parts):
            return [text for part in parts for text in _texts(part)]
        case ast.Tuple(items) | ast.List(items) | ast.Set(items):
            return [text for item in items for text in _texts(item)]
    return []


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
        for function, node in _walked(ast.parse(code), "")
        if _reads(node, file.startswith(DRAWN))
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


# --------------------------------------------------------------------------- what the plan says


def planned_steps(garment: MadeGarment, made_costume: Made) -> tuple[Step, ...]:
    """Return the steps of one garment of a costume, sewn as its settings say."""
    alone = replace(made_costume, garments=(garment,))
    fabric = made_costume.costume.fabrics.get(garment.fabric)
    return sewing_steps(garment, fabric, settings(alone, made_costume.costume.workroom))


def garment_of(draft: Draft, name: str) -> MadeGarment:
    """Return a garment of pieces that no block of the kit drew."""
    pattern = finish(draft, name, "shell", FinishChoices())
    return MadeGarment(name, name, "shell", draft, pattern, pattern, {}, ())


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
    assert ("Put the lining in" in said) == (lined != "none")
    assert "free front edge (tail-4 front)" in said  # it is finished in any case
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
    assert "sleeve-mat front, sleeve-mat cap, sleeve-mat fly" in said
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
    assert FinishChoices().width(replace(patch["knee_cap"], kind=EdgeKind.SEAM)) == 10.0


# -------------------------------------------------------------------------------- other names


class Renamed:
    """Gives every name of a draft a random word in its place, and takes the words back again."""

    def __init__(self, seed: int) -> None:
        self._random = random.Random(seed)
        self._words: dict[tuple[str, str], str] = {}

    def __call__(self, sort: str, name: str) -> str:
        if not name:
            return ""
        letters = "".join(self._random.choices("bdfgklmnprtvz", k=10))
        return self._words.setdefault((sort, name), letters)

    def back(self, words: object) -> str:
        names = {word: name for (_, name), word in self._words.items()}
        return re.sub("[bdfgklmnprtvz]{10}", lambda m: names.get(m[0], m[0]), repr(words))

    def ref(self, ref: EdgeRef) -> EdgeRef:
        return self("piece", ref[0]), self("edge", ref[1])

    def chain(self, refs: Iterable[EdgeRef]) -> tuple[EdgeRef, ...]:
        return tuple(self.ref(ref) for ref in refs)

    def edge(self, edge: Edge) -> Edge:
        leg = edge.dart and replace(
            edge.dart, dart=self("dart", edge.dart.dart), other=self("edge", edge.dart.other)
        )
        notches = tuple(replace(n, name=self("notch", n.name)) for n in edge.notches)
        return replace(edge, name=self("edge", edge.name), twin=self("edge", edge.twin), dart=leg, notches=notches)

    def piece(self, piece: Piece) -> Piece:
        names = {key: tuple(self("piece", name) for name in getattr(piece, key)) for key in ("stiffens", "lines")}
        marks = (replace(m, name=self("mark", m.name), piece=self("piece", m.piece)) for m in piece.placements)
        return replace(
            piece,
            name=self("piece", piece.name),
            base=self("piece", piece.base),
            **names,
            edges=tuple(self.edge(edge) for edge in piece.edges),
            placements=tuple(marks),
        )

    def cut(self, cut: CutPiece) -> CutPiece:
        allowances = {self("edge", name): width for name, width in cut.allowances.items()}
        return replace(cut, piece=self.piece(cut.piece), allowances=allowances)

    def draft(self, draft: Draft) -> Draft:
        seams = (
            replace(
                s,
                name=self("seam", s.name),
                a=self.chain(s.a),
                b=self.chain(s.b),
                notches=tuple(replace(n, name=self("notch", n.name)) for n in s.notches),
            )
            for s in draft.seams
        )
        notions = (replace(n, piece=self("piece", n.piece), edges=self.chain(n.edges)) for n in draft.notions)
        return replace(
            draft,
            pieces=tuple(self.piece(piece) for piece in draft.pieces),
            seams=tuple(seams),
            notions=tuple(notions),
            chains={k: self.chain(refs) for k, refs in draft.chains.items()},
        )

    def garment(self, garment: MadeGarment) -> MadeGarment:
        pieces = tuple(self.cut(cut) for cut in garment.pattern.pieces)
        pattern = replace(garment.pattern, pieces=pieces)
        trims = (replace(t, piece=self("piece", t.piece), edge=self("edge", t.edge)) for t in garment.trims)
        return replace(
            garment, draft=self.draft(garment.draft), pattern=pattern, as_sewn=pattern, trims=tuple(trims)
        )


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
    assert renamed.back(planned_steps(other, costume)) == repr(planned_steps(garment, costume))
    assert renamed.back(settings(two, costume.costume.workroom)) == repr(settings(one, costume.costume.workroom))
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
        return sorted(f"{f.check} {f.level} {f.value} {f.wanted}" for f in said if f.check != "drawing")

    assert found(other) == found(garment)


@pytest.mark.parametrize("name", ["coat", "shirt", "breeches", "uneven"])
def test_with_every_name_another_the_cut_lines_are_the_same(name: str) -> None:
    garment = dict(garments())[name]
    other = Renamed(seed=22).garment(garment)
    for cut, again in zip(
        garment.as_sewn.pieces, finish(other.draft, "x", "shell", FinishChoices()).pieces, strict=True
    ):
        assert list(again.allowances.values()) == list(allowances_of(cut.piece, FinishChoices()).values())
