"""People whom a form and a garment find hardest, the most unusual first: measured, and made up where none were.

The measured ones are of ANSUR II (Gordon and others 2014), taken from both ends of what pulls a figure apart.
Nobody there is a child, has sides measured apart or a back told from its front: those are made up, from ours.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cache
from itertools import chain

from drafting.body import Body, wearer
from tests.bodies import ansur

Told = Callable[[Body], float]

PULLS: Mapping[str, Told] = {
    "belly": lambda body: body["waist_girth"] - body["hip_girth"],
    "small": lambda body: -body["bust_girth"],
    "tall": lambda body: body["height"],
    "short": lambda body: -body["height"],
    "stout": lambda body: body["waist_girth"] / body["height"],
    "seat": lambda body: body["hip_girth"] - body["waist_girth"],
    "long back": lambda body: body["back_waist_length"] / body["height"],
    "short back": lambda body: -body["back_waist_length"] / body["height"],
    "square shoulders": lambda body: -body["shoulder_drop"] / body["shoulder_length"],
    "sloping shoulders": lambda body: body["shoulder_drop"] / body["shoulder_length"],
    "thick arms": lambda body: body["upper_arm_girth"] / body["bust_girth"],
    "thick legs": lambda body: body["thigh_girth"] / body["hip_girth"],
    "broad back": lambda body: body["across_back_width"] / body["bust_girth"],
    "narrow back": lambda body: -body["across_back_width"] / body["bust_girth"],
}
"""What is greatest of those who come first for it; ours."""

PLAIN = {"height": 1700.0, "bust_girth": 960.0, "waist_girth": 800.0, "hip_girth": 1000.0}
CHESTS = {1040.0: 570.0, 1160.0: 600.0, 1280.0: 640.0}
"""mm: a child's chest by its height, of children's size charts, from memory."""


@cache
def unusual(count: int) -> tuple[Body, ...]:
    """Return `count` measured people, nobody twice: the farthest of each pull, then the next of each."""
    ranked = [sorted(ansur(), key=pull, reverse=True)[:count] for pull in PULLS.values()]
    by_turns = chain.from_iterable(zip(*ranked, strict=True))
    return tuple({body.title: body for body in by_turns}.values())[:count]


@cache
def made_up() -> tuple[Body, ...]:
    """Return children, rounded backs, uneven shoulders, a great belly and one far smaller than any surveyed."""
    plain = wearer(PLAIN)
    upright = {name: plain[name] for name in ("nape_height", "outside_leg_length")}
    back = plain["back_waist_length"]
    drop, arm = plain["shoulder_drop"], plain["arm_length"]
    sides = {"shoulder_drop": (drop + 12.0, drop - 8.0), "arm_length": (arm + 6.0, arm - 6.0)}
    return (
        *(child(height) for height in CHESTS),
        *(
            wearer({**PLAIN, **upright, "back_waist_length": back + more}, title=f"back {more:.0f} mm longer")
            for more in (25.0, 50.0)
        ),
        wearer({**PLAIN, **sides}, title="uneven shoulders"),
        wearer({"height": 1750, "bust_girth": 1240, "waist_girth": 1330, "hip_girth": 1230}, title="great belly"),
        wearer({"height": 1480, "bust_girth": 740, "waist_girth": 560, "hip_girth": 790}, title="very small"),
    )


def child(height: float) -> Body:
    chest = CHESTS[height]
    girths = {"bust_girth": chest, "waist_girth": chest - 40, "hip_girth": chest + 40}
    return wearer({"height": height, **girths}, title=f"child of {height / 10:.0f} cm")


def tall_and_round() -> Body:
    """Return a tall, thin man with a round back and one shoulder lower (invented)."""
    lengths = {
        "height": 1985.0,
        "bust_girth": 930.0,
        "high_bust_girth": 925.0,
        "waist_girth": 790.0,
        "hip_girth": 935.0,
        "neck_girth": 372.0,
        "shoulder_length": (158.0, 150.0),
        "shoulder_drop": (48.0, 66.0),
        "across_back_width": 402.0,
        "back_waist_length": 540.0,
        "front_waist_length": 500.0,
        "arm_length": (705.0, 698.0),
        "upper_arm_girth": 272.0,
        "wrist_girth": 165.0,
        "inside_leg_length": 945.0,
        "outside_leg_length": 1200.0,
        "waist_to_hip": 190.0,
    }
    return wearer(lengths, figure="mens")
