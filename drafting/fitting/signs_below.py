"""The signs of garments with legs, from the waist down."""

from __future__ import annotations

from drafting.draft.roles import EdgeRole, LevelKind, PieceRole
from drafting.fitting.bands import GarmentSort
from drafting.fitting.note import AmountAs, Verb
from drafting.fitting.signs import FitSign, Fold, FoldKind, LikelyCause, ShownWorn, SignView, ToTry, WornNumber

_LEGS = frozenset({GarmentSort.LEGS})
_F, _B = SignView.FRONT, SignView.BACK


def _crotch(verb: Verb, mm: float, piece: PieceRole) -> ToTry:
    return ToTry(verb, mm, edges=(EdgeRole.CROTCH,), piece=piece)


def _piece(verb: Verb, mm: float, piece: PieceRole) -> ToTry:
    return ToTry(verb, mm, piece=piece)


def _measure(verb: Verb, mm: float, measure: str) -> ToTry:
    return ToTry(verb, mm, AmountAs.TOTAL, measure=measure)


SIGNS_BELOW: tuple[FitSign, ...] = (
    FitSign(
        "crotch smiles",
        "Lines run up and out from the crotch",
        _LEGS,
        _F,
        (Fold((4.95, 0.05), (4.3, 0.6), FoldKind.STRAIN), Fold((4.95, 0.05), (4.6, 0.75), FoldKind.STRAIN)),
        (
            LikelyCause("the crotch is too short", _measure(Verb.LENGTHEN, 15.0, "total_crotch_length")),
            LikelyCause("the seat is fuller", _piece(Verb.LET_OUT, 10.0, PieceRole.BACK)),
            LikelyCause("the thigh is fuller", _measure(Verb.LET_OUT, 20.0, "thigh_girth")),
        ),
        worn=ShownWorn(WornNumber.STRAIN, LevelKind.HIP),
    ),
    FitSign(
        "crotch hangs",
        "The crotch hangs low in loose folds",
        _LEGS,
        _F,
        (Fold((4.5, 0.5), (5.05, 0.05), FoldKind.LOOSE), Fold((4.7, 0.6), (5.2, 0.1), FoldKind.LOOSE)),
        (
            LikelyCause("the crotch is too long", _measure(Verb.SHORTEN, 15.0, "total_crotch_length")),
            LikelyCause("the waist is worn too low", ToTry(Verb.SHORTEN, 10.0, edges=(EdgeRole.WAIST,))),
        ),
    ),
    FitSign(
        "under the seat, strained",
        "Lines pull under the seat, and the waist is drawn down behind",
        _LEGS,
        _B,
        (Fold((5.0, 0.1), (4.5, 0.8), FoldKind.STRAIN), Fold((3.15, -0.6), (3.0, 0.9), FoldKind.TILT, both=False)),
        (
            LikelyCause("the seat is fuller", _crotch(Verb.LENGTHEN, 10.0, PieceRole.BACK)),
            LikelyCause("the hip is larger", _measure(Verb.LET_OUT, 20.0, "hip_girth")),
        ),
        worn=ShownWorn(WornNumber.STRAIN, LevelKind.HIP),
    ),
    FitSign(
        "under the seat, loose",
        "The back bags below the seat",
        _LEGS,
        _B,
        (Fold((5.05, 0.15), (5.15, 0.85), FoldKind.LOOSE), Fold((5.2, 0.2), (5.3, 0.8), FoldKind.LOOSE)),
        (
            LikelyCause("the seat is flat", _piece(Verb.TAKE_IN, 10.0, PieceRole.BACK)),
            LikelyCause("the back of the crotch is long", _crotch(Verb.SHORTEN, 10.0, PieceRole.BACK)),
        ),
        worn=ShownWorn(WornNumber.STANDS_OFF, LevelKind.HIP, "back"),
    ),
    FitSign(
        "inner thigh",
        "Lines run at the inner thigh, and the crease twists",
        _LEGS,
        _F,
        (Fold((5.1, 0.15), (5.5, 0.6), FoldKind.STRAIN), Fold((5.25, 0.15), (5.7, 0.55), FoldKind.STRAIN)),
        (
            LikelyCause("the thigh is fuller", _measure(Verb.LET_OUT, 20.0, "thigh_girth")),
            LikelyCause(
                "front and back inside leg do not meet", ToTry(Verb.LET_OUT, 5.0, edges=(EdgeRole.INSEAM,))
            ),
        ),
    ),
    FitSign(
        "waist gapes behind",
        "The waist stands off behind",
        _LEGS,
        _B,
        (
            Fold((2.95, -0.5), (2.95, 0.5), FoldKind.GAP, both=False),
            Fold((3.1, -0.4), (3.1, 0.4), FoldKind.GAP, both=False),
        ),
        (
            LikelyCause("the back is hollow", _crotch(Verb.TAKE_IN, 10.0, PieceRole.BACK)),
            LikelyCause("the seat is full above a small waist", _measure(Verb.TAKE_IN, 20.0, "waist_girth")),
        ),
        worn=ShownWorn(WornNumber.STANDS_OFF, LevelKind.WAIST, "back"),
    ),
    FitSign(
        "front lifts",
        "The front is drawn up, and gapes where it opens",
        _LEGS,
        _F,
        (Fold((3.3, 0.05), (4.2, 0.5), FoldKind.STRAIN), Fold((3.5, 0.05), (4.6, 0.4), FoldKind.STRAIN)),
        (
            LikelyCause("the belly is fuller", _crotch(Verb.LENGTHEN, 15.0, PieceRole.FRONT)),
            LikelyCause("the waist is larger", _measure(Verb.LET_OUT, 25.0, "waist_girth")),
        ),
    ),
)
