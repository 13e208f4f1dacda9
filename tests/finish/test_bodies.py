"""The blocks of very different bodies, finished: every cut line is sound and holds its outline.

The bodies are invented; the demands are those of `cut-line`.
"""

import pytest

from drafting.body import Body
from drafting.body.wearer import wearer
from drafting.costume.garment import draft_garment
from drafting.draft.piece import EdgeKind
from drafting.finish import label_room
from drafting.geometry import area

BODIES = {
    "middling": {"height": 1710, "bust_girth": 912, "waist_girth": 740, "hip_girth": 980},
    "stout": {"height": 1620, "bust_girth": 1250, "waist_girth": 1200, "hip_girth": 1260},
    "full bust": {
        "height": 1650,
        "bust_girth": 1050,
        "high_bust_girth": 900,
        "waist_girth": 700,
        "hip_girth": 1050,
    },
    "flat": {"height": 1850, "bust_girth": 1040, "high_bust_girth": 1035, "waist_girth": 860, "hip_girth": 1000},
    "child": {"height": 1160, "bust_girth": 590, "waist_girth": 550, "hip_girth": 620},
    "doll": {"height": 400, "bust_girth": 180, "waist_girth": 160, "hip_girth": 190},
}


def body(name: str) -> Body:
    return wearer({key: float(value) for key, value in BODIES[name].items()})


@pytest.mark.parametrize("name", BODIES)
@pytest.mark.parametrize("width", [6.0, 15.0, 25.0])
def test_bodice_and_sleeve_of_any_body_get_sound_cut_lines(name: str, width: float) -> None:
    widths = {"seam_allowance": width, "hem_allowance": 2 * width}
    pattern = draft_garment(body(name), None, "shirt", widths).pattern
    for cut in pattern.pieces:
        assert area.is_simple(cut.cut)
        assert cut.cut.area > cut.piece.area
        assert area.outside(cut.piece.outline, cut.cut) < 1.0
        assert cut.grainline is not None
        x0, y0, x1, y1 = cut.piece.outline.bounds
        small = min(x1 - x0, y1 - y0) < 25  # a doll's collar, a facing
        assert small or min(label_room(cut)[1]) > 5
        open_darts = sum(edge.kind is EdgeKind.DART for edge in cut.piece.edges) / 2
        assert len(cut.caps) == open_darts
        fold = cut.piece.fold_edge
        if fold:  # nothing beyond the fold line
            x0, _, x1, _ = cut.cut.bounds
            at = fold.path.start.real
            assert min(abs(x0 - at), abs(x1 - at)) < 1e-6
        for mark in cut.notches:
            for stroke in mark.strokes:
                assert area.distances(stroke, cut.cut)[0] < 0.03
    assert not [f for f in pattern.findings if f.check == "allowance" and f.level == "warning"]
