"""Woven bodice: a fitted torso to the waist with a bust dart and waist darts.

Drafted from direct measures; each is used as measured, and estimated ones are named in the report.
The construction is ours. Half frame with the nape at 0; front and back of the wearer's left side,
seen from outside.

      back                                   front
     neck   shoulder                 shoulder      neck
       .--------.                       .--------.
     c |         \\                     /         | c
     e |          ) armhole   armhole  (          | e
     n |         /                      \\         | n
     t |        |  side      side_upper  |        | t
     r |        |        bust_dart  ----<  * bust | r
     e |        |             side_lower |   point| e
       '--. .---'                        '---. .--'
        waist_dart                        waist_dart
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.choices import choice
from drafting.draft import Draft, Girth, Seam
from drafting.fabric import Fabric
from drafting.findings import Finding
from drafting.geometry import Path, line
from drafting.piece import Edge, EdgeKind, Level, Piece
from drafting.shaping.bust_dart import FrontEdges, bust_level_paths, open_bust_dart
from drafting.shaping.shared_choices import ARM_EASE
from drafting.shaping.torso import TorsoEase
from drafting.shaping.torso_shape import TorsoShape, fit_drop, shape_torso
from drafting.shaping.waist import HalfWaist


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the bodice. Eases are garment minus body, all round, in mm."""

    bust_ease: float = choice(
        80.0, "mm", "garment minus body at the bust, all round", low=0, high=400, step=5, scales=True,
        source="row E40: 38-51 mm is the least for woven cloth; E43: a shirt up to 76; default ours",
    )  # fmt: skip
    waist_ease: float = choice(
        60.0, "mm", "garment minus body at the waist, all round", low=0, high=500, step=5, scales=True,
        source="row E41: 19-25 mm is the least in a woven dress; default ours",
    )  # fmt: skip
    neck_ease: float = choice(
        10.0, "mm", "neckline minus neck base girth", low=-20, high=120, scales=True, source="ours",
    )  # fmt: skip
    across_ease: float = choice(
        16.0, "mm", "garment minus body across the back; the front gets half of it", low=0, high=120,
        scales=True, source="ours, inside the band of row I10",
    )  # fmt: skip
    armhole_drop: float = choice(
        40.0, "mm", "how far the underarm lies below the armpit fold", low=0, high=120, scales=True,
        source="bodice study: 25-65 in woven cloth",
    )  # fmt: skip
    shoulder_ease: float = choice(
        4.0, "mm", "how much longer the back shoulder is, eased in", low=0, high=6, scales=True,
        source="trouble SE4: up to 6 mm is eased in; default ours",
    )  # fmt: skip
    length_ease: float = choice(
        0.0, "mm", "length added between underarm and waist", low=-40, high=120, step=5,
        group="length", source="ours",
    )  # fmt: skip
    arm_ease: float = ARM_EASE
    bust_dart: str = choice(
        "side", "word", "where the bust is shaped", words=("side", "shoulder"), group="style"
    )
    opening: str = choice(
        "none", "word", "which centre opens (the other is cut on the fold)",
        words=("front", "back", "none"), group="style",
    )  # fmt: skip


def bodice(body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the bodice (pieces `back` and `front`) for `body`.

    Raises `DraftError` where these measures leave no room for an armhole.
    """
    ease = _ease(body, choices)
    drop = fit_drop(body, ease)
    shape = shape_torso(body, ease, drop)
    front, front_edges = _front(shape, choices)
    back = _back(shape, choices)
    facts = {
        "armhole_drop": drop, "bust_dart_degrees": shape.plan.kappa, "side_lean": shape.waist.lean,
        "front_waist_length": shape.plan.front_neck - shape.plan.waist, "scale": shape.plan.scale,
    }  # fmt: skip
    seams = _seams(front_edges, shape, choices)
    return Draft(
        (back, front), seams, _girths(body, choices, shape), (*shape.plan.findings, *_said(drop, choices)),
        facts,
    )  # fmt: skip


def _ease(body: Body, choices: Choices) -> TorsoEase:
    return TorsoEase(
        bust=choices.bust_ease + body.layer("bust_girth"),
        waist=choices.waist_ease + body.layer("waist_girth"),
        neck=choices.neck_ease + body.layer("neck_base_girth"),
        across_back=choices.across_ease + body.layer("across_back_width"),
        across_front=choices.across_ease / 2 + body.layer("across_front_width"),
        arm=choices.arm_ease + body.layer("upper_arm_girth"),
        shoulder=choices.shoulder_ease,
        length=choices.length_ease,
        drop=choices.armhole_drop,
    )


# ------------------------------------------------------------------------------------ pieces


def _waist_edges(half: HalfWaist) -> list[Edge]:
    if len(half.paths) == 1:
        return [Edge("waist", half.paths[0], EdgeKind.HEM)]
    first, second = half.paths
    return [
        Edge("waist_centre", first, EdgeKind.HEM),
        Edge("waist_dart_in", line(first.end, half.tip), EdgeKind.DART),
        Edge("waist_dart_out", line(half.tip, second.start), EdgeKind.DART),
        Edge("waist_side", second, EdgeKind.HEM),
    ]


def _centre(path: Path, which: str, choices: Choices) -> Edge:
    opens = choices.opening == which
    return Edge("centre", path, EdgeKind.OPENING if opens else EdgeKind.FOLD)


def _back(shape: TorsoShape, choices: Choices) -> Piece:
    plan = shape.plan
    tip = shape.back_armhole.start
    edges = (
        *_waist_edges(shape.waist.back),
        Edge("side", line(shape.waist.back.side, shape.back_underarm)),
        Edge("armhole", shape.back_armhole.reversed()),
        Edge("shoulder", line(tip, shape.back_neck)),
        Edge("neck", plan.neck.back.reversed(), EdgeKind.OPENING),
        _centre(line(0j, complex(0, plan.waist)), "back", choices),
    )
    across = complex(0, shape.back_armhole.segments[0].end.imag)
    levels = (
        Level("bust", (line(complex(0, plan.bust_line), complex(plan.back, plan.bust_line)),)),
        Level("across_back", (line(across, across + plan.across_back),)),
        Level("waist", shape.waist.back.paths),
    )
    piece = Piece(
        "back", edges, pair=choices.opening == "back", levels=levels, title="Back",
        points={"nape": 0j, "side_neck": shape.back_neck, "shoulder_point": tip,
                "underarm": shape.back_underarm},
    )  # fmt: skip
    return _swap_legs(piece.mirrored())


def _swap_legs(piece: Piece) -> Piece:
    """Name dart legs in ring order again after mirroring."""
    swap = {"waist_dart_in": "waist_dart_out", "waist_dart_out": "waist_dart_in"}
    return replace(
        piece, edges=tuple(replace(e, name=swap.get(e.name, e.name)) for e in piece.edges)
    )


def _front(shape: TorsoShape, choices: Choices) -> tuple[Piece, FrontEdges]:
    plan = shape.plan
    centre_neck = complex(0, plan.front_neck) + plan.neck.front.end
    opened = open_bust_dart(
        plan,
        waist=shape.waist.front,
        side=line(shape.waist.front.side, shape.front_underarm_closed),
        armhole=shape.front_armhole.reversed(),
        shoulder=line(shape.front_armhole.start, shape.front_neck),
        where=choices.bust_dart,
    )
    edges = (
        *_waist_edges(shape.waist.front),
        *opened.edges,
        Edge("neck", plan.neck.front.moved(complex(0, plan.front_neck)), EdgeKind.OPENING),
        _centre(line(centre_neck, complex(0, plan.waist)), "front", choices),
    )
    across = shape.front_armhole.segments[0].end
    levels = [Level("bust", bust_level_paths(plan, opened)), Level("waist", shape.waist.front.paths)]
    if opened.turned or plan.kappa == 0:
        levels.append(Level("across_front", (line(complex(0, across.imag), across),)))
    piece = Piece(
        "front", edges, pair=choices.opening == "front", levels=tuple(levels), title="Front",
        points={"bust_point": plan.bust_point, "side_neck": shape.front_neck,
                "shoulder_point": shape.front_armhole.start, "underarm": shape.front_underarm},
    )  # fmt: skip
    return piece, opened


# ------------------------------------------------------------------------------------ seams


def _seams(front: FrontEdges, shape: TorsoShape, choices: Choices) -> tuple[Seam, ...]:
    names = [edge.name for edge in front.edges]
    side = tuple(("front", n) for n in names if n.startswith("side"))
    shoulder = tuple(("front", n) for n in names if n.startswith("shoulder"))
    seams = [
        Seam("side", side, (("back", "side"),)),
        Seam("shoulder", (("back", "shoulder"),), tuple(reversed(shoulder)), choices.shoulder_ease),
    ]
    for piece, half in (("back", shape.waist.back), ("front", shape.waist.front)):
        if len(half.paths) > 1:
            seams.append(_dart(f"{piece} waist dart", piece, "waist_dart"))
    if "bust_dart_in" in names:
        seams.append(_dart("bust dart", "front", "bust_dart"))
    return tuple(seams)


def _dart(name: str, piece: str, edge: str) -> Seam:
    return Seam(name, ((piece, f"{edge}_in"),), ((piece, f"{edge}_out"),), end=None)


def _girths(body: Body, choices: Choices, shape: TorsoShape) -> tuple[Girth, ...]:
    ease, plan = _ease(body, choices), shape.plan
    back, front = body["across_back_width"], body["across_front_width"]
    across = [Girth("across_back", back, ease.across_back, 2 * plan.across_back - back)]
    if choices.bust_dart == "side":
        across.append(
            Girth("across_front", front, ease.across_front, 2 * plan.across_front - front)
        )
    return (
        Girth("bust", body["bust_girth"], ease.bust, ease.bust),
        Girth("waist", body["waist_girth"], ease.waist, ease.waist),
        *across,
    )


def _said(drop: float, choices: Choices) -> tuple[Finding, ...]:
    moved = drop - choices.armhole_drop
    if abs(moved) < 0.5:
        return ()
    way = "deeper" if moved > 0 else "shallower"
    return (Finding(
        "armhole", "note", "bodice", drop, choices.armhole_drop,
        f"The underarm lies {drop:.0f} mm below the armpit fold, {abs(moved):.0f} mm {way} than chosen, "
        "so that a sleeve for this arm has a good cap.",
    ),)  # fmt: skip
