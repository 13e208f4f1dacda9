"""Blocks of a maker's own for the tests: the example that is shipped, and an invented skirt."""

from __future__ import annotations

from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
EXAMPLE = ROOT / "measurements" / "blocks"

SKIRT = '''
"""Wrap skirt: half a skirt on the fold, one dart at the side, tied at the back.

Source: ours, invented for a test.
"""

from dataclasses import dataclass

from drafting import BodyFrame, BodyHeight, Draft, Edge, EdgeKind, Girth, Level, Limb, Piece, Seam, choice, line


@dataclass(frozen=True)
class Choices:
    """What may be chosen."""

    skirt_ease: float = choice(60.0, "mm", "skirt minus body at the hip", low=20, high=400, source="ours")
    skirt_length: float = choice(600.0, "mm", "waist to hem", low=300, high=1200, scales=True, source="ours")


def wrap_skirt(body, fabric, choices):
    wide = (body["hip_girth"] + choices.skirt_ease) / 2
    mouth = wide - body["waist_girth"] / 2
    deep, down = body["waist_to_hip"], -1j * choices.skirt_length
    left, tip, right = wide / 2 - mouth / 2, wide / 2 - 1j * (deep - 30), wide / 2 + mouth / 2
    piece = Piece(
        "skirt",
        (
            Edge("front", line(0j, down), EdgeKind.FOLD),
            Edge("hem", line(down, wide + down), EdgeKind.HEM),
            Edge("back", line(wide + down, wide + 0j), EdgeKind.OPENING),
            Edge("waist_back", line(wide + 0j, right + 0j), EdgeKind.OPENING),
            Edge("dart_in", line(right + 0j, tip), EdgeKind.DART),
            Edge("dart_out", line(tip, left + 0j), EdgeKind.DART),
            Edge("waist_front", line(left + 0j, 0j), EdgeKind.OPENING),
        ),
        levels=(Level("hip", (line(-1j * deep, wide - 1j * deep),)),),
        title="Skirt",
        frame=BodyFrame(Limb.TRUNK, ((BodyHeight.WAIST, 0j),), back=(wide + down, wide + 0j)),
    )
    dart = Seam("dart", (("skirt", "dart_in"),), (("skirt", "dart_out"),), start=None, end=None)
    ease = choices.skirt_ease
    return Draft((piece,), (dart,), (Girth("hip", body["hip_girth"], ease, ease),))
'''.lstrip()
