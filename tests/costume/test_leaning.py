"""A label warns of the estimates that its own piece leans on, and of no others."""

from __future__ import annotations

from drafting.body import wearer
from drafting.costume.file import CostumeFile, Garment
from drafting.costume.leaning import leaning
from drafting.costume.make import make
from drafting.ground.frozen import FrozenDict
from drafting.output.sheets import piece_label

FOUR = {"height": 1680.0, "bust_girth": 920.0, "high_bust_girth": 880.0, "waist_girth": 750.0, "hip_girth": 990.0}
"""mm: the least that is measured (invented)."""


def shirt() -> CostumeFile:
    garment = Garment(name="shirt", block="shirt", fabric="", choices=FrozenDict({}), line=1)
    return CostumeFile(
        title="", wearer=wearer(FOUR, unit="in"), garments=(garment,), fabrics=FrozenDict({}), path="", unit="in"
    )


def test_a_cuff_leans_on_the_wrist_alone_and_a_collar_on_the_neck() -> None:
    found = leaning(make(shirt()), "shirt")
    assert found["cuff"] == ("wrist_girth",)
    assert set(found["collar"]) <= {"neck_girth", "neck_base_girth"}
    assert {"arm_length", "wrist_girth"} <= set(found["sleeve"])


def test_no_piece_is_warned_of_what_only_another_leans_on() -> None:
    made = make(shirt())
    label = piece_label(made, made["shirt"])
    legs = {"thigh_girth", "calf_girth", "inside_leg_length", "knee_girth"}
    assert legs <= set(label.estimated)
    for piece in made["shirt"].draft.pieces:
        assert not legs & set(label.guessed(piece.name)), piece.name
    assert label.guessed("cuff") == {"wrist_girth": 2 * (made.costume.wearer.measures["wrist_girth"].sd or 0.0)}
