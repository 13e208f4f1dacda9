"""Sharper rules for who says whose charts come nearer: `figure = "womens"` or `"mens"`.

Never asked for. It names a set of size charts, nobody's sex: it replaces the pooled rule of the same
measure by one fitted on the women or on the men of the survey, and only where people stray from
their own rule by at least 4 % less than from the pooled one. Everything else stays pooled.
"""

from __future__ import annotations

from functools import cache
from typing import Literal

from drafting.body import rules as r
from drafting.body.rule_table import ROUND_THE_FRONT, RULES, SIDE_NECK
from drafting.body.rules import CHARTS, FIT, SURVEY, TWO_SURVEYS, Known, Rule, linear
from drafting.ground.sources import Source, Sources, cite, memory, ours

Figure = Literal["", "womens", "mens"]

_WOMEN = (cite(Source.ANSUR_II, f"its women, {FIT}"),)
_MEN = (cite(Source.ANSUR_II, f"its men, {FIT}"),)
_NECK = ("height", 0.16, 0.32)
_BUST_POINT = ("height", 0.11, 0.26)


def _womens_back(m: Known) -> float:
    back = 51.7 + 0.159 * m["height"] + 0.121 * m["bust_girth"]
    return min(max(back, 0.20 * m["height"]), 0.36 * m["height"])


WOMENS: tuple[Rule, ...] = (
    linear("neck_base_girth", 14.4, _NECK, ((0.164, "bust_girth"),), 216.3, _WOMEN),
    Rule("navel_back", "", _WOMEN, 20.8, _womens_back, terms=((0.121, "bust_girth"),)),
    Rule(
        "back_waist_length",
        "51.7 + .159 height + .121 bust, less 4.5 % for a natural waist",
        (*_WOMEN, CHARTS),
        0,
        r.back_waist,
        terms=((1 - r.NATURAL_BACK, "navel_back"),),
    ),
    linear(
        "shoulder_drop",
        11.8,
        ("shoulder_length", 0.12, 0.545),
        ((0.464, "shoulder_length"),),
        -2.4 - r.NAPE_TO_SIDE_NECK,
        (*_WOMEN, SIDE_NECK),
    ),
    linear(
        "upper_arm_girth",
        19.1,
        ("bust_girth", 0.20, 0.45),
        ((0.263, "bust_girth"),),
        38.5,
        (*_WOMEN, memory("hanging arm = flexed / 1.065")),
    ),
    linear("forearm_girth", 9.8, ("upper_arm_girth", 0.6, 1.3), ((0.509, "flexed_arm"),), 108.2, _WOMEN),
    linear("wrist_girth", 6.3, ("upper_arm_girth", 0.35, 0.85), ((0.154, "flexed_arm"),), 107.8, _WOMEN),
    linear("hand_girth", 6.0, ("wrist_girth", 1.0, 1.5), ((0.850, "wrist_girth"),), 54.9, _WOMEN),
    linear(
        "bust_point_depth",
        21.7,
        _BUST_POINT,
        ((0.567, "navel_back"), (0.5, "fullness")),
        -12.0 + r.BUST_POINT_BELOW,
        (*_WOMEN, ROUND_THE_FRONT),
    ),
)

MENS: tuple[Rule, ...] = (
    linear("neck_base_girth", 17.0, _NECK, ((0.217, "bust_girth"),), 205.4, _MEN),
    linear(
        "high_bust_girth",
        27,
        ("bust_girth", 0.86, 1.0),
        ((1, "bust_girth"),),
        0.0,
        (*TWO_SURVEYS[:2], ours("a guess: a chest is one girth, men differ by 0 in the mean")),
    ),
    linear("forearm_girth", 10.5, ("upper_arm_girth", 0.6, 1.3), ((0.560, "flexed_arm"),), 109.7, _MEN),
    linear("wrist_girth", 7.2, ("upper_arm_girth", 0.35, 0.85), ((0.157, "flexed_arm"),), 119.7, _MEN),
    linear("hand_girth", 6.5, ("wrist_girth", 1.0, 1.5), ((0.877, "wrist_girth"),), 58.1, _MEN),
    linear(
        "bust_point_depth",
        17.1,
        _BUST_POINT,
        ((0.443, "navel_back"), (0.5, "fullness")),
        23.4 + r.BUST_POINT_BELOW,
        (*_MEN, ROUND_THE_FRONT),
    ),
)

FIGURES: dict[str, tuple[Rule, ...]] = {"womens": WOMENS, "mens": MENS}
OF_FIGURE: dict[str, Sources] = {"": SURVEY, "womens": _WOMEN, "mens": _MEN}
"""Whose means and covariances estimate what the survey has."""


@cache
def rules_for(figure: Figure) -> tuple[Rule, ...]:
    """Return the rules in the order in which they are tried, sharper ones in place of pooled ones."""
    sharper = {rule.name: rule for rule in FIGURES.get(figure, ())}
    return tuple(rule if rule.given else sharper.get(rule.name, rule) for rule in RULES)
