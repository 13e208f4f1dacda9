"""The sex-free rules that fill in missing measures: formula, source and spread of each.

All mm, on a body of adult height (`estimates` scales smaller and taller ones). SURVEY: least
squares on 3,034 adults of `Source.ANSUR_II`, men and women together, spread out of sample.
Five helpers are known to the rules and are no measures: `navel_back` (nape to navel along the
spine: the survey's waist), `nape_drop` (nape to shoulder point), `flexed_arm`, `fullness`,
`standing_rise` (waist to crotch as the survey takes it).
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from drafting.ground.lengths import told
from drafting.ground.sources import Source, Sources, cite, ours, printed

Known = dict[str, float]
FIT = "our fit, judged on others"
SURVEY: Sources = (cite(Source.ANSUR_II, FIT),)
TWO_SURVEYS: Sources = (
    cite(Source.BDIMS),
    cite(Source.ANSUR_II),
    ours("the two joined: weak, so take the measure"),
)
TAPE: Sources = (ours("a tape held under the arm lies 45-50 mm below the armpit fold of ANSUR II"),)
FLEXED = 1.065  # flexed upper arm / hanging one (1.05-1.08), from memory
NAPE_TO_SIDE_NECK = 15.0  # mm the side neck point lies below the nape, ours
TAPE_UNDER_AXILLA = 47.0  # mm, see TAPE
BUST_POINT_BELOW = 14.0  # mm: side neck to bust point less nape to bust level, flat chest; ours
NATURAL_BACK = 0.045  # of nape to navel: the natural waist is so much higher; ours, see CHARTS
MOST_ROUNDED = 0.12  # of the back waist length: the most that a rounded back is longer for, ours
CHARTS = ours("the 4.5 % fitted to three size charts, two of them recalled")
NATURAL_RISE = 0.026  # of the height: the same step at the side, from memory
IN_WORDS = {
    "navel_back": "nape to navel",
    "nape_drop": "(shoulder drop + 15)",
    "flexed_arm": "flexed arm",
    "fullness": "(bust - high bust)",
    "standing_rise": "standing rise",
}
INNER = frozenset({"natural", *IN_WORDS})


@dataclass(frozen=True, slots=True)
class Rule:
    """One way to estimate `name`; used where every measure in `given` was measured.

    `of` takes what is known so far and returns mm; the result is kept within `low`..`high` times
    the measure `against`, wide enough to touch no real body (a continuous clamp). `sd` in mm is the
    rule's own: 0 for an identity, None where nobody knows. `terms` are the factors of the measures
    it starts from, by which their own uncertainty is handed on. `kept` bounds a value by more than one
    other measure.
    """

    name: str
    formula: str
    source: Sources
    sd: float | None
    of: Callable[[Known], float]
    within: tuple[str, float, float] | None = None  # against, low, high
    given: tuple[str, ...] = ()
    terms: tuple[tuple[float, str], ...] = ()
    kept: Callable[[float, Known], float] | None = None

    def words(self, spread: float | None) -> str:
        """Return the sentence that stands wherever the estimate is used; `spread` is its sd in mm."""
        off = f"; 19 of 20 people within {told(2 * spread)}" if spread else ""
        return f"{self.formula} ({printed(*self.source)}{off})"

    def spread(self, spreads: Mapping[str, float | None]) -> float | None:
        """Return the estimate's sd in mm, from the rule's own and those of estimates it starts from.

        Errors of least squares are uncorrelated with what they were fitted on, so squares add up.
        None where the rule, or an estimate that it starts from, has an unknown one.
        """
        if self.sd is None:
            return None
        total = self.sd**2
        for factor, name in self.terms:
            if name in spreads:
                own = spreads[name]
                if own is None:
                    return None
                total += (factor * own) ** 2
        return math.sqrt(total)


def linear(
    name: str,
    sd: float | None,
    within: tuple[str, float, float],
    terms: tuple[tuple[float, str], ...],
    constant: float = 0.0,
    source: Sources = SURVEY,
    given: tuple[str, ...] = (),
) -> Rule:
    """Return the rule constant + sum of coefficient x measure, with its formula in words."""
    parts = [f"{constant:+.4g}"] if constant else []
    parts += [_term(factor, measure) for factor, measure in terms]
    first, *others = parts
    formula = " ".join([first.lstrip("+"), *(f"{part[0]} {part[1:]}" for part in others)])

    def of(known: Known) -> float:
        return constant + sum(factor * known[measure] for factor, measure in terms)

    return Rule(name=name, formula=formula, source=source, sd=sd, of=of, within=within, given=given, terms=terms)


def _term(factor: float, measure: str) -> str:
    words = IN_WORDS.get(measure, measure.replace("_", " "))
    return f"{factor:+.4g} {words}" if abs(factor) != 1 else f"{factor:+g}"[0] + words


def bust_less_high_bust(bust: float, m: Known) -> float:
    """Return bust - high bust (mm) for a trial `bust`: a guess, see the rule's words."""
    base = m.get("neck_base_girth")
    if base is None:
        base = 64.6 + 0.930 * m["neck_girth"] if "neck_girth" in m else _neck_base(bust, m)
    shoulder = m.get("shoulder_length", -1.6 + 0.0855 * m["height"])
    across = m.get("across_back_width", -32.2 + 0.186 * bust + 0.600 * shoulder + 0.404 * base)
    return 139.5 + 0.491 * bust - 0.142 * across - 1.029 * base - 0.983 * shoulder


def _neck_base(bust: float, m: Known) -> float:
    """Return the neck base (mm) by the bust alone, a child's by its height."""
    child = m.get("child", 0.0)
    grown = (1 - child) * 0.405 * bust
    return grown + child * m["childs_neck"] if child else grown


def bust_from_high_bust(m: Known) -> float:
    """Return the bust (mm) from which that guess leads back to the high bust; it is linear."""
    high = m["high_bust_girth"]
    at_high = bust_less_high_bust(high, m)
    slope = (bust_less_high_bust(1.1 * high, m) - at_high) / (0.1 * high)
    return high + max(0.0, at_high) / (1 - slope)


def bust_less(m: Known) -> float:
    """Return bust less high bust (mm, never under 0) by what was measured, `m`."""
    bust = m["bust_girth"] if "bust_girth" in m else bust_from_high_bust(m)
    return max(0.0, bust_less_high_bust(bust, m))


def rounded(m: Known) -> float:
    """Return how much longer a back waist length (mm) is than its height asks for: a rounded back.

    Only a measured front tells: a tape from the side neck over the bust needs `BUST_POINT_BELOW` and half the
    fullness more than the back; what it falls short of that, the back is rounded.
    """
    if "front_waist_length" not in m or "back_waist_length" not in m:
        return 0.0
    back, fullness = m["back_waist_length"], 0.0
    if "bust_girth" in m:
        fullness = max(0.0, m["bust_girth"] - m["high_bust_girth"]) if "high_bust_girth" in m else bust_less(m)
    expected = back + BUST_POINT_BELOW + 0.5 * fullness
    return min(max(0.0, expected - m["front_waist_length"]), MOST_ROUNDED * back)


def navel_back(m: Known) -> float:
    """Return nape to navel along the spine, in mm."""
    if "back_waist_length" in m:
        return m["back_waist_length"] / (1 - NATURAL_BACK * m["natural"])
    back = -52.9 + 0.219 * m["height"] + 0.134 * m["bust_girth"]
    return min(max(back, 0.20 * m["height"]), 0.36 * m["height"])


def back_waist(m: Known) -> float:
    """Return nape to waist in mm: to the navel, or 4.5 % less to the natural waist."""
    return m["navel_back"] * (1 - NATURAL_BACK * m["natural"])


def high_bust(m: Known) -> float:
    """Return the high bust in mm, never above the bust, by what was measured: estimates add nothing to it."""
    return m["bust_girth"] - m["bust_less"]


def upper_arm(m: Known) -> float:
    """Return the hanging upper arm in mm."""
    return (-16.6 + 0.350 * m["bust_girth"]) / FLEXED


def waist_to_hip(m: Known) -> float:
    """Return waist to hip in mm, from the navel or from the natural waist."""
    rise = NATURAL_RISE * m["natural"] * m["height"]
    return -75.5 + 0.220 * m["height"] - 0.304 * m["navel_back"] + rise
