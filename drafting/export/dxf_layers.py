"""The layers of the interchange of sewn products: their numbers, what they hold, their colours."""

from __future__ import annotations

from enum import StrEnum


class LayerNumber(StrEnum):
    """Layers of the pattern interchange (`Source.ASTM_D6673`, seen in abstract only)."""

    BOUNDARY = "1"
    TURN_POINTS = "2"
    CURVE_POINTS = "3"
    NOTCHES = "4"
    GRADE = "5"
    MIRROR = "6"
    GRAIN = "7"
    INTERNAL = "8"
    STRIPE = "9"
    PLAID = "10"
    CUT_OUT = "11"
    DRILL = "13"
    SEW = "14"
    ANNOTATION = "15"
    T_NOTCH = "80"
    CASTLE_NOTCH = "81"
    CHECK_NOTCH = "82"
    U_NOTCH = "83"


MEANING = {
    LayerNumber.BOUNDARY: "piece boundary",
    LayerNumber.TURN_POINTS: "turn points",
    LayerNumber.CURVE_POINTS: "curve points",
    LayerNumber.NOTCHES: "notches",
    LayerNumber.MIRROR: "mirror line",
    LayerNumber.GRAIN: "grain line",
    LayerNumber.INTERNAL: "internal lines, not cut",
    LayerNumber.DRILL: "drill holes",
    LayerNumber.SEW: "sew lines",
    LayerNumber.ANNOTATION: "annotation",
}
"""The layers that are written, and what they hold."""

COLOURS = {
    LayerNumber.BOUNDARY: 7,
    LayerNumber.TURN_POINTS: 8,
    LayerNumber.CURVE_POINTS: 9,
    LayerNumber.NOTCHES: 1,
    LayerNumber.MIRROR: 5,
    LayerNumber.GRAIN: 3,
    LayerNumber.INTERNAL: 4,
    LayerNumber.DRILL: 6,
    LayerNumber.SEW: 2,
    LayerNumber.ANNOTATION: 7,
}
"""The colour of each layer, by its number in the format; what is drawn takes its layer's (ours)."""
