"""What was found on a garment, as sentences: where it stands off, whether it pulls, how its hem hangs."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Literal

from drafting.worn.stands.comfort import CRIMP
from drafting.worn.stands.hems import ON_THE_FLOOR
from drafting.worn.stands.model import GarmentWorn, HemWorn, LevelWorn, Strain
from drafting.worn.stands.treated import TreatedHem
from drafting.worn.stands.words import Remark, remark

CLOSE = 5.0
"""mm: nearer than this a garment touches (half of what a hand feels as loose; by eye)."""

AS_DRAFTED = 6.0
"""mm by which a worn girth may differ from the drafted one and be called the same: what the form and a mesh of
20 mm differ by (ours: found on loose garments)."""

EVEN_HEM = 10.0
"""mm between the lowest and the highest point of a hem that is called even (by eye)."""

TOLD_RANGE = 5.0
"""mm: hems that differ less from one fall to the next are told by one width (ours)."""

AS_FAR = 25.4 / 8
"""mm: hems whose reaches differ less are shown alike, in inches at least, and none is called the farthest."""

TRAILING = 50.0
"""mm of a hem on the floor from which it trails; less only touches (ours)."""

DOORWAY, CHAIR = 800.0, 450.0
"""mm: clear width of a doorway, and width of a chair's seat (common practice)."""

STANDS_ROUND = 0.8
"""Of a ring's area, what a bone that stands round encloses: an ellipse twice as long as wide has 0.84 (ours)."""

SAT_ON = 250.0
"""mm over the knee below which a hem is sat on, or lies beside the chair (by eye)."""


def garment_told(found: GarmentWorn) -> tuple[Remark, ...]:
    """Return what is to be said of a garment; of one that has not settled, that only its shape is shown.

    Of one that slid, only its hem is told, and where it is cut too narrow.
    """
    if not found.settled:
        return (remark("shape.only", garment=found.garment),)
    hem = () if found.hem is None else tuple(_hem(found.hem))
    if found.slid:
        told = (one for one in _pulls(found.levels) if one.key in ("pull.over", "pull.places"))
        return (*told, *hem)
    levels = [remark_off(level) for level in found.levels if level.stands_off]
    girths = [_girth(level) for level in found.levels]
    return (*levels, *_pulls(found.levels), *girths, *hem)


def remark_off(level: LevelWorn) -> Remark:
    """Return where a garment stands off the form at one level, and where it touches."""
    off = tuple(remark(f"off.{o.where}", mm=o.mm) for o in level.stands_off if o.mm >= CLOSE)
    touching = tuple(remark(f"off.touches_{o.where}") for o in level.stands_off if o.mm < CLOSE)
    if not off:
        return remark("off.close", level=level.name)
    if not touching:
        return remark("off.parts", level=level.name, parts=off)
    return remark("off.but", level=level.name, parts=off, touches=touching)


def _pulls(levels: Iterable[LevelWorn]) -> Iterator[Remark]:
    """Yield how the cloth is stretched at the levels that are trusted, against what it gives."""
    verdicts = [(level, pull_verdict(level.strain)) for level in levels if level.strain.trusted]
    if not verdicts:
        yield remark("pull.untold")
        return
    for wanted in ("over", "places", "within"):
        if wanted == "within":
            pulling = [verdict in ("over", "places") for _, verdict in verdicts]
            if not all(pulling):
                yield remark("pull.elsewhere" if any(pulling) else "pull.nothing")
        for level, verdict in sorted(verdicts, key=lambda one: -one[0].strain.p95 / one[0].strain.gives):
            if verdict == wanted:
                strain = level.strain
                facts = {"mean": strain.mean, "p95": strain.p95, "gives": strain.gives}
                yield remark(f"pull.{verdict}", level=level.name, **facts)


def pull_verdict(strain: Strain) -> Literal["over", "places", "within", "nothing"]:
    """Return the one thing that is said of the stretch along a level.

    Less than any cloth gives before it shows (`CRIMP`) is nothing; what this one gives in comfort bounds the rest.
    """
    if strain.pulls:
        return "over"
    if strain.p95 > strain.gives:
        return "places"
    return "within" if strain.p95 > CRIMP else "nothing"


SERIOUS = (
    "shape.only",
    "held.braces",
    "held.braced",
    "held.hooked",
    "held.sinks",
    "held.sinks_round",
    "held.sinks_floor",
    "held.sinks_round_floor",
    "hem.trails",
    "hem.touches",
    "pull.over",
    "treated.not",
    "hem.drawn_in",
    "pull.places",
    "hem.doorway",
    "treated.doorway_all",
    "treated.doorway",
)
"""Words that come before all others, what is most serious first."""


def most_serious_first(words: Iterable[Remark]) -> tuple[Remark, ...]:
    """Return what is said of a garment with what has to be seen to before the rest, which stays in its order."""
    rank = {key: place for place, key in enumerate(SERIOUS)}
    return tuple(sorted(words, key=lambda said: rank.get(said.key, len(SERIOUS))))


def _girth(level: LevelWorn) -> Remark:
    if abs(level.worn - level.drafted) <= AS_DRAFTED:
        return remark("girth.as_drafted", level=level.name, worn=level.worn)
    return remark("girth.other", level=level.name, worn=level.worn, drafted=level.drafted)


def on_the_floor(hem: HemWorn | None) -> bool:
    """Return whether a hem lies on the floor, or touches it."""
    return hem is not None and (hem.trails > TRAILING or hem.lowest < ON_THE_FLOOR)


def _hem(hem: HemWorn) -> Iterator[Remark]:
    facts = {"width": hem.width, "lowest": hem.lowest, "highest": hem.highest}
    low, high = hem.range
    if high - low > EVEN_HEM:
        yield remark("hem.range", low=low, high=high, lowest=hem.lowest, highest=hem.highest)
    elif hem.highest - hem.lowest > EVEN_HEM:
        yield remark("hem.width", **facts)
    else:
        yield remark("hem.even", width=hem.width, lowest=hem.lowest)
    if hem.back_reach > CLOSE:
        yield remark("hem.behind", reach=hem.back_reach)
    if hem.hoop is not None and hem.hoop.share < STANDS_ROUND:
        yield remark("hem.drawn_in", across=hem.hoop.across)
    if hem.trails > TRAILING:
        yield remark("hem.trails", trails=hem.trails)
    elif hem.lowest < ON_THE_FLOOR:
        yield remark("hem.touches")
    if high > DOORWAY:
        yield remark("hem.doorway", doorway=DOORWAY, then=remark("then.doorway"))


def told_treated(hems: Iterable[TreatedHem], knee: float | None = None, *, parts: bool = True) -> Iterator[Remark]:
    """Yield what each treatment does to a hem, which reaches farthest back, and with which it is wider than a
    doorway or, where it hangs lower than a chair's seat (`knee`: the height of the knee, mm), than that, and
    what to do then; a hem of tails `parts`."""
    hems = tuple(hems)
    for treated in hems:
        name = remark(f"treated.{treated.name}")
        if treated.hem is None:
            yield remark("treated.not", treatment=name)
            continue
        low, high = treated.hem.range
        facts = {"low": low, "high": high, "width": treated.hem.width, "reach": treated.hem.back_reach}
        yield remark("treated.range" if high - low > TOLD_RANGE else "treated.one", treatment=name, **facts)
    known = [(treated.name, treated.hem) for treated in hems if treated.hem is not None]
    if len(known) > 1:
        yield from _farthest(known)
        door = [name for name, hem in known if hem.range[1] > DOORWAY]
        yield from _wider("doorway", DOORWAY, door, len(known), "then.doorway")
        if knee is not None:
            seat = [name for name, hem in known if _sat_wide(hem, knee)]
            yield from _wider("chair", CHAIR, seat, len(known), "then.seat" if parts else "then.seat_round")


def _farthest(known: list[tuple[str, HemWorn]]) -> Iterator[Remark]:
    """Yield with which treatment a hem reaches farthest back, where one does by what can be read."""
    second, best = sorted(known, key=lambda one: one[1].back_reach)[-2:]
    if best[1].back_reach - second[1].back_reach > AS_FAR:
        yield remark("treated.farthest", treatment=remark(f"treated.{best[0]}"))


def _wider(key: str, most: float, wider: list[str], of: int, then: str) -> Iterator[Remark]:
    """Yield with which of `of` treatments a hem is wider than `most` mm, and what to do."""
    if wider and len(wider) == of:
        yield remark(f"treated.{key}_all", wide=most, then=remark(then))
    elif wider:
        parts = tuple(remark(f"treated.{name}") for name in wider)
        yield remark(f"treated.{key}", wide=most, parts=parts, then=remark(then))


def _sat_wide(hem: HemWorn, knee: float) -> bool:
    """Return whether a hem hangs lower than where one sits, and is wider than that."""
    return hem.lowest < knee + SAT_ON and hem.range[1] > CHAIR


def sits_on(hem: HemWorn, knee: float, *, parts: bool = True) -> Iterator[Remark]:
    """Yield what a hem below the seat means on a chair; `knee` is the height of the knee, mm; tails `parts`."""
    if _sat_wide(hem, knee):
        yield remark("hem.seat", seat=CHAIR, then=remark("then.seat" if parts else "then.seat_round"))


AGAIN = {
    "hem.behind": {"treated.drafted"},
    "hem.doorway": {"treated.doorway", "treated.doorway_all"},
    "hem.seat": {"treated.chair", "treated.chair_all"},
    "hem.trails": {"held.sinks_floor", "held.sinks_round_floor"},
    "hem.touches": {"held.sinks_floor", "held.sinks_round_floor"},
}
"""What is said of a hem as drafted, by what says it again with its treatments, or with its cause."""


def told_once(words: Iterable[Remark]) -> Iterator[Remark]:
    """Yield what is said of a garment, without what is said again with its treatments."""
    words = tuple(words)
    keys = {said.key for said in words}
    if any(
        ("treatment", AS_IT_IS) in said.facts for said in words if said.key in ("treated.one", "treated.range")
    ):
        keys.add("treated.drafted")
    yield from (said for said in words if not keys & AGAIN.get(said.key, set()))


AS_IT_IS = remark("treated.drafted")
