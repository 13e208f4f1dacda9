"""Notes on a stooped woman and on a stout man, whose armholes reach down to the bust: what they once broke."""

from __future__ import annotations

import cmath
import math
from functools import cache

import pytest

from drafting.body import Body, wearer
from drafting.costume.choices import block_named, choose
from drafting.costume.garment import MadeGarment, checked_garment, finished_garment
from drafting.draft.roles import EdgeRole
from drafting.fitting.note import Note
from drafting.ground.scale import body_scale
from drafting.making.fit.ease import ease_rows
from drafting.reading.given import Origin
from tests.fitting.test_followers import note

STOOPED = {
    "height": 1520,
    "bust_girth": 980,
    "high_bust_girth": 920,
    "waist_girth": 900,
    "hip_girth": 1020,
    "shoulder_length": 115,
    "back_waist_length": 425,
    "front_waist_length": 380,
    "nape_height": 1290,
    "upper_arm_girth": 310,
    "arm_length": 530,
    "waist_to_hip": 180,
}
STOUT = {
    "height": 1720,
    "bust_girth": 1200,
    "waist_girth": 1280,
    "hip_girth": 1180,
    "neck_girth": 450,
    "shoulder_length": 134,
    "back_waist_length": 460,
    "front_waist_length": 510,
    "upper_arm_girth": 380,
    "arm_length": 620,
}
"""Invented, mm."""


@cache
def made(figure: str, block: str, *notes: Note) -> MadeGarment:
    body = figured(figure)
    kind = block_named(block)
    chosen = choose(kind, {}, body_scale(body), Origin())
    garment = finished_garment(body, None, kind, chosen, name=block, role="shell", notes=notes)
    return checked_garment(garment, body, None)


def figured(figure: str) -> Body:
    return wearer(STOOPED if figure == "stooped" else STOUT)


def errors(garment: MadeGarment) -> set[tuple[str, str]]:
    return {(f.check, f.where) for f in garment.findings if f.level == "error"}


@pytest.mark.parametrize(
    ("figure", "block", "where", "verb"),
    [
        ("stooped", "peplum-top", "back:", "lengthen"),
        ("stooped", "peplum-top", "back.centre", "lengthen"),
        ("stooped", "peplum-top", "back.armhole", "lower"),
        ("stooped", "peplum-top", "back.shoulder_inner", "lower"),
        ("stout", "shirt", "front.armhole", "lower"),
        ("stout", "shirt", "front.shoulder", "lower"),
    ],
)
def test_the_middle_stays_square_and_the_levels_reach_the_cloth(
    figure: str, block: str, where: str, verb: str
) -> None:
    where = where if where.partition(".")[2] != "shoulder_inner" else shoulder_of(made(figure, block))
    garment = made(figure, block, note(where, verb, 10.0))
    assert garment.done[0].carried, garment.done[0].said
    assert errors(garment) <= errors(made(figure, block))
    for piece in garment.draft.pieces:
        for at, edge in enumerate(piece.edges):
            for middle, beside, turn in ((piece.edges[at - 1], edge, 1), (edge, piece.edges[at - 1], -1)):
                if middle.role is EdgeRole.CENTRE and beside.role in (
                    EdgeRole.NECK,
                    EdgeRole.WAIST,
                    EdgeRole.YOKE,
                ):
                    into, out = (middle, beside) if turn == 1 else (beside, middle)
                    angle = math.degrees(cmath.phase(out.path.leave / into.path.arrive))
                    assert abs(abs(angle) - 90.0) < 1.0, f"{piece.name}.{beside.name}"


def shoulder_of(garment: MadeGarment) -> str:
    """Return the shoulder's edge next to the neck on the back."""
    pieces = [p for p in garment.draft.pieces if p.name.startswith("back") and not p.material]
    piece, edge = next((p, e) for p in pieces for e in p.edges if e.role is EdgeRole.SHOULDER)
    return f"{piece.name}.{edge.name}"


@pytest.mark.parametrize("where", ["front.armhole", "front.shoulder"])
def test_an_armhole_lowered_past_the_bust_level_takes_no_girth_from_the_bust(where: str) -> None:
    """It was refused, as over 50 mm round; the ease told at the bust lost what lies in the armhole."""
    plain, lowered = made("stout", "shirt"), made("stout", "shirt", note(where, "lower", 10.0))
    body = figured("stout")
    eases = [
        next(row.ease for row in ease_rows(one, body, None) if row.level == "bust") for one in (plain, lowered)
    ]
    assert eases[1] == pytest.approx(eases[0], abs=12.0)
