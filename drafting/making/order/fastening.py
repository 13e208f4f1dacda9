"""What closes a garment, once it stands: buttonholes, buttons, hooks, eyelets, lacing."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from types import MappingProxyType

from drafting.alter.braces import BRACE_BUTTON
from drafting.draft.draft import Notion
from drafting.ground.names import name_in_words
from drafting.making.model import Said, Supply, said
from drafting.making.order.closings import STAY_TAPE
from drafting.making.order.holes import Holes, holes
from drafting.making.order.parts import Bench, notion_key
from drafting.making.settings.edges import BUTTONHOLE
from drafting.shaping.coat.hem_braid import HEM_BRAID

FASTENED = {"eyelet": "do.eyelets", "cord": "do.lace"}
"""Fasteners that are not sewn on."""

BOUGHT_WITH: Mapping[str, Supply] = MappingProxyType({BRACE_BUTTON: Supply("braces", "to button on", 1.0, "pair")})
"""What is of no use without something else, which is bought with it."""

DONE_ELSEWHERE = ("interfacing", "elastic", "boning", "bone tip", HEM_BRAID)


def buttons(bench: Bench) -> None:
    """Work the buttonholes that are drawn, sew the buttons on, then whatever else closes."""
    done = {notion for step in bench.steps for notion in step.notions}
    left = [n for n in bench.garment.draft.notions if n.what not in DONE_ELSEWHERE and notion_key(n) not in done]
    found = [n for n in left if n.what == "button"]
    drawn = holes(bench.garment.draft)
    if drawn:
        _holes(bench, drawn)
    if found:
        _sewn_on(bench, found, drawn)
    for notion in sorted(left, key=lambda one: one.what == "cord"):
        if notion.what != "button":
            _fastened(bench, notion)
            if notion.what == "eyelet":
                bench.also(*_held_straight(bench, notion))


def _fastened(bench: Bench, notion: Notion) -> None:
    where = [notion.piece] if notion.piece in bench.garment.draft else bench.shell()[:1]
    say, keys = [_fastener(bench, notion)], [notion_key(notion)]
    scratches = [said("caution.buckle")] if notion.what == "buckle" else []
    made, count = f"with {notion.what}", notion.count
    bench.do("finish", "button", made, where, say, notions=keys, count=count, cautions=scratches)
    if notion.what in BOUGHT_WITH:
        bench.also(BOUGHT_WITH[notion.what])


def caught(bench: Bench) -> None:
    """Baste every tape that hangs from a seam to its edge, before that seam is sewn over it."""
    for notion in bench.notions("tape"):
        if notion.edges:
            say = [said("do.tape_caught", piece=notion.piece, note=notion.note)]
            keys = [notion_key(notion)]
            bench.do("join", "button", "with tape", [notion.piece], say, notions=keys, count=notion.count)


def looped(bench: Bench) -> None:
    """Sew on the hooks of tapes that a seam caught, and their loops, while no lining covers the cloth yet."""
    for notion in bench.notions("hook and eye"):
        if notion.edges:
            _fastened(bench, notion)


def _held_straight(bench: Bench, notion: Notion) -> Iterator[Supply]:
    """Yield the tape between the eyelets and their edge, as long as they reach on both hands, folded double."""
    marks = [m for p in bench.garment.draft.pieces for m in p.placements if m.what == "eyelet" and not p.material]
    heights = [mark.path.bounds[i] for mark in marks for i in (1, 3)]
    if heights:
        reach = 2 * 2 * (max(heights) - min(heights) + ROW_ENDS)
        yield Supply("tape", STAY_TAPE, reach, "mm")


ROW_ENDS = 40.0
"""mm of tape beyond the first and the last eyelet (common practice)."""


def _holes(bench: Bench, drawn: Sequence[Holes]) -> None:
    count = sum(one.count for one in drawn)
    say = [said("do.holes_tried"), *map(_told, drawn), said(_of_many("do.open_holes", count))]
    pieces = list(dict.fromkeys(one.piece for one in drawn))
    length = sum(one.count * one.length for one in drawn)
    bench.do("finish", "buttonhole", "with buttonholes", pieces, say, count=count, length=length)
    bench.also(setting=bench.settings.get((bench.garment.name, BUTTONHOLE)))


def _of_many(key: str, count: int) -> str:
    """Return the sentence about `count` things: one thing has its own."""
    return key if count > 1 else OF_ONE[key]


OF_ONE = {
    "do.buttons": "do.buttons_one",
    "do.thread_shank": "do.thread_shank_one",
    "do.open_holes": "do.open_holes_one",
}
"""Sentences about each of several things, and what is said of one."""


def _told(one: Holes) -> Said:
    key = "do.holes_side" if one.side else "do.holes"
    return said(key, n=one.count, piece=one.piece, side=one.side, lie=one.lie, length=one.length)


def _sewn_on(bench: Bench, found: Sequence[Notion], drawn: Sequence[Holes]) -> None:
    draft = bench.garment.draft
    count = sum(n.count for n in found)
    say = [said(_of_many("do.buttons", count))] if drawn else []
    shown = _for_show(_by_place(bench, found), _by_place(bench, drawn))
    say += [said("do.buttons_shown", piece=place, n=number) for place, number in shown.items()]
    if any(n.kind == "flat" for n in found):
        say.append(said(_of_many("do.thread_shank", count)))
    pieces = [n.piece for n in found if n.piece in draft] or bench.shell()
    notions = [notion_key(n) for n in found]
    bench.do("finish", "button", "with buttons", pieces, say, notions=notions, count=count)


def _for_show(sewn: Mapping[str, int], holed: Mapping[str, int]) -> dict[str, int]:
    """Return how many buttons of each place no hole answers.

    A place closes by holes of its own; one that has none closes by those that another place has to spare: a bearer
    by the fall that lies over it.

    >>> _for_show({"front": 6, "back": 2}, {"front": 2}), _for_show({"bearer": 4}, {"fall": 4})
    ({'front': 4, 'back': 2}, {})
    """
    spare = sum(max(0, number - sewn.get(place, 0)) for place, number in holed.items())
    shown = {}
    for place, number in sewn.items():
        left = number - holed[place] if place in holed else number - spare
        spare -= 0 if place in holed else min(spare, number)
        if left > 0:
            shown[place] = left
    return shown


def _by_place(bench: Bench, things: Iterable[Notion | Holes]) -> dict[str, int]:
    """Return how many there are by the place they lie in, both hands of it together."""
    draft, found = bench.garment.draft, dict[str, int]()
    for one in things:
        place = one.piece or (one.where if isinstance(one, Notion) else "")
        place = draft[place].base or place if place in draft else place
        found[place] = found.get(place, 0) + one.count
    return found


def _fastener(bench: Bench, notion: Notion) -> Said:
    draft = bench.garment.draft
    facts = {"what": notion.what, "where": notion.where}
    if notion.piece in draft and (notion.what == "cord" or notion.where == name_in_words(notion.piece)):
        facts["where"] = draft[notion.piece].base or notion.piece  # what closes lies on both hands
    if notion.what in FASTENED:
        return said(FASTENED[notion.what], **facts)
    if not notion.note:
        return said("do.fastener_plain", **facts)
    return said("do.fastener", **facts, note=notion.note)
