"""What an edge, a piece, a seam or a notch *is*, in trade words: declared where it is drawn.

A name tells things apart, and whoever draws a piece may give any; what it means is never read out of
it. What declares nothing is plain: a plain edge, a plain piece, a plain seam.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Self


class Declared(StrEnum):
    """A word of the trade, and what it means."""

    meaning: str

    def __new__(cls, word: str, meaning: str) -> Self:
        one = str.__new__(cls, word)
        one._value_ = word
        one.meaning = meaning
        return one


class EdgeRole(Declared):
    """What an edge is on the body or in the making; several edges of a piece may share a role."""

    PLAIN = "plain", "Nothing that anybody has to know"
    SHORT = "short", "Meant to be short: no check asks for its length"
    HEM = "hem", "The lower edge of a garment or a sleeve"
    WAIST = "waist", "Lies on the waist, whether it is a hem there or sewn on"
    SIDE = "side", "The side seam's edge"
    INSEAM = "inseam", "A leg's inside"
    CROTCH = "crotch", "From the fork up towards the waist"
    SHOULDER = "shoulder", "The shoulder seam's edge"
    ARMHOLE = "armhole", "The armhole or a part of it"
    CAP = "cap", "A half of a sleeve's cap, from the crown to the underarm"
    CAP_PART = "cap part", "A part of a cap that two sleeve pieces share"
    UNDERARM = "underarm", "The seam of a one-piece sleeve, or a part of it"
    ARM_SEAM = "arm seam", "The forearm or hind-arm seam of a two-piece sleeve"
    NECK = "neck", "The neckline, and the edge of a stand that meets it"
    COLLAR_NECK = "collar neck", "A coat collar's edge along the neck"
    GORGE = "gorge", "Where a coat's collar and lapel are joined"
    LAPEL = "lapel", "The lapel's outer edge and its top"
    FRONT_EDGE = "front edge", "The outer edge of a front that closes over another"
    BOTTOM = "bottom", "The short lower edge of a front that is faced, or of a shield"
    CENTRE = "centre", "Lies straight on the centre line"
    CENTRE_SEAM = "centre seam", "A seam at the centre that is shaped"
    PANEL = "panel", "The seam between two panels of a body"
    GODET_SIDE = "godet side", "Where a godet is let in, and the side of the godet"
    YOKE = "yoke", "Where a yoke meets what hangs from it"
    PRINCESS = "princess", "The panel seam over the bust"
    PLEAT = "pleat", "The inner edge of a pleat, and its top"
    EASE_PLEAT = "ease pleat", "Where a lining is laid in a pleat for ease"
    VENT = "vent", "The open edge of a vent, and its top"
    SLIT = "slit", "An end of a seam that is left open"
    FLY = "fly", "Where a fly opens"
    FRONT = "front", "The edge of a panel or a collar that points to the front"
    BACK = "back", "The edge of a panel that points to the back"
    STAND_NECK = "stand neck", "The neck edge of a button stand that is grown on"
    STAND_HEM = "stand hem", "The hem of a button stand that is grown on"
    FACING = "facing", "The inner edge of a front's facing"
    FACING_NECK = "facing neck", "The neck edge of a front's facing"
    FACING_HEM = "facing hem", "The hem of a front's facing"
    INNER = "inner", "The inner edge of a facing or a band"
    UNDERLAP = "underlap", "The end of a band that lies under the other end"
    LAP = "lap", "Where two parts of an interfacing lie edge over edge"
    BUST_DART = "bust dart", "A leg of a dart that shapes the bust"
    WAIST_DART = "waist dart", "A leg of a dart that shapes the waist"
    BACK_DART = "back dart", "A leg of a dart that shapes the back above the blades"
    ELBOW_DART = "elbow dart", "A leg of a dart that shapes the elbow"


class Half(Declared):
    """Which half of the body an edge lies on, where a piece has both."""

    NONE = "", "Neither, or nobody has to know"
    FRONT = "front", "The front half"
    BACK = "back", "The back half"


class PieceRole(Declared):
    """What a piece is of a garment; a second layer has the role of what it lies behind."""

    PLAIN = "plain", "Nothing that anybody has to know: it is joined like any part of a body"
    FRONT = "front", "A front of a body or of a leg"
    BACK = "back", "A back of a body or of a leg"
    SIDE_FRONT = "side front", "The side panel of a front"
    SIDE_BODY = "side body", "A coat's panel under the arm"
    SLEEVE = "sleeve", "A sleeve in one piece"
    TOP_SLEEVE = "top sleeve", "The upper one of two sleeve pieces"
    UNDER_SLEEVE = "under sleeve", "The lower one of two sleeve pieces"
    CUFF = "cuff", "A cuff"
    KNEE_BAND = "knee band", "The band of a leg below the knee"
    COLLAR = "collar", "The fall of a collar, or a collar alone"
    COLLAR_STAND = "collar stand", "The stand of a collar"
    UNDER_COLLAR = "under collar", "A coat collar's under side"
    TOP_COLLAR = "top collar", "A coat collar's upper side"
    HOOD = "hood", "A hood, sewn to a neck line"
    WAISTBAND = "waistband", "A waistband"
    BAND = "band", "A straight band along an edge"
    CASING = "casing", "A strip that holds elastic"
    BONE_CASING = "bone casing", "A strip that holds bones"
    FACING = "facing", "A facing"
    BINDING = "binding", "A strip along a raw edge, turned inside it"
    PLACKET = "placket", "A strip that laps over a slit"
    FLY_FACING = "fly facing", "The facing of a fly"
    FLY_SHIELD = "fly shield", "The shield behind a fly"
    BEARER = "bearer", "The part beneath a fall, which carries the waistband"
    TAIL = "tail", "A panel of a coat's tail"
    GODET = "godet", "A wedge let into a seam"
    APPLIQUE = "appliqué", "A shape sewn onto another piece"
    POCKET = "pocket", "A pocket, or its flap, sewn onto another piece"
    STRAP = "strap", "A strap that is sewn onto another piece by one end"
    LAPEL = "lapel", "A second layer that covers a lapel only"
    BUTTON_STAND = "button stand", "A second layer that covers a button stand only"
    HEM_BAND = "hem band", "A second layer that covers a band along a hem only"


class SeamKind(Declared):
    """What a seam is, so that its place in the work is known."""

    PLAIN = "plain", "Joins two parts of a body, the last of them all"
    DART = "dart", "The two legs of a dart"
    PANEL = "panel", "Between two panels of a body"
    PRINCESS = "princess", "Between two panels of a front, over the bust"
    YOKE = "yoke", "A yoke to what hangs from it"
    CENTRE = "centre", "At the centre, a left half to a right one"
    PLEAT = "pleat", "The inside of a pleat"
    LAID_PLEAT = "laid pleat", "The two halves of a pleat where it is laid in an edge"
    WAIST = "waist", "What hangs from the waist to the body above"
    SHOULDER = "shoulder", "At the shoulder"
    SIDE = "side", "At the side"
    INSEAM = "inseam", "Inside a leg"
    CROTCH = "crotch", "Between the legs"
    SLEEVE = "sleeve", "Closes a sleeve into a tube"
    SET_IN = "set in", "A sleeve's cap to its armhole"
    MADE_UP = "made up", "Inside a small thing made up by itself: a cuff, a band, a collar"
    ATTACHED = "attached", "A small thing to what it belongs to"
    FACING = "facing", "A facing to its edge, or to another facing"
    BAG = "bag", "Closes the bag of a pocket, once both its layers are sewn to the mouth"
    FLY = "fly", "A fly's facing or shield to the front"


class NotchKind(Declared):
    """What a notch marks."""

    PLAIN = "plain", "A place that meets another"
    QUARTER = "quarter", "A share of an edge, so that gathers spread evenly"
    CROWN = "crown", "The crown of a sleeve's cap"


class LevelKind(Declared):
    """Which level of the body a level line lies on."""

    PLAIN = "plain", "Any other"
    BUST = "bust", "Over the bust points"
    WAIST = "waist", "At the waist"
    HIP = "hip", "Over the greatest of the seat"
    KNEE = "knee", "At the knee"
    ELBOW = "elbow", "At the elbow"
    UPPER_ARM = "upper arm", "Round the upper arm, at the armpit"


SLEEVES = frozenset({PieceRole.SLEEVE, PieceRole.TOP_SLEEVE, PieceRole.UNDER_SLEEVE})
"""Pieces that a sleeve is made of."""

COLLARS = frozenset({PieceRole.COLLAR, PieceRole.COLLAR_STAND, PieceRole.UNDER_COLLAR, PieceRole.TOP_COLLAR})
"""Pieces that a collar is made of."""

SMALL = COLLARS | {PieceRole.CUFF, PieceRole.KNEE_BAND, PieceRole.WAISTBAND, PieceRole.BAND, PieceRole.CASING}
"""Pieces that are made up by themselves before they are joined on."""

SEWN_ON = frozenset({PieceRole.POCKET, PieceRole.STRAP})
"""Pieces made up by themselves and sewn onto another while it lies flat."""

FACINGS = frozenset({PieceRole.FACING, PieceRole.BINDING, PieceRole.FLY_FACING})
"""Pieces that lie behind an edge."""


@dataclass(frozen=True, slots=True)
class DartLeg:
    """That an edge is a leg of an open dart.

    `dart` is the dart's name, one for both legs; `inward` says that the leg runs from the mouth to the
    tip, in outline order; `other` names the other leg.
    """

    dart: str
    inward: bool
    other: str

    def mirrored(self, name: str) -> tuple[str, DartLeg]:
        """Return what the leg called `name` is called in the mirror, and what it is there.

        The outline runs the other way round, so the two legs change places and names.
        """
        return self.other, replace(self, inward=not self.inward, other=name)
