"""The cloth cut through: what a hem, a casing or a band looks like from its end, which no flat view shows."""

from __future__ import annotations

import numpy as np

from drafting.making.stages.picture import Face, Ink, InkLine, InkMark, Panel, drawn_panel


def hem_section() -> Panel:
    """A hem turned twice: the fold below, the raw edge turned under, the stitch through all layers."""
    fold = [0, -100j, 3 - 104j, 8 - 105j, 13 - 104j, 16 - 100j, 16 - 58j, 20 - 54j, 24 - 58j, 24 - 78j]
    inks: list[Ink] = [_layer(fold), _stitch(-9, 33, -70), InkMark("move", 54 - 46j, 1j, 80.0)]
    return _roomy(inks, (-30, -125, 66, 12))


def turned_section() -> Panel:
    """An edge turned in once and held: the raw edge lies inside."""
    fold = [0, -100j, 3 - 104j, 8 - 105j, 13 - 104j, 16 - 100j, 16 - 52j]
    return _roomy([_layer(fold), _stitch(-9, 25, -66), InkMark("move", 46 - 46j, 1j, 80.0)], (-30, -125, 66, 12))


def casing_section() -> Panel:
    """A casing with the elastic in it."""
    fold = [-120j, 0, 3 + 4j, 9 + 6j, 15 + 4j, 18 + 0j, 18 - 60j, 22 - 64j, 26 - 60j, 26 - 44j]
    elastic = Face("elastic", np.array([5 - 4j, 13 - 4j, 13 - 40j, 5 - 40j]))
    return _roomy([_layer(fold), elastic, _stitch(-9, 35, -50)], (-30, -124, 56, 14))


def band_section() -> Panel:
    """A band that takes an edge between its two layers, stitched through."""
    band = [-12 - 60j, -12 + 40j, -6 + 46j, 6 + 46j, 12 + 40j, 12 - 66j, 8 - 70j, 4 - 66j, 4 - 40j]
    outer = [-12 - 60j, -8 - 64j, -4 - 60j, -4 - 36j]
    cloth = [-120j, -34j]
    return _roomy([_layer(band), _layer(outer), _layer(cloth), _stitch(-24, 24, -52)], (-40, -124, 40, 56))


def ring_of_elastic() -> Panel:
    """Elastic joined to a ring, its ends lapped and stitched in a square with a cross."""
    turn = np.linspace(0, 2 * np.pi, 48)
    oval = 60 * np.cos(turn) + 26j * np.sin(turn)
    corners = np.array([-17 - 40j, 17 - 40j, 17 - 24j, -17 - 24j])
    inks: list[Ink] = [Face("elastic", oval - 9j), Face("wrong", oval * 0.86 + 9j), Face("wrong", corners)]
    inks += [InkLine("firm", np.array([corners[i], corners[i + 2]])) for i in (0, 1)]
    return drawn_panel(inks, share=0.4)


def _layer(points: list[complex]) -> InkLine:
    return InkLine("sewn", np.array(points, complex))


def _stitch(left: float, right: float, level: float) -> InkLine:
    return InkLine("firm", np.array([complex(left, level), complex(right, level)]))


def _roomy(inks: list[Ink], box: tuple[float, float, float, float]) -> Panel:
    return drawn_panel(inks, window=box, share=0.3)
