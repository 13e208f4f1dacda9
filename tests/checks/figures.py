"""A small sound draft made by hand (invented figures): front, back and sleeve, mm.

front      half, on the fold at x = 0, side seam at x = 240, bust level at y = 150
back       the same mirrored, with a higher neck
sleeve     a pair; each half cap is the armhole up to the notch, then one curve to the crown
"""

from __future__ import annotations

from dataclasses import replace

from drafting.draft.draft import Draft, Girth, Seam, SeamNotch
from drafting.draft.piece import Edge, EdgeKind, Level, Piece
from drafting.draft.roles import EdgeRole, Half
from drafting.geometry import Cubic, Path, line, smooth, solve
from drafting.shaping.torso.dart_mouth import dart_edges

NOTCH = 60.0
CAP_EASE = 12.0
HALF_SLEEVE = 170.0
ADULT = {"bust_girth": 860.0}


def cubic(*points: complex) -> Path:
    return Path((Cubic(*points),))


def torso(name: str, neck_depth: float) -> Piece:
    """Return a half torso on the fold, side seam on +x."""
    low = 400 - neck_depth
    return Piece(
        name,
        (
            Edge("hem", line(0j, 240 + 0j), EdgeKind.HEM, role=EdgeRole.HEM),
            Edge("side", line(240 + 0j, 240 + 200j), role=EdgeRole.SIDE),
            Edge("armhole", cubic(240 + 200j, 208 + 200j, 200 + 250j, 200 + 400j), role=EdgeRole.ARMHOLE),
            Edge("shoulder", line(200 + 400j, 80 + 400j), role=EdgeRole.SHOULDER),
            Edge(
                "neck",
                cubic(80 + 400j, 80 + (low + 20) * 1j, 55 + low * 1j, low * 1j),
                EdgeKind.OPENING,
                role=EdgeRole.NECK,
            ),
            Edge("centre", line(low * 1j, 0j), EdgeKind.FOLD, role=EdgeRole.CENTRE),
        ),
        levels=(Level("bust", (line(150j, 240 + 150j),)),),
    )


def half_cap(armhole: Path) -> Path:
    """Return the back half cap, underarm to crown, on +x: as long as the armhole plus its ease."""
    part = armhole.split(NOTCH)[0].moved(HALF_SLEEVE - armhole.start)

    def cap(height: float) -> Path:
        upper = smooth(part.end, complex(0, height), part.arrive, -1 + 0j)
        return Path((*part.segments, upper))

    wanted = armhole.length + CAP_EASE
    return cap(solve(lambda h: cap(h).length, wanted, (60, 250), what="height of the test cap"))


def sleeve(armhole: Path) -> Piece:
    back = half_cap(armhole)
    return Piece(
        "sleeve",
        (
            Edge("underarm_back", line(HALF_SLEEVE - 300j, HALF_SLEEVE + 0j)),
            Edge("cap_back", back, role=EdgeRole.CAP, half=Half.BACK),
            Edge("cap_front", back.mirrored().reversed(), role=EdgeRole.CAP, half=Half.FRONT),
            Edge("underarm_front", line(-HALF_SLEEVE + 0j, -HALF_SLEEVE - 300j)),
            Edge("hem", line(-HALF_SLEEVE - 300j, HALF_SLEEVE - 300j), EdgeKind.HEM),
        ),
        pair=True,
        levels=(Level("upper_arm", (line(-HALF_SLEEVE + 0j, HALF_SLEEVE + 0j),)),),
    )


def sound() -> Draft:
    """Return front, back and sleeve with every seam; nothing is wrong with it."""
    front = torso("front", 70)
    back = torso("back", 25).mirrored()
    arm = sleeve(front["armhole"].path)
    length = front["armhole"].length
    return Draft(
        (front, back, arm),
        (
            Seam("side", (("front", "side"),), (("back", "side"),)),
            Seam("shoulder", (("front", "shoulder"),), (("back", "shoulder"),)),
            Seam(
                "front_armhole",
                (("front", "armhole"),),
                (("sleeve", "cap_front"),),
                -CAP_EASE,
                end=None,
                eased=(NOTCH, length),
                notches=(SeamNotch("front", NOTCH, NOTCH),),
            ),
            Seam(
                "back_armhole",
                (("sleeve", "cap_back"),),
                (("back", "armhole"),),
                CAP_EASE,
                end=None,
                eased=(NOTCH, length + CAP_EASE),
                notches=(SeamNotch("back", NOTCH, NOTCH, 2),),
            ),
            Seam("underarm", (("sleeve", "underarm_back"),), (("sleeve", "underarm_front"),)),
        ),
        (Girth("bust", 860, 100, 100), Girth("upper_arm", 290, 50, 50, limb=True)),
    )


def with_edge(draft: Draft, piece: str, *edges: Edge) -> Draft:
    """Return the draft with edges replaced; the ring is not closed again."""
    return draft.with_pieces([draft[piece].with_edges(*edges)])


def with_seam(draft: Draft, name: str, **changes: object) -> Draft:
    """Return the draft with one seam changed."""
    seams = tuple(
        replace(seam, **changes) if seam.name == name else seam
        for seam in draft.seams  # type: ignore[arg-type]
    )
    return replace(draft, seams=seams)


def darted(short: float = 25.0, aim: float = 0.0, legs: float = 0.0) -> Piece:
    """Return a front with a bust dart in its side, tip `short` mm from the bust point.

    `aim` mm moves the mouth off the line through tip and bust point; `legs` mm is added to one
    leg.
    """
    bust_point = 100 + 150j
    tip = bust_point + short
    low, up = complex(240, 130 + aim), complex(240, 170 + aim)
    up += legs * (up - tip) / abs(up - tip)
    return Piece(
        "front",
        (
            Edge("hem", line(0j, 240 + 0j), EdgeKind.HEM),
            Edge("side_low", line(240 + 0j, low)),
            *dart_edges("bust_dart", EdgeRole.BUST_DART, line(low, tip), line(tip, up)),
            Edge("side_up", line(up, 240 + 300j)),
            Edge("top", line(240 + 300j, 300j), EdgeKind.FREE),
            Edge("centre", line(300j, 0j), EdgeKind.FOLD),
        ),
        points={"bust_point": bust_point},
    )
