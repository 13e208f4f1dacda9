"""Choices that more than one block asks for; one name means one thing in a whole garment."""

from __future__ import annotations

from drafting.ground.choices import choice
from drafting.ground.sources import BY_EYE, memory, practice

ARM_EASE: float = choice(
    50.0,
    "mm",
    "garment minus body at the upper arm; the armhole is fitted to it",
    low=0,
    high=400,
    step=5,
    scales=True,
    source=practice("at least ⟨50⟩ in woven cloth"),
    group="fit",
)


BENT_ARM: float = choice(
    0.0,
    "mm",
    "what a bent arm takes more, where the tape ran along a straight one",
    low=0,
    high=60,
    step=5,
    scales=True,
    source=practice("the arm is measured bent, over the elbow; ⟨10⟩ to ⟨25⟩ more than straight"),
    group="length",
)


def stretch_share(default: float) -> float:
    """Return the choice of how much of the cloth's stretch a piece uses, with this default."""
    share: float = choice(
        default,
        "ratio",
        "how much of the cloth's stretch is worn; 0 drafts with ease instead",
        low=0,
        high=0.6,
        step=0.05,
        source=memory("0.2 to 0.5 is worn with comfort"),
    )
    return share


BUTTON_DIAMETER: float = choice(
    11.0,
    "mm",
    "diameter of the buttons",
    low=4,
    high=60,
    scales=True,
    of_hand=True,
    source=practice("⟨10⟩ to ⟨12⟩ on shirts"),
    group="closing",
)

BUTTON_THICKNESS: float = choice(
    2.5,
    "mm",
    "thickness of the buttons; the buttonhole is as long as both together",
    low=0.5,
    high=30,
    step=0.5,
    scales=True,
    of_hand=True,
    source=(practice("buttonhole = diameter + thickness"), BY_EYE),
    group="closing",
)

BUTTON_SHAPE: str = choice(
    "flat",
    "word",
    "sewn through, on its own shank, or a ball (its hole is half the girth)",
    words=("flat", "shank", "ball"),
    source=practice("half the girth of a ball button"),
    group="closing",
)

CLOSING: str = choice(
    "left over right",
    "word",
    "which side lies on top and has the buttonholes",
    words=("left over right", "right over left"),
    source=practice("a free choice on a costume"),
    group="closing",
)

BUTTON_STAND: float = choice(
    0.0,
    "mm",
    "width of the stand beyond the centre front; 0 lets the button decide",
    low=0,
    high=120,
    source=practice("the diameter, 1.5 of it for a very small button"),
    group="closing",
)

BUTTON_LEVEL: float = choice(
    0.0,
    "mm",
    "how far below the neck one of the buttons stands; 0 is the bust line, of uneven hands the higher one",
    low=0,
    high=1000,
    source=practice("one button on the bust line"),
    group="closing",
    scales=True,
)


LEAST_VENT = 1.5
"""Laps that a vent is long at least: one as wide as it is long is no vent (ours)."""

VENT_WIDTH: float = choice(
    45.0,
    "mm",
    "lap of a vent: at the centre back left over right, at the sides back over side body",
    low=15,
    high=120,
    scales=True,
    group="style",
    grows=True,
    source=practice("⟨40⟩ to ⟨50⟩"),
)


def cuff_depth(default: float, low: float) -> float:
    """Return the choice of a cuff's depth; a sleeve that is to get one ends that much higher."""
    depth: float = choice(
        default,
        "mm",
        "finished depth of the cuff, which a top without one gets by a style step; the sleeve is shorter by it "
        "(0: no cuff)",
        low=low,
        high=250,
        scales=True,
        source=practice("⟨50⟩ to ⟨70⟩"),
        group="cuff",
    )
    return depth


OPENING: str = choice(
    "none",
    "word",
    "which centre opens (the other is cut on the fold)",
    words=("front", "back", "none"),
    group="style",
    source=practice(),
)


def torso_length(default: str) -> str:
    """Return the choice of how far down a torso reaches, with this default."""
    length: str = choice(
        default, "word", "how far down it reaches", words=("waist", "hip"), group="length", source=practice()
    )
    return length


SLEEVE_STYLES = ("plain", "lantern", "two puffs", "cap")
"""How a sleeve is made below its cap."""

SLEEVE_STYLE: str = choice(
    "plain",
    "word",
    "plain; a lantern, flared to a seam and back again; two puffs, gathered to a seam between them; or a cap",
    words=SLEEVE_STYLES,
    group="style",
    source=practice(),
)

TIER_AT: float = choice(
    0.6,
    "ratio",
    "how far down a sleeve of two tiers its seam lies, from the crown",
    low=0.3,
    high=0.85,
    step=0.05,
    group="style",
    source=practice("at the elbow, or half-way down the forearm"),
)

TIER_FULLNESS: float = choice(
    1.8,
    "ratio",
    "the seam between two tiers, over the sleeve's width or what it is gathered to",
    low=1.1,
    high=3.0,
    step=0.1,
    group="fullness",
    source=practice("1.5 to 2"),
)

FALL_FRONT: bool = choice(
    False,
    "yes/no",
    "the fronts open as a fall, buttoned over bearers at both sides, in place of a fly",
    group="fly",
    source=practice("breeches and trousers of the 18th and early 19th century"),
)

HEM_BAND: float = choice(
    60.0,
    "mm",
    "depth of the interfaced band along the hem",
    low=15,
    high=300,
    step=5,
    scales=True,
    grows=True,
    group="stiffening",
    source=practice("⟨40⟩ to ⟨80⟩, so that it reaches past what is turned up"),
)

BONE_WIDTH: float = choice(
    6.0, "mm", "width of the bone", low=2, high=15, step=0.5, group="stiffening", source=practice()
)

BONE_HEIGHT: float = choice(
    14.0, "mm", "how far above the hem the bone's middle lies", low=5, high=60, group="stiffening", source=BY_EYE
)

BONE_SHORT: float = choice(
    6.0,
    "mm",
    "how much a bone is shorter than its channel at each end",
    low=5,
    high=7.5,
    step=0.5,
    group="stiffening",
    source=practice("⟨10⟩ to ⟨15⟩ in all, at least ⟨5⟩ at each end"),
)
