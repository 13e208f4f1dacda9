"""Each rule of the order finds the fault that it is there for. Common practice of the workroom."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import cache

import pytest
from hypothesis import given, reject
from hypothesis import settings as hypothesis_settings
from hypothesis import strategies as st

from drafting.blocks import all_blocks, names
from drafting.costume.garment import draft_garment
from drafting.costume.make import Made
from drafting.draft.piece import EdgeKind
from drafting.fabric.sorts import SORTS, Sort
from drafting.ground.errors import DraftError, InputError
from drafting.making.model import Step
from drafting.making.rules import unsound
from drafting.making.stages.drawn import sewn_on_paper
from drafting.making.stages.picture import InkMark
from drafting.reading.trimming import KINDS, TrimWish
from tests.bodies import bdims
from tests.making.orders import KNIT, WOVEN, costume_of, order_of

SHEER = replace(WOVEN, title="Voile, invented", sort="sheer", takes_starch=False)


@cache
def worked(block: str, fabric: str = "woven") -> tuple[Made, tuple[Step, ...]]:
    cloth = {"woven": WOVEN, "knit": KNIT, "sheer": SHEER}[fabric]
    costume = costume_of(draft_garment(bdims()[3], cloth, block), cloth)
    return costume, order_of(costume)


def index(steps: tuple[Step, ...], holds: Callable[[Step], bool]) -> int:
    return next(i for i, step in enumerate(steps) if holds(step))


def moved(steps: tuple[Step, ...], taken: int, to: int) -> tuple[Step, ...]:
    rest = [*steps[:taken], *steps[taken + 1 :]]
    return (*rest[:to], steps[taken], *rest[to:])


def changed(steps: tuple[Step, ...], i: int, **facts: object) -> tuple[Step, ...]:
    return (*steps[:i], replace(steps[i], **facts), *steps[i + 1 :])  # type: ignore[arg-type]


def without(steps: tuple[Step, ...], i: int, word: str) -> tuple[Step, ...]:
    """Return the steps with one sentence of a step left out, and what it does."""
    say = tuple(one for one in steps[i].say if not one.key.endswith(f".{word}"))
    return changed(steps, i, say=say, does=tuple(d for d in steps[i].does if d != "neatens"))


def verb(word: str) -> Callable[[Step], bool]:
    return lambda step: step.verb == word


def levelled(step: Step) -> bool:
    return "levels" in step.does


def seam(name: str) -> Callable[[Step], bool]:
    return lambda step: name in step.seams


FAULTS: dict[str, tuple[str, str, Callable[[tuple[Step, ...]], tuple[Step, ...]], str]] = {
    "pressed before it is tried on": (
        "shirt",
        "woven",
        lambda s: moved(s, index(s, seam("side")), 0),
        "before the first fitting",
    ),
    "fused before it is tried on": (
        "shirt",
        "woven",
        lambda s: moved(s, index(s, verb("fuse")), 0),
        "before the first fitting",
    ),
    "basted with short stitches": (
        "shirt",
        "woven",
        lambda s: changed(s, 0, setting=replace(s[0].setting, stitch_length=2.5)),  # type: ignore[type-var]
        "bastes with stitches",
    ),
    "a seam not basted": ("shirt", "woven", lambda s: changed(s, 0, basted=s[0].basted[1:]), "is not basted"),
    "never tried on": ("shirt", "woven", lambda s: tuple(x for x in s if x.verb != "fit"), "never tried on"),
    "a band fused before it hangs": (
        "tailcoat",
        "woven",
        lambda s: moved(
            s, index(s, lambda x: x.verb == "fuse" and "tailcoat.tail-1" in x.pieces), index(s, levelled)
        ),
        "fuses a band",
    ),
    "a hem turned before it hangs": (
        "tailcoat",
        "woven",
        lambda s: moved(s, index(s, lambda x: ("tail-1", "hem") in x.edges), index(s, levelled)),
        "turns a hem",
    ),
    "hung for an hour": ("tailcoat", "woven", lambda s: changed(s, index(s, levelled), wait=1.0), "never hung"),
    "hung before its waist is sewn": (
        "tailcoat",
        "woven",
        lambda s: moved(s, index(s, seam("coat waist")), index(s, levelled)),
        "it hangs before",
    ),
    "its lining not hung": (
        "tailcoat",
        "woven",
        lambda s: tuple(x for x in s if not (x.verb == "hang" and "lining" in x.makes)),
        "lining of its bias panels never hangs",
    ),
    "a seam sewn after the lining": (
        "tailcoat",
        "woven",
        lambda s: moved(s, index(s, verb("bone")), len(s) - 1),
        "after the lining",
    ),
    "padded before the sleeves": (
        "tailcoat",
        "woven",
        lambda s: moved(s, index(s, verb("pad")), 3),
        "padded before the sleeves",
    ),
    "bones before the hem": (
        "tailcoat",
        "woven",
        lambda s: moved(s, index(s, verb("bone")), 3),
        "before the hem that it lies in",
    ),
    "taped after the facing": (
        "tailcoat",
        "woven",
        lambda s: moved(s, index(s, verb("stay")), len(s) - 2),
        "after the facing",
    ),
    "a fly's shield after the band is closed": (
        "trousers",
        "woven",
        lambda s: moved(s, index(s, seam("fly shield waistband")), index(s, seam("waistband"))),
        "closed already",
    ),
    "a collar's stand before its fall": (
        "shirt",
        "woven",
        lambda s: moved(s, index(s, seam("collar edge")), index(s, seam("stand front")) + 1),
        "fall is not turned",
    ),
    "a slit in a closed sleeve": (
        "shirt",
        "woven",
        lambda s: moved(s, index(s, verb("bind")), index(s, seam("sleeve underarm")) + 1),
        "slit in a closed sleeve",
    ),
    "raw edges": (
        "shirt",
        "woven",
        lambda s: without(s, index(s, seam("side")), "neaten_open"),
        "leaves raw edges",
    ),
    "overcast twice": (
        "close-top",
        "knit",
        lambda s: tuple(
            replace(x, setting=replace(x.setting, stitch="514"), does=(*x.does, "neatens"))
            if x.setting and x.seams
            else x
            for x in s
        ),
        "overcast already",
    ),
    "no French seam": ("shirt", "sheer", lambda s: without(s, index(s, seam("side")), "french"), "no French seam"),
    "never starched": (
        "shirt",
        "woven",
        lambda s: tuple(x if x.verb != "starch" else replace(x, does=()) for x in s),
        "never starched",
    ),
    "a hole too many": (
        "shirt",
        "woven",
        lambda s: changed(s, index(s, verb("buttonhole")), count=99),
        "buttonholes are worked",
    ),
    "no test piece": (
        "shirt",
        "woven",
        lambda s: changed(s, index(s, verb("buttonhole")), say=s[index(s, verb("buttonhole"))].say[1:]),
        "test piece",
    ),
}


@pytest.mark.parametrize("fault", FAULTS)
def test_an_order_with_this_fault_is_found_out(fault: str) -> None:
    block, fabric, spoil, words = FAULTS[fault]
    costume, steps = worked(block, fabric)
    assert unsound(costume, steps) == ()
    wrong = unsound(costume, spoil(steps))
    assert any(words in one for one in wrong), wrong


def test_a_trim_that_comes_after_the_seam_at_its_ends_is_found_out() -> None:
    garment = draft_garment(bdims()[3], WOVEN, "shirt")
    garment = replace(garment, trims=(TrimWish("front", "shoulder", "braid", 10.0),))
    costume = costume_of(garment, WOVEN)
    steps = order_of(costume)
    assert unsound(costume, steps) == ()
    trim = index(steps, verb("trim"))
    assert trim < index(steps, seam("shoulder"))
    assert any("catches its ends" in one for one in unsound(costume, moved(steps, trim, len(steps) - 1)))


@hypothesis_settings(max_examples=30, deadline=None)
@given(
    st.sampled_from(names(alone=True)),
    st.data(),
    st.integers(0, 506),
    st.sampled_from(SORTS),
    st.booleans(),
    st.sampled_from(KINDS),
)
def test_no_sort_of_cloth_lining_or_trim_makes_an_order_that_breaks_a_rule(
    block: str, data: st.DataObject, n: int, sort: Sort, washed: bool, kind: str
) -> None:
    fabric = replace(WOVEN, sort=sort, care="wash at 30" if washed else "dry clean", takes_starch=washed)
    worded = [(c.name, word) for c in all_blocks()[block].choices for word in c.words]
    asked = dict(data.draw(st.lists(st.sampled_from(worded), max_size=3))) if worded else {}
    try:
        garment = draft_garment(bdims()[n], fabric, block, asked)
    except (DraftError, InputError):
        reject()
    shown = [p for p in garment.draft.pieces if not p.material]
    piece = data.draw(st.sampled_from(shown))
    edges = [e.name for e in piece.edges if e.kind in (EdgeKind.SEAM, EdgeKind.HEM)]
    if edges:
        edge = data.draw(st.sampled_from(edges))
        garment = replace(garment, trims=(TrimWish(piece.name, edge, kind, 12.0),))
    costume = costume_of(garment, fabric)
    assert unsound(costume, order_of(costume)) == ()


def test_a_french_seam_is_pressed_to_one_side_in_its_setting_too() -> None:
    """Its allowances lie enclosed, so nothing can be opened (common practice)."""
    _, steps = worked("shirt", "sheer")
    sewn = [s for s in steps if any(one.key.endswith(".french") for one in s.say)]
    assert len(sewn) >= 2  # sides and sleeves
    assert {s.setting.press for s in sewn if s.setting} == {"to one side"}


@pytest.mark.parametrize(("fabric", "fused"), [("woven", True), ("sheer", False)])
def test_an_iron_is_drawn_on_an_interfacing_only_where_it_is_fused(fabric: str, fused: bool) -> None:
    costume, steps = worked("shirt", fabric)
    drawn = [one for step, _, one in sewn_on_paper(costume, steps) if step.verb == "fuse" and one]
    assert len(drawn) > 1
    for drawing in drawn:
        marks = [ink for panel in drawing.panels for ink in panel.inks if isinstance(ink, InkMark)]
        assert any(mark.kind == "iron" for mark in marks) is fused
