"""The mesh file read by another reader: rows split at blanks, the cloth cut by a plane, a hull laid round it."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from scipy.spatial import ConvexHull

from drafting.costume.file import read_costume
from drafting.costume.make import finished
from drafting.costume.worn import worn
from drafting.ground.shipped import demo_costume
from drafting.output.worn import write_worn

TRUNK = ("bust", "waist", "hip")


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


def cut(places: np.ndarray, faces: list[list[int]], height: float) -> np.ndarray:
    """Return (n, 2) where the edges of faces pass through a height."""
    found = []
    for face in faces:
        for a, b in zip(face, [*face[1:], face[0]], strict=True):
            low, high = places[a], places[b]
            if (low[2] - height) * (high[2] - height) < 0:
                found.append((low + (height - low[2]) / (high[2] - low[2]) * (high - low))[:2])
    return np.array(found)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    costume = read_costume(demo_costume())
    only = tuple(garment for garment in costume.garments if garment.name == "shirt")
    out = tmp_path_factory.mktemp("worn") / "shirt"
    write_worn(worn(finished(replace(costume, garments=only))), out)
    return out


def told(folder: Path) -> dict[str, float]:
    (garment,) = json.loads((folder / "worn.json").read_text("utf-8"))["garments"]
    assert garment["converged"]
    return {row["level"]: row["worn"] for row in garment["girths"]}


def test_a_tape_along_the_lines_of_the_file_reads_the_record(folder: Path) -> None:
    places, _, lines = read(folder / "meshes" / "shirt.obj")
    for level in TRUNK:
        run = places[lines[f"level_{level}"]]
        assert np.linalg.norm(np.diff(run, axis=0), axis=1).sum() == pytest.approx(told(folder)[level], abs=5.0)


def test_a_taut_tape_round_the_cut_cloth_is_no_longer_than_the_record(folder: Path) -> None:
    """A hull passes over folds: as much shorter as the cloth is folded there, never longer."""
    places, faces, lines = read(folder / "meshes" / "shirt.obj")
    body = [
        face for group, own in faces.items() if group.removeprefix("right_") in ("front", "back") for face in own
    ]
    for level in ("bust", "waist"):  # at the hip this shirt is open at its sides
        height = float(places[lines[f"level_{level}"], 2].mean())
        taut = ConvexHull(cut(places, body, height)).area  # in the plane that is the length round it
        print(level, told(folder)[level], taut)
        assert taut - told(folder)[level] <= 5.0
        assert taut >= 0.95 * told(folder)[level]  # ours: a shirt lies in no deeper folds at bust and waist
