"""The signs of garments of the upper body, from the shoulders down."""

from __future__ import annotations

from drafting.draft.roles import EdgeRole, LevelKind, PieceRole
from drafting.fitting.bands import GarmentSort
from drafting.fitting.note import AmountAs, Verb
from drafting.fitting.signs import FitSign, Fold, FoldKind, LikelyCause, ShownWorn, SignView, ToTry, WornNumber

_ABOVE = frozenset({GarmentSort.TOP, GarmentSort.COAT})
_WAISTED = _ABOVE | {GarmentSort.WAISTED}
_COAT = frozenset({GarmentSort.COAT})
_SHOULDERED = _ABOVE | {GarmentSort.CAPE}
_F, _B = SignView.FRONT, SignView.BACK
_STRAIN, _LOOSE, _GAP, _TILT = FoldKind.STRAIN, FoldKind.LOOSE, FoldKind.GAP, FoldKind.TILT


LIKE = {EdgeRole.SIDE: (EdgeRole.SIDE, EdgeRole.PANEL), EdgeRole.CAP: (EdgeRole.CAP, EdgeRole.CAP_PART)}
"""What has the part of an edge where a garment is cut otherwise."""


def _edge(verb: Verb, mm: float, role: EdgeRole, piece: PieceRole | None = None) -> ToTry:
    return ToTry(verb, mm, edges=LIKE.get(role, (role,)), piece=piece)


def _piece(verb: Verb, mm: float, piece: PieceRole) -> ToTry:
    return ToTry(verb, mm, piece=piece)


def _measure(verb: Verb, mm: float, measure: str) -> ToTry:
    return ToTry(verb, mm, AmountAs.TOTAL, measure=measure)


def _level(verb: Verb, mm: float, level: LevelKind) -> ToTry:
    return ToTry(verb, mm, AmountAs.TOTAL, level=level)


SIGNS_ABOVE: tuple[FitSign, ...] = (
    FitSign(
        "neck to armpit",
        "Folds run from the neck to the armpit",
        _ABOVE,
        _F,
        (Fold((0.15, 0.9), (0.95, 0.9), _LOOSE), Fold((0.3, 0.75), (1.0, 0.75), _LOOSE)),
        (
            LikelyCause("the shoulder slopes more", _measure(Verb.LOWER, 10.0, "shoulder_drop")),
            LikelyCause("the armhole is too low", _edge(Verb.RAISE, 10.0, EdgeRole.ARMHOLE)),
            LikelyCause("the shoulder is too long", _edge(Verb.SHORTEN, 10.0, EdgeRole.SHOULDER)),
        ),
    ),
    FitSign(
        "below the neck",
        "A level fold lies below the neck",
        _SHOULDERED,
        _B,
        (Fold((0.35, -0.9), (0.35, 0.9), _LOOSE, both=False), Fold((0.5, -0.7), (0.5, 0.7), _LOOSE, both=False)),
        (
            LikelyCause("the shoulders are square", _measure(Verb.RAISE, 10.0, "shoulder_drop")),
            LikelyCause("the neck is cut too high", _edge(Verb.LOWER, 6.0, EdgeRole.NECK, PieceRole.BACK)),
            LikelyCause("the upper back is round", _piece(Verb.LENGTHEN, 10.0, PieceRole.BACK)),
        ),
    ),
    FitSign(
        "neck gapes",
        "The neckline stands off",
        _ABOVE,
        _F,
        (Fold((0.25, -0.8), (0.55, 0.0), _GAP), Fold((0.4, -0.6), (0.65, 0.0), _GAP)),
        (
            LikelyCause("the bust is fuller than drafted", _measure(Verb.LET_OUT, 20.0, "bust_girth")),
            LikelyCause("the neck is cut too wide", _edge(Verb.TAKE_IN, 6.0, EdgeRole.NECK, PieceRole.FRONT)),
            LikelyCause("the shoulder slopes more", _measure(Verb.LOWER, 8.0, "shoulder_drop")),
        ),
    ),
    FitSign(
        "collar stands off",
        "The back stands off at the neck, and its hem kicks out",
        _SHOULDERED,
        _B,
        (Fold((0.05, -0.6), (0.05, 0.6), _GAP, both=False), Fold((4.0, -1.0), (3.85, 0.0), _TILT)),
        (
            LikelyCause("the upper back is round", _piece(Verb.LENGTHEN, 15.0, PieceRole.BACK)),
            LikelyCause("the front is long for the back: balance", _piece(Verb.SHORTEN, 8.0, PieceRole.FRONT)),
        ),
        worn=ShownWorn(WornNumber.STANDS_OFF, LevelKind.HIP, "back"),
    ),
    FitSign(
        "bust to side",
        "Lines pull from the bust point to the side",
        _ABOVE,
        _F,
        (
            Fold((2.0, 0.5), (1.7, 1.0), _STRAIN),
            Fold((2.0, 0.5), (2.0, 1.0), _STRAIN),
            Fold((2.0, 0.5), (2.35, 1.0), _STRAIN),
        ),
        (
            LikelyCause("the bust is fuller than drafted", _measure(Verb.LET_OUT, 25.0, "bust_girth")),
            LikelyCause("the side is too tight", _edge(Verb.LET_OUT, 10.0, EdgeRole.SIDE)),
            LikelyCause("the bust point lies elsewhere", _measure(Verb.LENGTHEN, 10.0, "bust_point_depth")),
        ),
        worn=ShownWorn(WornNumber.STRAIN, LevelKind.BUST),
    ),
    FitSign(
        "armhole gapes",
        "A loose fold stands at the armhole",
        _ABOVE,
        _F,
        (Fold((0.75, 0.95), (1.4, 0.65), _GAP), Fold((1.0, 0.9), (1.5, 0.7), _GAP)),
        (
            LikelyCause("the bust wants a deeper dart", _measure(Verb.LET_OUT, 20.0, "bust_girth")),
            LikelyCause(
                "its edge is too long: fold it to the dart",
                _edge(Verb.SHORTEN, 8.0, EdgeRole.ARMHOLE, PieceRole.FRONT),
            ),
            LikelyCause("it is too wide across", _measure(Verb.TAKE_IN, 10.0, "across_front_width")),
        ),
    ),
    FitSign(
        "armhole cuts",
        "The armhole cuts in at the front fold of the arm",
        _ABOVE,
        _F,
        (Fold((0.8, 0.85), (1.05, 0.95), _STRAIN), Fold((0.95, 0.7), (1.1, 0.9), _STRAIN)),
        (
            LikelyCause("it is cut too high", _edge(Verb.CLIP, 6.0, EdgeRole.ARMHOLE, PieceRole.FRONT)),
            LikelyCause("it is too wide across the front", _measure(Verb.TAKE_IN, 8.0, "across_front_width")),
        ),
    ),
    FitSign(
        "across the back",
        "The back pulls level between the blades, arms forward",
        _ABOVE,
        _B,
        (
            Fold((0.8, -0.95), (0.8, 0.95), _STRAIN, both=False),
            Fold((1.05, -0.95), (1.05, 0.95), _STRAIN, both=False),
        ),
        (
            LikelyCause("the back is broader", _measure(Verb.LET_OUT, 15.0, "across_back_width")),
            LikelyCause("the armhole is too low", _edge(Verb.RAISE, 10.0, EdgeRole.ARMHOLE)),
            LikelyCause("the sleeve is tight", _level(Verb.LET_OUT, 15.0, LevelKind.UPPER_ARM)),
        ),
        sleeved=True,
    ),
    FitSign(
        "waist loose",
        "Upright folds hang at the waist",
        _WAISTED,
        _F,
        (Fold((2.5, 0.75), (3.6, 0.75), _LOOSE), Fold((2.6, 0.5), (3.5, 0.5), _LOOSE)),
        (
            LikelyCause("the waist is smaller", _measure(Verb.TAKE_IN, 30.0, "waist_girth")),
            LikelyCause("the sides are wide", _edge(Verb.TAKE_IN, 10.0, EdgeRole.SIDE)),
            LikelyCause("the waist lies elsewhere", _measure(Verb.SHORTEN, 10.0, "back_waist_length"), above=True),
        ),
        worn=ShownWorn(WornNumber.SLACK, LevelKind.WAIST),
    ),
    FitSign(
        "waist tight",
        "Lines cross at the waist, and the closing strains",
        _WAISTED,
        _F,
        (Fold((2.5, 0.9), (3.4, -0.4), _STRAIN), Fold((3.0, -1.0), (3.0, 1.0), _STRAIN, both=False)),
        (
            LikelyCause("the waist is larger", _measure(Verb.LET_OUT, 30.0, "waist_girth")),
            LikelyCause("the sides are narrow", _edge(Verb.LET_OUT, 10.0, EdgeRole.SIDE)),
            LikelyCause(
                "the waist lies elsewhere", _measure(Verb.LENGTHEN, 10.0, "back_waist_length"), above=True
            ),
        ),
        worn=ShownWorn(WornNumber.STRAIN, LevelKind.WAIST),
    ),
    FitSign(
        "small of the back",
        "A fold lies across the small of the back",
        _WAISTED,
        _B,
        (Fold((2.85, -0.8), (2.85, 0.8), _LOOSE, both=False), Fold((3.05, -0.6), (3.05, 0.6), _LOOSE, both=False)),
        (
            LikelyCause(
                "the hip is tight and holds the back up: rule it out first",
                _level(Verb.LET_OUT, 20.0, LevelKind.HIP),
            ),
            LikelyCause(
                "the back is hollow",
                ToTry(Verb.SHORTEN, 10.0, edges=(EdgeRole.CENTRE_SEAM, EdgeRole.CENTRE), piece=PieceRole.BACK),
            ),
            LikelyCause("the back is short", _measure(Verb.SHORTEN, 15.0, "back_waist_length"), above=True),
        ),
        worn=ShownWorn(WornNumber.STRAIN, LevelKind.HIP),
    ),
    FitSign(
        "hem up in front",
        "The hem rises in front",
        _WAISTED,
        _F,
        (Fold((4.0, -1.0), (3.75, 0.0), _TILT), Fold((2.1, 0.3), (3.8, 0.1), _STRAIN)),
        (
            LikelyCause("the bust is fuller than drafted", _measure(Verb.LET_OUT, 25.0, "bust_girth"), above=True),
            LikelyCause("the belly is fuller", _measure(Verb.LET_OUT, 20.0, "waist_girth")),
            LikelyCause("the front is short for the back: balance", _piece(Verb.LENGTHEN, 10.0, PieceRole.FRONT)),
        ),
        worn=ShownWorn(WornNumber.HEM, None, "front"),
    ),
    FitSign(
        "hem up behind",
        "The hem rises behind",
        _WAISTED,
        _B,
        (Fold((4.0, -1.0), (3.75, 0.0), _TILT), Fold((0.9, 0.3), (3.7, 0.1), _STRAIN)),
        (
            LikelyCause("the upper back is round", _piece(Verb.LENGTHEN, 15.0, PieceRole.BACK), above=True),
            LikelyCause("the seat is fuller", _level(Verb.LET_OUT, 20.0, LevelKind.HIP)),
        ),
        worn=ShownWorn(WornNumber.HEM, None, "back"),
    ),
    FitSign(
        "rises with the arm",
        "The whole body rises when an arm is lifted",
        _ABOVE,
        _F,
        (Fold((1.05, 0.95), (3.2, 0.9), _STRAIN), Fold((1.05, 0.95), (2.6, 0.6), _STRAIN)),
        (
            LikelyCause("the armhole is too low", _edge(Verb.RAISE, 10.0, EdgeRole.ARMHOLE)),
            LikelyCause("the cap is too high", _edge(Verb.LOWER, 10.0, EdgeRole.CAP)),
            LikelyCause("the sleeve is tight", _level(Verb.LET_OUT, 20.0, LevelKind.UPPER_ARM)),
        ),
        sleeved=True,
    ),
    FitSign(
        "sleeve slants",
        "Slanting folds run down the sleeve from its crown",
        _ABOVE,
        _F,
        (Fold((10.02, -0.6), (10.35, 0.6), _LOOSE), Fold((10.1, -0.6), (10.45, 0.6), _LOOSE)),
        (
            LikelyCause("the arm hangs forward: the sleeve's pitch", _edge(Verb.TURN, 10.0, EdgeRole.CAP)),
            LikelyCause("the cap is too short", _edge(Verb.RAISE, 8.0, EdgeRole.CAP)),
            LikelyCause("the shoulder lies forward", _edge(Verb.FORWARD, 8.0, EdgeRole.SHOULDER)),
        ),
        sleeved=True,
    ),
    FitSign(
        "sleeve tight",
        "The sleeve pulls level round the upper arm",
        _ABOVE,
        _F,
        (Fold((10.15, -0.8), (10.15, 0.8), _STRAIN), Fold((10.22, -0.8), (10.22, 0.8), _STRAIN)),
        (
            LikelyCause("the arm is fuller", _measure(Verb.LET_OUT, 20.0, "upper_arm_girth")),
            LikelyCause("the sleeve is narrow", _level(Verb.LET_OUT, 15.0, LevelKind.UPPER_ARM)),
        ),
        worn=ShownWorn(WornNumber.STRAIN, LevelKind.UPPER_ARM),
        sleeved=True,
    ),
    FitSign(
        "front swings",
        "The front edges swing apart, or lie over each other below",
        _COAT,
        _F,
        (Fold((2.6, 0.05), (3.9, 0.35), _TILT),),
        (
            LikelyCause(
                "the front is short or long for the back: balance", _piece(Verb.LENGTHEN, 8.0, PieceRole.FRONT)
            ),
            LikelyCause("the belly is fuller", _measure(Verb.LET_OUT, 20.0, "waist_girth")),
        ),
    ),
)
