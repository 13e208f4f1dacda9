"""Pieces made by hand for the tests of sheets and files; every figure in them is invented."""

from __future__ import annotations

from drafting.draft.pattern import CutPiece, NotchMark, Pattern
from drafting.draft.piece import Edge, EdgeKind, InnerDart, Level, Piece
from drafting.draft.roles import LevelKind
from drafting.finish.label import Label
from drafting.geometry import Path, line, smooth

KITE = Label(
    costume="The kite",
    garment="bodice",
    fabric="Velveteen, plum",
    wearer="Kite, invented",
    measured_on="2026-11-02",
    estimated=("neck_base_girth", "across_back_width", "shoulder_drop", "bust_point_depth"),
)


def curve(a: complex, b: complex, leave: complex, arrive: complex) -> Path:
    return Path((smooth(a, b, leave, arrive),))


def front() -> CutPiece:
    """Return a half front on the fold: curved neck and armhole, a waist dart, levels."""
    neck, shoulder, tip = 330 + 0j, 70 + 400j, 180 + 360j
    waist, side, dart = 240 + 8j, 250 + 200j, (110 + 0j, 122 + 150j, 134 + 0j)
    edges = (
        Edge("waist_a", line(0j, dart[0])),
        Edge("dart_a", line(dart[0], dart[1]), EdgeKind.DART),
        Edge("dart_b", line(dart[1], dart[2]), EdgeKind.DART),
        Edge("waist_b", curve(dart[2], waist, 1 + 0j, 1 + 0.12j)),
        Edge("side", line(waist, side)),
        Edge("armhole", curve(side, tip, -1 + 0.1j, 0.28 + 1j)),
        Edge("shoulder", line(tip, shoulder)),
        Edge("neck", curve(shoulder, 1j * neck.real, -0.3 - 1j, -1 + 0j)),
        Edge("centre_front", line(1j * neck.real, 0j), EdgeKind.FOLD),
    )
    levels = (
        Level("bust", (line(170j, 249.5 + 170j),), LevelKind.BUST),
        Level("waist", (line(0.5j, dart[0] + 0.5j), line(dart[2] + 0.5j, waist.real - 1 + 0.5j)), LevelKind.WAIST),
    )
    piece = Piece("front", edges, levels=levels, title="Front")
    neckline = curve(64 + 413j, 338j, -0.3 - 1j, -1 + 0j)
    scye = curve(263 + 212j, 192 + 370j, -1 + 0.1j, 0.28 + 1j)
    start = line(338j, -12j, 134 - 12j, 253 - 4j, scye.start)
    cut = Path.joined((start, scye, line(scye.end, neckline.start), neckline))
    notch = line(255 + 120j, 247 + 120j)
    widths = {e.name: 0.0 if e.kind is EdgeKind.FOLD else 12.0 for e in edges} | {"neck": 8.0}
    return CutPiece(
        piece,
        1,
        cut,
        widths,
        (NotchMark("side", "bust", (notch,)),),
        grainline=line(60 + 60j, 60 + 300j),
        stretch_arrow=line(40 + 250j, 160 + 250j),
    )


def sleeve() -> CutPiece:
    """Return a whole sleeve cut as a pair, with a dart inside the outline."""
    left, right, top = -160 + 0j, 170 + 0j, 5 + 135j
    edges = (
        Edge("hem", line(-105 - 420j, 110 - 420j), EdgeKind.HEM),
        Edge("underarm_front", line(110 - 420j, right)),
        Edge("cap_front", curve(right, top, -1 + 0.2j, -1 + 0j)),
        Edge("cap_back", curve(top, left, -1 + 0j, -1 - 0.2j)),
        Edge("underarm_back", line(left, -105 - 420j)),
    )
    low, high = -40 - 200j, -40 - 90j
    dart = InnerDart("elbow", line(low, -30 - 150j, high), line(low, -50 - 150j, high))
    levels = (Level("upper_arm", (line(left, right),), LevelKind.UPPER_ARM),)
    piece = Piece("sleeve", edges, pair=True, levels=levels, darts=(dart,), title="Sleeve")
    hem, cap = (-118 - 450j, 122 - 450j, 184 + 4j), (60 + 130j, 5 + 147j, -60 + 130j, -174 + 4j)
    cut = Path.polygon(*hem, *cap)
    widths = {e.name: 30.0 if e.kind is EdgeKind.HEM else 12.0 for e in edges}
    notches = (
        NotchMark("cap_front", "front", (line(120 + 75j, 114 + 68j),)),
        NotchMark("cap_back", "back", (line(-110 + 75j, -104 + 68j), line(-106 + 78j, -100 + 71j))),
    )
    return CutPiece(piece, 2, cut, widths, notches, grainline=line(5 - 380j, 5 + 60j))


def cuff() -> CutPiece:
    """Return a band too low for a label."""
    corners = (0j, 220 + 0j, 220 + 26j, 26j)
    names = ("seam", "end_a", "top", "end_b")
    edges = tuple(
        Edge(name, line(a, b)) for name, a, b in zip(names, corners, (*corners[1:], corners[0]), strict=True)
    )
    cut = Path.polygon(-10 - 10j, 230 - 10j, 230 + 36j, -10 + 36j)
    piece = Piece("cuff", edges, pair=True, grain=0.0)
    return CutPiece(piece, 3, cut, dict.fromkeys(names, 10.0), grainline=line(40 + 13j, 180 + 13j))


def patterns() -> tuple[Pattern, ...]:
    return (Pattern("bodice", "shell", (front(), sleeve(), cuff())),)
