"""Doubts about measures that are drafted from all the same: notes and warnings."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping

from drafting.body.dimensions import DIMENSIONS, LEAST
from drafting.body.estimates import ADULT_HIGH, ADULT_LOW, Measure
from drafting.body.other_unit import (
    ABOUT,
    LEAST_GIRTH,
    MOST_GIRTH,
    TODDLER,
    Meant,
    all_meant,
    asked_of,
    girths_meant,
    likely,
    meant_as,
)
from drafting.body.refusals import by_the_main, expectations
from drafting.ground.findings import Finding, Severity
from drafting.ground.lengths import told

# Girth / height below which a maker is warned: nobody in the survey has less (.472 and .461).
USUAL_GIRTH = 0.55  # girth / height; the survey's middle of bust and hip
SLENDER = {"bust_girth": 0.47, "high_bust_girth": 0.44, "hip_girth": 0.46}
LEG_IDENTITY = 25.0  # mm, outside leg - inside leg against body rise; common practice
FRONT_OVER_BACK = 20.0  # mm, across front over across back; from memory, women's size charts
ARM_OVER_BACK = 15.0
"""mm by which a back may be longer than the arm: of the 3,034 adults of `Source.ANSUR_II` the farthest is 12; an
arm is 117 longer in the middle. Of the other pairs there nobody's are the other way round."""
LEGS_GROWN = 1100.0
"""mm tall: of smaller children arm and inside leg are alike (from memory), and neither tells of the other."""
ARM_AND_LEG = ("arm_length", "inside_leg_length")
MOST, FEWEST = 1.5, 0.5
"""Times what is expected by a rule; all 3,541 measured adults lie between 0.6 and 1.3 of it (`Source.ANSUR_II`,
`Source.BDIMS`), but for those of `VARY`."""
VARY = frozenset({"shoulder_drop", "waist_to_hip"})
STRAYS = 3.5
"""sd from what height and girths let expect, beyond which a width across the back goes with no such figure: of the
3,034 adults of `Source.ANSUR_II` the farthest lies at 3.4, of the 318 with a bust over 115 cm at 3.0. Half of what
is expected, or half as much again, is 6 sd and more, and far too late."""
AMONG_GIRTHS = 1.6
"""Times the mean of the other girths of the trunk, more or less, from which a girth may be in another unit: all
3,034 adults of the survey lie between 0.73 and 1.35 of it (`Source.ANSUR_II`)."""
TINIEST = 0.6
"""Of the low end of its band: a waist to hip of 60 mm and a shoulder drop of 9 are still somebody's (37 of the
3,034 adults of `Source.ANSUR_II` have a waist to hip under the band)."""
SIDES_APART = 25.0  # mm between the hands before it is mentioned; ours

# (smaller, larger, by how many mm at least, what a maker should look at)
ORDER: tuple[tuple[str, str, float, str], ...] = (
    ("high_bust_girth", "bust_girth", -30, "are bust and high bust swapped?"),
    ("under_bust_girth", "bust_girth", -30, "are bust and under-bust swapped?"),
    ("neck_girth", "neck_base_girth", -10, "are neck and neck base swapped?"),
    ("wrist_girth", "hand_girth", 0, "are wrist and hand swapped?"),
    ("wrist_girth", "upper_arm_girth", 0, "are wrist and upper arm swapped?"),
    ("upper_arm_length", "arm_length", 0, "are the two arm lengths swapped?"),
    ("shoulder_drop", "shoulder_length", 30, "are drop and length swapped?"),
    ("axilla_depth", "scye_depth", 0, "the tape under the arm lies below the armpit fold"),
    ("scye_depth", "back_waist_length", 60, "are scye depth and back waist swapped?"),
    ("back_waist_length", "front_waist_length", -30, "are back and front waist length swapped?"),
    ("across_back_width", "back_shoulder_width", 0, "the arm folds lie inside the shoulder bones"),
    ("across_front_width", "across_back_width", -FRONT_OVER_BACK, "are front and back swapped?"),
    ("inside_leg_length", "outside_leg_length", 100, "are the two leg lengths swapped?"),
    ("knee_girth", "thigh_girth", 0, "are knee and thigh swapped?"),
    ("ankle_girth", "calf_girth", 0, "are ankle and calf swapped?"),
    ("waist_girth", "hip_girth", -150, "are waist and hip swapped?"),
    ("back_waist_length", "arm_length", -ARM_OVER_BACK, "are back waist and arm length swapped?"),
    ("shoulder_length", "across_back_width", 0, "are shoulder and across back swapped?"),
    ("upper_arm_girth", "thigh_girth", 0, "are upper arm and thigh swapped?"),
    ("wrist_girth", "ankle_girth", 0, "are wrist and ankle swapped?"),
    ("calf_girth", "thigh_girth", 0, "are calf and thigh swapped?"),
    (*ARM_AND_LEG, 0, "are arm and inside leg swapped?"),
    ("arm_length", "outside_leg_length", 0, "are arm and outside leg swapped?"),
)


def _exchanged(means: Mapping[str, float], unit: str | None) -> Iterator[tuple[str, str]]:
    """Yield pairs of measures that stand in each other's place: taken the other way round neither is far off."""
    for small, large, _ in _out_of_order(means):
        turned = _turned(means, small, large)
        if not {small, large} & {one.where for one in (*_build(turned, unit), *_strangers(turned, unit))}:
            yield small, large
            yield large, small


def doubts(measures: Mapping[str, Measure], natural: bool, unit: str | None = "cm") -> tuple[Finding, ...]:
    """Return everything doubtful about the measured ones of `measures`, in reading order."""
    taken = {n: m for n, m in measures.items() if m.source == "measured" and n in DIMENSIONS}
    means = {name: measure.mm for name, measure in taken.items()}
    if not all(name in means for name in LEAST):
        return ()
    pairs_turned = tuple(_exchanged(means, unit))
    exchanged = {name for name, _ in pairs_turned}
    every = (*_build(means, unit), *_strangers(means, unit))
    odd = {one.where for one in every} | {name for name, mm in means.items() if _outside(name, mm)}
    both_odd = {name for name, other in pairs_turned if other in odd}
    strangers = [
        one for one in every if one.where not in exchanged or (one.check == "unit" and one.where not in both_odd)
    ]
    doubted = {finding.where for finding in strangers}
    pairs = _compared(means, doubted)
    found = [*_order(means, pairs), *_legs(means), *_sides(taken, unit)]
    doubted |= {name for pair in pairs for name in pair[:2] if name in exchanged}
    found += [*strangers, *_bands({n: mm for n, mm in means.items() if n not in doubted}, unit)]
    if not natural:
        found.append(_say("waist level", "note", "waist_girth", None, "the waist is the navel's"))
    return tuple(found)


def _say(check: str, level: Severity, where: str, value: float | None, message: str) -> Finding:
    return Finding(check, level, where, value, None, message)


def _build(means: Mapping[str, float], unit: str | None) -> Iterator[Finding]:
    """Compare girths with the height."""
    height, meant = means["height"], girths_meant(means, unit)
    for name in ("bust_girth", "high_bust_girth", "hip_girth", "waist_girth"):
        share = means.get(name, 0.6 * height) / height
        among = _among(means, name, unit)
        if share > MOST_GIRTH or share < SLENDER.get(name, 0.0) or among:
            way = among or meant.get(name) or likely(means[name], USUAL_GIRTH * height, unit)
            asked = asked_of(name, way) if way else _height_asked(means, name, unit)
            than = "less" if share < 1 else "more"
            text = f"{name} is {'only ' if share < 1 else ''}{share:.2f} of the height: "
            text += asked or f"{than} than any of 3,034 measured adults has; measure both again"
            slender = share < 1 and not asked and height >= TODDLER
            level: Severity = "note" if slender else "warning"
            yield _say("girth and height", level, name, means[name], text)


def _among(means: Mapping[str, float], name: str, unit: str | None) -> Meant | None:
    """Return what a girth was meant as that is nobody's beside the other girths and would go with them."""
    others = [mm for other, mm in means.items() if other in LEAST_GIRTH and other != name]
    if name not in means or not others:
        return None
    mean = sum(others) / len(others)
    apart = not mean / AMONG_GIRTHS <= means[name] <= mean * AMONG_GIRTHS
    return likely(means[name], mean, unit, ABOUT) if apart else None


def _height_asked(means: Mapping[str, float], name: str, unit: str | None) -> str:
    """Return the question whether it is the height that was meant in another unit; empty where no unit answers."""
    way = likely(means["height"], means[name] / USUAL_GIRTH, unit)
    return asked_of("height", way) if way else ""


def _out_of_order(means: Mapping[str, float]) -> Iterator[tuple[str, str, str]]:
    """Yield pairs of which what is nearly always the larger is not, and what to ask of them."""
    scale = min(1.0, means["height"] / ADULT_LOW)
    for small, large, gap, question in ORDER:
        if (small, large) == ARM_AND_LEG and means["height"] < LEGS_GROWN:
            continue
        if small in means and large in means and means[large] - means[small] < gap * scale:
            yield small, large, question


def _compared(means: Mapping[str, float], doubted: Collection[str]) -> list[tuple[str, str, str]]:
    """Return the pairs out of order to ask about; one that is doubted by itself is not compared.

    Where two measures changed places, others no longer go with either: what exchanging them mends is not asked.
    """
    pairs = [pair for pair in _out_of_order(means) if not {*pair[:2]} & set(doubted)]
    left = {pair: set(_out_of_order(_turned(means, *pair[:2]))) for pair in pairs}
    best = min(pairs, key=lambda pair: len(left[pair]), default=None)
    return [pair for pair in pairs if best is None or pair is best or pair in left[best]]


def _turned(means: Mapping[str, float], one: str, other: str) -> Mapping[str, float]:
    """Return the measures with two of them exchanged."""
    return {**means, one: means[other], other: means[one]}


def _order(means: Mapping[str, float], pairs: Iterable[tuple[str, str, str]]) -> Iterator[Finding]:
    """Compare pairs of which one is nearly always the larger."""
    for small, large, question in pairs:
        pair = f"{small} {told(means[small])}, {large} {told(means[large])}"
        yield _say("measures compared", "warning", small, means[small], f"{pair}: {question}")


def _legs(means: Mapping[str, float]) -> Iterator[Finding]:
    names = ("outside_leg_length", "inside_leg_length", "body_rise")
    if not all(name in means for name in names):
        return
    outside, inside, rise = (means[name] for name in names)
    if abs(outside - inside - rise) > LEG_IDENTITY:
        text = (
            f"outside leg less inside leg is {told(outside - inside)}, the body rise "
            f"{told(rise)}: they should agree within {told(LEG_IDENTITY)}"
        )
        yield _say("leg lengths", "warning", "body_rise", rise, text)


def _sides(taken: Mapping[str, Measure], unit: str | None) -> Iterator[Finding]:
    for name, measure in taken.items():
        if measure.left is None or measure.right is None:
            continue
        low, high = sorted((measure.left, measure.right))
        way = likely(high, low, unit) or likely(low, high, unit)
        if high - low > SIDES_APART or (way and way.unit):
            asked = f"is one of them in {way.words}?" if way and way.unit else "is it so?"
            text = f"left {told(measure.left)}, right {told(measure.right)}: {asked}"
            yield _say("left and right", "warning" if way else "note", name, measure.mm, text)


def _strangers(means: Mapping[str, float], unit: str | None) -> Iterator[Finding]:
    """Compare each further measure with what the main ones lead one to expect."""
    by_rule = by_the_main(means)
    strays = _straying(means, by_rule)
    for name, expected in expectations(means).items():
        way = likely(means[name], expected, unit)
        text = f"{name} {told(means[name])} where about {told(expected)} is expected: "
        odd = name in by_rule and not FEWEST <= means[name] / expected <= MOST
        wider = likely(means[name], expected, unit, ABOUT) if odd else None
        level: Severity = "note" if _tiny(name, means[name], expected) else "warning"
        if way and way.unit:
            yield _say("unit", level, name, means[name], text + asked_of(name, way))
        elif wider and level == "warning":
            yield _say("unit", level, name, means[name], text + asked_of(name, wider))
        elif odd and name not in VARY:
            yield _say("measure expected", "warning", name, means[name], text + "is it so?")
        elif name in strays:
            yield _say("measure expected", "warning", name, means[name], text + strays[name])


def _straying(means: Mapping[str, float], by_rule: Mapping[str, Measure]) -> dict[str, str]:
    """Return what to ask of a width across the back (mm) that no figure of such a height and girths has."""
    name, found = "across_back_width", by_rule.get("across_back_width")
    if found is None or found.sd is None or abs(means[name] - found.mm) <= STRAYS * found.sd:
        return {}
    low, high = found.mm - STRAYS * found.sd, found.mm + STRAYS * found.sd
    girth = "bust" if "bust_girth" in means else "high bust"
    return {name: f"who has this {girth} has {told(low)} to {told(high)}; measure both again"}


def _tiny(name: str, mm: float, expected: float) -> bool:
    """Say whether a measure is one that may be next to nothing, and not so small that nobody's is."""
    return name in VARY and TINIEST * DIMENSIONS[name].low <= mm < expected


def _outside(name: str, mm: float) -> bool:
    return not DIMENSIONS[name].low <= mm <= DIMENSIONS[name].high


def _bands(means: Mapping[str, float], unit: str | None) -> Iterator[Finding]:
    """Say which measures lie outside the adult bands (none is refused for it)."""
    if not ADULT_LOW <= means["height"] <= 1.05 * ADULT_HIGH:
        text = "the height is no adult's: the adult bands say nothing about this figure"
        way = None if all_meant(means, unit) else meant_as(means["height"], ADULT_LOW, ADULT_HIGH, unit)
        text += f"; {asked_of('height', way)}" if way else ""
        yield _say("adult band", "note", "height", means["height"], text)
        return
    for name, mm in means.items():
        if _outside(name, mm):
            band = DIMENSIONS[name]
            reach = f"{told(band.low)} to {told(band.high)}"
            text = f"{name} {told(mm)} lies outside {reach}: is this right?"
            yield _say("adult band", "note", name, mm, text)
