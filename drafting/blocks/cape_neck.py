"""Cape neck: what finishes a cape's neck and closes it, a stand or a hood.

Half a stand on the fold, or half a hood, seen from outside as the wearer's left; its neck edge walks the neck.

                 top                    middle
       .------------------.            .----.
    front                 | centre    |      '.
        (________   ______|  back     |face   | middle
                 neck                 '-._____/
                                        neck
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.body.children import must_let_go
from drafting.draft.chain import Chain
from drafting.draft.draft import Draft, Notion, Seam, SeamNotch
from drafting.draft.piece import NAMED_MARK, Edge, EdgeKind, Piece, Placement
from drafting.draft.roles import EdgeRole, Half, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.geometry import line
from drafting.ground.choices import choice
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.scale import body_scale
from drafting.ground.sources import AS_ASKED, BY_EYE, practice
from drafting.shaping.cape.hood import head_girth, hood_lines
from drafting.shaping.details.collar_lines import StandEdges, stand_for
from drafting.shaping.details.small_pieces import interfacing, interfacing_notion

NEEDS = ("front_neck", "back_neck")

FACE_TURNED = 30.0
"""mm: turned inside along the face of a hood (common practice: 25 to 40)."""

HOOK, TIE = 12.0, 450.0
"""mm: the size of a coat hook or a press stud, how long each of two ties is (common practice: 40 to 50 cm)."""

TAB_WIDE, TAB_UNDER, TAB_BEYOND, TAB_SEAM = 30.0, 15.0, 25.0, 10.0
"""mm: a press stud's tab, how wide it is, how much of it lies under its own end and how far it reaches beneath the
other, and its seams (ours: cloth round the stud on every side)."""

LETS_GO = "press stud"
"""What pulls open by itself (common practice; `Source.EN_14682` has nothing tied at a young child's neck)."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about a cape's neck, mm."""

    cape_neck: str = choice(
        "stand",
        "word",
        "what the neck line is sewn into",
        words=("stand", "hood"),
        group="collar",
        source=practice(),
    )
    cape_stand: float = choice(
        45.0,
        "mm",
        "height of the stand at the centre back",
        low=15,
        high=120,
        scales=True,
        group="collar",
        source=practice("⟨30⟩ to ⟨60⟩"),
    )
    hood_room: float = choice(
        0.0,
        "mm",
        "how much higher and deeper the hood is than the head has to have it",
        low=0,
        high=200,
        step=5,
        scales=True,
        group="collar",
        source=AS_ASKED,
    )
    cape_closes: str = choice(
        "hook and eye",
        "word",
        "what closes the neck; on a child, or whoever is as small, it has to let go: a press stud is taken",
        words=("hook and eye", "clasp", "ties", "press stud"),
        group="closing",
        source=practice(),
    )
    cape_stand_ease: float = choice(
        30.0,
        "mm",
        "top of the closed stand minus neck girth",
        low=0,
        high=120,
        scales=True,
        group="collar",
        source=BY_EYE,
    )


def cape_neck(
    body: Body, fabric: Fabric | None, choices: Choices, *, front_neck: Chain, back_neck: Chain
) -> Draft:
    """Return the stand (`cape-stand`, cut twice, with its interfacing) or the hood (`hood`)."""
    made = _hood if choices.cape_neck == "hood" else _stand
    piece, more = made(body, choices, front_neck, back_neck)
    closes, found = _settled(body, choices.cape_closes)
    piece = replace(piece, placements=(_mark(piece, closes, body_scale(body)),))
    at = front_neck.path.length
    neck = Seam(
        "neck",
        ((piece.name, "neck"),),
        (*reversed(front_neck.refs), *reversed(back_neck.refs)),
        start=None,
        end=None,
        notches=(SeamNotch("shoulder", at, at),),
        kind=SeamKind.PLAIN if piece.role is PieceRole.HOOD else SeamKind.ATTACHED,  # a hood is one layer
    )
    draft = Draft((piece,), (neck,)) + more
    notions = (*draft.notions, replace(_closing(closes, piece.name), mark=closes))
    return replace(draft, notions=notions, findings=(*draft.findings, *found))


def _stand(body: Body, choices: Choices, front: Chain, back: Chain) -> tuple[Piece, Draft]:
    """Return the stand, and what belongs to it: its two layers' seams, its interfacing."""
    edges = StandEdges(front.path.length + back.path.length, back.path.length, 0.0, choices.cape_stand)
    lines = stand_for(edges, (body["neck_girth"] + choices.cape_stand_ease) / 2)
    piece = Piece(
        "cape-stand",
        (
            Edge("neck", lines.neck, role=EdgeRole.NECK),
            Edge("centre", line(lines.neck.end, lines.top.start), EdgeKind.FOLD, role=EdgeRole.CENTRE),
            Edge("top", lines.top),
            Edge("front", lines.front, role=EdgeRole.FRONT),
        ),
        copies=2,
        title="Cape stand",
        role=PieceRole.COLLAR_STAND,
    )
    twins = tuple(
        Seam(f"stand {name}", (ref := ((piece.name, name),)), ref, start=None, end=None, kind=SeamKind.MADE_UP)
        for name in ("top", "front")
    )
    stiff = interfacing(piece)
    return piece, Draft((stiff,), twins, notions=(interfacing_notion(stiff),))


def _hood(body: Body, choices: Choices, front: Chain, back: Chain) -> tuple[Piece, Draft]:
    """Return the hood, and its seam over the head."""
    lines = hood_lines(body, front.path.length + back.path.length, choices.hood_room)
    piece = Piece(
        "hood",
        (
            Edge("neck", lines.neck, role=EdgeRole.NECK),
            Edge("middle", lines.middle, role=EdgeRole.CENTRE_SEAM, half=Half.BACK),
            Edge("face", line(lines.middle.end, 0j), EdgeKind.OPENING, allowance=FACE_TURNED, role=EdgeRole.FRONT),
        ),
        pair=True,
        title="Hood",
        role=PieceRole.HOOD,
    )
    ref = ((piece.name, "middle"),)
    middle = Seam("hood middle", ref, ref, start="square", end="square", kind=SeamKind.CENTRE)
    whose = "" if "head_girth" in body else " (nobody measured it)"
    text = (
        f"The hood is {told(lines.height)} high at the face and {told(lines.depth)} deep, for a head of "
        f"{told(head_girth(body))} round{whose}."
    )
    said = Finding("hood", "note", "hood", lines.height, None, text)
    return piece, Draft(
        (), (middle,), findings=(said,), facts={"hood_height": lines.height, "hood_depth": lines.depth}
    )


def _mark(piece: Piece, closes: str, scale: float) -> Placement:
    """Return where what closes the neck is sewn on: beside the front end of the neck seam, inside both."""
    neck, size = piece["neck"].path, HOOK * min(1.0, scale)
    way = neck.tangent(0.0)
    start = neck.start + size / 2 * (way + 1j * way)
    return Placement(closes, line(start, start + size * way), NAMED_MARK)


def _settled(body: Body, asked: str) -> tuple[str, tuple[Finding, ...]]:
    """Return what closes the neck of this wearer, and what is said where it is not what was asked for."""
    if asked == LETS_GO or not must_let_go(body):
        return asked, ()
    text = (
        f"A child's cape must let go by itself where it catches: a {LETS_GO} on a tab, which pulls open, is "
        f"listed and sewn on in place of the {asked}."
    )
    return LETS_GO, (Finding("closing", "note", "neck", LETS_GO, asked, text),)


def _closing(closes: str, piece: str) -> Notion:
    """Return what closes the neck; its front edges meet, so what laps is on a tab."""
    if closes == "ties":
        note = "one on each side, caught in the neck seam"
        return Notion("ribbon tie", piece, 2, TIE, note, "grosgrain ribbon", piece=piece)
    if closes == "clasp":
        note = "a half on each front edge, at the neck seam"
        return Notion("clasp", piece, 1, note=note, kind="cloak clasp", piece=piece)
    if closes == LETS_GO:
        long, wide = 2 * (TAB_UNDER + TAB_BEYOND + TAB_SEAM), TAB_WIDE + 2 * TAB_SEAM
        note = (
            f"on a tab from what is left of the cloth, cut {told(long)} by {told(wide)}, folded across with the "
            f"right sides together, both sides sewn {told(TAB_SEAM)} in, and turned; sewn under one end at the "
            f"neck seam so that {told(TAB_BEYOND)} of it reach beneath the other: pull it open by the cape alone "
            "before it is worn"
        )
        return Notion(LETS_GO, piece, 1, note=note, kind="press stud that pulls open", size=HOOK, piece=piece)
    note = "the hook on one front edge, the eye on the other, at the neck seam"
    return Notion("hook and eye", piece, 1, note=note, kind="hook and eye", size=HOOK, piece=piece)
