"""The mesh file read by another reader: rows split at blanks, the cloth cut by a plane, a hull laid round it."""

from __future__ import annotations

import json
from pathlib import Path

import numpy as np
import pytest
from scipy.spatial import ConvexHull

from drafting.costume.file import read_costume
from drafting.costume.make import finished
from drafting.costume.worn import worn
from drafting.ground.shipped import demo_costume
from drafting.output.worn import write_worn

LEVELS = {
    "shirt": ("bust", "waist", "hip", "upper_arm"),
    "breeches": ("waist", "hip", "thigh", "knee", "trouser_hem"),
    "coat": ("bust", "waist", "upper_arm"),
}
"""Every girth that the garments of the lamplighter were drafted to."""

BODY, LEGS = ("front", "back"), ("front", "back")
CUT = {
    ("shirt", "bust"): (BODY, True),
    ("shirt", "waist"): (BODY, True),  # at the hip this shirt is open at its sides
    ("breeches", "hip"): (LEGS, True),
    ("breeches", "thigh"): (LEGS, False),
    ("breeches", "knee"): (LEGS, False),
    ("shirt", "upper_arm"): (("sleeve",), False),
    ("coat", "upper_arm"): (("top-sleeve", "under-sleeve"), False),  # its fronts lie over one another
}
"""Where cloth is cut: of which pieces, and whether both hands' go round one place."""


def read(path: Path) -> tuple[np.ndarray, dict[str, list[list[int]]], dict[str, list[int]]]:
    """Return places (n, 3), the faces of each group, the lines of each group; numbers from 0."""
    places, faces, lines, group = [], {}, {}, ""
    for row in path.read_text("utf-8").splitlines():
        kind, *rest = row.split() or [""]
        if kind == "v":
            places.append([float(word) for word in rest])
        elif kind == "g":
            group = rest[0]
        elif kind == "f":
            faces.setdefault(group, []).append([int(word.split("/")[0]) - 1 for word in rest])
        elif kind == "l":
            lines[group] = [int(word) - 1 for word in rest]
    return np.array(places), faces, lines


def plane_of(run: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Return the plane nearest to a line: a point of it, and two unit vectors in it with the one square to it."""
    middle = run.mean(axis=0)
    return middle, np.linalg.svd(run - middle)[2]


def cut(places: np.ndarray, faces: list[list[int]], middle: np.ndarray, axes: np.ndarray) -> np.ndarray:
    """Return (n, 2) where the edges of faces pass through a plane."""
    flat = (places - middle) @ axes.T
    found = []
    for face in faces:
        for a, b in zip(face, [*face[1:], face[0]], strict=True):
            low, high = flat[a], flat[b]
            if low[2] * high[2] < 0:
                found.append((low - low[2] / (high[2] - low[2]) * (high - low))[:2])
    return np.array(found)


def on_seams(run: np.ndarray, places: np.ndarray, faces: dict[str, list[list[int]]]) -> np.ndarray:
    """Return which points of a line lie on a seam: on an edge that the faces of two pieces share."""
    sides: dict[tuple[int, int], set[str]] = {}
    for piece, own in faces.items():
        for face in own:
            for a, b in zip(face, [*face[1:], face[0]], strict=True):
                sides.setdefault((min(a, b), max(a, b)), set()).add(piece)
    shared = np.array([pair for pair, pieces in sides.items() if len(pieces) > 1])
    starts, ways = places[shared[:, 0]], places[shared[:, 1]] - places[shared[:, 0]]
    off = run[:, None] - starts[None]
    share = np.clip((off * ways).sum(axis=2) / (ways * ways).sum(axis=1), 0.0, 1.0)
    return np.linalg.norm(off - share[:, :, None] * ways, axis=2).min(axis=1) < 0.1


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return the folder of the whole lamplighter, worn."""
    out = tmp_path_factory.mktemp("worn") / "lamplighter"
    write_worn(worn(finished(read_costume(demo_costume())), treat=False), out)
    return out


def told(folder: Path, garment: str) -> dict[str, float]:
    """Return the girths of the record that a garment was found to be worn at."""
    found = json.loads((folder / "worn.json").read_text("utf-8"))["garments"]
    (own,) = (one for one in found if one["garment"] == garment)
    assert own["converged"]
    return {row["level"]: row["worn"] for row in own["girths"]}


@pytest.mark.parametrize(("garment", "levels"), LEVELS.items())
def test_a_tape_along_the_lines_of_the_file_reads_the_record(
    folder: Path, garment: str, levels: tuple[str, ...]
) -> None:
    places, faces, lines = read(folder / "meshes" / f"{garment}.obj")
    record = told(folder, garment)
    assert set(record) == set(levels)
    for level in levels:
        run = places[lines[f"level_{level}"]]
        steps, sewn = np.linalg.norm(np.diff(run, axis=0), axis=1), on_seams(run, places, faces)
        steep = np.abs(np.diff(run[:, 2])) > 0.7 * steps
        along = sewn[:-1] & sewn[1:] & steep & (steps > 3.0)  # a tape lies level: it climbs no seam
        assert steps[~along].sum() == pytest.approx(record[level], abs=5.0), level


@pytest.mark.parametrize(("garment", "level"), CUT)
def test_a_taut_tape_round_the_cut_cloth_is_no_longer_than_the_record(
    folder: Path, garment: str, level: str
) -> None:
    """A hull passes over folds: as much shorter as the cloth is folded there, never longer."""
    places, faces, lines = read(folder / "meshes" / f"{garment}.obj")
    middle, axes = plane_of(places[lines[f"level_{level}"]])
    pieces, both = CUT[garment, level]
    groups = [group for group in faces if group.removeprefix("right_" * both) in pieces]
    cloth = [face for group in groups for face in faces[group]]
    taut = ConvexHull(cut(places, cloth, middle, axes)).area  # in the plane that is the length round it
    worn_at = told(folder, garment)[level]
    print(f"{garment}, {level}: record {worn_at:.1f}, taut tape round the cut cloth {taut:.1f} mm")
    assert taut - worn_at <= 5.0
    assert taut >= 0.95 * worn_at  # ours: none of these lies in deeper folds there
