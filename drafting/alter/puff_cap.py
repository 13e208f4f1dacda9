"""Puffed cap: width and height spread apart above the notches, gathered back to the armhole.

The sleeve is opened along its middle by `puff_width`, all the way down, and the crown is raised by
`puff_height`; below the notches nothing changes, so the sleeve still sits in its armhole there. The
added seam lies between the notches and is gathered up to what the cap was. A leg-of-mutton sleeve is
opened above the elbow only (`puff_reach`): its forearm stays close.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.draft.by_role import edges_as, piece_as
from drafting.draft.draft import Draft, Seam, SeamNotch
from drafting.draft.piece import Edge, Notch, Piece
from drafting.draft.roles import EdgeRole, Half, LevelKind, NotchKind, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.geometry import Path, smooth
from drafting.geometry.solve import zero_between
from drafting.ground.choices import choice
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding, Severity
from drafting.ground.sources import practice
from drafting.shaping.flare.fullness import bulk_said
from drafting.shaping.sleeve.half_cap import STRAIGHT
from drafting.shaping.sleeve.mutton import LedOut, led_out
from drafting.shaping.sleeve.turned import turned, turned_by

BAND = (1.5, 2.5)
"""Cap over armhole between the gather marks (common practice)."""


@dataclass(frozen=True)
class Choices:
    """How far the cap is opened and raised, mm."""

    puff_width: float = choice(
        120.0,
        "mm",
        "width let in along the middle of the sleeve",
        low=0,
        high=600,
        step=10,
        scales=True,
        grows=True,
        group="fullness",
        source=practice("1.5 to 2.5 to one between the marks"),
    )
    puff_height: float = choice(
        40.0,
        "mm",
        "how much higher the crown stands",
        low=0,
        high=200,
        step=5,
        scales=True,
        grows=True,
        group="fullness",
        source=practice("about a third of the width"),
    )
    puff_reach: str = choice(
        "hem",
        "word",
        "how far down the width is let in: to the hem, or to the elbow, as in a leg-of-mutton sleeve",
        words=("hem", "elbow"),
        group="fullness",
        source=practice(),
    )


NOT_TURNED = Finding(
    "fitting",
    "warning",
    "sleeve",
    None,
    None,
    "The sleeve is not turned in its armhole as a fitting asked: its cap is gathered. Share the gathers out "
    "farther forward or back at the try-on instead.",
)


TO_THE_HEM = Finding(
    "puff",
    "note",
    "sleeve",
    None,
    None,
    "The sleeve ends so soon below the arm that its fullness cannot taper off: it is let in down to the hem.",
)

STEEPEST = 0.8
"""Of an underarm seam: it is led out by no more, or it would lie nearly level under the cap (ours)."""


def _tapers(sleeve: Piece, by: float) -> bool:
    """Return whether the underarm seams of a sleeve are long enough to be led out by `by` mm."""
    seams = edges_as(sleeve, EdgeRole.UNDERARM)
    shortest = min(sum(e.length for e in seams if e.half is half) for half in (Half.FRONT, Half.BACK))
    return by <= STEEPEST * shortest


def puff_cap(draft: Draft, body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the draft with the cap of its sleeve puffed; every seam still walks.

    Raises `DraftError` where there is no one-piece set-in sleeve.
    """
    old = piece_as(draft, PieceRole.SLEEVE)
    if old is None or len(edges_as(old, EdgeRole.CAP)) != 2:
        raise DraftError("there is no set-in sleeve to puff", turn="put a sleeve block before the puff")
    if not edges_as(old, EdgeRole.HEM):
        raise DraftError(
            "the cap of a sleeve in two tiers is not puffed",
            value="its first tier is as wide already",
            turn='choose sleeve_style = "plain", or leave out the puff',
        )
    if choices.puff_width == 0 and choices.puff_height == 0:
        return draft
    if turned_by(draft):
        draft = turned(draft, 0.0)
        draft, old = replace(draft, findings=(*draft.findings, NOT_TURNED)), draft[old.name]
    asked = choices.puff_reach == "elbow"
    led = led_out(old, choices.puff_width / 2) if asked and _tapers(old, choices.puff_width / 2) else None
    if asked and led is None:
        draft = replace(draft, findings=(*draft.findings, TO_THE_HEM))
    new = _opened(old, choices, led)
    wider = led.front + led.back if led else choices.puff_width
    arm = {level.name for level in old.levels if level.kind is LevelKind.UPPER_ARM}
    girths = tuple(
        replace(g, asked_ease=g.asked_ease + wider, settled_ease=g.settled_ease + wider) if g.level in arm else g
        for g in draft.girths
    )
    draft = replace(
        draft.with_pieces([new]),
        girths=girths,
        seams=tuple(_loosened(seam, old, led.grown if led else 0.0) for seam in draft.seams),
    )
    return _notched_again(draft, old, fabric)


def _loosened(seam: Seam, old: Piece, grown: float) -> Seam:
    """Return the cap's seam without its ease, and the underarm's with its notches `grown` mm farther down."""
    if seam.a[0] == (old.name, _cap(old, Half.FRONT).name):
        return replace(seam, eased=None)
    underarm = seam.a[0][0] == old.name and old[seam.a[0][1]].role is EdgeRole.UNDERARM
    if seam.kind is SeamKind.SLEEVE and underarm and grown:
        return replace(seam, notches=tuple(replace(n, a=n.a + grown, b=n.b + grown) for n in seam.notches))
    return seam


def _cap(sleeve: Piece, half: Half) -> Edge:
    """Return this half of a sleeve's cap."""
    return next(edge for edge in edges_as(sleeve, EdgeRole.CAP) if edge.half is half)


def _opened(piece: Piece, choices: Choices, led: LedOut | None) -> Piece:
    """The front lies to -x: it moves left by half the width, the back right, the crown up."""
    half = choices.puff_width / 2
    far = led.back if led else half
    crown = _cap(piece, Half.FRONT).path.start
    top = crown + 1j * choices.puff_height

    def front(path: Path) -> Path:
        return path.moved(-half)

    def back(path: Path) -> Path:
        return path.moved(far)

    def moved(edge: Edge) -> Edge:
        if edge.role is EdgeRole.CAP and edge.half is Half.FRONT:
            cap = front(edge.path)
            lower = Path(cap.segments[1:])
            start = smooth(lower.start, top, -lower.leave, 1 + 0j, STRAIGHT, may_wave=True).reversed()
            path = Path((start, *lower.segments))
            crown = (Notch("crown", 0.0, kind=NotchKind.CROWN),)
            return replace(edge, path=path, sewn=edge.sewn_length, notches=crown)
        if edge.role is EdgeRole.CAP:
            cap = back(edge.path)
            lower = Path(cap.segments[:-1])
            end = smooth(lower.end, top, lower.arrive, -1 + 0j, STRAIGHT, may_wave=True)
            return replace(edge, path=Path((*lower.segments, end)), sewn=edge.sewn_length, notches=())
        if led:
            return led.edges.get(edge.name, edge)
        if edge.role is EdgeRole.HEM:
            return _widened_hem(edge, choices.puff_width)
        return replace(edge, path=front(edge.path) if edge.half is Half.FRONT else back(edge.path))

    levels = tuple(
        v if led and v.kind is not LevelKind.UPPER_ARM else replace(v, paths=_spread(v.paths, half, far))
        for v in piece.levels
    )
    return replace(
        piece, edges=tuple(moved(e) for e in piece.edges), levels=levels, points={**piece.points, "crown": top}
    )


def _spread(paths: tuple[Path, ...], front: float, back: float) -> tuple[Path, ...]:
    """Return a level with what begins at the front seam moved forward, and every other end back.

    The tip of an elbow dart goes with the back, though it may reach past the middle.
    """
    ends = {end: back for path in paths for end in (path.start, path.end)}
    ends[min(ends, key=lambda end: end.real)] = -front

    def moved(p: complex) -> complex:
        return p + ends.get(p, back if p.real > 0 else -front if p.real < 0 else 0.0)

    return tuple(path.mapped(moved) for path in paths)


def _widened_hem(edge: Edge, width: float) -> Edge:
    """The hem runs from front (left) to back; it keeps its ends' directions, and where it crosses the
    middle line, so that the sleeve stays as long as it was."""
    path = edge.path
    start, end = path.start - width / 2, path.end + width / 2
    if not path.start.real < 0 < path.end.real:
        hem = Path((smooth(start, end, path.leave, path.arrive),))
        return replace(edge, path=hem, sewn=None, notches=())
    at = zero_between(lambda d: path.at(d).real, (0.0, path.length), (path.start.real, path.end.real), 1e-9)
    middle, along = path.at(at), path.tangent(at)
    hem = Path((smooth(start, middle, path.leave, along), smooth(middle, end, along, path.arrive)))
    return replace(edge, path=hem, sewn=None, notches=())


def _notched_again(draft: Draft, old: Piece, fabric: Fabric | None) -> Draft:
    """Move the cap's notches to where they now stand; the gathers lie between them."""
    new, seams = draft[old.name], []
    said: list[Finding] = []
    caps = {((old.name, edge.name),): edge for edge in edges_as(old, EdgeRole.CAP)}
    for seam in draft.seams:
        if seam.a not in caps:
            seams.append(seam)
            continue
        name, in_front = caps[seam.a].name, caps[seam.a].half is Half.FRONT
        grown = new[name].length - old[name].length
        shift = grown if in_front else 0.0
        notches = tuple(replace(n, a=n.a + shift) for n in seam.notches)
        eased = (0.0, notches[0].a) if in_front else (notches[0].a, new[name].length)
        end = notches[0].b if in_front else draft_length(draft, seam) - notches[0].b
        notches = (*notches, _halfway(name, in_front, eased, notches[0].b, end))
        notches = tuple(sorted(notches, key=lambda n: n.a))
        seams.append(replace(seam, notches=notches, eased=eased))
        between = eased[1] - eased[0]
        ratio = between / (between - grown) if between > grown else 1.0
        said += _ratio_said(name.replace("_", " "), ratio)
        said += bulk_said(f"{old.name} {name}", ratio, fabric.thickness if fabric else None)
    kept = (finding for finding in draft.findings if finding.check != "cap ease")  # what is gathered is not eased
    return replace(draft, seams=tuple(seams), findings=(*kept, *said))


def draft_length(draft: Draft, seam: Seam) -> float:
    """Return how long (mm) the armhole side of a seam is."""
    return sum(draft.edge(ref).length for ref in seam.b)


def _halfway(name: str, in_front: bool, eased: tuple[float, float], notch: float, gathered: float) -> SeamNotch:
    """The mark half-way between notch and crown, on the cap and on its armhole."""
    middle = gathered / 2 if in_front else notch + gathered / 2
    count = 1 if in_front else 2
    return SeamNotch(f"{name} half", sum(eased) / 2, middle, count)


def _ratio_said(where: str, ratio: float) -> list[Finding]:
    level: Severity = "note" if ratio <= BAND[1] else "warning"
    text = f"The {where} is gathered {ratio:.2f} to one between notch and crown"
    if ratio > BAND[1]:
        text += f"; puffs are gathered {BAND[0]:g} to {BAND[1]:g} to one"
    return [Finding("puff", level, f"sleeve {where}", ratio, f"{BAND[0]:g} to {BAND[1]:g}", text + ".")]
