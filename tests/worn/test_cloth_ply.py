"""What strips of cloth say as stiffness and rigidity, against the mechanics of laminates worked out here."""

from __future__ import annotations

from dataclasses import fields, replace

import numpy as np
import pytest

from drafting.fabric import Fabric, read_fabric
from drafting.fabric.cloth import TreatedStrip
from drafting.ground.shipped import shipped
from drafting.worn.cloth import Bond, ClothLayer, Treatment, ply_of, ply_range, stiffened

TRIED = Fabric(
    "tried",
    mass=150.0,
    thickness=0.3,
    stretch_along=0.01,
    stretch_across=0.02,
    stretch_bias=0.10,
    load_along=98.0665,
    load_across=98.0665,
    load_bias=98.0665,
    bending_length_along=22.0,
    bending_length_across=18.0,
    bending_length_bias=19.0,
)
LINING = Fabric("lining", mass=95.0, thickness=0.2, bending_length_along=16.0)
FABRICS = [read_fabric(path) for path in sorted((shipped("measurements") / "fabrics").glob("*.toml"))]


def test_a_cloth_tried_in_full_has_no_guess() -> None:
    ply = ply_of(TRIED)
    assert ply.guessed == ()
    assert ply.along == pytest.approx(9806.65)  # 500 g on 5 cm over 1 %
    assert ply.weight == pytest.approx(0.150 * 9.80665)
    assert ply.bends_along == pytest.approx(ply.weight * 0.022**3)


def test_a_cloth_nobody_tried_is_all_guess() -> None:
    ply = ply_of(Fabric("unknown"))
    assert set(ply.guessed) == {one.name for one in fields(ply)} - {"guessed"}


def test_a_stretch_without_its_load_is_a_guess() -> None:
    assert "along" in ply_of(replace(TRIED, load_along=None)).guessed
    assert "shear" in ply_of(replace(TRIED, load_along=None)).guessed
    assert "across" not in ply_of(replace(TRIED, load_along=None)).guessed


def test_a_strip_on_the_bias_gives_as_its_threads_and_shear_do() -> None:
    """The compliance of a sheet turned by 45 degrees (Jones, Mechanics of Composite Materials, from memory)."""
    ply = ply_of(TRIED)
    compliance = np.linalg.inv(np.diag([ply.along, ply.across, ply.shear]))
    stress = np.array([0.5, 0.5, 0.5])  # of a pull of 1 N/m at 45 degrees, in the threads' axes
    stretch = stress @ compliance @ stress
    assert 98.0665 * stretch == pytest.approx(0.10, rel=1e-9)


def test_a_strip_on_the_bias_bends_as_its_threads_and_twist_do() -> None:
    ply = ply_of(TRIED)
    curve = np.array([0.5, 0.5, 0.5])  # curvature 1 at 45 degrees: along, across, twist
    energy = curve @ np.diag([ply.bends_along, ply.bends_across, 2 * ply.twisting]) @ curve
    assert energy == pytest.approx(ply.weight * 0.019**3, rel=1e-9)


def test_a_bias_that_no_cloth_can_have_is_marked_a_guess() -> None:
    stiff = ply_of(replace(TRIED, stretch_bias=0.006))
    assert "shear" in stiff.guessed
    assert 0 < stiff.shear <= (stiff.along * stiff.across) ** 0.5 / 2 + 1e-9
    limp = ply_of(replace(TRIED, bending_length_bias=9.0))
    assert "twists" in limp.guessed
    assert limp.twisting > 0


def test_loose_layers_add_and_bonded_ones_bend_as_a_laminate() -> None:
    loose, fused = ply_of(TRIED, LINING), ply_range(TRIED, ClothLayer(LINING, Bond.FUSED))
    one, two = ply_of(TRIED), ply_of(LINING)
    assert loose.bends_along == pytest.approx(one.bends_along + two.bends_along)
    assert loose.weight == pytest.approx(one.weight + two.weight)
    assert fused.low == replace(loose, guessed=fused.low.guessed)
    high = one.along * 0.0 + _bonded(one.along, two.along, 0.25e-3, one.bends_along + two.bends_along)
    assert fused.high.bends_along == pytest.approx(high, rel=1e-6)
    assert fused.low.bends_along < fused.likely.bends_along < fused.high.bends_along


def _bonded(first: float, second: float, apart: float, own: float) -> float:
    """The least energy of two skins `apart` bent to curvature 1, over every neutral plane."""
    planes = np.linspace(-apart, apart, 200001)
    energies = first * (planes - 0.0) ** 2 + second * (planes - apart) ** 2
    return own + float(energies.min())


def test_the_laminate_is_as_many_times_stiffer_as_worked_out_by_hand() -> None:
    # Skins of 1500 and 800 N/m, 0.35 mm apart, 9 + 6 uN m: 15 loose; k1 k2 / (k1 + k2) d^2 = 63.9 bonded.
    assert 1e6 * _bonded(1500.0, 800.0, 0.35e-3, 15e-6) == pytest.approx(79.0, abs=0.2)


@pytest.mark.parametrize("treatment", [one for one in Treatment if one is not Treatment.PLAIN])
def test_a_treatment_stiffens_weighs_and_is_a_guess(treatment: Treatment) -> None:
    plain, spread = ply_of(TRIED), ply_range(TRIED, treatment)
    assert plain.bends_along < spread.low.bends_along < spread.likely.bends_along < spread.high.bends_along
    assert spread.likely.weight > plain.weight
    assert {"bends_along", "bends_across", "twists"} <= set(spread.likely.guessed)


def test_a_tested_strip_takes_the_place_of_the_factors() -> None:
    strip = TreatedStrip("fused_medium", bending_length=50.0, mass=210.0)
    ply = ply_of(replace(TRIED, treated=(strip,)), Treatment.FUSED_MEDIUM)
    assert ply.weight == pytest.approx(0.210 * 9.80665)
    assert ply.bends_along == pytest.approx(ply.weight * 0.05**3)
    assert ply.bends_across / ply.bends_along == pytest.approx((18 / 22) ** 3)
    assert not {"weight", "bends_along"} & set(ply.guessed)
    unweighed = ply_of(replace(TRIED, treated=(replace(strip, mass=None),)), Treatment.FUSED_MEDIUM)
    assert "bends_along" in unweighed.guessed


def test_band_and_bone_stiffen_the_hem_alone() -> None:
    band, boned = stiffened(TRIED, Treatment.BAND), stiffened(TRIED, Treatment.BONED, LINING)
    assert band.whole == ply_of(TRIED)
    assert band.hem.bends_along > 5 * band.whole.bends_along
    assert band.hem_depth > 0
    assert not band.boned
    assert boned.boned
    assert boned.whole == ply_of(TRIED, LINING)
    fused = stiffened(TRIED, Treatment.FUSED_LIGHT)
    assert fused.whole == fused.hem == ply_of(TRIED, Treatment.FUSED_LIGHT)


@pytest.mark.parametrize("cloth", FABRICS, ids=lambda cloth: cloth.title)
def test_the_shipped_cloths_have_sound_numbers(cloth: Fabric) -> None:
    ply = ply_of(cloth)
    numbers = (ply.along, ply.across, ply.shear, ply.bends_along, ply.bends_across, ply.twisting, ply.weight)
    assert all(number > 0 for number in numbers)
    assert ply.shear <= (ply.along * ply.across) ** 0.5 / 2 + 1e-9
    assert 1e-6 < ply.bends_along < 3e-4  # 1 uN m chiffon to 300 buckram, from memory
    assert 0.1 < ply.thickness < 3
